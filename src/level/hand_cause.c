/* SPDX-License-Identifier: MIT */
/*
 * hand_cause.c - what was probably done in a wrong cell.
 *
 * A cause is a small test: would this slip have given just the value that is written? The
 * tests are tried in the order of the table, the plainest first, each in the steps in
 * which it can happen, and the first that holds is told.
 */
#include "level/hand_suspicion.h"
#include "level/kind.h"

/* -- the wrong way round -- */

static bool other_way(struct rb_suspicion *s)
{
	return rb_suspect_written(
		s, rb_suspect_from(s, s->cell->base, rb_length_negate(s->cell->reading)));
}

static bool inverted(struct rb_suspicion *s)
{
	return s->cell->reading.nm < 0 && other_way(s);
}

/* -- another value carried -- */

static bool known_written(struct rb_suspicion *s)
{
	rb_length known = rb_shot_known(s->walk->reduced, s->walk->shot);

	return rb_length_given(known) && rb_suspect_written(s, known);
}

static bool not_from_known(struct rb_suspicion *s)
{
	const struct rb_shot *shot = &s->walk->reduced->shot[s->walk->shot];

	return shot->booked != RB_BOOKED_NOWHERE &&
	       rb_with_base(s, s->walk->elevation[s->walk->shot].own);
}

/* The height of instrument of a setup before. */
static bool earlier_height(struct rb_suspicion *s)
{
	const struct rb_reduced *reduced = s->walk->reduced;

	for (uint32_t k = s->walk->setup, far = 0; k-- > 0 && far < RB_FAR_BACK; far++) {
		s->row = reduced->shot[reduced->setup[k].shot].backsight_row;
		if (rb_with_base(s, s->walk->height[k].own))
			return true;
	}
	return false;
}

/* The one that the same point opens. */
static bool next_height(struct rb_suspicion *s)
{
	const struct rb_shot *shot = &s->walk->reduced->shot[s->walk->shot];
	rb_length height;

	if (shot->backsight_row == RB_NO_ROW)
		return false;
	s->row = shot->backsight_row;
	height = rb_book_value(s->walk->book, RB_HEIGHT_OF_INSTRUMENT, s->row);
	return rb_length_given(height) && rb_with_base(s, height);
}

static bool wrong_height(struct rb_suspicion *s)
{
	return earlier_height(s) || next_height(s);
}

static bool height_kept(struct rb_suspicion *s)
{
	return s->walk->setup > 0 &&
	       rb_suspect_written(s, s->walk->height[s->walk->setup - 1].own);
}

/* A sight before this backsight, of the kind asked for, from whose elevation the height
 * of instrument comes out. */
static bool from_sight(struct rb_suspicion *s, bool intermediate)
{
	const struct rb_reduced *reduced = s->walk->reduced;

	for (uint32_t i = s->walk->shot, far = 0; i-- > 0 && far < RB_FAR_BACK; far++) {
		const struct rb_shot *shot = &reduced->shot[i];
		bool side = shot->kind == RB_SIDE_POINT || shot->kind == RB_CHECK;

		s->row = shot->row;
		if (side == intermediate && rb_with_base(s, s->walk->elevation[i].own))
			return true;
	}
	return false;
}

static bool from_intermediate(struct rb_suspicion *s)
{
	return from_sight(s, true);
}

static bool from_other(struct rb_suspicion *s)
{
	return from_sight(s, false);
}

/* -- sums -- */

/* A single reading above the sum that makes the difference, as often as `times` says. */
static bool one_reading(struct rb_suspicion *s, int times)
{
	const struct rb_book *book = s->walk->book;

	for (s->row = s->walk->sums_from; s->row < s->cell->row; s->row++) {
		rb_length value = rb_book_value(book, s->cell->column, s->row);

		if (!rb_length_given(value) || value.nm == 0 ||
		    book->written[s->row] & RB_WRITTEN_BY_KEEPER)
			continue;
		if (rb_suspect_written(
			    s, rb_length_of(s->cell->follows.nm + times * value.nm)))
			return true;
	}
	return false;
}

static bool left_out(struct rb_suspicion *s)
{
	return one_reading(s, -1);
}

static bool twice(struct rb_suspicion *s)
{
	return one_reading(s, 1);
}

/* The foresights, all or those alone that carry the levels on, and the intermediate
 * sights with them. */
static bool with_intermediates(struct rb_suspicion *s)
{
	const struct rb_hand_totals *totals[] = { &s->walk->since, &s->walk->all };

	if (s->cell->column != RB_FORESIGHT)
		return false;
	for (size_t i = 0; i < sizeof totals / sizeof *totals; i++) {
		rb_length middle = totals[i]->column[RB_INTERMEDIATE];

		if (middle.nm &&
		    (rb_suspect_written(
			     s, rb_length_add(totals[i]->column[RB_FORESIGHT], middle)) ||
		     rb_suspect_written(s, rb_length_add(totals[i]->turning, middle))))
			return true;
	}
	return false;
}

