/* SPDX-License-Identifier: MIT */
/*
 * conversion.h - a length, or arithmetic on lengths, in every notation.
 *
 * What was typed is worked out as an exact ratio, and each notation is rounded from that
 * ratio once, half away from zero: none is made from another.
 */
#ifndef RB_REPORT_CONVERSION_H
#define RB_REPORT_CONVERSION_H

#include "measure/expression.h"
#include "report/phrase.h"

struct rb_conversion_style {
	enum rb_unit unit; /* of bare numbers */
	int fraction;      /* the marks of the tape: 8, 16, 32 or 64 an inch */
	int decimals;      /* of every number, or -1: 4 of feet and metres, 3 of inches */
};

struct rb_conversion {
	const char *input; /* as typed; borrowed */
	struct rb_conversion_style style;
	struct rb_expression worked;
	struct rb_reading reading; /* how a length that stands alone was written; where
				    * there is arithmetic its refusal is not RB_READ */
};

/* Work out what was typed.  False where it is refused: `worked` says why. */
bool rb_conversion_make(struct rb_conversion *out, const char *input,
			const struct rb_conversion_style *style);

/* Is it one length, without arithmetic? */
static inline bool rb_conversion_is_one(const struct rb_conversion *c)
{
	return c->reading.refusal == RB_READ;
}

/* The nearest mark of the tape. */
rb_length rb_conversion_mark(const struct rb_conversion *c);

#define RB_RATIO_TEXT 64

/* Write that mark minus the length, in inches, as rb_ratio_write() does.  Returns less
 * than, equal to or greater than zero as the mark is below, at or above the length. */
int rb_conversion_left(char buf[static RB_RATIO_TEXT], const struct rb_conversion *c,
		       int decimals, int least);

/*
 * Write a ratio of nanometres as a number of a unit, or a bare ratio as a number (`unit`
 * is then not looked at): rounded to `decimals`, 0 to 9, zeros at the end left out down
 * to `least` of them; never -0.  RB_FEET_INCHES counts as feet.  True if that is exact.
 */
bool rb_ratio_write(char buf[static RB_RATIO_TEXT], struct rb_ratio a, enum rb_unit unit,
		    int decimals, int least);

/* The decimals in which the conversion is shown in a unit. */
int rb_conversion_decimals(const struct rb_conversion *c, enum rb_unit unit);

#endif
