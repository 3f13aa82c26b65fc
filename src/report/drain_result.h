/* SPDX-License-Identifier: MIT */
/*
 * drain_result.h - a drain, as its writers take it.
 *
 * Everything that the stages found, and how it is to be shown; page, JSON and CSV are
 * made from this and nothing else.  What was not asked for is NULL.
 */
#ifndef RB_REPORT_DRAIN_RESULT_H
#define RB_REPORT_DRAIN_RESULT_H

#include "drain/caution.h"
#include "drain/cut_sheet.h"
#include "drain/fall_budget.h"
#include "drain/flow.h"
#include "drain/grade_rods.h"
#include "drain/laid.h"

struct rb_drain_result {
	const struct rb_plan *plan;
	bool has_plan; /* it was read from a file */
	const struct rb_inverts *inverts;
	const struct rb_budget *budget;
	bool minimum_overridden; /* it is not the plan's */
	rb_length size;          /* by which a rule was looked up; or none */
	const struct rb_cut_sheet *sheet;
	const struct rb_grade_rods *rods;
	struct rb_todays_hi today;
	struct rb_sighted_benchmark benchmark[2]; /* the second checks the first */
	const struct rb_laid *laid;
	const struct rb_cautions *cautions;
	struct rb_style style;
	int fraction; /* of an inch, of what the crew sets: 8 unless asked otherwise */
	int decimals; /* of JSON and CSV; -1: rb_json_decimals() */
};

/* The laid shot at a station, or NULL. */
const struct rb_laid_shot *rb_drain_laid_at(const struct rb_drain_result *r,
					    uint32_t station);

/* The row of the plan that a station stands for, or NULL. */
const struct rb_plan_row *rb_drain_row(const struct rb_drain_result *r, uint32_t station);

/* The invert as the pipe comes in; none at the upper end, unless the plan says. */
rb_length rb_drain_invert_in(const struct rb_drain_result *r, uint32_t station);

/* The conduit of a leg, at the usual roughness; its inside is none where the pipe is not
 * known, or the leg does not fall. */
struct rb_conduit rb_drain_conduit(const struct rb_drain_result *r,
				   const struct rb_leg *leg);

/* The style of what a crew sets: decimals, whatever the unit. */
struct rb_style rb_drain_decimal_style(const struct rb_drain_result *r);

/* Does a book that was used miss its tolerance?  False for NULL. */
static inline bool rb_drain_is_beyond(const struct rb_spots *spots)
{
	return spots && spots->beyond;
}

#endif
