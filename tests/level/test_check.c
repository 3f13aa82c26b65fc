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
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_checks), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
