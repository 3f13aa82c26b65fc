/* SPDX-License-Identifier: MIT */
/*
 * test_mahun_c16.c - a loop over two pages of a field book, in feet.
 *
 * J. Mahun, Open Access Surveying Library, Elevations, ch. C "Differential leveling
 * notes", part 3 "Multiple pages", fig. C-16.  Heights of instrument and elevations:
 * read. Rises, falls and adjusted elevations: computed here.
 */
#include "run_book.h"

/* clang-format off */
static const struct printed_row rows[] = {
	{ "BM Red", "893.56", "9.73",  "", "",      "903.29", NULL,    "893.56", "893.5600" },
	{ "L",      "",       "10.39", "", "2.88",  "910.80", "+6.85", "900.41", "900.4044" },
	{ "TP1",    "",       "6.02",  "", "8.26",  "908.56", "+2.13", "902.54", "902.5289" },
	{ "M",      "",       "11.35", "", "1.63",  "918.28", "+4.39", "906.93", "906.9133" },
	{ "Q",      "",       "3.23",  "", "1.88",  "919.63", "+9.47", "916.40", "916.3778" },
	{ "R",      "",       "1.09",  "", "5.66",  "915.06", "-2.43", "913.97", "913.9422" },
	{ "T",      "",       "5.96",  "", "7.69",  "913.33", "-6.60", "907.37", "907.3367" },
	{ "TP2",    "",       "3.87",  "", "9.03",  "908.17", "-3.07", "904.30", "904.2611" },
	{ "V",      "",       "1.03",  "", "10.81", "898.39", "-6.94", "897.36", "897.3156" },
	{ "BM Red", "",       "",      "", "4.78",  NULL,     "-3.75", "893.61", "893.5600" },
};
/* clang-format on */

static const struct printed_page loop = {
	.keys = "tolerance,0.10 ft\n",
	.row = rows,
	.rows = sizeof rows / sizeof *rows,
	.sum_backsight = "52.67",
	.sum_foresight = "52.62",
	.rises = "22.84",
	.falls = "22.79",
	.misclosure = "0.05",
	.setups = 9,
	.verdict = RB_CLOSES,
};

static void the_whole_loop(void **state)
{
	(void)state;
	assert_int_equal(wrong_on_page(&loop), 0);
}

/* The check of each page, as printed: 893.56 + 40.72 - 20.31 = 913.97, which page 2 takes
 * over, and 913.97 + 11.95 - 32.31 = 893.61. */
static void page_by_page(void **state)
{
	struct printed_row first[6], second[5];
	const struct printed_page pages[] = {
		{ .keys = "",
		  .row = first,
		  .rows = 6,
		  .sum_backsight = "40.72",
		  .sum_foresight = "20.31",
		  .setups = 5,
		  .verdict = RB_OPEN },
		{ .keys = "",
		  .row = second,
		  .rows = 5,
		  .sum_backsight = "11.95",
		  .sum_foresight = "32.31",
		  .setups = 4,
		  .verdict = RB_OPEN },
	};

	(void)state;
	memcpy(first, rows, sizeof first);
	memcpy(second, rows + 5, sizeof second);
	for (size_t i = 0; i < 6; i++)
		first[i].adjusted = NULL;
	for (size_t i = 0; i < 5; i++)
		second[i].adjusted = NULL;
	first[5].backsight = "";
	first[5].height_of_instrument = NULL;
	second[0].known = "913.97";
	second[0].foresight = "";
	second[0].rise = NULL;
	assert_int_equal(wrong_on_page(&pages[0]), 0);
	assert_int_equal(wrong_on_page(&pages[1]), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_whole_loop),
		cmocka_unit_test(page_by_page),
	};

	return cmocka_run_group_tests_name("Mahun, fig. C-16", tests, NULL, NULL);
}
