/* SPDX-License-Identifier: MIT */
/* wide.c - rounded quotients, roots and comparisons of 128-bit numbers. */
#include "measure/wide.h"

#include <stdbool.h>

static rb_wide absolute(rb_wide a)
{
	return a < 0 ? -a : a;
}

static int64_t divide_wide(rb_wide a, rb_wide b)
{
	rb_wide quotient = a / b;
	rb_wide rest = absolute(a % b);

	/* Not 2 * rest >= b: twice the rest may not fit. */
	if (rest >= absolute(b) - rest)
		quotient += (a < 0) == (b < 0) ? 1 : -1;
	return (int64_t)quotient;
}

/* Nearly all quotients: what fits 64 bits is divided by the processor itself. */
static bool is_narrow(rb_wide a)
{
	return a > INT64_MIN && a <= INT64_MAX;
}

static int64_t divide_narrow(int64_t a, int64_t b)
{
	int64_t quotient = a / b, rest = a % b;
	int64_t size = b < 0 ? -b : b;

	rest = rest < 0 ? -rest : rest;
	if (rest >= size - rest)
		quotient += (a < 0) == (b < 0) ? 1 : -1;
	return quotient;
}

int64_t rb_wide_divide(rb_wide a, rb_wide b)
{
	if (is_narrow(a) && is_narrow(b))
		return divide_narrow((int64_t)a, (int64_t)b);
	return divide_wide(a, b);
}

/*
 * Newton's iteration from above: it falls until it has reached the root, and the first
 * step that does not fall is the answer.
 */
int64_t rb_wide_root(rb_wide a)
{
	rb_wide root = 1, next;

	if (a <= 0)
		return 0;
	for (rb_wide rest = a; rest > 0; rest >>= 2)
		root <<= 1;
	while ((next = (root + a / root) / 2) < root)
		root = next;
	return (int64_t)root;
}

/*
 * Euclid's division, side by side: where the whole parts are equal, a/b against c/d is
 * d/(c mod d) against b/(a mod b), so that no product is ever taken.
 */
int rb_wide_compare_ratios(rb_wide a, rb_wide b, rb_wide c, rb_wide d)
{
	int sign = 1;

	for (;;) {
		rb_wide left = a / b, right = c / d;
		rb_wide left_rest = a % b, right_rest = c % d;

		if (left != right)
			return sign * rb_wide_compare(left, right);
		if (left_rest == 0 || right_rest == 0)
			return sign * rb_wide_compare(left_rest, right_rest);
		a = b;
		b = left_rest;
		c = d;
		d = right_rest;
		sign = -sign;
	}
}

rb_wide rb_wide_common_divisor(rb_wide a, rb_wide b)
{
	while (b) {
		rb_wide rest = a % b;

		a = b;
		b = rest;
	}
	return a;
}
