/* SPDX-License-Identifier: MIT */
/* plan_straight.c - the plan of one straight pipe, without a file. */
#include <string.h>

#include "drain/plan_keys.h"
#include "level/spots.h"

static bool is_pipe(struct rb_findings *findings, rb_slope slope, rb_length length)
{
	if (rb_slope_is_steep(slope))
		rb_findings_add(findings, RB_CODE_SLOPE_STEEP,
				rb_at(0, RB_WHOLE_ROW, NULL, "slope"), rb_ratio_of(slope),
				rb_nothing());
	if (length.nm <= 0)
		rb_findings_add(findings, RB_CODE_NOT_ABOVE_ZERO,
				rb_at(0, RB_WHOLE_ROW, NULL, "length"), rb_text("0"),
				rb_nothing());
	return length.nm > 0 && !rb_slope_is_steep(slope);
}

struct rb_plan *rb_plan_straight(struct rb_arena *arena, struct rb_findings *findings,
				 enum rb_unit unit, rb_length invert, rb_slope slope,
				 rb_length length, enum rb_outlet outlet)
{
	struct rb_plan *plan = rb_plan_new(arena, findings);
	const rb_length none = rb_length_none();
	const rb_length at[] = { rb_length_of(0), length };

	if (!plan || !is_pipe(findings, slope, length))
		return NULL;
	plan->unit = unit;
	plan->slope = slope;
	plan->outlet = outlet == RB_OUTLET_UNSAID ? RB_OUTLET_LAST : outlet;
	plan->plus = rb_unit_of_runs(unit) == RB_FEET ? 2 : 0;
	plan->row = rb_arena_take_clear(arena, 2, sizeof *plan->row);
	if (!plan->row)
		return rb_findings_no_memory(findings), NULL;
	for (uint32_t i = 0; i < 2; i++) {
		struct rb_plan_row *row = &plan->row[plan->rows++];
		char text[RB_LENGTH_TEXT];

		rb_chainage_format(text, at[i], unit, plan->plus);
		*row = (struct rb_plan_row){ .chainage = at[i],
					     .invert = i ? none : invert,
					     .invert_in = none,
					     .step = none,
					     .footing_bottom = none,
					     .footing_away = none,
					     .offset = none,
					     .side = "",
					     .remarks = "" };
		row->name = rb_arena_text(arena, text, strlen(text));
		if (!row->name)
			return rb_findings_no_memory(findings), NULL;
	}
	return plan;
}
