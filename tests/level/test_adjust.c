/* SPDX-License-Identifier: MIT */
/* test_adjust.c - misclosures spread over the setups. */
#include "levels.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "by setups; a point moves with its setup",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "T,,3,,6\n"
	  "R,,,2,\n"
	  "A,,,,0.98\n",
	  "3 A benchmark 100.00 HI 104.00 adjusted 100.0000\n"
	  "4 S intermediate 99.00 adjusted 98.9900\n"
	  "5 T turning point 98.00 HI 101.00 adjusted 97.9900\n"
	  "6 R intermediate 99.00 adjusted 98.9800\n"
	  "7 A benchmark 100.02 adjusted 100.0000\n", false },
	{ "by distance",
	  "tolerance,0.02\n"
	  "adjust,distance\n"
	  "point,bm,bs,is,fs,bs dist,fs dist\n"
	  "A,100,4,,,30,\n"
	  "T,,3,,6,10,30\n"
	  "A,,,,0.98,,10\n",
	  "4 A benchmark 100.00 HI 104.00 adjusted 100.0000\n"
	  "5 T turning point 98.00 HI 101.00 adjusted 97.9850\n"
	  "6 A benchmark 100.02 adjusted 100.0000\n", false },
	{ "by distance, one section after the other",
	  "tolerance,0.02\n"
	  "adjust,distance\n"
	  "point,bm,bs,is,fs,bs dist,fs dist\n"
	  "A,100,4,,,30,\n"
	  "T,,3,,6,10,30\n"
	  "A,,3,,0.98,30,10\n"
	  "R,,5,,4,10,30\n"
	  "A,,,,3.98,,10\n",
	  "4 A benchmark 100.00 HI 104.00 adjusted 100.0000\n"
	  "5 T turning point 98.00 HI 101.00 adjusted 97.9850\n"
	  "6 A benchmark 100.02 HI 103.00 adjusted 100.0000\n"
	  "7 R turning point 99.00 HI 104.00 adjusted 98.9850\n"
	  "8 A benchmark 100.02 adjusted 100.0000\n", false },
	{ "a setup of a closed chain and of an open one goes with the closed one",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "B,98.01,,,6\n"
	  "T,,,,5\n"
	  "T,,3,,\n"
	  "E,,,,2\n",
	  "3 A benchmark 100.00 HI 104.00 adjusted 100.0000\n"
	  "4 S intermediate 99.00 adjusted 99.0100\n"
	  "5 B benchmark 98.00 adjusted 98.0100\n"
	  "6+7 T turning point 99.00 HI 102.00 adjusted 99.0100\n"
	  "8 E end 100.00\n", false },
	{ "not asked for",
	  "tolerance,0.02\n"
	  "adjust,none\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,,,3.98\n",
	  "4 A benchmark 100.00 HI 104.00\n"
	  "5 A benchmark 100.02\n", false },
	{ "beyond the tolerance",
	  "tolerance,0.01\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,,,3.98\n",
	  "3 A benchmark 100.00 HI 104.00\n"
	  "4 A benchmark 100.02\n", false },
	{ "beyond the tolerance, all the same",
	  "tolerance,0.01\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,0.98\n",
	  "3 A benchmark 100.00 HI 104.00 adjusted 100.0000\n"
	  "4 T turning point 98.00 HI 101.00 adjusted 97.9900\n"
	  "5 A benchmark 100.02 adjusted 100.0000\n", true },
	{ "without a tolerance",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,,,3.98\n",
	  "2 A benchmark 100.00 HI 104.00\n"
	  "3 A benchmark 100.02\n", false },
	{ "an open section is not",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "E,,,,3.98\n",
	  "3 A benchmark 100.00 HI 104.00\n"
	  "4 E end 100.02\n", false },
	{ "a spur moves with the point on which it stands",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,0.98\n"
	  "T,,2,,\n"
	  "S,,1,,1.5\n"
	  "R,,,2,\n",
	  "3 A benchmark 100.00 HI 104.00 adjusted 100.0000\n"
	  "4 T turning point 98.00 HI 101.00 adjusted 97.9900\n"
	  "5 A benchmark 100.02 adjusted 100.0000\n"
	  "6 T turning point 98.00 HI 100.00 adjusted 97.9900\n"
	  "7 S turning point 98.50 HI 99.50 adjusted 98.4900\n"
	  "8 R intermediate 97.50 adjusted 97.4900\n", false },
	{ "the next section starts unmoved",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,3,,5.98\n"
	  "S,,,1,\n"
	  "A,,,,1.02\n",
	  "3 A benchmark 100.00 HI 104.00 adjusted 100.0000\n"
	  "4 B benchmark 98.02 HI 101.00 adjusted 98.0000\n"
	  "5 S intermediate 100.00 adjusted 100.0200\n"
	  "6 A benchmark 99.98 adjusted 100.0000\n", false },
	{ "two known points from one setup land on both",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,,,5.99\n"
	  "C,99,,,5.01\n",
	  "3 A benchmark 100.00 HI 104.00 adjusted 100.0000\n"
	  "4 B benchmark 98.01 adjusted 98.0000\n"
	  "5 C benchmark 98.99 adjusted 99.0000\n", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_shots), 0);
}

/* To the nanometre: a known point that begins a section is not moved at all, and the last
 * one lands on what is known. */
static void ends_are_where_they_are_known(void **state)
{
	struct levels l = levels_of("tolerance,0.02\npoint,known elevation,bs,is,fs\n"
				    "A,100,4,,\nT,,3,,6\nR,,3,,3\nA,,,,0.98\n",
				    false);

	(void)state;
	assert_non_null(l.adjusted);
	assert_int_equal(rb_shot_correction(l.adjusted, 0).nm, 0);
	assert_int_equal(rb_shot_correction(l.adjusted, 1).nm, -RB_FOOT / 150);
	assert_int_equal(rb_shot_correction(l.adjusted, 2).nm, -2 * RB_FOOT / 150);
	assert_int_equal(rb_shot_correction(l.adjusted, 3).nm, -RB_FOOT / 50);
	assert_int_equal(rb_shot_adjusted(l.adjusted, 3).nm, 100 * RB_FOOT);
	rb_arena_free(l.arena);
}

/* The tape's length may stand in either row of a turning point. */
static void below_a_point(void **state)
{
	/* clang-format off */
	static const struct { const char *rows; int64_t below; /* hundredths; -1: none */ } dips[] = {
		{ "R,,,,6,2\nR,,3,,,\n",  9600 },
		{ "R,,,,6,\nR,,3,,,1.5\n", 9650 },
		{ "R,,,,6,\nR,,3,,,\n",   -1 },
		{ "R,,3,,6,2\n",          9600 },
		{ "R,,,6,,2\n",           9600 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof dips / sizeof *dips; i++) {
		char csv[200];
		struct levels l;
		int64_t nm = dips[i].below < 0 ? RB_NOT_GIVEN_NM
					       : dips[i].below * (RB_FOOT / 100);

		snprintf(csv, sizeof csv,
			 "point,known elevation,bs,is,fs,measure down\nA,100,4,,,\n%s",
			 dips[i].rows);
		l = levels_of(csv, false);
		if (!l.adjusted || rb_shot_below(l.adjusted, 1).nm != nm) {
			print_error("row %zu\n", i);
			wrong++;
		}
		rb_arena_free(l.arena);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(ends_are_where_they_are_known),
		cmocka_unit_test(below_a_point),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
