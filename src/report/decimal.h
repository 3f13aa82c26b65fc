/* SPDX-License-Identifier: MIT */
/*
 * decimal.h - lengths as plain decimal numbers, fast.
 *
 * For files that other programs read: no unit, no grouping, a point, never -0, the same
 * bytes everywhere.  Whole numbers all the way: what is written is the length rounded
 * once, half away from zero.
 */
#ifndef RB_REPORT_DECIMAL_H
#define RB_REPORT_DECIMAL_H

#include "rodbook/length.h"

#define RB_DECIMAL_TEXT 32

/*
 * Write a given length as a decimal number of the unit (feet for RB_FEET_INCHES), without
 * a NUL.
 *
 *   decimals  0 to 9: rounded to these
 *   least     0 to decimals: zeros at the end are left out down to so many
 *
 * Returns the bytes written.
 */
size_t rb_decimal_write(char out[static RB_DECIMAL_TEXT], rb_length a, enum rb_unit unit,
			int decimals, int least);

/*
 * Write a length so that it reads back as the same length: with `decimals` where that is
 * exact, with more where that is, a whole 64th of an inch in feet with six; all else in
 * metres with its mark (1.613 m).  Zeros at the end are left out.
 */
size_t rb_decimal_write_exact(char out[static RB_DECIMAL_TEXT], rb_length a,
			      enum rb_unit unit, int decimals);

#endif
