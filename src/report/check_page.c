/* SPDX-License-Identifier: MIT */
/* check_page.c - what is wrong in a hand-reduced book, as a page. */
#include "report/checked.h"

#include <stdio.h>

#include "report/legs_table.h"
#include "report/phrase.h"
#include "report/section_words.h"
#include "report/steps.h"
#include "report/titles.h"

/* A page on its way: one book of it. */
struct writer {
	const struct rb_checked *checked;
	const struct rb_checked_book *at;
	const struct rb_book *book;
	struct rb_page *page;
	struct rb_phrase *phrase;
};

static uint32_t count(const struct writer *w, enum rb_hand_state state)
{
	return rb_hand_count(w->at->check, state);
}

static void add(struct writer *w, enum rb_block_kind kind)
{
	rb_page_add(w->page, kind, w->phrase->text, NULL);
	rb_phrase_clear(w->phrase);
}

static void put_title(struct writer *w)
{
	const struct rb_book_keys *key = &w->book->key;
	struct rb_phrase aside;

	rb_phrase_init(&aside, w->checked->arena);
	rb_title_aside(&aside, w->book->file, w->at->style.unit);
	rb_phrase_words(w->phrase, *key->project ? key->project : "Level notes");
	if (*key->date)
		rb_phrase_text(w->phrase, ", ");
	rb_phrase_words(w->phrase, key->date);
	if (*key->student)
		rb_phrase_text(w->phrase, ", ");
	rb_phrase_words(w->phrase, key->student);
	rb_page_add(w->page, RB_TITLE, w->phrase->text, aside.text);
	w->page->out_of_memory |= aside.out_of_memory;
	rb_phrase_clear(w->phrase);
}

/* -- one cell in words -- */

/* Sight lengths in feet or metres, with their unit where all else is in another. */
static struct rb_style style_of(const struct writer *w, enum rb_column column)
{
	struct rb_style runs = rb_runs_style(w->at->style.unit);
	int decimals = rb_book_places(w->book, column).decimals;

	if (!rb_hand_is_run(column))
		return w->at->style;
	if (runs.decimals < decimals)
		runs.decimals = decimals;
	runs.marked = runs.unit != w->at->style.unit;
	return runs;
}

static const char *name_of(const struct writer *w, const struct rb_hand_cell *cell)
{
	return rb_book_typed(w->book, cell->row);
}

/* "line 9, elevation at TP-2" */
static void put_place(struct writer *w, const struct rb_hand_cell *cell)
{
	rb_phrase_text(w->phrase, "line ");
	rb_phrase_number(w->phrase, rb_book_line(w->book, cell->row));
	rb_phrase_text(w->phrase, ", ");
	rb_phrase_text(w->phrase, w->book->heading[cell->column]);
	if (!*name_of(w, cell))
		return;
	rb_phrase_text(w->phrase, cell->step >= RB_STEP_SUM ? " in the row " : " at ");
	rb_phrase_words(w->phrase, name_of(w, cell));
}

/* "103.35 - 3.52 = 99.83", worked as on paper where there are inches. */
static void put_working(struct writer *w, const struct rb_hand_cell *cell)
{
	if (cell->step == RB_STEP_HEIGHT)
		rb_steps_add(w->phrase, cell->base, cell->reading, w->at->style, 4);
	else
		rb_steps_subtract(w->phrase, cell->base, cell->reading, w->at->style, 4);
}

/* A working that has no answer in it which was not asked for. */
static bool may_work(const struct writer *w, const struct rb_hand_cell *cell)
{
	if (!rb_length_given(cell->reading))
		return false;
	return w->checked->answers ||
	       (cell->state != RB_HAND_EMPTY && !cell->base_unwritten);
}

static void put_likely(struct writer *w, const struct rb_hand_cell *cell)
{
	const char *likely = rb_hand_cause_name(cell->cause);

	if (!likely)
		return;
	rb_phrase_text(w->phrase, likely);
	if (cell->cause_row == RB_NO_ROW)
		return;
	rb_phrase_text(w->phrase, " (line ");
	rb_phrase_number(w->phrase, rb_book_line(w->book, cell->cause_row));
	rb_phrase_text(w->phrase, ")");
}

