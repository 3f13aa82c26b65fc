/* SPDX-License-Identifier: MIT */
/*
 * test_survey_review_8.c - a short line from one benchmark to another point, in feet.
 *
 * Civil Engineering Survey Review, 3rd ed., ch. 8 "Leveling", table 8-1 and fig. 8-A.
 * Heights of instrument and the elevation of BM2: read.  The rest: computed here.
 */
#include "run_book.h"

/* clang-format off */
static const struct printed_row rows[] = {
	{ "BM1", "107.34", "7.25", "", "",      "114.59", NULL,    "107.34", NULL },
	{ "TP1", "",       "9.66", "", "1.07",  "123.18", "+6.18", "113.52", NULL },
	{ "TP2", "",       "8.09", "", "0.48",  "130.79", "+9.18", "122.70", NULL },
	{ "BM2", "",       "",     "", "10.70", NULL,     "-2.61", "120.09", NULL },
};
/* clang-format on */

static void table_8_1(void **state)
{
	const struct printed_page page = {
		.keys = "",
		.row = rows,
		.rows = sizeof rows / sizeof *rows,
		.sum_backsight = "25.00",
		.sum_foresight = "12.25",
		.rises = "15.36",
		.falls = "2.61",
		.setups = 3,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(table_8_1) };

	return cmocka_run_group_tests_name("Survey Review, table 8-1", tests, NULL, NULL);
}
