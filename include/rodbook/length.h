/* SPDX-License-Identifier: MIT */
/*
 * length.h - exact lengths.
 *
 * A length is a whole number of nanometres.  Every reading that a rod, a tape or a
 * print can show is exact in that unit: 1/64 in is 396 875 nm, 0.00001 ft is 3 048 nm,
 * 1 mm is 1 000 000 nm, because the foot is 0.3048 m and the inch 25.4 mm by definition
 * (24 FR 5348, 1 July 1959).
 *
 * What is read from a file is bounded by RB_LENGTH_MAX at the door, so sums of up to
 * 900 000 such lengths cannot overflow, and add and subtract have no failure to report.
 */
#ifndef RODBOOK_LENGTH_H
#define RODBOOK_LENGTH_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct rb_length {
	int64_t nm; /* nanometres; negative is below */
} rb_length;

#define RB_LENGTH_MAX   INT64_C(10000000000000) /* 10 km, in nm */
#define RB_FOOT         INT64_C(304800000)
#define RB_INCH         INT64_C(25400000)
#define RB_SIXTYFOURTH  INT64_C(396875) /* of an inch */
#define RB_METRE        INT64_C(1000000000)
#define RB_MILLIMETRE   INT64_C(1000000)
#define RB_NOT_GIVEN_NM INT64_MIN /* an empty cell; no length has this value */

/* The unit of a book, and the unit in which a result is shown. */
enum rb_unit { RB_FEET, RB_INCHES, RB_FEET_INCHES, RB_METRES, RB_MILLIMETRES };

static inline rb_length rb_length_of(int64_t nm)
{
	return (rb_length){ nm };
}

/* The value that stands where nothing was written. */
static inline rb_length rb_length_none(void)
{
	return (rb_length){ RB_NOT_GIVEN_NM };
}

static inline bool rb_length_given(rb_length a)
{
	return a.nm != RB_NOT_GIVEN_NM;
}

/* Sum, difference and opposite of two given lengths: exact. */
static inline rb_length rb_length_add(rb_length a, rb_length b)
{
	return (rb_length){ a.nm + b.nm };
}

static inline rb_length rb_length_sub(rb_length a, rb_length b)
{
	return (rb_length){ a.nm - b.nm };
}

static inline rb_length rb_length_negate(rb_length a)
{
	return (rb_length){ -a.nm };
}

static inline rb_length rb_length_absolute(rb_length a)
{
	return a.nm < 0 ? rb_length_negate(a) : a;
}

/* Less than, equal to or greater than zero as a is below, at or above b. */
static inline int rb_length_compare(rb_length a, rb_length b)
{
	return (a.nm > b.nm) - (a.nm < b.nm);
}

/*
 * a * part / whole, rounded once to the nearest nanometre, half away from zero; the
 * product is taken in 128 bits.  whole must not be 0, and the result must fit.
 */
rb_length rb_length_share(rb_length a, int64_t part, int64_t whole);

/* Does a number of this unit mean feet (RB_FEET), or metres (RB_METRES), along the
 * ground?  Sight lengths, chainages and limits are never in inches or millimetres. */
enum rb_unit rb_unit_of_runs(enum rb_unit unit);

/* "ft", "in", "ft-in", "m", "mm". */
const char *rb_unit_name(enum rb_unit unit);

/* How a length is shown to a person. */
struct rb_style {
	enum rb_unit unit;
	int decimals; /* 0 to 9; not used in feet-inches */
	int fraction; /* feet-inches: the finest part of an inch shown, 1, 2, 4 ... 64 */
	bool marked;  /* write the unit behind the number ("0.01 ft"); feet-inches and
		       * inches carry their marks always */
};

#define RB_LENGTH_TEXT 48 /* bytes; always enough for rb_length_format() */

/*
 * Write a as text, rounded once, half away from zero, to the step of the style.
 *
 *   feet-inches   5'-3 1/2", 0'-7", -0'-2": carried properly, reduced fractions, never
 *                 12" nor 8/8" nor -0
 *   otherwise     a decimal number, never -0.00
 *   buf           RB_LENGTH_TEXT bytes owned by the caller
 *
 * Returns true if the text says exactly a, false if it was rounded.  A length that is
 * not given is written as an empty text, and true is returned.
 */
bool rb_length_format(char buf[static RB_LENGTH_TEXT], rb_length a,
		      struct rb_style style);

/* The length that rb_length_format() would show: a rounded to the step of the style, in
 * whole nanometres (nearest, for steps that are not whole). */
rb_length rb_length_as_shown(rb_length a, struct rb_style style);

#endif
