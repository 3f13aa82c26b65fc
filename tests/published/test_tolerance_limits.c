/* SPDX-License-Identifier: MIT */
/*
 * test_tolerance_limits.c - published limits of misclosure, and what they are in the
 * other unit.
 *
 * They are rounded images of each other: 0.05 ft times the root of the miles is 12.01 mm
 * times the root of the kilometres, and neither is converted into the other on the quiet.
 * All conversions: computed here.
 */
#include "run_book.h"

#define MILE (5280 * RB_FOOT)

/* clang-format off */
static const struct limit_case {
	const char *tolerance;
	int64_t length;      /* over which it is looked at */
	int64_t setups;
	const char *allowed;
	enum rb_unit unit;
	const char *source;
} limit_cases[] = {
	{ "4 mm sqrt(km)",  MILE, 1, "0.0166", RB_FEET, "FGCC 1984, sec. 3.5, loops, first order class I (value from memory)" },
	{ "5 mm sqrt(km)",  MILE, 1, "0.0208", RB_FEET, "the same, first order class II" },
	{ "6 mm sqrt(km)",  MILE, 1, "0.0250", RB_FEET, "the same, second order class I" },
	{ "8 mm sqrt(km)",  MILE, 1, "0.0333", RB_FEET, "the same, second order class II" },
	{ "12 mm sqrt(km)", MILE, 1, "0.0499", RB_FEET, "the same, third order" },
	{ "0.012 ft sqrt(mi)", 1000 * RB_METRE, 1, "2.9",  RB_MILLIMETRES, "ITCM 410, lab 1, first order class I (read)" },
	{ "0.017 ft sqrt(mi)", 1000 * RB_METRE, 1, "4.1",  RB_MILLIMETRES, "the same, first order class II" },
	{ "0.025 ft sqrt(mi)", 1000 * RB_METRE, 1, "6.0",  RB_MILLIMETRES, "the same, second order class I" },
	{ "0.033 ft sqrt(mi)", 1000 * RB_METRE, 1, "7.9",  RB_MILLIMETRES, "the same, second order class II" },
	{ "0.050 ft sqrt(mi)", 1000 * RB_METRE, 1, "12.0", RB_MILLIMETRES, "the same, third order" },
	{ "0.100 ft sqrt(mi)", 1000 * RB_METRE, 1, "24.0", RB_MILLIMETRES, "the same, fourth order" },
	{ "0.05 ft sqrt(mi)",  1000 * RB_METRE, 1, "12.01", RB_MILLIMETRES, "USACE EM 1110-1-1005, third order (value from memory)" },
	{ "8.4 mm sqrt(km)",   MILE, 1, "0.035", RB_FEET, "US Army, subcourse EN0593, second order class II (read)" },
	{ "0.06 ft sqrt(mi)",  1000 * RB_METRE, 1, "14.4", RB_MILLIMETRES, "Caltrans, Surveys Manual, table 8-2, third order (read at second hand)" },
	{ "0.003 ft sqrt(setups)", 0, 1,  "0.003", RB_FEET, "USGS, TM 3-A19 (read)" },
	{ "0.003 ft sqrt(setups)", 0, 25, "0.015", RB_FEET, "the same: at 25 setups it reaches its cap" },
	{ "0.02 ft sqrt(setups)",  0, 4,  "0.04",  RB_FEET, "Ghilani and Wolf, construction (read in part)" },
	{ "5 mm sqrt(setups)",     0, 3,  "8.66",  RB_MILLIMETRES, "Uren and Price, Surveying for Engineers (value from memory)" },
	{ "20 mm sqrt(km)", 250 * RB_METRE, 1, "10", RB_MILLIMETRES, "Malaysia, student levelling (read)" },
};
/* clang-format on */

static void limits(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof limit_cases / sizeof *limit_cases; i++) {
		const struct limit_case *c = &limit_cases[i];
		struct rb_tolerance t;

		assert_true(rb_tolerance_parse(c->tolerance, strlen(c->tolerance),
					       RB_FEET, false, &t));
		wrong += wrong_length(
			c->source,
			rb_tolerance_allowed(&t, rb_length_of(c->length), c->setups),
			c->allowed, c->unit, false);
	}
	assert_int_equal(wrong, 0);
}

/* 12.005 mm over a kilometre is within 0.05 ft sqrt(mi) and not within 12 mm sqrt(km). */
static void one_is_not_the_other(void **state)
{
	const rb_length kilometre = rb_length_of(1000 * RB_METRE);
	const rb_length between = rb_length_of(12005 * (RB_MILLIMETRE / 1000));
	struct rb_tolerance feet, metres;

	(void)state;
	assert_true(rb_tolerance_parse("0.05 ft sqrt(mi)", 16, RB_FEET, false, &feet));
	assert_true(rb_tolerance_parse("12 mm sqrt(km)", 14, RB_FEET, false, &metres));
	assert_true(rb_tolerance_holds(&feet, between, kilometre, 1));
	assert_false(rb_tolerance_holds(&metres, between, kilometre, 1));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(limits),
		cmocka_unit_test(one_is_not_the_other),
	};

	return cmocka_run_group_tests_name("Limits of misclosure", tests, NULL, NULL);
}
