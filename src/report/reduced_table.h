/* SPDX-License-Identifier: MIT */
/*
 * reduced_table.h - the rows of a reduced book.
 *
 * One row for each place of the rod, in the order observed, and the sums of a section
 * under the row that ends it.  Columns in which nothing stands are left out.
 */
#ifndef RB_REPORT_REDUCED_TABLE_H
#define RB_REPORT_REDUCED_TABLE_H

#include "report/phrase.h"
#include "report/reduction.h"
#include "rodbook/table.h"

/* Add the table to a page; failing sets page->out_of_memory.  The phrase is used for
 * scratch. */
void rb_reduced_table(struct rb_page *page, struct rb_phrase *phrase,
		      const struct rb_reduction *r);

/* The style of an adjusted elevation: one place more, or half the fraction; where a
 * fraction was asked for, that one. */
struct rb_style rb_adjusted_style(struct rb_style style, bool fraction_asked);

#endif
