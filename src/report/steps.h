/* SPDX-License-Identifier: MIT */
/*
 * steps.h - adding and taking away, written out as on paper.
 *
 * Decimals need one line.  Feet and inches get the lines that a hand needs: fractions
 * over one denominator, inches carried to feet, a foot borrowed for twelve inches.  Each
 * line is an exact statement; where a number had to be rounded to be shown, the line says
 * so.
 */
#ifndef RB_REPORT_STEPS_H
#define RB_REPORT_STEPS_H

#include "report/phrase.h"

/*
 * Append "a + b = sum" (or "a - b = difference"), and the working on lines of their own
 * behind it, each begun by a line end and `indent` blanks.
 *
 *   style  decimals are raised where a number needs more; feet-inches show whole 64ths
 */
void rb_steps_add(struct rb_phrase *phrase, rb_length a, rb_length b,
		  struct rb_style style, int indent);
void rb_steps_subtract(struct rb_phrase *phrase, rb_length a, rb_length b,
		       struct rb_style style, int indent);

/* Append a number with the places that it needs: decimals up to five, 64ths; true if it
 * is then exact. */
bool rb_steps_number(struct rb_phrase *phrase, rb_length a, struct rb_style style);

#endif
