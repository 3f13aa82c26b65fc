/* SPDX-License-Identifier: MIT */
/* test_length.c - lengths as text, and back: what is printed is read as the same. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "written.h"

/* clang-format off */
static const struct format_case {
	int64_t nm;
	struct rb_style style;
	const char *text;
	bool exact;
	int64_t shown;
} format_cases[] = {
	{ WANTED, { FI, 0, 16, false }, "5'-3 1/2\"", true, WANTED },
	{ WANTED, { FI, 0, 2, true }, "5'-3 1/2\"", true, WANTED },
	{ WANTED, { FI, 0, 1, false }, "5'-4\"", false, FEET_64(5, 256) },
	{ WANTED, { FI, 0, 0, false }, "5'-4\"", false, FEET_64(5, 256) },
	{ -WANTED, { FI, 0, 1, false }, "-5'-4\"", false, -FEET_64(5, 256) },
	{ 7 * RB_INCH, { FI, 0, 16, false }, "0'-7\"", true, 7 * RB_INCH },
	{ -2 * RB_INCH, { FI, 0, 16, false }, "-0'-2\"", true, -2 * RB_INCH },
	{ 0, { FI, 0, 16, false }, "0'-0\"", true, 0 },
	{ -1, { FI, 0, 64, false }, "0'-0\"", false, 0 },
	{ RB_FOOT - 1, { FI, 0, 64, false }, "1'-0\"", false, RB_FOOT },
	{ FEET_64(5, 767), { FI, 0, 16, false }, "6'-0\"", false, 6 * RB_FOOT },
	{ FEET_64(5, 255), { FI, 0, 8, false }, "5'-4\"", false, FEET_64(5, 256) },
	{ FEET_64(5, 255), { FI, 0, 64, false }, "5'-3 63/64\"", true, FEET_64(5, 255) },
	{ FEET_64(5, 224), { FI, 0, 64, false }, "5'-3 1/2\"", true, WANTED },
	{ FEET_64(5, 34), { FI, 0, 16, false }, "5'-0 9/16\"", false, FEET_64(5, 36) },
	{ -FEET_64(5, 34), { FI, 0, 16, false }, "-5'-0 9/16\"", false, -FEET_64(5, 36) },
	{ FEET_64(5, 33), { FI, 0, 16, false }, "5'-0 1/2\"", false, FEET_64(5, 32) },

	{ HUNDREDTHS(529), { FT, 2, 0, false }, "5.29", true, HUNDREDTHS(529) },
	{ HUNDREDTHS(529), { FT, 2, 0, true }, "5.29 ft", true, HUNDREDTHS(529) },
	{ HUNDREDTHS(529), { FT, 4, 0, false }, "5.2900", true, HUNDREDTHS(529) },
	{ HUNDREDTHS(529), { FT, 0, 0, false }, "5", false, 5 * RB_FOOT },
	{ HUNDREDTHS(529), { FT, -1, 0, false }, "5", false, 5 * RB_FOOT },
	{ WANTED, { FT, 4, 0, false }, "5.2917", false, 52917 * 30480LL },
	{ WANTED, { FT, 2, 0, false }, "5.29", false, HUNDREDTHS(529) },
	{ HUNDREDTHS(1), { FT, 1, 0, false }, "0.0", false, 0 },
	{ HUNDREDTHS(5), { FT, 1, 0, false }, "0.1", false, HUNDREDTHS(10) },
	{ -HUNDREDTHS(5), { FT, 1, 0, false }, "-0.1", false, -HUNDREDTHS(10) },
	{ -HUNDREDTHS(4), { FT, 1, 0, false }, "0.0", false, 0 },
	{ HUNDREDTHS(999) + 1524000, { FT, 2, 0, false }, "10.00", false, 10 * RB_FOOT },
	{ -1, { FT, 2, 0, false }, "0.00", false, 0 },
	{ 1, { FT, 9, 0, false }, "0.000000003", false, 1 },
	{ 1, { FT, 12, 0, false }, "0.000000003", false, 1 },
	{ RB_LENGTH_MAX, { FT, 2, 0, false }, "32808.40", false, 3280840 * 3048000LL },

	{ WANTED, { IN, 1, 0, false }, "63.5\"", true, WANTED },
	{ WANTED, { IN, 3, 0, true }, "63.500\"", true, WANTED },
	{ -WANTED, { IN, 0, 0, false }, "-64\"", false, -64 * RB_INCH },

	{ MILLI(1613), { M, 3, 0, false }, "1.613", true, MILLI(1613) },
	{ MILLI(1613), { M, 3, 0, true }, "1.613 m", true, MILLI(1613) },
	{ -MILLI(1613), { M, 2, 0, false }, "-1.61", false, -MILLI(1610) },
	{ 123456789, { M, 9, 0, false }, "0.123456789", true, 123456789 },
	{ MILLI(1613), { MM, 0, 0, false }, "1613", true, MILLI(1613) },
	{ MILLI(1613), { MM, 1, 0, true }, "1613.0 mm", true, MILLI(1613) },
	{ MILLI(1613) + 1, { MM, 1, 0, true }, "1613.0 mm", false, MILLI(1613) },

	/* a sum as large as there can be */
	{ INT64_MAX, { M, 9, 0, true }, "9223372036.854775807 m", true, INT64_MAX },
	{ -INT64_MAX, { MM, 9, 0, true }, "-9223372036854.775807000 mm",
	  true, -INT64_MAX },
	{ RB_NOT_GIVEN_NM, { FT, 2, 0, true }, "", true, RB_NOT_GIVEN_NM },
	{ RB_NOT_GIVEN_NM, { FI, 0, 16, true }, "", true, RB_NOT_GIVEN_NM },
};
/* clang-format on */

