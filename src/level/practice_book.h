/* SPDX-License-Identifier: MIT */
/*
 * practice_book.h - a level loop made up, and one slip put into it;
 * src/level/practice*.c.
 */
#ifndef RB_LEVEL_PRACTICE_BOOK_H
#define RB_LEVEL_PRACTICE_BOOK_H

#include "level/practice.h"
#include "level/random.h"

/* What the last place of a reading is worth. */
int64_t rb_practice_step(const struct rb_practice_options *options);

/* Make up a loop from a benchmark back to it, worked out by hand; every number in it is a
 * whole number of steps.  NULL if memory ran out. */
struct rb_practice_book *rb_practice_book(struct rb_arena *arena,
					  const struct rb_practice_options *options,
					  struct rb_random *random);

/* Put one slip into a worked book; what follows it is carried on from it, as the note
 * keeper would. */
void rb_practice_plant(struct rb_practice_book *book,
		       const struct rb_practice_options *options,
		       struct rb_random *random);

#endif
