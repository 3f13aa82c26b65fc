/* SPDX-License-Identifier: MIT */
/* test_reduce.c - heights of instrument and elevations: rules 2, 3 and 9. */
#include "levels.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "one-row and two-row turning points",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4.27,,\n"
	  "TP,,5.11,,6.03\n"
	  "X,,,,3.52\n"
	  "X,,4.90,,\n"
	  "BM,,,,4.74\n",
	  "2 BM benchmark 100.00 HI 104.27\n"
	  "3 TP turning point 98.24 HI 103.35\n"
	  "4+5 X turning point 99.83 HI 104.73\n"
	  "6 BM benchmark 99.99\n", false },
	{ "other sights between the two rows",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "TP,,,,6\n"
	  "S,,,5,\n"
	  "TP,,3,,\n"
	  "E,,,,2\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 TP turning point 98.00\n"
	  "4 S intermediate 99.00\n"
	  "5 TP turning point 98.00 HI 101.00\n"
	  "6 E end 99.00\n", false },
	{ "the known elevation starts the next height of instrument",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "BM2,95,3,,8.9\n"
	  "E,,,,2\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 BM2 benchmark 95.10 HI 98.00\n"
	  "4 E end 96.00\n", false },
	{ "a known point on two rows",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "BM2,95,,,8.9\n"
	  "BM2,,3,,\n"
	  "E,,,,2\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3+4 BM2 benchmark 95.10 HI 98.00\n"
	  "5 E end 96.00\n", false },
	{ "known elevations from a row without a sight, wherever it stands",
	  "point,known elevation,bs,is,fs\n"
	  "BM,,4,,\n"
	  "A,,,5,\n"
	  "BM2,,,,8.9\n"
	  "BM2,95,,,\n"
	  "BM,100,,,\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 A intermediate 99.00\n"
	  "4 BM2 benchmark 95.10\n", false },
	{ "the elevation that opens the book",
	  "point,bs,fs,elevation\n"
	  "BM,4,,100\n"
	  "TP,3,6,98\n"
	  "E,,2,99\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 TP turning point 98.00 HI 101.00\n"
	  "4 E end 99.00\n", false },
	{ "sums, remarks and comments are no points",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "# a note,,,,\n"
	  "TP,,3,,6\n"
	  "lunch,,,,\n"
	  "E,,,,2\n"
	  "sum,,7,,8\n"
	  "misclosure,,,,0.01\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "4 TP turning point 98.00 HI 101.00\n"
	  "6 E end 99.00\n", false },
	{ "an inverted rod is added",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "BEAM,,,-3.5,\n"
	  "SOFFIT,,,(2.25),\n"
	  "E,,,,2\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 BEAM intermediate 107.50\n"
	  "4 SOFFIT intermediate 106.25\n"
	  "5 E end 102.00\n", false },
	{ "a turning point on an inverted rod",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "R,,-2,,-6\n"
	  "E,,,,1\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 R turning point 110.00 HI 108.00\n"
	  "4 E end 107.00\n", false },
	{ "names that differ in case, blanks and dashes",
	  "point,known elevation,bs,is,fs\n"
	  "BM 1,100,4,,\n"
	  "TP\xE2\x80\x93""1,,,,6\n"
	  "tp-1,,3,,\n"
	  "bm  1,,,,1\n",
	  "2 BM 1 benchmark 100.00 HI 104.00\n"
	  "3+4 TP\xE2\x80\x93""1 turning point 98.00 HI 101.00\n"
	  "5 bm  1 benchmark 100.00\n", false },
	{ "the last elevation counts",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "TP,,3,,6\n"
	  "TP,,,,4\n"
	  "A,,2,,5\n"
	  "TP,,1,,3\n"
	  "E,,,,1\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 TP turning point 98.00 HI 101.00\n"
	  "4 TP intermediate 97.00\n"
	  "5 A turning point 96.00 HI 98.00\n"
	  "6 TP turning point 95.00 HI 96.00\n"
	  "7 E end 95.00\n", false },
	{ "a foresight goes before an intermediate sight",
	  "point,known elevation,bs,is,fs\n"
	  "BM,100,4,,\n"
	  "TP,,,,6\n"
	  "TP,,,6.1,\n"
	  "TP,,3,,\n"
	  "E,,,,1\n",
	  "2 BM benchmark 100.00 HI 104.00\n"
	  "3 TP turning point 98.00\n"
	  "4 TP intermediate 97.90\n"
	  "5 TP turning point 98.00 HI 101.00\n"
	  "6 E end 100.00\n", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_shots), 0);
}

/* Did you mean: a name of the same letters, or a reached one with words behind it; never
 * another number. */
static void what_a_backsight_may_have_meant(void **state)
{
	static const struct {
		const char *reached, *sighted, *meant; /* NULL: nothing is near */
	} names[] = {
		{ "TP-1", "TP1", "TP-1" },        { "TP-1", "T.P. 1", "TP-1" },
		{ "TP-1", "TP-1 spike", "TP-1" }, { "TP-1 spike", "TP-1", "TP-1 spike" },
		{ "TP-1", "TP-2", NULL },         { "TP-1", "TP-11", NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		struct lines csv = { .used = 0 };
		const struct rb_finding *found = NULL;
		struct levels l;

		say(&csv, "point,known elevation,bs,fs\nBM,100,4,\n%s,,,3\n%s,,5,\n",
		    names[i].reached, names[i].sighted);
		l = levels_of(csv.text, false);
		assert_null(l.reduced);
		for (size_t j = 0; j < l.findings.count; j++)
			if (l.findings.item[j]->code == RB_CODE_NOT_REACHED)
				found = l.findings.item[j];
		assert_non_null(found);
		assert_string_equal(found->argument[0].text, names[i].sighted);
		if (names[i].meant)
			assert_string_equal(found->argument[1].text, names[i].meant);
		else
			assert_int_equal(found->argument[1].kind, RB_NOTHING);
		rb_arena_free(l.arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(what_a_backsight_may_have_meant),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
