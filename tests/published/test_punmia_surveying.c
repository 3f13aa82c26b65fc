/* SPDX-License-Identifier: MIT */
/*
 * test_punmia_surveying.c - a line of levels with three change points.
 *
 * B. C. Punmia, Surveying, vol. I, levelling chapter (attribution from memory); the
 * readings are read in a web copy, the levels computed here.
 */
#include "run_book.h"

/* clang-format off */
static const struct printed_row line[] = {
	{ "BM",  "432.384", "2.228", "", "", "434.612", NULL, "432.384", NULL },
	{ "2",   "", "", "1.606", "", NULL, "+0.622", "433.006", NULL },
	{ "CP1", "", "2.090", "", "0.988", "435.714", "+0.618", "433.624", NULL },
	{ "4",   "", "", "2.864", "", NULL, "-0.774", "432.850", NULL },
	{ "CP2", "", "0.602", "", "1.262", "435.054", "+1.602", "434.452", NULL },
	{ "CP3", "", "1.044", "", "1.982", "434.116", "-1.380", "433.072", NULL },
	{ "7",   "", "", "", "2.684", NULL, "-1.640", "431.432", NULL },
};
/* clang-format on */

static void three_change_points(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\n",
		.row = line,
		.rows = sizeof line / sizeof *line,
		.sum_backsight = "5.964",
		.sum_foresight = "6.916",
		.rises = "2.842",
		.falls = "3.794",
		.setups = 4,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

/* The copy takes a fall across the change point, from the foresight 0.988 to the
 * backsight 2.090 on it, and gets 149.794 for the last point: that must not come out. */
static void no_fall_across_a_change_point(void **state)
{
	struct run run = run_text("unit,m\npoint,known elevation,bs,is,fs\n"
				  "BM,150.250,2.228,,\n2,,,1.606,\nCP1,,2.090,,0.988\n"
				  "4,,,2.864,\nCP2,,0.602,,1.262\nCP3,,1.044,,1.982\n"
				  "7,,,,2.684\n",
				  false);
	static const char *const levels[] = { "150.250", "150.872", "151.490", "150.716",
					      "152.318", "150.938", "149.298" };
	int wrong = 0;

	(void)state;
	assert_non_null(run.adjusted);
	assert_int_equal(run.reduced->shots, 7);
	for (uint32_t i = 0; i < run.reduced->shots; i++) {
		wrong += wrong_length("level", run.reduced->shot[i].elevation, levels[i],
				      RB_METRES, true);
		wrong += run.reduced->shot[i].elevation.nm == INT64_C(149794000000);
	}
	run_end(&run);
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(three_change_points),
		cmocka_unit_test(no_fall_across_a_change_point),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
