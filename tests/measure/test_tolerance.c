/* SPDX-License-Identifier: MIT */
/* test_tolerance.c - allowed misclosures, read and compared. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "rodbook/tolerance.h"
#include "written.h"

#define ROOT       "\xE2\x88\x9A"
#define TIMES      "\xC3\x97"
#define PLUS_MINUS "\xC2\xB1"
#define MILE       (5280 * RB_FOOT)
#define SETUPS     RB_PER_ROOT_SETUP
#define MILES      RB_PER_ROOT_MILE
#define KILOMETRES RB_PER_ROOT_KILOMETRE

/* clang-format off */
static const struct parse_case {
	const char *text;
	enum rb_unit unit;
	int64_t nm; /* -1: it is none */
	enum rb_tolerance_root root;
} parse_cases[] = {
	{ "0.02 ft",               FT, HUNDREDTHS(2), RB_FLAT },
	{ "0.02 ft",               M,  HUNDREDTHS(2), RB_FLAT },
	{ "0.02",                  FT, HUNDREDTHS(2), RB_FLAT },
	{ "1/4 in",                FI, RB_INCH / 4, RB_FLAT },
	{ "1/4\"",                 FT, RB_INCH / 4, RB_FLAT },
	{ "1/4",                   IN, RB_INCH / 4, RB_FLAT },
	{ "5 mm",                  M,  MILLI(5), RB_FLAT },
	{ "5",                     MM, MILLI(5), RB_FLAT },
	{ PLUS_MINUS "5 mm",       M,  MILLI(5), RB_FLAT },
	{ "+/- 5 mm",              M,  MILLI(5), RB_FLAT },
	{ "0",                     FT, 0, RB_FLAT },
	{ "0.05 ft sqrt(mi)",      FT, HUNDREDTHS(5), MILES },
	{ "0.05 ft sqrt(miles)",   FT, HUNDREDTHS(5), MILES },
	{ "0.05 ft sqrt(M)",       FT, HUNDREDTHS(5), MILES },
	{ "0.05 ft " ROOT "M",     FT, HUNDREDTHS(5), MILES },
	{ "0.05" ROOT "M",         FT, HUNDREDTHS(5), MILES },
	{ "12 mm sqrt(km)",        M,  MILLI(12), KILOMETRES },
	{ "12mm" ROOT "km",        FT, MILLI(12), KILOMETRES },
	{ "12 mm " ROOT "K",       M,  MILLI(12), KILOMETRES },
	{ "12 mm " ROOT " k",      M,  MILLI(12), KILOMETRES },
	{ "12 mm " TIMES " " ROOT "km", M, MILLI(12), KILOMETRES },
	{ "12 mm x SQRT(KM)",      M,  MILLI(12), KILOMETRES },
	{ "12 mm * sqrt( km )",    M,  MILLI(12), KILOMETRES },
	{ PLUS_MINUS "12mm" ROOT "km", M, MILLI(12), KILOMETRES },
	{ "12 mm sqrt (km)",       M,  MILLI(12), KILOMETRES },
	{ "0.01 ft sqrt(setups)",  FT, HUNDREDTHS(1), SETUPS },
	{ "0.01" ROOT "n",         FT, HUNDREDTHS(1), SETUPS },
	{ "0.01 ft " ROOT "N",     FI, HUNDREDTHS(1), SETUPS },
	{ "1/8 in sqrt(n)",        FI, RB_INCH / 8, SETUPS },

	{ "",                      FT, -1, RB_FLAT },
	{ "12 mm x* " ROOT "km",   M,  -1, RB_FLAT },
	{ "+/- +- 5 mm",           M,  -1, RB_FLAT },
	{ "tight",                 FT, -1, RB_FLAT },
	{ "0.02",                  FI, -1, RB_FLAT },
	{ "1/4",                   FT, -1, RB_FLAT },
	{ "-0.02 ft",              FT, -1, RB_FLAT },
	{ "0.02 ft sqrt",          FT, -1, RB_FLAT },
	{ "0.02 ft sqrt()",        FT, -1, RB_FLAT },
	{ "0.02 ft sqrt(m)",       FT, -1, RB_FLAT }, /* metres, or miles? */
	{ "0.02 ft sqrt(days)",    FT, -1, RB_FLAT },
	{ "sqrt(km)",              FT, -1, RB_FLAT },
	{ "0,02 ft",               FT, -1, RB_FLAT },
};
/* clang-format on */

