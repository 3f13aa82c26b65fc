/* SPDX-License-Identifier: MIT */
/*
 * slope_words.h - slopes, the minimum asked of them, and where that is printed.
 *
 * A result says which rule it used and that the authority having jurisdiction decides; it
 * never says that anything meets one.
 */
#ifndef RB_REPORT_SLOPE_WORDS_H
#define RB_REPORT_SLOPE_WORDS_H

#include "drain/rules.h"
#include "report/phrase.h"

/* "1/4 in/ft"; "0.240 in/ft (2.00 %)" where no fraction of an inch says it. */
void rb_phrase_slope(struct rb_phrase *phrase, rb_slope slope);

/* With how many decimals of an inch to the foot, and one less of a percentage, a slope
 * stands beside another: 3, or as many as show that they differ. */
int rb_slope_places(rb_slope slope, rb_slope other);

/* A slope that is held against another: "0.1248 in/ft (1.040 %)" beside 1/8. */
void rb_phrase_slope_beside(struct rb_phrase *phrase, rb_slope slope, rb_slope other);

/* "1/4 in/ft = 2.08 % = 1:48 = 1.19 deg" */
void rb_phrase_slope_all(struct rb_phrase *phrase, rb_slope slope);

/* "1/8 in/ft (IPC Table 704.1)"; without a rule the slope alone. */
void rb_phrase_minimum(struct rb_phrase *phrase, const struct rb_minimum *minimum);

/* "Minimum: 1/8 in/ft = ... for a pipe of 4 in by IPC Table 704.1; source; edition; read.
 * The authority having jurisdiction decides."  `size`: none where no rule was asked. */
void rb_phrase_minimum_source(struct rb_phrase *phrase, const struct rb_minimum *minimum,
			      rb_length size);

/* A size as the trade calls it: "4 in", "2 1/2 in", "100 mm". */
void rb_phrase_size(struct rb_phrase *phrase, rb_length size);

#endif
