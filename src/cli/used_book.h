/* SPDX-License-Identifier: MIT */
/*
 * used_book.h - a book whose elevations another result is made from.
 *
 * It is reduced and adjusted as it says itself.  One that misses its tolerance is shown
 * with the slips that would explain it, and nothing is staked from it unasked.
 */
#ifndef RB_CLI_USED_BOOK_H
#define RB_CLI_USED_BOOK_H

#include "cli/job.h"
#include "level/spots.h"
#include "report/reduction.h"

struct rb_used_book {
	struct rb_job_file *file;
	const struct rb_adjusted *adjusted;
	const struct rb_spots *spots; /* NULL: there is no such book, or no result */
};

/* Read a book and work it out; false after an error, true with no spots where the name is
 * NULL. */
bool rb_used_book_read(struct rb_job *job, const char *name, struct rb_used_book *book);

/* Write, in place of the result, the book that does not close. */
void rb_used_book_refuse(struct rb_job *job, const struct rb_used_book *book);

#endif
