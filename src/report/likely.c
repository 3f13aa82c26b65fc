/* SPDX-License-Identifier: MIT */
/* likely.c - candidates for a refused reading, in words. */
#include "report/likely.h"

#include <stdio.h>
#include <string.h>

#include "report/shown.h"

static bool in_feet(enum rb_unit unit)
{
	return unit == RB_FEET || unit == RB_FEET_INCHES;
}

/* 162.4: no more places than it needs. */
static void write_decimal_inches(char buf[static RB_LENGTH_TEXT], rb_length a,
				 const char *mark)
{
	int decimals = rb_shown_decimals(a, RB_INCHES, 4);
	char number[RB_LENGTH_TEXT];

	rb_length_format(
		number, a,
		(struct rb_style){ RB_INCHES, decimals < 0 ? 4 : decimals, 64, false });
	number[strcspn(number, "\"")] = '\0';
	snprintf(buf, RB_LENGTH_TEXT, "%.40s%s", number, mark);
}

/* 63 1/2: whole inches and a fraction, where 64ths say it; else with decimals. */
static void write_inches(char buf[static RB_LENGTH_TEXT], rb_length a, const char *mark)
{
	int part = rb_shown_fraction(a);
	int64_t size = a.nm < 0 ? -a.nm : a.nm;
	int64_t over = size % RB_INCH * part / RB_INCH;
	const char *minus = a.nm < 0 ? "-" : "";

	if (part > 1 && size >= RB_INCH)
		snprintf(buf, RB_LENGTH_TEXT, "%s%lld %lld/%d%s", minus,
			 (long long)(size / RB_INCH), (long long)over, part, mark);
	else if (part > 1)
		snprintf(buf, RB_LENGTH_TEXT, "%s%lld/%d%s", minus, (long long)over, part,
			 mark);
	else
		write_decimal_inches(buf, a, mark);
}

static void write_decimal(char buf[static RB_LENGTH_TEXT], rb_length a, enum rb_unit unit,
			  bool marked)
{
	int decimals = rb_shown_decimals(a, unit, 5);

	rb_length_format(
		buf, a,
		(struct rb_style){ unit, decimals < 0 ? 5 : decimals, 64, marked });
}

static void write_feet_inches(char buf[static RB_LENGTH_TEXT], rb_length a)
{
	rb_length_format(buf, a, (struct rb_style){ RB_FEET_INCHES, 0, 64, true });
}

/* 3'-5" beside 5'-3": the same two numbers the other way round. */
static bool is_mirror(rb_length a, rb_length b)
{
	return a.nm % RB_INCH == 0 && b.nm % RB_INCH == 0 &&
	       a.nm / RB_FOOT == b.nm % RB_FOOT / RB_INCH &&
	       b.nm / RB_FOOT == a.nm % RB_FOOT / RB_INCH;
}

/* 1.5 beside 15: the same figures, and the point elsewhere. */
static bool is_shifted(rb_length a, rb_length b)
{
	return a.nm == 10 * b.nm || b.nm == 10 * a.nm;
}

/*
 * Would it have been typed in feet and inches?  5.5 ft is 5'-6" as well, so the length
 * alone does not say: the first candidate follows the marks, and of the others a short
 * decimal was a decimal unless it has the numbers of the first.
 */
static bool typed_in_inches(rb_length a, rb_length first, int rank, bool marked)
{
	int decimals = rb_shown_decimals(a, RB_FEET, 4);

	if (!rb_shown_fraction(a))
		return false;
	if (decimals < 0 || (marked && rank == 0))
		return true;
	if (!marked)
		return rank > 0 && decimals > 0 && a.nm % RB_INCH == 0 &&
		       !is_shifted(a, first);
	return decimals == 0 || decimals > 2 || is_mirror(a, first) ||
	       a.nm == first.nm / 12;
}

/* 5'-3 1/2" as 5 ft 3 1/2 in. */
static void say_feet_inches(char buf[static RB_READING_WORDS], rb_length a)
{
	char inches[RB_LENGTH_TEXT];
	rb_length over = rb_length_of(a.nm % RB_FOOT);
	long long feet = (long long)(a.nm / RB_FOOT);

	if (feet)
		over = rb_length_absolute(over);
	write_inches(inches, over, "");
	if (feet)
		snprintf(buf, RB_READING_WORDS, "%lld ft %s in", feet, inches);
	else
		snprintf(buf, RB_READING_WORDS, "%s in", inches);
}

static void say(char buf[static RB_READING_WORDS], const char *what, const char *written)
{
	snprintf(buf, RB_READING_WORDS, "for %.40s write %.40s", what, written);
}

void rb_likely(char buf[static RB_READING_WORDS], const struct rb_argument *candidate,
	       const struct rb_argument *first, int rank, bool marked)
{
	rb_length a = candidate->length;
	char what[RB_READING_WORDS], written[RB_LENGTH_TEXT];

	if (in_feet(candidate->unit) && typed_in_inches(a, first->length, rank, marked)) {
		say_feet_inches(what, a);
		write_feet_inches(written, a);
	} else if (in_feet(candidate->unit)) {
		write_decimal(what, a, RB_FEET, true);
		write_decimal(written, a, RB_FEET, candidate->unit == RB_FEET_INCHES);
	} else if (candidate->unit == RB_INCHES) {
		write_inches(what, a, " in");
		write_inches(written, a, "\"");
	} else {
		write_decimal(what, a, candidate->unit, true);
		write_decimal(written, a, candidate->unit, candidate->marked);
	}
	say(buf, what, written);
}
