/* SPDX-License-Identifier: MIT */
/* drain_fall.c - the planned legs, the rule, the flow, and whether the fall is enough. */
#include "report/drain_parts.h"
#include "report/legs_table.h"
#include "report/section_words.h"
#include "report/slope_words.h"

static rb_length *velocities(struct rb_drain_maker *m)
{
	const struct rb_budget *b = m->r->budget;
	rb_length *velocity =
		rb_arena_take(m->phrase.arena, (size_t)b->legs + 1, sizeof *velocity);
	bool any = false;

	m->page->out_of_memory |= !velocity;
	for (uint32_t i = 0; velocity && i < b->legs; i++) {
		struct rb_conduit conduit = rb_drain_conduit(m->r, &b->leg[i]);

		velocity[i] = rb_length_none();
		if (!rb_length_given(conduit.inside))
			continue;
		velocity[i] = rb_flow_full(&conduit).velocity;
		any = true;
	}
	return any ? velocity : NULL;
}

static void add_flow(struct rb_drain_maker *m, const rb_length *velocity)
{
	const struct rb_budget *b = m->r->budget;
	uint32_t slow = 0, first = 0;

	if (!velocity)
		return;
	for (uint32_t i = 0; i < b->legs; i++) {
		if (rb_length_given(velocity[i]) && velocity[i].nm >= RB_SCOUR_VELOCITY)
			continue;
		if (!slow++)
			first = i;
	}
	rb_phrase_text(&m->phrase,
		       "Flow by Manning's formula with n 0.013, flowing full; half full "
		       "the velocity is the same. 2 ft/s (0.61 m/s), at which a drain "
		       "keeps itself clean, is ");
	if (!slow) {
		rb_phrase_text(&m->phrase,
			       b->legs > 1 ? "reached on every leg." : "reached.");
	} else {
		rb_phrase_text(&m->phrase, slow == 1 ? "not reached from "
						     : "not reached, first from ");
		rb_phrase_words(&m->phrase, b->leg[first].from);
		rb_phrase_text(&m->phrase, " to ");
		rb_phrase_words(&m->phrase, b->leg[first].to);
		rb_phrase_text(&m->phrase, ".");
	}
	rb_phrase_text(&m->phrase, " It is information, not a verdict.");
	rb_drain_add(m, RB_PARAGRAPH);
}

static void add_minimum(struct rb_drain_maker *m)
{
	if (m->r->budget->judged)
		rb_phrase_minimum_source(&m->phrase, &m->r->budget->minimum, m->r->size);
	if (m->r->minimum_overridden)
		rb_phrase_text(&m->phrase,
			       " It is that of the command line, not of the plan.");
	rb_drain_add(m, RB_PARAGRAPH);
}

/* -- what would do -- */

static void say_larger(struct rb_drain_maker *m, const struct rb_remedies *remedies)
{
	if (!rb_length_given(remedies->larger))
		return;
	rb_phrase_text(&m->phrase, "\n  a pipe of ");
	rb_phrase_size(&m->phrase, remedies->larger);
	rb_phrase_text(&m->phrase, ": the rule allows it ");
	rb_phrase_slope(&m->phrase, remedies->larger_slope);
}

static void say_route(struct rb_drain_maker *m, const struct rb_remedies *remedies)
{
	struct rb_style runs = rb_runs_style(m->r->style.unit);

	if (!rb_length_given(remedies->route))
		return;
	rb_phrase_text(&m->phrase, "\n  a route of at most ");
	rb_phrase_marked(&m->phrase, remedies->route, runs);
	rb_phrase_text(&m->phrase, ", in place of ");
	rb_phrase_marked(&m->phrase, m->r->budget->length, runs);
}

static void add_remedies(struct rb_drain_maker *m)
{
	const struct rb_budget *b = m->r->budget;

	if (!b->judged || !b->is_short)
		return;
	rb_phrase_text(&m->phrase, "Short of fall, any one of these would do:");
	say_larger(m, &b->remedies);
	say_route(m, &b->remedies);
	rb_phrase_text(&m->phrase, "\n  the upper end higher, or the outlet lower, by ");
	rb_drain_say_both(m, b->remedies.raise);
	if (rb_slope_given(b->remedies.slope)) {
		rb_phrase_text(&m->phrase, "\n  the slope that just uses the fall there "
					   "is, if allowed: ");
		rb_phrase_slope(&m->phrase, b->remedies.slope);
	}
	rb_drain_add(m, RB_LINES);
}

void rb_drain_fall_part(struct rb_drain_maker *m)
{
	const rb_length *velocity = velocities(m);
	struct rb_legs legs = { .caption = "Fall, as planned, downstream",
				.leg = m->r->budget->leg,
				.count = m->r->budget->legs,
				.velocity = velocity,
				.style = m->r->style,
				.judged = true };

	rb_legs_table(m->page, &legs);
	add_minimum(m);
	add_flow(m, velocity);
	add_remedies(m);
}

/* -- verdicts -- */

static void say_ends(struct rb_drain_maker *m)
{
	const struct rb_inverts *inverts = m->r->inverts;

	rb_phrase_text(&m->phrase, " from ");
	rb_phrase_words(&m->phrase, inverts->station[0].name);
	rb_phrase_text(&m->phrase, " to ");
	rb_phrase_words(&m->phrase, inverts->station[inverts->stations - 1].name);
}

static void say_budget(struct rb_drain_maker *m)
{
	const struct rb_budget *b = m->r->budget;
	rb_length spare = rb_exact_round(b->spare);

	rb_phrase_text(&m->phrase, b->is_short ? "NOT ENOUGH FALL: " : "ENOUGH FALL: ");
	if (rb_exact_sign(b->available) < 0)
		rb_phrase_text(&m->phrase, "uphill by ");
	rb_drain_say_both(m, rb_exact_round(b->available));
	say_ends(m);
	rb_phrase_text(&m->phrase, ", ");
	rb_drain_say_both(m, rb_exact_round(b->needed));
	rb_phrase_text(&m->phrase, " needed at ");
	rb_phrase_minimum(&m->phrase, &b->minimum);
	rb_phrase_text(&m->phrase,
		       rb_exact_sign(b->inverts->steps) ? " and the steps, " : ", ");
	if (!rb_exact_sign(b->spare)) {
		rb_phrase_text(&m->phrase, "nothing to spare.");
		return;
	}
	rb_phrase_text(&m->phrase, b->is_short ? "SHORT by " : "");
	rb_drain_say_both(m, spare);
	rb_phrase_text(&m->phrase, b->is_short ? "." : " to spare.");
}

void rb_drain_fall_verdicts(struct rb_drain_maker *m)
{
	const struct rb_budget *b = m->r->budget;
	struct rb_phrase asked;

	rb_phrase_init(&asked, m->phrase.arena);
	if (asked.out_of_memory) {
		m->page->out_of_memory = true;
		return;
	}
	if (b->judged) {
		rb_phrase_minimum(&asked, &b->minimum);
		say_budget(m);
		rb_drain_add(m, RB_VERDICT);
	}
	rb_legs_verdict(&m->phrase, b->leg, b->legs, asked.text, "planned leg");
	rb_drain_add(m, RB_VERDICT);
}
