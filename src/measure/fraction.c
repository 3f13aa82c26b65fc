/* SPDX-License-Identifier: MIT */
/* fraction.c - fractions that a tape has, and those that a sheet rounded. */
#include "measure/fraction.h"

#include "measure/wide.h"

static int64_t common_divisor(int64_t a, int64_t b)
{
	while (b != 0) {
		int64_t rest = a % b;

		a = b;
		b = rest;
	}
	return a;
}

int64_t rb_fraction_reduced(struct rb_fraction f)
{
	return f.denominator / common_divisor(f.denominator, f.numerator);
}

bool rb_fraction_on_tape(int64_t denominator)
{
	return denominator >= 2 && denominator <= 64 &&
	       (denominator & (denominator - 1)) == 0;
}

/* A sheet's one-figure format makes 3, 6, 7 and 9 of the parts of a tape, which has none
 * of them.  Of these a foot is parted exactly by the first two only. */
static bool is_sheet_denominator(int64_t denominator)
{
	return denominator == 3 || denominator == 6;
}

enum rb_refusal rb_fraction_length(struct rb_fraction f, int64_t unit_nm, int64_t *nm)
{
	rb_wide size = rb_wide_mul(f.numerator, unit_nm);
	bool exact;

	*nm = 0;
	if (f.denominator == 0)
		return RB_REFUSE_ZERO;
	exact = size % f.denominator == 0 && size / f.denominator <= RB_LENGTH_MAX;
	if (exact)
		*nm = (int64_t)(size / f.denominator);
	if (f.numerator >= f.denominator)
		return RB_REFUSE_FRACTION;
	if (is_sheet_denominator(f.denominator))
		return RB_REFUSE_ROUNDED;
	if (exact)
		return RB_READ;
	return (f.denominator & (f.denominator - 1)) == 0 ? RB_REFUSE_FINE_MARK
							  : RB_REFUSE_ROUNDED;
}

/* How far is a/b from part/whole, times b * whole? */
static int64_t distance(int64_t a, int64_t b, int64_t part, int64_t whole)
{
	int64_t d = a * whole - part * b;

	return d < 0 ? -d : d;
}

/* The fraction with one figure below that is nearest; the smaller denominator if two
 * are. */
static struct rb_fraction one_figure(int64_t part, int64_t whole)
{
	struct rb_fraction best = { 0, 1 };

	for (int64_t below = 1; below <= 9; below++) {
		int64_t above = (2 * part * below + whole) / (2 * whole);

		if (distance(above, below, part, whole) * best.denominator <
		    distance(best.numerator, best.denominator, part, whole) * below)
			best = (struct rb_fraction){ above, below };
	}
	return best;
}

static bool same_fraction(struct rb_fraction a, struct rb_fraction b)
{
	return rb_wide_mul(a.numerator, b.denominator) ==
	       rb_wide_mul(b.numerator, a.denominator);
}

int rb_fraction_shown_as(struct rb_fraction f, rb_length out[], int room)
{
	int count = 0;

	for (int64_t whole = 16; whole <= 32 || (whole == 64 && count == 0); whole *= 2)
		for (int64_t part = 1; part < whole && count < room; part += 2)
			if (same_fraction(one_figure(part, whole), f))
				out[count++] = rb_length_of(part * (RB_INCH / whole));
	if (count == 0 && room > 0)
		out[count++] = rb_length_of(
			rb_wide_divide(rb_wide_mul(f.numerator, 16), f.denominator) *
			(RB_INCH / 16));
	return count;
}
