/* SPDX-License-Identifier: MIT */
/* ratio.h - exact arithmetic on ratios, for expressions; nothing overflows unseen. */
#ifndef RB_MEASURE_RATIO_H
#define RB_MEASURE_RATIO_H

#include "measure/expression.h"

/* The result of one operation in lowest terms: RB_EXPRESSION_READ and *out set, or why
 * not (a sum of a length and a number, a square, a division by zero, too big). */
enum rb_expression_refusal rb_ratio_work(char sign, struct rb_ratio left,
					 struct rb_ratio right, struct rb_ratio *out);

#endif
