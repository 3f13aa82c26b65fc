/* SPDX-License-Identifier: MIT */
/* caution.c - what the numbers trigger. */
#include "drain/caution.h"

#include "level/rod.h"

#define FOOTING_RULE "IRC P2604.4 (2018)"

static void add(struct rb_cautions *cautions, struct rb_caution caution)
{
	cautions->item[cautions->count++] = caution;
}

static void add_locate(struct rb_cautions *cautions)
{
	add(cautions, (struct rb_caution){ .kind = RB_CAUTION_LOCATE,
					   .rule = cautions->jurisdiction->locate,
					   .where = "",
					   .asks = "",
					   .value = rb_length_none(),
					   .limit = rb_length_none() });
}

static void add_depths(struct rb_cautions *cautions, const struct rb_cut_sheet *sheet)
{
	const struct rb_jurisdiction *jurisdiction = cautions->jurisdiction;

	if (!rb_length_given(sheet->deepest.value))
		return;
	for (size_t i = 0; i < jurisdiction->limits; i++) {
		const struct rb_limit *limit = &jurisdiction->limit[i];

		if (rb_exact_compare(sheet->deepest.exact, rb_exact_of(limit->depth)) >=
		    0)
			add(cautions, (struct rb_caution){ .kind = RB_CAUTION_DEPTH,
							   .rule = limit->rule,
							   .where = sheet->deepest.where,
							   .asks = limit->asks,
							   .value = sheet->deepest.value,
							   .limit = limit->depth,
							   .at_least = sheet->at_least });
	}
}

/* The trench must stay as far away as it is deep below the footing. */
static void add_footings(struct rb_cautions *cautions, const struct rb_cut_sheet *sheet)
{
	const struct rb_inverts *inverts = sheet->inverts;

	for (uint32_t i = 0; i < inverts->stations; i++) {
		const struct rb_plan_row *row;
		struct rb_exact lowest, below;

		if (inverts->station[i].row == RB_NO_PLAN_ROW)
			continue;
		row = &inverts->plan->row[inverts->station[i].row];
		if (!rb_length_given(row->footing_bottom) ||
		    !rb_length_given(row->footing_away))
			continue;
		lowest = rb_exact_sub(inverts->station[i].out,
				      rb_exact_of(rb_trench_at_least(inverts->plan)));
		below = rb_exact_sub(rb_exact_of(row->footing_bottom), lowest);
		if (rb_exact_compare(rb_exact_of(row->footing_away), below) < 0)
			add(cautions, (struct rb_caution){ .kind = RB_CAUTION_FOOTING,
							   .rule = FOOTING_RULE,
							   .where = row->name,
							   .asks = "",
							   .value = rb_exact_round(below),
							   .limit = row->footing_away,
							   .at_least = sheet->at_least });
	}
}

/* One is enough: the longest grade rod. */
static void add_rod(struct rb_cautions *cautions, const struct rb_grade_rods *rods)
{
	struct rb_caution longest = { .kind = RB_CAUTION_ROD,
				      .rule = "",
				      .where = "",
				      .asks = "",
				      .value = rb_length_of(RB_CLOSED_ROD),
				      .limit = rb_length_of(RB_CLOSED_ROD) };
	struct rb_exact exact = rb_exact_of(longest.limit);

	for (uint32_t i = 0; rods && i < rods->inverts->stations; i++)
		for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++) {
			const struct rb_grade_rod *rod = &rods->rod[i][s];

			if (!rb_length_given(rod->reading) ||
			    rb_exact_compare(rod->exact, exact) <= 0)
				continue;
			exact = rod->exact;
			longest.value = rod->reading;
			longest.where = rods->inverts->station[i].name;
		}
	if (*longest.where)
		add(cautions, longest);
}

struct rb_cautions *rb_cautions(struct rb_arena *arena, struct rb_findings *findings,
				const struct rb_jurisdiction *jurisdiction,
				const struct rb_cut_sheet *sheet,
				const struct rb_grade_rods *rods)
{
	struct rb_cautions *cautions = rb_arena_take_clear(arena, 1, sizeof *cautions);

	if (cautions) /* locating and the rod, each depth, each footing */
		cautions->item = rb_arena_take(
			arena, 2 + jurisdiction->limits + sheet->inverts->plan->rows,
			sizeof *cautions->item);
	if (!cautions || !cautions->item)
		return rb_findings_no_memory(findings), NULL;
	cautions->jurisdiction = jurisdiction;
	add_locate(cautions);
	add_depths(cautions, sheet);
	add_footings(cautions, sheet);
	add_rod(cautions, rods);
	return cautions;
}
