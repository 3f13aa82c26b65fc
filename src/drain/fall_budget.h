/* SPDX-License-Identifier: MIT */
/*
 * fall_budget.h - is there enough fall?
 *
 * Available is what the upstream end's invert out lies above the outlet's; needed is the
 * minimum over every leg and every step but the upstream end's.  Both are exact, and so
 * is the verdict: a plan at exactly the minimum has nothing to spare and is not short.
 */
#ifndef RB_DRAIN_FALL_BUDGET_H
#define RB_DRAIN_FALL_BUDGET_H

#include "drain/inverts.h"
#include "drain/rules.h"
#include "level/leg.h"

/* What would do when the fall is short; each none, or not given, where it would not. */
struct rb_remedies {
	rb_length larger;      /* the next size whose minimum the fall allows */
	rb_slope larger_slope; /* that minimum */
	rb_length route;       /* the longest line that the fall allows at the minimum */
	rb_length raise;       /* how much higher the upper end must be */
	rb_slope slope;        /* the slope that just uses the fall there is */
};

struct rb_budget {
	const struct rb_inverts *inverts;
	struct rb_minimum minimum;
	struct rb_leg *leg; /* by reach */
	uint32_t legs;
	rb_length length; /* of the line, horizontal */
	struct rb_exact available;
	struct rb_exact needed, spare; /* only where a minimum is asked */
	bool judged;                   /* a minimum is asked */
	bool is_short;
	struct rb_remedies remedies; /* only where it is short */
};

/*
 * Judge the legs of a line and its fall as a whole.  Findings: legs that are flat, level
 * or uphill, the fall that is short (failed), verdicts that turn on the rounding of a
 * written invert (notes).  NULL if memory ran out.
 */
struct rb_budget *rb_budget(struct rb_arena *arena, struct rb_findings *findings,
			    const struct rb_inverts *inverts,
			    const struct rb_minimum *minimum);

/*
 * The longest trap arm of a pipe at a slope: the total fall from the trap's weir to the
 * vent may be one diameter, so arm = diameter / slope, rounded down to the nanometre.
 * Source: IRC P3105.2, IPC 909.2 (read second-hand).
 */
rb_length rb_longest_trap_arm(rb_length diameter, rb_slope slope);

#endif
