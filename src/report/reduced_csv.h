/* SPDX-License-Identifier: MIT */
/*
 * reduced_csv.h - a reduced book as CSV.
 *
 * One row for each place of the rod.  What was measured is written exactly, so that the
 * file read back as a book reduces to the same elevations; what follows from it is
 * rounded.
 */
#ifndef RB_REPORT_REDUCED_CSV_H
#define RB_REPORT_REDUCED_CSV_H

#include "report/reduction.h"
#include "report/sink.h"

/* Write the header and the rows.  False if there was no memory. */
bool rb_reduced_write_csv(struct rb_sink *sink, struct rb_arena *arena,
			  const struct rb_reduction *r);

#endif
