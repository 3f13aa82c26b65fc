/* SPDX-License-Identifier: MIT */
/*
 * index.h - numbers found by a text.
 *
 * Years of days make a long record: which book has this digest, and which was the last of
 * this name, is looked up at one step however many there are.
 */
#ifndef RB_RECORD_INDEX_H
#define RB_RECORD_INDEX_H

#include <stdbool.h>

#include "rodbook/arena.h"

#define RB_NOT_IN_INDEX UINT32_MAX

struct rb_index {
	struct rb_arena *arena;
	struct rb_index_slot {
		const char *text; /* NULL: free */
		uint32_t number;
	} * slot;
	uint32_t slots; /* a power of two, or 0 */
	uint32_t used;
};

/* The number that stands under a text, or RB_NOT_IN_INDEX. */
uint32_t rb_index_find(const struct rb_index *index, const char *text);

/* Let a number stand under a text, in place of any before; the text is borrowed.  False
 * if there is no memory. */
bool rb_index_set(struct rb_index *index, const char *text, uint32_t number);

#endif
