/* SPDX-License-Identifier: MIT */
/*
 * shown.h - how finely a length must be shown to be understood.
 *
 * A single length is shown with the places that it needs and no more; two lengths that
 * are held against each other with as many as it takes to see which is greater.
 */
#ifndef RB_REPORT_SHOWN_H
#define RB_REPORT_SHOWN_H

#include "rodbook/length.h"

/* The fewest decimals that say exactly a, or -1 where `most` (up to 9) do not.
 * RB_FEET_INCHES counts as feet. */
int rb_shown_decimals(rb_length a, enum rb_unit unit, int most);

/* The coarsest part of an inch, 1 to 64, that says exactly a; 0 where 64ths do not. */
int rb_shown_fraction(rb_length a);

/* Write a with its unit, with the places that it needs: 0.02 ft, 9 mm, 0'-0 1/4".  What
 * is finer than five decimals (of a foot or a metre) or a 64th is rounded to that. */
void rb_shown(char buf[static RB_LENGTH_TEXT], rb_length a, enum rb_unit unit);

/* The style, with as many more places as it takes so that a length which is not nothing
 * is not shown as nothing: 0.0033 ft and not 0.00 ft.  Feet-inches of which 64ths say
 * nothing become feet, with their unit. */
struct rb_style rb_shown_style(rb_length a, struct rb_style style);

/*
 * Write two lengths in a style, with more places where they would look equal and are not:
 * 9 mm and 8.66 mm.  Feet-inches that 64ths cannot tell apart are written in feet.
 */
void rb_shown_pair(char a_text[static RB_LENGTH_TEXT], char b_text[static RB_LENGTH_TEXT],
		   rb_length a, rb_length b, struct rb_style style);

#endif
