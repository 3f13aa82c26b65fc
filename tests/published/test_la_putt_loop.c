/* SPDX-License-Identifier: MIT */
/*
 * test_la_putt_loop.c - a loop adjusted by distance.
 *
 * J. P. La Putt, Elementary Surveying, a sample problem on adjusting a level circuit
 * (attribution from memory): the problem is read, corrections and adjusted elevations are
 * computed here.  The source gives elevations and distances from the start only; the
 * readings are made up so that those come out, one setup from mark to mark.
 */
#include "run_book.h"

/* clang-format off */
static const struct {
	const char *mark, *metres, *foresight; /* length of the leg; with a backsight of 200 */
	const char *observed, *correction, *adjusted;
} marks[] = {
	{ "BM1", "",     "",        "728.730", "0.0000", "728.730" },
	{ "BM2", "5245", "145.517", "783.213", "0.0420", "783.255" },
	{ "BM3", "6026", "91.449",  "891.764", "0.0902", "891.854" },
	{ "BM4", "6447", "248.569", "843.195", "0.1417", "843.337" },
	{ "BM5", "4246", "303.487", "739.708", "0.1757", "739.884" },
	{ "BM6", "3283", "236.752", "702.956", "0.2020", "703.158" },
	{ "BM1", "5253", "174.470", "728.486", "0.2440", "728.730" },
};

/* It misses by 0.244 m over 30.5 km: only rough levelling allows that (coefficients as
 * taught in India, read). */
static const struct {
	const char *tolerance;
	enum rb_verdict verdict;
} classes[] = {
	{ "100 mm sqrt(km)", RB_CLOSES },
	{ "25 mm sqrt(km)",  RB_BEYOND },
	{ "12 mm sqrt(km)",  RB_BEYOND },
};
/* clang-format on */

#define MARKS (sizeof marks / sizeof *marks)

static struct run run_loop(const char *tolerance)
{
	char csv[2048];
	size_t used = (size_t)snprintf(
		csv, sizeof csv,
		"unit,m\nrod,1000\nadjust,distance\ntolerance,%s\n"
		"point,known elevation,bs,fs,bs dist,fs dist\nBM1,728.730,200,,0,\n",
		tolerance);

	for (size_t i = 1; i < MARKS; i++)
		used += (size_t)snprintf(csv + used, sizeof csv - used,
					 "%s,,%s,%s,%s,%s\n", marks[i].mark,
					 i + 1 < MARKS ? "200" : "", marks[i].foresight,
					 i + 1 < MARKS ? "0" : "", marks[i].metres);
	return run_text(csv, false);
}

static void corrections_by_distance(void **state)
{
	struct run run = run_loop(classes[0].tolerance);
	int wrong = 0;

	(void)state;
	assert_non_null(run.adjusted);
	assert_int_equal(run.reduced->shots, MARKS);
	for (uint32_t i = 0; i < MARKS; i++) {
		wrong += wrong_length(marks[i].mark, run.reduced->shot[i].elevation,
				      marks[i].observed, RB_METRES, true);
		wrong += wrong_length(marks[i].mark, rb_shot_correction(run.adjusted, i),
				      marks[i].correction, RB_METRES, false);
		wrong += wrong_length(marks[i].mark, rb_shot_adjusted(run.adjusted, i),
				      marks[i].adjusted, RB_METRES, false);
	}
	wrong += wrong_length("length", run.sections->section[0].length, "30500",
			      RB_METRES, true);
	run_end(&run);
	assert_int_equal(wrong, 0);
}

static void classes_of_levelling(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof classes / sizeof *classes; i++) {
		struct run run = run_loop(classes[i].tolerance);

		assert_non_null(run.adjusted);
		assert_int_equal(run.sections->section[0].verdict, classes[i].verdict);
		run_end(&run);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(corrections_by_distance),
		cmocka_unit_test(classes_of_levelling),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
