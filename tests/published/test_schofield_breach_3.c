/* SPDX-License-Identifier: MIT */
/*
 * test_schofield_breach_3.c - a line with two turning points.
 *
 * W. Schofield and M. Breach, Engineering Surveying, ch. 3, an exercise on collimation:
 * data from memory, results computed here.  With every backsight 100 m and every
 * foresight 30 m, a line of sight that rises by 6 minutes of arc puts the end 3 x 70 m x
 * tan 6' = 0.366 m out.
 */
#include "run_book.h"

/* clang-format off */
static const struct printed_row exercise[] = {
	{ "BM",  "112.28", "1.143", "", "", "113.423", NULL, "112.28", NULL },
	{ "2",   "", "", "1.765", "", NULL, "-0.622", "111.658", NULL },
	{ "3",   "", "", "2.566", "", NULL, "-0.801", "110.857", NULL },
	{ "TP1", "", "1.390", "", "3.819", "110.994", "-1.253", "109.604", NULL },
	{ "5",   "", "", "2.262", "", NULL, "-0.872", "108.732", NULL },
	{ "6",   "", "", "0.664", "", NULL, "+1.598", "110.330", NULL },
	{ "TP2", "", "3.722", "", "0.433", "114.283", "+0.231", "110.561", NULL },
	{ "8",   "", "", "2.886", "", NULL, "+0.836", "111.397", NULL },
	{ "9",   "", "", "1.618", "", NULL, "+1.268", "112.665", NULL },
	{ "TBM", "", "", "", "0.616", NULL, "+1.002", "113.667", NULL },
};
/* clang-format on */

static void exercise_on_collimation(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\n",
		.row = exercise,
		.rows = sizeof exercise / sizeof *exercise,
		.sum_backsight = "6.255",
		.sum_foresight = "4.868",
		.rises = "4.935",
		.falls = "3.548",
		.setups = 3,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(exercise_on_collimation),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
