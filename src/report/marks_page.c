/* SPDX-License-Identifier: MIT */
/* marks_page.c - the mark sheet of a class. */
#include "report/checked.h"

#include <stdio.h>

#include "report/phrase.h"
#include "report/titles.h"

enum { STUDENT, BOOK, CELLS, RIGHT, WRONG, CARRIED, EMPTY, COLUMNS };

static const struct rb_table_column columns[COLUMNS] = {
	[STUDENT] = { "student", RB_LEFT, RB_SPILLS },
	[BOOK] = { "book", RB_LEFT, RB_MOVES },
	[CELLS] = { "cells", RB_RIGHT, RB_KEEPS },
	[RIGHT] = { "right", RB_RIGHT, RB_KEEPS },
	[WRONG] = { "wrong", RB_RIGHT, RB_KEEPS },
	[CARRIED] = { "carried", RB_RIGHT, RB_KEEPS },
	[EMPTY] = { "not filled in", RB_RIGHT, RB_KEEPS },
};

/* -- the step that was missed most -- */

static void count_step(const struct rb_checked *checked, struct rb_most_missed *missed)
{
	for (size_t i = 0; i < checked->books; i++) {
		const uint32_t *of = checked->book[i].check->count[missed->step];

		missed->wrong += of[RB_HAND_WRONG];
		missed->filled +=
			of[RB_HAND_WRONG] + of[RB_HAND_RIGHT] + of[RB_HAND_CARRIED];
		missed->books += of[RB_HAND_WRONG] > 0;
	}
}

/* More wrong cells, or as many of fewer. */
static bool worse(const struct rb_most_missed *a, const struct rb_most_missed *b)
{
	return a->wrong != b->wrong ? a->wrong > b->wrong : a->filled < b->filled;
}

static enum rb_hand_cause likeliest(const struct rb_checked *checked,
				    enum rb_hand_step step)
{
	uint32_t times[RB_HAND_CAUSES] = { 0 };
	enum rb_hand_cause most = RB_CAUSE_UNKNOWN;

	for (size_t i = 0; i < checked->books; i++) {
		const struct rb_hand_check *check = checked->book[i].check;

		for (uint32_t k = 0; k < check->cells; k++)
			if (check->cell[k].step == step &&
			    check->cell[k].state == RB_HAND_WRONG && check->cell[k].cause)
				times[check->cell[k].cause]++;
	}
	for (int cause = 0; cause < RB_HAND_CAUSES; cause++)
		if (times[cause] > times[most])
			most = (enum rb_hand_cause)cause;
	return most;
}

struct rb_most_missed rb_checked_most_missed(const struct rb_checked *checked)
{
	struct rb_most_missed most = { .wrong = 0 };

	for (int step = 0; step < RB_HAND_STEPS; step++) {
		struct rb_most_missed missed = { .step = (enum rb_hand_step)step };

		count_step(checked, &missed);
		if (missed.wrong && worse(&missed, &most))
			most = missed;
	}
	if (most.wrong)
		most.cause = likeliest(checked, most.step);
	return most;
}

static void put_most_missed(struct rb_page *page, struct rb_phrase *phrase,
			    const struct rb_checked *checked)
{
	struct rb_most_missed most = rb_checked_most_missed(checked);
	const char *likely = rb_hand_cause_name(most.cause);

	if (!most.wrong) {
		rb_page_add(page, RB_VERDICT, "Nothing that is filled in is wrong.",
			    NULL);
		return;
	}
	rb_phrase_text(phrase, "Most missed step: ");
	rb_phrase_text(phrase, rb_hand_step_name(most.step));
	rb_phrase_text(phrase, ", wrong in ");
	rb_phrase_number(phrase, most.wrong);
	rb_phrase_text(phrase, " of ");
	rb_phrase_number(phrase, most.filled);
	rb_phrase_text(phrase, most.filled == 1 ? " cell, in " : " cells, in ");
	rb_phrase_number(phrase, most.books);
	rb_phrase_text(phrase, " of ");
	rb_phrase_number(phrase, (int64_t)checked->books);
	rb_phrase_text(phrase, checked->books == 1 ? " book" : " books");
	if (likely) {
		rb_phrase_text(phrase, "; likeliest: ");
		rb_phrase_text(phrase, likely);
	}
	rb_phrase_text(phrase, ".");
	rb_page_add(page, RB_VERDICT, phrase->text, NULL);
}

/* -- the sheet -- */

struct marks {
	uint32_t number[COLUMNS];
};

static struct marks marks_of(const struct rb_hand_check *check)
{
	struct marks m = { { 0 } };

	m.number[CELLS] = check->cells;
	m.number[RIGHT] = rb_hand_count(check, RB_HAND_RIGHT);
	m.number[WRONG] = rb_hand_count(check, RB_HAND_WRONG);
	m.number[CARRIED] = rb_hand_count(check, RB_HAND_CARRIED);
	m.number[EMPTY] = rb_hand_count(check, RB_HAND_EMPTY);
	return m;
}

static void put_row(struct rb_table *table, enum rb_row_kind kind, const char *student,
		    const char *book, const struct marks *m)
{
	char text[COLUMNS][16];
	const char *cell[COLUMNS] = { student, book };

	for (int i = CELLS; i < COLUMNS; i++) {
		snprintf(text[i], sizeof text[i], "%u", m->number[i]);
		cell[i] = text[i];
	}
	rb_table_add(table, kind, cell);
}

static void put_rows(struct rb_table *table, const struct rb_checked *checked)
{
	struct marks all = { { 0 } };

	for (size_t i = 0; i < checked->books; i++) {
		const struct rb_book *book = rb_checked_of(&checked->book[i]);
		struct marks m = marks_of(checked->book[i].check);

		put_row(table, RB_ROW, book->key.student, rb_title_file(book->file), &m);
		for (int k = CELLS; k < COLUMNS; k++)
			all.number[k] += m.number[k];
	}
	put_row(table, RB_ROW_SUMS, "all", "", &all);
}

struct rb_page *rb_marks_page(const struct rb_checked *checked)
{
	struct rb_page *page = rb_page_new(checked->arena);
	struct rb_table *table;
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, checked->arena);
	if (!page || phrase.out_of_memory)
		return NULL;
	rb_page_add(page, RB_TITLE, "Mark sheet", NULL);
	table = rb_page_table(page, NULL, columns, COLUMNS);
	if (table)
		put_rows(table, checked);
	rb_page_add(
		page, RB_PARAGRAPH,
		"Carried: follows from the student's own values, and is wrong only because "
		"an earlier one was.",
		NULL);
	put_most_missed(page, &phrase, checked);
	return page->out_of_memory || phrase.out_of_memory ? NULL : page;
}
