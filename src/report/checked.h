/* SPDX-License-Identifier: MIT */
/*
 * checked.h - books that were checked, as their writers take them.
 *
 * What a cell that is not filled in should hold is told only where `answers` asks for it:
 * an instructor hands the result back to the student.
 */
#ifndef RB_REPORT_CHECKED_H
#define RB_REPORT_CHECKED_H

#include "level/hand_check.h"
#include "report/sink.h"
#include "rodbook/table.h"

struct rb_checked_book {
	const struct rb_hand_check *check;
	const struct rb_findings *findings;
	struct rb_style style; /* in which its values are shown */
};

struct rb_checked {
	struct rb_arena *arena;
	const struct rb_checked_book *book;
	size_t books;
	int decimals; /* of JSON and CSV; -1: rb_json_decimals() */
	bool answers; /* tell also what belongs in the empty cells */
	bool steps;   /* show how each value comes out */
};

static inline const struct rb_book *rb_checked_of(const struct rb_checked_book *book)
{
	return book->check->reduced->book;
}

/* The step that was missed most over all the books; wrong is 0 where none was. */
struct rb_most_missed {
	enum rb_hand_step step;
	uint32_t wrong, filled; /* cells of that step: wrong ones, and filled in at all */
	uint32_t books;         /* in which it is wrong at least once */
	enum rb_hand_cause cause; /* the likeliest there, most often */
};

struct rb_most_missed rb_checked_most_missed(const struct rb_checked *checked);

/* The cells that are wrong, book by book, the first first.  NULL without memory. */
struct rb_page *rb_checked_page(const struct rb_checked *checked);

/* The mark sheet: a line a book, and the step that was missed most.  NULL without memory.
 */
struct rb_page *rb_marks_page(const struct rb_checked *checked);

/* The same two as JSON: one book is an object, several stand under "books". */
bool rb_checked_write_json(struct rb_sink *sink, const struct rb_checked *checked);
bool rb_marks_write_json(struct rb_sink *sink, const struct rb_checked *checked);

/* And as CSV: book,student,line,point,column,written,follows,likely and
 * student,book,cells,right,wrong,carried,not_filled_in. */
bool rb_checked_write_csv(struct rb_sink *sink, const struct rb_checked *checked);
bool rb_marks_write_csv(struct rb_sink *sink, const struct rb_checked *checked);

#endif
