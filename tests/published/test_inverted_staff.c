/* SPDX-License-Identifier: MIT */
/*
 * test_inverted_staff.c - roof points by an inverted staff.
 *
 * A textbook passage, "Underground levelling - inverted sights", read in a web copy that
 * does not name its book; all levels are printed.  Which of the four is the foresight is
 * chosen here: the upright one.
 */
#include "run_book.h"

/* clang-format off */
static const struct printed_row minus[] = {
	{ "BM",        "160.528", "2.185", "", "", "162.713", NULL, "160.528", NULL },
	{ "A (roof)",  "", "", "-3.045", "", NULL, "+5.230", "165.758", NULL },
	{ "B (roof)",  "", "", "-1.276", "", NULL, "-1.769", "163.989", NULL },
	{ "C (roof)",  "", "", "-3.412", "", NULL, "+2.136", "166.125", NULL },
	{ "D (floor)", "", "", "", "2.508", NULL, "-5.920", "160.205", NULL },
};
static const struct printed_row brackets[] = {
	{ "BM",        "160.528", "2.185", "", "", "162.713", NULL, "160.528", NULL },
	{ "A (roof)",  "", "", "(3.045)", "", NULL, "+5.230", "165.758", NULL },
	{ "B (roof)",  "", "", "(1.276)", "", NULL, "-1.769", "163.989", NULL },
	{ "C (roof)",  "", "", "(3.412)", "", NULL, "+2.136", "166.125", NULL },
	{ "D (floor)", "", "", "", "2.508", NULL, "-5.920", "160.205", NULL },
};
static const struct printed_row words[] = {
	{ "BM",        "160.528", "2.185", "", "", "162.713", NULL, "160.528", NULL },
	{ "A (roof)",  "", "", "inv 3.045", "", NULL, "+5.230", "165.758", NULL },
	{ "B (roof)",  "", "", "inv 1.276", "", NULL, "-1.769", "163.989", NULL },
	{ "C (roof)",  "", "", "inv 3.412", "", NULL, "+2.136", "166.125", NULL },
	{ "D (floor)", "", "", "", "2.508", NULL, "-5.920", "160.205", NULL },
};
/* clang-format on */

static void with_a_minus(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\n",
		.row = minus,
		.rows = sizeof minus / sizeof *minus,
		.sum_backsight = "2.185",
		.sum_foresight = "2.508",
		.rises = "7.366",
		.falls = "7.689",
		.setups = 1,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

static void in_brackets(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\n",
		.row = brackets,
		.rows = sizeof brackets / sizeof *brackets,
		.sum_backsight = "2.185",
		.sum_foresight = "2.508",
		.rises = "7.366",
		.falls = "7.689",
		.setups = 1,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

static void with_the_word(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\n",
		.row = words,
		.rows = sizeof words / sizeof *words,
		.sum_backsight = "2.185",
		.sum_foresight = "2.508",
		.rises = "7.366",
		.falls = "7.689",
		.setups = 1,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(with_a_minus),
		cmocka_unit_test(in_brackets),
		cmocka_unit_test(with_the_word),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
