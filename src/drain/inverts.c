/* SPDX-License-Identifier: MIT */
/* inverts.c - from the plan's rows to exact inverts along the flow. */
#include "drain/inverts.h"

#include "drain/plan_check.h"
#include "drain/stations.h"
#include "measure/wide.h"

/* What the steps below work on.  Until stations are added, station i and reach i are
 * those of the i-th row along the flow. */
struct work {
	struct rb_findings *findings;
	const struct rb_plan *plan;
	struct rb_inverts *inverts;
	bool *known; /* by station: its invert is */
};

static const struct rb_plan_row *row_of(const struct work *w, uint32_t station)
{
	return &w->plan->row[w->inverts->station[station].row];
}

/* -- the line, upstream first -- */

static void lay_out(struct work *w)
{
	struct rb_inverts *inverts = w->inverts;
	uint32_t rows = w->plan->rows;

	inverts->stations = rows;
	inverts->reaches = rows - 1;
	inverts->steps = rb_exact_of(rb_length_of(0));
	for (uint32_t i = 0; i < rows; i++) {
		uint32_t row = w->plan->outlet == RB_OUTLET_FIRST ? rows - 1 - i : i;
		const struct rb_plan_row *written = &w->plan->row[row];
		struct rb_station *station = &inverts->station[i];

		*station = (struct rb_station){ .name = written->name,
						.row = row,
						.reach = i < rows - 1 ? i : i - 1,
						.chainage = written->chainage };
		station->run = rb_length_absolute(
			rb_length_sub(written->chainage, inverts->station[0].chainage));
		if (i)
			inverts->steps = rb_exact_add(inverts->steps,
						      rb_exact_of(rb_plan_step(written)));
	}
	for (uint32_t i = 0; i + 1 < rows; i++)
		inverts->reach[i] = (struct rb_reach){
			.from = i,
			.to = i + 1,
			.length = rb_length_sub(inverts->station[i + 1].run,
						inverts->station[i].run),
		};
}

static void set_out(struct work *w, uint32_t station, struct rb_exact out)
{
	struct rb_station *s = &w->inverts->station[station];

	s->out = out;
	s->in = rb_exact_add(out, rb_exact_of(rb_plan_step(row_of(w, station))));
	w->known[station] = true;
}

/* -- between two fixed inverts -- */

static rb_slope written_slope(const struct work *w, uint32_t station)
{
	rb_slope own = row_of(w, station)->slope;

	return rb_slope_given(own) ? own : w->plan->slope;
}

/*
 * Does a written slope differ from the fall of the inverts over their whole span by more
 * than the two may have been rounded, half a place each?
 */
static bool disagrees(const struct work *w, rb_slope written,
		      const struct rb_reach *reach)
{
	rb_wide apart = rb_wide_mul(written.fall.nm, reach->span.nm) -
			rb_wide_mul(reach->span_fall.nm, written.run.nm);

	if (apart < 0)
		apart = -apart;
	return rb_wide_compare(apart,
			       rb_wide_mul(w->plan->invert_place.nm, written.run.nm)) > 0;
}

/* A written slope is a check here; the one for every leg is held against each span once.
 */
static void check_slope(struct work *w, const struct rb_reach *reach)
{
	uint32_t row = w->inverts->station[reach->from].row;
	bool own = rb_slope_given(w->plan->row[row].slope);
	rb_slope written = written_slope(w, reach->from);

	if (rb_slope_given(written) && (own || reach->opens) &&
	    disagrees(w, written, reach))
		rb_findings_add(w->findings, RB_CODE_SLOPE_DISAGREES,
				own ? rb_plan_place(w->plan, row, RB_PLAN_SLOPE)
				    : w->plan->slope_place,
				rb_ratio_of(written), rb_ratio_of(reach->slope));
}

static void spread(struct work *w, uint32_t from, uint32_t to)
{
	struct rb_inverts *inverts = w->inverts;
	rb_length fall = rb_length_sub(rb_plan_fixed(row_of(w, from)),
				       rb_plan_fixed(row_of(w, to)));
	rb_length span =
		rb_length_sub(inverts->station[to].run, inverts->station[from].run);

	for (uint32_t i = from + 1; i <= to; i++)
		fall = rb_length_sub(fall, rb_plan_step(row_of(w, i)));
	for (uint32_t i = from; i < to; i++) {
		struct rb_reach *reach = &inverts->reach[i];

		reach->slope = (rb_slope){ fall, span };
		reach->uniform = true;
		reach->opens = i == from;
		reach->span_fall = fall;
		reach->span = span;
		check_slope(w, reach);
	}
}

