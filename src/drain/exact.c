/* SPDX-License-Identifier: MIT */
/* exact.c - whole nanometres and a fraction of one. */
#include "drain/exact.h"

#include "measure/wide.h"

#define LARGEST_DENOMINATOR (INT64_C(1) << 61)
#define COARSE_DENOMINATOR  (INT64_C(1) << 30)

static int64_t common_divisor(int64_t a, int64_t b)
{
	return (int64_t)rb_wide_common_divisor(a, b);
}

/* num / den on top of whole; den > 0, num of either sign. */
static struct rb_exact reduced(rb_wide whole, rb_wide num, int64_t den)
{
	rb_wide carry = num / den - (num % den < 0);
	int64_t rest = (int64_t)(num - carry * den);
	int64_t divisor = common_divisor(den, rest);

	return (struct rb_exact){ (int64_t)(whole + carry), rest / divisor,
				  den / divisor };
}

struct rb_exact rb_exact_of(rb_length a)
{
	return (struct rb_exact){ a.nm, 0, 1 };
}

static struct rb_exact coarse(struct rb_exact a)
{
	int64_t num = rb_wide_divide(rb_wide_mul(a.num, COARSE_DENOMINATOR), a.den);

	return reduced(a.whole, num, COARSE_DENOMINATOR);
}

/* NOLINTNEXTLINE(misc-no-recursion): once: coarse ones have a common denominator */
struct rb_exact rb_exact_add(struct rb_exact a, struct rb_exact b)
{
	int64_t divisor = common_divisor(a.den, b.den);
	rb_wide den = rb_wide_mul(a.den / divisor, b.den);

	if (den > LARGEST_DENOMINATOR)
		return rb_exact_add(coarse(a), coarse(b));
	return reduced((rb_wide)a.whole + b.whole,
		       rb_wide_mul(a.num, b.den / divisor) +
			       rb_wide_mul(b.num, a.den / divisor),
		       (int64_t)den);
}

struct rb_exact rb_exact_sub(struct rb_exact a, struct rb_exact b)
{
	return rb_exact_add(a, reduced(-(rb_wide)b.whole, -(rb_wide)b.num, b.den));
}

struct rb_exact rb_exact_fall(rb_slope slope, rb_length length)
{
	int64_t divisor = common_divisor(slope.run.nm, slope.fall.nm < 0 ? -slope.fall.nm
									 : slope.fall.nm);

	return reduced(0, rb_wide_mul(slope.fall.nm / divisor, length.nm),
		       slope.run.nm / divisor);
}

int rb_exact_compare(struct rb_exact a, struct rb_exact b)
{
	if (a.whole != b.whole)
		return a.whole < b.whole ? -1 : 1;
	return rb_wide_compare(rb_wide_mul(a.num, b.den), rb_wide_mul(b.num, a.den));
}

int rb_exact_sign(struct rb_exact a)
{
	if (a.whole < 0)
		return -1;
	return a.whole > 0 || a.num > 0;
}

/* The fraction counts upward from whole, so a half goes up above zero and stays below. */
rb_length rb_exact_round(struct rb_exact a)
{
	int half = rb_wide_compare(rb_wide_mul(a.num, 2), a.den);

	return rb_length_of(a.whole + (half > 0 || (half == 0 && a.whole >= 0)));
}

rb_length rb_exact_floor(struct rb_exact a)
{
	return rb_length_of(a.whole);
}

rb_length rb_exact_ceiling(struct rb_exact a)
{
	return rb_length_of(a.whole + (a.num > 0));
}

/* (whole + num / den) * run / fall, with the fraction's share taken apart so that no
 * product passes 128 bits. */
rb_length rb_exact_run(struct rb_exact fall, rb_slope slope)
{
	rb_wide whole = rb_wide_mul(fall.whole, slope.run.nm);
	rb_wide of_fraction = rb_wide_mul(fall.num, slope.run.nm);
	rb_wide rest = whole % slope.fall.nm * fall.den + of_fraction;
	rb_wide run = whole / slope.fall.nm + rest / fall.den / slope.fall.nm;

	return run > RB_LENGTH_MAX ? rb_length_none() : rb_length_of((int64_t)run);
}
