/* SPDX-License-Identifier: MIT */
/* Benchmark, turning point, intermediate, check or end: rules 4 to 7 of docs/formats.md.
 */
#include "level/kind.h"

#include "level/again.h"

/* clang-format off */
static const char *const kind_names[] = {
	[RB_BENCHMARK]     = "benchmark",
	[RB_TURNING_POINT] = "turning point",
	[RB_SIDE_POINT]    = "intermediate",
	[RB_CHECK]         = "check",
	[RB_END]           = "end",
};
/* clang-format on */

const char *rb_kind_name(enum rb_kind kind)
{
	return kind_names[kind];
}

rb_length rb_shot_known(const struct rb_reduced *reduced, uint32_t shot)
{
	uint32_t point = reduced->book->row[reduced->shot[shot].row].point;

	return rb_book_known(reduced->book, point);
}

enum rb_kind rb_plain_kind(enum rb_booked booked, bool known)
{
	switch (booked) {
	case RB_BOOKED_NOWHERE:
		return known ? RB_BENCHMARK : RB_TURNING_POINT;
	case RB_BOOKED_INTERMEDIATE:
		return known ? RB_CHECK : RB_SIDE_POINT;
	default:
		return known ? RB_BENCHMARK : RB_SIDE_POINT;
	}
}

/* The last foresight of a setup on which nothing hangs and that closed nothing is the end
 * of an open section. */
static void settle_end(struct rb_reduced *reduced, uint32_t setup)
{
	uint32_t last = RB_NO_SHOT;

	for (uint32_t i = rb_first_sight(reduced, setup);
	     i < rb_end_of_sights(reduced, setup); i++) {
		const struct rb_shot *shot = &reduced->shot[i];

		if (shot->booked == RB_BOOKED_NOWHERE)
			continue;
		if (shot->kind == RB_TURNING_POINT || rb_shot_closes(reduced, i))
			return;
		if (shot->booked == RB_BOOKED_FORESIGHT)
			last = i;
	}
	if (last != RB_NO_SHOT)
		reduced->shot[last].kind = RB_END;
}

static void settle_again(void *self, uint32_t shot, uint32_t earlier)
{
	struct rb_reduced *reduced = self;

	(void)earlier;
	if (reduced->shot[shot].kind != RB_END) /* the end of a section stays one */
		reduced->shot[shot].kind = RB_CHECK;
}

bool rb_settle_kinds(struct rb_reduced *reduced, const struct rb_allocator *allocator)
{
	for (uint32_t i = 0; i < reduced->setups; i++)
		settle_end(reduced, i);
	return rb_each_again(reduced, allocator, settle_again, reduced);
}
