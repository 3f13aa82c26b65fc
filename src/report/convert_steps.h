/* SPDX-License-Identifier: MIT */
/*
 * convert_steps.h - the arithmetic behind a conversion, an operation a line.
 *
 * Each operation is shown both ways: in feet and inches, with carry and borrow, and in
 * decimals.  Every line is true as it stands; where a number was rounded to be shown, the
 * line says so, and what follows goes on with the exact value.
 */
#ifndef RB_REPORT_CONVERT_STEPS_H
#define RB_REPORT_CONVERT_STEPS_H

#include "report/conversion.h"
#include "rodbook/table.h"

/* Append how the outcome goes from one notation to the other, and nothing before it. */
void rb_conversion_tell_notations(struct rb_phrase *phrase,
				  const struct rb_conversion *c);

/* Append the steps of one conversion, line by line, without a line end behind the last.
 */
void rb_conversion_tell(struct rb_phrase *phrase, const struct rb_conversion *c);

/* Add them to a page. */
void rb_conversion_steps(struct rb_page *page, const struct rb_conversion *c);

#endif
