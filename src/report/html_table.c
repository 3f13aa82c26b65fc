/* SPDX-License-Identifier: MIT */
/* html_table.c - rows, cells and the blanks behind them. */
#include "report/html_table.h"

#include <string.h>

#include "report/escape.h"
#include "report/html_words.h"
#include "report/layout.h"
#include "report/width.h"

#define NAME_MOST   24 /* characters of a name that are not broken */
#define SPILLING    14 /* characters that words need at least */
#define SHORT_ROWS  14 /* so short a table is not cut over two sheets */
#define BLANKS_MOST 9  /* behind a number: .b1 to .b9 of the style */

struct writer {
	struct rb_sink *sink;
	const struct rb_table *table;
	struct rb_layout layout;
};

static void put(struct writer *w, const char *markup)
{
	rb_sink_text(w->sink, markup);
}

/* -- sizes -- */

/* Words are broken into lines; short names are not. */
static bool is_broken(const struct writer *w, size_t at)
{
	return w->table->column[at].room == RB_SPILLS &&
	       (at || w->layout.column[at].width > NAME_MOST);
}

/* A sheet of A4 is 210 mm wide and has margins of 14 mm; a character is 0.602 of the size
 * of its print, and 1.2 of it stand free in every column. */
#define PAPER_POINTS (size_t)515
#define PRINT_MOST   95  /* tenths of a point */
#define PRINT_OWN    135 /* to be read at arm's length */
#define PRINT_LEAST  50

static size_t print_size(const struct writer *w)
{
	size_t tenths = w->table->columns * 12;
	size_t most = w->table->own_sheet ? PRINT_OWN : PRINT_MOST, size;

	for (size_t i = 0; i < w->table->columns; i++) {
		size_t width = w->layout.column[i].width;

		if (is_broken(w, i) && width > SPILLING)
			width = SPILLING;
		tenths += width * 10;
	}
	if (602 * tenths * most <= PAPER_POINTS * 100000)
		return most;
	size = PAPER_POINTS * 100000 / (602 * tenths);
	return size < PRINT_LEAST ? PRINT_LEAST : size;
}

static bool is_short(const struct rb_table *table)
{
	size_t rows = 0;

	for (const struct rb_table_row *row = table->first; row; row = row->next)
		rows++;
	return rows <= SHORT_ROWS;
}

/* -- cells -- */

static bool is_number(enum rb_align align)
{
	return align != RB_LEFT;
}

/* Blanks that bring the decimal points of a column under one another. */
static size_t blanks_behind(const struct writer *w, size_t at, const char *cell)
{
	size_t before = rb_layout_before(cell);
	size_t after = rb_width(cell + before, strlen(cell) - before);
	size_t most = w->layout.column[at].after;

	if (w->table->column[at].align != RB_ON_POINT || most <= after)
		return 0;
	return most - after > BLANKS_MOST ? BLANKS_MOST : most - after;
}

static void put_class(struct writer *w, size_t at, const char *cell)
{
	const struct rb_table_column *column = &w->table->column[at];
	size_t blanks = *cell ? blanks_behind(w, at, cell) : 0;

	if (!is_number(column->align)) {
		put(w, is_broken(w, at) ? " class=\"words\"" : "");
		return;
	}
	put(w, " class=\"n");
	if (blanks) {
		put(w, " b");
		rb_sink_number(w->sink, (int64_t)blanks);
	}
	put(w, "\"");
}

static void put_cell(struct writer *w, size_t at, const char *cell)
{
	bool heads = at == 0 && *cell;

	put(w, heads ? "<th scope=\"row\"" : "<td");
	put_class(w, at, cell);
	put(w, ">");
	rb_sink_escaped_text(w->sink, cell);
	put(w, heads ? "</th>" : "</td>");
}

/* -- heads -- */

static void put_heading(struct writer *w, size_t at)
{
	const char *text = w->table->column[at].heading;
	bool number = is_number(w->table->column[at].align);

	if (!*text) {
		put(w, "<td></td>");
		return;
	}
	put(w, number ? "<th scope=\"col\" class=\"n\">" : "<th scope=\"col\">");
	for (;;) {
		size_t length = strcspn(text, "\n");

		rb_sink_escaped(w->sink, text, length);
		if (!text[length])
			break;
		put(w, "<br>");
		text += length + 1;
	}
	put(w, "</th>");
}

static void put_head(struct writer *w)
{
	if (!w->layout.headings)
		return;
	put(w, "<thead>\n<tr>");
	for (size_t i = 0; i < w->table->columns; i++)
		put_heading(w, i);
	put(w, "</tr>\n</thead>\n");
}

/* -- rows -- */

static void put_row(struct writer *w, const struct rb_table_row *row, bool ruled)
{
	put(w, row->kind == RB_ROW_SUMS ? "<tr class=\"sums\">"
	       : ruled                  ? "<tr class=\"ruled\">"
					: "<tr>");
	for (size_t i = 0; i < w->table->columns; i++)
		put_cell(w, i, row->cell[i] ? row->cell[i] : "");
	put(w, "</tr>\n");
}

static void put_note(struct writer *w, const char *note)
{
	put(w, "<tr class=\"note\"><td colspan=\"");
	rb_sink_number(w->sink, (int64_t)w->table->columns);
	put(w, "\">");
	rb_sink_html_words(w->sink, note);
	put(w, "</td></tr>\n");
}

static void put_rows(struct writer *w)
{
	bool ruled = false;

	put(w, "<tbody>\n");
	for (const struct rb_table_row *row = w->table->first; row; row = row->next) {
		if (row->kind == RB_ROW_NOTE)
			put_note(w, row->note);
		else if (row->kind != RB_ROW_RULE)
			put_row(w, row, ruled);
		ruled = row->kind == RB_ROW_RULE;
	}
	put(w, "</tbody>\n");
}

static void put_box(struct writer *w, unsigned number)
{
	size_t size = print_size(w);

	put(w, "<section class=\"scroll");
	put(w, is_short(w->table) ? " short" : "");
	put(w, "\" tabindex=\"0\" aria-label=\"");
	if (w->table->caption) {
		rb_sink_escaped_text(w->sink, w->table->caption);
	} else {
		put(w, "Table ");
		rb_sink_number(w->sink, number);
	}
	put(w, "\">\n<table style=\"--print:");
	rb_sink_number(w->sink, (int64_t)size / 10);
	put(w, ".");
	rb_sink_number(w->sink, (int64_t)size % 10);
	put(w, "pt\">\n");
}

bool rb_html_table(struct rb_sink *sink, const struct rb_table *table, unsigned number)
{
	struct writer w = { .sink = sink, .table = table };

	if (table->out_of_memory || !rb_layout_make(&w.layout, table, SIZE_MAX / 2))
		return false;
	put_box(&w, number);
	if (table->caption) {
		put(&w, "<caption>");
		rb_sink_escaped_text(sink, table->caption);
		put(&w, "</caption>\n");
	}
	put_head(&w);
	put_rows(&w);
	put(&w, "</table>\n</section>\n");
	return true;
}
