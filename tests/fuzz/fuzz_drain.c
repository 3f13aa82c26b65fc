/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a plan, with a ground book, a laid book and a jurisdiction behind it:
 * inverts and slopes agree with their differences, a line at exactly the minimum slope
 * passes, and every sheet is well-formed.
 */
#include "report/drain_csv.h"
#include "report/drain_json.h"
#include "report/drain_page.h"
#include "report/drain_profile.h"
#include "strict.h"
#include "work.h"

struct drain {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct work ground, laid; /* arena NULL: there is none */
	struct rb_drain_result result;
	uint32_t draws;
};

/* -- inverts -- */

/* From station to station the pipe falls by its slope over its length, exactly as long
 * as fractions can be held. */
static void check_reach(const struct rb_inverts *inverts, const struct rb_reach *reach)
{
	const struct rb_station *from = &inverts->station[reach->from];
	const struct rb_station *to = &inverts->station[reach->to];
	struct rb_exact fall = rb_exact_sub(from->out, to->in);
	struct rb_exact wanted = rb_exact_fall(reach->slope, reach->length);
	rb_length off = rb_exact_round(rb_exact_sub(fall, wanted));

	HOLDS(reach->length.nm > 0);
	HOLDS(to->run.nm - from->run.nm == reach->length.nm);
	HOLDS(off.nm == 0);
}

static void check_written(const struct rb_inverts *inverts)
{
	for (uint32_t i = 0; i < inverts->stations; i++) {
		const struct rb_station *station = &inverts->station[i];
		const struct rb_plan_row *row;

		if (station->row == RB_NO_PLAN_ROW)
			continue;
		row = &inverts->plan->row[station->row];
		if (rb_length_given(row->invert))
			HOLDS(rb_exact_compare(station->out, rb_exact_of(row->invert)) ==
			      0);
		if (rb_length_given(row->step) && i > 0)
			HOLDS(rb_exact_compare(rb_exact_sub(station->in, station->out),
					       rb_exact_of(row->step)) == 0);
	}
}

static void check_inverts(const struct rb_inverts *inverts)
{
	HOLDS(inverts->stations >= 2 && inverts->reaches >= 1);
	for (uint32_t i = 0; i < inverts->reaches; i++)
		check_reach(inverts, &inverts->reach[i]);
	check_written(inverts);
}

/* The flattest reach sets the minimum: no leg is flatter, and the fall is not short. */
static void check_minimum(struct rb_arena *arena, const struct rb_inverts *inverts)
{
	struct rb_minimum minimum = { .slope = inverts->reach[0].slope };
	const struct rb_budget *budget;
	struct rb_findings findings;

	for (uint32_t i = 1; i < inverts->reaches; i++)
		if (rb_slope_compare(inverts->reach[i].slope, minimum.slope) < 0)
			minimum.slope = inverts->reach[i].slope;
	if (minimum.slope.fall.nm <= 0)
		return;
	rb_findings_init(&findings, arena, "again.csv");
	budget = rb_budget(arena, &findings, inverts, &minimum);
	HOLDS(budget && budget->judged);
	for (uint32_t i = 0; i < budget->legs; i++)
		HOLDS(budget->leg[i].verdict == RB_LEG_OK);
	HOLDS(!budget->is_short);
	HOLDS(!findings.of_severity[RB_FAILED]);
}

/* -- the crew's sheets -- */

static const struct rb_spots *spots_of(struct drain *d, struct work *work,
				       struct part book)
{
	const struct rb_spots *spots;

	work->arena = NULL;
	if (!book.length || !work_out(work, d->arena, book))
		return NULL;
	spots = rb_spots(d->arena, &work->findings, work->reduction.adjusted);
	HOLDS(spots);
	return spots;
}

static void check_rods(const struct rb_grade_rods *rods)
{
	for (uint32_t i = 0; i < rods->inverts->stations; i++) {
		rb_length reading = rods->rod[i][RB_INVERT].reading;
		struct rb_exact rest = rb_exact_sub(rb_exact_of(rods->hi),
						    rods->inverts->station[i].out);

		HOLDS(reading.nm == rb_exact_round(rest).nm);
	}
}

static const struct rb_jurisdiction *jurisdiction_of(struct drain *d, struct part file)
{
	struct rb_findings findings;
	const struct rb_jurisdiction *found = NULL;

	rb_findings_init(&findings, d->arena, "jurisdiction.csv");
	if (file.length)
		found = rb_jurisdiction_read(d->arena, &findings, file.bytes,
					     file.length);
	if (!found)
		found = rb_jurisdiction_find(d->result.plan->jurisdiction);
	return found ? found : rb_jurisdiction_unset();
}

static void make_sheets(struct drain *d, struct part ground_file, struct part laid_file,
			struct part jurisdiction_file)
{
	struct rb_drain_result *r = &d->result;
	struct rb_minimum minimum = { .slope = r->plan->minimum };
	const struct rb_spots *ground = spots_of(d, &d->ground, ground_file);
	const struct rb_spots *laid = spots_of(d, &d->laid, laid_file);
	struct rb_findings *of_ground = ground ? &d->ground.findings : NULL;

