/* SPDX-License-Identifier: MIT */
/* test_sheet_damage.c - the month and the day of every serial number that is taken for a
 * date. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "measure/sheet_damage.h"

static int days_of(int month, int year)
{
	static const int days[] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };

	return days[month - 1] + (month == 2 && year % 4 == 0);
}

/* What a sheet makes of m.d or of d.m is shown by the same serial number: both are
 * offered, in metres as decimals, the month first. */
static int64_t as_metres(int64_t whole, int64_t behind)
{
	return whole * RB_METRE + behind * (behind < 10 ? RB_METRE / 10 : RB_METRE / 100);
}

/* From 1 January 2009, which is 39814, to the end of 2050. */
static void serials_are_dates(void **state)
{
	const struct rb_reading_rules rules = { RB_METRES, RB_OF_ROD, false,
						rb_length_none() };
	int64_t serial = 39814;
	int wrong = 0;

	(void)state;
	for (int year = 2009; year <= 2050; year++)
		for (int month = 1; month <= 12; month++)
			for (int day = 1; day <= days_of(month, year); day++, serial++) {
				struct rb_reading r = { .refusal = RB_READ };

				if (!rb_sheet_serial(serial, &rules))
					continue;
				rb_sheet_refuse_serial(serial, &rules, &r);
				if (r.refusal == RB_REFUSE_SERIAL &&
				    r.maybe[0].nm == as_metres(month, day) &&
				    (month == day ||
				     r.maybe[1].nm == as_metres(day, month)))
					continue;
				print_error("%lld is not %d-%02d-%02d\n",
					    (long long)serial, year, month, day);
				wrong++;
			}
	assert_int_equal(serial, 55154); /* 1 January 2051 */
	assert_int_equal(wrong, 0);
}

static void which_numbers_are_serials(void **state)
{
	/* clang-format off */
	static const struct {
		int64_t number;
		enum rb_unit unit;
		enum rb_reading_kind kind;
		bool serial;
	} cases[] = {
		{ 39999, RB_FEET,        RB_OF_ROD,       false },
		{ 40000, RB_FEET,        RB_OF_ROD,       true },
		{ 55000, RB_FEET,        RB_OF_ROD,       true },
		{ 55001, RB_FEET,        RB_OF_ROD,       false },
		{ 45780, RB_MILLIMETRES, RB_OF_ROD,       true },
		{ 45780, RB_INCHES,      RB_OF_ROD,       true },
		{ 45780, RB_MILLIMETRES, RB_OF_ELEVATION, false },
		{ 45780, RB_INCHES,      RB_OF_ELEVATION, false },
		{ 45780, RB_FEET,        RB_OF_ELEVATION, true },
		{ 45780, RB_METRES,      RB_OF_ELEVATION, true },
	};
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct rb_reading_rules rules = { cases[i].unit, cases[i].kind,
							false, rb_length_none() };

		if (rb_sheet_serial(cases[i].number, &rules) != cases[i].serial)
			print_error("row %zu\n", i);
		assert_int_equal(rb_sheet_serial(cases[i].number, &rules),
				 cases[i].serial);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(serials_are_dates),
		cmocka_unit_test(which_numbers_are_serials),
	};

	return cmocka_run_group_tests_name("sheet_damage", tests, NULL, NULL);
}