/* Set what the rows fix, and spread the grade between each two.  The first fixed station,
 * or the number of stations where there is none. */
static uint32_t fix(struct work *w)
{
	uint32_t stations = w->inverts->stations, first = stations, last = stations;

	for (uint32_t i = 0; i < stations; i++) {
		rb_length fixed = rb_plan_fixed(row_of(w, i));

		if (!rb_length_given(fixed))
			continue;
		set_out(w, i, rb_exact_of(fixed));
		if (last < stations)
			spread(w, last, i);
		else
			first = i;
		last = i;
	}
	return first;
}

/* -- carrying -- */

static bool take_slopes(struct work *w)
{
	bool whole = true;

	for (uint32_t i = 0; i < w->inverts->reaches; i++) {
		struct rb_reach *reach = &w->inverts->reach[i];

		if (reach->uniform)
			continue;
		reach->slope = written_slope(w, i);
		if (rb_slope_given(reach->slope))
			continue;
		whole = false;
		rb_findings_add(
			w->findings, RB_CODE_NO_SLOPE,
			rb_plan_place(w->plan, w->inverts->station[i].row, RB_PLAN_SLOPE),
			rb_text(w->inverts->station[i].name),
			rb_text(w->inverts->station[i + 1].name));
	}
	return whole;
}

static void carry_down(struct work *w, const struct rb_reach *reach)
{
	struct rb_exact step = rb_exact_of(rb_plan_step(row_of(w, reach->to)));
	struct rb_exact in = rb_exact_sub(w->inverts->station[reach->from].out,
					  rb_exact_fall(reach->slope, reach->length));

	set_out(w, reach->to, rb_exact_sub(in, step));
}

static void carry_up(struct work *w, const struct rb_reach *reach)
{
	set_out(w, reach->from,
		rb_exact_add(w->inverts->station[reach->to].in,
			     rb_exact_fall(reach->slope, reach->length)));
}

static void carry(struct work *w, uint32_t first)
{
	const struct rb_reach *reach = w->inverts->reach;

	for (uint32_t i = first; i > 0; i--)
		carry_up(w, &reach[i - 1]);
	for (uint32_t i = first; i < w->inverts->reaches; i++)
		if (!w->known[i + 1])
			carry_down(w, &reach[i]);
}

static bool work_out(struct work *w)
{
	uint32_t first, stations = w->plan->rows;

	lay_out(w);
	first = fix(w);
	if (first == stations)
		rb_findings_add(w->findings, RB_CODE_NO_INVERT,
				rb_plan_place(w->plan,
					      w->inverts->station[stations - 1].row,
					      RB_PLAN_INVERT),
				rb_nothing(), rb_nothing());
	if (!take_slopes(w) || first == stations)
		return false;
	carry(w, first);
	return true;
}

struct rb_inverts *rb_inverts(struct rb_arena *arena, struct rb_findings *findings,
			      const struct rb_plan *plan, rb_length interval)
{
	struct work w = { findings, plan, NULL, NULL };

	w.inverts = rb_arena_take_clear(arena, 1, sizeof *w.inverts);
	w.known = rb_arena_take_clear(arena, plan->rows, sizeof *w.known);
	if (!w.inverts || !w.known)
		return rb_findings_no_memory(findings), NULL;
	w.inverts->plan = plan;
	w.inverts->station = rb_arena_take(arena, plan->rows, sizeof *w.inverts->station);
	w.inverts->reach = rb_arena_take(arena, plan->rows, sizeof *w.inverts->reach);
	if (!w.inverts->station || !w.inverts->reach)
		return rb_findings_no_memory(findings), NULL;
	if (!work_out(&w))
		return NULL;
	if (rb_length_given(interval) &&
	    !rb_stations_add(arena, findings, w.inverts, interval))
		return NULL;
	return w.inverts;
}
