/* SPDX-License-Identifier: MIT */
/* drained.h - a drain from its texts, taken through all stages. */
#ifndef RB_TESTS_REPORT_DRAINED_H
#define RB_TESTS_REPORT_DRAINED_H

#include "../drain/job.h"
#include "report/drain_page.h"

struct drained {
	struct job job;
	struct rb_drain_result result;
};

struct drain_text {
	const char *plan;
	const char *ground, *laid; /* books; NULL: none */
	rb_length hi;              /* none: no grade rods */
	rb_slope minimum;
};

/* Everything that the texts allow; the plan must be right. */
static inline void drain_of(struct drained *d, const struct drain_text *text)
{
	const struct rb_minimum minimum = { .slope = text->minimum };
	struct rb_drain_result *r = &d->result;
	struct rb_spots *ground = NULL;
	struct rb_findings *findings = &d->job.findings;
	struct rb_arena *arena;

	d->job = job_of(text->plan, NONE);
	arena = d->job.arena;
	assert_non_null(d->job.inverts);
	if (text->ground)
		ground = job_book(arena, findings, text->ground);
	*r = (struct rb_drain_result){ .plan = d->job.plan,
				       .has_plan = true,
				       .inverts = d->job.inverts,
				       .size = NONE,
				       .style = rb_plan_style(d->job.plan),
				       .fraction = 8,
				       .decimals = -1 };
	r->today = (struct rb_todays_hi){ .hi = text->hi };
	r->budget = rb_budget(arena, findings, r->inverts, &minimum);
	r->sheet = rb_cut_sheet(arena, findings, ground ? findings : NULL, r->inverts,
				ground, NONE);
	if (rb_length_given(text->hi))
		r->rods = rb_grade_rods(arena, findings, r->inverts, text->hi);
	if (text->laid)
		r->laid = rb_laid(arena, findings, findings, r->inverts,
				  job_book(arena, findings, text->laid), &minimum);
	r->cautions =
		rb_cautions(arena, findings, rb_jurisdiction_unset(), r->sheet, r->rods);
	assert_non_null(r->cautions);
}

#endif
