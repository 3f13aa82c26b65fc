/* SPDX-License-Identifier: MIT */
/* What a note keeper's sums, differences and misclosures may rightly be, and how finely
 * what is written must agree. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#include "level/hand_check.h"

/* Backsights 4.27, 5.11, 4.90; foresights 6.03, 3.52, 4.74, and 4.00 onto a manhole from
 * which nothing is carried on. */
#define HEAD "point,known elevation,bs,hi,is,fs,elevation,bs dist,fs dist\n"
#define PAGE_1                                                                           \
	"BM-1,100.00,4.27,104.27,,,,50,\nMH-1,,,,,4.00,100.27,,\n"                       \
	"TP-1,,5.11,103.35,,6.03,98.24,40,60\n"
#define PAGE_2 "TP-2,,4.90,104.73,,3.52,99.83,30,45\nBM-1,,,,,4.74,99.99,,35\n"

/* clang-format off */
static const struct sum_case {
	const char *after_1, *after_2; /* rows of sums */
	uint32_t wrong;
} sums[] = {
	{ "", "sum,,14.28,,,18.29,,,\n",           0 }, /* all foresights */
	{ "", "sum,,14.28,,,14.29,,,\n",           0 }, /* those that carry the levels on */
	{ "", "sum,,14.28,,,-18.29,,,\n",          0 }, /* they are taken off */
	{ "", "sum,,14.28,,,-14.29,,,\n",          0 },
	{ "", "sum,,14.28,,,-14.30,,,\n",          1 },
	{ "", "sum,,14.28,,,14.30,,,\n",           1 },
	{ "", "sum,,14.27,,,14.29,,,\n",           1 },
	{ "", "sum,,14.29,,,14.29,,,\n",           1 }, /* that is the foresights' */
	{ "", "sum,,9.38,,,,,,\n",                 1 },
	{ "", "sum,,,,,,-0.01,,\n",                0 }, /* of the sums */
	{ "", "sum,,,,,,0.01,,\n",                 0 },
	{ "", "sum,,,,,,-0.02,,\n",                1 },
	{ "", "sum,,0.00,,,,,,\n",                 1 },
	{ "", "sum,,14.28,,,18.29,-4.01,,\n",      0 }, /* of the sums as written */
	{ "", "sum,,14.28,,,18.29,-4.02,,\n",      1 },
	{ "", "sum,,,,,,398.33,,\n",               0 }, /* of the elevations */
	{ "", "sum,,,,,,298.33,,\n",               0 }, /* but the first */
	{ "", "sum,,,,,,298.34,,\n",               1 },
	{ "", "sum,,,,,,,120,140\n",               0 },
	{ "", "sum,,,,,,,121,140\n",               1 },
	{ "", "sum,,,,,,,120,141\n",               1 },

	{ "sum,,9.38,,,10.03,,,\n", "",            0 }, /* of the first page */
	{ "sum,,9.38,,,6.03,,,\n", "",             0 },
	{ "sum,,9.38,,,6.03,3.35,,\n", "",         0 },
	{ "sum,,9.38,,,6.04,,,\n", "",             1 },
	{ "sum,,9.38,,,10.03,,90,60\n", "sum,,4.90,,,8.26,,,\n", 0 },
	{ "sum,,9.38,,,10.03,,90,60\n", "sum,,14.28,,,18.29,,120,140\n", 0 },
	{ "sum,,9.38,,,10.03,,90,60\n", "sum,,4.90,,,8.26,-3.36,30,80\n", 0 },
	{ "sum,,9.38,,,10.03,,,\n", "sum,,4.90,,,8.26,199.82,,\n", 0 },
	{ "sum,,9.38,,,10.03,,,\n", "sum,,14.28,,,18.29,-3.36,,\n", 0 }, /* of the page */
	{ "sum,,9.38,,,10.03,,,\n", "sum,,14.28,,,14.29,,,\n", 0 }, /* from the top */
	{ "sum,,9.38,,,10.03,,,\n", "sum,,,,,,398.33,,\n", 0 },
	{ "sum,,9.38,,,10.03,,,\n", "sum,,4.90,,,8.27,,,\n", 1 },
	{ "sum,,9.38,,,10.03,,,\n", "sum,,4.90,,,8.26,199.83,,\n", 1 },

	{ "", "difference,,-0.01,,,,,,\n",         0 }, /* under any column, either sign */
	{ "", "difference,,,,,0.01,,,\n",          0 },
	{ "", "difference,,,,,,-0.01,,\n",         0 },
	{ "", "difference,,-4.01,,,,,,\n",         0 }, /* of all foresights */
	{ "", "difference,,4.01,,,,,,\n",          0 },
	{ "", "difference,,-0.02,,,,,,\n",         1 },
	{ "", "difference,,4.02,,,,,,\n",          1 },
	{ "", "difference,,,,,,,5,\n",             0 }, /* lengths have none */
	{ "sum,,9.38,,,10.03,,,\n", "difference,,-3.36,,,,,,\n", 0 },

	{ "", "misclosure,,,,,,-0.01,,\n",         0 },
	{ "", "misclosure,,,,,,0.01,,\n",          0 },
	{ "", "misclosure,,,,,,0.02,,\n",          1 },
	{ "", "misclosure,,,,,,,12,\n",            0 },
	{ "misclosure,,,,,,0.02,,\n", "",          0 }, /* nothing has closed yet */
};

