/* SPDX-License-Identifier: MIT */
/* test_slope.c - slopes as they are written, compared, carried over a length and shown.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "rodbook/slope.h"
#include "written.h"

#define QUARTER FEET_64(0, 16)
#define FOOT    RB_FOOT

/* clang-format off */
static const struct {
	const char *text;
	int64_t fall, run; /* as written, not reduced */
} read_cases[] = {
	{ "1/4 in/ft",              QUARTER,           FOOT },
	{ "1/4 in / ft",            QUARTER,           FOOT },
	{ "1/4in/ft",               QUARTER,           FOOT },
	{ "1/4\"/ft",               QUARTER,           FOOT },
	{ "1/4\"/1'",               QUARTER,           FOOT },
	{ "1/4'' / ft.",            QUARTER,           FOOT },
	{ "1/4 IN PER FOOT",        QUARTER,           FOOT },
	{ "1/4 inch per ft",        QUARTER,           FOOT },
	{ ".25 in per ft",          QUARTER,           FOOT },
	{ "0.25\" per foot",        QUARTER,           FOOT },
	{ "\xC2\xBC\"/ft",          QUARTER,           FOOT },
	{ "1" SLASH "4" DOUBLE_PRIME "/ft", QUARTER,   FOOT },
	{ "  1/4 in/ft ",           QUARTER,           FOOT },
	{ "1 1/2 in per ft",        FEET_64(0, 96),    FOOT },
	{ "2 in per 8 ft",          FEET_64(0, 128),   8 * FOOT },
	{ "1.5\" in 16'",           FEET_64(0, 96),    16 * FOOT },
	{ "1.5 in in 16 ft",        FEET_64(0, 96),    16 * FOOT },
	{ "1'-6\" per 100'",        FEET_64(1, 384),   100 * FOOT },
	{ "0.0208 ft/ft",           20800 * (RB_METRE / 1000000), RB_METRE },
	{ "0.0208 ft per foot",     20800 * (RB_METRE / 1000000), RB_METRE },
	/* not taken for 1/4 in/ft, as a reading of so many places would be */
	{ "0.020833 ft/ft",         20833 * (RB_METRE / 1000000), RB_METRE },
	{ "0.020833333 ft/ft",      20833333,          RB_METRE },
	{ "2.083 ft per 100 ft",    2083 * RB_MILLIMETRE, 100 * RB_METRE },
	{ "0.02 m/m",               MILLI(20),         RB_METRE },
	{ "3 in / 12 in",           3 * RB_METRE,      12 * RB_METRE },
	{ "1/4\"/'",                QUARTER,           FOOT },
	{ "1/8\" per foot",         FEET_64(0, 8),     FOOT },
	{ "1 1/4 in per 10 ft",     FEET_64(0, 80),    10 * FOOT },
	{ "2 cm/m",                 MILLI(20),         RB_METRE },
	{ "10 mm/m",                MILLI(10),         RB_METRE },
	{ "2 percent",              2 * RB_METRE,      100 * RB_METRE },
	{ "20 mm/m",                MILLI(20),         RB_METRE },
	{ "20mm per metre",         MILLI(20),         RB_METRE },
	{ "2 cm in 1 m",            MILLI(20),         RB_METRE },
	{ "1 m per 48 m",           RB_METRE,          48 * RB_METRE },
	{ "2%",                     2 * RB_METRE,      100 * RB_METRE },
	{ "2 %",                    2 * RB_METRE,      100 * RB_METRE },
	{ "2.08%",                  2080 * RB_MILLIMETRE, 100 * RB_METRE },
	{ "0%",                     0,                 100 * RB_METRE },
	{ "100%",                   100 * RB_METRE,    100 * RB_METRE },
	{ "1:48",                   RB_METRE,          48 * RB_METRE },
	{ "1 : 48",                 RB_METRE,          48 * RB_METRE },
	{ "1:60.6",                 RB_METRE,          60600 * RB_MILLIMETRE },
	{ "1:1",                    RB_METRE,          RB_METRE },
	{ "0.5:24",                 500 * RB_MILLIMETRE, 24 * RB_METRE },
	{ "1 in 50",                RB_METRE,          50 * RB_METRE },
	{ "12 in/ft",               FOOT,              FOOT },
	{ "2 ft 6 in / 10 ft 6 in", FEET_64(2, 384),   FEET_64(10, 384) },
	{ "1000 ft/ft",             1000 * RB_METRE,   RB_METRE },
	/* a backfall */
	{ "-1/4 in/ft",             -QUARTER,          FOOT },
	{ MINUS "2%",               -2 * RB_METRE,     100 * RB_METRE },
	{ "- 1:48",                 -RB_METRE,         48 * RB_METRE },
};

