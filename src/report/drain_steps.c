/* SPDX-License-Identifier: MIT */
/* drain_steps.c - the arithmetic of a drain: fall, inverts, grade rods, cuts. */
#include "report/drain_parts.h"
#include "report/leg_steps.h"
#include "report/legs_table.h"
#include "report/slope_words.h"
#include "report/steps.h"

static void text(struct rb_drain_maker *m, const char *words)
{
	rb_phrase_text(&m->phrase, words);
}

static void number(struct rb_drain_maker *m, rb_length a, struct rb_style style)
{
	style.marked = true;
	if (!rb_steps_number(&m->phrase, a, style))
		text(m, " (rounded)");
}

/* -- fall -- */

static void tell_budget(struct rb_drain_maker *m)
{
	const struct rb_budget *b = m->r->budget;
	rb_length last =
		rb_exact_round(b->inverts->station[b->inverts->stations - 1].out);
	rb_length needed = rb_exact_round(b->needed);

	text(m, "\nthe whole line");
	rb_named_difference(&m->phrase, "available",
			    rb_exact_round(b->inverts->station[0].out), last,
			    m->r->style);
	if (!b->judged)
		return;
	text(m, "\n  needed = ");
	rb_phrase_slope(&m->phrase, b->minimum.slope);
	text(m, " x ");
	number(m, b->length, rb_runs_style(m->r->style.unit));
	if (rb_exact_sign(b->inverts->steps)) {
		text(m, " + steps ");
		number(m, rb_exact_round(b->inverts->steps), m->r->style);
	}
	text(m, " = ");
	number(m, needed, m->r->style);
	rb_named_difference(&m->phrase, "spare", rb_exact_round(b->available), needed,
			    m->r->style);
}

static void tell_fall(struct rb_drain_maker *m)
{
	const struct rb_budget *b = m->r->budget;

	for (uint32_t i = 0; i < b->legs; i++)
		rb_leg_steps(&m->phrase, &b->leg[i], m->r->style);
	tell_budget(m);
}

/* -- stations -- */

/* The invert of a station, from the plan's station above it. */
static void tell_invert(struct rb_drain_maker *m, uint32_t i)
{
	const struct rb_inverts *inverts = m->r->inverts;
	const struct rb_station *station = &inverts->station[i], *from;
	const struct rb_reach *reach;
	rb_length step = rb_exact_round(rb_exact_sub(station->in, station->out));

	if (!i)
		return;
	reach = &inverts->reach[station->reach];
	if (reach->from == i) /* it comes in by the reach before */
		reach--;
	from = &inverts->station[reach->from];
	text(m, "\n  invert = ");
	number(m, rb_exact_round(from->out), m->r->style);
	text(m, " - ");
	rb_phrase_slope(&m->phrase, reach->slope);
	text(m, " x ");
	number(m, rb_length_sub(station->run, from->run),
	       rb_runs_style(m->r->style.unit));
	if (step.nm) {
		text(m, " - step ");
		number(m, step, m->r->style);
	}
	text(m, " = ");
	number(m, rb_exact_round(station->out), m->r->style);
}

static void tell_surfaces(struct rb_drain_maker *m, uint32_t i)
{
	const struct rb_cut *cut = &m->r->sheet->cut[i];
	rb_length wall = m->r->plan->pipe.wall, bedding = m->r->plan->bedding;

	if (rb_length_given(cut->top_of_pipe))
		rb_named_sum(&m->phrase, "top of pipe", cut->invert,
			     rb_pipe_top(&m->r->plan->pipe), m->r->style);
	if (rb_length_given(cut->trench_bottom))
		rb_named_difference(&m->phrase, "trench bottom", cut->invert,
				    rb_length_add(wall, bedding), m->r->style);
}

static void tell_pipe(struct rb_drain_maker *m, const struct rb_grade_rod *rod,
		      const char *const names[RB_SURFACES])
{
	rb_length hi = m->r->rods->hi;

	for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++)
		if (rb_length_given(rod[s].reading))
			rb_named_difference(&m->phrase, names[s], hi,
					    rb_length_sub(hi, rod[s].reading),
					    m->r->style);
}