static bool anything(struct rb_suspicion *s)
{
	(void)s;
	return true;
}

/* -- the table -- */

#define STEP(name) (1u << RB_STEP_##name)
#define REDUCTIONS (STEP(HEIGHT) | STEP(INTERMEDIATE) | STEP(FORESIGHT))
#define ANY        ((1u << RB_HAND_STEPS) - 1)

/* clang-format off */
static const struct cause {
	enum rb_hand_cause cause;
	unsigned steps; /* in which it can happen */
	const char *name;
	bool (*holds)(struct rb_suspicion *s); /* and in which row, if it is part of it */
} causes[] = {
	{ RB_CAUSE_INVERTED, REDUCTIONS,
	  "inverted reading counted as an upright one", inverted },
	{ RB_CAUSE_ADDED, STEP(INTERMEDIATE) | STEP(FORESIGHT),
	  "foresight added instead of subtracted", other_way },
	{ RB_CAUSE_SUBTRACTED, STEP(HEIGHT),
	  "backsight subtracted instead of added", other_way },
	{ RB_CAUSE_KNOWN_WRITTEN, STEP(INTERMEDIATE) | STEP(FORESIGHT),
	  "known elevation written instead of the one worked out", known_written },
	{ RB_CAUSE_NOT_FROM_KNOWN, STEP(HEIGHT),
	  "carried from the elevation worked out instead of the known one", not_from_known },
	{ RB_CAUSE_WRONG_HEIGHT, STEP(INTERMEDIATE) | STEP(FORESIGHT),
	  "wrong height of instrument carried", wrong_height },
	{ RB_CAUSE_HEIGHT_KEPT, STEP(HEIGHT),
	  "turning point treated as an intermediate sight", height_kept },
	{ RB_CAUSE_FROM_INTERMEDIATE, STEP(HEIGHT),
	  "carried from an intermediate sight", from_intermediate },
	{ RB_CAUSE_FROM_OTHER, STEP(HEIGHT),
	  "carried from another point", from_other },
	{ RB_CAUSE_LEFT_OUT, STEP(SUM),
	  "a reading left out of the sum", left_out },
	{ RB_CAUSE_TWICE, STEP(SUM),
	  "a reading counted twice", twice },
	{ RB_CAUSE_WITH_INTERMEDIATES, STEP(SUM),
	  "intermediate sights counted in the sum of the foresights", with_intermediates },
	{ RB_CAUSE_BASE_TEN, REDUCTIONS,
	  "base-ten carry in inches", rb_pen_base_ten },
	{ RB_CAUSE_DECIMALS, REDUCTIONS,
	  "feet.inches taken as decimals", rb_pen_as_decimals },
	{ RB_CAUSE_FRACTION, ANY,
	  "fraction dropped", rb_pen_fraction_dropped },
	{ RB_CAUSE_EXCHANGED, ANY,
	  "digits exchanged", rb_pen_exchanged },
	{ RB_CAUSE_COPIED, ANY,
	  "copied from the line above", rb_pen_copied },
	{ RB_CAUSE_ROUNDED, ANY,
	  "rounded too early", rb_pen_rounded },
	{ RB_CAUSE_CARRY, ANY & ~STEP(REPEATED),
	  "a carry or a borrow lost", rb_pen_carry_lost },
	{ RB_CAUSE_BENCHMARK, STEP(REPEATED) | STEP(HEIGHT),
	  "known elevation copied wrong", rb_pen_benchmark },
	{ RB_CAUSE_MISCOPIED, STEP(REPEATED),
	  "copied wrong", anything },
};
/* clang-format on */

#define CAUSES (sizeof causes / sizeof *causes)

const char *rb_hand_cause_name(enum rb_hand_cause cause)
{
	for (size_t i = 0; i < CAUSES; i++)
		if (causes[i].cause == cause)
			return causes[i].name;
	return NULL;
}

void rb_hand_find_cause(const struct rb_hand_walk *walk, struct rb_hand_cell *cell)
{
	struct rb_suspicion s = {
		.walk = walk,
		.cell = cell,
		.step = rb_hand_step_of(walk, cell->column, cell->written),
		.sign = cell->step == RB_STEP_HEIGHT ? 1 : -1,
	};

	for (size_t i = 0; i < CAUSES; i++) {
		s.row = RB_NO_ROW;
		if (!(causes[i].steps >> cell->step & 1) || !causes[i].holds(&s))
			continue;
		cell->cause = causes[i].cause;
		cell->cause_row = s.row;
		return;
	}
}
