/* SPDX-License-Identifier: MIT */
/* test_keeper.c - names of sums, and of points that only look like one. */
#include "notes.h"

#include "notes/keeper.h"

#define NOT        RB_NOT_KEEPERS
#define DOUBT      RB_KEEPERS_DOUBT
#define SUM        RB_KEEPERS_SUM
#define DIFFERENCE RB_KEEPERS_DIFFERENCE
#define MISCLOSURE RB_KEEPERS_MISCLOSURE
#define OTHER      RB_KEEPERS_OTHER

/* clang-format off */
static const struct name_case {
	const char *name;
	enum rb_keeper kind;
} name_cases[] = {
	{ "sum", SUM },               { "Total", SUM },             { "SUMS:", SUM },
	{ "Totals =", SUM },          { "total.", SUM },            { "Page 1 total", SUM },
	{ "Total p. 2", SUM },        { "page 1 of 2 totals", SUM }, { "sum bs", SUM },
	{ "TOTAL BS", SUM },          { "Sum (BS)", SUM },          { "BS total", SUM },
	{ "Sum B.S.", SUM },          { "Total F/S", SUM },         { "sum_fs", SUM },
	{ "SumFS", SUM },             { "Sum of backsights", SUM }, { "Total BS & FS", SUM },
	{ "sub-total", SUM },         { "Sub total", SUM },         { "SUBTOTAL", SUM },
	{ "sub\u2013total", SUM },    { "Grand  Total", SUM },      { "\u03A3", SUM },
	{ "\u03A3BS", SUM },          { "\u2211 F.S.", SUM },       { "Carried forward", SUM },
	{ "Total c/f", SUM },         { "Brought fwd.", SUM },      { "Total to date", SUM },
	{ "loop A total", SUM },      { "Total distance", SUM },    { "Checksum", SUM },
	{ "Difference", DIFFERENCE }, { "Diff.", DIFFERENCE },      { "diff of sums", DIFFERENCE },
	{ "BS - FS diff", DIFFERENCE },
	{ "misclosure", MISCLOSURE }, { "Closure", MISCLOSURE },    { "Error of closure", MISCLOSURE },
	{ "closing error", MISCLOSURE }, { "Error:", MISCLOSURE },  { "Loop 2 misclosure", MISCLOSURE },
	{ "MIS-CLOSURE", MISCLOSURE },
	{ "Arithmetic check", OTHER }, { "Arith. check", OTHER },   { "Allowable error", OTHER },
	{ "max allowed misclosure", OTHER },
	/* points */
	{ "", NOT },                  { "BM-1", NOT },              { "TP 1", NOT },
	{ "SUMP-1", NOT },            { "Sump", NOT },              { "Summit", NOT },
	{ "Total station", NOT },     { "total stn", NOT },       { "Sumac tree", NOT },
	{ "Totem pole", NOT },        { "Enclosure", NOT },         { "Summer St total loss dept", NOT },
	{ "S", NOT },                 { "T", NOT },                 { "Page 1", NOT },
	{ "BS", NOT },                { "check", NOT },             { "Bottom of footing BF", NOT },
	{ "Terror Cr", NOT },         { "\u03A3x", DOUBT },         { "Perrault", NOT },
	/* nobody can tell */
	{ "Total 1", DOUBT },         { "Sum-2", DOUBT },           { "Closure pin", DOUBT },
	{ "Sum of MH-1 to MH-4", DOUBT }, { "Misclosure at BM-1", DOUBT },
	{ "Wine total", DOUBT },
};
/* clang-format on */

static void names(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof name_cases / sizeof *name_cases; i++) {
		enum rb_keeper kind = rb_keeper_of(name_cases[i].name);

		if (kind == name_cases[i].kind)
			continue;
		print_error("'%s': got %d, wanted %d\n", name_cases[i].name, (int)kind,
			    (int)name_cases[i].kind);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* A remark that strayed among the names is no sum, however it begins. */
static void long_texts(void **state)
{
	char text[4096];

	(void)state;
	for (size_t i = 0; i + 4 < sizeof text; i += 4)
		memcpy(text + i, "sum ", 5);
	assert_int_equal(rb_keeper_of(text), RB_NOT_KEEPERS);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(names),
		cmocka_unit_test(long_texts),
	};

	return cmocka_run_group_tests_name("keeper", tests, NULL, NULL);
}
