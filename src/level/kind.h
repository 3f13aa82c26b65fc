/* SPDX-License-Identifier: MIT */
/* kind.h - what each point is in the run of the levels. */
#ifndef RB_LEVEL_KIND_H
#define RB_LEVEL_KIND_H

#include "rodbook/reduce.h"

/* The kind of a shot by itself, as if nothing hung on it and nothing came again.
 *
 *   known  has its point a known elevation?
 */
enum rb_kind rb_plain_kind(enum rb_booked booked, bool known);

/* Settle the kinds that show only once all setups are known: ends, and what came again.
 * Part of rb_reduce(), which has set the others.  False: memory ran out. */
bool rb_settle_kinds(struct rb_reduced *reduced, const struct rb_allocator *allocator);

/* The sights of a setup are the shots from the first to before the end, less those that
 * were only backsighted. */
static inline uint32_t rb_first_sight(const struct rb_reduced *reduced, uint32_t setup)
{
	return reduced->setup[setup].shot + 1;
}

static inline uint32_t rb_end_of_sights(const struct rb_reduced *reduced, uint32_t setup)
{
	return setup + 1 < reduced->setups ? reduced->setup[setup + 1].shot + 1
					   : reduced->shots;
}

/* The known elevation of the point of a shot, or none. */
rb_length rb_shot_known(const struct rb_reduced *reduced, uint32_t shot);

/* Does this foresight close a section: is it taken onto a known point?  A known point
 * stays a benchmark whatever hangs on it, so the kind tells. */
static inline bool rb_shot_closes(const struct rb_reduced *reduced, uint32_t shot)
{
	const struct rb_shot *s = &reduced->shot[shot];

	return s->booked == RB_BOOKED_FORESIGHT && s->kind == RB_BENCHMARK;
}

#endif
