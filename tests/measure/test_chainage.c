/* SPDX-License-Identifier: MIT */
/* test_chainage.c - distances along a line. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "written.h"

/* clang-format off */
static const struct chainage_case {
	const char *text;
	enum rb_unit unit;
	enum rb_refusal refusal;
	int64_t nm;   /* read */
	size_t where; /* refused */
} cases[] = {
	{ "0+00",       FT, RB_READ, 0, 0 },
	{ "0+50",       FT, RB_READ, 50 * RB_FOOT, 0 },
	{ "0+50",       FI, RB_READ, 50 * RB_FOOT, 0 },
	{ "0+50",       IN, RB_READ, 50 * RB_FOOT, 0 },
	{ "1+25.5",     FT, RB_READ, HUNDREDTHS(12550), 0 },
	{ "10+25.5",    FT, RB_READ, HUNDREDTHS(102550), 0 },
	{ "1+25.50 ft", M,  RB_READ, HUNDREDTHS(12550), 0 },
	{ "1+25.5'",    FT, RB_READ, HUNDREDTHS(12550), 0 },
	{ "0+050",      FT, RB_READ, 50 * RB_FOOT, 0 },
	{ "1+050",      M,  RB_READ, MILLI(1050000), 0 },
	{ "1+050.25",   M,  RB_READ, MILLI(1050250), 0 },
	{ "1+50",       M,  RB_READ, MILLI(150000), 0 },
	{ "0+15.2 m",   FT, RB_READ, MILLI(15200), 0 },
	{ " 0 + 50 ",   FT, RB_READ, 50 * RB_FOOT, 0 },
	{ "'0+50",      FT, RB_READ, 50 * RB_FOOT, 0 },
	{ "50",         FT, RB_READ, 50 * RB_FOOT, 0 },
	{ "150",        FT, RB_READ, 150 * RB_FOOT, 0 },
	{ "15.2 m",     FT, RB_READ, MILLI(15200), 0 },
	{ "12.5",       MM, RB_READ, MILLI(12500), 0 },
	{ "50'-6\"",    FI, RB_READ, FEET_64(50, 384), 0 },

	{ "",           FT, RB_REFUSE_EMPTY, 0, 0 },
	{ "+10",        FT, RB_REFUSE_TEXT, 0, 0 },
	{ "0+",         FT, RB_REFUSE_TEXT, 0, 2 },
	{ "1+5",        FT, RB_REFUSE_TEXT, 0, 2 },
	{ "1+5000",     FT, RB_REFUSE_TEXT, 0, 2 },
	{ "1.5+50",     FT, RB_REFUSE_TEXT, 0, 3 },
	{ "-1+50",      FT, RB_REFUSE_TEXT, 0, 2 },
	{ "1+50+20",    FT, RB_REFUSE_TEXT, 0, 4 },
	{ "1+50 x",     FT, RB_REFUSE_TEXT, 0, 5 },
	{ "1+25,5",     FT, RB_REFUSE_COMMA, 0, 2 },
	{ "-50",        FT, RB_REFUSE_NEGATIVE, 0, 0 },
	{ "999999+00",  FT, RB_REFUSE_LONG, 0, 0 },
	{ "1234567+00", FT, RB_REFUSE_TEXT, 0, 7 },
	{ "1.00E+05",   FT, RB_REFUSE_EXPONENT, 0, 0 },
	{ "2026-05-03", FT, RB_REFUSE_DATE, 0, 0 },
};
/* clang-format on */

static void chainages(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct chainage_case *c = &cases[i];
		/* The rod's length is no limit for a line. */
		const struct rb_reading_rules rules = { c->unit, RB_OF_ROD, false,
							rb_length_of(25 * RB_FOOT) };
		struct rb_reading got =
			rb_chainage_parse(c->text, strlen(c->text), &rules);

		/* What is offered for a part would lack the hundreds. */
		if (got.refusal == c->refusal && got.value.nm == c->nm &&
		    got.where == c->where &&
		    (got.maybes == 0 || strchr(c->text, '+') == NULL))
			continue;
		print_error("\"%s\": got refusal %d, %lld nm, at %zu\n", c->text,
			    (int)got.refusal, (long long)got.value.nm, got.where);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* The text need not end in NUL, and nothing behind it is looked at. */
static void reads_no_further_than_told(void **state)
{
	const struct rb_reading_rules rules = { FT, RB_OF_RUN, false, rb_length_none() };

	(void)state;
	assert_int_equal(rb_chainage_parse("1+509", 4, &rules).value.nm, 150 * RB_FOOT);
	assert_int_equal(rb_chainage_parse("0+ 50", 3, &rules).refusal, RB_REFUSE_TEXT);
	assert_int_equal(rb_chainage_parse("50+00", 2, &rules).value.nm, 50 * RB_FOOT);
	assert_int_equal(rb_chainage_parse(NULL, 0, &rules).refusal, RB_REFUSE_EMPTY);
}

static void takes_a_decimal_comma_where_the_file_has_it(void **state)
{
	const struct rb_reading_rules rules = { FT, RB_OF_RUN, true, rb_length_none() };
	struct rb_reading got = rb_chainage_parse("1+25,5", 6, &rules);

	(void)state;
	assert_int_equal(got.refusal, RB_READ);
	assert_int_equal(got.value.nm, HUNDREDTHS(12550));
	assert_int_equal(got.decimals, 1);
	assert_int_equal(got.unit, FT);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(chainages),
		cmocka_unit_test(reads_no_further_than_told),
		cmocka_unit_test(takes_a_decimal_comma_where_the_file_has_it),
	};

	return cmocka_run_group_tests_name("chainage", tests, NULL, NULL);
}
