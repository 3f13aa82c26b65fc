/* SPDX-License-Identifier: MIT */
/* test_section.c - verdicts and what is said of sections. */
#include "levels.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "exactly the tolerance closes",
	  "tolerance,0.01\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,,,4.01\n",
	  "", false },
	{ "a hair beyond does not",
	  "tolerance,0.0099\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,,,4.01\n",
	  "4 does-not-close\n", false },
	{ "a root of setups, compared as squares",
	  "unit,m\n"
	  "tolerance,5 mm sqrt(setups)\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,10,1,,\n"
	  "T,,1,,1\n"
	  "U,,1,,1\n"
	  "A,,,,1.009\n",
	  "5 same-reading\n"
	  "6 same-reading\n"
	  "7 does-not-close\n", false },
	{ "no tolerance is said once",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,4,,4.01\n"
	  "A,,,,4.01\n",
	  "0 no-tolerance\n", false },
	{ "an open section",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "E,,,,4.01\n",
	  "3 open-section\n", false },
	{ "lengths missing",
	  "tolerance,12 mm sqrt(km)\n"
	  "point,bm,bs,fs,bs dist,fs dist\n"
	  "A,100,4,,50,\n"
	  "T,,3,4,,50\n"
	  "A,,,3,,50\n",
	  "1 lengths-missing\n", false },
	{ "lengths missing in an open section are missing too",
	  "tolerance,12 mm sqrt(km)\n"
	  "point,bm,bs,fs\n"
	  "A,100,4,\n"
	  "E,,,3\n",
	  "1 lengths-missing\n", false },
	{ "adjusting by distance needs them too",
	  "tolerance,0.02\n"
	  "adjust,distance\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,,,4.01\n",
	  "2 lengths-missing\n", false },
	{ "sight limit and balance",
	  "tolerance,0.02\n"
	  "sight limit,100\n"
	  "balance limit,20\n"
	  "point,bm,bs,fs,bs dist,fs dist\n"
	  "A,100,4,,130,\n"
	  "A,,,4,,100\n",
	  "5 sight-limit\n"
	  "0 unbalanced\n", false },
	{ "the note keeper's sums of the sight lengths are no sights",
	  "tolerance,0.02\n"
	  "sight limit,100\n"
	  "balance limit,20\n"
	  "point,bm,bs,fs,bs dist,fs dist\n"
	  "A,100,4,,50,\n"
	  "T,,5,6,60,50\n"
	  "A,,,3,,60\n"
	  "sum,,9,9,110,110\n",
	  "", false },
	{ "limits, and no sight has a length",
	  "tolerance,0.02\n"
	  "sight limit,100\n"
	  "balance limit,20\n"
	  "point,bm,bs,fs\n"
	  "A,100,4.05,\n"
	  "T,,3,4\n"
	  "A,,,3.05\n",
	  "2 limit-not-judged\n", false },
	{ "a limit, and one sight of several has none",
	  "tolerance,0.02\n"
	  "balance limit,20\n"
	  "point,bm,bs,fs,bs dist,fs dist\n"
	  "A,100,4.05,,50,\n"
	  "T,,3,4,50,50\n"
	  "A,,,3.05,,\n",
	  "2 limit-not-judged\n", false },
	{ "a limit on an open run, its side shots without a length",
	  "sight limit,100\n"
	  "point,bm,bs,is,fs,bs dist,fs dist\n"
	  "A,100,4.05,,,50,\n"
	  "S,,,5.05,,,\n"
	  "T,,3,,4,50,50\n"
	  "S,,,5.05,,,\n",
	  "5 open-section\n", false },
	{ "checks beyond the tolerance",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,,6.05,\n"
	  "S,,,5,\n"
	  "S,,,5.03,\n"
	  "A,,,,4\n",
	  "4 check-differs\n"
	  "6 reached-again\n", false },
	{ "and within it",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "B,98,,6.02,\n"
	  "S,,,5,\n"
	  "S,,,5.02,\n"
	  "A,,,,4\n",
	  "", false },
	{ "a foresight without a name on which nothing hangs",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  ",,,,5.02\n"
	  "A,,,,4\n",
	  "", false },
	{ "the same before a turning point, and behind the one that closes",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  ",,,,5.02\n"
	  "T,,3,,6\n"
	  "A,,,,1\n"
	  ",,,,5\n",
	  "", false },
	{ "a foresight without a name that ends an open run",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,,5.02\n"
	  ",,,,6\n",
	  "4 no-name\n", false },
	{ "one that ends a spur",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,1\n"
	  "T,,2.02,,\n"
	  ",,,,6\n",
	  "7 no-name\n", false },
	{ "a sight before any backsight",
	  "point,known elevation,bs,is,fs\n"
	  "S,,,5,\n"
	  "A,100,4,,\n"
	  "A,,,,4\n",
	  "2 before-backsight\n", false },
	{ "a backsight on a point nobody reached",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,,4\n"
	  "T 1,,3,,\n"
	  "E,,,,1\n",
	  "4 not-reached\n", false },
	{ "a height of instrument beyond 10 km, told once",
	  "unit,m\npoint,known elevation,bs,is,fs\n"
	  "BM,9999,1.5,,\n"
	  "A,,,1.4,\n"
	  "B,,,,1.3\n",
	  "3 beyond-10-km\n", false },
	{ "an elevation beyond it",
	  "unit,m\npoint,known elevation,bs,is,fs\n"
	  "BM,-9999,0.5,,\n"
	  "A,,,1.4,\n"
	  "B,,,1.6,\n",
	  "5 beyond-10-km\n", false },
	{ "a backsight on a point that was only named",
	  "point,known elevation,bs,is,fs\n"
	  "T,,,,\n"
	  "A,100,4.27,,\n"
	  "B,,,,5.11\n"
	  "T,,3.33,,\n"
	  "E,,,,1.22\n",
	  "5 not-reached\n", false },
	{ "two backsights with nothing between",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "A,,4.1,,\n"
	  "A,,,,4.1\n",
	  "0 tenths-only\n"
	  "4 no-sight-between\n", false },
	{ "readings beyond the rod, one with its point lost",
	  "rod,13\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,13.12,,\n"
	  "B,,,,1312\n",
	  "3 beyond-rod\n"
	  "4 lost-point\n", false },
	{ "the same reading twice on a turning point",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,4.5,,4.5\n"
	  "A,,,,4\n",
	  "0 tenths-only\n"
	  "4 same-reading\n", false },
	{ "turned on an intermediate sight",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,5,\n"
	  "T,,5.1,,\n"
	  "A,,,,4.1\n",
	  "0 tenths-only\n"
	  "5 turned-on-intermediate\n", false },
	{ "the same point twice: a completed name",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T1,,3,,4.5\n"
	  "T1,,3.5,,2\n"
	  "A,,,,4\n",
	  "0 tenths-only\n"
	  "5 same-point-twice\n", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_findings), 0);
}

