/* SPDX-License-Identifier: MIT */
/*
 * layout.h - how wide the columns of a table are on a terminal.
 *
 * A column is as wide as its widest cell; where the table would be wider than the
 * terminal, columns of words that may spill are narrowed, and what does not fit them then
 * goes on a line of its own; where that is not enough, whole columns move there.
 */
#ifndef RB_REPORT_LAYOUT_H
#define RB_REPORT_LAYOUT_H

#include "rodbook/table.h"

struct rb_column_layout {
	size_t width;   /* of the column: heading or cells */
	size_t content; /* of the cells alone, once aligned */
	size_t before;  /* RB_ON_POINT: of the widest part before the point */
	size_t after;   /* and from the point on */
	size_t heading; /* the widest line of the heading */
	size_t lines;   /* and how many it has */
	bool moved;     /* its cells stand on a line below their row */
};

struct rb_layout {
	struct rb_column_layout *column;
	size_t gap;      /* blanks between columns */
	size_t width;    /* of the whole table */
	size_t headings; /* lines of the headings: 0 where all are empty */
};

/* Lay out a table for a terminal of so many columns; in the table's arena.  False if
 * there is no memory. */
bool rb_layout_make(struct rb_layout *layout, const struct rb_table *table,
		    size_t columns);

/* The bytes of a number before its decimal point; all of them where it has none. */
size_t rb_layout_before(const char *cell);

#endif
