/* SPDX-License-Identifier: MIT */
/* test_places.c - the last place that was read. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "level/places.h"
#include "measure/reading.h"

/* clang-format off */
static const struct {
	const char *text;
	enum rb_unit unit;
	int64_t step;
} cases[] = {
	{ "5",            RB_FEET,        RB_FOOT },
	{ "5.3",          RB_FEET,        RB_FOOT / 10 },
	{ "5.32",         RB_FEET,        RB_FOOT / 100 },
	{ "1.613",        RB_METRES,      RB_MILLIMETRE },
	{ "1613",         RB_MILLIMETRES, RB_MILLIMETRE },
	{ "63.25",        RB_INCHES,      RB_INCH / 100 },
	{ "5'-3\"",       RB_FEET,        RB_INCH },
	{ "5'-3 1/2\"",   RB_FEET,        RB_INCH / 2 },
	{ "5'-3 3/8\"",   RB_FEET,        RB_INCH / 8 },
	{ "5.291667",     RB_FEET,        RB_SIXTYFOURTH }, /* 5'-3 1/2" */
	{ "5' 3.5 in",    RB_FEET_INCHES, RB_INCH / 10 },
	{ "5' 3.55 in",   RB_FEET_INCHES, RB_INCH / 100 },
};
/* clang-format on */

static void steps_of_readings(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct rb_reading_rules rules = { cases[i].unit, RB_OF_ROD, false,
							rb_length_none() };
		struct rb_reading reading =
			rb_reading_parse(cases[i].text, strlen(cases[i].text), &rules);
		rb_length step = rb_reading_step(&reading);

		if (reading.refusal == RB_READ && step.nm == cases[i].step)
			continue;
		print_error("%s: a step of %lld nm\n", cases[i].text, (long long)step.nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* More decimals than there are nanometres. */
static void a_step_is_never_nothing(void **state)
{
	(void)state;
	assert_int_equal(rb_decimal_step(RB_METRES, 9).nm, 1);
	assert_int_equal(rb_decimal_step(RB_METRES, 12).nm, 1);
	assert_int_equal(rb_decimal_step(RB_FEET, 17).nm, 1);
	assert_int_equal(rb_decimal_step(RB_INCHES, 7).nm, 2);
	assert_int_equal(rb_decimal_step(RB_INCHES, 8).nm, 1);
	assert_int_equal(rb_fraction_step(0).nm, RB_INCH);
	assert_int_equal(rb_fraction_step(1).nm, RB_INCH);
	assert_int_equal(rb_fraction_step(64).nm, RB_SIXTYFOURTH);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(steps_of_readings),
		cmocka_unit_test(a_step_is_never_nothing),
	};

	return cmocka_run_group_tests_name("places", tests, NULL, NULL);
}
