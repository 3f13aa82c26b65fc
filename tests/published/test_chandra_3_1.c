/* SPDX-License-Identifier: MIT */
/*
 * test_chandra_3_1.c - a rise-and-fall page.
 *
 * A. M. Chandra, Surveying: Problem Solving with Theory and Objective Type Questions, ch.
 * 3, example 3.1: values from memory, the arithmetic computed here; the page agrees with
 * itself three ways.
 */
#include "run_book.h"

/* clang-format off */
static const struct printed_row example[] = {
	{ "BM",  "58.250", "0.578", "", "", "58.828", NULL, "58.250", NULL },
	{ "2",   "", "", "0.933", "", NULL, "-0.355", "57.895", NULL },
	{ "3",   "", "", "1.768", "", NULL, "-0.835", "57.060", NULL },
	{ "4",   "", "", "2.450", "", NULL, "-0.682", "56.378", NULL },
	{ "CP1", "", "0.567", "", "2.005", "57.390", "+0.445", "56.823", NULL },
	{ "6",   "", "", "1.888", "", NULL, "-1.321", "55.502", NULL },
	{ "7",   "", "", "1.181", "", NULL, "+0.707", "56.209", NULL },
	{ "CP2", "", "0.612", "", "1.679", "56.323", "-0.498", "55.711", NULL },
	{ "9",   "", "", "0.705", "", NULL, "-0.093", "55.618", NULL },
	{ "10",  "", "", "", "1.810", NULL, "-1.105", "54.513", NULL },
};
/* clang-format on */

static void example_3_1(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\n",
		.row = example,
		.rows = sizeof example / sizeof *example,
		.sum_backsight = "1.757",
		.sum_foresight = "5.494",
		.rises = "1.152",
		.falls = "4.889",
		.setups = 3,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(example_3_1),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
