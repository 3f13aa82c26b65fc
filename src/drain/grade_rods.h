/* SPDX-License-Identifier: MIT */
/*
 * grade_rods.h - what the rod reads when the pipe is where it should be.
 *
 *   grade rod = height of instrument - wanted elevation
 *
 * for the invert, the top of the pipe and the trench bottom of every station, each worked
 * out from the exact invert and rounded once.
 * Source: NAVEDTRA 14069 Engineering Aid, ch. 14, fig. 14-36.
 */
#ifndef RB_DRAIN_GRADE_RODS_H
#define RB_DRAIN_GRADE_RODS_H

#include "drain/surface.h"

/* A benchmark and the reading on it; none where not given. */
struct rb_sighted_benchmark {
	rb_length elevation, backsight;
};

/* Today's height of instrument; it never comes from an older book. */
struct rb_todays_hi {
	rb_length hi;
	bool checked;         /* by a second benchmark */
	rb_length difference; /* what the second gives, minus hi */
};

/* From one or two benchmarks with a backsight each (second: none to leave it out). */
struct rb_todays_hi rb_hi_of_benchmarks(rb_length benchmark, rb_length backsight,
					rb_length second, rb_length second_backsight);

/* How far two benchmarks may be apart: the plan's grade tolerance, or, where it has none,
 * 1/4 in or 5 mm: beyond what is misread on a rod (common practice). */
rb_length rb_hi_allowed(const struct rb_plan *plan);

/* Do two benchmarks agree?  Finding (failed): they give heights of instrument that differ
 * by more than is allowed. */
void rb_hi_judge(struct rb_findings *findings, const struct rb_plan *plan,
		 const struct rb_todays_hi *today);

enum rb_reach_of_rod {
	RB_ROD_REACHES,
	RB_GRADE_ABOVE_SIGHT, /* the grade rod is negative: raise the instrument, or turn
			       * the rod over */
	RB_BEYOND_ROD         /* it is longer than the rod */
};

/* A grade rod as it is set. */
struct rb_grade_rod {
	rb_length reading;     /* none where the surface is not known */
	struct rb_exact exact; /* before it was rounded; set where the reading is */
	enum rb_reach_of_rod reach;
};

struct rb_grade_rods {
	const struct rb_inverts *inverts;
	rb_length hi;
	struct rb_grade_rod (*rod)[RB_SURFACES];    /* by station: to what goes out */
	struct rb_grade_rod (*rod_in)[RB_SURFACES]; /* at a step: to what comes in; else
						     * no readings */
	/* A height of instrument from the lowest to the highest, rounded inward, serves
	 * every station; lowest above highest: none does, the line falls further than the
	 * rod is long. */
	rb_length lowest_hi, highest_hi;
};

/* The grade rods of a line from a height of instrument.  Findings (warnings): grade rods
 * that are negative, or beyond the rod, with a height of instrument that would serve
 * every station, to what a crew reads, if there is one. NULL if memory ran out. */
struct rb_grade_rods *rb_grade_rods(struct rb_arena *arena, struct rb_findings *findings,
				    const struct rb_inverts *inverts, rb_length hi);

#endif
