/* SPDX-License-Identifier: MIT */
/*
 * test_rise_and_fall_question.c - fourteen staff readings by rise and fall.
 *
 * "Rise and fall method", worked question 1 of a teaching text (dreamcivil.com): the
 * instrument is moved after the 5th and the 11th reading, in metres.  Reduced levels and
 * totals are read; heights of instrument are computed here.
 */
#include "run_book.h"

/* clang-format off */
static const struct printed_row question[] = {
	{ "BM",  "100.000", "0.485", "", "", "100.485", NULL, "100.000", NULL },
	{ "2",   "", "", "1.210", "", NULL, "-0.725", "99.275", NULL },
	{ "3",   "", "", "1.635", "", NULL, "-0.425", "98.850", NULL },
	{ "4",   "", "", "3.395", "", NULL, "-1.760", "97.090", NULL },
	{ "CP1", "", "0.650", "", "3.775", "97.360", "-0.380", "96.710", NULL },
	{ "6",   "", "", "1.400", "", NULL, "-0.750", "95.960", NULL },
	{ "7",   "", "", "1.795", "", NULL, "-0.395", "95.565", NULL },
	{ "8",   "", "", "2.575", "", NULL, "-0.780", "94.785", NULL },
	{ "9",   "", "", "3.375", "", NULL, "-0.800", "93.985", NULL },
	{ "CP2", "", "1.735", "", "3.895", "95.200", "-0.520", "93.465", NULL },
	{ "11",  "", "", "0.635", "", NULL, "+1.100", "94.565", NULL },
	{ "12",  "", "", "", "1.605", NULL, "-0.970", "93.595", NULL },
};
/* clang-format on */

static void fourteen_readings(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\n",
		.row = question,
		.rows = sizeof question / sizeof *question,
		.sum_backsight = "2.870",
		.sum_foresight = "9.275",
		.rises = "1.100",
		.falls = "7.505",
		.setups = 3,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(fourteen_readings),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
