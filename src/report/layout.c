/* SPDX-License-Identifier: MIT */
/* layout.c - the widths of a table's columns. */
#include "report/layout.h"

#include <string.h>

#include "report/width.h"

#define GAP        2
#define NARROW_GAP 1
#define LEAST      12 /* columns below which a column of words is no use */

size_t rb_layout_before(const char *cell)
{
	return strcspn(cell, ".");
}

static size_t larger(size_t a, size_t b)
{
	return a > b ? a : b;
}

static void measure_cell(struct rb_column_layout *column, enum rb_align align,
			 const char *cell)
{
	size_t length = strlen(cell), before;

	if (align != RB_ON_POINT) {
		column->content = larger(column->content, rb_width(cell, length));
		return;
	}
	before = rb_layout_before(cell);
	column->before = larger(column->before, rb_width(cell, before));
	column->after = larger(column->after, rb_width(cell + before, length - before));
	column->content = column->before + column->after;
}

/* The lines of a heading, and the widest of them. */
static void measure_heading(struct rb_column_layout *column, const char *heading)
{
	column->lines = *heading != '\0';
	for (;;) {
		size_t length = strcspn(heading, "\n");

		column->heading = larger(column->heading, rb_width(heading, length));
		if (!heading[length])
			return;
		heading += length + 1;
		column->lines++;
	}
}

static void measure(struct rb_layout *layout, const struct rb_table *table)
{
	for (size_t i = 0; i < table->columns; i++)
		measure_heading(&layout->column[i], table->column[i].heading);
	for (const struct rb_table_row *row = table->first; row; row = row->next)
		for (size_t i = 0; row->cell && i < table->columns; i++)
			if (row->cell[i])
				measure_cell(&layout->column[i], table->column[i].align,
					     row->cell[i]);
	for (size_t i = 0; i < table->columns; i++)
		layout->column[i].width =
			larger(layout->column[i].content, layout->column[i].heading);
}

static size_t width_of(const struct rb_layout *layout, size_t columns)
{
	size_t width = 0;

	for (size_t i = 0; i < columns; i++)
		if (!layout->column[i].moved)
			width += layout->column[i].width + (i ? layout->gap : 0);
	return width;
}

/* The widest cell of a column that is no wider than `most`. */
static size_t widest_within(const struct rb_table *table, size_t at, size_t most)
{
	size_t widest = 0;

	for (const struct rb_table_row *row = table->first; row; row = row->next) {
		const char *cell = row->cell ? row->cell[at] : NULL;
		size_t width = cell ? rb_width(cell, strlen(cell)) : 0;

		if (width <= most)
			widest = larger(widest, width);
	}
	return widest;
}

static void narrow(struct rb_layout *layout, const struct rb_table *table, size_t at,
		   size_t columns)
{
	struct rb_column_layout *column = &layout->column[at];
	size_t excess = width_of(layout, table->columns) - columns;
	size_t most = column->width > excess ? column->width - excess : 0;

	if (most < LEAST)
		most = at == 0 ? LEAST : 0; /* words cut that short stand better below */
	most = larger(most, column->heading);
	if (most >= column->width)
		return;
	column->content = widest_within(table, at, most);
	column->width = larger(column->content, column->heading);
	column->moved = !column->width;
}

static void set_gap(struct rb_layout *layout, size_t columns, size_t most)
{
	layout->gap = GAP;
	if (width_of(layout, columns) > most)
		layout->gap = NARROW_GAP;
}

static void move(struct rb_layout *layout, const struct rb_table *table,
		 enum rb_room room, size_t columns)
{
	for (size_t i = table->columns; i-- > 1;)
		if (table->column[i].room == room &&
		    width_of(layout, table->columns) > columns)
			layout->column[i].moved = true;
}

bool rb_layout_make(struct rb_layout *layout, const struct rb_table *table,
		    size_t columns)
{
	*layout = (struct rb_layout){ .gap = GAP };
	layout->column =
		rb_arena_take_clear(table->arena, table->columns, sizeof *layout->column);
	if (!layout->column)
		return false;
	measure(layout, table);
	for (size_t i = table->columns; i-- > 0;)
		if (table->column[i].room == RB_SPILLS &&
		    width_of(layout, table->columns) > columns)
			narrow(layout, table, i, columns);
	set_gap(layout, table->columns, columns);
	move(layout, table, RB_MOVES, columns);
	move(layout, table, RB_MOVES_LAST, columns);
	set_gap(layout, table->columns, columns);
	for (size_t i = 0; i < table->columns; i++)
		if (!layout->column[i].moved)
			layout->headings =
				larger(layout->headings, layout->column[i].lines);
	layout->width = width_of(layout, table->columns);
	return true;
}
