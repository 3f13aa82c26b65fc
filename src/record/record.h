/* SPDX-License-Identifier: MIT */
/*
 * record.h - what was recorded, as its writers take it.
 *
 * The page and the JSON tell of the books that were added now; with a record before them,
 * also what it held, and how its points compare.
 */
#ifndef RB_RECORD_RECORD_H
#define RB_RECORD_RECORD_H

#include "record/several.h"
#include "report/sink.h"
#include "rodbook/table.h"

struct rb_site_record {
	const struct rb_ledger *ledger;
	const struct rb_several *several;
	const struct rb_findings *const *findings; /* of every file, for the JSON */
	size_t files;
};

/* The record as a page.  NULL if there is no memory. */
struct rb_page *rb_record_page(const struct rb_site_record *record);

/* And as JSON; false if there is no memory. */
bool rb_record_write_json(struct rb_sink *sink, const struct rb_site_record *record);

#endif
