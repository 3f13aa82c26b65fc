/* SPDX-License-Identifier: MIT */
/* grade_rods.c - height of instrument less the wanted elevation. */
#include "drain/grade_rods.h"

struct rb_todays_hi rb_hi_of_benchmarks(rb_length benchmark, rb_length backsight,
					rb_length second, rb_length second_backsight)
{
	struct rb_todays_hi today = { rb_length_add(benchmark, backsight), false,
				      rb_length_none() };

	if (!rb_length_given(second) || !rb_length_given(second_backsight))
		return today;
	today.checked = true;
	today.difference =
		rb_length_sub(rb_length_add(second, second_backsight), today.hi);
	return today;
}

rb_length rb_hi_allowed(const struct rb_plan *plan)
{
	bool metric = rb_unit_of_runs(plan->unit) == RB_METRES;

	if (rb_length_given(plan->grade_tolerance))
		return plan->grade_tolerance;
	return rb_length_of(metric ? 5 * RB_MILLIMETRE : RB_INCH / 4);
}

void rb_hi_judge(struct rb_findings *findings, const struct rb_plan *plan,
		 const struct rb_todays_hi *today)
{
	rb_length allowed = rb_hi_allowed(plan), apart;

	if (!today->checked)
		return;
	apart = rb_length_absolute(today->difference);
	if (rb_length_compare(apart, allowed) > 0)
		rb_findings_add(findings, RB_CODE_HI_DIFFERS, rb_in_file(),
				rb_measure(apart, plan->unit),
				rb_measure(allowed, plan->unit));
}

/* The worst of one kind: what goes into its finding. */
struct worst {
	bool any;
	uint32_t station;
	enum rb_surface surface;
	rb_length reading;
};

static void note(struct worst *worst, uint32_t station, enum rb_surface surface,
		 rb_length reading)
{
	if (!worst->any || rb_length_compare(rb_length_absolute(reading),
					     rb_length_absolute(worst->reading)) > 0)
		*worst = (struct worst){ true, station, surface, reading };
}

static struct rb_grade_rod rod_to(const struct rb_grade_rods *rods,
				  struct rb_exact invert, enum rb_surface surface)
{
	const struct rb_plan *plan = rods->inverts->plan;
	rb_length above = rb_surface_above(plan, surface);
	struct rb_grade_rod rod = { .reading = above, .reach = RB_ROD_REACHES };

	if (!rb_length_given(above))
		return rod;
	rod.exact = rb_exact_sub(rb_exact_of(rb_length_sub(rods->hi, above)), invert);
	rod.reading = rb_exact_round(rod.exact);
	if (rb_exact_sign(rod.exact) < 0)
		rod.reach = RB_GRADE_ABOVE_SIGHT;
	else if (rb_exact_compare(rod.exact, rb_exact_of(plan->rod)) > 0)
		rod.reach = RB_BEYOND_ROD;
	return rod;
}

/* Narrow the heights of instrument that serve: from just above the surface to just not a
 * rod's length above it. */
static void narrow(struct rb_grade_rods *rods, struct rb_exact rod)
{
	rb_length lowest = rb_length_sub(rods->hi, rb_exact_floor(rod));
	rb_length highest = rb_length_add(rb_length_sub(rods->hi, rb_exact_ceiling(rod)),
					  rods->inverts->plan->rod);

	if (!rb_length_given(rods->lowest_hi) ||
	    rb_length_compare(lowest, rods->lowest_hi) > 0)
		rods->lowest_hi = lowest;
	if (!rb_length_given(rods->highest_hi) ||
	    rb_length_compare(highest, rods->highest_hi) < 0)
		rods->highest_hi = highest;
}

static void set_pipe(struct rb_grade_rods *rods, struct rb_grade_rod to[RB_SURFACES],
		     uint32_t i, struct rb_exact invert, struct worst worst[])
{
	for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++) {
		to[s] = rod_to(rods, invert, s);
		if (!rb_length_given(to[s].reading))
			continue;
		narrow(rods, to[s].exact);
		if (to[s].reach != RB_ROD_REACHES)
			note(&worst[to[s].reach], i, s, to[s].reading);
	}
}

