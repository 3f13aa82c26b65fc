/* SPDX-License-Identifier: MIT */
/* The two-peg test: its error as a ratio, its corrected readings, its refusals, and what
 * the error does to a book. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

#include "level/peg_effect.h"

#define COUNT(table)             (sizeof(table) / sizeof *(table))
#define FT5(hundred_thousandths) (INT64_C(3048) * (hundred_thousandths))

struct read {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_two_peg *peg;
};

static void read_peg(struct read *r, const char *text,
		     const struct rb_allocator *allocator)
{
	*r = (struct read){ .arena = rb_arena_new(allocator) };
	if (!r->arena)
		return;
	rb_findings_init(&r->findings, r->arena, "peg.csv");
	r->peg = rb_two_peg_read(r->arena, &r->findings, text, strlen(text));
}

#define HEADER "setup,a,b,distance a,distance b\n"

/* clang-format off */
static const struct worked {
	const char *text;
	enum rb_unit unit;
	int64_t per_hundred; /* nm over 100 ft or 100 m */
	int64_t a, b;        /* corrected */
} worked[] = {
	/* true difference 0.65; 0.01 in 200 ft low, seen from near a */
	{ HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.44,10,210\n", RB_FEET,
	  -INT64_C(1524000), FT5(480050), FT5(545050) },
	/* the same the other way round: the setups and the pegs have no order */
	{ HEADER "near a,4.80,5.44,10,210\nmidway,4.52,5.17,100,100\n", RB_FEET,
	  -INT64_C(1524000), FT5(452500), FT5(517500) },
	{ HEADER "midway,5.17,4.52,100,100\nnear a,5.44,4.80,210,10\n", RB_FEET,
	  -INT64_C(1524000), FT5(545050), FT5(480050) },
	/* columns in any order */
	{ "a,b,distance a,distance b\n4.52,5.17,100,100\n4.80,5.44,10,210\n", RB_FEET,
	  -INT64_C(1524000), FT5(480050), FT5(545050) },
	{ "distance b,b,a,distance a\n100,5.17,4.52,100\n210,5.44,4.80,10\n", RB_FEET,
	  -INT64_C(1524000), FT5(480050), FT5(545050) },
	{ "b,a,distance a,distance b\n5.17,4.52,100,100\n5.44,4.80,10,210\n", RB_FEET,
	  -INT64_C(1524000), FT5(480050), FT5(545050) },
	{ "distance a,distance b,a,b\n100,100,4.52,5.17\n10,210,4.80,5.44\n", RB_FEET,
	  -INT64_C(1524000), FT5(480050), FT5(545050) },
	/* one in ten, as steep as can be: 0.20 in 2 ft, which is 1.00 in 10 and 1.20 in 12 */
	{ HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.25,10,12\n", RB_FEET,
	  -10 * RB_FOOT, FT5(580000), FT5(645000) },
	/* in true adjustment */
	{ HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.45,10,210\n", RB_FEET,
	  0, FT5(480000), FT5(545000) },
	{ "unit,ft-in\n" HEADER
	  "midway,\"4'-6 1/4\"\"\",\"5'-2\"\"\",100,100\nnear a,4'-9 5/8\",5'-5 5/8\",10,210\n",
	  RB_FEET_INCHES, INT64_C(3175000),
	  57 * RB_INCH + RB_INCH * 5 / 8 - 317500, 65 * RB_INCH + RB_INCH * 5 / 8 - 6667500 },
	/* neither setup midway, the headings in other words, words below and above */
	{ "two pegs,date:,3 May 2026\nunit:,m\n"
	  "Position;Reading A;Reading B;Dist. A;Dist. B\n"
	  "first;1,283;0,860;30;20\nwind\nsecond;1,612;1,219;55;5\n", RB_METRES,
	  -INT64_C(75000000), 1612000000 + 41250000, 1219000000 + 3750000 },
};

