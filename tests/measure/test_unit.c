/* SPDX-License-Identifier: MIT */
/* test_unit.c - the names of units. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "written.h"

static void names_of_units(void **state)
{
	/* clang-format off */
	static const struct { const char *text; int unit; } names[] = {
		{ "ft", FT }, { "Feet", FT }, { "Decimal feet", FT }, { "feet (decimal)", FT },
		{ "in", IN }, { "inches", IN }, { "ft-in", FI }, { "FT-IN", FI },
		{ "feet and inches", FI }, { "feet-inches", FI }, { "m", M }, { "metres", M },
		{ "meters", M }, { "mm", MM }, { "Millimetres", MM }, { " ft. ", FT },
		{ "", -1 }, { "decimal", -1 }, { "yards", -1 }, { "5 ft", -1 }, { "cm", -1 },
		{ "ft 0", -1 }, { "9 ft", -1 }, { "ftz", -1 }, { "fta", -1 },
		{ "decimal abcdefghijklmnopqrstuvwx", -1 }, /* as many letters as are held */
		{ "feet and inches and sixteenths, more or less", -1 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		enum rb_unit unit;
		bool known = rb_unit_parse(names[i].text, strlen(names[i].text), &unit);

		if ((known ? (int)unit : -1) == names[i].unit)
			continue;
		print_error("\"%s\" is unit %d\n", names[i].text, known ? (int)unit : -1);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* The text need not end in NUL. */
static void reads_no_further_than_told(void **state)
{
	enum rb_unit unit;

	(void)state;
	assert_true(rb_unit_parse("ftx", 2, &unit));
	assert_int_equal(unit, FT);
	assert_true(rb_unit_parse("mm", 1, &unit));
	assert_int_equal(unit, M);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(names_of_units),
		cmocka_unit_test(reads_no_further_than_told),
	};

	return cmocka_run_group_tests_name("unit", tests, NULL, NULL);
}
