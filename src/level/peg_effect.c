/* SPDX-License-Identifier: MIT */
/* peg_effect.c - sight lengths that do not balance, times the error. */
#include "level/peg_effect.h"

static rb_length less(rb_length a, rb_length b)
{
	if (!rb_length_given(a) || !rb_length_given(b))
		return rb_length_none();
	return rb_length_sub(a, b);
}

static rb_length plus(rb_length a, rb_length b)
{
	if (!rb_length_given(a) || !rb_length_given(b))
		return rb_length_none();
	return rb_length_add(a, b);
}

static void judge_sections(struct rb_peg_effect *effect)
{
	const struct rb_sections *sections = effect->sections;

	for (uint32_t i = 0; i < sections->sections; i++) {
		const struct rb_section *s = &sections->section[i];
		rb_length difference = less(s->backsight_length, s->foresight_length);

		effect->difference[i] = effect->lift[i] = difference;
		if (rb_length_given(difference))
			effect->lift[i] = rb_two_peg_over(effect->peg, difference);
	}
}

/* Backsight less foresight lengths on the way to a setup's line of sight, from where its
 * chain began. */
static rb_length up_to_setup(const struct rb_reduced *reduced, const rb_length *shots,
			     uint32_t setup)
{
	const struct rb_setup *s = &reduced->setup[setup];
	rb_length base = s->via == RB_NO_SHOT ? rb_length_of(0) : shots[s->via];
	uint32_t row = reduced->shot[s->shot].backsight_row;

	return plus(base, rb_book_value(reduced->book, RB_BACKSIGHT_DISTANCE, row));
}

static void find_worst(struct rb_peg_effect *effect, rb_length *shots, rb_length *setups)
{
	const struct rb_reduced *reduced = effect->sections->reduced;
	rb_length most = rb_length_of(0);

	for (uint32_t i = 0; i < reduced->shots; i++) {
		const struct rb_shot *shot = &reduced->shot[i];

		shots[i] = rb_length_none();
		if (shot->booked != RB_BOOKED_NOWHERE)
			shots[i] = less(setups[shot->setup],
					rb_book_value(reduced->book,
						      RB_FORESIGHT_DISTANCE, shot->row));
		if (rb_shot_opens(shot) != RB_NO_SETUP)
			setups[rb_shot_opens(shot)] =
				up_to_setup(reduced, shots, rb_shot_opens(shot));
		if (!rb_length_given(shots[i]) ||
		    rb_length_absolute(shots[i]).nm <= most.nm)
			continue;
		most = rb_length_absolute(shots[i]);
		effect->worst = i;
		effect->worst_lift = rb_two_peg_over(effect->peg, shots[i]);
	}
}

struct rb_peg_effect *rb_peg_effect(struct rb_arena *arena, struct rb_findings *findings,
				    const struct rb_two_peg *peg,
				    const struct rb_sections *sections)
{
	struct rb_peg_effect *effect = rb_arena_take_clear(arena, 1, sizeof *effect);
	size_t shots = sections->reduced->shots, setups = sections->reduced->setups;
	rb_length *lengths = rb_arena_take(arena, shots + setups + 1, sizeof *lengths);

	if (effect)
		effect->difference =
			rb_arena_take(arena, 2 * (size_t)sections->sections + 1,
				      sizeof *effect->difference);
	if (!effect || !lengths || !effect->difference) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	effect->peg = peg;
	effect->sections = sections;
	effect->lift = effect->difference + sections->sections;
	effect->worst = RB_NO_SHOT;
	judge_sections(effect);
	find_worst(effect, lengths, lengths + shots);
	return effect;
}
