/* SPDX-License-Identifier: MIT */
/*
 * plan.h - a drain as it is meant to be laid, as it was typed.
 *
 * A plan is the keys above the header and one row for each station, in order along the
 * line.  Its values are what was written, and nothing is assumed: what is not given is
 * rb_length_none(), a slope without a run, or "".
 */
#ifndef RODBOOK_PLAN_H
#define RODBOOK_PLAN_H

#include "rodbook/arena.h"
#include "rodbook/finding.h"
#include "rodbook/length.h"
#include "rodbook/slope.h"

struct rb_pipe_kind;

/* A pipe; each part may be missing. */
struct rb_pipe {
	rb_length size;    /* nominal */
	rb_length outside; /* diameter of the barrel: from the table, or as measured */
	rb_length wall;
	const struct rb_pipe_kind *kind; /* NULL: none named */
	bool measured;                   /* the outside or the wall was measured */
};

/* From the invert up to the top of the pipe (outside), and to the inside top; none where
 * outside or wall is not known. */
static inline rb_length rb_pipe_top(const struct rb_pipe *pipe)
{
	if (!rb_length_given(pipe->outside) || !rb_length_given(pipe->wall))
		return rb_length_none();
	return rb_length_sub(pipe->outside, pipe->wall);
}

static inline rb_length rb_pipe_inside(const struct rb_pipe *pipe)
{
	rb_length top = rb_pipe_top(pipe);

	return rb_length_given(top) ? rb_length_sub(top, pipe->wall) : top;
}

/* Is it steeper than 45 degrees either way?  Such a pipe is vertical, and its fall is a
 * step; plans and rules refuse it, and so must a caller with a slope of its own. */
static inline bool rb_slope_is_steep(rb_slope slope)
{
	return rb_length_absolute(slope.fall).nm > slope.run.nm;
}

enum rb_plan_column {
	RB_PLAN_POINT,
	RB_PLAN_CHAINAGE,
	RB_PLAN_INVERT,
	RB_PLAN_INVERT_IN,
	RB_PLAN_SLOPE,
	RB_PLAN_STEP,
	RB_PLAN_FOOTING_BOTTOM,
	RB_PLAN_FOOTING_AWAY,
	RB_PLAN_OFFSET,
	RB_PLAN_SIDE,
	RB_PLAN_REMARKS,
	RB_PLAN_STATION, /* a heading that is the point or the chainage: settled at once
			  */
	RB_PLAN_COLUMNS
};

/* Which row the water flows to. */
enum rb_outlet { RB_OUTLET_UNSAID, RB_OUTLET_FIRST, RB_OUTLET_LAST };

struct rb_plan_row {
	const char *name; /* as typed, or its chainage */
	rb_length chainage;
	rb_length invert; /* out */
	rb_length invert_in;
	rb_slope slope; /* of the leg that leaves it downstream */
	rb_length step; /* how much higher the pipe comes in than it goes out */
	rb_length footing_bottom, footing_away; /* an elevation; a horizontal distance */
	rb_length offset;                       /* of the hub from the line */
	const char *side, *remarks;
	uint32_t line;
};

struct rb_plan {
	const char *file; /* as the user named it */
	const char *drain, *datum, *jurisdiction, *rules;
	struct rb_place rules_place, slope_place, jurisdiction_place; /* of the keys */
	enum rb_unit unit;
	bool decimal_comma;
	struct rb_pipe pipe;
	rb_slope slope; /* for every leg that gives none of its own */
	rb_slope minimum;
	rb_length bedding; /* 0: the pipe lies on the native bottom */
	rb_length cover;   /* least */
	rb_length grade_tolerance;
	rb_length rod; /* its length; 25 ft where not given */
	enum rb_outlet outlet;
	int plus; /* how chainages are written: digits behind a plus; 0: bare */
	rb_length invert_place; /* the place to which the inverts are written */
	struct rb_plan_row *row;
	uint32_t rows;
	int32_t cell_of[RB_PLAN_COLUMNS]; /* which cell of a row; -1: no such column */
};

/*
 * Read a plan from the bytes of a file.  Every fault is found in one go.  The bytes are
 * kept by the caller until the arena is freed.  NULL after an error.
 */
struct rb_plan *rb_plan_read(struct rb_arena *arena, struct rb_findings *findings,
			     const char *bytes, size_t length);

/*
 * The plan of one straight pipe without a file: `invert` at chainage 0, and `slope` down
 * over `length` from there; with RB_OUTLET_FIRST chainage 0 is the lower end.  NULL where
 * the slope is steep or the length not above 0 (errors), or memory ran out.
 */
struct rb_plan *rb_plan_straight(struct rb_arena *arena, struct rb_findings *findings,
				 enum rb_unit unit, rb_length invert, rb_slope slope,
				 rb_length length, enum rb_outlet outlet);

/* The place of a cell of a row, or of the row where there is no such column. */
struct rb_place rb_plan_place(const struct rb_plan *plan, uint32_t row,
			      enum rb_plan_column column);

/* The unit in which results of the plan are shown unless asked otherwise. */
struct rb_style rb_plan_style(const struct rb_plan *plan);

#endif
