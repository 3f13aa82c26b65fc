/* SPDX-License-Identifier: MIT */
/*
 * test_road_profile.c - a road profile with cross sections.
 *
 * "Profile and cross section leveling", assignment 5 of a university course (a copy that
 * had lost its table; the columns are put back, and sums and levels then agree with the
 * printed formation).  Peg D is 5.555 at both ends; adjusted levels are computed here.
 */
#include "run_book.h"

/* clang-format off */
static const struct printed_row profile[] = {
	{ "Peg D", "5.555", "1.630", "", "", "7.185", NULL, "5.555", "5.5550" },
	{ "40 CL", "", "1.230", "", "1.005", "7.410", "+0.625", "6.180", "6.1783" },
	{ "40 4L", "", "", "0.850", "", NULL, "+0.380", "6.560", "6.5567" },
	{ "40 2L", "", "", "0.910", "", NULL, "-0.060", "6.500", "6.4967" },
	{ "40 2R", "", "", "1.310", "", NULL, "-0.400", "6.100", "6.0967" },
	{ "40 4R", "", "", "1.710", "", NULL, "-0.400", "5.700", "5.6967" },
	{ "50 CL", "", "", "1.100", "", NULL, "+0.610", "6.310", "6.3067" },
	{ "50 4L", "", "", "0.890", "", NULL, "+0.210", "6.520", "6.5167" },
	{ "50 2L", "", "", "1.110", "", NULL, "-0.220", "6.300", "6.2967" },
	{ "50 2R", "", "", "1.390", "", NULL, "-0.280", "6.020", "6.0167" },
	{ "50 4R", "", "", "1.600", "", NULL, "-0.210", "5.810", "5.8067" },
	{ "60 CL", "", "1.390", "", "1.260", "7.540", "+0.340", "6.150", "6.1467" },
	{ "60 4L", "", "", "1.025", "", NULL, "+0.365", "6.515", "6.5100" },
	{ "60 2L", "", "", "0.960", "", NULL, "+0.065", "6.580", "6.5750" },
	{ "60 2R", "", "", "1.490", "", NULL, "-0.530", "6.050", "6.0450" },
	{ "60 4R", "", "", "1.590", "", NULL, "-0.100", "5.950", "5.9450" },
	{ "70 CL", "", "", "2.020", "", NULL, "-0.430", "5.520", "5.5150" },
	{ "Peg D", "", "", "", "1.980", NULL, "+0.040", "5.560", "5.5550" },
};
/* clang-format on */

static void profile_closes(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\ntolerance,5 mm sqrt(setups)\n",
		.row = profile,
		.rows = sizeof profile / sizeof *profile,
		.sum_backsight = "4.250",
		.sum_foresight = "4.245",
		.rises = "2.635",
		.falls = "2.630",
		.misclosure = "0.005",
		.setups = 3,
		.verdict = RB_CLOSES,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

/* The source's formation rises 1 in 100 from 40 to 70, where it meets the ground, so it
 * works on the levels as they are before adjustment: 5.320 at 50, 5.420 at 60 (printed).
 */
static void formation_on_raw_levels(void **state)
{
	static const struct {
		const char *point, *cut;
		int64_t below; /* millimetres under the ground at 70 */
	} cuts[] = {
		{ "40 CL", "0.960", 300 },
		{ "50 CL", "0.990", 200 },
		{ "60 CL", "0.730", 100 },
		{ "70 CL", "0.000", 0 },
	};
	char csv[2048] = "unit,m\npoint,known elevation,bs,is,fs\n";
	size_t used = strlen(csv);
	struct run run;
	int wrong = 0, found = 0;

	(void)state;
	for (size_t i = 0; i < sizeof profile / sizeof *profile; i++)
		used += (size_t)snprintf(csv + used, sizeof csv - used,
					 "%s,%s,%s,%s,%s\n", profile[i].point,
					 profile[i].known, profile[i].backsight,
					 profile[i].intermediate, profile[i].foresight);
	run = run_text(csv, false);
	assert_non_null(run.adjusted);
	for (uint32_t i = 0; i < run.reduced->shots; i++)
		for (size_t c = 0; c < sizeof cuts / sizeof *cuts; c++) {
			const struct rb_shot *shot = &run.reduced->shot[i];
			rb_length formation = { INT64_C(5520) * RB_MILLIMETRE -
						cuts[c].below * RB_MILLIMETRE };

			if (strcmp(rb_book_typed(run.book, shot->row), cuts[c].point) !=
			    0)
				continue;
			wrong += wrong_length(cuts[c].point,
					      rb_length_sub(shot->elevation, formation),
					      cuts[c].cut, RB_METRES, true);
			found++;
		}
	run_end(&run);
	assert_int_equal(found, 4);
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(profile_closes),
		cmocka_unit_test(formation_on_raw_levels),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
