/* SPDX-License-Identifier: MIT */
/*
 * places.h - what the last place of a written number is worth.
 *
 * A number written by hand says no more than to half its last place: a step is what one
 * in that place counts, never less than a nanometre.
 */
#ifndef RB_LEVEL_PLACES_H
#define RB_LEVEL_PLACES_H

#include "measure/reading.h"

/* One in the last of so many decimals of a unit (feet for RB_FEET_INCHES). */
rb_length rb_decimal_step(enum rb_unit unit, int decimals);

/* One part of an inch; denominator 0 or 1: a whole inch. */
rb_length rb_fraction_step(int denominator);

/* The step of a reading as it was written. */
rb_length rb_reading_step(const struct rb_reading *reading);

#endif