/* An open section that was checked on a known point: booked as a foresight the last of
 * these sights would have closed it. */
static void the_last_check_nearly_closed_it(void **state)
{
	static const struct {
		const char *rows;
		uint32_t line; /* of the sight; 0: there is none */
	} open[] = {
		{ "A,100,4,,\nB,98,,6.01,\nE,,,,5\n", 3 },
		{ "A,100,4,,\nB,98,,6.01,\nS,,,5,\nC,99,,5.02,\nS,,,5.01,\nE,,,,5\n", 5 },
		{ "A,100,4,,\nS,,,5,\nS,,,5.01,\nE,,,,5\n", 0 },
		{ "A,100,4,,\nE,,,,5\n", 0 },
		{ "A,100,4,,\nB,98,,6.01,\nA,,,,4\n", 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof open / sizeof *open; i++) {
		char text[300];
		struct levels l;
		const struct rb_check *check;

		snprintf(text, sizeof text, "point,known elevation,bs,is,fs\n%s",
			 open[i].rows);
		l = levels_of(text, false);
		assert_non_null(l.sections);
		check = rb_section_nearly_closed(l.sections, l.sections->section);
		assert_int_equal(
			check ? rb_book_line(l.book, l.reduced->shot[check->shot].row)
			      : 0,
			open[i].line);
		rb_arena_free(l.arena);
	}
}

/* By how much, of how much, and between which points; of an open one, where it began. */
static void verdicts_name_their_points(void **state)
{
	struct levels l = levels_of("tolerance,0.02\npoint,known elevation,bs,is,fs\n"
				    "A,100,4.00,,\nB,98,,,6.05\nB,,3.00,,\nC,99,,2.01,\n"
				    "E,,,,5.00\n",
				    false);
	const struct rb_finding *beyond = l.findings.item[0], *open = l.findings.item[1];

	(void)state;
	assert_int_equal(beyond->code, RB_CODE_DOES_NOT_CLOSE);
	assert_int_equal(beyond->argument[0].length.nm, -5 * (RB_FOOT / 100));
	assert_int_equal(beyond->argument[1].length.nm, 2 * (RB_FOOT / 100));
	assert_string_equal(beyond->argument[2].text, "A");
	assert_string_equal(beyond->argument[3].text, "B");
	assert_int_equal(open->code, RB_CODE_OPEN_SECTION);
	assert_string_equal(open->argument[0].text, "B");
	assert_string_equal(open->argument[1].text, "E");
	assert_string_equal(open->argument[2].text, "C");
	assert_int_equal(open->argument[3].length.nm, -(RB_FOOT / 100));
	rb_arena_free(l.arena);
}

/* A name of nearly the same letters, if that point was reached by then or is known. */
static void a_point_is_offered_that_is_known(void **state)
{
	static const struct {
		const char *rows, *offered; /* NULL: none */
	} names[] = {
		{ "A,100,4.27,,\nT,,,,4.01\nT 1,,3.33,,\nE,,,,1.22\n", "T" },
		{ "A,100,4.27,,\nE,,,,4.01\nT 1,,3.33,,\nT,,,,1.22\n", NULL },
		{ "A,100,4.27,,\nE,,,,4.01\nB 1,,3.33,,\nB,98,,,1.22\n", "B" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		char text[200];
		struct levels l;
		const struct rb_argument *a = NULL;

		snprintf(text, sizeof text, "point,known elevation,bs,is,fs\n%s",
			 names[i].rows);
		l = levels_of(text, false);
		for (size_t k = 0; k < l.findings.count; k++)
			if (l.findings.item[k]->code == RB_CODE_NOT_REACHED)
				a = &l.findings.item[k]->argument[1];
		assert_non_null(a);
		assert_int_equal(a->kind, names[i].offered ? RB_TEXT : RB_NOTHING);
		if (names[i].offered)
			assert_string_equal(a->text, names[i].offered);
		rb_arena_free(l.arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(the_last_check_nearly_closed_it),
		cmocka_unit_test(verdicts_name_their_points),
		cmocka_unit_test(a_point_is_offered_that_is_known),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
