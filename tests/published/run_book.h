/* SPDX-License-Identifier: MIT */
/*
 * run_book.h - printed level notes, reduced and compared with what is printed beside
 * them.
 *
 * A page is a table as it stands in the source: what the note keeper read, and what came
 * out of it.  Numbers are texts; a value must come out as they say, to their last place.
 */
#ifndef TESTS_PUBLISHED_RUN_BOOK_H
#define TESTS_PUBLISHED_RUN_BOOK_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#include "rodbook/reduce.h"

struct printed_row {
	const char *point, *known; /* "" where not written */
	const char *backsight, *intermediate, *foresight;
	/* What must come out; NULL: not compared. */
	const char *height_of_instrument, *rise, *elevation, *adjusted;
};

struct printed_page {
	const char *keys; /* lines above the header: "unit,m\n" */
	const struct printed_row *row;
	size_t rows;
	const char *distances; /* of every backsight and foresight, or NULL */
	/* Of its one section; NULL: not compared. */
	const char *sum_backsight, *sum_foresight, *rises, *falls, *misclosure, *allowed;
	uint32_t setups;
	enum rb_verdict verdict;
	bool adjust_anyway;
};

/* A page that was reduced; the arena owns it all. */
struct run {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_book *book;
	struct rb_reduced *reduced;
	struct rb_sections *sections;
	struct rb_adjusted *adjusted; /* NULL where any stage found an error */
};

struct run run_text(const char *csv, bool adjust_anyway);
struct run run_page(const struct printed_page *page);
void run_end(struct run *run);

/* Compare all that the page prints; names what differs and returns how much did. */
int wrong_on_page(const struct printed_page *page);

/* Is the length, rounded to the places of the text, what the text says?  Names it if not,
 * and returns 1.  `exact`: there must be nothing to round. */
int wrong_length(const char *what, rb_length got, const char *printed, enum rb_unit unit,
		 bool exact);

#define ROWS(table) (table), sizeof(table) / sizeof *(table)

#endif
