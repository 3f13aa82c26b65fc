/* SPDX-License-Identifier: MIT */
/*
 * plan_keys.h - the keys of a drain plan.
 *
 * What a key says of the whole line: the pipe, its bedding, what is asked of it.  A key
 * that is not there leaves its value unknown; only the unit and the rod have a usual one.
 */
#ifndef RB_DRAIN_PLAN_KEYS_H
#define RB_DRAIN_PLAN_KEYS_H

#include "drain/cells.h"
#include "rodbook/plan.h"

enum rb_plan_key {
	RB_PLAN_KEY_DRAIN,
	RB_PLAN_KEY_DATUM,
	RB_PLAN_KEY_JURISDICTION,
	RB_PLAN_KEY_RULES,
	RB_PLAN_KEY_UNIT,
	RB_PLAN_KEY_PIPE,
	RB_PLAN_KEY_PIPE_OUTSIDE,
	RB_PLAN_KEY_PIPE_WALL,
	RB_PLAN_KEY_SLOPE,
	RB_PLAN_KEY_MINIMUM,
	RB_PLAN_KEY_BEDDING,
	RB_PLAN_KEY_COVER,
	RB_PLAN_KEY_OUTLET,
	RB_PLAN_KEY_TOLERANCE,
	RB_PLAN_KEY_ROD,
	RB_PLAN_KEYS
};

extern const struct rb_key rb_plan_keys[RB_PLAN_KEYS];

/* A plan of which nothing is known, in feet; NULL if there is no memory. */
struct rb_plan *rb_plan_new(struct rb_arena *arena, struct rb_findings *findings);

/* Read the keys of a sheet into the plan; the unit goes into the cells too. */
void rb_plan_read_keys(struct rb_cells *cells, struct rb_plan *plan,
		       const struct rb_sheet *sheet);

#endif
