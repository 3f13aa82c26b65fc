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

/* Write so many digits of a number that end before `end`, with zeros in front. */
static void put_digits(char *end, uint64_t number, int count)
{
	for (; count > 1; count -= 2) {
		end -= 2;
		memcpy(end, pairs + 2 * (number % 100), 2);
		number /= 100;
	}
	if (count)
		end[-1] = (char)('0' + number % 10);
}

static int digits_of(uint64_t number)
{
	int count = 1;

	for (; number >= 10000; number /= 10000)
		count += 4;
	return count + (number > 9) + (number > 99) + (number > 999);
}

static char *put_whole(char *to, uint64_t number)
{
	int count;

	if (number < 10) { /* most readings of a rod */
		*to = (char)('0' + number);
		return to + 1;
	}
	count = digits_of(number);
	put_digits(to + count, number, count);
	return to + count;
}

/* Zeros at the end are left out down to `least` places: two at a time, since a rod is
 * mostly read to two places and shown with four. */
static char *put_parts(char *to, uint32_t parts, int decimals, int least)
{
	while (decimals > least + 1 && parts % 100 == 0) {
		parts /= 100;
		decimals -= 2;
	}
	if (decimals > least && parts % 10 == 0) {
		parts /= 10;
		decimals--;
	}
	if (!decimals)
		return to;
	*to++ = '.';
	put_digits(to + decimals, parts, decimals);
	return to + decimals;
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

size_t rb_decimal_write(char out[static RB_DECIMAL_TEXT], rb_length a, enum rb_unit unit,
			int decimals, int least)
{
	return put_split(out, a.nm < 0, split(size_of(a), unit, tens[decimals]), decimals,
			 least);
}

static bool in_feet(enum rb_unit unit)
{
	return unit == RB_FEET || unit == RB_FEET_INCHES;
}

/* More places than asked for, a 64th's six, or metres. */
static size_t write_finer(char *out, rb_length a, enum rb_unit unit, int decimals)
{
	int most = in_feet(unit) ? EXACT_DECIMALS : MOST_DECIMALS;
	size_t length;

	for (int more = decimals + 1; more <= most; more++) {
		struct split s = split(size_of(a), unit, tens[more]);

		if (s.exact)
			return put_split(out, a.nm < 0, s, more, 0);
	}
	if (in_feet(unit) && a.nm % RB_SIXTYFOURTH == 0)
		return rb_decimal_write(out, a, RB_FEET, FORMULA, FORMULA);
	length = rb_decimal_write(out, a, RB_METRES, MOST_DECIMALS, 0);
	memcpy(out + length, " m", 2);
	return length + 2;
}

size_t rb_decimal_write_exact(char out[static RB_DECIMAL_TEXT], rb_length a,
			      enum rb_unit unit, int decimals)
{
	struct split s = split(size_of(a), unit, tens[decimals]);

	return s.exact ? put_split(out, a.nm < 0, s, decimals, 0)
		       : write_finer(out, a, unit, decimals);
}
