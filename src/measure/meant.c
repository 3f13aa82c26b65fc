/* SPDX-License-Identifier: MIT */
/* meant.c - candidates for what a refused reading was meant to be. */
#include "measure/meant.h"

#include "measure/unit.h"

void rb_meant(struct rb_reading *r, const struct rb_reading_rules *rules, int64_t nm)
{
	int64_t size = nm < 0 ? -nm : nm;

	if (r->maybes == RB_MAYBE || size > RB_LENGTH_MAX)
		return;
	if (rules->limit.nm > 0 && size > rules->limit.nm)
		return;
	for (int i = 0; i < r->maybes; i++)
		if (r->maybe[i].nm == nm)
			return;
	r->maybe[r->maybes++] = rb_length_of(nm);
}

static void meant_number(struct rb_reading *r, const struct rb_reading_rules *rules,
			 int64_t unit_nm, struct rb_number n)
{
	int64_t nm;

	if (rb_number_length(&n, unit_nm, &nm) == RB_READ)
		rb_meant(r, rules, nm);
}

static void meant_feet_inches(struct rb_reading *r, const struct rb_reading_rules *rules,
			      int64_t feet, int64_t inches)
{
	if (inches < 12 && feet <= RB_LENGTH_MAX / RB_FOOT)
		rb_meant(r, rules, feet * RB_FOOT + inches * RB_INCH);
}

/* As the first candidate, and so how the refused text is likely written. */
static void meant_pair_first(struct rb_reading *r, const struct rb_reading_rules *rules,
			     int64_t feet, int64_t inches)
{
	meant_feet_inches(r, rules, feet, inches);
	if (r->maybes > 0)
		r->notation = RB_AS_FEET_INCHES;
}

static void meant_fraction(struct rb_reading *r, const struct rb_reading_rules *rules,
			   int64_t above, int64_t below)
{
	if (above < below && rb_fraction_on_tape(below))
		rb_meant(r, rules, above * (RB_INCH / below));
}

void rb_meant_decimal(struct rb_reading *r, const struct rb_reading_rules *rules,
		      int64_t whole, int64_t behind)
{
	int places = behind < 10 ? 1 : 2;
	struct rb_number n = { .places = places };

	if (whole > 9999 || behind > 99)
		return;
	n.digits = whole * rb_ten_to(places) + behind;
	meant_number(r, rules, rb_unit_nm(rules->unit), n);
}

void rb_meant_pair(struct rb_reading *r, const struct rb_reading_rules *rules,
		   int64_t first, int64_t second)
{
	if (rb_unit_is_metric(rules->unit)) {
		if (rules->unit == RB_METRES) {
			rb_meant_decimal(r, rules, first, second);
			rb_meant_decimal(r, rules, second, first);
		}
		return;
	}
	if (rules->unit == RB_INCHES) {
		meant_fraction(r, rules, first, second);
		meant_fraction(r, rules, second, first);
	}
	meant_feet_inches(r, rules, first, second);
	meant_feet_inches(r, rules, second, first);
	meant_fraction(r, rules, first, second);
	meant_fraction(r, rules, second, first);
	if (rules->unit == RB_FEET)
		rb_meant_decimal(r, rules, first, second);
}

void rb_meant_spaced(struct rb_reading *r, const struct rb_reading_rules *rules,
		     const struct rb_number *before, const struct rb_number *behind)
{
	bool thousands =
		rules->unit == RB_MILLIMETRES && behind->figures == 3; /* 1 613 */
	struct rb_number joined = { .places = thousands ? 0 : behind->figures };
	bool whole = behind->written == 0;

	if (before->figures + behind->figures > 18)
		return;
	joined.digits = before->digits * rb_ten_to(behind->figures) + behind->digits;
	if (whole && rules->unit == RB_FEET_INCHES)
		meant_pair_first(r, rules, before->digits, behind->digits);
	if (rules->kind == RB_OF_ELEVATION && behind->figures == 3) { /* 1 234.50 */
		struct rb_number grouped = { .places = behind->places };

		if (before->figures + behind->figures + behind->places > 18)
			return;
		grouped.digits =
			before->digits * rb_ten_to(3 + behind->places) + behind->digits;
		meant_number(r, rules, rb_unit_nm(rules->unit), grouped);
	}
	if (whole)
		meant_number(r, rules, rb_unit_nm(rules->unit), joined);
	if (whole && !rb_unit_is_metric(rules->unit))
		meant_feet_inches(r, rules, before->digits, behind->digits);
}