/* 104'-3 1/16" less 6'-0 1/2" is 98'-2 9/16", 2.5625 in. */
#define IN_INCHES                                                                        \
	"unit,ft-in\npoint,known elevation,bs,hi,fs,elevation\n"                         \
	"BM,100'-0\",4'-3 1/16\",104'-3 1/16\",,\nE,,,,6'-0 1/2\","
#define IN_FEET "point,known elevation,bs,hi,fs,elevation\nBM,100.00,4.275,104.275,,\nE,,,,6.0417,"
#define IN_INCHES_ALONE                                                                  \
	"unit,in\npoint,known elevation,bs,hi,fs,elevation\nBM,1200,51.25,1251.25,,\nE,,,,72.5,"

static const struct place_case {
	const char *book, *written;
	bool wrong;
} places[] = {
	{ IN_INCHES, "98'-2 9/16\"",  false },
	{ IN_INCHES, "98'-2 5/8\"",   true },  /* the readings are finer than that */
	{ IN_INCHES, "98'-2 1/2\"",   true },
	{ IN_INCHES, "98'-2.6\"",     false }, /* tenths */
	{ IN_INCHES, "98'-2.5\"",     true },
	{ IN_INCHES, "98'-2.56\"",    false },
	{ IN_INCHES, "98'-2.55\"",    true },
	{ IN_INCHES, "98.21 ft",      false },
	{ IN_INCHES, "98.22 ft",      true },
	{ IN_FEET,   "98.2333",       false },
	{ IN_FEET,   "98.233",        false },
	{ IN_FEET,   "98.234",        true },
	{ IN_FEET,   "98'-2 13/16\"", false }, /* 98.2333 is 2.7996 in */
	{ IN_FEET,   "98'-2 7/8\"",   true },
	{ IN_INCHES_ALONE, "1178.75", false },
	{ IN_INCHES_ALONE, "1178.8",  false },
	{ IN_INCHES_ALONE, "1178.6", true },
};
/* clang-format on */

/* Cells that are wrong in a book; -1: it was not checked. */
static int wrong_cells(const char *text)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	const struct rb_book *book;
	const struct rb_reduced *reduced;
	const struct rb_hand_check *check = NULL;
	int wrong = -1;

	rb_findings_init(&findings, arena, "hand.csv");
	book = rb_book_read(arena, &findings, text, strlen(text));
	reduced = book ? rb_reduce(arena, &findings, book) : NULL;
	if (reduced)
		check = rb_hand_check(arena, &findings, reduced);
	if (check)
		wrong = (int)rb_hand_count(check, RB_HAND_WRONG);
	rb_arena_free(arena);
	return wrong;
}

static void sums_are_taken_as_they_are_meant(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof sums / sizeof *sums; i++) {
		char text[600];
		int cells;

		snprintf(text, sizeof text, HEAD PAGE_1 "%s" PAGE_2 "%s", sums[i].after_1,
			 sums[i].after_2);
		cells = wrong_cells(text);
		if (cells == (int)sums[i].wrong)
			continue;
		print_error("row %zu, %.*s / %.*s: %d wrong\n", i,
			    (int)strcspn(sums[i].after_1, "\n"), sums[i].after_1,
			    (int)strcspn(sums[i].after_2, "\n"), sums[i].after_2, cells);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* 98.42 for 98.24, carried on to 100.17, and that written 100.71: from what was worked
 * out the misclosure is right, of either sign. */
static void a_misclosure_may_be_of_what_was_meant(void **state)
{
	static const char book[] = "point,known elevation,bs,hi,fs,elevation\n"
				   "BM-1,100.00,4.27,104.27,,\n"
				   "TP-1,,5.11,103.53,6.03,98.42\n"
				   "TP-2,,4.90,104.91,3.52,100.01\n"
				   "BM-1,,,,4.74,100.71\n";
	static const struct {
		const char *written;
		int wrong;
	} cases[] = { { "0.17", 2 },  { "-0.17", 2 }, { "0.71", 2 },
		      { "-0.71", 2 }, { "0.01", 2 },  { "0.18", 3 } };

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char text[400];

		snprintf(text, sizeof text, "%smisclosure,,,,,%s\n", book,
			 cases[i].written);
		assert_int_equal(wrong_cells(text), cases[i].wrong);
	}
}

