/* SPDX-License-Identifier: MIT */
/* Decimal numbers: rounded once, and exact where they must read back. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "measure/reading.h"
#include "report/decimal.h"

/* clang-format off */
static const struct decimal_case {
	int64_t nm;
	enum rb_unit unit;
	int decimals, least;
	const char *text;
} decimal_cases[] = {
	{ 29943552000,    RB_FEET,        4, 1, "98.24" },
	{ 100 * RB_FOOT,  RB_FEET,        4, 1, "100.0" },
	{ 100 * RB_FOOT,  RB_FEET,        4, 0, "100" },
	{ 0,              RB_FEET,        4, 1, "0.0" },
	{ -1,             RB_FEET,        4, 1, "0.0" },   /* never -0 */
	{ -15240,         RB_FEET,        4, 1, "-0.0001" }, /* half away from zero */
	{ 15240,          RB_FEET,        4, 1, "0.0001" },
	{ 15239,          RB_FEET,        4, 1, "0.0" },
	{ RB_FOOT - 1,    RB_FEET,        4, 4, "1.0000" },
	{ 1613000000,     RB_MILLIMETRES, 1, 1, "1613.0" },
	{ 1613000000,     RB_METRES,      4, 1, "1.613" },
	{ 1612900000,     RB_INCHES,      3, 1, "63.5" },
	{ 1612900000,     RB_FEET_INCHES, 4, 1, "5.2917" },
	{ INT64_C(9000000000000000000), RB_METRES, 9, 0, "9000000000" },
};

static const struct exact_case {
	int64_t nm;
	enum rb_unit unit;
	const char *text;
} exact_cases[] = {
	{ 1612392000, RB_FEET,        "5.29" },
	{ 1612900000, RB_FEET,        "5.291667" },    /* 5'-3 1/2" */
	{ 3048,       RB_FEET,        "0.00001" },
	{ 1613000000, RB_FEET,        "1.613 m" },
	{ 1613000000, RB_INCHES,      "1.613 m" },
	{ 1612392000, RB_METRES,      "1.612392" },
	{ 396875,     RB_INCHES,      "0.015625" },
	{ -1612900000, RB_FEET,       "-5.291667" },
	{ 1190625,    RB_FEET,        "0.003906" },    /* 3/64", exact in 8 places */
};
/* clang-format on */

static void rounds_once(void **state)
{
	char text[RB_DECIMAL_TEXT + 1];
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof decimal_cases / sizeof *decimal_cases; i++) {
		const struct decimal_case *c = &decimal_cases[i];
		size_t length = rb_decimal_write(text, rb_length_of(c->nm), c->unit,
						 c->decimals, c->least);

		text[length] = '\0';
		if (!strcmp(text, c->text))
			continue;
		print_error("row %zu: got %s, want %s\n", i, text, c->text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void writes_exactly(void **state)
{
	char text[RB_DECIMAL_TEXT + 1];
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof exact_cases / sizeof *exact_cases; i++) {
		const struct exact_case *c = &exact_cases[i];
		size_t length =
			rb_decimal_write_exact(text, rb_length_of(c->nm), c->unit, 4);

		text[length] = '\0';
		if (!strcmp(text, c->text))
			continue;
		print_error("row %zu: got %s, want %s\n", i, text, c->text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static bool reads_back(int64_t nm, enum rb_unit unit)
{
	const struct rb_reading_rules rules = { unit, RB_OF_ROD, false,
						rb_length_none() };
	char text[RB_DECIMAL_TEXT];
	size_t length = rb_decimal_write_exact(text, rb_length_of(nm), unit, 4);
	struct rb_reading reading = rb_reading_parse(text, length, &rules);

	return reading.refusal == RB_READ && reading.value.nm == nm;
}

/* Every 64th, every 0.001 ft and every millimetre of a rod, in every unit. */
static void reads_back_as_it_was(void **state)
{
	static const enum rb_unit units[] = { RB_FEET, RB_INCHES, RB_METRES,
					      RB_MILLIMETRES };
	int wrong = 0;

	(void)state;
	for (size_t u = 0; u < sizeof units / sizeof *units; u++) {
		for (int64_t i = -700; i < 13 * 12 * 64; i += 3)
			wrong += !reads_back(i * RB_SIXTYFOURTH, units[u]);
		for (int64_t i = -700; i < 13000; i += 7)
			wrong += !reads_back(i * RB_FOOT / 1000, units[u]);
		for (int64_t i = -700; i < 5000; i += 3)
			wrong += !reads_back(i * RB_MILLIMETRE, units[u]);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(rounds_once),
		cmocka_unit_test(writes_exactly),
		cmocka_unit_test(reads_back_as_it_was),
	};

	return cmocka_run_group_tests_name("decimal", tests, NULL, NULL);
}