static void formats(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof format_cases / sizeof *format_cases; i++) {
		const struct format_case *c = &format_cases[i];
		char text[RB_LENGTH_TEXT];
		bool exact = rb_length_format(text, rb_length_of(c->nm), c->style);
		int64_t shown = rb_length_as_shown(rb_length_of(c->nm), c->style).nm;

		if (strcmp(text, c->text) == 0 && exact == c->exact && shown == c->shown)
			continue;
		print_error("row %zu: got \"%s\", not \"%s\"; exact %d; shown %lld\n", i,
			    text, c->text, exact, (long long)shown);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* Format, parse in a book of that unit, compare. */
static int comes_back_wrong(rb_length length, struct rb_style style)
{
	char text[RB_LENGTH_TEXT];
	bool exact = rb_length_format(text, length, style);
	struct rb_reading back =
		parse(text, style.unit, RB_OF_ROD, false, rb_length_none());

	if (exact && back.refusal == RB_READ && back.value.nm == length.nm)
		return 0;
	print_error("%lld nm: \"%s\", exact %d, refusal %d, %lld nm\n",
		    (long long)length.nm, text, exact, (int)back.refusal,
		    (long long)back.value.nm);
	return 1;
}

/* Every 64th of an inch to 30 feet, upright and inverted. */
static void every_sixtyfourth_comes_back(void **state)
{
	const struct rb_style style = { FI, 0, 64, false };
	int wrong = 0;

	(void)state;
	for (int64_t n = -30 * 768; n <= 30 * 768; n++)
		wrong += comes_back_wrong(rb_length_of(n * RB_SIXTYFOURTH), style);
	assert_int_equal(wrong, 0);
}

/* All decimal styles, with lengths that are whole steps of them. */
static void every_exact_decimal_comes_back(void **state)
{
	/* clang-format off */
	static const struct { enum rb_unit unit; int64_t nm; int places; } units[] = {
		{ FT, RB_FOOT, 5 }, { IN, RB_INCH, 5 }, { M, RB_METRE, 9 },
		{ MM, RB_MILLIMETRE, 6 },
	};
	/* clang-format on */
	uint64_t random = 11;
	int wrong = 0;

	(void)state;
	for (size_t u = 0; u < sizeof units / sizeof *units; u++)
		for (int places = 0; places <= units[u].places; places++)
			for (int i = 0; i < 2000; i++) {
				int64_t step = units[u].nm, steps;

				for (int k = 0; k < places; k++)
					step /= 10;
				random = random * 6364136223846793005u +
					 1442695040888963407u;
				steps = (int64_t)(random >> 20) %
					(10 * RB_METRE / step + 1);
				wrong += comes_back_wrong(
					rb_length_of(i % 2 ? steps * step
							   : -steps * step),
					(struct rb_style){ units[u].unit, places, 0,
							   i % 3 == 0 });
			}
	assert_int_equal(wrong, 0);
}

/* What is shown is a whole number of steps, and half a step away at most. */
static void rounds_to_the_nearest_step(void **state)
{
	uint64_t random = 5;

	(void)state;
	for (int i = 0; i < 20000; i++) {
		const struct rb_style style = { FI, 0, 1 << i % 7, false };
		int64_t step = RB_INCH / style.fraction, off;
		rb_length a, shown;

		random = random * 6364136223846793005u + 1442695040888963407u;
		a = rb_length_of((int64_t)(random >> 24) - (INT64_C(1) << 39));
		shown = rb_length_as_shown(a, style);
		off = rb_length_absolute(rb_length_sub(shown, a)).nm;
		assert_int_equal(shown.nm % step, 0);
		assert_true(2 * off <= step);
	}
}

static void shares(void **state)
{
	(void)state;
	assert_int_equal(rb_length_share(rb_length_of(10), 1, 4).nm, 3);
	assert_int_equal(rb_length_share(rb_length_of(-10), 1, 4).nm, -3);
	assert_int_equal(
		rb_length_share(rb_length_of(RB_LENGTH_MAX), INT64_MAX, INT64_MAX).nm,
		RB_LENGTH_MAX);
	assert_int_equal(rb_length_share(rb_length_of(HUNDREDTHS(1)), 2, 3).nm, 2032000);
}

static void compares_and_adds(void **state)
{
	rb_length a = rb_length_of(HUNDREDTHS(529)), b = rb_length_of(WANTED);

	(void)state;
	assert_true(rb_length_compare(a, b) < 0);
	assert_true(rb_length_compare(b, a) > 0);
	assert_int_equal(rb_length_compare(a, a), 0);
	assert_int_equal(rb_length_add(a, b).nm, HUNDREDTHS(529) + WANTED);
	assert_int_equal(rb_length_sub(a, b).nm, HUNDREDTHS(529) - WANTED);
	assert_int_equal(rb_length_absolute(rb_length_negate(a)).nm, a.nm);
	assert_false(rb_length_given(rb_length_none()));
}

static void units_have_names_and_runs(void **state)
{
	(void)state;
	assert_string_equal(rb_unit_name(FT), "ft");
	assert_string_equal(rb_unit_name(IN), "in");
	assert_string_equal(rb_unit_name(FI), "ft-in");
	assert_string_equal(rb_unit_name(M), "m");
	assert_string_equal(rb_unit_name(MM), "mm");
	assert_int_equal(rb_unit_of_runs(FT), FT);
	assert_int_equal(rb_unit_of_runs(IN), FT);
	assert_int_equal(rb_unit_of_runs(FI), FT);
	assert_int_equal(rb_unit_of_runs(M), M);
	assert_int_equal(rb_unit_of_runs(MM), M);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(formats),
		cmocka_unit_test(every_sixtyfourth_comes_back),
		cmocka_unit_test(every_exact_decimal_comes_back),
		cmocka_unit_test(rounds_to_the_nearest_step),
		cmocka_unit_test(shares),
		cmocka_unit_test(compares_and_adds),
		cmocka_unit_test(units_have_names_and_runs),
	};

	return cmocka_run_group_tests_name("length", tests, NULL, NULL);
}
