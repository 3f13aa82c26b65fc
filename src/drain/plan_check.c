/* SPDX-License-Identifier: MIT */
/* plan_check.c - what is missing in a plan, and what contradicts. */
#include "drain/plan_check.h"

rb_length rb_plan_step(const struct rb_plan_row *row)
{
	if (rb_length_given(row->step))
		return row->step;
	if (rb_length_given(row->invert) && rb_length_given(row->invert_in))
		return rb_length_sub(row->invert_in, row->invert);
	return rb_length_of(0);
}

rb_length rb_plan_fixed(const struct rb_plan_row *row)
{
	if (rb_length_given(row->invert) || !rb_length_given(row->invert_in))
		return row->invert;
	return rb_length_sub(row->invert_in, rb_plan_step(row));
}

static void say(struct rb_findings *findings, const struct rb_plan *plan, uint32_t row,
		enum rb_plan_column column, enum rb_code code,
		struct rb_argument argument)
{
	rb_findings_add(findings, code, rb_plan_place(plan, row, column), argument,
			rb_nothing());
}

/* Rows follow the line one way or the other. */
static void check_order(struct rb_findings *findings, const struct rb_plan *plan)
{
	int way = rb_length_compare(plan->row[plan->rows - 1].chainage,
				    plan->row[0].chainage);

	for (uint32_t i = 1; i < plan->rows; i++) {
		const struct rb_plan_row *before = &plan->row[i - 1];
		int step = rb_length_compare(plan->row[i].chainage, before->chainage);

		if (step == 0)
			say(findings, plan, i, RB_PLAN_CHAINAGE, RB_CODE_SAME_CHAINAGE,
			    rb_line(before->line));
		else if (step != way && way)
			say(findings, plan, i, RB_PLAN_CHAINAGE, RB_CODE_CHAINAGE_ORDER,
			    rb_text(before->name));
	}
	if (way == 0 && plan->rows > 2)
		say(findings, plan, plan->rows - 1, RB_PLAN_CHAINAGE,
		    RB_CODE_SAME_CHAINAGE, rb_line(plan->row[0].line));
}

static void check_step(struct rb_findings *findings, const struct rb_plan *plan,
		       uint32_t i)
{
	const struct rb_plan_row *row = &plan->row[i];
	bool written = rb_length_given(row->step);
	rb_length step = rb_plan_step(row);

	if (step.nm < 0)
		say(findings, plan, i, written ? RB_PLAN_STEP : RB_PLAN_INVERT_IN,
		    RB_CODE_STEP_UP, rb_measure(rb_length_negate(step), plan->unit));
	if (!written || !rb_length_given(row->invert) || !rb_length_given(row->invert_in))
		return;
	if (rb_length_compare(step, rb_length_sub(row->invert_in, row->invert)))
		say(findings, plan, i, RB_PLAN_STEP, RB_CODE_STEP_DISAGREES,
		    rb_measure(rb_length_sub(row->invert_in, row->invert), plan->unit));
}

static void check_footing(struct rb_findings *findings, const struct rb_plan *plan,
			  uint32_t i)
{
	bool bottom = rb_length_given(plan->row[i].footing_bottom);
	bool away = rb_length_given(plan->row[i].footing_away);

	if (bottom != away)
		say(findings, plan, i,
		    bottom ? RB_PLAN_FOOTING_AWAY : RB_PLAN_FOOTING_BOTTOM,
		    RB_CODE_FOOTING_HALF, rb_nothing());
}

/* The lower of the first and the last fixed invert; not settled where they are one. */
static enum rb_outlet lower_end(const struct rb_plan *plan)
{
	rb_length first = rb_length_none(), last = first;
	int fall;

	for (uint32_t i = 0; i < plan->rows; i++) {
		rb_length fixed = rb_plan_fixed(&plan->row[i]);

		if (!rb_length_given(fixed))
			continue;
		if (!rb_length_given(first))
			first = fixed;
		last = fixed;
	}
	fall = rb_length_compare(first, last);
	if (fall == 0)
		return RB_OUTLET_UNSAID;
	return fall > 0 ? RB_OUTLET_LAST : RB_OUTLET_FIRST;
}

/* The outlet's own slope was most likely meant for the leg that comes to it. */
static void check_outlet(struct rb_findings *findings, struct rb_plan *plan)
{
	bool first;
	uint32_t outlet, before;

	if (plan->outlet == RB_OUTLET_UNSAID)
		plan->outlet = lower_end(plan);
	if (plan->outlet == RB_OUTLET_UNSAID) {
		rb_findings_add(findings, RB_CODE_NO_OUTLET, rb_in_file(),
				rb_text(plan->row[0].name),
				rb_text(plan->row[plan->rows - 1].name));
		return;
	}
	first = plan->outlet == RB_OUTLET_FIRST;
	outlet = first ? 0 : plan->rows - 1;
	before = first ? 1 : plan->rows - 2;
	if (rb_slope_given(plan->row[outlet].slope))
		say(findings, plan, outlet, RB_PLAN_SLOPE, RB_CODE_SLOPE_AT_OUTLET,
		    rb_text(plan->row[before].name));
}

void rb_plan_check(struct rb_findings *findings, struct rb_plan *plan)
{
	if (plan->rows < 2) {
		rb_findings_add(findings, RB_CODE_ONE_STATION, rb_in_file(),
				rb_number(plan->rows), rb_nothing());
		return;
	}
	check_order(findings, plan);
	for (uint32_t i = 0; i < plan->rows; i++) {
		check_step(findings, plan, i);
		check_footing(findings, plan, i);
	}
	check_outlet(findings, plan);
}