static const struct {
	const char *text;
	enum rb_slope_refusal refusal;
} refused_cases[] = {
	{ "",                  RB_SLOPE_EMPTY },
	{ "  ",                RB_SLOPE_EMPTY },
	{ "2",                 RB_SLOPE_BARE },
	{ "48",                RB_SLOPE_BARE },
	{ "1/4",               RB_SLOPE_BARE },
	{ ".25",               RB_SLOPE_BARE },
	{ "1 1/2",             RB_SLOPE_BARE },
	{ "-2",                RB_SLOPE_BARE },
	{ "48:1",              RB_SLOPE_REVERSED },
	{ "50 in 1",           RB_SLOPE_REVERSED },
	{ "-48:1",             RB_SLOPE_REVERSED },
	{ "1:0",               RB_SLOPE_ZERO_RUN },
	{ "0:0",               RB_SLOPE_ZERO_RUN },
	{ "2 in per 0 ft",     RB_SLOPE_ZERO_RUN },
	{ "%",                 RB_SLOPE_NONSENSE },
	{ "-",                 RB_SLOPE_NONSENSE },
	{ "--2%",              RB_SLOPE_NONSENSE },
	{ "--1/4 in/ft",       RB_SLOPE_NONSENSE },
	{ "1.2.3 ft/ft",       RB_SLOPE_NONSENSE },
	{ "-(2%)",             RB_SLOPE_NONSENSE },
	{ "(2%)",              RB_SLOPE_NONSENSE },
	{ "2,5%",              RB_SLOPE_NONSENSE },
	{ "2,08 %",            RB_SLOPE_NONSENSE },
	{ "2%%",               RB_SLOPE_NONSENSE },
	{ "percent",           RB_SLOPE_NONSENSE },
	{ "ft/ft",             RB_SLOPE_NONSENSE },
	{ "0.5 ft/0 ft",       RB_SLOPE_ZERO_RUN },
	{ "5000 ft/ft",        RB_SLOPE_NONSENSE },
	{ "1001 ft/ft",        RB_SLOPE_NONSENSE },
	/* longer than any slope, though its first 64 characters are one */
	{ "000000000000000000000000000000000000000000000000000000000000002% a foot",
	  RB_SLOPE_NONSENSE },
	{ "1 in 16'",          RB_SLOPE_NONSENSE },
	{ "1/4 per foot",      RB_SLOPE_NONSENSE },
	{ "1:-48",             RB_SLOPE_NONSENSE },
	{ "1:48:2",            RB_SLOPE_NONSENSE },
	{ "1/4",               RB_SLOPE_BARE },
	{ "1/4 in",            RB_SLOPE_NONSENSE },
	{ "2 per 8",           RB_SLOPE_NONSENSE },
	{ "2 in per 8",        RB_SLOPE_NONSENSE },
	{ "1 in 50 ft",        RB_SLOPE_NONSENSE },
	{ "2%/ft",             RB_SLOPE_NONSENSE },
	{ "1/4 in/mile",       RB_SLOPE_NONSENSE },
	{ "1/0 in/ft",         RB_SLOPE_NONSENSE },
	{ "5'-13\" per 100'",  RB_SLOPE_NONSENSE },
	{ "steep",             RB_SLOPE_NONSENSE },
	{ "10 km per 1 nm",    RB_SLOPE_NONSENSE },
	/* so steep that what it makes of a length could not be held */
	{ "9000 m per 0.000001 mm", RB_SLOPE_NONSENSE },
};
/* clang-format on */

static enum rb_slope_refusal read_slope(const char *text, rb_slope *out)
{
	*out = (rb_slope){ { 7 }, { 7 } };
	return rb_slope_parse(text, strlen(text), out);
}

