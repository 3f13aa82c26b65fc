/* SPDX-License-Identifier: MIT */
/*
 * exact.h - heights that are no whole number of nanometres.
 *
 * A point on a grade lies at a ratio between two lengths.  It is kept as a whole number
 * of nanometres and a reduced fraction of one, so that sums along a drain stay exact and
 * a grade at exactly the minimum is not found too flat.  Rounding is a step of its own.
 */
#ifndef RB_DRAIN_EXACT_H
#define RB_DRAIN_EXACT_H

#include "rodbook/slope.h"

/* whole + num / den nanometres, 0 <= num < den, reduced. */
struct rb_exact {
	int64_t whole, num, den;
};

struct rb_exact rb_exact_of(rb_length a);

/*
 * Sum and difference: exact as long as the common denominator stays below 2^61.  No
 * plan with a dozen odd slopes reaches that; beyond it both fractions are first rounded
 * to a 2^30th of a nanometre.
 */
struct rb_exact rb_exact_add(struct rb_exact a, struct rb_exact b);
struct rb_exact rb_exact_sub(struct rb_exact a, struct rb_exact b);

/* The fall of a slope over a horizontal length. */
struct rb_exact rb_exact_fall(rb_slope slope, rb_length length);

/* Less than, equal to or greater than zero as a is below, at or above b. */
int rb_exact_compare(struct rb_exact a, struct rb_exact b);

/* The sign of a: -1, 0 or 1. */
int rb_exact_sign(struct rb_exact a);

/* To the nearest nanometre, half away from zero. */
rb_length rb_exact_round(struct rb_exact a);

/* To the next whole nanometre below, or above. */
rb_length rb_exact_floor(struct rb_exact a);
rb_length rb_exact_ceiling(struct rb_exact a);

/*
 * The longest run over which a fall lasts at a slope steeper than level, rounded down to
 * the nanometre, so that run * slope <= fall.  The fall must not be negative; none where
 * the run would be beyond RB_LENGTH_MAX.
 */
rb_length rb_exact_run(struct rb_exact fall, rb_slope slope);

#endif
