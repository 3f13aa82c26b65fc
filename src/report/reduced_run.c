/* SPDX-License-Identifier: MIT */
/* reduced_run.c - sight lengths put end to end, or even steps. */
#include "report/reduced_run.h"

#define EVEN_STEP RB_METRE

static rb_length backsight_length(const struct rb_reduced *reduced, uint32_t shot)
{
	return rb_book_value(reduced->book, RB_BACKSIGHT_DISTANCE,
			     reduced->shot[shot].backsight_row);
}

static rb_length foresight_length(const struct rb_reduced *reduced, uint32_t shot)
{
	return rb_book_value(reduced->book, RB_FORESIGHT_DISTANCE,
			     reduced->shot[shot].row);
}

/* Does the run go on over this place? */
static bool carries(const struct rb_reduced *reduced, uint32_t shot)
{
	return rb_shot_opens(&reduced->shot[shot]) != RB_NO_SETUP ||
	       shot + 1 == reduced->shots;
}

/* A backsight on a place that was left before would take the run back. */
static bool is_to_scale(const struct rb_reduced *reduced)
{
	for (uint32_t i = 0; i < reduced->shots; i++) {
		const struct rb_shot *shot = &reduced->shot[i];
		bool opens = rb_shot_opens(shot) != RB_NO_SETUP;

		if (i && shot->booked == RB_BOOKED_NOWHERE)
			return false;
		if (opens && !rb_length_given(backsight_length(reduced, i)))
			return false;
		if (i && carries(reduced, i) &&
		    !rb_length_given(foresight_length(reduced, i)))
			return false;
	}
	return true;
}

static void even_steps(struct rb_run_places *run, const struct rb_reduced *reduced)
{
	for (uint32_t i = 0; i < reduced->shots; i++) {
		uint32_t opens = rb_shot_opens(&reduced->shot[i]);

		run->along[i] = rb_length_of(i * EVEN_STEP);
		if (opens != RB_NO_SETUP)
			run->instrument[opens] =
				rb_length_of(i * EVEN_STEP + EVEN_STEP / 2);
	}
}

/* The places from `first` to `last`, evenly between the instrument and the last. */
static void spread(struct rb_run_places *run, uint32_t first, uint32_t last,
		   rb_length from, rb_length length)
{
	for (uint32_t i = first; i <= last; i++)
		run->along[i] = rb_length_add(
			from, rb_length_share(length, (int64_t)(i - first) + 1,
					      (int64_t)(last - first) + 1));
}

static void end_to_end(struct rb_run_places *run, const struct rb_reduced *reduced)
{
	uint32_t setup = 0, first = 1;

	run->along[0] = rb_length_of(0);
	for (uint32_t i = 0; i < reduced->shots; i++) {
		uint32_t opens = rb_shot_opens(&reduced->shot[i]);

		if (i && carries(reduced, i)) {
			spread(run, first, i, run->instrument[setup],
			       foresight_length(reduced, i));
			first = i + 1;
		}
		if (opens == RB_NO_SETUP)
			continue;
		setup = opens;
		run->instrument[setup] =
			rb_length_add(run->along[i], backsight_length(reduced, i));
	}
}

bool rb_run_places_init(struct rb_run_places *run, struct rb_arena *arena,
			const struct rb_reduced *reduced)
{
	run->along = rb_arena_take_clear(arena, (size_t)reduced->shots + 1,
					 sizeof *run->along);
	run->instrument = rb_arena_take_clear(arena, (size_t)reduced->setups + 1,
					      sizeof *run->instrument);
	if (!run->along || !run->instrument)
		return false;
	run->to_scale = is_to_scale(reduced);
	if (run->to_scale)
		end_to_end(run, reduced);
	else
		even_steps(run, reduced);
	return true;
}