void rb_meant_bare(struct rb_reading *r, const struct rb_reading_rules *rules,
		   const struct rb_number *n, bool negative)
{
	int64_t power = rb_ten_to(n->places);
	int64_t feet = n->digits / power, behind = n->digits % power;
	bool pair = n->places >= 1 && n->places <= 2 && rules->kind != RB_OF_ELEVATION;

	if (n->places == 0) {
		/* -8 is what a sheet makes of -5-3: there is no telling. */
		if (negative)
			return;
		meant_number(r, rules, RB_FOOT, *n);
		meant_number(r, rules, RB_INCH, *n);
		return;
	}
	if (pair)
		meant_pair_first(r, rules, feet, behind);
	meant_number(r, rules, RB_FOOT, *n);
	if (pair && n->places == 1 && behind == 1) /* 5.1: a sheet drops the 0 of 5.10 */
		meant_feet_inches(r, rules, feet, 10);
}

/* The fewest places that bring a whole number within the rod. */
static int fewest_places(const struct rb_reading_rules *rules, int64_t unit_nm,
			 struct rb_number n)
{
	int64_t nm;

	for (n.places = 1; n.places < 18; n.places++)
		if (rb_number_length(&n, unit_nm, &nm) == RB_READ &&
		    nm <= rules->limit.nm)
			break;
	return n.places;
}

/* Places without the zeros at the end. */
static int places_used(struct rb_number n)
{
	while (n.places > 0 && n.digits % 10 == 0) {
		n.digits /= 10;
		n.places--;
	}
	return n.places;
}

/* With as many places as such a rod mostly shows, and with as few as bring the reading
 * within it: the one that needs no zero before the point goes first.  A rod in feet may
 * be read to thousandths, too. */
void rb_meant_point(struct rb_reading *r, const struct rb_reading_rules *rules,
		    enum rb_unit unit, const struct rb_number *n)
{
	static const struct {
		int mostly, most, also;
	} shown[] = {
		[RB_FEET] = { 2, 3, 3 },        [RB_INCHES] = { 1, 3, 1 },
		[RB_FEET_INCHES] = { 2, 3, 3 }, [RB_METRES] = { 3, 4, 3 },
		[RB_MILLIMETRES] = { 1, 1, 1 },
	};
	int64_t unit_nm = rb_unit_nm(unit), whole = rb_ten_to(shown[unit].mostly);
	struct rb_number mostly = *n, few = *n, also = *n;

	mostly.places = shown[unit].mostly;
	also.places = shown[unit].also;
	few.places = fewest_places(rules, unit_nm, *n);
	if (n->digits >= whole)
		meant_number(r, rules, unit_nm, mostly);
	if (places_used(few) <= shown[unit].most)
		meant_number(r, rules, unit_nm, few);
	if (n->digits < whole && n->digits >= whole / 10)
		meant_number(r, rules, unit_nm, mostly);
	if (n->digits >= rb_ten_to(also.places))
		meant_number(r, rules, unit_nm, also);
}

void rb_meant_unmarked(struct rb_reading *r, const struct rb_reading_rules *rules,
		       int64_t whole, struct rb_fraction part)
{
	bool dashed = r->maybes > 0; /* in a feet-inches book: whole feet are told */
	int64_t inches = 0, feet = 0;

	if (whole > RB_LENGTH_MAX / RB_FOOT ||
	    rb_fraction_length(part, RB_INCH, &inches) != RB_READ)
		return;
	/* 5 29/100 is no inches: it is rather 5.29. */
	if (rb_fraction_on_tape(part.denominator))
		rb_meant(r, rules, whole * RB_INCH + inches);
	if (rb_unit_is_metric(rules->unit) || dashed)
		return;
	if (rb_fraction_length(part, RB_FOOT, &feet) == RB_READ)
		rb_meant(r, rules, whole * RB_FOOT + feet);
	if (rb_fraction_on_tape(part.denominator))
		rb_meant(r, rules, whole * RB_FOOT + inches);
}

void rb_meant_rounded(struct rb_reading *r, const struct rb_reading_rules *rules,
		      int64_t unit_nm, const struct rb_number *n, int64_t before)
{
	int places = unit_nm >= RB_FOOT ? 4 : unit_nm >= RB_INCH ? 3 : 1;
	int64_t nm = before + rb_number_rounded(n, unit_nm, places);

	if (nm != 0)
		rb_meant(r, rules, nm);
}