static void set_station(struct rb_grade_rods *rods, uint32_t i, struct worst worst[])
{
	const struct rb_station *station = &rods->inverts->station[i];

	set_pipe(rods, rods->rod[i], i, station->out, worst);
	for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++)
		rods->rod_in[i][s].reading = rb_length_none();
	if (rb_station_step(station).nm)
		set_pipe(rods, rods->rod_in[i], i, station->in, worst);
}

enum side { DOWN, NEAREST, UP };

/* To what the crew reads: the nearest, or on the side that serves. */
static rb_length to_step(rb_length a, enum rb_unit unit, enum side side)
{
	bool metric = rb_unit_of_runs(unit) == RB_METRES;
	int64_t step = metric            ? RB_MILLIMETRE
		       : unit == RB_FEET ? RB_FOOT / 100
					 : RB_INCH / 8;
	int64_t nm = side == NEAREST ? a.nm + step / 2 : a.nm;
	int64_t whole = nm / step - (nm % step < 0);

	return rb_length_of((whole + (side == UP && whole * step != nm)) * step);
}

/* The worst station, and what height of instrument would do for all. */
static void report(struct rb_findings *findings, const struct rb_grade_rods *rods,
		   const struct worst *worst, enum rb_code code,
		   struct rb_argument serves)
{
	const struct rb_plan *plan = rods->inverts->plan;
	struct rb_place place = rb_in_file();
	rb_length amount = rb_length_absolute(worst->reading);

	if (!worst->any)
		return;
	place.point = rods->inverts->station[worst->station].name;
	rb_findings_add4(
		findings, code, place,
		(struct rb_argument[RB_ARGUMENTS]){
			rb_text(place.point),
			rb_text(rb_surface_name(worst->surface)),
			rb_measure(to_step(amount, plan->unit, NEAREST), plan->unit),
			serves,
		});
}

/* None is named where none serves the whole line: the rod is too short for it. */
static void report_all(struct rb_findings *findings, const struct rb_grade_rods *rods,
		       const struct worst worst[])
{
	enum rb_unit unit = rods->inverts->plan->unit;
	rb_length lowest = to_step(rods->lowest_hi, unit, UP);
	rb_length highest = to_step(rods->highest_hi, unit, DOWN);
	bool one_serves = rb_length_compare(lowest, highest) <= 0;

	report(findings, rods, &worst[RB_GRADE_ABOVE_SIGHT], RB_CODE_GRADE_ABOVE_SIGHT,
	       one_serves ? rb_measure(lowest, unit) : rb_nothing());
	report(findings, rods, &worst[RB_BEYOND_ROD], RB_CODE_GRADE_BEYOND_ROD,
	       one_serves ? rb_measure(highest, unit) : rb_nothing());
}

struct rb_grade_rods *rb_grade_rods(struct rb_arena *arena, struct rb_findings *findings,
				    const struct rb_inverts *inverts, rb_length hi)
{
	struct worst worst[RB_BEYOND_ROD + 1] = { { 0 } };
	struct rb_grade_rods *rods = rb_arena_take_clear(arena, 1, sizeof *rods);

	if (rods) {
		rods->rod = rb_arena_take(arena, inverts->stations, sizeof *rods->rod);
		rods->rod_in =
			rb_arena_take(arena, inverts->stations, sizeof *rods->rod_in);
	}
	if (!rods || !rods->rod || !rods->rod_in)
		return rb_findings_no_memory(findings), NULL;
	rods->inverts = inverts;
	rods->hi = hi;
	rods->lowest_hi = rods->highest_hi = rb_length_none();
	for (uint32_t i = 0; i < inverts->stations; i++)
		set_station(rods, i, worst);
	report_all(findings, rods, worst);
	return rods;
}