/* -- the first wrong line -- */

static void put_first(struct writer *w, const struct rb_hand_cell *cell)
{
	struct rb_style style = style_of(w, cell->column);

	rb_phrase_text(w->phrase, "First wrong: ");
	put_place(w, cell);
	rb_phrase_text(w->phrase, ".");
	add(w, RB_HEADING);
	if (may_work(w, cell)) {
		rb_phrase_text(w->phrase, "  ");
		put_working(w, cell);
		add(w, RB_LINES);
	}
	rb_phrase_length(w->phrase, cell->written, style);
	rb_phrase_text(w->phrase, " is written, ");
	rb_phrase_length(w->phrase, cell->follows, style);
	rb_phrase_text(w->phrase, " comes out of what stands before it: ");
	rb_phrase_off(w->phrase, rb_length_sub(cell->written, cell->follows), style);
	rb_phrase_text(w->phrase, ".");
	if (cell->cause) {
		rb_phrase_text(w->phrase, " Likely: ");
		put_likely(w, cell);
		rb_phrase_text(w->phrase, ".");
	}
	add(w, RB_PARAGRAPH);
}

/* -- the table of wrong cells -- */

/* Of a cell that is not filled in there is nothing behind what follows. */
enum {
	LINE,
	POINT,
	COLUMN,
	FOLLOWS,
	EMPTY_COLUMNS,
	WRITTEN = EMPTY_COLUMNS,
	OFF,
	LIKELY,
	COLUMNS
};

static struct rb_table *start_table(struct writer *w, enum rb_hand_state state)
{
	enum rb_align align =
		w->at->style.unit == RB_FEET_INCHES ? RB_ON_INCHES : RB_ON_POINT;
	const struct rb_table_column column[COLUMNS] = {
		[LINE] = { "line", RB_RIGHT, RB_KEEPS },
		[POINT] = { "point", RB_LEFT, RB_SPILLS },
		[COLUMN] = { "column", RB_LEFT, RB_KEEPS },
		[FOLLOWS] = { "follows", align, RB_KEEPS },
		[WRITTEN] = { "written", align, RB_KEEPS },
		[OFF] = { "off by", align, RB_KEEPS },
		[LIKELY] = { "likely", RB_LEFT, RB_SPILLS },
	};

	return rb_page_table(w->page, NULL, column,
			     state == RB_HAND_EMPTY ? EMPTY_COLUMNS : COLUMNS);
}

static const char *short_column(const struct writer *w, enum rb_column column)
{
	return column == RB_HEIGHT_OF_INSTRUMENT ? "HI" : w->book->heading[column];
}

static void put_row(struct writer *w, struct rb_table *table,
		    const struct rb_hand_cell *cell)
{
	struct rb_style style = style_of(w, cell->column);
	char line[16], written[RB_LENGTH_TEXT], follows[RB_LENGTH_TEXT],
		off[RB_LENGTH_TEXT];
	const char *cells[COLUMNS] = {
		[LINE] = line,       [POINT] = name_of(w, cell),
		[FOLLOWS] = follows, [COLUMN] = short_column(w, cell->column),
		[WRITTEN] = written, [OFF] = off,
	};

	snprintf(line, sizeof line, "%u", rb_book_line(w->book, cell->row));
	rb_length_format(written, cell->written, style);
	rb_length_format(follows, cell->follows, style);
	*off = '\0';
	if (rb_length_given(cell->written))
		rb_length_format(off, rb_length_sub(cell->written, cell->follows), style);
	rb_phrase_clear(w->phrase);
	put_likely(w, cell);
	cells[LIKELY] = w->phrase->text;
	rb_table_add(table, RB_ROW, cells);
	rb_phrase_clear(w->phrase);
}

static void put_table(struct writer *w, enum rb_hand_state state)
{
	const struct rb_hand_check *check = w->at->check;
	struct rb_table *table = start_table(w, state);

	for (uint32_t i = 0; table && i < check->cells; i++)
		if (check->cell[i].state == state)
			put_row(w, table, &check->cell[i]);
}

/* -- the arithmetic of every cell, with --steps -- */

