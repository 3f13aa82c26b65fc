/* SPDX-License-Identifier: MIT */
/* drain_result.c - what belongs to a station, gathered. */
#include "report/drain_result.h"

/* Shots stand by run; of two at one place the second is on the pipe that goes out. */
const struct rb_laid_shot *rb_drain_laid_at(const struct rb_drain_result *r,
					    uint32_t station)
{
	rb_length run = r->inverts->station[station].run;
	uint32_t low = 0, high = r->laid ? r->laid->shots : 0;

	while (low < high) {
		uint32_t middle = low + (high - low) / 2;

		if (rb_length_compare(r->laid->shot[middle].run, run) < 0)
			low = middle + 1;
		else
			high = middle;
	}
	if (r->laid && low < r->laid->shots && r->laid->shot[low].comes_in)
		low++;
	if (!r->laid || low == r->laid->shots || r->laid->shot[low].run.nm != run.nm)
		return NULL;
	return &r->laid->shot[low];
}

const struct rb_plan_row *rb_drain_row(const struct rb_drain_result *r, uint32_t station)
{
	uint32_t row = r->inverts->station[station].row;

	return row == RB_NO_PLAN_ROW ? NULL : &r->plan->row[row];
}

rb_length rb_drain_invert_in(const struct rb_drain_result *r, uint32_t station)
{
	const struct rb_plan_row *row = rb_drain_row(r, station);

	if (!station && row && !rb_length_given(row->invert_in) &&
	    !rb_length_given(row->step))
		return rb_length_none();
	return rb_exact_round(r->inverts->station[station].in);
}

struct rb_style rb_drain_decimal_style(const struct rb_drain_result *r)
{
	const struct rb_style feet = { RB_FEET, 2, 16, false };

	return r->style.unit == RB_FEET_INCHES ? feet : r->style;
}

struct rb_conduit rb_drain_conduit(const struct rb_drain_result *r,
				   const struct rb_leg *leg)
{
	bool falls = leg->slope.fall.nm > 0;

	return (struct rb_conduit){
		.inside = falls ? rb_pipe_inside(&r->plan->pipe) : rb_length_none(),
		.slope = leg->slope,
		.roughness = RB_ROUGHNESS_USUAL,
	};
}
