/* SPDX-License-Identifier: MIT */
/*
 * practice_sheet.h - problems to work by hand, in words, and their key.
 *
 * A sheet asks and leaves room; the key has the answers with every step.  A loop's sheet
 * is a book: as CSV it is read by every command, and `check` marks it once it is filled
 * in.
 */
#ifndef RB_REPORT_PRACTICE_SHEET_H
#define RB_REPORT_PRACTICE_SHEET_H

#include "level/practice.h"
#include "report/phrase.h"
#include "report/sink.h"
#include "rodbook/table.h"

struct rb_practice_sheet {
	struct rb_arena *arena;
	const struct rb_practice_options *options;
	const struct rb_problem *const *problem;
	size_t count;
	bool answers; /* the key */
};

/* What is asked, and what comes out. */
void rb_problem_text(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
		     const struct rb_problem *problem);
void rb_problem_answer(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
		       const struct rb_problem *problem);

/* Every step, a line each, without a line end behind the last. */
void rb_problem_steps(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
		      const struct rb_problem *problem);

/* The same for the problems about a fall, an invert or a grade rod, and for a book. */
void rb_fall_problem_text(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
			  const struct rb_problem *problem);
void rb_fall_problem_answer(struct rb_phrase *phrase,
			    const struct rb_practice_sheet *sheet,
			    const struct rb_problem *problem);
void rb_fall_problem_steps(struct rb_phrase *phrase,
			   const struct rb_practice_sheet *sheet,
			   const struct rb_problem *problem);
void rb_book_problem_steps(struct rb_phrase *phrase,
			   const struct rb_practice_sheet *sheet,
			   const struct rb_practice_book *book);

/* The line of a row in the book as CSV. */
uint32_t rb_practice_line(uint32_t row);

/* Are the cells that are worked out by hand filled in? */
bool rb_practice_is_filled(const struct rb_practice_sheet *sheet);

/* Write the book of a loop as CSV; that of a sheet has nothing worked out. */
void rb_practice_write_book(struct rb_sink *sink, const struct rb_practice_sheet *sheet,
			    const struct rb_problem *problem);

/* The whole sheet.  NULL or false if memory ran out. */
struct rb_page *rb_practice_page(const struct rb_practice_sheet *sheet);
bool rb_practice_write_json(struct rb_sink *sink, const struct rb_practice_sheet *sheet);
bool rb_practice_write_csv(struct rb_sink *sink, const struct rb_practice_sheet *sheet);

/* "convert", "loop", "fall". */
const char *rb_practice_kind_name(enum rb_practice_kind kind);

#endif