/* Sums of the second of two pages: with a manhole on it that carries nothing on; and
 * behind a known point, where backsights less foresights are not what was risen from the
 * first. */
static void a_page_has_sums_of_its_own(void **state)
{
	static const struct {
		const char *rows;
		int wrong;
	} books[] = {
		{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
		  "sum,,9.38,,,6.03,\nMH-1,,,,,4.00,99.35\n"
		  "TP-2,,4.90,104.73,,3.52,99.83\nBM-1,,,,,4.74,99.99\nsum,,4.90,,,8.26,\n",
		  0 },
		{ "BM-1,100.00,4.27,104.27,,,\nBM-2,98.30,5.11,103.41,,6.03,98.24\n"
		  "sum,,9.38,,,6.03,\nTP-1,,4.90,104.79,,3.52,99.89\n"
		  "BM-3,100.10,,,,4.74,100.05\nsum,,4.90,,,8.26,-0.01\n",
		  0 },
		{ "BM-1,100.00,4.27,104.27,,,\nBM-2,98.30,5.11,103.41,,6.03,98.24\n"
		  "sum,,9.38,,,6.03,\nTP-1,,4.90,104.79,,3.52,99.89\n"
		  "BM-3,100.10,,,,4.74,100.05\nsum,,4.90,,,8.26,-0.02\n",
		  1 },
		{ "BM-1,100.00,4.27,104.27,,,\nBM-2,98.30,5.11,103.41,,6.03,98.24\n"
		  "TP-1,,4.90,104.79,,3.52,99.89\nBM-3,100.10,,,,4.74,100.05\n"
		  "difference,,,,,,0.05\n",
		  0 }, /* last less first */
		{ "BM-1,100.00,4.27,104.27,,,\nBM-2,98.30,5.11,103.41,,6.03,98.24\n"
		  "TP-1,,4.90,104.79,,3.52,99.89\nBM-3,100.10,,,,4.74,100.05\n"
		  "difference,,,,,,0.04\n",
		  1 },
		{ "BM-1,100.00,4.27,104.27,,,\nBM-2,98.30,5.11,103.41,,6.03,98.24\n"
		  "TP-1,,4.90,104.79,,3.52,99.89\nBM-3,100.10,,,,4.74,100.05\n"
		  "sum,,,,,,0.05\n",
		  0 },
		{ "BM-1,100.00,4.27,104.27,,,\nMH-1,,,,,4.00,100.27\n"
		  "BM-2,98.30,5.11,103.41,,6.03,98.24\nTP-1,,4.90,104.79,,3.52,99.89\n"
		  "BM-3,100.10,,,,4.74,100.05\ndifference,,-0.01,,,,\n",
		  0 }, /* of the foresights that carry the levels on */
	};

	(void)state;
	for (size_t i = 0; i < sizeof books / sizeof *books; i++) {
		char text[600];

		snprintf(text, sizeof text,
			 "point,known elevation,bs,hi,is,fs,elevation\n%s",
			 books[i].rows);
		assert_int_equal(wrong_cells(text), books[i].wrong);
	}
}

/* What stands under chainages and tapes is nobody's difference of levels. */
static void along_the_ground_nothing_is_judged(void **state)
{
	static const char *const rows[] = { "difference,,,,,,50,\n",
					    "difference,,,,,,,3.00\n",
					    "misclosure,,,,,,50,\n",
					    "misclosure,,,,,,,3.00\n" };

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		char text[400];

		snprintf(
			text, sizeof text,
			"point,known elevation,bs,hi,fs,elevation,chainage,measure down\n"
			"BM-1,100.00,4.27,104.27,,,0,\nBM-1,,,,4.27,100.00,90,2.00\n%s",
			rows[i]);
		assert_int_equal(wrong_cells(text), 0);
	}
}

static void half_the_last_place_is_allowed(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
		char text[400];
		int cells;

		snprintf(text, sizeof text, "%s%s\n", places[i].book, places[i].written);
		cells = wrong_cells(text);
		if (cells == places[i].wrong)
			continue;
		print_error("row %zu, %s: %d wrong\n", i, places[i].written, cells);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sums_are_taken_as_they_are_meant),
		cmocka_unit_test(a_misclosure_may_be_of_what_was_meant),
		cmocka_unit_test(a_page_has_sums_of_its_own),
		cmocka_unit_test(along_the_ground_nothing_is_judged),
		cmocka_unit_test(half_the_last_place_is_allowed),
	};

	return cmocka_run_group_tests_name("hand sums", tests, NULL, NULL);
}
