/* SPDX-License-Identifier: MIT */
/*
 * unit.h - what a bare number means.
 *
 * A number without marks takes its unit from the book, except along the ground, where it
 * is always feet or metres.
 */
#ifndef RB_MEASURE_UNIT_H
#define RB_MEASURE_UNIT_H

#include "measure/reading.h"

/* The unit of a bare number under these rules. */
static inline enum rb_unit rb_unit_of_bare(const struct rb_reading_rules *rules)
{
	return rules->kind == RB_OF_RUN ? rb_unit_of_runs(rules->unit) : rules->unit;
}

/* One whole of a unit in nanometres; of a foot for feet-inches. */
int64_t rb_unit_nm(enum rb_unit unit);

/* Feet or inches are no part of it. */
bool rb_unit_is_metric(enum rb_unit unit);

/* Note that a length was written in `unit` with so many decimals and no fraction. */
static inline void rb_written_in(struct rb_reading *r, enum rb_unit unit, int decimals)
{
	r->notation = unit == RB_FEET_INCHES ? RB_AS_FEET_INCHES
		      : unit == RB_INCHES    ? RB_AS_INCHES
					     : RB_AS_DECIMAL;
	r->unit = unit;
	r->decimals = decimals;
	r->denominator = 1;
}

#endif
