/* SPDX-License-Identifier: MIT */
/* fall_budget.c - fall available, fall needed, and what would do when it is short. */
#include "drain/fall_budget.h"

#include "drain/pipe.h"

rb_length rb_longest_trap_arm(rb_length diameter, rb_slope slope)
{
	return rb_exact_run(rb_exact_of(diameter), slope);
}

/* What is needed over the whole line at a slope. */
static struct rb_exact needed_at(const struct rb_budget *b, rb_slope slope)
{
	return rb_exact_add(b->inverts->steps, rb_exact_fall(slope, b->length));
}

static bool suffices(const struct rb_budget *b, rb_slope slope)
{
	return rb_exact_compare(b->available, needed_at(b, slope)) >= 0;
}

static void find_larger(struct rb_budget *b)
{
	const struct rb_rules *rules = b->minimum.rules;
	rb_length size = b->inverts->plan->pipe.size;

	b->remedies.larger = rb_length_none();
	if (!rules || !rb_length_given(size))
		return;
	for (size = rb_pipe_size_by_name(size); rb_length_given(size);
	     size = rb_pipe_next_size(size)) {
		const struct rb_rule *rule = rb_rules_find(rules, size);

		if (!rule || !suffices(b, rule->minimum))
			continue;
		b->remedies.larger = size;
		b->remedies.larger_slope = rule->minimum;
		return;
	}
}

/* What the pipe itself may fall, the steps taken off; rounded down, so that it holds. */
static void find_remedies(struct rb_budget *b)
{
	struct rb_exact left = rb_exact_sub(b->available, b->inverts->steps);

	find_larger(b);
	b->remedies.raise = rb_length_of(-b->spare.whole);
	b->remedies.route = rb_length_none();
	if (rb_exact_sign(left) <= 0)
		return;
	b->remedies.route = rb_exact_run(left, b->minimum.slope);
	b->remedies.slope = (rb_slope){ rb_length_of(left.whole), b->length };
}

static struct rb_place place_of(const struct rb_budget *b, const struct rb_reach *reach,
				enum rb_plan_column column)
{
	return rb_plan_place(b->inverts->plan, b->inverts->station[reach->from].row,
			     column);
}

static void judge_leg(struct rb_findings *findings, struct rb_budget *b, uint32_t number)
{
	const struct rb_reach *reach = &b->inverts->reach[number];
	struct rb_leg *leg = &b->leg[number];

	*leg = (struct rb_leg){
		.from = b->inverts->station[reach->from].name,
		.to = b->inverts->station[reach->to].name,
		.upper = rb_exact_round(b->inverts->station[reach->from].out),
		.lower = rb_exact_round(b->inverts->station[reach->to].in),
		.length = reach->length,
		.fall = rb_slope_over(reach->slope, reach->length),
		.slope = reach->slope,
		.minimum = b->minimum.slope,
	};
	rb_leg_judge(leg);
	rb_leg_report(findings, leg, place_of(b, reach, RB_PLAN_SLOPE));
}

/* Two written inverts may each be half a place off: is that more than what is to spare?
 * Told once where the grade between them begins. */
static void note_rounding(struct rb_findings *findings, const struct rb_budget *b,
			  const struct rb_reach *reach)
{
	const struct rb_plan *plan = b->inverts->plan;
	struct rb_exact place = rb_exact_of(plan->invert_place), apart;

	if (!reach->opens || !b->judged)
		return;
	apart = rb_exact_sub(rb_exact_of(reach->span_fall),
			     rb_exact_fall(b->minimum.slope, reach->span));
	if (rb_exact_sign(apart) < 0)
		apart = rb_exact_sub(rb_exact_of(rb_length_of(0)), apart);
	if (rb_exact_sign(apart) == 0 || rb_exact_compare(apart, place) > 0)
		return;
	rb_findings_add(findings, RB_CODE_TURNS_ON_ROUNDING,
			place_of(b, reach, RB_PLAN_INVERT),
			rb_measure(rb_exact_round(apart), plan->unit),
			rb_measure(plan->invert_place, plan->unit));
}

static void judge_legs(struct rb_findings *findings, struct rb_budget *b)
{
	for (uint32_t i = 0; i < b->legs; i++) {
		judge_leg(findings, b, i);
		note_rounding(findings, b, &b->inverts->reach[i]);
	}
}

static void judge_whole(struct rb_findings *findings, struct rb_budget *b)
{
	const struct rb_inverts *inverts = b->inverts;
	const struct rb_station *last = &inverts->station[inverts->stations - 1];
	enum rb_unit unit = inverts->plan->unit;

	b->needed = needed_at(b, b->minimum.slope);
	b->spare = rb_exact_sub(b->available, b->needed);
	b->is_short = rb_exact_sign(b->spare) < 0;
	if (!b->is_short)
		return;
	find_remedies(b);
	rb_findings_add4(findings, RB_CODE_FALL_SHORT, rb_in_file(),
			 (struct rb_argument[RB_ARGUMENTS]){
				 rb_measure(rb_exact_round(b->available), unit),
				 rb_measure(rb_exact_round(b->needed), unit),
				 rb_text(inverts->station[0].name),
				 rb_text(last->name),
			 });
}

struct rb_budget *rb_budget(struct rb_arena *arena, struct rb_findings *findings,
			    const struct rb_inverts *inverts,
			    const struct rb_minimum *minimum)
{
	struct rb_budget *b = rb_arena_take_clear(arena, 1, sizeof *b);
	const struct rb_station *last = &inverts->station[inverts->stations - 1];

	if (b)
		b->leg = rb_arena_take(arena, inverts->reaches, sizeof *b->leg);
	if (!b || !b->leg)
		return rb_findings_no_memory(findings), NULL;
	b->inverts = inverts;
	b->minimum = *minimum;
	b->judged = rb_slope_given(minimum->slope);
	b->legs = inverts->reaches;
	b->length = last->run;
	b->available = rb_exact_sub(inverts->station[0].out, last->out);
	judge_legs(findings, b);
	if (b->judged)
		judge_whole(findings, b);
	return b;
}