static void put_step(struct writer *w, const struct rb_hand_cell *cell)
{
	put_place(w, cell);
	rb_phrase_text(w->phrase, ":\n  ");
	put_working(w, cell);
	if (cell->state == RB_HAND_WRONG) {
		rb_phrase_text(w->phrase, "\n    but written: ");
		rb_phrase_length(w->phrase, cell->written, w->at->style);
	} else if (cell->state == RB_HAND_EMPTY) {
		rb_phrase_text(w->phrase, "\n    not filled in");
	}
	add(w, RB_LINES);
}

static void put_steps(struct writer *w)
{
	const struct rb_hand_check *check = w->at->check;

	for (uint32_t i = 0; i < check->cells; i++)
		if (may_work(w, &check->cell[i]))
			put_step(w, &check->cell[i]);
}

/* -- the verdict -- */

static void put_count(struct writer *w, uint32_t number, const char *one,
		      const char *more)
{
	rb_phrase_number(w->phrase, number);
	rb_phrase_text(w->phrase, number == 1 ? one : more);
}

static void put_filled(struct writer *w, uint32_t wrong, uint32_t filled)
{
	if (wrong) {
		rb_phrase_text(w->phrase, "WRONG: ");
		put_count(w, wrong, " cell of ", " cells of ");
		rb_phrase_number(w->phrase, filled);
		rb_phrase_text(w->phrase, " filled in");
	} else if (filled) {
		rb_phrase_text(w->phrase, "FOLLOWS: ");
		put_count(w, filled, " cell, all that is filled in",
			  " cells, all that are filled in");
	} else {
		rb_phrase_text(w->phrase, "NOTHING FILLED IN");
	}
}

static void put_verdict(struct writer *w)
{
	uint32_t wrong = count(w, RB_HAND_WRONG), carried = count(w, RB_HAND_CARRIED);
	uint32_t empty = count(w, RB_HAND_EMPTY);

	if (w->checked->books > 1) {
		rb_phrase_words(w->phrase, rb_title_file(w->book->file));
		rb_phrase_text(w->phrase, ": ");
	}
	put_filled(w, wrong, w->at->check->cells - empty);
	if (carried) {
		rb_phrase_text(w->phrase, "; ");
		rb_phrase_number(w->phrase, carried);
		rb_phrase_text(w->phrase, wrong > 1 ? " more only because of them"
						    : " more only because of it");
	}
	if (empty) {
		rb_phrase_text(w->phrase, "; ");
		put_count(w, empty, " cell not filled in", " cells not filled in");
	}
	rb_phrase_text(w->phrase, ".");
	add(w, RB_VERDICT);
}

static void put_book(struct writer *w)
{
	const struct rb_hand_check *check = w->at->check;
	uint32_t wrong = count(w, RB_HAND_WRONG);

	put_title(w);
	for (uint32_t i = 0; wrong && i < check->cells; i++)
		if (check->cell[i].state == RB_HAND_WRONG) {
			put_first(w, &check->cell[i]);
			break;
		}
	if (wrong > 1)
		put_table(w, RB_HAND_WRONG);
	if (w->checked->steps)
		put_steps(w);
	if (w->checked->answers && count(w, RB_HAND_EMPTY)) {
		rb_page_add(w->page, RB_HEADING, "Not filled in:", NULL);
		put_table(w, RB_HAND_EMPTY);
	}
	put_verdict(w);
}

struct rb_page *rb_checked_page(const struct rb_checked *checked)
{
	struct rb_page *page = rb_page_new(checked->arena);
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, checked->arena);
	if (!page || phrase.out_of_memory)
		return NULL;
	for (size_t i = 0; i < checked->books; i++) {
		struct writer w = { checked, &checked->book[i],
				    rb_checked_of(&checked->book[i]), page, &phrase };

		put_book(&w);
	}
	rb_page_add(
		page, RB_PARAGRAPH,
		"Only what was worked out is checked here. A wrong reading shows in the "
		"closure, never in the arithmetic: rodbook reduce.",
		NULL);
	return page->out_of_memory || phrase.out_of_memory ? NULL : page;
}
