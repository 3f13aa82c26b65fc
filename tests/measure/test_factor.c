/* SPDX-License-Identifier: MIT */
/* test_factor.c - bare numbers in an expression, and how far each is read. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "measure/factor.h"

/* clang-format off */
static const struct {
	const char *text;
	bool fraction, comma;
	int64_t num, den; /* den 0: no number */
	int read;         /* bytes */
} cases[] = {
	{ "2",                true,  false, 2,    1,   1 },
	{ "2.50 ",            true,  false, 5,    2,   4 },
	{ ".5",               true,  false, 1,    2,   2 },
	{ "0",                true,  false, 0,    1,   1 },
	{ "1/2",              true,  false, 1,    2,   3 },
	{ "6/4",              true,  false, 3,    2,   3 },
	{ "1/2",              false, false, 1,    1,   1 },
	{ "1 1/2",            true,  false, 3,    2,   5 },
	{ "1 1/2",            false, false, 3,    2,   5 },
	{ "1 1",              true,  false, 1,    1,   1 },
	{ "2.0 1/2",          true,  false, 2,    1,   3 }, /* no mixed number */
	{ "1/2/3",            true,  false, 1,    2,   3 },
	{ "1.5/2",            true,  false, 3,    2,   3 },
	{ "1/2.5",            true,  false, 1,    1,   1 },
	{ "1/0",              true,  false, 1,    1,   1 },
	{ "1/",               true,  false, 1,    1,   1 },
	{ "1,5",              true,  true,  3,    2,   3 },
	{ "999999999999999",  true,  false, 999999999999999, 1, 15 },
	{ "1,5",              true,  false, 0,    0,   0 },
	{ "1.2.3",            true,  false, 0,    0,   0 },
	{ "1000000000000000", true,  false, 0,    0,   0 },
	{ "12345678.12345678", true, false, 0,    0,   0 },
	{ "-2",               true,  false, 0,    0,   0 },
	{ "",                 true,  false, 0,    0,   0 },
	{ "x",                true,  false, 0,    0,   0 },
};
/* clang-format on */

static void reads(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct rb_reading_rules rules = { RB_FEET, RB_OF_TAPE,
							cases[i].comma,
							rb_length_none() };
		const char *text = cases[i].text;
		struct rb_ratio got = { 0, 0, false };
		bool read = rb_factor_scan(&text, &rules, cases[i].fraction, &got);

		if (read == (cases[i].den != 0) &&
		    text - cases[i].text == cases[i].read &&
		    (!read || (got.num == cases[i].num && got.den == cases[i].den)))
			continue;
		print_error("'%s': %d, %lld/%lld, %d bytes\n", cases[i].text, read,
			    (long long)got.num, (long long)got.den,
			    (int)(text - cases[i].text));
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(reads) };

	return cmocka_run_group_tests_name("factor", tests, NULL, NULL);
}
