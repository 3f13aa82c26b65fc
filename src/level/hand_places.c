/* SPDX-License-Identifier: MIT */
/* hand_places.c - how finely each column of a hand-reduced book is written. */
#include "level/hand_walk.h"
#include "level/places.h"
#include "level/slips.h"

#define FINEST_PART   64 /* of an inch */
#define INCH_DECIMALS 4
#define RUN_DECIMALS  2 /* of feet or metres along the ground, where nothing tells */

static const enum rb_column sights[] = { RB_BACKSIGHT, RB_INTERMEDIATE, RB_FORESIGHT };

#define SIGHTS (sizeof sights / sizeof *sights)

static rb_length finer(rb_length a, rb_length b)
{
	if (!rb_length_given(a) || (rb_length_given(b) && b.nm < a.nm))
		return b;
	return a;
}

/* The coarsest part of an inch of which the value is a whole number; none where it is not
 * written in inches. */
static rb_length part_of(rb_length value, rb_length decimal)
{
	for (int part = 1; part <= FINEST_PART; part *= 2)
		if (value.nm % rb_fraction_step(part).nm == 0)
			return rb_fraction_step(part);
	if (rb_length_given(decimal) && value.nm % decimal.nm == 0)
		return rb_length_none();
	for (int decimals = 1; decimals <= INCH_DECIMALS; decimals++)
		if (value.nm % rb_decimal_step(RB_INCHES, decimals).nm == 0)
			return rb_decimal_step(RB_INCHES, decimals);
	return rb_length_none();
}

/* The finest part of an inch in a column of a ft-in book: the values tell, because inches
 * have decimals too. */
static rb_length finest_part(const struct rb_hand_walk *w, enum rb_column column)
{
	const rb_length *value = w->book->value[column];
	rb_length finest = rb_length_none();

	for (uint32_t row = 0; value && row < w->book->rows; row++)
		if (rb_length_given(value[row]))
			finest = finer(finest, part_of(value[row], w->decimal[column]));
	return finest;
}

static rb_length part_in_column(const struct rb_hand_walk *w, enum rb_column column)
{
	int denominator = rb_book_places(w->book, column).denominator;

	if (rb_hand_is_run(column) || !denominator)
		return rb_length_none();
	if (w->book->unit == RB_FEET_INCHES)
		return finest_part(w, column);
	return rb_fraction_step(denominator);
}

/* Is a step a part that a tape has, and no decimal of an inch? */
static bool is_part(rb_length step)
{
	return rb_length_given(step) && step.nm * FINEST_PART % RB_INCH == 0;
}

/* The finest part of an inch among the readings, or none. */
static rb_length finest_reading(const struct rb_hand_walk *w)
{
	rb_length readings = rb_length_none();

	for (size_t i = 0; i < SIGHTS; i++)
		if (is_part(w->fraction[sights[i]]))
			readings = finer(readings, w->fraction[sights[i]]);
	return readings;
}

void rb_hand_find_steps(struct rb_hand_walk *w)
{
	rb_length readings;

	for (int column = RB_KNOWN_ELEVATION; column <= RB_ELEVATION; column++) {
		int decimals = rb_book_places(w->book, (enum rb_column)column).decimals;

		w->decimal[column] = rb_length_none();
		if (decimals >= 0)
			w->decimal[column] = rb_decimal_step(w->book->unit, decimals);
		w->fraction[column] = part_in_column(w, (enum rb_column)column);
	}
	readings = finest_reading(w);
	for (int column = RB_KNOWN_ELEVATION; column <= RB_ELEVATION; column++)
		if (is_part(w->fraction[column]))
			w->fraction[column] = finer(w->fraction[column], readings);
	/* In a book of inches a bare 63 stands among 63.25 and 62.5 as well. */
	for (int column = RB_KNOWN_ELEVATION;
	     w->book->unit == RB_INCHES && column <= RB_ELEVATION; column++)
		if (rb_length_given(w->decimal[column]))
			w->fraction[column] =
				finer(w->fraction[column], w->decimal[column]);
}

rb_length rb_hand_step_of(const struct rb_hand_walk *w, enum rb_column column,
			  rb_length value)
{
	rb_length decimal = w->decimal[column], fraction = w->fraction[column];

	if (rb_length_given(fraction) && rb_length_given(value) &&
	    (value.nm % fraction.nm == 0 || !rb_length_given(decimal)))
		return fraction;
	if (rb_length_given(decimal))
		return decimal;
	if (rb_hand_is_run(column))
		return rb_decimal_step(rb_unit_of_runs(w->book->unit), RUN_DECIMALS);
	return rb_length_of(rb_rod_step(w->book->unit));
}
