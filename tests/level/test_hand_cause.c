/* SPDX-License-Identifier: MIT */
/* test_hand_cause.c - what was probably done, and with which other row. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#include "level/hand_check.h"

#define COUNT(table) (sizeof(table) / sizeof *(table))
#define HEAD         "point,known elevation,bs,hi,is,fs,elevation\n"

/* clang-format off */
static const struct {
	const char *rows;
	enum rb_hand_cause cause;
	uint32_t line; /* of the value that was used instead; 0: there is none */
} cases[] = {
	/* 104.27 of the first setup, 103.35 of the second, 104.73 of the third */
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "TP-2,,4.90,104.73,,3.52,99.83\nBM-1,,,,,4.74,98.61\n", RB_CAUSE_WRONG_HEIGHT, 3 },
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "TP-2,,4.90,104.73,,3.52,99.83\nBM-1,,,,,4.74,99.53\n", RB_CAUSE_WRONG_HEIGHT, 2 },
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,97.32\nE,,,,,3.52,99.83\n",
	  RB_CAUSE_WRONG_HEIGHT, 3 }, /* of the setup that TP-1 opens */
	/* 4.90 over the benchmark instead of TP-2; over TP-1; over MH-1 */
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "TP-2,,4.90,104.90,,3.52,99.83\n", RB_CAUSE_FROM_OTHER, 2 },
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "TP-2,,4.90,103.14,,3.52,99.83\n", RB_CAUSE_FROM_OTHER, 3 },
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\nMH-1,,,,7.48,,95.87\n"
	  "TP-2,,4.90,100.77,,3.52,99.83\n", RB_CAUSE_FROM_INTERMEDIATE, 4 },
	/* written as the line above, or as one farther up where that is empty */
	{ "BM-1,100.00,4.27,104.27,,,\nMH-1,,,,7.48,,96.79\nMH-2,,,,6.20,,96.79\n",
	  RB_CAUSE_COPIED, 3 },
	{ "BM-1,100.00,4.27,104.27,,,\nMH-1,,,,7.48,,96.79\nMH-2,,,,5.20,,\n"
	  "MH-3,,,,6.20,,96.79\n", RB_CAUSE_COPIED, 3 },
	/* of two pages, each with its sums; 4.00 is the manhole of the second */
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\nsum,,9.38,,,6.03,\n"
	  "MH-1,,,,4.00,,99.35\nTP-2,,4.90,104.73,,3.52,99.83\nsum,,4.90,,,7.52,\n",
	  RB_CAUSE_WITH_INTERMEDIATES, 0 },
	{ "BM-1,100.00,4.27,104.27,,,\nMH-1,,,,3.00,,101.27\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "sum,,9.38,,3.00,6.03,\nMH-2,,,,4.00,,99.35\nTP-2,,4.90,104.73,,3.52,99.83\n"
	  "sum,,4.90,,,16.55,\n", RB_CAUSE_WITH_INTERMEDIATES, 0 }, /* from the top */
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "TP-2,,4.90,104.73,,3.52,99.83\nsum,,9.17,,,,\n", RB_CAUSE_LEFT_OUT, 3 },
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "TP-2,,4.90,104.73,,3.52,99.83\nsum,,19.18,,,,\n", RB_CAUSE_TWICE, 4 },
	{ "BM-1,100.00,4.27,104.27,,,100.00\nMH-1,,,,7.48,,100.00\n", RB_CAUSE_COPIED, 2 },
	/* 7.48 as 7'-4.8"; 95.87 to whole feet; a sum a foot short */
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\nMH-1,,,,7.48,,95.95\n",
	  RB_CAUSE_DECIMALS, 0 },
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\nMH-1,,,,7.48,,96\n",
	  RB_CAUSE_ROUNDED, 0 },
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\nsum,,8.38,,,,\n",
	  RB_CAUSE_CARRY, 0 },
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "allowable error,,0.10,,,,\nsum,,9.28,,,,\n", RB_CAUSE_CARRY, 0 }, /* no reading */
	/* 5.12 is no 5'-12"; a whole place too much is not rounded; ten feet are no place to
	 * round to; 0.27 less 0.27 needs no borrowing */
	{ "BM-1,100.00,4.27,104.27,,,\nMH-1,,,,5.12,,98.27\n", RB_CAUSE_UNKNOWN, 0 },
	{ "BM-1,100.00,4.27,104.27,,,\nMH-1,,,,5.12,,99.16\n", RB_CAUSE_UNKNOWN, 0 },
	{ "BM-1,99.00,4.27,103.27,,,\nMH-1,,,,7.12,,100.00\n", RB_CAUSE_UNKNOWN, 0 },
	{ "BM-1,100.00,4.27,104.27,,,\nMH-1,,,,6.27,,97.90\n", RB_CAUSE_UNKNOWN, 0 },
	/* after the sums of a page the heights before it are still there */
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\nsum,,9.38,,,6.03,\n"
	  "MH-1,,,,7.48,,96.79\n", RB_CAUSE_WRONG_HEIGHT, 2 },
	/* 101.00 for the benchmark, and carried on: one slip */
	{ "BM-1,100.00,4.27,105.27,,,101.00\nTP-1,,5.11,104.35,,6.03,99.24\n",
	  RB_CAUSE_BENCHMARK, 0 },
	/* nothing else was used, wherever was looked before */
	{ "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	  "TP-2,,4.90,107.43,,3.52,99.83\n", RB_CAUSE_EXCHANGED, 0 },
};

