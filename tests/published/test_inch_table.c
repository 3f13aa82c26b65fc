/* SPDX-License-Identifier: MIT */
/*
 * test_inch_table.c - inches and decimals of a foot, as handbooks print them.
 *
 * Every length is built exactly, as so many parts of an inch, and shown by
 * rb_length_format().
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#include "rodbook/length.h"

static const struct rb_style four_decimals = { RB_FEET, 4, 0, false };

/* clang-format off */
/*
 * Inches 0 to 11 (across) and sixteenths 0 to 15 (down) in decimals of a foot, 4
 * decimals, rounded half up: the layout of the usual handbook table; the values are exact
 * fractions worked out apart from this program.  A star marks an exact tie, such as
 * 3/8 in = 0.03125 ft: handbooks print .0313 (value from memory), binary floating point
 * may give .0312.
 */
static const char *const inch_table[16] = {
	".0000 .0833 .1667 .2500 .3333 .4167 .5000 .5833 .6667 .7500 .8333 .9167 ",
	".0052 .0885 .1719 .2552 .3385 .4219 .5052 .5885 .6719 .7552 .8385 .9219 ",
	".0104 .0938*.1771 .2604 .3438*.4271 .5104 .5938*.6771 .7604 .8438*.9271 ",
	".0156 .0990 .1823 .2656 .3490 .4323 .5156 .5990 .6823 .7656 .8490 .9323 ",
	".0208 .1042 .1875 .2708 .3542 .4375 .5208 .6042 .6875 .7708 .8542 .9375 ",
	".0260 .1094 .1927 .2760 .3594 .4427 .5260 .6094 .6927 .7760 .8594 .9427 ",
	".0313*.1146 .1979 .2813*.3646 .4479 .5313*.6146 .6979 .7813*.8646 .9479 ",
	".0365 .1198 .2031 .2865 .3698 .4531 .5365 .6198 .7031 .7865 .8698 .9531 ",
	".0417 .1250 .2083 .2917 .3750 .4583 .5417 .6250 .7083 .7917 .8750 .9583 ",
	".0469 .1302 .2135 .2969 .3802 .4635 .5469 .6302 .7135 .7969 .8802 .9635 ",
	".0521 .1354 .2188*.3021 .3854 .4688*.5521 .6354 .7188*.8021 .8854 .9688*",
	".0573 .1406 .2240 .3073 .3906 .4740 .5573 .6406 .7240 .8073 .8906 .9740 ",
	".0625 .1458 .2292 .3125 .3958 .4792 .5625 .6458 .7292 .8125 .8958 .9792 ",
	".0677 .1510 .2344 .3177 .4010 .4844 .5677 .6510 .7344 .8177 .9010 .9844 ",
	".0729 .1563*.2396 .3229 .4063*.4896 .5729 .6563*.7396 .8229 .9063*.9896 ",
	".0781 .1615 .2448 .3281 .4115 .4948 .5781 .6615 .7448 .8281 .9115 .9948 ",
};
#define CELL 6 /* characters */

/* What 32nds add, in decimals of a foot: from the same source. */
static const struct {
	int parts;
	const char *text;
} thirty_seconds[] = {
	{ 1, "0.0026" }, { 3, "0.0078" }, { 5, "0.0130" }, { 7, "0.0182" },
	{ 9, "0.0234" }, { 11, "0.0286" }, { 13, "0.0339" }, { 15, "0.0391" },
	{ 17, "0.0443" }, { 19, "0.0495" }, { 21, "0.0547" }, { 23, "0.0599" },
	{ 25, "0.0651" }, { 27, "0.0703" }, { 29, "0.0755" }, { 31, "0.0807" },
};

/*
 * Decimal equivalents of an inch: J. J. Cosgrove, Principles and Practice of Plumbing,
 * table LXIII.
 */
static const struct {
	int part, whole, places;
	const char *text;
} cosgrove[] = {
	{ 1, 32, 5, "0.03125" },  { 3, 32, 5, "0.09375" },  { 5, 32, 5, "0.15625" },
	{ 1, 16, 4, "0.0625" },   { 3, 16, 4, "0.1875" },   { 7, 16, 4, "0.4375" },
	{ 9, 16, 4, "0.5625" },   { 13, 16, 4, "0.8125" },  { 31, 32, 5, "0.96875" },
};

/*
 * Single values.  The inch is 25.4 mm and the foot 0.3048 m by definition (24 FR 5348,
 * 1 July 1959); 147.63 ft = 147 ft 7.56 in is a worked example of 0.63 x 12, and so are
 * 0.1 ft = 1.2 in and 0.9 ft = 10.8 in; the rest are exact fractions.
 */
