/* SPDX-License-Identifier: MIT */
/*
 * wide.h - products of two 64-bit numbers, the one place where 128 bits are used.
 */
#ifndef RB_MEASURE_WIDE_H
#define RB_MEASURE_WIDE_H

#include <stdint.h>

__extension__ typedef __int128 rb_wide;

static inline rb_wide rb_wide_mul(int64_t a, int64_t b)
{
	return (rb_wide)a * b;
}

static inline int rb_wide_compare(rb_wide a, rb_wide b)
{
	return (a > b) - (a < b);
}

/* a / b to the nearest whole number, half away from zero.  b must not be 0; the result
 * must fit 64 bits. */
int64_t rb_wide_divide(rb_wide a, rb_wide b);

/* The greatest whole number whose square is at most a; a >= 0. */
int64_t rb_wide_root(rb_wide a);

/* The greatest common divisor; a and b are at least 0, one of them above. */
rb_wide rb_wide_common_divisor(rb_wide a, rb_wide b);

/* Less than, equal to or greater than zero as a/b is below, at or above c/d: exact, and
 * nothing can overflow.  a and c are at least 0, b and d above 0. */
int rb_wide_compare_ratios(rb_wide a, rb_wide b, rb_wide c, rb_wide d);

#endif
