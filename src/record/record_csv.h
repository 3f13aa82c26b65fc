/* SPDX-License-Identifier: MIT */
/*
 * record_csv.h - the record as CSV.
 *
 * The file is the record itself: what is written here is read again years later, and
 * lines are added to it.  Elevations stand in decimals of the book's unit, in feet and
 * inches and in millimetres, each rounded once from the exact value.
 */
#ifndef RB_RECORD_RECORD_CSV_H
#define RB_RECORD_RECORD_CSV_H

#include "record/ledger.h"
#include "report/sink.h"

/* The header, and the lines of the books that were added now.  False if there is no
 * memory. */
bool rb_record_write_csv(struct rb_sink *sink, const struct rb_ledger *ledger);

/* The same lines alone, in the columns of the record that was read. */
bool rb_record_write_lines(struct rb_sink *sink, const struct rb_ledger *ledger);

#endif
