/* SPDX-License-Identifier: MIT */
/* text.c - a page's blocks, one after another, as plain text. */
#include "report/text.h"

#include <string.h>

#include "report/layout.h"
#include "report/phrase.h"
#include "report/width.h"

#define MEASURE 72 /* columns of prose that stands by no wider table */
#define INDENT  4  /* of what goes on a line of its own in a table */

/* A page on its way out. */
struct writer {
	struct rb_sink *sink;
	struct rb_text_style style;
	size_t measure;                /* columns of prose */
	const struct rb_block *before; /* the block just written */
	struct rb_phrase below;        /* what goes on the line below a row */
	size_t verdicts;               /* of the page */
};

static void put_shown(struct writer *w, const char *text)
{
	rb_sink_shown(w->sink, text, strlen(text));
}

static void put_bold(struct writer *w, bool on)
{
	if (w->style.bold)
		rb_sink_text(w->sink, on ? "\x1b[1m" : "\x1b[0m");
}

static void put_rule(struct writer *w, size_t columns)
{
	rb_sink_pad(w->sink, '-', columns);
	rb_sink_char(w->sink, '\n');
}

/* -- tables -- */

/* Blanks that are owed before the next cell: never written at the end of a line. */
struct line {
	size_t owed;
};

static void put_owed(struct writer *w, struct line *line)
{
	rb_sink_pad(w->sink, ' ', line->owed);
	line->owed = 0;
}

/* Where a cell begins within its column. */
static size_t offset_of(const struct rb_column_layout *column, enum rb_align align,
			const char *cell)
{
	size_t right = (column->width - column->content) / 2; /* under a wider heading */
	size_t width = rb_width(cell, strlen(cell));

	if (align == RB_LEFT)
		return 0;
	if (align == RB_RIGHT)
		return column->width > width ? column->width - width : 0;
	if (align == RB_ON_POINT)
		return right + column->before - rb_width(cell, rb_layout_before(cell));
	return right + column->content - width;
}

static void put_cell(struct writer *w, struct line *line,
		     const struct rb_column_layout *column, enum rb_align align,
		     const char *cell)
{
	size_t offset, width;

	if (!cell) {
		line->owed += column->width;
		return;
	}
	offset = offset_of(column, align, cell);
	width = offset + rb_width(cell, strlen(cell));
	line->owed += offset;
	put_owed(w, line);
	put_shown(w, cell);
	line->owed = column->width > width ? column->width - width : 0;
}

/* Line `at` of the lines of a heading that is set at the bottom; its length in *length.
 */
static const char *heading_line(const char *heading, size_t lines, size_t at,
				size_t *length)
{
	size_t own = 1, skip;

	for (const char *c = heading; *c; c++)
		own += *c == '\n';
	skip = lines - own;
	*length = 0;
	if (at < skip)
		return "";
	for (at -= skip; at > 0; at--)
		heading += strcspn(heading, "\n") + 1;
	*length = strcspn(heading, "\n");
	return heading;
}

static void put_heading_line(struct writer *w, const struct rb_table *table,
			     const struct rb_layout *layout, size_t at)
{
	struct line line = { 0 };

	for (size_t i = 0; i < table->columns; i++) {
		size_t length, width, blank;
		const char *text = heading_line(table->column[i].heading,
						layout->headings, at, &length);
		bool left = table->column[i].align == RB_LEFT;

		if (layout->column[i].moved)
			continue;
		width = rb_width(text, length);
		blank = layout->column[i].width - width;
		line.owed += left ? 0 : blank;
		if (length) {
			put_owed(w, &line);
			rb_sink_shown(w->sink, text, length);
		} else {
			line.owed += width;
		}
		line.owed += (left ? blank : 0) + layout->gap;
	}
	rb_sink_char(w->sink, '\n');
}

/* A text on lines of its own, indented. */
static void put_note(struct writer *w, const char *note, size_t indent)
{
	rb_sink_pad(w->sink, ' ', indent);
	rb_sink_wrapped(w->sink, note, indent, indent, w->style.columns);
	rb_sink_char(w->sink, '\n');
}

