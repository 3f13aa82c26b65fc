/* SPDX-License-Identifier: MIT */
/* drain_laid.c - the pipe as it lies: shots, legs, standing water, verdicts. */
#include "report/drain_parts.h"
#include "report/elevations_words.h"
#include "report/legs_table.h"
#include "report/section_words.h"
#include "report/slope_words.h"

#define CELLS 8

/* -- shots -- */

static struct rb_table *start_shots(struct rb_drain_maker *m)
{
	const struct rb_table_column column[CELLS] = {
		{ "point", RB_LEFT, RB_SPILLS },
		{ "chainage", RB_RIGHT, RB_KEEPS },
		{ "rod on", RB_LEFT, RB_KEEPS },
		{ "planned\ninvert", rb_drain_align(m), RB_KEEPS },
		{ "laid\ninvert", rb_drain_align(m), RB_KEEPS },
		{ "off by", RB_ON_POINT, RB_KEEPS },
		{ "ft-in", RB_ON_INCHES, RB_KEEPS },
		{ "", RB_LEFT, RB_KEEPS },
	};

	return rb_drain_table(
		m,
		rb_drain_caption(m, "The pipe as laid, from the upper end to the outlet",
				 m->r->laid->spots),
		column, CELLS);
}

/* Where nothing is judged, nothing is called on grade. */
static const char *side_of(const struct rb_drain_maker *m,
			   const struct rb_laid_shot *shot)
{
	if (!shot->out && !rb_length_as_shown(shot->deviation, m->decimal).nm)
		return rb_length_given(m->r->plan->grade_tolerance) ? "on grade" : "";
	if (shot->deviation.nm > 0)
		return shot->out ? "high, OUT" : "high";
	return shot->out ? "low, OUT" : "low";
}

static void add_shot(struct rb_drain_maker *m, struct rb_table *table,
		     const struct rb_laid_shot *shot)
{
	rb_length off = rb_length_absolute(shot->deviation);
	char text[CELLS][RB_LENGTH_TEXT];
	const char *cell[CELLS];

	for (int i = 0; i < CELLS; i++)
		cell[i] = text[i];
	rb_drain_chainage(m, text[1], shot->chainage);
	rb_length_format(text[3], shot->planned, m->r->style);
	rb_length_format(text[4], shot->invert, m->r->style);
	rb_length_format(text[5], off, m->decimal);
	rb_length_format(text[6], off, m->inches);
	cell[0] = shot->name;
	cell[2] = rb_rod_on_name(shot->rod_on);
	cell[7] = side_of(m, shot);
	rb_table_add(table, RB_ROW, cell);
}

static void add_shots(struct rb_drain_maker *m)
{
	const struct rb_laid *laid = m->r->laid;
	struct rb_table *table = start_shots(m);

	if (!table)
		return;
	for (uint32_t i = 0; i < laid->shots; i++)
		add_shot(m, table, &laid->shot[i]);
	m->page->out_of_memory |= table->out_of_memory;
	rb_elevations_words(&m->phrase, laid->spots);
	if (rb_length_given(laid->step)) {
		rb_phrase_text(&m->phrase, " The rod was read to ");
		rb_phrase_shown(&m->phrase, laid->step, m->r->style.unit);
		rb_phrase_text(&m->phrase, ": what is off is good to half of that.");
	}
	rb_drain_add(m, RB_PARAGRAPH);
}

/* -- legs -- */

/* End to end, steps taken off: what hides a belly. */
static struct rb_leg total_of(const struct rb_laid *laid)
{
	const struct rb_leg *last = &laid->leg[laid->legs - 1];
	struct rb_leg total = laid->leg[0];

	total.to = last->to;
	total.fall = total.length = rb_length_of(0);
	for (uint32_t i = 0; i < laid->legs; i++) {
		total.fall = rb_length_add(total.fall, laid->leg[i].fall);
		total.length = rb_length_add(total.length, laid->leg[i].length);
	}
	total.slope = (rb_slope){ total.fall, total.length };
	if (rb_slope_given(total.uncertainty))
		total.uncertainty.run = total.length;
	rb_leg_judge(&total);
	return total;
}

static void add_legs(struct rb_drain_maker *m)
{
	const struct rb_laid *laid = m->r->laid;
	struct rb_leg total;
	struct rb_legs legs = { .leg = laid->leg,
				.count = laid->legs,
				.style = m->r->style,
				.judged = true };

	if (!laid->legs)
		return;
	legs.caption =
		rb_drain_caption(m, "Joint to joint, as laid, downstream", laid->spots);
	total = total_of(laid);
	if (laid->legs > 1)
		legs.total = &total;
	rb_legs_table(m->page, &legs);
}

