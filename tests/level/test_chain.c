/* SPDX-License-Identifier: MIT */
/* test_chain.c - which chains of setups are sections: rules 5 and 8. */
#include "levels.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "two sections in a row",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T1,,3,,6\n"
	  "B,95,5,,6.01\n"
	  "T2,,4,,3\n"
	  "A,,,,1\n",
	  "A>B 2 setups 7.00 12.01 up 0.00 down 5.01 off -0.01 closes, adjusted\n"
	  "B>A 2 setups 9.00 4.00 up 5.00 down 0.00 off 0.00 closes, adjusted\n", false },
	{ "the run goes on behind the closing sight",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,,,6\n"
	  "T,,,,5\n"
	  "T,,3,,\n"
	  "A,,,,2\n",
	  "A>B 1 setups 4.00 6.00 up 0.00 down 2.00 off 0.00 closes, adjusted\n"
	  "A>A 2 setups 7.00 7.00 up 2.00 down 2.00 off 0.00 closes, adjusted\n", false },
	{ "the run goes on behind a closing sight that is not the first",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "B,98,,,6\n"
	  "T,,,,5\n"
	  "T,,3,,\n"
	  "E,,,,2\n",
	  "A>B 1 setups 4.00 6.00 up 0.00 down 2.00 off 0.00 closes, adjusted\n"
	  "A>E 2 setups 7.00 7.00 up 2.00 down 2.00 open\n", false },
	{ "the same, and it stays open",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,,,6\n"
	  "T,,,,5\n"
	  "T,,3,,\n"
	  "E,,,,2\n",
	  "A>B 1 setups 4.00 6.00 up 0.00 down 2.00 off 0.00 closes, adjusted\n"
	  "A>E 2 setups 7.00 7.00 up 2.00 down 2.00 open\n", false },
	{ "a spur is no section",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,1\n"
	  "T,,2,,\n"
	  "S,,,,1.5\n",
	  "A>A 2 setups 7.00 7.00 up 2.00 down 2.00 off 0.00 closes, adjusted\n", false },
	{ "a spur that hangs later where the run went on",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "BM-1,,5,,\n"
	  "BM-2,105,,,0.00\n"
	  "TP-1,,4,,3\n"
	  "BM-3,100,,,6\n"
	  "TP-1,,2,,\n"
	  "MH-1,,,1,\n"
	  "BM-1,100,,,\n",
	  "BM-1>BM-2 1 setups 5.00 0.00 up 5.00 down 0.00 off 0.00 closes, adjusted\n"
	  "BM-1>BM-3 2 setups 9.00 9.00 up 5.00 down 5.00 off 0.00 closes, adjusted\n", false },
	{ "a spur that closes is a section",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,1\n"
	  "T,,2,,\n"
	  "B,99,,,1\n",
	  "A>A 2 setups 7.00 7.00 up 2.00 down 2.00 off 0.00 closes, adjusted\n"
	  "A>B 2 setups 6.00 7.00 up 1.00 down 2.00 off 0.00 closes, adjusted\n", false },
	{ "an open chain",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "E,,,,1\n",
	  "A>E 2 setups 7.00 7.00 up 2.00 down 2.00 open\n", false },
	{ "intermediate sights only",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,5,\n"
	  "R,,,6,\n",
	  "A> 1 setups 4.00 up 0.00 down 2.00 open\n", false },
	{ "a backsight and nothing more",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n",
	  "A>T 1 setups 4.00 6.00 up 0.00 down 2.00 open\n", false },
	{ "two open chains that part: the later is the line",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "E,,,,1\n"
	  "T,,2,,\n"
	  "F,,,,1\n",
	  "A>F 2 setups 6.00 7.00 up 1.00 down 2.00 open\n", false },
	{ "two known points from one setup",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,,,6\n"
	  "C,99,,,5.01\n",
	  "A>B 1 setups 4.00 6.00 up 0.00 down 2.00 off 0.00 closes, adjusted\n"
	  "A>C 1 setups 4.00 5.01 up 0.99 down 2.00 off -0.01 closes, adjusted\n", false },
	{ "a loop on itself",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,,,4.01\n",
	  "A>A 1 setups 4.00 4.01 up 0.00 down 0.01 off -0.01 closes, adjusted\n", false },
	{ "one that hangs on a sight before the closing one is a spur",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,,3\n"
	  "B,102,,,2\n"
	  "T,,5,,\n"
	  "S,,,,1\n",
	  "A>B 1 setups 4.00 2.00 up 2.00 down 0.00 off 0.00 not judged\n", false },
	{ "two closed chains that part at a turning point",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,5,,3\n"
	  "B,102,,,4.01\n"
	  "T,,5,,\n"
	  "C,103,,,3.02\n",
	  "A>B 2 setups 9.00 7.01 up 1.99 down 0.00 off -0.01 not judged\n"
	  "A>C 2 setups 9.00 6.02 up 2.98 down 0.00 off -0.02 not judged\n", false },
	{ "a setup from which nothing was sighted",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,5,,3\n"
	  "T,,5.01,,\n"
	  "A,,,,6.01\n",
	  "A>A 2 setups 9.01 9.01 up 1.00 down 1.00 off 0.00 not judged\n", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_sections), 0);
}

/* From one known point to the next, time and again. */
static void known_points_in_a_row(void **state)
{
	enum { SECTIONS = 40 };
	char text[2000];
	size_t used = (size_t)snprintf(text, sizeof text,
				       "point,known elevation,bs,fs\nA,100,4,\n");
	struct levels l;

	(void)state;
	for (int i = 1; i < SECTIONS; i++)
		used += (size_t)snprintf(text + used, sizeof text - used, "A,,4,4.01\n");
	snprintf(text + used, sizeof text - used, "A,,,4.01\n");
	l = levels_of(text, false);
	assert_non_null(l.sections);
	assert_int_equal(l.sections->sections, SECTIONS);
	for (uint32_t i = 0; i < SECTIONS; i++)
		assert_int_equal(l.sections->section[i].misclosure.nm, -RB_FOOT / 100);
	rb_arena_free(l.arena);
}

/* From each setup of a long run a known point is sighted, so that as many sections share
 * their beginning: to sum each of them from its start would take minutes. */
static void shared_beginnings_are_summed_once(void **state)
{
	enum { SETUPS = 20000, ROW = 40 };
	static char text[SETUPS * 2 * ROW];
	size_t used = (size_t)snprintf(text, sizeof text,
				       "point,known elevation,bs,fs\nA,100,4,\n");
	struct levels l;

	(void)state;
	for (int i = 0; i < SETUPS; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "A,,,4\nT%d,,4,4\n", i);
	l = levels_of(text, false);
	assert_non_null(l.sections);
	assert_int_equal(l.sections->sections, SETUPS);
	assert_int_equal(l.sections->section[SETUPS - 1].sum_backsight.nm,
			 SETUPS * 4 * RB_FOOT);
	rb_arena_free(l.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(known_points_in_a_row),
		cmocka_unit_test(shared_beginnings_are_summed_once),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
