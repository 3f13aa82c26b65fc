/* SPDX-License-Identifier: MIT */
/* Places enough, and not more. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "report/shown.h"

/* clang-format off */
static const struct single {
	int64_t nm;
	enum rb_unit unit;
	const char *text;
} singles[] = {
	{   6096000,       RB_FEET,        "0.02 ft" },
	{ 25 * RB_FOOT,    RB_FEET,        "25 ft" },
	{   6350000,       RB_FEET_INCHES, "0'-0 1/4\"" },
	{ -RB_SIXTYFOURTH, RB_FEET_INCHES, "-0'-0 1/64\"" },
	{   8660254,       RB_MILLIMETRES, "8.66 mm" },
	{   9000000,       RB_MILLIMETRES, "9 mm" },
	{ 156170000000,    RB_METRES,      "156.17 m" },
	{ RB_FOOT / 3,     RB_FEET,        "0.33333 ft" },
	{ RB_INCH / 2,     RB_INCHES,      "0.5\"" },
};

static const struct pair {
	int64_t a, b;
	struct rb_style style;
	const char *a_text, *b_text;
} pairs[] = {
	{ 9000000, 8660254,  { RB_MILLIMETRES, 0, 16, true }, "9 mm", "8.66 mm" },
	{ 6096000, 6096000,  { RB_FEET, 2, 16, true }, "0.02 ft", "0.02 ft" },
	{ 6400800, 6096000,  { RB_FEET, 2, 16, true }, "0.021 ft", "0.02 ft" },
	{ 6096001, 6096000,  { RB_FEET, 2, 16, true }, "0.020000003 ft", "0.02 ft" },
	{ 85344000, 6096000, { RB_FEET, 2, 16, true }, "0.28 ft", "0.02 ft" },
	{ 6746875, 6350000,  { RB_FEET_INCHES, 2, 16, true }, "0'-0 17/64\"", "0'-0 1/4\"" },
	{ 6400000, 6350000,  { RB_FEET_INCHES, 2, 16, true }, "0.0210 ft", "0.0208 ft" },
};
/* What is not nothing is not shown as nothing. */
static const struct least {
	int64_t nm;
	struct rb_style style;
	const char *text;
} leasts[] = {
	{ 121920000,      { RB_FEET, 0, 16, false }, "0.4" },
	{ 182880000,      { RB_FEET, 0, 16, false }, "1" },
	{ -121920000,     { RB_FEET, 0, 16, false }, "-0.4" },
	{ 1016000,        { RB_FEET, 2, 16, true },  "0.003 ft" },
	{ 0,              { RB_FEET, 0, 16, false }, "0" },
	{ 1,              { RB_METRES, 0, 16, false }, "0.000000001" },
	{ RB_SIXTYFOURTH, { RB_FEET_INCHES, 0, 8, false }, "0'-0 1/64\"" },
	{ RB_SIXTYFOURTH / 2 + 1, { RB_FEET_INCHES, 0, 8, false }, "0'-0 1/64\"" },
	{ RB_SIXTYFOURTH / 2, { RB_FEET_INCHES, 0, 8, false }, "0.0007 ft" },
	{ -3048,          { RB_FEET_INCHES, 0, 8, false }, "-0.00001 ft" },
	{ RB_NOT_GIVEN_NM, { RB_FEET, 0, 16, false }, "" },
};
/* clang-format on */

static void shows_no_false_zero(void **state)
{
	char text[RB_LENGTH_TEXT];
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof leasts / sizeof *leasts; i++) {
		rb_length a = rb_length_of(leasts[i].nm);

		rb_length_format(text, a, rb_shown_style(a, leasts[i].style));
		if (!strcmp(text, leasts[i].text))
			continue;
		print_error("row %zu: got %s, want %s\n", i, text, leasts[i].text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void shows_what_is_needed(void **state)
{
	char text[RB_LENGTH_TEXT];
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof singles / sizeof *singles; i++) {
		rb_shown(text, rb_length_of(singles[i].nm), singles[i].unit);
		if (!strcmp(text, singles[i].text))
			continue;
		print_error("row %zu: got %s, want %s\n", i, text, singles[i].text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void tells_two_apart(void **state)
{
	char a[RB_LENGTH_TEXT], b[RB_LENGTH_TEXT];
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
		const struct pair *p = &pairs[i];

		rb_shown_pair(a, b, rb_length_of(p->a), rb_length_of(p->b), p->style);
		if (!strcmp(a, p->a_text) && !strcmp(b, p->b_text))
			continue;
		print_error("row %zu: got %s and %s, want %s and %s\n", i, a, b,
			    p->a_text, p->b_text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(shows_no_false_zero),
		cmocka_unit_test(shows_what_is_needed),
		cmocka_unit_test(tells_two_apart),
	};

	return cmocka_run_group_tests_name("shown", tests, NULL, NULL);
}
