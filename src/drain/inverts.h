/* SPDX-License-Identifier: MIT */
/*
 * inverts.h - the inverts of a drain, station by station.
 *
 * Stations stand from the upstream end to the outlet, whichever way the plan lists them,
 * and every invert is exact: between two fixed inverts the grade is uniform over the
 * pipe, (difference - steps between) / length; beyond them it is carried by slopes and
 * steps from the nearest fixed one.  Each is computed from there, never from a rounded
 * neighbour, so stations in between change nothing.
 */
#ifndef RB_DRAIN_INVERTS_H
#define RB_DRAIN_INVERTS_H

#include "drain/exact.h"
#include "rodbook/plan.h"

#define RB_NO_PLAN_ROW UINT32_MAX

struct rb_station {
	const char *name;
	uint32_t row;   /* of the plan; RB_NO_PLAN_ROW: added at an interval */
	uint32_t reach; /* the reach that leaves it; of the outlet, the one that comes */
	rb_length chainage;
	rb_length run; /* horizontal, from the upstream end */
	struct rb_exact
		in; /* as the pipe comes in; at the upstream end, where the plan says */
	struct rb_exact out; /* as it goes out */
};

/* The pipe from one station of the plan to the next; one slope. */
struct rb_reach {
	uint32_t from, to; /* stations of the plan, upstream first */
	rb_length length;
	rb_slope slope; /* exact */
	bool uniform;   /* given by two fixed inverts, not by a written slope */
	bool opens;     /* uniform: the upper of the two is where it begins */
	rb_length span_fall, span; /* uniform: the fall between the two, steps taken off,
				    * and the length of pipe over which it is spread */
};

struct rb_inverts {
	const struct rb_plan *plan;
	struct rb_station *station;
	uint32_t stations;
	struct rb_reach *reach;
	uint32_t reaches;
	struct rb_exact steps; /* of every station but the upstream end */
};

/*
 * Work out the inverts of a plan that was checked.  With an interval, stations are added
 * at its whole multiples of chainage, named by it.  Findings: an invert or a slope that
 * is missing, written slopes that disagree with two fixed inverts.  NULL after an error.
 */
struct rb_inverts *rb_inverts(struct rb_arena *arena, struct rb_findings *findings,
			      const struct rb_plan *plan, rb_length interval);

/*
 * The reach at a chainage of the line and the exact invert there (at a station the invert
 * out); NULL beyond the ends.
 */
const struct rb_reach *rb_inverts_at(const struct rb_inverts *inverts, rb_length chainage,
				     struct rb_exact *invert);

/* How much higher the pipe comes in than it goes out; 0 where there is no step. */
rb_length rb_station_step(const struct rb_station *station);

/* The station at a chainage, or NULL. */
const struct rb_station *rb_inverts_station_at(const struct rb_inverts *inverts,
					       rb_length chainage);

#endif
