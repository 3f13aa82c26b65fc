/* SPDX-License-Identifier: MIT */
/* test_finding.c - a list of findings that can always take one more. */
#include "notes.h"

#include <stdlib.h>

static int allowed; /* requests for memory that are granted */

static void *failing_resize(void *old, size_t size)
{
	return allowed-- > 0 ? realloc(old, size) : NULL;
}

static const struct rb_allocator failing = { failing_resize, free };

static void add(struct rb_findings *findings, enum rb_code code, uint32_t line)
{
	rb_findings_add(findings, code, rb_at(line, 0, NULL, NULL), rb_nothing(),
			rb_nothing());
}

static void keeps_them_in_the_order_found(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	char text[ROOM];

	(void)state;
	rb_findings_init(&findings, arena, "larch.csv");
	assert_string_equal(findings.file, "larch.csv");
	assert_true(rb_findings_allow_result(&findings));
	add(&findings, RB_CODE_TENTHS_ONLY, 0);
	add(&findings, RB_CODE_DATE_CELL, 9);
	add(&findings, RB_CODE_NEAR_NAME, 4);
	assert_string_equal(findings_as_text(text, &findings),
			    "tenths-only:0 date-cell@9:0 near-name@4:0");
	rb_arena_free(arena);
}

/* Past so many of a kind only the count goes on; other kinds are still kept. */
static void keeps_so_many_of_a_kind(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;

	(void)state;
	rb_findings_init(&findings, arena, "larch.csv");
	for (uint32_t i = 1; i <= 5000; i++)
		add(&findings, RB_CODE_DATE_CELL, i);
	add(&findings, RB_CODE_TIME_CELL, 7);
	assert_int_equal(findings.count, RB_FINDINGS_OF_A_KIND + 1);
	assert_int_equal(findings.of_code[RB_CODE_DATE_CELL], 5000);
	assert_int_equal(findings.of_severity[RB_ERROR], 5001);
	assert_int_equal(findings.item[RB_FINDINGS_OF_A_KIND - 1]->place.line,
			 RB_FINDINGS_OF_A_KIND);
	assert_int_equal(findings.item[RB_FINDINGS_OF_A_KIND]->code, RB_CODE_TIME_CELL);
	rb_arena_free(arena);
}

static void keeps_place_and_arguments(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_argument four[RB_ARGUMENTS] = {
		rb_text("BM-1"), rb_measure(rb_length_of(RB_FOOT), RB_METRES),
		rb_number(7), rb_line(12)
	};
	struct rb_findings findings;
	const struct rb_finding *f;

	(void)state;
	rb_findings_init(&findings, arena, "larch.csv");
	rb_findings_add4(&findings, RB_CODE_DOES_NOT_CLOSE,
			 rb_at(3, 4, "TP-1", "foresight"), four);
	rb_findings_add(&findings, RB_CODE_TENTHS_ONLY, rb_in_file(), rb_number(2),
			rb_nothing());
	f = findings.item[0];
	assert_int_equal(f->place.line, 3);
	assert_int_equal(f->place.cell, 4);
	assert_string_equal(f->place.point, "TP-1");
	assert_string_equal(f->place.heading, "foresight");
	assert_string_equal(f->argument[0].text, "BM-1");
	assert_int_equal(f->argument[1].kind, RB_LENGTH);
	assert_int_equal(f->argument[1].length.nm, RB_FOOT);
	assert_int_equal(f->argument[1].unit, RB_METRES);
	assert_int_equal(f->argument[2].count, 7);
	assert_int_equal(f->argument[3].kind, RB_LINE);
	f = findings.item[1];
	assert_int_equal(f->place.line, 0);
	assert_int_equal(f->place.cell, RB_WHOLE_ROW);
	assert_int_equal(f->argument[0].count, 2);
	assert_int_equal(f->argument[1].kind, RB_NOTHING);
	assert_int_equal(f->argument[3].kind, RB_NOTHING);
	rb_arena_free(arena);
}

/* Only an error, or no memory, takes the result away. */
static void what_takes_the_result_away(void **state)
{
	static const struct {
		enum rb_code code;
		enum rb_severity severity;
		bool result;
	} cases[] = {
		{ RB_CODE_OPEN_SECTION, RB_NOTE, true },
		{ RB_CODE_NEAR_NAME, RB_WARNING, true },
		{ RB_CODE_DOES_NOT_CLOSE, RB_FAILED, true },
		{ RB_CODE_DATE_CELL, RB_ERROR, false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_findings findings;

		rb_findings_init(&findings, arena, "larch.csv");
		add(&findings, cases[i].code, 1);
		assert_int_equal(rb_code_severity(cases[i].code), cases[i].severity);
		assert_int_equal(findings.of_severity[cases[i].severity], 1);
		assert_int_equal(rb_findings_allow_result(&findings), cases[i].result);
		assert_false(rb_findings_no_memory(&findings));
		assert_false(rb_findings_allow_result(&findings));
		rb_arena_free(arena);
	}
}

/* Without memory it counts on and remembers; what it had stays. */
static void adding_never_fails(void **state)
{
	struct rb_findings findings;
	struct rb_arena *arena;

	(void)state;
	for (int granted = 0; granted < 2; granted++) {
		allowed = 1;
		arena = rb_arena_new(&failing);
		assert_non_null(arena);
		allowed = granted;
		rb_findings_init(&findings, arena, "larch.csv");
		for (uint32_t i = 0; i < 3000; i++)
			add(&findings, (enum rb_code)(i % RB_CODES), i);
		assert_int_equal(findings.out_of_memory,
				 !granted || findings.count < 1000);
		assert_int_equal(findings.of_code[RB_CODE_NOT_A_READING],
				 3000 / RB_CODES + 1);
		rb_arena_free(arena);
	}
}

/* Scripts match on the names: every code has one, of small letters, and no two the same.
 */
static void names_are_stable_and_distinct(void **state)
{
	(void)state;
	for (int i = 0; i < RB_CODES; i++) {
		const char *name = rb_code_name((enum rb_code)i);

		assert_non_null(name);
		assert_int_equal(strspn(name, "abcdefghijklmnopqrstuvwxyz0123456789-"),
				 strlen(name));
		assert_true(strlen(name) > 2);
		for (int j = 0; j < i; j++)
			assert_string_not_equal(name, rb_code_name((enum rb_code)j));
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(keeps_them_in_the_order_found),
		cmocka_unit_test(keeps_so_many_of_a_kind),
		cmocka_unit_test(keeps_place_and_arguments),
		cmocka_unit_test(what_takes_the_result_away),
		cmocka_unit_test(adding_never_fails),
		cmocka_unit_test(names_are_stable_and_distinct),
	};

	return cmocka_run_group_tests_name("finding", tests, NULL, NULL);
}
