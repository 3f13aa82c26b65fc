/* SPDX-License-Identifier: MIT */
/*
 * work.h - what the targets do around their own work.
 *
 * Everything that is chosen beside the bytes of a file is drawn from these bytes: a seed
 * is then a file as a person would write it, and a fault is one too.
 */
#ifndef RB_TESTS_FUZZ_WORK_H
#define RB_TESTS_FUZZ_WORK_H

#include "report/profile.h"
#include "report/reduction.h"
#include "rodbook/rodbook.h"
#include "target.h"

/* A part of an input: several files in one stand apart by lines of "%%%%". */
struct part {
	const char *bytes;
	size_t length;
};

/* Part number i of an input, from 0; of no length where there are not so many. */
struct part part_of(const uint8_t *data, size_t size, int i);

/* A number drawn from the bytes; each change of them changes it all. */
uint32_t drawn_from(const uint8_t *data, size_t size);

/* 0 to below - 1, drawn from *draw, which goes on to the next. */
int draw(uint32_t *draws, int below);

/* A style that can be asked for on the command line. */
struct rb_style draw_style(uint32_t *draws, struct rb_style own);

/* A book that is worked out as far as it goes. */
struct work {
	struct rb_arena *arena;
	struct rb_findings findings;
	const struct rb_book *book;       /* NULL: it could not be read */
	const struct rb_reduced *reduced; /* NULL: or not reduced */
	struct rb_reduction reduction;    /* adjusted is NULL: there is no result */
};

/* Work out a book in an arena of the caller's; true where there is a result.  What every
 * stage promises is checked on the way: no result without a reason. */
bool work_out(struct work *work, struct rb_arena *arena, struct part book);

/* Every finding in words, plain or bold, or in JSON: which is drawn, since all of them
 * for each input take longer than what is looked at. */
void check_messages(const struct rb_findings *findings, uint32_t draws);

/* A page as text, plain and narrow or bold and wide, or as HTML with its picture: drawn.
 */
void check_page(const struct rb_page *page, const struct rb_profile *picture,
		uint32_t draws);

void check_picture(const struct rb_profile *picture);

#endif
