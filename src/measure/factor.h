/* SPDX-License-Identifier: MIT */
/* factor.h - a bare number in an expression: 2, 2.5, 1/2, 1 1/2. */
#ifndef RB_MEASURE_FACTOR_H
#define RB_MEASURE_FACTOR_H

#include "measure/expression.h"

/*
 * Read the number at *text, plain marks (mark.h) that end in NUL, and move *text behind
 * it.
 *
 *   rules     what a comma means is in them
 *   fraction  may it be a fraction?  Behind a slash without blanks it may not: 5'/2/2
 *             halves twice
 *   out       set on success only; in lowest terms
 *
 * False, and *text stays, where no number stands or it has more figures than are held.
 */
bool rb_factor_scan(const char **text, const struct rb_reading_rules *rules,
		    bool fraction, struct rb_ratio *out);

#endif
