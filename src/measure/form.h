/* SPDX-License-Identifier: MIT */
/*
 * form.h - the forms in which a length is written, and what each of them means.
 *
 * Signs are dealt with before (reading.h): a form is the length without them.
 */
#ifndef RB_MEASURE_FORM_H
#define RB_MEASURE_FORM_H

#include "measure/mark.h"
#include "measure/reading.h"

/*
 * Read the part of a marked text from `begin` to `end` as one form.
 *
 *   negative  a sign was taken off before
 *   out       all zero before; as rb_reading_parse() leaves it, but with no sign in value
 *             and maybe[].  RB_REFUSE_TEXT, RB_REFUSE_POINTS and RB_REFUSE_COMMA without
 *             candidates: no form has this shape
 */
void rb_form_read(const struct rb_marked *marked, int begin, int end, bool negative,
		  const struct rb_reading_rules *rules, struct rb_reading *out);

#endif
