/* SPDX-License-Identifier: MIT */
/*
 * Misclosures spread over the setups.
 *
 * Setup k of n takes minus misclosure * k / n (J. Mahun, Open Access Surveying Library,
 * Elevations, ch. E), or by distance its length so far over the section's (La Putt,
 * Elementary Surveying, levelling chapter).  All points seen from a setup move with it.
 */
#include "level/chain.h"
#include "level/kind.h"
#include "rodbook/reduce.h"

/* The length of a chain up to and with the sight that ends setup `setup`, by adding the
 * lengths of this setup to those before it. */
static rb_length setup_length(const struct rb_reduced *reduced, uint32_t setup,
			      uint32_t turning)
{
	const struct rb_book *book = reduced->book;
	uint32_t row = reduced->shot[reduced->setup[setup].shot].backsight_row;

	return rb_length_add(
		rb_book_value(book, RB_BACKSIGHT_DISTANCE, row),
		rb_book_value(book, RB_FORESIGHT_DISTANCE, reduced->shot[turning].row));
}

/* Back along a chain, from its last setup: what is left of the length is the length so
 * far.  Setups of an earlier section keep the correction that they have. */
static void by_distance(struct rb_adjusted *a, uint32_t number)
{
	const struct rb_sections *sections = a->sections;
	const struct rb_reduced *reduced = sections->reduced;
	const struct rb_section *s = &sections->section[number];
	rb_length so_far = s->length;
	uint32_t setup = s->last, turning = s->end;

	while (sections->of_setup[setup] == number) {
		a->correction[setup] = rb_length_share(rb_length_negate(s->misclosure),
						       so_far.nm, s->length.nm);
		so_far = rb_length_sub(so_far, setup_length(reduced, setup, turning));
		turning = reduced->setup[setup].via;
		if (turning == RB_NO_SHOT)
			return;
		setup = reduced->shot[turning].setup;
	}
}

static void by_setups(struct rb_adjusted *a, uint32_t setup)
{
	const struct rb_section *s = &a->sections->section[a->sections->of_setup[setup]];

	a->correction[setup] =
		rb_length_share(rb_length_negate(s->misclosure),
				a->sections->reduced->setup[setup].depth, s->setups);
}

/* A spur moves with the point on which it stands. */
static rb_length of_spur(const struct rb_adjusted *a, uint32_t setup)
{
	const struct rb_reduced *reduced = a->sections->reduced;
	uint32_t via = reduced->setup[setup].via;

	return via == RB_NO_SHOT ? rb_length_none()
				 : a->correction[reduced->shot[via].setup];
}

struct rb_adjusted *rb_adjust(struct rb_arena *arena, struct rb_findings *findings,
			      const struct rb_sections *sections)
{
	struct rb_adjusted *a = rb_arena_take(arena, 1, sizeof *a);
	uint32_t setups = sections->reduced->setups;

	if (a)
		a->correction =
			rb_arena_take(arena, (size_t)setups + 1, sizeof *a->correction);
	if (!a || !a->correction) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	a->sections = sections;
	for (uint32_t i = 0; sections->adjust == RB_BY_DISTANCE && i < sections->sections;
	     i++)
		if (sections->section[i].adjusted)
			by_distance(a, i);
	for (uint32_t i = 0; i < setups; i++) {
		uint32_t of = sections->of_setup[i];

		if (of == RB_NO_SECTION)
			a->correction[i] = of_spur(a, i);
		else if (!sections->section[of].adjusted ||
			 sections->adjust == RB_NOT_ADJUSTED)
			a->correction[i] = rb_length_none();
		else if (sections->adjust == RB_BY_SETUPS)
			by_setups(a, i);
	}
	return a;
}

/* A point that was only backsighted has what it had when it was reached; a known one that
 * begins an adjusted section is not moved. */
/* NOLINTNEXTLINE(misc-no-recursion): once: what was reached was reached by a sight */
static rb_length of_backsight(const struct rb_adjusted *a, const struct rb_shot *shot)
{
	uint32_t opens = rb_shot_opens(shot);
	uint32_t via = a->sections->reduced->setup[opens].via;

	if (via != RB_NO_SHOT)
		return rb_shot_correction(a, via);
	return rb_length_given(a->correction[opens]) ? rb_length_of(0) : rb_length_none();
}

/* NOLINTNEXTLINE(misc-no-recursion): once, see above */
rb_length rb_shot_correction(const struct rb_adjusted *adjusted, uint32_t shot)
{
	const struct rb_shot *s = &adjusted->sections->reduced->shot[shot];
	const struct rb_section *section;

	if (s->booked == RB_BOOKED_NOWHERE)
		return of_backsight(adjusted, s);
	if (!rb_shot_closes(adjusted->sections->reduced, shot))
		return adjusted->correction[s->setup];
	section = rb_section_ending(adjusted->sections, shot);
	return section && section->adjusted ? rb_length_negate(section->misclosure)
					    : rb_length_none();
}

rb_length rb_shot_adjusted(const struct rb_adjusted *adjusted, uint32_t shot)
{
	rb_length correction = rb_shot_correction(adjusted, shot);

	if (!rb_length_given(correction))
		return correction;
	return rb_length_add(adjusted->sections->reduced->shot[shot].elevation,
			     correction);
}

rb_length rb_shot_below(const struct rb_adjusted *adjusted, uint32_t shot)
{
	const struct rb_reduced *reduced = adjusted->sections->reduced;
	rb_length down = rb_shot_value(reduced, RB_MEASURE_DOWN, shot);
	rb_length from = rb_shot_adjusted(adjusted, shot);

	if (!rb_length_given(down))
		return down;
	return rb_length_sub(rb_length_given(from) ? from : reduced->shot[shot].elevation,
			     down);
}
