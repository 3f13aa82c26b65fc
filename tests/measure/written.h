/* SPDX-License-Identifier: MIT */
/*
 * written.h - for the tests of readings: lengths as a reader can check them, and the
 * bytes that sheets and phones write.
 */
#ifndef TESTS_MEASURE_WRITTEN_H
#define TESTS_MEASURE_WRITTEN_H

#include <string.h>

#include "measure/reading.h"

#define FT RB_FEET
#define IN RB_INCHES
#define FI RB_FEET_INCHES
#define M  RB_METRES
#define MM RB_MILLIMETRES

/* Lengths as a reader can check them: feet, then 64ths or thousandths of an inch;
 * hundredths of a foot; millimetres. */
#define FEET_64(feet, parts)          ((feet)*RB_FOOT + (parts)*RB_SIXTYFOURTH)
#define FEET_THOUSANDTHS(feet, parts) ((feet)*RB_FOOT + (parts) * (RB_INCH / 1000))
#define HUNDREDTHS(n)                 ((n) * (RB_FOOT / 100))
#define MILLI(n)                      ((n)*RB_MILLIMETRE)
#define WANTED                        FEET_64(5, 224) /* 5'-3 1/2" */

/* Bytes that sheets and phones write. */
#define RIGHT_SINGLE    "\xE2\x80\x99"
#define LEFT_SINGLE     "\xE2\x80\x98"
#define RIGHT_DOUBLE    "\xE2\x80\x9D"
#define LEFT_DOUBLE     "\xE2\x80\x9C"
#define LOW_DOUBLE      "\xE2\x80\x9E"
#define PRIME           "\xE2\x80\xB2"
#define DOUBLE_PRIME    "\xE2\x80\xB3"
#define HALF            "\xC2\xBD"
#define THREE_QUARTERS  "\xC2\xBE"
#define EIGHTH          "\xE2\x85\x9B"
#define SLASH           "\xE2\x81\x84"
#define NBSP            "\xC2\xA0"
#define THIN            "\xE2\x80\x89"
#define NARROW          "\xE2\x80\xAF"
#define EN_DASH         "\xE2\x80\x93"
#define EM_DASH         "\xE2\x80\x94"
#define NB_HYPHEN       "\xE2\x80\x91"
#define MINUS           "\xE2\x88\x92"
#define LEFT_GUILLEMET  "\xC2\xAB"
#define RIGHT_GUILLEMET "\xC2\xBB"

static inline struct rb_reading parse(const char *text, enum rb_unit unit,
				      enum rb_reading_kind kind, bool comma,
				      rb_length limit)
{
	struct rb_reading_rules rules = { unit, kind, comma, limit };

	return rb_reading_parse(text, strlen(text), &rules);
}

#endif
