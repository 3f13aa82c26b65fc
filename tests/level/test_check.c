/* SPDX-License-Identifier: MIT */
/* test_check.c - sights onto points that had an elevation: rules 6 and 7. */
#include "levels.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "onto a known point",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,,6.01,\n"
	  "A,,,,4\n",
	  "section 0 line 4 -0.01\n", false },
	{ "onto a point seen before",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "S,,,5.03,\n"
	  "S,,,5.01,\n"
	  "A,,,,4\n",
	  "section 0 line 5 -0.03\n"
	  "section 0 line 6 0.02\n", false },
	{ "from a spur, told with the section on which it stands",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "S,,,5,\n"
	  "A,,,,1\n"
	  "T,,2,,\n"
	  "S,,,4.05,\n",
	  "section 0 line 8 -0.05\n", false },
	{ "with its own section each",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "A,,3,,4\n"
	  "S,,,4,\n"
	  "S,,,4.5,\n"
	  "A,,,,3\n",
	  "section 1 line 6 0.00\n"
	  "section 1 line 7 -0.50\n", false },
	{ "on known points and again, in the order of the book",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "S,,,5.03,\n"
	  "B,98,,6.01,\n"
	  "S,,,5.04,\n"
	  "A,,3,,4\n"
	  "B,,,5.05,\n"
	  "A,,,,3\n",
	  "section 0 line 5 -0.03\n"
	  "section 0 line 6 -0.01\n"
	  "section 0 line 7 -0.01\n"
	  "section 1 line 9 -0.05\n", false },
	{ "the last of nine points",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S1,,,1,\nS2,,,2,\nS3,,,3,\nS4,,,4,\nS5,,,5,\nS6,,,6,\nS7,,,7,\n"
	  "S8,,,8,\n"
	  "S8,,,8.01,\n"
	  "A,,,,4\n",
	  "section 0 line 12 -0.01\n", false },
	{ "in both of two sections",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "S,,,5.03,\n"
	  "A,,3,,4\n"
	  "S,,,4.5,\n"
	  "A,,,,3\n",
	  "section 0 line 5 -0.03\n"
	  "section 1 line 7 -0.47\n", false },
	{ "turning points, ground and nameless points are none",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,6,\n"
	  "T,,3,,6\n"
	  "T,,,3,\n"
	  ",,,2,\n"
	  ",,,3,\n"
	  "cl,,,2,\n"
	  "cl,,,3,\n"
	  "A,,,,1\n",
	  "", false },
};

/* What is more than the section allows is told, in the order of the sections. */
static const struct level_case told[] = {
	{ "known and reached again",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,,6.03,\n"
	  "S,,,5,\n"
	  "S,,,5.02,\n"
	  "S,,,5.05,\n"
	  "A,,,,4\n",
	  "4 check-differs\n7 reached-again\n", false },
	{ "with each section, the first first",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "S,,,5.03,\n"
	  "A,,3,,4\n"
	  "S,,,4.5,\n"
	  "A,,,,3\n",
	  "5 reached-again\n7 reached-again\n", false },
	{ "a hub and the ground beside it",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs,rod on\n"
	  "A,100,4,,,\n"
	  "S,,,5,,hub\n"
	  "S,,,5.41,,ground\n"
	  "S,,,5.92,,ground\n"
	  "A,,,,4,\n",
	  "6 reached-again\n", false },
	{ "a hub, and by the key the ground beside it",
	  "tolerance,0.02\n"
	  "rod on,ground\n"
	  "point,known elevation,bs,is,fs,rod on\n"
	  "A,100,4,,,\n"
	  "S,,,5,,hub\n"
	  "S,,,5.41,,\n"
	  "A,,,,4,\n",
	  "", false },
	{ "where nothing is said of the rod it stood on the ground",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs,rod on\n"
	  "A,100,4,,,\n"
	  "S,,,5,,hub\n"
	  "S,,,5.41,,\n"
	  "S,,,5.03,,hub\n"
	  "S,,,5.44,,ground\n"
	  "A,,,,4,\n",
	  "6 reached-again\n7 reached-again\n", false },
	{ "by the length of the section: over 200 m of levels 4.47 mm",
	  "unit,m\n"
	  "tolerance,10 mm sqrt(km)\n"
	  "point,known elevation,bs,is,fs,bs distance,fs distance\n"
	  "A,100,4,,,100,\n"
	  "S,,,5,,,\n"
	  "S,,,5.004,,,\n"
	  "S,,,5.009,,,\n"
	  "A,,,,4,,100\n",
	  "7 reached-again\n", false },
	{ "without a tolerance nothing is more than allowed",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "S,,,5.41,\n"
	  "A,,,,4\n",
	  "0 no-tolerance\n", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_checks), 0);
	assert_int_equal(WRONG(told, say_findings), 0);
}

/* The cell is that of the sight, in whichever column it was booked. */
static void the_sight_is_marked(void **state)
{
	struct levels l = levels_of("tolerance,0.02\npoint,known elevation,bs,is,fs\n"
				    "A,100,4,,\nS,,,5,\nS,,,5.05,\nS,,,,5.1\nA,,,,4\n",
				    false);

	(void)state;
	assert_int_equal(l.findings.count, 2);
	assert_int_equal(l.findings.item[0]->place.line, 5);
	assert_int_equal(l.findings.item[0]->place.cell, 3);
	assert_int_equal(l.findings.item[1]->place.line, 6);
	assert_int_equal(l.findings.item[1]->place.cell, 4);
	rb_arena_free(l.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(the_sight_is_marked),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