static bool fits(const struct rb_table *table, const struct rb_layout *layout, size_t i,
		 const char *cell)
{
	return !cell || (!layout->column[i].moved &&
			 (table->column[i].room != RB_SPILLS ||
			  rb_width(cell, strlen(cell)) <= layout->column[i].width));
}

static void put_cells(struct writer *w, const struct rb_table *table,
		      const struct rb_layout *layout, const struct rb_table_row *row)
{
	struct line line = { 0 };

	for (size_t i = 0; i < table->columns; i++) {
		const char *cell = row->cell[i];

		if (layout->column[i].moved)
			continue;
		if (!fits(table, layout, i, cell))
			cell = NULL;
		put_cell(w, &line, &layout->column[i], table->column[i].align, cell);
		line.owed += layout->gap;
	}
	rb_sink_char(w->sink, '\n');
}

/* What goes on the line below a row: words as they are, a cell of a column that moved
 * behind its heading. */
static void add_below(struct writer *w, const struct rb_table_column *column,
		      const char *cell)
{
	rb_phrase_text(&w->below, w->below.used ? "; " : "");
	if (column->room >= RB_MOVES) {
		rb_phrase_text(&w->below, column->heading);
		rb_phrase_text(&w->below, " ");
	}
	rb_phrase_text(&w->below, cell);
}

/* A row: a name too wide for the first column stands above it, other words below. */
static void put_row(struct writer *w, const struct rb_table *table,
		    const struct rb_layout *layout, const struct rb_table_row *row)
{
	if (!fits(table, layout, 0, row->cell[0]))
		put_note(w, row->cell[0], 0);
	put_cells(w, table, layout, row);
	rb_phrase_clear(&w->below);
	for (size_t i = 1; i < table->columns; i++)
		if (!fits(table, layout, i, row->cell[i]))
			add_below(w, &table->column[i], row->cell[i]);
	if (w->below.used)
		put_note(w, w->below.text, INDENT);
}

static void put_table(struct writer *w, const struct rb_table *table,
		      const struct rb_layout *layout)
{
	bool ruled = layout->headings > 0;

	if (table->caption)
		put_note(w, table->caption, 0);
	for (size_t i = 0; i < layout->headings; i++)
		put_heading_line(w, table, layout, i);
	if (ruled)
		put_rule(w, layout->width);
	for (const struct rb_table_row *row = table->first; row; row = row->next) {
		bool rule = row->kind == RB_ROW_RULE || row->kind == RB_ROW_SUMS;

		if (rule && !ruled)
			put_rule(w, layout->width);
		ruled = row->kind == RB_ROW_RULE;
		if (row->kind == RB_ROW_NOTE)
			put_note(w, row->note, INDENT);
		else if (row->kind != RB_ROW_RULE)
			put_row(w, table, layout, row);
	}
}

/* -- other blocks -- */

static void put_title(struct writer *w, const struct rb_block *block)
{
	size_t width = rb_width(block->text, strlen(block->text));
	size_t aside = block->aside ? rb_width(block->aside, strlen(block->aside)) : 0;

	put_bold(w, true);
	rb_sink_wrapped(w->sink, block->text, 0, 0, w->measure);
	put_bold(w, false);
	if (aside && width + 2 + aside <= w->measure) {
		rb_sink_pad(w->sink, ' ', w->measure - width - aside);
		put_shown(w, block->aside);
	} else if (aside) {
		rb_sink_char(w->sink, '\n');
		rb_sink_wrapped(w->sink, block->aside, 0, 0, w->measure);
	}
	rb_sink_char(w->sink, '\n');
}

static void put_prose(struct writer *w, const char *text, size_t at, size_t indent)
{
	rb_sink_wrapped(w->sink, text, at, indent, w->measure);
	rb_sink_char(w->sink, '\n');
}

/* A line too long for the terminal goes on behind its own indent and two blanks. */
static void put_lines(struct writer *w, const char *text)
{
	while (*text) {
		size_t length = strcspn(text, "\n"), indent = strspn(text, " ");

		if (rb_width(text, length) <= w->style.columns) {
			rb_sink_shown(w->sink, text, length);
		} else {
			rb_sink_pad(w->sink, ' ', indent);
			rb_sink_wrapped_part(w->sink, text, length, indent, indent + 2,
					     w->style.columns);
		}
		rb_sink_char(w->sink, '\n');
		text += length + (text[length] == '\n');
	}
}

