/* SPDX-License-Identifier: MIT */
/*
 * ratio_words.h - exact ratios in worked arithmetic.
 *
 * A number is shown with the places that it needs, up to six decimals or 64ths of an
 * inch; each function says whether that was exact, so that a line can say where it was
 * not.
 */
#ifndef RB_REPORT_RATIO_WORDS_H
#define RB_REPORT_RATIO_WORDS_H

#include "report/conversion.h"

static inline struct rb_ratio rb_ratio_of_length(int64_t nm)
{
	return (struct rb_ratio){ nm, 1, true };
}

/* Does a tape with 64ths of an inch show the length exactly? */
static inline bool rb_ratio_is_sixtyfourths(struct rb_ratio a)
{
	return a.den == 1 && a.num % RB_SIXTYFOURTH == 0;
}

/* A length in a unit, "63.5 in", or a bare number. */
bool rb_say_number(struct rb_phrase *phrase, struct rb_ratio a, enum rb_unit unit);

/* "102 3/4 in": whole 64ths of an inch. */
void rb_say_inches(struct rb_phrase *phrase, struct rb_ratio a);

/* In inches: with a fraction where 64ths say it, else in decimals. */
bool rb_say_any_inches(struct rb_phrase *phrase, struct rb_ratio a);

/* 8'-6 3/4": whole 64ths of an inch too. */
void rb_say_feet_inches(struct rb_phrase *phrase, struct rb_ratio a);

#endif