static void tell_rods(struct rb_drain_maker *m, uint32_t i)
{
	static const char *const in[RB_SURFACES] = {
		"grade rod to invert in",
		"grade rod to top of pipe, in",
		"grade rod to trench bottom, in",
	};
	static const char *const out[RB_SURFACES] = { "grade rod to invert",
						      "grade rod to top of pipe",
						      "grade rod to trench bottom" };
	const struct rb_grade_rods *rods = m->r->rods;

	if (!rods)
		return;
	tell_pipe(m, rods->rod_in[i], in);
	tell_pipe(m, rods->rod[i], out);
}

static void tell_cuts(struct rb_drain_maker *m, uint32_t i)
{
	const struct rb_cut *cut = &m->r->sheet->cut[i];

	if (rb_length_given(cut->cut))
		rb_named_difference(&m->phrase, "cut", cut->ground, cut->invert,
				    m->r->style);
	if (rb_length_given(cut->cover))
		rb_named_difference(&m->phrase, "cover", cut->ground, cut->top_of_pipe,
				    m->r->style);
	if (rb_length_given(cut->cover_in))
		rb_named_difference(
			&m->phrase, "cover of the pipe that comes in", cut->ground,
			rb_length_sub(cut->ground, cut->cover_in), m->r->style);
	if (rb_length_given(cut->hub))
		rb_named_difference(&m->phrase, "cut from the hub", cut->hub, cut->invert,
				    m->r->style);
	if (rb_length_given(cut->board))
		rb_named_difference(&m->phrase, "board above the hub", m->r->sheet->board,
				    cut->hub_cut, m->r->style);
}

static void tell_hi(struct rb_drain_maker *m)
{
	const struct rb_sighted_benchmark *benchmark = m->r->benchmark;

	if (!m->r->rods || !rb_length_given(benchmark[0].elevation))
		return;
	text(m, "\ntoday's height of instrument");
	rb_named_sum(&m->phrase, "HI", benchmark[0].elevation, benchmark[0].backsight,
		     m->r->style);
	if (m->r->today.checked)
		rb_named_sum(&m->phrase, "HI from the second benchmark",
			     benchmark[1].elevation, benchmark[1].backsight, m->r->style);
}

/* -- the laid pipe -- */

static void tell_shot(struct rb_drain_maker *m, const struct rb_laid_shot *shot)
{
	rb_length above = rb_length_of(0);

	text(m, "\nlaid, ");
	rb_phrase_words(&m->phrase, shot->name);
	if (shot->rod_on == RB_ON_TOP_OF_PIPE)
		above = rb_pipe_top(&m->r->plan->pipe);
	if (shot->rod_on == RB_ON_INSIDE_TOP)
		above = rb_pipe_inside(&m->r->plan->pipe);
	if (above.nm)
		rb_named_difference(&m->phrase, "invert",
				    rb_length_add(shot->invert, above), above,
				    m->r->style);
	rb_named_difference(&m->phrase, "off", shot->invert, shot->planned, m->r->style);
}

void rb_drain_steps_part(struct rb_drain_maker *m)
{
	const struct rb_laid *laid = m->r->laid;

	rb_page_add(m->page, RB_HEADING, "Step by step", NULL);
	tell_fall(m);
	tell_hi(m);
	for (uint32_t i = 0; i < m->r->inverts->stations; i++) {
		text(m, "\n");
		rb_phrase_words(&m->phrase, m->r->inverts->station[i].name);
		tell_invert(m, i);
		tell_surfaces(m, i);
		tell_rods(m, i);
		tell_cuts(m, i);
	}
	for (uint32_t i = 0; laid && i < laid->shots; i++)
		tell_shot(m, &laid->shot[i]);
	for (uint32_t i = 0; laid && i < laid->legs; i++)
		rb_leg_steps(&m->phrase, &laid->leg[i], m->r->style);
	rb_drain_add(m, RB_LINES);
}
