/* SPDX-License-Identifier: MIT */
/* Pages as plain text: alignment, spilling, wrapping, order. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/text.h"

static struct capture capture;
static const struct rb_text_style plain = { RB_TEXT_COLUMNS, false };

static const char *written(const struct rb_page *page, struct rb_text_style style)
{
	capture_init(&capture);
	return rb_page_write_text(&capture.sink, page, style) ? captured(&capture)
							      : "(no memory)";
}

static void aligns_columns(void **state)
{
	static const struct rb_table_column column[] = {
		{ "point", RB_LEFT, RB_SPILLS },   { "elevation", RB_ON_POINT, RB_KEEPS },
		{ "rod", RB_ON_INCHES, RB_KEEPS }, { "grade\nrod", RB_RIGHT, RB_KEEPS },
		{ "", RB_LEFT, RB_SPILLS },
	};
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_page *page = rb_page_new(arena);
	struct rb_table *table = rb_page_table(page, NULL, column, 5);

	(void)state;
	rb_table_add(table, RB_ROW,
		     (const char *[]){ "BM-1", "100.00", "5'-3 1/2\"", "7", "known" });
	rb_table_add(table, RB_ROW,
		     (const char *[]){ "\xE6\xB0\xB4", "-0.5", "12'-11\"", "10", NULL });
	rb_table_add(table, RB_ROW, (const char *[]){ NULL, "8", "-", NULL, "\x1b[1m" });
	rb_table_note(table, "a note under the row");
	rb_table_add(table, RB_ROW_SUMS,
		     (const char *[]){ "sums", NULL, NULL, "17", "" });
	assert_string_equal(written(page, plain),
			    "                             grade\n"
			    "point  elevation        rod    rod\n"
			    "-------------------------------------------\n"
			    "BM-1    100.00    5'-3 1/2\"      7  known\n"
			    "\xE6\xB0\xB4       -0.5       12'-11\"     10\n"
			    "          8               -         \\x1b[1m\n"
			    "    a note under the row\n"
			    "-------------------------------------------\n"
			    "sums                            17\n");
	rb_arena_free(arena);
}

/* Columns that may move go below their rows, the last first, and no more of them than it
 * takes; a heading goes with its cell. */
static void moves_columns_that_do_not_fit(void **state)
{
	static const struct rb_table_column column[] = {
		{ "point", RB_LEFT, RB_SPILLS },
		{ "chainage", RB_RIGHT, RB_MOVES },
		{ "elevation", RB_ON_POINT, RB_KEEPS },
		{ "adjusted", RB_ON_POINT, RB_MOVES_LAST },
		{ "depth\nbelow", RB_ON_POINT, RB_MOVES },
		{ "", RB_LEFT, RB_SPILLS },
	};
	static const char *const rows[][6] = {
		{ "MH-1", "0+50", "96.87", "96.877", "90.1", "rim" },
		{ "BM-1", "", "100.00", "100.000", "", "" },
	};
	static const struct {
		size_t columns;
		const char *text;
	} cases[] = {
		{ 38, "point  chainage  elevation  adjusted\n"
		      "------------------------------------\n"
		      "MH-1       0+50    96.87     96.877\n"
		      "    depth below 90.1; rim\n"
		      "BM-1              100.00    100.000\n" },
		{ 30, "point  elevation  adjusted\n"
		      "--------------------------\n"
		      "MH-1     96.87     96.877\n"
		      "    chainage 0+50; depth below\n"
		      "    90.1; rim\n"
		      "BM-1    100.00    100.000\n" },
		{ 20, "point  elevation\n"
		      "----------------\n"
		      "MH-1     96.87\n"
		      "    chainage 0+50;\n"
		      "    adjusted 96.877;\n"
		      "    depth below\n"
		      "    90.1; rim\n"
		      "BM-1    100.00\n"
		      "    adjusted 100.000\n" },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_page *page = rb_page_new(arena);
		struct rb_table *table = rb_page_table(page, NULL, column, 6);

		rb_table_add(table, RB_ROW, rows[0]);
		rb_table_add(table, RB_ROW, rows[1]);
		capture_init(&capture);
		rb_page_write_text(&capture.sink, page,
				   (struct rb_text_style){ cases[i].columns, false });
		if (strcmp(captured(&capture), cases[i].text)) {
			print_error("%zu columns: got\n%s", cases[i].columns,
				    captured(&capture));
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

static void spills_what_does_not_fit(void **state)
{
	static const struct rb_table_column column[] = {
		{ "point", RB_LEFT, RB_SPILLS },
		{ "FS", RB_ON_POINT, RB_KEEPS },
		{ "remarks", RB_LEFT, RB_SPILLS },
	};
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_page *page = rb_page_new(arena);
	struct rb_table *table = rb_page_table(page, "a caption", column, 3);

	(void)state;
	rb_table_add(table, RB_ROW,
		     (const char *[]){ "a manhole with a name that is far too long",
				       "4.27", "short" });
	rb_table_add(table, RB_ROW,
		     (const char *[]){ "TP-1", "10.5",
				       "nail in the root of the maple across the lane" });
	assert_string_equal(written(page, (struct rb_text_style){ 40, false }),
			    "a caption\n"
			    "point     FS  remarks\n"
			    "---------------------\n"
			    "a manhole with a name that is far too\n"
			    "long\n"
			    "        4.27  short\n"
			    "TP-1   10.5\n"
			    "    nail in the root of the maple across\n"
			    "    the lane\n");
	rb_arena_free(arena);
}

/* The verdict is where the eye is: at the end. */
static void puts_the_verdict_last(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_page *page = rb_page_new(arena);

	(void)state;
	rb_page_add(page, RB_TITLE, "Larch Street drain", "larch.csv");
	rb_page_add(page, RB_VERDICT, "CLOSES", NULL);
	rb_page_add(page, RB_PARAGRAPH,
		    "words that are long enough to be wrapped at forty columns", NULL);
	rb_page_add(page, RB_LINES, "HI = 1 + 2\n    = 3", NULL);
	rb_page_add(page, RB_CAUTION, "look up", "29 CFR 1926.416(a)(1)");
	assert_string_equal(written(page, (struct rb_text_style){ 40, false }),
			    "Larch Street drain             larch.csv\n"
			    "words that are long enough to be wrapped\n"
			    "at forty columns\n"
			    "HI = 1 + 2\n"
			    "    = 3\n"
			    "\n"
			    "CAUTION: look up\n"
			    "  (29 CFR 1926.416(a)(1))\n"
			    "\n"
			    "CLOSES\n");
	assert_non_null(strstr(written(page, (struct rb_text_style){ 40, true }),
			       "\x1b[1mCLOSES\x1b[0m"));
	rb_arena_free(arena);
}

static void long_title_takes_two_lines(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_page *page = rb_page_new(arena);

	(void)state;
	rb_page_add(page, RB_TITLE, "a title of some thirty columns", "and an aside");
	assert_string_equal(written(page, (struct rb_text_style){ 40, false }),
			    "a title of some thirty columns\nand an aside\n");
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(aligns_columns),
		cmocka_unit_test(moves_columns_that_do_not_fit),
		cmocka_unit_test(spills_what_does_not_fit),
		cmocka_unit_test(puts_the_verdict_last),
		cmocka_unit_test(long_title_takes_two_lines),
	};

	return cmocka_run_group_tests_name("text", tests, NULL, NULL);
}
