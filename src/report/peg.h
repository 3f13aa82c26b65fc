/* SPDX-License-Identifier: MIT */
/*
 * peg.h - a two-peg test, as its writers take it.
 *
 * It is told what the level does, and how that compares with limits that are published;
 * whether that will do is not the program's to say.
 */
#ifndef RB_REPORT_PEG_H
#define RB_REPORT_PEG_H

#include "level/peg_effect.h"
#include "report/sink.h"
#include "rodbook/table.h"

struct rb_peg_report {
	struct rb_arena *arena;
	const struct rb_two_peg *peg;
	const struct rb_peg_effect *effect; /* on a book; or NULL */
	struct rb_style style;              /* of readings */
	struct rb_style book_style; /* of the book's elevations, where there is one */
	int decimals;               /* of JSON; -1: rb_json_decimals() */
	const struct rb_findings *findings[2]; /* of the test, and of the book */
	size_t files;                          /* 1, or 2 with a book */
};

/* NULL without memory. */
struct rb_page *rb_peg_page(const struct rb_peg_report *report);

bool rb_peg_write_json(struct rb_sink *sink, const struct rb_peg_report *report);

#endif
