/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a book: reading, reducing, judging and adjusting it keeps every promise
 * that the headers make.
 */
#include "work.h"

/* Each elevation is the height of instrument less the sight. */
static void check_shots(const struct rb_reduced *reduced)
{
	for (uint32_t i = 0; i < reduced->shots; i++) {
		const struct rb_shot *shot = &reduced->shot[i];
		rb_length sight = rb_shot_reading(reduced, i);
		uint32_t opens = rb_shot_opens(shot);

		HOLDS(shot->row < reduced->book->rows);
		HOLDS(opens == RB_NO_SETUP || opens < reduced->setups);
		if (!rb_length_given(sight) || shot->setup == RB_NO_SETUP)
			continue;
		HOLDS(shot->setup < reduced->setups);
		HOLDS(shot->elevation.nm ==
		      reduced->setup[shot->setup].height_of_instrument.nm - sight.nm);
	}
}

/* Both arithmetic checks hold: sums, rise and fall. */
static void check_sections(const struct rb_sections *sections)
{
	for (uint32_t i = 0; i < sections->sections; i++) {
		const struct rb_section *s = &sections->section[i];
		int64_t gained = s->finish.nm - s->start.nm;

		HOLDS(s->setups > 0);
		if (s->no_foresight)
			continue;
		HOLDS(s->sum_backsight.nm - s->sum_foresight.nm == gained);
		HOLDS(s->sum_rise.nm - s->sum_fall.nm == gained);
		HOLDS(s->sum_rise.nm >= 0 && s->sum_fall.nm >= 0);
		HOLDS((s->verdict == RB_OPEN) == !rb_length_given(s->misclosure));
		if (s->verdict == RB_CLOSES || s->verdict == RB_BEYOND)
			HOLDS(rb_tolerance_holds(&sections->tolerance, s->misclosure,
						 s->length, (int64_t)s->setups) ==
			      (s->verdict == RB_CLOSES));
	}
}

/* An adjusted section ends exactly on the known elevation. */
static void check_adjusted(const struct rb_adjusted *adjusted)
{
	const struct rb_sections *sections = adjusted->sections;

	for (uint32_t i = 0; i < sections->sections; i++) {
		const struct rb_section *s = &sections->section[i];

		if (!s->adjusted)
			continue;
		HOLDS(rb_shot_adjusted(adjusted, s->end).nm ==
		      s->finish.nm - s->misclosure.nm);
		HOLDS(rb_shot_adjusted(adjusted, s->end).nm ==
		      rb_book_known(sections->reduced->book, s->to).nm);
	}
}

/* What a suspect leaves is within the tolerance. */
static void check_suspects(const struct rb_suspects *suspects,
			   const struct rb_sections *sections)
{
	for (uint32_t i = 0; i < suspects->count; i++) {
		const struct rb_suspect *suspect = &suspects->item[i];
		const struct rb_section *s = &sections->section[suspect->section];

		HOLDS(s->verdict == RB_BEYOND);
		HOLDS(rb_tolerance_holds(&sections->tolerance, suspect->left, s->length,
					 (int64_t)s->setups));
	}
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct work work;
	const struct rb_sections *sections;

	HOLDS(arena);
	if (work_out(&work, arena, (struct part){ (const char *)data, size })) {
		sections = rb_reduction_sections(&work.reduction);
		check_shots(work.reduced);
		check_sections(sections);
		check_adjusted(work.reduction.adjusted);
		check_suspects(work.reduction.suspects, sections);
	}
	rb_arena_free(arena);
	return 0;
}
