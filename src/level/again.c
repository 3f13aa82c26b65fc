/* SPDX-License-Identifier: MIT */
/* Points reached a second time: rule 7 of docs/formats.md. */
#include "level/again.h"

#include "notes/names.h"

#define TURNED_ON (RB_NO_SHOT - 1) /* a backsight was taken on it: never compared */

static void mark_turning_points(const struct rb_reduced *reduced, uint32_t *seen)
{
	for (uint32_t i = 0; i < reduced->book->points; i++)
		seen[i] = RB_NO_SHOT;
	for (uint32_t i = 0; i < reduced->setups; i++)
		seen[reduced->book->row[reduced->shot[reduced->setup[i].shot].row]
			     .point] = TURNED_ON;
}

bool rb_each_again(const struct rb_reduced *reduced, const struct rb_allocator *allocator,
		   void (*on_again)(void *self, uint32_t shot, uint32_t earlier),
		   void *self)
{
	const struct rb_book *book = reduced->book;
	struct rb_arena *scratch;
	uint32_t *seen;

	if (!reduced->any_again)
		return true;
	scratch = rb_arena_new(allocator);
	seen = scratch ? rb_arena_take(scratch, (size_t)book->points + 1, sizeof *seen)
		       : NULL;
	if (seen)
		mark_turning_points(reduced, seen);
	for (uint32_t i = 0; seen && i < reduced->shots; i++) {
		uint32_t point = book->row[reduced->shot[i].row].point;

		if (reduced->shot[i].booked == RB_BOOKED_NOWHERE ||
		    point == RB_NO_POINT || seen[point] == TURNED_ON ||
		    book->is_known[point])
			continue;
		if (seen[point] != RB_NO_SHOT &&
		    !rb_name_is_ground(rb_book_point(book, point)))
			on_again(self, i, seen[point]);
		seen[point] = i;
	}
	rb_arena_free(scratch);
	return seen != NULL;
}