static void reads(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof read_cases / sizeof *read_cases; i++) {
		rb_slope got;
		enum rb_slope_refusal refusal = read_slope(read_cases[i].text, &got);

		if (refusal == RB_SLOPE_READ && got.fall.nm == read_cases[i].fall &&
		    got.run.nm == read_cases[i].run)
			continue;
		print_error("'%s': refusal %d, %lld over %lld nm\n", read_cases[i].text,
			    refusal, (long long)got.fall.nm, (long long)got.run.nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* A refusal leaves the caller's slope as it was. */
static void refuses(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof refused_cases / sizeof *refused_cases; i++) {
		rb_slope got;
		enum rb_slope_refusal refusal = read_slope(refused_cases[i].text, &got);

		if (refusal == refused_cases[i].refusal && got.fall.nm == 7 &&
		    got.run.nm == 7)
			continue;
		print_error("'%s': refusal %d, not %d\n", refused_cases[i].text, refusal,
			    refused_cases[i].refusal);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static rb_slope slope_of(const char *text)
{
	rb_slope slope;

	if (read_slope(text, &slope) != RB_SLOPE_READ)
		fail_msg("'%s' was not read", text);
	return slope;
}

/* clang-format off */
static const struct {
	const char *a, *b;
	int order;
} compared[] = {
	{ "1/4 in/ft",     "1:48",            0 },
	{ "1/4 in/ft",     "2%",              1 },
	{ "1/4 in/ft",     "2.0833333%",      1 },
	{ "1/4 in/ft",     "2.0833334%",     -1 },
	{ "1/8 in/ft",     "1%",              1 },
	{ "0.24 in/ft",    "2%",              0 },
	{ "20 mm/m",       "1 in 50",         0 },
	{ "-1/4 in/ft",    "0%",             -1 },
	{ "-1/4 in/ft",    "-1/8 in/ft",     -1 },
	{ "2 in per 8 ft", "1/4 in/ft",       0 },
	{ "0.020833 ft/ft", "1/4 in/ft",     -1 },
	{ "5'-3\" per 252'", "1/4 in/ft",     0 },
	/* the longest that are read: the cross products need 128 bits */
	{ "9999.999 m per 9999.999999 m", "9999.998 m per 9999.999999 m", 1 },
};

static const struct {
	const char *slope;
	int64_t length, fall;
} carried[] = {
	{ "1/4 in/ft",   50 * FOOT,         25 * (RB_INCH / 2) },
	{ "2%",          50 * FOOT,         12 * RB_INCH },
	{ "1:96",        13 * FOOT,         41275000 },
	{ "-1/8 in/ft",  8 * FOOT,          -RB_INCH },
	{ "1 in 3",      1,                 0 },  /* a third of a nanometre */
	{ "1 in 2",      1,                 1 },  /* half away from zero */
	{ "-1:2",        1,                 -1 },
	{ "1:3",         RB_METRE,          333333333 },
	{ "100%",        RB_LENGTH_MAX,     RB_LENGTH_MAX },
};
/* clang-format on */

static void compares_as_ratios(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof compared / sizeof *compared; i++) {
		rb_slope a = slope_of(compared[i].a), b = slope_of(compared[i].b);
		int order = rb_slope_compare(a, b), back = rb_slope_compare(b, a);

		if (order == compared[i].order && back == -order)
			continue;
		print_error("%s against %s: %d and back %d\n", compared[i].a,
			    compared[i].b, order, back);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void carries_over_a_length(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof carried / sizeof *carried; i++) {
		rb_length got = rb_slope_over(slope_of(carried[i].slope),
					      rb_length_of(carried[i].length));

		if (got.nm == carried[i].fall)
			continue;
		print_error("%s over %lld nm: %lld, not %lld\n", carried[i].slope,
			    (long long)carried[i].length, (long long)got.nm,
			    (long long)carried[i].fall);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* clang-format off */
static const struct {
	const char *slope;
	enum rb_slope_form form;
	int decimals;
	const char *text, *number;
} shown[] = {
	{ "1/4 in/ft",         RB_PER_FOOT,  4, "1/4 in/ft",       "0.2500" },
	{ "1/64 in/ft",        RB_PER_FOOT,  4, "1/64 in/ft",      "0.0156" },
	{ "1 1/2 in/ft",       RB_PER_FOOT,  2, "1 1/2 in/ft",     "1.50" },
	{ "1 in/ft",           RB_PER_FOOT,  2, "1 in/ft",         "1.00" },
	{ "2%",                RB_PER_FOOT,  2, "0.24 in/ft",      "0.24" },
	{ "1:1",               RB_PER_FOOT,  0, "12 in/ft",        "12" },
	{ "0%",                RB_PER_FOOT,  2, "0 in/ft",         "0.00" },
	{ "1000 in/ft",        RB_PER_FOOT,  2, "1000 in/ft",      "1000.00" },
	{ "1001 in/ft",        RB_PER_FOOT,  2, "1001.00 in/ft",   "1001.00" },
	{ "-1/4 in/ft",        RB_PER_FOOT,  4, "-1/4 in/ft",      "-0.2500" },
	{ "-2%",               RB_PER_FOOT,  2, "-0.24 in/ft",     "-0.24" },
	{ "-0.001%",           RB_PER_FOOT,  2, "0.00 in/ft",      "0.00" },
	{ "1/4 in/ft",         RB_PERCENT,   2, "2.08 %",          "2.08" },
	{ "-1/4 in/ft",        RB_PERCENT,   4, "-2.0833 %",       "-2.0833" },
	{ "1/2 in/ft",         RB_PERCENT,   0, "4 %",             "4" },
	{ "0.5 mm/m",          RB_PERCENT,   1, "0.1 %",           "0.1" }, /* half: away */
	{ "-0.5 mm/m",         RB_PERCENT,   1, "-0.1 %",          "-0.1" },
	{ "1/4 in/ft",         RB_ONE_IN,    1, "1:48",            "48.0" },
	{ "1:60.6",            RB_ONE_IN,    1, "1:60.6",          "60.6" },
	{ "5/16 in/ft",        RB_ONE_IN,    1, "1:38.4",          "38.4" },
	{ "0%",                RB_ONE_IN,    1, "level",           "" },
	{ "-1/4 in/ft",        RB_ONE_IN,    1, "-1:48",           "-48.0" },
	{ "1/4 in/ft",         RB_DEGREES,   2, "1.19 deg",        "1.19" },
	{ "1:1",               RB_DEGREES,   4, "45.0000 deg",     "45.0000" },
	{ "-1/4 in/ft",        RB_DEGREES,   4, "-1.1935 deg",     "-1.1935" },
	{ "0%",                RB_DEGREES,   2, "0.00 deg",        "0.00" },
	{ "1/4 in/ft",         RB_PER_METRE, 2, "20.83 mm/m",      "20.83" },
	{ "2%",                RB_PER_METRE, 0, "20 mm/m",         "20" },
	/* more decimals than are held are not written */
	{ "1/4 in/ft",         RB_PERCENT,  12, "2.083333333 %",   "2.083333333" },
};
/* clang-format on */

static int differs(const char *slope, const char *got, const char *wanted, size_t length)
{
	if (!strcmp(got, wanted) && length == strlen(wanted))
		return 0;
	print_error("%s: '%s' (%zu), not '%s'\n", slope, got, length, wanted);
	return 1;
}

static void shows(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof shown / sizeof *shown; i++) {
		rb_slope slope = slope_of(shown[i].slope);
		char buf[RB_SLOPE_TEXT];
		size_t n = rb_slope_format(buf, slope, shown[i].form, shown[i].decimals);

		wrong += differs(shown[i].slope, buf, shown[i].text, n);
		n = rb_slope_number(buf, slope, shown[i].form, shown[i].decimals);
		wrong += differs(shown[i].slope, buf, shown[i].number, n);
	}
	assert_int_equal(wrong, 0);
}

/* What is shown exactly can be typed in again. */
static void reads_back(void **state)
{
	static const enum rb_slope_form forms[] = { RB_PER_FOOT, RB_ONE_IN };
	int wrong = 0;

	(void)state;
	for (int64_t part = -768; part <= 768; part++)
		for (size_t i = 0; i < 2; i++) {
			rb_slope slope = { { part * RB_SIXTYFOURTH }, { RB_FOOT } }, back;
			char buf[RB_SLOPE_TEXT];

			if (!part || (forms[i] == RB_ONE_IN && 768 % part))
				continue;
			rb_slope_format(buf, slope, forms[i], 1);
			if (read_slope(buf, &back) == RB_SLOPE_READ &&
			    rb_slope_compare(slope, back) == 0)
				continue;
			print_error("%lld/64 in/ft: '%s'\n", (long long)part, buf);
			wrong++;
		}
	assert_int_equal(wrong, 0);
}

/* A run of a nanometre: what cannot be held is as steep as can be said, of either sign.
 */
static void too_steep_to_say(void **state)
{
	const rb_slope cliff = { { RB_LENGTH_MAX }, { 1 } };
	const rb_slope wall = { { -RB_LENGTH_MAX }, { 1 } };
	char buf[RB_SLOPE_TEXT];

	(void)state;
	rb_slope_number(buf, cliff, RB_PER_METRE, 9);
	assert_string_equal(buf, "4611686018.427387903");
	rb_slope_number(buf, wall, RB_PER_METRE, 9);
	assert_string_equal(buf, "-4611686018.427387903");
	rb_slope_format(buf, cliff, RB_DEGREES, 1);
	assert_string_equal(buf, "90.0 deg");
	rb_slope_format(buf, wall, RB_PER_FOOT, 2);
	assert_int_equal(buf[0], '-');
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(reads),
		cmocka_unit_test(refuses),
		cmocka_unit_test(compares_as_ratios),
		cmocka_unit_test(carries_over_a_length),
		cmocka_unit_test(shows),
		cmocka_unit_test(reads_back),
		cmocka_unit_test(too_steep_to_say),
	};

	return cmocka_run_group_tests_name("slope", tests, NULL, NULL);
}
