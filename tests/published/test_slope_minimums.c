/* SPDX-License-Identifier: MIT */
/*
 * Minimum slopes, compared as ratios: what codes print as equal is not equal.
 *
 * Source: Chicago Plumbing Code table 18-29-704.1 (read); IRC P3005.3 and UPC 708.0
 * (quotations); Davison MI sewer ordinance (read), which labels 1/8 in/ft "1 %" and 1 in
 * per 8 ft, and 0.72 in per 8 ft 0.75 %; fall over 50 ft computed.
 */
#include "../drain/job.h"

static rb_slope slope_of(const char *text)
{
	rb_slope slope = { { 0 }, { 0 } };

	assert_int_equal(rb_slope_parse(text, strlen(text), &slope), RB_SLOPE_READ);
	return slope;
}

static void quarter_inch_is_not_two_percent(void **state)
{
	(void)state;
	assert_int_equal(rb_slope_compare(slope_of("1/4 in/ft"), slope_of("2%")), 1);
	assert_int_equal(rb_slope_compare(slope_of("1/8 in/ft"), slope_of("1%")), 1);
	assert_int_equal(rb_slope_compare(slope_of("1 in 50"), slope_of("2%")), 0);
	assert_int_equal(rb_slope_compare(slope_of("1/4 in/ft"), slope_of("1:48")), 0);
	assert_int_equal(rb_slope_over(slope_of("1/4 in/ft"), FT(50, 0)).nm,
			 25 * RB_INCH / 2);
	assert_int_equal(rb_slope_over(slope_of("2%"), FT(50, 0)).nm, 12 * RB_INCH);
}

static void ordinance_labels(void **state)
{
	(void)state;
	assert_int_equal(
		rb_slope_compare(slope_of("1 in per 8 ft"), slope_of("1/8 in/ft")), 0);
	assert_int_equal(
		rb_slope_compare(slope_of("2 in per 8 ft"), slope_of("1/4 in/ft")), 0);
	assert_int_equal(
		rb_slope_compare(slope_of("0.72 in per 8 ft"), slope_of("0.75%")), 0);
	/* The "or 1.5 in per 16 ft" beside it is 0.78 %. */
	assert_int_equal(
		rb_slope_compare(slope_of("1.5 in per 16 ft"), slope_of("0.75%")), 1);
	assert_int_equal(
		rb_slope_compare(slope_of("1.5 in per 16 ft"), slope_of("0.78125%")), 0);
}

/* Modern Plumbing (2022) sec. 6.5 (read); a journeyman exam item (read); a training page
 * on AS/NZS 3500.2 (read); a UK student text (second-hand). */
static void trade_arithmetic(void **state)
{
	(void)state;
	assert_int_equal(rb_slope_over(slope_of("1/8 in/ft"), FT(50, 0)).nm,
			 25 * RB_INCH / 4);
	assert_int_equal(rb_slope_over(slope_of("1/4 in/ft"), FT(10, 0)).nm,
			 5 * RB_INCH / 2);
	assert_int_equal(
		rb_slope_over(slope_of("1 in 50"), (rb_length){ 50 * RB_METRE }).nm,
		RB_METRE);
	assert_int_equal(rb_slope_over(slope_of("1:80"), (rb_length){ 50 * RB_METRE }).nm,
			 625 * RB_MILLIMETRE);
	/* 1.65 % is printed beside 1:60, and is 1:60.6. */
	assert_int_equal(rb_slope_compare(slope_of("1.65%"), slope_of("1:60")), -1);
}

/* Computed; 1 in/ft = 83.3 mm/m read with the notes of the IPC. */
/* clang-format off */
static const struct { const char *slope, *percent, *one_in, *degrees, *mm_per_m; int64_t fall_100; } table[] = {
	{ "1/16 in/ft",  "0.5208",  "192.0", "0.2984",  "5.21",   400 }, /* 64ths of an inch in 100 ft */
	{ "1/8 in/ft",   "1.0417",  "96.0",  "0.5968",  "10.42",  800 },
	{ "0.15 in/ft",  "1.2500",  "80.0",  "0.7162",  "12.50",  960 },
	{ "3/16 in/ft",  "1.5625",  "64.0",  "0.8952",  "15.63",  1200 },
	{ "0.20 in/ft",  "1.6667",  "60.0",  "0.9548",  "16.67",  1280 },
	{ "0.24 in/ft",  "2.0000",  "50.0",  "1.1458",  "20.00",  1536 },
	{ "1/4 in/ft",   "2.0833",  "48.0",  "1.1935",  "20.83",  1600 },
	{ "0.30 in/ft",  "2.5000",  "40.0",  "1.4321",  "25.00",  1920 },
	{ "5/16 in/ft",  "2.6042",  "38.4",  "1.4917",  "26.04",  2000 },
	{ "3/8 in/ft",   "3.1250",  "32.0",  "1.7899",  "31.25",  2400 },
	{ "1/2 in/ft",   "4.1667",  "24.0",  "2.3859",  "41.67",  3200 },
	{ "3/4 in/ft",   "6.2500",  "16.0",  "3.5763",  "62.50",  4800 },
	{ "1 in/ft",     "8.3333",  "12.0",  "4.7636",  "83.33",  6400 },
	{ "12 in/ft",    "100.0000", "1.0",  "45.0000", "1000.00", 76800 },
};
/* clang-format on */

static bool shows(rb_slope slope, enum rb_slope_form form, int decimals,
		  const char *printed)
{
	char text[RB_SLOPE_TEXT];

	rb_slope_number(text, slope, form, decimals);
	if (!strcmp(text, printed))
		return true;
	print_error("%s for %s\n", text, printed);
	return false;
}

static void slope_equivalents(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
		rb_slope slope = slope_of(table[i].slope);

		wrong += !shows(slope, RB_PERCENT, 4, table[i].percent) ||
			 !shows(slope, RB_ONE_IN, 1, table[i].one_in) ||
			 !shows(slope, RB_DEGREES, 4, table[i].degrees) ||
			 !shows(slope, RB_PER_METRE, 2, table[i].mm_per_m) ||
			 rb_slope_over(slope, FT(100, 0)).nm !=
				 table[i].fall_100 * RB_SIXTYFOURTH;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(quarter_inch_is_not_two_percent),
		cmocka_unit_test(ordinance_labels),
		cmocka_unit_test(trade_arithmetic),
		cmocka_unit_test(slope_equivalents),
	};

	return cmocka_run_group_tests_name("slope minimums", tests, NULL, NULL);
}