/* 104'-3 5/16" less 6'-0 3/8" is 98'-2 15/16". */
static const struct {
	const char *written;
	enum rb_hand_cause cause;
} in_inches[] = {
	{ "98'-2 7/8\"", RB_CAUSE_ROUNDED },
	{ "88'-2 15/16\"",  RB_CAUSE_CARRY }, /* 4 ft less 6: ten feet borrowed */
	{ "108'-2 15/16\"", RB_CAUSE_CARRY },
	{ "97'-2 15/16\"",  RB_CAUSE_UNKNOWN }, /* 3 in less 0: no foot to borrow */
};

static const struct {
	enum rb_hand_cause cause;
	const char *name;
} names[] = {
	{ RB_CAUSE_INVERTED,  "inverted reading counted as an upright one" },
	{ RB_CAUSE_ADDED,     "foresight added instead of subtracted" },
	{ RB_CAUSE_EXCHANGED, "digits exchanged" },
	{ RB_CAUSE_MISCOPIED, "copied wrong" },
};
/* clang-format on */

struct checked {
	struct rb_arena *arena;
	struct rb_findings findings;
	const struct rb_book *book;
	const struct rb_hand_check *check;
};

static struct checked check_text(const char *text)
{
	struct checked c = { .arena = rb_arena_new(NULL) };
	const struct rb_reduced *reduced;

	rb_findings_init(&c.findings, c.arena, "hand.csv");
	c.book = rb_book_read(c.arena, &c.findings, text, strlen(text));
	assert_non_null(c.book);
	reduced = rb_reduce(c.arena, &c.findings, c.book);
	assert_non_null(reduced);
	c.check = rb_hand_check(c.arena, &c.findings, reduced);
	assert_non_null(c.check);
	return c;
}

/* The only cell that is wrong. */
static const struct rb_hand_cell *wrong_cell(const struct checked *c)
{
	const struct rb_hand_cell *wrong = NULL;

	for (uint32_t i = 0; i < c->check->cells; i++)
		if (c->check->cell[i].state == RB_HAND_WRONG) {
			if (wrong)
				return NULL;
			wrong = &c->check->cell[i];
		}
	return wrong;
}

static uint32_t line_of(const struct checked *c, const struct rb_hand_cell *cell)
{
	return cell->cause_row == RB_NO_ROW ? 0 : rb_book_line(c->book, cell->cause_row);
}

static void causes_are_told_with_their_row(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		char text[600];
		struct checked c;
		const struct rb_hand_cell *cell;

		snprintf(text, sizeof text, HEAD "%s", cases[i].rows);
		c = check_text(text);
		cell = wrong_cell(&c);
		if (!cell || cell->cause != cases[i].cause ||
		    line_of(&c, cell) != cases[i].line) {
			print_error("row %zu: cause %d, with line %u\n", i,
				    cell ? (int)cell->cause : -1,
				    cell ? line_of(&c, cell) : 0);
			wrong++;
		}
		rb_arena_free(c.arena);
	}
	assert_int_equal(wrong, 0);
}

static void causes_in_inches(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(in_inches); i++) {
		char text[300];
		struct checked c;
		const struct rb_hand_cell *cell;

		snprintf(
			text, sizeof text,
			"unit,ft-in\n" HEAD
			"BM,100'-0\",4'-3 5/16\",104'-3 5/16\",,,\nE,,,,,6'-0 3/8\",%s\n",
			in_inches[i].written);
		c = check_text(text);
		cell = wrong_cell(&c);
		if (!cell || cell->cause != in_inches[i].cause) {
			print_error("%s: cause %d\n", in_inches[i].written,
				    cell ? (int)cell->cause : -1);
			wrong++;
		}
		rb_arena_free(c.arena);
	}
	assert_int_equal(wrong, 0);
}

/* 1.800 m is 5 ft and 0.276 m, and that would be 0.230 m in feet.inches: but a metre has
 * neither. */
static void metres_have_no_inches(void **state)
{
	struct checked c = check_text("unit,m\n" HEAD "BM,30.000,1.500,31.500,,,\n"
				      "E,,,,,1.800,29.746\n");

	(void)state;
	assert_non_null(wrong_cell(&c));
	assert_int_equal(wrong_cell(&c)->cause, RB_CAUSE_UNKNOWN);
	rb_arena_free(c.arena);
}

