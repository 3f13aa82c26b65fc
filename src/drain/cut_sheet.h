/* SPDX-License-Identifier: MIT */
/*
 * cut_sheet.h - from the ground and the hubs down to the pipe, station by station.
 *
 *   cut   = ground - invert (negative: a fill)
 *   cover = ground - top of pipe
 *   board above hub = board above invert - (hub - invert)
 *
 * Hubs stand beside the line: a cut from the hub is not the depth of the trench.  Boards
 * stand a whole number of feet (half metres) above the invert, the same along the line,
 * so that the string is parallel to the pipe. Source: NAVEDTRA 14070 Engineering Aid 1,
 * ch. 10, figs 10-19, 10-20 and 10-24.
 */
#ifndef RB_DRAIN_CUT_SHEET_H
#define RB_DRAIN_CUT_SHEET_H

#include "drain/grade_rods.h"
#include "drain/ground.h"
#include "level/spots.h"

enum rb_ground_how {
	RB_GROUND_UNKNOWN,
	RB_GROUND_SHOT,
	RB_GROUND_BETWEEN /* interpolated between two shots: marked ~ */
};

/* What is not known is none. */
struct rb_cut {
	rb_length invert, top_of_pipe, trench_bottom;
	rb_length ground;
	struct rb_exact exact_ground; /* before it was rounded; set where ground is */
	enum rb_ground_how how;
	rb_length cut, cut_to_trench, cover; /* of the pipe that goes out */
	rb_length cover_in; /* at a step: of the pipe that comes in, which lies higher */
	bool is_short;      /* one of the covers is less than the plan asks for */
	rb_length hub, hub_cut, hub_cut_to_trench;
	rb_length board; /* above the hub; negative: below it */
};

/* The deepest of the trench, or the least cover: a station, or a ground shot between. */
struct rb_extreme {
	rb_length value;       /* none: no ground is known */
	struct rb_exact exact; /* before it was rounded; set where the value is */
	const char *where;
	rb_length chainage;
};

struct rb_cut_sheet {
	const struct rb_inverts *inverts;
	const struct rb_spots *ground; /* NULL: no ground book */
	struct rb_ground along;        /* its shots that have a chainage or a station; of
					* a place that was shot again, the last */
	struct rb_cut *cut;            /* by station */
	rb_length board;               /* above the invert; none without ground or hubs */
	struct rb_extreme deepest;     /* of the trench, below the ground */
	bool at_least; /* the trench bottom is not known: it is deeper than that */
	struct rb_extreme least_cover;
};

/*
 * The cut sheet of a line.
 *
 *   ground   the spots of a ground book, or NULL: then only elevations of the pipe
 *   board    height of the boards above the invert, or none: the next whole foot (half
 *            metre) above the ground and every hub
 *
 * Findings about the plan: keys that are missing for the top of the pipe or the trench
 * bottom (notes), cover less than asked (failed).  `of_ground`, about the book (NULL
 * where there is none): shots whose name and chainage disagree, or that are
 * at no place of the line (a note).  NULL after an error.
 */
struct rb_cut_sheet *rb_cut_sheet(struct rb_arena *arena, struct rb_findings *findings,
				  struct rb_findings *of_ground,
				  const struct rb_inverts *inverts,
				  const struct rb_spots *ground, rb_length board);

#endif