static const struct {
	int64_t nm;
	struct rb_style style;
	const char *text;
	bool exact;
} values[] = {
	{ RB_INCH, { RB_MILLIMETRES, 1, 0, true }, "25.4 mm", true },
	{ RB_FOOT, { RB_METRES, 4, 0, true }, "0.3048 m", true },
	{ RB_FOOT / 100, { RB_INCHES, 2, 0, true }, "0.12\"", true },
	{ RB_FOOT / 100, { RB_MILLIMETRES, 3, 0, true }, "3.048 mm", true },
	{ RB_INCH / 8, { RB_FEET, 7, 0, true }, "0.0104167 ft", false },
	{ RB_INCH / 8, { RB_MILLIMETRES, 3, 0, true }, "3.175 mm", true },
	{ RB_INCH / 16, { RB_FEET, 7, 0, true }, "0.0052083 ft", false },
	{ 14763 * (RB_FOOT / 100) - 147 * RB_FOOT,
	  { RB_INCHES, 2, 0, true }, "7.56\"", true },
	{ 14763 * (RB_FOOT / 100),
	  { RB_FEET_INCHES, 0, 16, true },
	  "147'-7 9/16\"", false },
	{ RB_FOOT / 10, { RB_INCHES, 1, 0, true }, "1.2\"", true },
	{ 9 * (RB_FOOT / 10), { RB_INCHES, 1, 0, true }, "10.8\"", true },
	{ 24 * (RB_INCH / 8), { RB_FEET, 2, 0, true }, "0.25 ft", true },
};

/* Whole inches to two decimals of a foot, 1 to 11: a two-decimal list of trade guides. */
static const char *const two_decimals[] = {
	"0.08", "0.17", "0.25", "0.33", "0.42", "0.50",
	"0.58", "0.67", "0.75", "0.83", "0.92",
};
/* clang-format on */

static int differs(int64_t nm, struct rb_style style, const char *wanted)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, rb_length_of(nm), style);
	if (strcmp(text, wanted) == 0)
		return 0;
	print_error("%lld nm: got %s, not %s\n", (long long)nm, text, wanted);
	return 1;
}

static void sixteenths(void **state)
{
	int wrong = 0, ties = 0;

	(void)state;
	for (int part = 0; part < 16; part++)
		for (int inch = 0; inch < 12; inch++) {
			const char *cell = inch_table[part] + inch * CELL;
			char wanted[8];
			int64_t nm = inch * RB_INCH + part * (RB_INCH / 16);
			/* An exact tie has the same rest on both sides: half of 0.0001
			 * ft. */
			bool tie = nm % (RB_FOOT / 10000) == RB_FOOT / 20000;

			snprintf(wanted, sizeof wanted, "0%.5s", cell);
			wrong += differs(nm, four_decimals, wanted);
			if (tie != (cell[CELL - 1] == '*')) {
				print_error("%d %d/16: tie %d\n", inch, part, tie);
				wrong++;
			}
			ties += tie;
		}
	assert_int_equal(wrong, 0);
	assert_int_equal(ties, 16);
}

static void thirtyseconds(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof thirty_seconds / sizeof *thirty_seconds; i++)
		wrong += differs(thirty_seconds[i].parts * (RB_INCH / 32), four_decimals,
				 thirty_seconds[i].text);
	assert_int_equal(wrong, 0);
}

/* Inches carry their mark always; the table prints bare numbers. */
static void decimals_of_an_inch(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cosgrove / sizeof *cosgrove; i++) {
		const struct rb_style style = { RB_INCHES, cosgrove[i].places, 0, false };
		char wanted[16];

		snprintf(wanted, sizeof wanted, "%s\"", cosgrove[i].text);
		wrong += differs(cosgrove[i].part * (RB_INCH / cosgrove[i].whole), style,
				 wanted);
	}
	assert_int_equal(wrong, 0);
}

static void single_values(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof values / sizeof *values; i++) {
		char text[RB_LENGTH_TEXT];

		wrong += differs(values[i].nm, values[i].style, values[i].text);
		wrong += rb_length_format(text, rb_length_of(values[i].nm),
					  values[i].style) != values[i].exact;
	}
	assert_int_equal(wrong, 0);
}

static void whole_inches_to_two_decimals(void **state)
{
	const struct rb_style style = { RB_FEET, 2, 0, false };
	int wrong = 0;

	(void)state;
	for (int inch = 1; inch < 12; inch++)
		wrong += differs(inch * RB_INCH, style, two_decimals[inch - 1]);
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sixteenths),
		cmocka_unit_test(thirtyseconds),
		cmocka_unit_test(decimals_of_an_inch),
		cmocka_unit_test(single_values),
		cmocka_unit_test(whole_inches_to_two_decimals),
	};

	return cmocka_run_group_tests_name("inch table", tests, NULL, NULL);
}