void rb_drain_laid_part(struct rb_drain_maker *m)
{
	if (!m->r->laid)
		return;
	add_shots(m);
	add_legs(m);
}

/* -- verdicts -- */

static void say_pond(struct rb_drain_maker *m, const struct rb_pond *pond)
{
	const struct rb_laid_shot *shot = m->r->laid->shot;
	rb_length inside = rb_pipe_inside(&m->r->plan->pipe);

	rb_phrase_text(&m->phrase, "water stands ");
	rb_drain_say_both(m, pond->depth);
	rb_phrase_text(&m->phrase, " deep at ");
	rb_phrase_words(&m->phrase, shot[pond->deepest].name);
	if (rb_length_given(inside)) {
		rb_phrase_text(&m->phrase, ", ");
		rb_phrase_number(
			&m->phrase,
			rb_length_share(rb_length_of(100), pond->depth.nm, inside.nm).nm);
		rb_phrase_text(&m->phrase, " % of the pipe's inside");
	}
	rb_phrase_text(&m->phrase, ", over ");
	rb_phrase_marked(&m->phrase, pond->wet, rb_runs_style(m->r->style.unit));
	rb_phrase_text(&m->phrase, " of pipe below ");
	rb_phrase_words(&m->phrase, shot[pond->from].name);
	rb_phrase_text(&m->phrase, ", held by ");
	rb_phrase_words(&m->phrase, shot[pond->to].name);
	rb_phrase_text(&m->phrase, ".");
}

static void say_shots(struct rb_drain_maker *m)
{
	const struct rb_laid *laid = m->r->laid;
	rb_length tolerance = m->r->plan->grade_tolerance;
	const struct rb_laid_shot *worst = laid->shot;
	uint32_t out = 0;

	for (uint32_t i = 0; i < laid->shots; i++) {
		out += laid->shot[i].out;
		if (rb_length_absolute(laid->shot[i].deviation).nm >
		    rb_length_absolute(worst->deviation).nm)
			worst = &laid->shot[i];
	}
	if (!rb_length_given(tolerance)) {
		rb_phrase_text(&m->phrase,
			       "GRADE NOT JUDGED: the plan gives no grade tolerance.");
		return;
	}
	rb_phrase_text(&m->phrase, out ? "LAID OUT OF GRADE: " : "LAID TO GRADE: ");
	if (!out && laid->shots > 1)
		rb_phrase_text(&m->phrase, "all ");
	rb_phrase_number(&m->phrase, out ? out : laid->shots);
	if (out) {
		rb_phrase_text(&m->phrase, " of ");
		rb_phrase_number(&m->phrase, laid->shots);
	}
	rb_phrase_text(&m->phrase, laid->shots == 1 ? " shot " : " shots ");
	rb_phrase_text(&m->phrase, out ? "more than " : "within ");
	rb_drain_say_both(m, tolerance);
	if (!out) {
		rb_phrase_text(&m->phrase, ".");
		return;
	}
	rb_phrase_text(&m->phrase, " off; the worst ");
	rb_phrase_words(&m->phrase, worst->name);
	rb_phrase_text(&m->phrase, ", ");
	rb_drain_say_both(m, worst->deviation);
	rb_phrase_text(&m->phrase, worst->deviation.nm > 0 ? " high." : " low.");
}

void rb_drain_laid_verdicts(struct rb_drain_maker *m)
{
	const struct rb_laid *laid = m->r->laid;
	struct rb_phrase asked;

	if (!laid)
		return;
	say_shots(m);
	rb_drain_add(m, RB_VERDICT);
	rb_phrase_init(&asked, m->phrase.arena);
	m->page->out_of_memory |= asked.out_of_memory;
	if (asked.out_of_memory || !laid->legs)
		return;
	if (m->r->budget->judged)
		rb_phrase_minimum(&asked, &m->r->budget->minimum);
	rb_legs_verdict(&m->phrase, laid->leg, laid->legs, asked.text, "laid leg");
	rb_drain_add(m, RB_VERDICT);
	for (uint32_t i = 0; i < laid->ponds; i++) {
		rb_phrase_text(&m->phrase, "POND: ");
		say_pond(m, &laid->pond[i]);
		rb_drain_add(m, RB_VERDICT);
	}
}
