/* SPDX-License-Identifier: MIT */
/* check_json.c - checked books and marks as JSON. */
#include "report/checked.h"

#include "report/json.h"
#include "report/message_json.h"
#include "report/titles.h"

/* What is written for one book. */
struct writer {
	struct rb_json json;
	const struct rb_checked *checked;
	const struct rb_checked_book *at;
	enum rb_unit unit;
};

static void choose_book(struct writer *w, size_t i)
{
	w->at = &w->checked->book[i];
	w->unit = w->at->style.unit == RB_FEET_INCHES ? RB_FEET : w->at->style.unit;
}

static void put_text(struct writer *w, const char *key, const char *text)
{
	rb_json_key(&w->json, key);
	rb_json_text(&w->json, text);
}

static void put_count(struct writer *w, const char *key, uint32_t count)
{
	rb_json_key(&w->json, key);
	rb_json_count(&w->json, count);
}

static void put_length(struct writer *w, const char *key, rb_length value,
		       enum rb_column column)
{
	enum rb_unit unit = rb_hand_unit(column, w->unit);
	int asked = w->checked->decimals;

	rb_json_key(&w->json, key);
	rb_json_length(&w->json, value, unit, asked < 0 ? rb_json_decimals(unit) : asked);
}

/* The heading with underscores: "height_of_instrument". */
static void put_column(struct writer *w, const char *heading)
{
	char name[40];
	size_t i = 0;

	for (; heading[i] && i + 1 < sizeof name; i++)
		name[i] = heading[i] == ' ' ? '_' : heading[i];
	name[i] = '\0';
	put_text(w, "column", name);
}

static void put_cell(struct writer *w, const struct rb_hand_cell *cell)
{
	const struct rb_book *book = rb_checked_of(w->at);

	rb_json_open_line(&w->json, '{');
	put_count(w, "line", rb_book_line(book, cell->row));
	put_text(w, "point", rb_book_typed(book, cell->row));
	put_column(w, book->heading[cell->column]);
	if (cell->state == RB_HAND_WRONG)
		put_length(w, "written", cell->written, cell->column);
	put_length(w, "follows", cell->follows, cell->column);
	if (cell->state == RB_HAND_WRONG)
		put_text(w, "likely", rb_hand_cause_name(cell->cause));
	rb_json_close(&w->json);
}

static void put_cells(struct writer *w, const char *key, enum rb_hand_state state)
{
	const struct rb_hand_check *check = w->at->check;

	rb_json_key(&w->json, key);
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < check->cells; i++)
		if (check->cell[i].state == state)
			put_cell(w, &check->cell[i]);
	rb_json_close(&w->json);
}

static void put_book(struct writer *w)
{
	const struct rb_book *book = rb_checked_of(w->at);

	put_text(w, "book", rb_title_file(book->file));
	put_text(w, "student", book->key.student);
	put_text(w, "unit", rb_unit_name(w->unit));
	put_cells(w, "wrong", RB_HAND_WRONG);
	put_count(w, "carried", rb_hand_count(w->at->check, RB_HAND_CARRIED));
	put_count(w, "right", rb_hand_count(w->at->check, RB_HAND_RIGHT));
	put_count(w, "not_filled_in", rb_hand_count(w->at->check, RB_HAND_EMPTY));
	if (w->checked->answers)
		put_cells(w, "answers", RB_HAND_EMPTY);
}

static bool put_messages(struct writer *w)
{
	size_t books = w->checked->books;
	const struct rb_findings **list =
		rb_arena_take(w->checked->arena, books + 1, sizeof *list);
	bool worded;

	if (!list)
		return false;
	for (size_t i = 0; i < books; i++)
		list[i] = w->checked->book[i].findings;
	worded = rb_messages_write_json(&w->json, list, books);
	rb_json_end(&w->json);
	return worded;
}

bool rb_checked_write_json(struct rb_sink *sink, const struct rb_checked *checked)
{
	struct writer w = { .checked = checked };

	rb_json_init(&w.json, sink);
	rb_json_head(&w.json);
	if (checked->books == 1) {
		choose_book(&w, 0);
		put_book(&w);
		return put_messages(&w);
	}
	rb_json_key(&w.json, "books");
	rb_json_open(&w.json, '[');
	for (size_t i = 0; i < checked->books; i++) {
		choose_book(&w, i);
		rb_json_open(&w.json, '{');
		put_book(&w);
		rb_json_close(&w.json);
	}
	rb_json_close(&w.json);
	return put_messages(&w);
}

static void put_marks(struct writer *w)
{
	const struct rb_book *book = rb_checked_of(w->at);
	const struct rb_hand_check *check = w->at->check;

	rb_json_open_line(&w->json, '{');
	put_text(w, "student", book->key.student);
	put_text(w, "book", rb_title_file(book->file));
	put_count(w, "cells", check->cells);
	put_count(w, "right", rb_hand_count(check, RB_HAND_RIGHT));
	put_count(w, "wrong", rb_hand_count(check, RB_HAND_WRONG));
	put_count(w, "carried", rb_hand_count(check, RB_HAND_CARRIED));
	put_count(w, "not_filled_in", rb_hand_count(check, RB_HAND_EMPTY));
	rb_json_close(&w->json);
}

static void put_most_missed(struct writer *w)
{
	struct rb_most_missed most = rb_checked_most_missed(w->checked);

	rb_json_key(&w->json, "most_missed");
	if (!most.wrong) {
		rb_json_null(&w->json);
		return;
	}
	rb_json_open_line(&w->json, '{');
	put_text(w, "step", rb_hand_step_name(most.step));
	put_count(w, "wrong", most.wrong);
	put_count(w, "cells", most.filled);
	put_count(w, "books", most.books);
	put_text(w, "likely", rb_hand_cause_name(most.cause));
	rb_json_close(&w->json);
}

bool rb_marks_write_json(struct rb_sink *sink, const struct rb_checked *checked)
{
	struct writer w = { .checked = checked };

	rb_json_init(&w.json, sink);
	rb_json_head(&w.json);
	rb_json_key(&w.json, "marks");
	rb_json_open(&w.json, '[');
	for (size_t i = 0; i < checked->books; i++) {
		choose_book(&w, i);
		put_marks(&w);
	}
	rb_json_close(&w.json);
	put_most_missed(&w);
	return put_messages(&w);
}
