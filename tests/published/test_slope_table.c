/* SPDX-License-Identifier: MIT */
/*
 * test_slope_table.c - slopes in all the ways in which they are printed.
 *
 * The values are exact fractions worked out apart from this program; the rows of 1/4 and
 * 1/8 in/ft agree with the metric notes of the International Plumbing Code (1 in/ft is
 * 83.3 mm/m).  Trade arithmetic at the end: each line has its source.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "rodbook/slope.h"

/* clang-format off */
static const struct {
	const char *slope, *percent, *one_in, *degrees, *mm_per_m;
	const char *per_10_ft, *per_100_ft; /* inches */
} table[] = {
	{ "1/16 in/ft",  "0.5208",   "192",    "0.2984",  "5.21",    "0.625",   "6.250" },
	{ "0.12 in/ft",  "1.0000",   "100",    "0.5729",  "10.00",   "1.200",   "12.000" },
	{ "1/8 in/ft",   "1.0417",   "96",     "0.5968",  "10.42",   "1.250",   "12.500" },
	{ "0.15 in/ft",  "1.2500",   "80",     "0.7162",  "12.50",   "1.500",   "15.000" },
	{ "3/16 in/ft",  "1.5625",   "64",     "0.8952",  "15.63",   "1.875",   "18.750" },
	{ "0.198 in/ft", "1.6500",   "60.6",   "0.945",   "16.50",   "1.980",   "19.800" },
	{ "0.20 in/ft",  "1.6667",   "60",     "0.9548",  "16.67",   "2.000",   "20.000" },
	{ "0.24 in/ft",  "2.0000",   "50",     "1.1458",  "20.00",   "2.400",   "24.000" },
	{ "1/4 in/ft",   "2.0833",   "48",     "1.1935",  "20.83",   "2.500",   "25.000" },
	{ "0.30 in/ft",  "2.5000",   "40",     "1.4321",  "25.00",   "3.000",   "30.000" },
	{ "5/16 in/ft",  "2.6042",   "38.4",   "1.4917",  "26.04",   "3.125",   "31.250" },
	{ "3/8 in/ft",   "3.1250",   "32",     "1.7899",  "31.25",   "3.750",   "37.500" },
	{ "0.48 in/ft",  "4.0000",   "25",     "2.2906",  "40.00",   "4.800",   "48.000" },
	{ "1/2 in/ft",   "4.1667",   "24",     "2.3859",  "41.67",   "5.000",   "50.000" },
	{ "3/4 in/ft",   "6.2500",   "16",     "3.5763",  "62.50",   "7.500",   "75.000" },
	{ "1 in/ft",     "8.3333",   "12",     "4.7636",  "83.33",   "10.000",  "100.000" },
	{ "12 in/ft",    "100.0000", "1",      "45.0000", "1000.00", "120.000", "1200.000" },
};

static const struct {
	const char *what, *slope;
	int64_t run, fall;
} arithmetic[] = {
	{ "Modern Plumbing, Goodheart-Willcox 2022, sec. 6.5", "1/8 in/ft",
	  50 * RB_FOOT, 6 * RB_INCH + RB_INCH / 4 },
	{ "an item of a journeyman's examination (author not named)", "1/4 in/ft",
	  10 * RB_FOOT, 2 * RB_INCH + RB_INCH / 2 },
	{ "RMIT University, plumbing training, finding the fall", "1 in 50",
	  50 * RB_METRE, RB_METRE },
	{ "a student's text, old British practice (second hand): 0.0125 x 50 m", "1.25%",
	  50 * RB_METRE, 625 * RB_MILLIMETRE },
	{ "NAVEDTRA 14070, Engineering Aid 1, ch. 10: half a station at 2.18 %", "2.18%",
	  50 * RB_FOOT, 109 * (RB_FOOT / 100) },
	/* 1/4 in/ft and 2 % are printed side by side in plumbing codes (International
	 * Residential Code P3005.3, Uniform Plumbing Code 708.0), and are not the same:
	 * worked out apart from this program. */
	{ "1/4 in/ft over 50 ft", "1/4 in/ft", 50 * RB_FOOT, 12 * RB_INCH + RB_INCH / 2 },
	{ "2 % over 50 ft", "2%", 50 * RB_FOOT, 12 * RB_INCH },
};
/* clang-format on */

static rb_slope slope_of(const char *text)
{
	rb_slope slope = { { 0 }, { 0 } };

	if (rb_slope_parse(text, strlen(text), &slope) != RB_SLOPE_READ)
		fail_msg("'%s' was not read", text);
	return slope;
}

static int decimals_of(const char *printed)
{
	const char *point = strchr(printed, '.');

	return point ? (int)strlen(point + 1) : 0;
}

static int differs(const char *slope, enum rb_slope_form form, const char *printed)
{
	char text[RB_SLOPE_TEXT];

	rb_slope_number(text, slope_of(slope), form, decimals_of(printed));
	if (!strcmp(text, printed))
		return 0;
	print_error("%s: %s, and %s is printed\n", slope, text, printed);
	return 1;
}

static int falls_otherwise(const char *slope, int64_t feet, const char *printed)
{
	const struct rb_style inches = { RB_INCHES, 3, 0, false };
	char text[RB_LENGTH_TEXT];
	rb_length fall = rb_slope_over(slope_of(slope), rb_length_of(feet * RB_FOOT));

	rb_length_format(text, fall, inches);
	if (!strncmp(text, printed, strlen(printed)) &&
	    !strcmp(text + strlen(printed), "\""))
		return 0;
	print_error("%s over %lld ft: %s, and %s is printed\n", slope, (long long)feet,
		    text, printed);
	return 1;
}

static void whole_table(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
		const char *slope = table[i].slope;

		wrong += differs(slope, RB_PERCENT, table[i].percent);
		wrong += differs(slope, RB_ONE_IN, table[i].one_in);
		wrong += differs(slope, RB_DEGREES, table[i].degrees);
		wrong += differs(slope, RB_PER_METRE, table[i].mm_per_m);
		wrong += falls_otherwise(slope, 10, table[i].per_10_ft);
		wrong += falls_otherwise(slope, 100, table[i].per_100_ft);
	}
	assert_int_equal(wrong, 0);
}

static void trade_arithmetic(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof arithmetic / sizeof *arithmetic; i++) {
		rb_length fall = rb_slope_over(slope_of(arithmetic[i].slope),
					       rb_length_of(arithmetic[i].run));

		if (fall.nm == arithmetic[i].fall)
			continue;
		print_error("%s: %lld nm, and %lld is printed\n", arithmetic[i].what,
			    (long long)fall.nm, (long long)arithmetic[i].fall);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(whole_table),
		cmocka_unit_test(trade_arithmetic),
	};

	return cmocka_run_group_tests_name("slope table", tests, NULL, NULL);
}
