/* SPDX-License-Identifier: MIT */
/* test_letters.c - how many letters two words are apart. */
#include "notes.h"

#include "notes/sheet.h"

/* clang-format off */
static const struct letters_case {
	const char *a, *b;
	int most, apart; /* most + 1: more than that */
} letters_cases[] = {
	{ "",             "",              2, 0 },
	{ "unit",         "unit",          1, 0 },
	{ "unit",         "units",         1, 1 }, /* one more */
	{ "tolerence",    "tolerance",     2, 1 }, /* another */
	{ "tolrance",     "tolerance",     2, 1 }, /* one less */
	{ "tolreance",    "tolerance",     2, 1 }, /* neighbours exchanged */
	{ "ab",           "ba",            2, 1 },
	{ "adjsut",       "adjust",        2, 1 },
	{ "toleranec e",  "tolerance",     2, 2 },
	{ "proejctt",     "project",       2, 2 },
	{ "",             "ab",            2, 2 },
	{ "ab",           "",              2, 2 },
	{ "abc",          "xyz",           3, 3 },
	{ "abc",          "xyz",           2, 3 },
	{ "rod",          "instrument",    2, 3 }, /* not worked out: too far by length */
	{ "abcd",         "abcdefgh",      3, 4 },
	{ "kitten",       "sitting",       9, 3 },
	/* An exchanged pair is not taken apart again: that is 3 in the alignment used. */
	{ "ca",           "abc",           9, 3 },
};
/* clang-format on */

static void letters_apart(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof letters_cases / sizeof *letters_cases; i++) {
		const struct letters_case *c = &letters_cases[i];
		size_t a = strlen(c->a), b = strlen(c->b);
		int there = rb_letters_apart(c->a, a, c->b, b, c->most);
		int back = rb_letters_apart(c->b, b, c->a, a, c->most);

		if (there == c->apart && back == c->apart)
			continue;
		print_error("\"%s\", \"%s\": %d, %d\n", c->a, c->b, there, back);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void long_words_are_far_apart(void **state)
{
	char a[65], b[65];

	(void)state;
	memset(a, 'a', sizeof a);
	memset(b, 'a', sizeof b);
	b[30] = 'b';
	assert_int_equal(rb_letters_apart(a, 64, b, 64, 2), 1);
	assert_int_equal(rb_letters_apart(a, 65, b, 65, 2), 3);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(letters_apart),
		cmocka_unit_test(long_words_are_far_apart),
	};

	return cmocka_run_group_tests_name("letters", tests, NULL, NULL);
}
