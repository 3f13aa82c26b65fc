/* SPDX-License-Identifier: MIT */
/* Blanks at which no line may end. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "report/blanks.h"

/* clang-format off */
static const struct word_case {
	const char *text;
	size_t word, kept; /* bytes of the first word; up to the first kept blank */
} cases[] = {
	{ "one two",            3, 7 },
	{ "0'-0 1/8\" high",    9, 4 },
	{ "0.02 ft, and",       8, 4 },
	{ "0.02 feet",          4, 9 },
	{ "2 %",                3, 1 },
	{ "1/8 in/ft is",       9, 3 },
	{ "5 ft 3 1/2 in then", 13, 1 },
	{ "14.28 - 14.29 = -0.01", 13, 5 },
	{ "9'-3\" - 9'-2\" x",     13, 5 },
	{ "1.5 - (-2) to",         10, 3 },
	{ "2 + 3.5 is",             7, 1 },
	{ "line 4 - and",           4, 12 },
	{ "BM - 4",                 2, 4 }, /* a dash goes with its number */
	{ "12 setups",          2, 9 },
	{ "3\nft",              1, 4 },
	{ "a 1/2",              1, 5 },
	{ " ft",                0, 3 },
	{ "",                   0, 0 },
};
/* clang-format on */

static void cases_hold(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		size_t word = rb_word_length(cases[i].text);
		size_t kept = rb_before_kept_blank(cases[i].text);

		if (word == cases[i].word && kept == cases[i].kept)
			continue;
		print_error("'%s': word %zu, kept %zu\n", cases[i].text, word, kept);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
	};

	return cmocka_run_group_tests_name("blanks", tests, NULL, NULL);
}