static void put_caution(struct writer *w, const struct rb_block *block)
{
	static const char head[] = "CAUTION: ";

	rb_sink_text(w->sink, head);
	rb_sink_wrapped(w->sink, block->text, sizeof head - 1, 2, w->measure);
	if (block->aside) {
		rb_sink_text(w->sink, "\n  (");
		rb_sink_wrapped(w->sink, block->aside, 3, 3, w->style.columns - 1);
		rb_sink_char(w->sink, ')');
	}
	rb_sink_char(w->sink, '\n');
}

static void put_block(struct writer *w, const struct rb_block *block,
		      const struct rb_layout *layout)
{
	switch (block->kind) {
	case RB_TITLE:
		put_title(w, block);
		break;
	case RB_HEADING:
	case RB_VERDICT:
		put_bold(w, true);
		rb_sink_wrapped(w->sink, block->text, 0, 0, w->measure);
		put_bold(w, false);
		rb_sink_char(w->sink, '\n');
		break;
	case RB_PARAGRAPH:
		put_prose(w, block->text, 0, 0);
		break;
	case RB_LINES:
		put_lines(w, block->text);
		break;
	case RB_CAUTION:
		put_caution(w, block);
		break;
	case RB_TABLE:
		put_table(w, block->table, layout);
		break;
	}
}

/* Words that belong to what stands above them follow it at once. */
static bool sets_apart(const struct writer *w, const struct rb_block *block)
{
	const struct rb_block *before = w->before;

	if (!before || before->kind == RB_TITLE || before->kind == RB_HEADING)
		return false;
	switch (block->kind) {
	case RB_PARAGRAPH:
	case RB_LINES:
		return before->kind == RB_CAUTION || before->kind == RB_LINES;
	case RB_VERDICT: /* several are found sooner when they stand by themselves */
		return before->kind == RB_CAUTION || before->kind == RB_LINES ||
		       (before->kind != RB_VERDICT && w->verdicts > 1);
	default:
		return before->kind != block->kind || block->kind == RB_TABLE;
	}
}

static bool lay_out(struct writer *w, const struct rb_page *page,
		    struct rb_layout *layout)
{
	w->measure = w->style.columns < MEASURE ? w->style.columns : MEASURE;
	for (const struct rb_block *b = page->first; b; b = b->next) {
		if (b->kind != RB_TABLE)
			continue;
		if (b->table->out_of_memory ||
		    !rb_layout_make(layout, b->table, w->style.columns))
			return false;
		if (layout->width > w->measure)
			w->measure = layout->width;
		layout++;
	}
	if (w->measure > w->style.columns)
		w->measure = w->style.columns;
	return true;
}

static void put_blocks(struct writer *w, const struct rb_page *page,
		       const struct rb_layout *layout, bool verdicts)
{
	for (const struct rb_block *b = page->first; b; b = b->next) {
		if ((b->kind == RB_VERDICT) == verdicts) {
			if (sets_apart(w, b))
				rb_sink_char(w->sink, '\n');
			put_block(w, b, layout);
			w->before = b;
		}
		layout += b->kind == RB_TABLE;
	}
}

bool rb_page_write_text(struct rb_sink *sink, const struct rb_page *page,
			struct rb_text_style style)
{
	struct writer w = { .sink = sink, .style = style };
	struct rb_layout *layout;
	size_t tables = 1;

	for (const struct rb_block *b = page->first; b; b = b->next) {
		tables += b->kind == RB_TABLE;
		w.verdicts += b->kind == RB_VERDICT;
	}
	layout = rb_arena_take(page->arena, tables, sizeof *layout);
	rb_phrase_init(&w.below, page->arena);
	if (page->out_of_memory || !layout || !lay_out(&w, page, layout))
		return false;
	put_blocks(&w, page, layout, false);
	put_blocks(&w, page, layout, true);
	return !w.below.out_of_memory;
}