static void parses(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof parse_cases / sizeof *parse_cases; i++) {
		const struct parse_case *c = &parse_cases[i];
		struct rb_tolerance got = { .coefficient = { -1 } };
		bool read = rb_tolerance_parse(c->text, strlen(c->text), c->unit, false,
					       &got);

		if (read == (c->nm >= 0) && got.given == read &&
		    got.coefficient.nm == c->nm && got.root == c->root)
			continue;
		print_error("\"%s\": read %d, %lld nm, root %d\n", c->text, read,
			    (long long)got.coefficient.nm, (int)got.root);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void takes_a_decimal_comma_where_the_file_has_it(void **state)
{
	struct rb_tolerance got;

	(void)state;
	assert_false(
		rb_tolerance_parse("   0.02 ft", 2, FT, false, &got)); /* blanks alone */
	assert_false(rb_tolerance_parse("   ", 3, FT, false, &got));
	assert_true(rb_tolerance_parse("0,02 ft", 7, FT, true, &got));
	assert_int_equal(got.coefficient.nm, HUNDREDTHS(2));
}

/* clang-format off */
static const struct judge_case {
	struct rb_tolerance tolerance;
	int64_t misclosure, length, setups;
	bool holds;
	int64_t allowed;
} judge_cases[] = {
	/* at most, on either side */
	{ { true, { HUNDREDTHS(2) }, RB_FLAT }, HUNDREDTHS(2), 0, 3, true, HUNDREDTHS(2) },
	{ { true, { HUNDREDTHS(2) }, RB_FLAT }, -HUNDREDTHS(2), 0, 3, true, HUNDREDTHS(2) },
	{ { true, { HUNDREDTHS(2) }, RB_FLAT }, HUNDREDTHS(2) + 1, 0, 3, false,
	  HUNDREDTHS(2) },
	{ { true, { HUNDREDTHS(2) }, RB_FLAT }, -HUNDREDTHS(2) - 1, 0, 3, false,
	  HUNDREDTHS(2) },
	{ { true, { 0 }, RB_FLAT }, 0, 0, 3, true, 0 },
	{ { true, { 0 }, RB_FLAT }, 1, 0, 3, false, 0 },

	/* 5 mm sqrt(3) is 8.66 mm */
	{ { true, { MILLI(5) }, SETUPS }, MILLI(9), 0, 3, false, 8660254 },
	{ { true, { MILLI(5) }, SETUPS }, 8660254, 0, 3, true, 8660254 },
	{ { true, { MILLI(5) }, SETUPS }, 8660255, 0, 3, false, 8660254 },
	{ { true, { MILLI(5) }, SETUPS }, MILLI(10), 0, 4, true, MILLI(10) },
	{ { true, { MILLI(5) }, SETUPS }, MILLI(10) + 1, 0, 4, false, MILLI(10) },

	/* a mile, a quarter of one, four of them */
	{ { true, { HUNDREDTHS(5) }, MILES }, HUNDREDTHS(5), MILE, 9, true,
	  HUNDREDTHS(5) },
	{ { true, { HUNDREDTHS(5) }, MILES }, HUNDREDTHS(5) + 1, MILE, 9, false,
	  HUNDREDTHS(5) },
	{ { true, { HUNDREDTHS(5) }, MILES }, -7620000, MILE / 4, 9, true, 7620000 },
	{ { true, { HUNDREDTHS(5) }, MILES }, -7620000, MILE / 4 - 1, 9, false, 7620000 },
	{ { true, { HUNDREDTHS(5) }, MILES }, HUNDREDTHS(10), 4 * MILE, 9, true,
	  HUNDREDTHS(10) },

	{ { true, { MILLI(12) }, KILOMETRES }, MILLI(12), 1000 * RB_METRE, 9, true,
	  MILLI(12) },
	{ { true, { MILLI(12) }, KILOMETRES }, MILLI(6), 250 * RB_METRE, 9, true,
	  MILLI(6) },
	{ { true, { MILLI(12) }, KILOMETRES }, MILLI(6), 250 * RB_METRE - 1, 9, false,
	  MILLI(6) },
	{ { true, { MILLI(12) }, KILOMETRES }, 1, 0, 9, false, 0 },
	{ { true, { MILLI(12) }, KILOMETRES }, 0, 0, 9, true, 0 },

	/* the largest that can come: no square and no product overflows */
	{ { true, { RB_LENGTH_MAX }, MILES }, INT64_MAX, INT64_MAX, 9, false,
	  INT64_C(23939794650307549) },
	{ { true, { RB_LENGTH_MAX }, SETUPS }, INT64_MAX, 0, 1000000, false,
	  1000 * RB_LENGTH_MAX },
};
/* clang-format on */

static void judges(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof judge_cases / sizeof *judge_cases; i++) {
		const struct judge_case *c = &judge_cases[i];
		bool holds =
			rb_tolerance_holds(&c->tolerance, rb_length_of(c->misclosure),
					   rb_length_of(c->length), c->setups);
		rb_length allowed = rb_tolerance_allowed(
			&c->tolerance, rb_length_of(c->length), c->setups);

		if (holds == c->holds && allowed.nm == c->allowed)
			continue;
		print_error("row %zu: holds %d, allowed %lld\n", i, holds,
			    (long long)allowed.nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void asks_for_the_length_only_where_it_is_needed(void **state)
{
	struct rb_tolerance t = { true, { MILLI(5) }, RB_FLAT };

	(void)state;
	assert_false(rb_tolerance_needs_length(&t));
	t.root = RB_PER_ROOT_SETUP;
	assert_false(rb_tolerance_needs_length(&t));
	t.root = RB_PER_ROOT_MILE;
	assert_true(rb_tolerance_needs_length(&t));
	t.root = RB_PER_ROOT_KILOMETRE;
	assert_true(rb_tolerance_needs_length(&t));
	t.given = false;
	assert_false(rb_tolerance_needs_length(&t));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(parses),
		cmocka_unit_test(takes_a_decimal_comma_where_the_file_has_it),
		cmocka_unit_test(judges),
		cmocka_unit_test(asks_for_the_length_only_where_it_is_needed),
	};

	return cmocka_run_group_tests_name("tolerance", tests, NULL, NULL);
}
