/* SPDX-License-Identifier: MIT */
/* decimal.c - the digits of a length, by hand: millions of them are written. */
#include "report/decimal.h"

#include <string.h>

static const int64_t tens[] = { 1,      10,      100,      1000,      10000,
				100000, 1000000, 10000000, 100000000, 1000000000 };

#define MOST_DECIMALS  9
#define EXACT_DECIMALS 5 /* of a foot: finer ones are taken for a formula's */
#define FORMULA        6 /* decimals that are read as a whole 64th of an inch */

/* A length in whole units and so many parts of one. */
struct split {
	int64_t whole, parts;
	bool exact;
};

/* Inlined with unit a constant, so that the divisions become multiplications. */
static inline struct split split_by(int64_t nm, int64_t unit, int64_t ten)
{
	int64_t whole = nm / unit;
	int64_t scaled = (nm - whole * unit) * ten;
	int64_t parts = scaled / unit;
	int64_t rest = scaled - parts * unit;

	if (rest * 2 >= unit)
		parts++;
	if (parts == ten)
		return (struct split){ whole + 1, 0, rest == 0 };
	return (struct split){ whole, parts, rest == 0 };
}

static struct split split(int64_t nm, enum rb_unit unit, int64_t ten)
{
	switch (unit) {
	case RB_INCHES:
		return split_by(nm, RB_INCH, ten);
	case RB_METRES:
		return split_by(nm, RB_METRE, ten);
	case RB_MILLIMETRES:
		return split_by(nm, RB_MILLIMETRE, ten);
	default:
		return split_by(nm, RB_FOOT, ten);
	}
}

/* Two digits at a time: "00" to "99". */
static const char pairs[] = "00010203040506070809101112131415161718192021222324"
			    "25262728293031323334353637383940414243444546474849"
			    "50515253545556575859606162636465666768697071727374"
			    "75767778798081828384858687888990919293949596979899";

/* Write the two digits of a number below 100. */
static inline void put_pair(char *to, uint32_t number)
{
	memcpy(to, &pairs[(size_t)2 * number], 2);
}

/* Write so many digits of a number, with zeros in front; where they end. */
static inline char *put_digits(char *to, uint32_t number, int count)
{
	char *end = to + count, *at = end;

	for (; count > 1; count -= 2) {
		at -= 2;
		put_pair(at, number % 100);
		number /= 100;
	}
	if (count)
		*to = (char)('0' + number % 10);
	return end;
}

/* Write a number below 10 000 without zeros in front; where it ends. */
static inline char *put_few(char *to, uint32_t number)
{
	uint32_t high = number / 100, low = number % 100;

	if (high > 9) {
		put_pair(to, high);
		to += 2;
	} else if (high) {
		*to++ = (char)('0' + high);
	} else if (low < 10) {
		*to = (char)('0' + low);
		return to + 1;
	}
	put_pair(to, low);
	return to + 2;
}

/* NOLINTNEXTLINE(misc-no-recursion): four digits each time, at most five deep */
static char *put_whole(char *to, uint64_t number)
{
	uint32_t last = (uint32_t)(number % 10000);

	if (number < 10000)
		return put_few(to, last);
	return put_digits(put_whole(to, number / 10000), last, 4);
}

/* Zeros at the end are left out down to `least` places. */
static char *put_parts(char *to, uint32_t parts, int decimals, int least)
{
	char *end = put_digits(to + 1, parts, decimals);

	*to = '.';
	for (; decimals > least && end[-1] == '0'; decimals--)
		end--;
	return decimals ? end : to;
}

static size_t put_split(char *out, bool negative, struct split s, int decimals, int least)
{
	char *to = out;

	if (negative && (s.whole || s.parts))
		*to++ = '-';
	to = put_whole(to, (uint64_t)s.whole);
	to = put_parts(to, (uint32_t)s.parts, decimals, least);
	return (size_t)(to - out);
}

static int64_t size_of(rb_length a)
{
	return a.nm < 0 ? -a.nm : a.nm;
}

static bool in_feet(enum rb_unit unit)
{
	return unit == RB_FEET || unit == RB_FEET_INCHES;
}

/* Figures left of a pair without the zeros at its end. */
static inline int figures_left(uint32_t pair)
{
	return pairs[2 * pair + 1] != '0' ? 2 : pair > 0;
}

/*
 * Four places of less than 10 000 units: nearly all numbers of a file in feet or metres.
 * Inlined with the step a constant; a unit has 10 000 of it.  0: it is another number.
 */
static inline size_t put_four(char *out, rb_length a, uint64_t step, int least,
			      bool exactly)
{
	uint64_t nm = (uint64_t)size_of(a), steps = (nm + step / 2) / step;
	uint32_t whole = (uint32_t)steps / 10000, parts = (uint32_t)steps % 10000;
	uint32_t high = parts / 100, low = parts % 100;
	int figures = low ? 2 + figures_left(low) : figures_left(high);
	char *to = out;

	if (steps >= UINT64_C(10000) * 10000 || (exactly && steps * step != nm))
		return 0;
	if (a.nm < 0 && steps)
		*to++ = '-';
	to = put_few(to, whole);
	*to = '.';
	put_pair(to + 1, high);
	put_pair(to + 3, low);
	figures = figures < least ? least : figures;
	return (size_t)(to - out) + (figures ? 1 + (size_t)figures : 0);
}

static inline size_t put_usual(char *out, rb_length a, enum rb_unit unit, int decimals,
			       int least, bool exactly)
{
	if (decimals == 4 && in_feet(unit))
		return put_four(out, a, RB_FOOT / 10000, least, exactly);
	if (decimals == 4 && unit == RB_METRES)
		return put_four(out, a, RB_METRE / 10000, least, exactly);
	return 0;
}

static size_t write_any(char *out, rb_length a, enum rb_unit unit, int decimals,
			int least)
{
	return put_split(out, a.nm < 0, split(size_of(a), unit, tens[decimals]), decimals,
			 least);
}

size_t rb_decimal_write(char out[static RB_DECIMAL_TEXT], rb_length a, enum rb_unit unit,
			int decimals, int least)
{
	size_t length = put_usual(out, a, unit, decimals, least, false);

	return length ? length : write_any(out, a, unit, decimals, least);
}

/* As many places as asked for, or more, a 64th's six, or metres. */
static size_t write_exactly(char *out, rb_length a, enum rb_unit unit, int decimals)
{
	int most = in_feet(unit) ? EXACT_DECIMALS : MOST_DECIMALS;
	size_t length;

	for (int more = decimals; more == decimals || more <= most; more++) {
		struct split s = split(size_of(a), unit, tens[more]);

		if (s.exact)
			return put_split(out, a.nm < 0, s, more, 0);
	}
	if (in_feet(unit) && a.nm % RB_SIXTYFOURTH == 0)
		return write_any(out, a, RB_FEET, FORMULA, FORMULA);
	length = write_any(out, a, RB_METRES, MOST_DECIMALS, 0);
	memcpy(out + length, " m", 2);
	return length + 2;
}

size_t rb_decimal_write_exact(char out[static RB_DECIMAL_TEXT], rb_length a,
			      enum rb_unit unit, int decimals)
{
	size_t length = put_usual(out, a, unit, decimals, 0, true);

	return length ? length : write_exactly(out, a, unit, decimals);
}
