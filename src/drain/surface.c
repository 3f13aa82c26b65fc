/* SPDX-License-Identifier: MIT */
/* surface.c - from the exact invert to the top of the pipe and the trench bottom. */
#include "drain/surface.h"

const char *rb_surface_name(enum rb_surface surface)
{
	static const char *const names[RB_SURFACES] = {
		[RB_INVERT] = "invert",
		[RB_TOP_OF_PIPE] = "top of pipe",
		[RB_TRENCH_BOTTOM] = "trench bottom",
	};

	return names[surface];
}

static rb_length trench_bottom_above(const struct rb_plan *plan)
{
	if (!rb_length_given(plan->pipe.wall) || !rb_length_given(plan->bedding))
		return rb_length_none();
	return rb_length_negate(rb_length_add(plan->pipe.wall, plan->bedding));
}

rb_length rb_surface_above(const struct rb_plan *plan, enum rb_surface surface)
{
	if (surface == RB_INVERT)
		return rb_length_of(0);
	return surface == RB_TOP_OF_PIPE ? rb_pipe_top(&plan->pipe)
					 : trench_bottom_above(plan);
}

static rb_length as_far_as_known(rb_length a)
{
	return rb_length_given(a) ? a : rb_length_of(0);
}

rb_length rb_trench_at_least(const struct rb_plan *plan)
{
	return rb_length_add(as_far_as_known(plan->pipe.wall),
			     as_far_as_known(plan->bedding));
}

rb_length rb_surface_at(const struct rb_plan *plan, enum rb_surface surface,
			struct rb_exact invert)
{
	rb_length above = rb_surface_above(plan, surface);

	if (!rb_length_given(above))
		return above;
	return rb_exact_round(rb_exact_add(invert, rb_exact_of(above)));
}

#define PIPE "pipe (a size and a kind, such as 4 in sch 40)"

const char *rb_surface_key(const struct rb_plan *plan, enum rb_surface surface)
{
	bool outside = rb_length_given(plan->pipe.outside);
	bool wall = rb_length_given(plan->pipe.wall);
	bool bedding = rb_length_given(plan->bedding);

	if (rb_length_given(rb_surface_above(plan, surface)))
		return NULL;
	if (surface == RB_TOP_OF_PIPE)
		return wall ? "pipe outside" : outside ? "pipe wall" : PIPE;
	if (wall)
		return "bedding";
	if (outside)
		return bedding ? "pipe wall" : "pipe wall and bedding";
	return bedding ? PIPE : PIPE " and bedding";
}