static const struct refused {
	const char *text;
	enum rb_code code;
} refused[] = {
	{ HEADER "midway,4.52,5.17,100,100\n", RB_CODE_PEG_ROWS },
	{ HEADER "midway,4.52,5.17,100,100\nb,4.80,5.44,10,210\nc,4.80,5.44,10,210\n",
	  RB_CODE_PEG_ROWS },
	{ HEADER "midway,4.52,,100,100\nnear a,4.80,5.44,10,210\n", RB_CODE_PEG_CELL_EMPTY },
	{ HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.44,10,\n", RB_CODE_PEG_CELL_EMPTY },
	{ HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.44,',210\n", RB_CODE_PEG_CELL_EMPTY },
	{ HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.44,110,110\n",
	  RB_CODE_PEG_SAME_DISTANCES },
	{ HEADER "midway,4.52,5.17,100,100\nnear a,5.44,4.80,10,11\n",
	  RB_CODE_PEG_TOO_STEEP },
	{ HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.2499,10,12\n",
	  RB_CODE_PEG_TOO_STEEP },
	{ "a (m),b,distance a,distance b\n4.52,5.17,100,100\n4.80,5.44,10,210\n",
	  RB_CODE_HEADING_UNIT },
	{ HEADER "midway,4.52,5.17,100,100\nnear a,5/3/26,4.80,10,210\n", RB_CODE_DATE_CELL },
	{ HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.44,-10,210\n", RB_CODE_NEGATIVE },
	{ "unit,m,ft\n" HEADER "midway,1.452,1.517,30,30\nnear a,1.480,1.544,3,60\n",
	  RB_CODE_UNIT_APART },
	{ "unit,furlong\n" HEADER "midway,4.52,5.17,100,100\nnear a,4.80,5.44,10,210\n",
	  RB_CODE_BAD_UNIT },
	{ "setup,a,b\nmidway,4.52,5.17\n", RB_CODE_NO_HEADER },
	{ "setup,a,b,distance a\nmidway,4.52,5.17,100\n", RB_CODE_NO_HEADER },
	{ "setup,b,distance a,distance b\nmidway,5.17,100,100\n", RB_CODE_NO_HEADER },
	{ "setup,a,distance a,distance b\nmidway,4.52,100,100\n", RB_CODE_NO_HEADER },
};
/* clang-format on */

static void errors_are_worked_out(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(worked); i++) {
		const struct worked *c = &worked[i];
		struct read r;
		int64_t got;

		read_peg(&r, c->text, NULL);
		got = r.peg ? rb_two_peg_over(r.peg, rb_two_peg_hundred(r.peg->unit)).nm
			    : 0;
		if (!r.peg || r.peg->unit != c->unit || got != c->per_hundred ||
		    r.peg->corrected_a.nm != c->a || r.peg->corrected_b.nm != c->b) {
			print_error("row %zu: %lld nm, %lld, %lld\n", i, (long long)got,
				    r.peg ? (long long)r.peg->corrected_a.nm : 0,
				    r.peg ? (long long)r.peg->corrected_b.nm : 0);
			wrong++;
		}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

static void faults_are_refused(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(refused); i++) {
		struct read r;

		read_peg(&r, refused[i].text, NULL);
		if (r.peg || r.findings.of_severity[RB_ERROR] != 1 ||
		    !r.findings.of_code[refused[i].code]) {
			print_error("row %zu: wanted one %s, got %zu errors\n", i,
				    rb_code_name(refused[i].code),
				    r.findings.of_severity[RB_ERROR]);
			wrong++;
		}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

/* A row with any number is a setup, so that one that was not finished is seen. */
static void a_row_that_is_begun_is_no_remark(void **state)
{
	static const char *const rows[] = { "n,4.80,,,", "n,,5.44,,", "n,,,10,",
					    "n,,,,210" };

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		char text[160] = HEADER "m,4.52,5.17,100,100\n";
		struct read r;

		strncat(text, rows[i], 20);
		read_peg(&r, text, NULL);
		assert_null(r.peg);
		assert_int_equal(r.findings.of_code[RB_CODE_PEG_CELL_EMPTY], 3);
		assert_int_equal(r.findings.item[0]->place.line, 3);
		assert_string_equal(r.findings.item[0]->place.point, "n");
		rb_arena_free(r.arena);
	}
}

/* What is said above the readings is kept: whose error it is, and of when. */
static void the_level_and_the_day_are_kept(void **state)
{
	struct read r;

	(void)state;
	read_peg(&r,
		 "instrument,NA2 5512\ndate,3 May 2026\n" HEADER
		 "m,4.52,5.17,100,100\nn,4.80,5.44,10,210\n",
		 NULL);
	assert_non_null(r.peg);
	assert_string_equal(r.peg->instrument, "NA2 5512");
	assert_string_equal(r.peg->date, "3 May 2026");
	assert_string_equal(r.peg->file, "peg.csv");
	assert_string_equal(r.peg->setup[0].name, "m");
	assert_string_equal(r.peg->setup[1].name, "n");
	rb_arena_free(r.arena);
	read_peg(&r, worked[0].text, NULL);
	assert_string_equal(r.peg->instrument, "");
	assert_string_equal(r.peg->date, "");
	rb_arena_free(r.arena);
}

/* A column of readings that stands there twice: neither is taken without a word. */
static void a_second_column_is_told(void **state)
{
	struct read r;

	(void)state;
	read_peg(&r,
		 "a,peg a,b,distance a,distance b\n"
		 "4.52,4.52,5.17,100,100\n4.80,4.80,5.44,10,210\n",
		 NULL);
	assert_int_equal(r.findings.of_code[RB_CODE_SAME_COLUMN_TWICE], 1);
	rb_arena_free(r.arena);
}

/* The finest reading tells what the rod shows, wherever it stands; distances do not. */
static void the_finest_reading_tells(void **state)
{
	static const struct {
		const char *text;
		int decimals, fraction;
		int64_t unsure;
	} cases[] = {
		{ HEADER "m,4.5,5.17,100,100\nn,4.80,5.4,10,210.125\n", 2, 1,
		  RB_FOOT / 50 },
		{ HEADER "m,4.521,5.17,100,100\nn,4.80,5.4,10,210\n", 3, 1,
		  RB_FOOT / 500 },
		{ HEADER "m,4'-6 1/8\",5.17,100,100\nn,4.80,5.4,10,210\n", 2, 8,
		  RB_FOOT / 50 },
		{ HEADER "m,4.520833,5.17,100,100\nn,4.80,5.4,10,210\n", 4, 1,
		  2 * RB_SIXTYFOURTH }, /* 4'-6 1/4" */
		{ "unit,ft-in\n" HEADER
		  "m,4'-6\",5'-2\",100,100\nn,4'-9\",5'-5\",10,210\n",
		  0, 1, 2 * RB_INCH },
		{ "unit,ft-in\n" HEADER
		  "m,4'-6 1/4\",5'-2 1/16\",100,100\nn,4'-9\",5'-5 5/8\",10,210\n",
		  0, 16, RB_INCH / 8 },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		struct read r;

		read_peg(&r, cases[i].text, NULL);
		assert_non_null(r.peg);
		if (r.peg->decimals != cases[i].decimals ||
		    r.peg->fraction != cases[i].fraction ||
		    r.peg->unsure.nm != cases[i].unsure) {
			print_error("row %zu: %d decimals, 1/%d, %lld nm\n", i,
				    r.peg->decimals, r.peg->fraction,
				    (long long)r.peg->unsure.nm);
			wrong++;
		}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

/* As much as is allowed over its run is not over it; a hair more is. */
static void each_limit_is_its_words(void **state)
{
	static const struct {
		const char *words;
		int64_t rise, run;
	} limits[RB_PEG_LIMITS] = {
		{ "1 mm in 50 m", RB_MILLIMETRE, 50 * RB_METRE },
		{ "0.003 ft in 100 ft", FT5(300), 100 * RB_FOOT },
		{ "0.005 ft in 100 ft", FT5(500), 100 * RB_FOOT },
		{ "2 mm in 30 m", 2 * RB_MILLIMETRE, 30 * RB_METRE },
	};

	(void)state;
	for (size_t i = 0; i < RB_PEG_LIMITS; i++) {
		const struct rb_peg_limit *limit = rb_peg_limit(i);
		struct rb_two_peg peg = { .rise = { limits[i].rise },
					  .run = { limits[i].run } };

		assert_string_equal(limit->words, limits[i].words);
		assert_false(rb_two_peg_exceeds(&peg, limit));
		peg.rise.nm = -limits[i].rise - 1;
		assert_true(rb_two_peg_exceeds(&peg, limit));
	}
}

/* Exactly a limit is not over it. */
static void limits_are_compared_exactly(void **state)
{
	static const struct {
		const char *far; /* the second reading on b */
		int over[RB_PEG_LIMITS];
	} cases[] = {
		{ "5.4500", { 0, 0, 0, 0 } }, { "5.4540", { 0, 0, 0, 0 } },
		{ "5.4560", { 1, 0, 0, 0 } }, { "5.4561", { 1, 1, 0, 0 } },
		{ "5.4440", { 1, 0, 0, 0 } }, { "5.4600", { 1, 1, 0, 0 } },
		{ "5.4601", { 1, 1, 1, 0 } }, { "5.4634", { 1, 1, 1, 1 } },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		char text[160] = HEADER "m,4.52,5.17,100,100\nn,4.80,";
		struct read r;

		strncat(text, cases[i].far, 8);
		strncat(text, ",10,210\n", 9);
		read_peg(&r, text, NULL);
		assert_non_null(r.peg);
		for (size_t k = 0; k < RB_PEG_LIMITS; k++)
			if (rb_two_peg_exceeds(r.peg, rb_peg_limit(k)) !=
			    cases[i].over[k]) {
				print_error("%s against %s\n", cases[i].far,
					    rb_peg_limit(k)->words);
				wrong++;
			}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

/* -- the effect on a book -- */

/* Sight lengths of our own; the error is +0.010 ft in 100 ft. */
static const char level[] = HEADER "m,4.52,5.17,100,100\nn,4.80,5.47,10,210\n";
static const char book_text[] = "point,known elevation,bs,is,fs,bs dist,fs dist\n"
				"BM-1,100.00,4.27,,,30,\n"
				"FAR,,,5.00,,,230\n"
				"TP-1,,5.11,,6.03,50,80\n"
				"BM-2,99.00,,,4.35,,70\n"
				"BM-2,,4.35,,,40,\n"
				"END,,,,5.00,,\n";

static void effect_on_a_book(void **state)
{
	struct read r;
	struct rb_findings findings;
	struct rb_book *book;
	struct rb_sections *sections;
	struct rb_judging judging;
	struct rb_peg_effect *effect;

	(void)state;
	read_peg(&r, level, NULL);
	assert_non_null(r.peg);
	rb_findings_init(&findings, r.arena, "book.csv");
	book = rb_book_read(r.arena, &findings, book_text, strlen(book_text));
	assert_non_null(book);
	judging = rb_judging_of(book);
	sections = rb_sections(r.arena, &findings, rb_reduce(r.arena, &findings, book),
			       &judging);
	assert_non_null(sections);
	effect = rb_peg_effect(r.arena, &findings, r.peg, sections);
	assert_non_null(effect);
	assert_int_equal(sections->sections, 2);
	assert_int_equal(effect->difference[0].nm, -70 * RB_FOOT);
	assert_int_equal(effect->lift[0].nm, FT5(-700));
	assert_false(rb_length_given(effect->difference[1]));
	assert_false(rb_length_given(effect->lift[1]));
	assert_int_equal(effect->worst, 1); /* FAR: 30 ft back, 230 ft forward */
	assert_int_equal(effect->worst_lift.nm, FT5(-2000));
	rb_arena_free(r.arena);
}

/* A backsight of no known length: from there on nothing is known, and nothing told. */
static void a_missing_length_tells_nothing(void **state)
{
	static const char *const books[] = {
		"point,known elevation,bs,fs,bs dist,fs dist\n"
		"BM-1,100.00,4.27,,30,\nTP-1,,5.11,6.03,,80\nBM-2,99.00,,4.35,,170\n",
		"point,known elevation,bs,fs,bs dist,fs dist\n"
		"BM-1,100.00,4.27,,30,\nTP-1,,5.11,6.03,50,80\nTP-2,,5.11,6.03,50,\n"
		"BM-2,98.08,,4.35,,170\n",
		"point,known elevation,bs,fs,bs dist,fs dist\n" /* and three sections */
		"BM-1,100.00,4.27,,30,\nTP-1,,5.11,6.03,50,80\nBM-2,99.00,4.35,4.35,40,50\n"
		"BM-3,99.00,4.35,4.35,40,40\nBM-4,99.00,,4.35,,40\n",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(books); i++) {
		struct read r;
		struct rb_findings findings;
		struct rb_book *book;
		struct rb_judging judging;
		struct rb_sections *sections;
		struct rb_peg_effect *effect;

		read_peg(&r, level, NULL);
		rb_findings_init(&findings, r.arena, "book.csv");
		book = rb_book_read(r.arena, &findings, books[i], strlen(books[i]));
		assert_non_null(book);
		judging = rb_judging_of(book);
		sections = rb_sections(r.arena, &findings,
				       rb_reduce(r.arena, &findings, book), &judging);
		assert_non_null(sections);
		effect = rb_peg_effect(r.arena, &findings, r.peg, sections);
		assert_non_null(effect);
		assert_int_equal(effect->worst, 1); /* TP-1: 30 ft back, 80 forward */
		assert_int_equal(effect->worst_lift.nm, FT5(-500));
		rb_arena_free(r.arena);
	}
}

/* Every sight as long as its backsight: nothing is out. */
static void nothing_is_out_in_the_middle(void **state)
{
	static const char text[] = "point,known elevation,bs,fs,bs dist,fs dist\n"
				   "BM-1,100.00,4.27,,50,\nBM-1,,,4.27,,50\n";
	struct read r;
	struct rb_findings findings;
	struct rb_book *book;
	struct rb_judging judging;
	struct rb_sections *sections;
	struct rb_peg_effect *effect;

	(void)state;
	read_peg(&r, worked[0].text, NULL);
	rb_findings_init(&findings, r.arena, "book.csv");
	book = rb_book_read(r.arena, &findings, text, strlen(text));
	assert_non_null(book);
	judging = rb_judging_of(book);
	sections = rb_sections(r.arena, &findings, rb_reduce(r.arena, &findings, book),
			       &judging);
	assert_non_null(sections);
	effect = rb_peg_effect(r.arena, &findings, r.peg, sections);
	assert_non_null(effect);
	assert_int_equal(effect->worst, RB_NO_SHOT);
	rb_arena_free(r.arena);
}

/* -- memory -- */

static int allowed;

static void *grudging(void *old, size_t size)
{
	return allowed-- > 0 ? realloc(old, size) : NULL;
}

static void memory_may_run_out(void **state)
{
	const struct rb_allocator allocator = { grudging, free };
	bool done = false;

	(void)state;
	for (int limit = 0; !done && limit < 200; limit++) {
		struct read r;

		allowed = limit;
		read_peg(&r, level, &allocator);
		done = r.peg != NULL;
		if (r.arena)
			assert_true(done != r.findings.out_of_memory);
		rb_arena_free(r.arena);
	}
	assert_true(done);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(errors_are_worked_out),
		cmocka_unit_test(faults_are_refused),
		cmocka_unit_test(limits_are_compared_exactly),
		cmocka_unit_test(a_row_that_is_begun_is_no_remark),
		cmocka_unit_test(the_level_and_the_day_are_kept),
		cmocka_unit_test(a_second_column_is_told),
		cmocka_unit_test(the_finest_reading_tells),
		cmocka_unit_test(each_limit_is_its_words),
		cmocka_unit_test(effect_on_a_book),
		cmocka_unit_test(a_missing_length_tells_nothing),
		cmocka_unit_test(memory_may_run_out),
		cmocka_unit_test(nothing_is_out_in_the_middle),
	};

	return cmocka_run_group_tests_name("two_peg", tests, NULL, NULL);
}
