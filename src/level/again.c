/* SPDX-License-Identifier: MIT */
/* Points reached a second time: rule 7 of docs/formats.md. */
#include "level/again.h"

#include "notes/names.h"

#define TURNED_ON (RB_NO_SHOT - 1) /* a backsight was taken on it: never compared */

/* The shots so far, so that those of a point can be followed back. */
struct walk {
	const struct rb_reduced *reduced;
	uint32_t *seen; /* by point: its last shot, RB_NO_SHOT or TURNED_ON */
	uint32_t
		*before; /* by shot: the one before it of the same point, or RB_NO_SHOT */
};

static uint32_t point_of(const struct rb_reduced *reduced, uint32_t shot)
{
	return reduced->book->row[reduced->shot[shot].row].point;
}

static enum rb_rod_on surface_of(const struct rb_reduced *reduced, uint32_t shot)
{
	enum rb_rod_on rod_on = rb_shot_rod_on(reduced, shot);

	return rod_on == RB_ON_UNSAID ? RB_ON_GROUND : rod_on;
}

static bool begin_walk(struct walk *walk, struct rb_arena *scratch)
{
	const struct rb_reduced *reduced = walk->reduced;
	size_t points = reduced->book->points;

	walk->seen = rb_arena_take(scratch, points + 1, sizeof *walk->seen);
	walk->before =
		rb_arena_take(scratch, (size_t)reduced->shots + 1, sizeof *walk->before);
	if (!walk->seen || !walk->before)
		return false;
	for (size_t i = 0; i < points; i++)
		walk->seen[i] = RB_NO_SHOT;
	for (uint32_t i = 0; i < reduced->setups; i++)
		walk->seen[point_of(reduced, reduced->setup[i].shot)] = TURNED_ON;
	return true;
}

static bool may_come_again(const struct walk *walk, uint32_t shot)
{
	uint32_t point = point_of(walk->reduced, shot);

	return walk->reduced->shot[shot].booked != RB_BOOKED_NOWHERE &&
	       point != RB_NO_POINT && walk->seen[point] != TURNED_ON &&
	       !walk->reduced->book->is_known[point];
}

/* The shot before this one of the same point and surface, or RB_NO_SHOT.  No shot is gone
 * back over more than once for each surface. */
static uint32_t earlier_of(struct walk *walk, uint32_t shot)
{
	uint32_t *seen = &walk->seen[point_of(walk->reduced, shot)], earlier = *seen;
	enum rb_rod_on surface = surface_of(walk->reduced, shot);

	walk->before[shot] = *seen;
	*seen = shot;
	while (earlier != RB_NO_SHOT && surface_of(walk->reduced, earlier) != surface)
		earlier = walk->before[earlier];
	return earlier;
}

bool rb_each_again(const struct rb_reduced *reduced, const struct rb_allocator *allocator,
		   void (*on_again)(void *self, uint32_t shot, uint32_t earlier),
		   void *self)
{
	struct walk walk = { .reduced = reduced };
	struct rb_arena *scratch;
	bool begun;

	if (!reduced->any_again)
		return true;
	scratch = rb_arena_new(allocator);
	begun = scratch && begin_walk(&walk, scratch);
	for (uint32_t i = 0; begun && i < reduced->shots; i++) {
		uint32_t earlier =
			may_come_again(&walk, i) ? earlier_of(&walk, i) : RB_NO_SHOT;

		if (earlier != RB_NO_SHOT &&
		    !rb_name_is_ground(
			    rb_book_point(reduced->book, point_of(reduced, i))))
			on_again(self, i, earlier);
	}
	rb_arena_free(scratch);
	return begun;
}
