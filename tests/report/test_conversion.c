/* SPDX-License-Identifier: MIT */
/* test_conversion.c - ratios as decimal numbers, and the nearest mark of a tape. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "report/convert_steps.h"

/* clang-format off */
static const struct {
	struct rb_ratio a;
	enum rb_unit unit;
	int decimals, least;
	const char *text;
	bool exact;
} written[] = {
	{ { RB_FOOT, 1, true },       RB_FEET,        4, 4, "1.0000",   true },
	{ { RB_FOOT, 1, true },       RB_FEET,        4, 1, "1.0",      true },
	{ { RB_FOOT, 1, true },       RB_FEET,        4, 0, "1",        true },
	{ { RB_FOOT, 1, true },       RB_FEET_INCHES, 1, 1, "1.0",      true },
	{ { RB_FOOT, 1, true },       RB_INCHES,      2, 0, "12",       true },
	{ { RB_FOOT, 1, true },       RB_METRES,      4, 0, "0.3048",   true },
	{ { RB_FOOT, 1, true },       RB_METRES,      3, 0, "0.305",    false },
	{ { RB_FOOT, 1, true },       RB_MILLIMETRES, 1, 0, "304.8",    true },
	{ { RB_FOOT, 7, true },       RB_FEET,        9, 0, "0.142857143", false },
	{ { -RB_FOOT, 7, true },      RB_FEET,        4, 0, "-0.1429",  false },
	{ { -1, 1, true },            RB_METRES,      4, 4, "0.0000",   false },
	{ { 0, 1, true },             RB_METRES,      4, 0, "0",        true },
	/* half, away from zero; and half of a nanometre's part, from the ratio itself */
	{ { RB_METRE, 20, true },     RB_METRES,      1, 1, "0.1",      false },
	{ { -RB_METRE, 20, true },    RB_METRES,      1, 1, "-0.1",     false },
	{ { 99999999, 2, true },      RB_METRES,      1, 1, "0.0",      false },
	/* bare numbers: no unit is looked at */
	{ { 5, 2, false },            RB_METRES,      6, 0, "2.5",      true },
	{ { 2, 3, false },            RB_FEET,        6, 0, "0.666667", false },
	/* what does not fit with so many decimals has fewer */
	{ { INT64_C(1) << 61, 1, false }, RB_FEET,    6, 0, "2305843009213693952", true },
};

static const struct {
	const char *input;
	int fraction;
	int64_t sixtyfourths; /* of the mark */
	const char *left;     /* to 6 decimals of an inch */
	int order;
} marks[] = {
	{ "5.29",            16, 63 * 64 + 32,  "0.02",      1 },
	{ "5.29",            64, 63 * 64 + 31,  "0.004375",  1 },
	{ "5'-3 1/2\"",      16, 63 * 64 + 32,  "0.0",       0 },
	{ "1.613 m",         16, 63 * 64 + 32,  "-0.003937", -1 },
	{ "1/32\"",          16, 4,             "0.03125",   1 }, /* half a mark: away */
	{ "-1/32\"",         16, -4,            "-0.03125",  -1 },
	{ "11.99\"",         8,  12 * 64,       "0.01",      1 },
	{ "1' / 7",          16, 108,           "-0.026786", -1 },
	{ "8'-6 3/4\" / 3",  16, 34 * 64 + 16,  "0.0",       0 },
	/* nine nanometres and a third of one */
	{ "0.00000003 m / 3.21", 16, 0,         "0.0",       -1 },
};
/* clang-format on */

static void writes_ratios(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof written / sizeof *written; i++) {
		char text[RB_RATIO_TEXT];
		bool exact = rb_ratio_write(text, written[i].a, written[i].unit,
					    written[i].decimals, written[i].least);

		if (!strcmp(text, written[i].text) && exact == written[i].exact)
			continue;
		print_error("row %zu: '%s' (exact %d), not '%s'\n", i, text, exact,
			    written[i].text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void finds_the_nearest_mark(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof marks / sizeof *marks; i++) {
		const struct rb_conversion_style style = { RB_FEET, marks[i].fraction,
							   -1 };
		struct rb_conversion c;
		char left[RB_RATIO_TEXT];
		bool read = rb_conversion_make(&c, marks[i].input, &style);
		rb_length mark = read ? rb_conversion_mark(&c) : rb_length_none();
		int order = read ? rb_conversion_left(left, &c, 6, 1) : 7;

		if (mark.nm == marks[i].sixtyfourths * RB_SIXTYFOURTH &&
		    order == marks[i].order && !strcmp(left, marks[i].left))
			continue;
		print_error("'%s': mark %lld nm, left %s, order %d\n", marks[i].input,
			    (long long)mark.nm, read ? left : "-", order);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* A product of which less than a nanometre is lost is not told as exact. */
static void says_what_was_rounded(void **state)
{
	const struct rb_conversion_style style = { RB_FEET, 64, -1 };
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_phrase phrase;
	struct rb_conversion c;

	(void)state;
	rb_phrase_init(&phrase, arena);
	assert_true(rb_conversion_make(&c, "0.99 in / 6000000007 * 6000000001", &style));
	rb_conversion_tell_notations(&phrase, &c);
	assert_non_null(strstr(phrase.text, "0.99 in x 64 = 63.36 64ths (rounded): the "
					    "nearest mark is 63, 63/64 in"));
	rb_phrase_clear(&phrase);
	assert_true(rb_conversion_make(&c, "0.99 in", &style));
	rb_conversion_tell_notations(&phrase, &c);
	assert_non_null(strstr(phrase.text, "0.99 in x 64 = 63.36 64ths: the "));
	rb_arena_free(arena);
}

static void knows_one_length(void **state)
{
	const struct rb_conversion_style style = { RB_FEET, 16, -1 };
	struct rb_conversion c;

	(void)state;
	assert_true(rb_conversion_make(&c, "5.291667", &style));
	assert_true(rb_conversion_is_one(&c));
	assert_true(c.reading.sixtyfourth);
	assert_true(rb_conversion_make(&c, "5' * 2", &style));
	assert_false(rb_conversion_is_one(&c));
	assert_false(rb_conversion_make(&c, "5' * 2'", &style));
	assert_int_equal(c.worked.refusal, RB_EXPRESSION_SQUARE);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writes_ratios),
		cmocka_unit_test(finds_the_nearest_mark),
		cmocka_unit_test(says_what_was_rounded),
		cmocka_unit_test(knows_one_length),
	};

	return cmocka_run_group_tests_name("conversion", tests, NULL, NULL);
}
