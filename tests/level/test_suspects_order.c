/* SPDX-License-Identifier: MIT */
/*
 * test_suspects_order.c - which of two slips stands first in the list.
 *
 * Each book has one slip that closes it exactly, or so nearly that it counts as much, and
 * another of a likelier kind that leaves a part of what is allowed.  What is left costs a
 * point for each twentieth of what is allowed, so that a likelier kind stays in front up
 * to a certain part.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#include "level/suspects.h"

#define COUNT(table)    (sizeof(table) / sizeof *(table))
#define FT(thousandths) (RB_FOOT / 1000 * (thousandths))
#define IN(sixteenths)  (RB_INCH / 16 * (sixteenths))
#define COLUMNS         "point,known elevation,bs,fs\n"

struct named {
	enum rb_slip slip;
	uint32_t row; /* from 0 */
	enum rb_column column;
	int64_t maybe;
};

/* clang-format off */
static const struct {
	const char *book;
	struct named exact, nearly;
	bool exact_first;
} cases[] = {
	/* 1.80 low: 2.47 for 4.27; or 5.11 and 6.105 exchanged, and 0.19 of 0.40 is left */
	{ "tolerance,0.40 ft\n" COLUMNS
	  "BM-1,100.00,2.47,\nTP-1,,5.11,6.105\nBM-1,,,3.275\n",
	  { RB_SLIP_EXCHANGED, 0, RB_BACKSIGHT, FT(4270) },
	  { RB_SLIP_COLUMNS, 1, RB_BACKSIGHT, FT(6105) }, false },
	/* the same, and 0.21 is left */
	{ "tolerance,0.40 ft\n" COLUMNS
	  "BM-1,100.00,2.47,\nTP-1,,5.11,6.115\nBM-1,,,3.265\n",
	  { RB_SLIP_EXCHANGED, 0, RB_BACKSIGHT, FT(4270) },
	  { RB_SLIP_COLUMNS, 1, RB_BACKSIGHT, FT(6115) }, true },
	/* 1.00 low: 4.625 for 3.625; or exchanged columns, and 0.29 is left */
	{ "tolerance,0.40 ft\n" COLUMNS
	  "BM-1,100.00,4.27,\nTP-1,,5.11,5.755\nBM-1,,,4.625\n",
	  { RB_SLIP_FOOT, 2, RB_FORESIGHT, FT(3625) },
	  { RB_SLIP_COLUMNS, 1, RB_BACKSIGHT, FT(5755) }, false },
	/* 0.807 low: 5.11 for 5'-11"; or exchanged columns, and 0.291 is left */
	{ "tolerance,0.40 ft\n" COLUMNS
	  "BM-1,100.00,4.27,\nTP-1,,5.11,5.659\nBM-1,,,4.528\n",
	  { RB_SLIP_INCHES, 1, RB_BACKSIGHT, 71 * RB_INCH },
	  { RB_SLIP_COLUMNS, 1, RB_BACKSIGHT, FT(5659) }, false },
	/* 2.00 low: -1.00 for 1.00; or exchanged columns, and 0.39 is left */
	{ "tolerance,0.40 ft\n" COLUMNS
	  "BM-1,100.00,4.00,\nTP-1,,-1.00,0.195\nBM-1,,,4.805\n",
	  { RB_SLIP_SIGN, 1, RB_BACKSIGHT, FT(1000) },
	  { RB_SLIP_COLUMNS, 1, RB_BACKSIGHT, FT(195) }, false },
	/* 0.101 low: 3.39 for 3.29; or 4.219 for 4.291, and 0.029 of 0.04 is left */
	{ "tolerance,0.04 ft\n" COLUMNS
	  "BM-1,100.00,4.219,\nTP-1,,5.11,6.04\nBM-1,,,3.39\n",
	  { RB_SLIP_TENTH, 2, RB_FORESIGHT, FT(3290) },
	  { RB_SLIP_EXCHANGED, 0, RB_BACKSIGHT, FT(4291) }, false },
	/* 0.51 low: 3.83 for 3.33; or 4.51 for 5.41, and 0.39 is left */
	{ "tolerance,0.40 ft\n" COLUMNS
	  "BM-1,100.00,4.51,\nTP-1,,5.11,6.30\nBM-1,,,3.83\n",
	  { RB_SLIP_LOOK_ALIKE, 2, RB_FORESIGHT, FT(3330) },
	  { RB_SLIP_EXCHANGED, 0, RB_BACKSIGHT, FT(5410) }, false },
	/* 0.92 low: 95.44 for 94.54; or 4.18 for 4.81, and 0.29 is left */
	{ "tolerance,0.40 ft\n" COLUMNS
	  "BM-1,100.00,4.18,\nTP-1,,2.11,6.03\nBM-2,95.44,,5.74\n",
	  { RB_SLIP_BENCHMARK, 2, RB_KNOWN_ELEVATION, FT(94540) },
	  { RB_SLIP_EXCHANGED, 0, RB_BACKSIGHT, FT(4810) }, false },
	/* 15/16 low: 15/16 dropped; or 3'-5 1/8" for 3'-4 1/8", and 1/16 of 1/4 is left */
	{ "unit,ft-in\ntolerance,1/4 in\n" COLUMNS
	  "BM-1,100',4'-3\",\nTP-1,,5'-1 1/4\",6'-0 1/16\"\nBM-1,,,3'-5 1/8\"\n",
	  { RB_SLIP_FRACTION, 0, RB_BACKSIGHT, IN(51 * 16 + 15) },
	  { RB_SLIP_TENTH, 2, RB_FORESIGHT, IN(40 * 16 + 2) }, false },
	/* 1.29 high: a rod 0.26 short on five sights; or 9.85 for 8.95, and 0.39 is left */
	{ "tolerance,0.40 ft\n" COLUMNS
	  "BM-1,100.00,9.11,\nTP-1,,8.40,1.02\nTP-2,,9.85,2.11\nTP-3,,8.12,3.00\n"
	  "TP-4,,7.77,1.50\nBM-2,132.08,,2.25\n",
	  { RB_SLIP_ROD, RB_NO_ROW, RB_POINT, RB_NOT_GIVEN_NM },
	  { RB_SLIP_EXCHANGED, 2, RB_BACKSIGHT, FT(8950) }, false },
};
/* clang-format on */