	r->budget = rb_budget(d->arena, &d->findings, r->inverts, &minimum);
	r->sheet = rb_cut_sheet(d->arena, &d->findings, of_ground, r->inverts, ground,
				rb_length_none());
	if (rb_length_given(r->today.hi)) {
		r->rods = rb_grade_rods(d->arena, &d->findings, r->inverts, r->today.hi);
		HOLDS(r->rods);
		check_rods(r->rods);
	}
	if (laid)
		r->laid = rb_laid(d->arena, &d->laid.findings, &d->findings, r->inverts,
				  laid, &minimum);
	HOLDS(r->budget);
	HOLDS(r->sheet || !rb_findings_allow_result(&d->findings) ||
	      (of_ground && !rb_findings_allow_result(of_ground)));
	if (r->sheet)
		r->cautions = rb_cautions(d->arena, &d->findings,
					  jurisdiction_of(d, jurisdiction_file), r->sheet,
					  r->rods);
}

/* -- results -- */

static void as_json(const struct drain *d)
{
	const struct rb_findings *findings = &d->findings;
	struct kept kept;

	kept_begin(&kept);
	HOLDS(rb_drain_write_json(&kept.sink, d->arena, &d->result, &findings, 1));
	kept_end(&kept);
	strict_json(&kept);
	kept_free(&kept);
}

static void as_csv(const struct drain *d)
{
	struct kept kept;

	kept_begin(&kept);
	rb_drain_write_csv(&kept.sink, &d->result);
	kept_end(&kept);
	strict_csv(&kept);
	kept_free(&kept);
}

static void as_page(const struct drain *d)
{
	check_page(rb_drain_page(d->arena, &d->result, true),
		   rb_drain_profile(d->arena, &d->result), d->draws);
}

static void as_picture(const struct drain *d)
{
	check_picture(rb_drain_profile(d->arena, &d->result));
}

static void write_results(struct drain *d)
{
	static void (*const formats[])(const struct drain *) = { as_json, as_csv, as_page,
								 as_picture };

	if (!d->result.sheet || !d->result.cautions)
		return;
	d->result.style = draw_style(&d->draws, rb_plan_style(d->result.plan));
	d->result.fraction = 8 << draw(&d->draws, 4);
	d->result.decimals = draw(&d->draws, 8) - 1;
	formats[draw(&d->draws, 4)](d);
}

/* An interval now and then, but not one that makes stations by the thousand. */
static rb_length draw_interval(struct drain *d)
{
	const struct rb_plan *plan = d->result.plan;
	int64_t length = 0;

	if (plan->rows && rb_length_given(plan->row[0].chainage) &&
	    rb_length_given(plan->row[plan->rows - 1].chainage))
		length = plan->row[plan->rows - 1].chainage.nm - plan->row[0].chainage.nm;
	if (length <= 0 || draw(&d->draws, 3))
		return rb_length_none();
	return rb_length_of(length / (1 + draw(&d->draws, 9)) + 1);
}

static void work_plan(struct drain *d, const uint8_t *data, size_t size)
{
	struct part file = part_of(data, size, 0);
	struct rb_drain_result *r = &d->result;

	r->plan = rb_plan_read(d->arena, &d->findings, file.bytes, file.length);
	HOLDS(r->plan || !rb_findings_allow_result(&d->findings));
	if (!r->plan || !rb_findings_allow_result(&d->findings))
		return;
	r->inverts = rb_inverts(d->arena, &d->findings, r->plan, draw_interval(d));
	HOLDS(r->inverts || !rb_findings_allow_result(&d->findings));
	if (!r->inverts || !rb_findings_allow_result(&d->findings))
		return;
	check_inverts(r->inverts);
	check_minimum(d->arena, r->inverts);
	if (draw(&d->draws, 2))
		r->today.hi = rb_length_add(rb_exact_round(r->inverts->station[0].out),
					    rb_length_of(draw(&d->draws, 9) * RB_FOOT));
	make_sheets(d, part_of(data, size, 1), part_of(data, size, 2),
		    part_of(data, size, 3));
	write_results(d);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct drain d = { .arena = rb_arena_new(NULL), .draws = drawn_from(data, size) };

	HOLDS(d.arena);
	rb_findings_init(&d.findings, d.arena, "fuzz.csv");
	d.result.has_plan = true;
	d.result.size = rb_length_none();
	d.result.today =
		(struct rb_todays_hi){ rb_length_none(), false, rb_length_none() };
	for (int i = 0; i < 2; i++)
		d.result.benchmark[i] = (struct rb_sighted_benchmark){ rb_length_none(),
								       rb_length_none() };
	work_plan(&d, data, size);
	check_messages(&d.findings, d.draws);
	rb_arena_free(d.arena);
	return 0;
}
