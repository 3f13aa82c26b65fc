/* SPDX-License-Identifier: MIT */
/* test_limits.c - cells, headings and files that are longer than any that is meant. */
#include "notes.h"

#include "notes/rows.h"

#define LONG "a heading of more letters than any that has a meaning in a book"

static void no_place_of_the_rod_is_so_long(void **state)
{
	static const char words[] = "on the top of the pipe, outside, at its end";

	(void)state;
	assert_int_equal(rb_rod_on_parse(words, sizeof words - 1), RB_ON_UNSAID);
	assert_int_equal(rb_rod_on_parse("Top of  Pipe", 12), RB_ON_TOP_OF_PIPE);
}

/* The header may stand again further down, with such a heading too. */
static void a_long_heading_is_only_unknown(void **state)
{
	struct notes notes = notes_of("point,known elevation,bs,fs," LONG "\n"
				      "A,100,4,,x\n"
				      "point,known elevation,bs,fs," LONG "\n"
				      "A,,,4,\n");
	char text[ROOM];

	(void)state;
	assert_non_null(notes.book);
	findings_as_text(text, &notes.findings);
	assert_non_null(strstr(text, "unknown-column@1:4"));
	assert_null(strstr(text, "@3:0"));
	notes_end(&notes);
}

/* Lines and columns are counted in 32 bits: no byte of such a file is looked at. */
static void a_file_of_two_gigabytes_is_refused(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;

	(void)state;
	rb_findings_init(&findings, arena, "book.csv");
	assert_null(rb_source_open(arena, &findings, "", (size_t)INT32_MAX));
	assert_int_equal(findings.of_code[RB_CODE_FILE_TOO_LONG], 1);
	rb_arena_free(arena);
}

/* A twentieth of an inch is shown by the finest part that there is. */
static void odd_fractions_are_shown_in_64ths(void **state)
{
	struct notes notes = notes_of("unit,ft-in\npoint,known elevation,bs,fs\n"
				      "A,100,4'-3 1/20\",\nA,,,4'-3 1/20\"\n");

	(void)state;
	assert_non_null(notes.book);
	assert_int_equal(rb_book_style(notes.book).fraction, 64);
	notes_end(&notes);
}

/* What a level rises in a hundred feet is told in decimals, whatever the rod reads. */
static void collimation_in_a_book_of_inches(void **state)
{
	struct notes notes = notes_of("unit,ft-in\ncollimation,+0.004 per 100\n"
				      "point,known elevation,bs,fs\n"
				      "A,100,4'-3\",\nA,,,4'-3\"\n");

	(void)state;
	assert_non_null(notes.book);
	assert_int_equal(notes.book->key.collimation.nm, 4 * (RB_FOOT / 1000));
	assert_int_equal(notes.book->key.collimation_run.nm, 100 * RB_FOOT);
	notes_end(&notes);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(no_place_of_the_rod_is_so_long),
		cmocka_unit_test(a_long_heading_is_only_unknown),
		cmocka_unit_test(a_file_of_two_gigabytes_is_refused),
		cmocka_unit_test(odd_fractions_are_shown_in_64ths),
		cmocka_unit_test(collimation_in_a_book_of_inches),
	};

	return cmocka_run_group_tests_name("limits", tests, NULL, NULL);
}