static struct rb_suspects *hunt(struct rb_arena *arena, const char *text)
{
	struct rb_findings findings;
	const struct rb_book *book;
	const struct rb_reduced *reduced;
	const struct rb_sections *sections;
	struct rb_judging judging;

	rb_findings_init(&findings, arena, "test.csv");
	book = rb_book_read(arena, &findings, text, strlen(text));
	assert_non_null(book);
	reduced = rb_reduce(arena, &findings, book);
	assert_non_null(reduced);
	judging = rb_judging_of(book);
	sections = rb_sections(arena, &findings, reduced, &judging);
	assert_non_null(sections);
	return rb_suspects(arena, &findings, sections);
}

/* Its place in the list, from 1; 0 if it is not there. */
static uint32_t rank_of(const struct rb_suspects *list, const struct named *n)
{
	for (uint32_t i = 0; i < list->count; i++) {
		const struct rb_suspect *s = &list->item[i];

		if (s->slip == n->slip && s->row == n->row && s->column == n->column &&
		    s->maybe.nm == n->maybe)
			return i + 1;
	}
	return 0;
}

static void likelier_kinds_may_leave_more(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		const struct rb_suspects *list = hunt(arena, cases[i].book);
		uint32_t exact = rank_of(list, &cases[i].exact);
		uint32_t nearly = rank_of(list, &cases[i].nearly);

		if (!exact || !nearly || (exact < nearly) != cases[i].exact_first) {
			print_error("row %zu: %s %u, %s %u of %u\n", i,
				    rb_slip_name(cases[i].exact.slip, RB_FEET), exact,
				    rb_slip_name(cases[i].nearly.slip, RB_FEET), nearly,
				    list->count);
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* 105.00 for 106.00 is a foot as well as a 5 for a 6: one known elevation, told once. */
static void nothing_is_listed_twice(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_suspects *list =
		hunt(arena, "tolerance,0.02 ft\n" COLUMNS
			    "BM-1,105.00,4.27,\nTP-1,,5.11,6.03\nBM-2,105.61,,3.74\n");
	const struct named wanted = { RB_SLIP_BENCHMARK, 0, RB_KNOWN_ELEVATION,
				      FT(106000) };

	(void)state;
	assert_true(rank_of(list, &wanted) > 0);
	for (uint32_t i = 0; i < list->count; i++)
		for (uint32_t k = 0; k < i; k++)
			assert_false(list->item[i].slip == list->item[k].slip &&
				     list->item[i].row == list->item[k].row &&
				     list->item[i].column == list->item[k].column &&
				     list->item[i].maybe.nm == list->item[k].maybe.nm);
	rb_arena_free(arena);
}

/* A rod lacks a foot and a half at most: 3.00 on two high sights is that, 3.02 more. */
static void a_rod_lacks_so_much_at_most(void **state)
{
	static const struct named rod = { RB_SLIP_ROD, RB_NO_ROW, RB_POINT,
					  RB_NOT_GIVEN_NM };
	struct rb_arena *arena = rb_arena_new(NULL);

	(void)state;
	assert_true(rank_of(hunt(arena, "tolerance,0.02 ft\n" COLUMNS
					"BM-1,100.00,9.11,\nTP-1,,8.40,1.02\n"
					"BM-2,111.49,,2.00\n"),
			    &rod) > 0);
	assert_int_equal(rank_of(hunt(arena, "tolerance,0.01 ft\n" COLUMNS
					     "BM-1,100.00,9.11,\nTP-1,,8.40,1.02\n"
					     "BM-2,111.47,,2.00\n"),
				 &rod),
			 0);
	rb_arena_free(arena);
}

/* A rod that lacks a piece reads too much: high foresights put the end too low, and
 * upside down it is the other way round.  The rows are told from the first on. */
static void a_short_rod_reads_too_much(void **state)
{
	static const struct {
		const char *book;
		uint32_t row[5], rows;
	} books[] = {
		{ "tolerance,0.02 ft\n" COLUMNS /* 0.25 on each of two foresights */
		  "BM-1,100.00,1.02,\nTP-1,,2.11,9.11\nBM-2,86.12,,8.40\n",
		  { 1, 2 },
		  2 },
		{ "tolerance,0.02 ft\n" COLUMNS /* 0.60 on each of three, one upside down
						 */
		  "BM-1,100.00,9.31,\nTP-1,,8.77,2.15\nTP-2,,1.62,-8.98\n"
		  "BM-2,123.49,,1.24\n",
		  { 0, 1, 2 },
		  3 },
		{ "tolerance,0.02 ft\n" COLUMNS /* 0.26 on each of five */
		  "BM-1,100.00,9.11,\nTP-1,,8.40,1.02\nTP-2,,9.85,2.11\nTP-3,,8.12,3.00\n"
		  "TP-4,,7.77,1.50\nBM-2,132.07,,2.25\n",
		  { 0, 1, 2, 3, 4 },
		  5 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(books); i++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		const struct rb_suspects *list = hunt(arena, books[i].book);
		const struct named wanted = { RB_SLIP_ROD, RB_NO_ROW, RB_POINT,
					      RB_NOT_GIVEN_NM };
		uint32_t rank = rank_of(list, &wanted);

		assert_true(rank > 0);
		assert_int_equal(list->item[rank - 1].left.nm, 0);
		assert_int_equal(list->item[rank - 1].row_count, books[i].rows);
		assert_memory_equal(list->item[rank - 1].rows, books[i].row,
				    books[i].rows * sizeof(uint32_t));
		rb_arena_free(arena);
	}
}

static void every_section_is_hunted_through(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_suspects *list = hunt(
		arena, "tolerance,0.02 ft\n" COLUMNS
		       "BM-1,100.00,4.27,\nBM-2,99.00,5.11,4.27\nBM-3,98.00,,5.11\n");
	bool of[2] = { false };

	(void)state;
	for (uint32_t i = 0; i < list->count; i++)
		of[list->item[i].section] = true;
	assert_true(of[0] && of[1]);
	rb_arena_free(arena);
}

/* A long run is hunted through; sections by the thousand that share its beginning are not
 * all, which would take minutes. */
static void long_books_are_walked_so_often(void **state)
{
	enum { LONG = 11000, SHARED = 6000, ROW = 40 };
	static char text[LONG * 2 * ROW];
	struct rb_arena *arena = rb_arena_new(NULL);
	size_t used = (size_t)snprintf(text, sizeof text,
				       "tolerance,0.02 ft\n" COLUMNS "BM,100,4.27,\n");
	const size_t head = used;
	const struct rb_suspects *list;

	(void)state;
	for (int i = 0; i < LONG; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "T%d,,4.27,4.27\n", i);
	snprintf(text + used, sizeof text - used, "BM,,,5.27\n");
	list = hunt(arena, text);
	assert_true(list->count > 0);
	used = head;
	for (int i = 0; i < SHARED; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "BM,,,5.27\nT%d,,4.27,4.27\n", i);
	list = hunt(arena, text);
	assert_true(list->count > 0);
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(likelier_kinds_may_leave_more),
		cmocka_unit_test(nothing_is_listed_twice),
		cmocka_unit_test(a_rod_lacks_so_much_at_most),
		cmocka_unit_test(a_short_rod_reads_too_much),
		cmocka_unit_test(every_section_is_hunted_through),
		cmocka_unit_test(long_books_are_walked_so_often),
	};

	return cmocka_run_group_tests_name("order of suspects", tests, NULL, NULL);
}
