/* SPDX-License-Identifier: MIT */
/*
 * fraction.h - a fraction of an inch or of a foot, as written.
 *
 * A tape is parted in halves down to 64ths.  Other fractions are read where they are
 * whole nanometres and a sheet cannot have made them by rounding; all else is refused.
 */
#ifndef RB_MEASURE_FRACTION_H
#define RB_MEASURE_FRACTION_H

#include "measure/number.h"

struct rb_fraction {
	int64_t numerator, denominator;
};

/*
 * The length of a fraction of unit_nm: RB_READ, RB_REFUSE_ZERO, RB_REFUSE_FRACTION (one
 * or more; *nm is still set where it is exact, otherwise to 0), RB_REFUSE_ROUNDED or
 * RB_REFUSE_FINE.
 */
enum rb_refusal rb_fraction_length(struct rb_fraction f, int64_t unit_nm, int64_t *nm);

/* The denominator after reducing. */
int64_t rb_fraction_reduced(struct rb_fraction f);

/* Is it a denominator that a tape has: 2, 4 ... 64? */
bool rb_fraction_on_tape(int64_t denominator);

/*
 * Which parts of an inch does a sheet show as this fraction, when its format leaves room
 * for one figure only: 5/16 is shown as 1/3.  Fills out[] with at most `room` lengths,
 * the coarsest part first (64ths only where nothing coarser is shown so), and returns how
 * many; for no such fraction, the nearest 16th.
 */
int rb_fraction_shown_as(struct rb_fraction f, rb_length out[], int room);

#endif
