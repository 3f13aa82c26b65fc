/* SPDX-License-Identifier: MIT */
/*
 * fall.h - fall and slope from point to point of a book.
 *
 * Only places where the rod stood on the same thing are compared, upstream to downstream,
 * and each leg is exact: the difference of two elevations over a horizontal length.
 */
#ifndef RB_LEVEL_FALL_H
#define RB_LEVEL_FALL_H

#include "level/leg.h"
#include "level/spots.h"

/* Places where the rod stood on the same thing, in order of chainage, downstream. */
struct rb_run {
	enum rb_rod_on rod_on;
	uint32_t first, legs; /* in rb_fall.leg */
	struct rb_leg total;  /* from its first place to its last */
};

struct rb_fall {
	struct rb_leg *leg;
	uint32_t legs;
	struct rb_run *run; /* those on a pipe first */
	uint32_t runs;
};

/* The end of a run toward which it flows, by chainage. */
enum rb_flow_to { RB_TO_LOWER_END, RB_TO_FIRST, RB_TO_LAST };

struct rb_fall_options {
	const char *from, *to; /* two points, upstream first; NULL: along the chainage */
	rb_length length;      /* between them; none: the difference of their chainages.
				* Finding: both, and they differ (warning) */
	enum rb_flow_to outlet;
	rb_slope minimum; /* not given: nothing is asked */
};

/*
 * The legs of a book: along its points with chainage and the same `rod on`, or between
 * two named points.  A flat, level or uphill leg is a failed check where a minimum is
 * asked or the rod stood on a pipe.  The uncertainty is that of two readings, each good
 * to half the finest place written: one place over the length of the leg.
 *
 * NULL after an error: no such point, no length or one of 0, no two points with a
 * chainage of their own.
 */
struct rb_fall *rb_fall(struct rb_arena *arena, struct rb_findings *findings,
			const struct rb_spots *spots,
			const struct rb_fall_options *options);

/* Did the rod stand on a pipe (its invert, its top, its inside top)? */
bool rb_rod_on_pipe(enum rb_rod_on place);

#endif
