/* SPDX-License-Identifier: MIT */
/*
 * slope.h - exact slopes.
 *
 * A slope is the ratio of two lengths, a fall over a horizontal run, and is compared as a
 * ratio: 1/4 in/ft is 1:48 and is not 2 %.  The fall is positive downstream.
 */
#ifndef RODBOOK_SLOPE_H
#define RODBOOK_SLOPE_H

#include "rodbook/length.h"

typedef struct rb_slope {
	rb_length fall; /* positive is downward along the run */
	rb_length run;  /* horizontal, > 0; 0 marks a slope that is not given */
} rb_slope;

static inline bool rb_slope_given(rb_slope s)
{
	return s.run.nm > 0;
}

/* Less than, equal to or greater than zero as a is flatter than, equal to or steeper
 * than b; exact (cross products in 128 bits).  Both must be given. */
int rb_slope_compare(rb_slope a, rb_slope b);

/* The fall over a horizontal length: rounded once to the nearest nanometre, half away
 * from zero. */
rb_length rb_slope_over(rb_slope s, rb_length length);

/* Why a slope could not be read. */
enum rb_slope_refusal {
	RB_SLOPE_READ,
	RB_SLOPE_EMPTY,
	RB_SLOPE_BARE,     /* "2", "48", "1/4": percent, in/ft or 1 in so many? */
	RB_SLOPE_REVERSED, /* "48:1" */
	RB_SLOPE_ZERO_RUN, /* "1:0", "2 in per 0 ft" */
	RB_SLOPE_NONSENSE  /* not a slope */
};

/*
 * Read a slope from UTF-8 text.
 *
 *   text   1/4 in/ft, 1/4"/ft, 1/4"/', .25 in per ft, 2%, 2 percent, 1:48, 1 in 50,
 *          0.0208 ft/ft, 20 mm/m, 2 in per 8 ft, 1.5" in 16', with the typographic marks
 *          of readings; a leading minus is a backfall.  No comma decimals.  Numbers have
 *          at most 9 places; neither side is over 10 000 or 10 km, and the fall is at
 *          most 1000 runs, so that no product of two slopes, or of a slope and a length,
 *          overflows 128 bits
 *   out    set only on RB_SLOPE_READ; exactly the ratio that was written, not reduced.
 *          Percents, 1:48 and 0.0208 ft/ft are kept as so many metres over metres
 */
enum rb_slope_refusal rb_slope_parse(const char *text, size_t length, rb_slope *out);

/* The ways in which a slope is printed. */
enum rb_slope_form { RB_PER_FOOT, RB_PERCENT, RB_ONE_IN, RB_DEGREES, RB_PER_METRE };

#define RB_SLOPE_TEXT 48

/*
 * Write a slope, rounded once, half away from zero.
 *
 *   RB_PER_FOOT   "1/4 in/ft" where the fall is a whole 64th of an inch a foot,
 *                 otherwise "0.24 in/ft" to `decimals`
 *   RB_PERCENT    "2.08 %"       RB_ONE_IN     "1:48", "1:60.6", "-1:48"; "level"
 *   RB_DEGREES    "1.19 deg"     RB_PER_METRE  "20.83 mm/m"
 *
 * Degrees are the one place where floating point is used.  Returns the length written.
 */
size_t rb_slope_format(char buf[static RB_SLOPE_TEXT], rb_slope s,
		       enum rb_slope_form form, int decimals);

/* The same number bare, with no unit ("0.2500", "2.0833", "48.0000", "1.1935"), for JSON
 * and tables.  RB_ONE_IN of a level leg has no number: an empty text. */
size_t rb_slope_number(char buf[static RB_SLOPE_TEXT], rb_slope s,
		       enum rb_slope_form form, int decimals);

#endif
