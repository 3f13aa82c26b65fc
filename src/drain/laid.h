/* SPDX-License-Identifier: MIT */
/*
 * laid.h - the pipe as it lies, against the plan.
 *
 * Every shot says where the rod stood, and is turned into an invert by the pipe's outside
 * and wall.  The line is judged joint by joint: one that is right end to end and wrong in
 * the middle is found, and so is water that would stand in it.  At a step the pipe that
 * comes in is shot by itself ("MH-1 in").
 */
#ifndef RB_DRAIN_LAID_H
#define RB_DRAIN_LAID_H

#include "drain/inverts.h"
#include "drain/rules.h"
#include "level/leg.h"
#include "level/spots.h"

struct rb_laid_shot {
	const char *name;
	uint32_t row;     /* of the book */
	uint32_t station; /* RB_NO_STATION: a joint between stations */
	enum rb_rod_on rod_on;
	bool comes_in; /* at a step: on the pipe that comes in, and not the one that goes
			* out */
	rb_length chainage, run; /* run: from the upstream end */
	rb_length planned;       /* the invert of that pipe */
	rb_length invert;        /* as laid */
	rb_length deviation;     /* laid - planned: positive is high */
	bool out; /* beyond the grade tolerance; false where none is given */
};

/* Water that stays when the flow stops. */
struct rb_pond {
	uint32_t from;    /* shot: the upstream end of the wet pipe lies on the leg that
			   * leaves it, or at it where it is the upstream end */
	uint32_t to;      /* shot: the high place that holds the water */
	uint32_t deepest; /* shot */
	rb_length depth;  /* at the deepest shot */
	rb_length wet;    /* horizontal length of pipe with water in it */
};

struct rb_laid {
	const struct rb_inverts *inverts;
	const struct rb_spots *spots;
	struct rb_laid_shot
		*shot; /* upstream first; what comes in before what goes out */
	uint32_t shots;
	struct rb_leg *leg; /* from each place that was shot to the next downstream */
	uint32_t legs;
	struct rb_pond *pond; /* upstream first */
	uint32_t ponds;
	rb_length step; /* finest place of the readings; the deviation is good to
			 * half of it; none where the book does not say */
};

/*
 * Hold a laid book, whose list `findings` is, against the plan.  A step between two shots
 * is no fall of the pipe: where either side of it was not shot, it is taken as planned,
 * and that is told.
 *
 * Findings: a shot that does not say where the rod stood, or for which outside or wall is
 * missing (errors); shots off the line, steps taken as planned (warnings); shots beyond
 * the grade tolerance, legs level, uphill or too flat, ponds (failed; a leg too flat by
 * no more than the readings can tell is a warning); shots beside the pipe, and an end of
 * the line that nobody shot (notes).  `of_plan`, about the plan: no grade tolerance (a
 * note).  NULL after an error.
 */
struct rb_laid *rb_laid(struct rb_arena *arena, struct rb_findings *findings,
			struct rb_findings *of_plan, const struct rb_inverts *inverts,
			const struct rb_spots *spots, const struct rb_minimum *minimum);

#endif
