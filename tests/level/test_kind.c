/* SPDX-License-Identifier: MIT */
/* test_kind.c - what each point is: rules 4 to 7. */
#include "levels.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "many book intermediate sights as foresights",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "A,,,,5\n"
	  "B,,,,5.5\n"
	  "TP,,3,,6\n"
	  "C,,,,2\n"
	  "D,,,,2.5\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 A intermediate 99.00\n"
	  "4 B intermediate 98.50\n"
	  "5 TP turning point 98.00 HI 101.00\n"
	  "6 C intermediate 99.00\n"
	  "7 D end 98.50\n", false },
	{ "the turning foresight, booked before others",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "TP,,,,6\n"
	  "A,,,,5\n"
	  "B,,,5.5,\n"
	  "TP,,3,,\n"
	  "E,,,,1\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 TP turning point 98.00\n"
	  "4 A intermediate 99.00\n"
	  "5 B intermediate 98.50\n"
	  "6 TP turning point 98.00 HI 101.00\n"
	  "7 E end 100.00\n", false },
	{ "turned on an intermediate sight",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "TP,,,6,\n"
	  "A,,,,5\n"
	  "TP,,3,,\n"
	  "E,,,,1\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 TP turning point 98.00\n"
	  "4 A intermediate 99.00\n"
	  "5 TP turning point 98.00 HI 101.00\n"
	  "6 E end 100.00\n", false },
	{ "an intermediate sight onto a known point is a check",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "BM2,98,,6.01,\n"
	  "TP,,3,,5\n"
	  "BM2,,,,4\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 BM2 check 97.99\n"
	  "4 TP turning point 99.00 HI 102.00\n"
	  "5 BM2 benchmark 98.00\n", false },
	{ "a backsight on a checked known point starts from it",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "BM2,98,,6.01,\n"
	  "A,,,,5\n"
	  "BM2,,3,,\n"
	  "E,,,,1\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 BM2 check 97.99\n"
	  "4 A end 99.00\n"
	  "5 BM2 benchmark 98.00 HI 101.00\n"
	  "6 E end 100.00\n", false },
	{ "reached again",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "A,,,5,\n"
	  "A,,,5.01,\n"
	  "ground,,,5,\n"
	  "Ground,,,6,\n"
	  "(spot),,,5,\n"
	  "(spot),,,6,\n"
	  "BM,,,,4\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 A intermediate 99.00\n"
	  "4 A check 98.99\n"
	  "5 ground intermediate 99.00\n"
	  "6 Ground intermediate 98.00\n"
	  "7 (spot) intermediate 99.00\n"
	  "8 (spot) intermediate 98.00\n"
	  "9 BM benchmark 100.00\n", false },
	{ "another surface of a point is no check of the one before",
	  "rod on,hub\n"
	  "point,known elevation,bs,is,fs,rod on\n"
	  "BM,100,4,,,\n"
	  "A,,,5,,ground\n"
	  "A,,,4.5,,\n"
	  "A,,,5.01,,ground\n"
	  "A,,,4,,invert\n"
	  "A,,,4.51,,\n"
	  "B,,,4.5,,\n"
	  "B,,,,5,ground\n",
	  "3 BM benchmark 100.00 HI 104.00\n"
	  "4 A intermediate 99.00\n"
	  "5 A intermediate 99.50\n"
	  "6 A check 98.99\n"
	  "7 A intermediate 100.00\n"
	  "8 A check 99.49\n"
	  "9 B intermediate 99.50\n"
	  "10 B end 99.00\n", false },
	{ "where nothing is said of the rod it stood on the ground",
	  "point,known elevation,bs,is,fs,rod on\n"
	  "BM,100,4,,,\n"
	  "A,,,5,,hub\n"
	  "A,,,5.41,,\n"
	  "A,,,5.42,,ground\n"
	  "A,,,5.43,,\n"
	  "BM,,,,4,\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 A intermediate 99.00\n"
	  "4 A intermediate 98.59\n"
	  "5 A check 98.58\n"
	  "6 A check 98.57\n"
	  "7 BM benchmark 100.00\n", false },
	{ "reached again, and the end of an open section: that it stays",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "A,,,5,\n"
	  "A,,,,5.01\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 A intermediate 99.00\n"
	  "4 A end 98.99\n", false },
	{ "a turning point of two rows, and a row of words between them",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "TP,,,,6\n"
	  "lunch,,,,\n"
	  "TP,,3,,\n"
	  "E,,,,1\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3+5 TP turning point 98.00 HI 101.00\n"
	  "6 E end 100.00\n", false },
	{ "a setup from a turning point of an earlier run leaves the end before it an end",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "TP,,,,6\n"
	  "BM,,3,,\n"
	  "E,,,,1\n"
	  "TP,,2,,\n"
	  "F,,,,1\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 TP turning point 98.00\n"
	  "4 BM benchmark 100.00 HI 103.00\n"
	  "5 E end 102.00\n"
	  "6 TP turning point 98.00 HI 100.00\n"
	  "7 F end 99.00\n", false },
	{ "a foresight onto a known point in mid setup",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "BM2,98,,,6.01\n"
	  "A,,,,5\n"
	  "B,,,5.5,\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 BM2 benchmark 97.99\n"
	  "4 A intermediate 99.00\n"
	  "5 B intermediate 98.50\n", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_shots), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