/* The likely cause in words, beside what is written and what follows; or nothing. */
static void the_cause_is_told(void **state)
{
	struct checked c =
		check_text(HEAD "BM-1,100.00,4.27,104.27,,,\nE,,,,,4.40,99.78\n");
	const struct rb_finding *f = c.findings.item[0];

	(void)state;
	assert_int_equal(f->code, RB_CODE_HAND_VALUE);
	assert_int_equal(f->argument[0].length.nm, RB_FOOT / 100 * 9978);
	assert_int_equal(f->argument[1].length.nm, RB_FOOT / 100 * 9987);
	assert_int_equal(f->argument[2].kind, RB_TEXT);
	assert_string_equal(f->argument[2].text, "digits exchanged");
	rb_arena_free(c.arena);
	c = check_text(HEAD "BM-1,100.00,4.27,104.27,,,\nE,,,,,4.40,91.52\n");
	assert_int_equal(c.findings.item[0]->argument[2].kind, RB_NOTHING);
	rb_arena_free(c.arena);
}

/* An empty cell is not filled in, and what is worked out from it knows that. */
static void empty_cells_are_known(void **state)
{
	struct checked c = check_text(HEAD "BM-1,100.00,4.27,,,,\n"
					   "TP-1,,5.11,103.35,,6.03,98.24\n");

	(void)state;
	assert_null(wrong_cell(&c));
	assert_int_equal(c.check->cells, 3);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_EMPTY), 1);
	assert_int_equal(c.check->cell[0].state, RB_HAND_EMPTY);
	assert_true(c.check->cell[1].base_unwritten);
	assert_false(c.check->cell[2].base_unwritten);
	rb_arena_free(c.arena);
	c = check_text(HEAD "BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,\n");
	assert_int_equal(c.check->cells, 3);
	assert_int_equal(c.check->cell[1].state, RB_HAND_EMPTY);
	assert_true(c.check->cell[2].base_unwritten);
	rb_arena_free(c.arena);
}

static void causes_have_names(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(names); i++)
		assert_string_equal(rb_hand_cause_name(names[i].cause), names[i].name);
	assert_null(rb_hand_cause_name(RB_CAUSE_UNKNOWN));
}

static enum rb_hand_cause cause_in(const char *text)
{
	struct checked c = check_text(text);
	enum rb_hand_cause cause;

	assert_non_null(wrong_cell(&c));
	cause = wrong_cell(&c)->cause;
	rb_arena_free(c.arena);
	return cause;
}

/* A turning point behind so many side shots, its height carried from the first of them:
 * 64 sights back are looked at, which is more than a page. */
static enum rb_hand_cause cause_behind(int sides)
{
	char text[6000];
	size_t used = (size_t)snprintf(text, sizeof text,
				       HEAD "BM-1,100.00,4.27,104.27,,,\n"
					    "MH-0,,,,7.48,,96.79\n");

	for (int i = 1; i < sides; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "MH-%d,,,,2.05,,102.22\n", i);
	snprintf(text + used, sizeof text - used, "TP-1,,5.11,101.90,,6.03,98.24\n");
	return cause_in(text);
}

/* The same of heights of instrument: the first of so many setups. */
static enum rb_hand_cause cause_setups_before(int setups)
{
	char text[6000];
	size_t used =
		(size_t)snprintf(text, sizeof text, HEAD "BM-1,100.00,4.27,104.27,,,\n");

	for (int i = 1; i <= setups; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "TP-%d,,5.11,%s,,%s\n", i, "103.35",
					 i == 1 ? "6.03,98.24" : "5.11,98.24");
	snprintf(text + used, sizeof text - used, "E,,,,,4.74,99.53\n");
	return cause_in(text);
}

/* The same of a value copied over so many empty cells. */
static enum rb_hand_cause cause_rows_below(int rows)
{
	char text[6000];
	size_t used = (size_t)snprintf(text, sizeof text,
				       HEAD "BM-1,100.00,4.27,104.27,,,\n"
					    "MH-0,,,,7.48,,96.79\n");

	for (int i = 1; i < rows; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "MH-%d,,,,2.05,,\n", i);
	snprintf(text + used, sizeof text - used, "E,,,,,6.20,96.79\n");
	return cause_in(text);
}

static void only_so_far_is_looked_back(void **state)
{
	(void)state;
	assert_int_equal(cause_behind(64), RB_CAUSE_FROM_INTERMEDIATE);
	assert_int_equal(cause_behind(65), RB_CAUSE_UNKNOWN);
	assert_int_equal(cause_setups_before(64), RB_CAUSE_WRONG_HEIGHT);
	assert_int_equal(cause_setups_before(65), RB_CAUSE_UNKNOWN);
	assert_int_equal(cause_rows_below(64), RB_CAUSE_COPIED);
	assert_int_equal(cause_rows_below(65), RB_CAUSE_UNKNOWN);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(causes_are_told_with_their_row),
		cmocka_unit_test(causes_in_inches),
		cmocka_unit_test(metres_have_no_inches),
		cmocka_unit_test(the_cause_is_told),
		cmocka_unit_test(empty_cells_are_known),
		cmocka_unit_test(causes_have_names),
		cmocka_unit_test(only_so_far_is_looked_back),
	};

	return cmocka_run_group_tests_name("hand_cause", tests, NULL, NULL);
}
