/* SPDX-License-Identifier: MIT */
/* test_totals.c - sums along chains, shared or not. */
#include "levels.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "intermediate sights count in rise and fall",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,2,\n"
	  "R,,,7,\n"
	  "A,,,,4\n",
	  "A>A 1 setups 4.00 4.00 up 5.00 down 5.00 off 0.00 not judged\n", false },
	{ "the turning sight is taken last, wherever it is booked",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,,6\n"
	  "S,,,2,\n"
	  "T,,3,,\n"
	  "A,,,,1\n",
	  "A>A 2 setups 7.00 7.00 up 4.00 down 4.00 off 0.00 not judged\n", false },
	{ "shared beginnings",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,,6\n"
	  "S,,,2,\n"
	  "B,98,,,6\n"
	  "R,,,1,\n"
	  "T,,3,,\n"
	  "B,,,,3\n"
	  "U,,,,2\n"
	  "U,,5,,\n"
	  "A,,,,4\n",
	  "A>B 1 setups 4.00 6.00 up 5.00 down 7.00 off 0.00 closes, adjusted\n"
	  "A>B 2 setups 7.00 9.00 up 8.00 down 10.00 off 0.00 closes, adjusted\n"
	  "A>A 3 setups 12.00 12.00 up 9.00 down 9.00 off 0.00 closes, adjusted\n", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_sections), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
