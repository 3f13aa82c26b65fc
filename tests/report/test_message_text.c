/* SPDX-License-Identifier: MIT */
/* Messages as they stand on a terminal. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>

#include "capture.h"
#include "report/message_text.h"

static struct capture capture;
static const struct rb_text_style plain = { RB_TEXT_COLUMNS, false };

static const char *messages_of(const char *book, const char *outcome)
{
	struct reduced_book b;

	reduce_text(&b, "larch.csv", book, false);
	capture_init(&capture);
	rb_messages_write_text(&capture.sink, &b.findings, RB_NOTE, plain);
	rb_messages_write_verdict(&capture.sink, &b.findings, outcome, plain);
	rb_arena_free(b.arena);
	return captured(&capture);
}

static void quotes_and_marks(void **state)
{
	(void)state;
	assert_string_equal(
		messages_of("point,BS,IS,FS,known elevation,remarks\n"
			    "BM-1,4.27,,,100.00,\n"
			    "TP-2,05/03/26,,4.1.2,,\"spike, in maple\"\n",
			    "not reduced"),
		"larch.csv:3:6: error: cell B3 (backsight at TP-2) is a date, not a reading "
		"[date-cell]\n"
		"    TP-2,05/03/26,,4.1.2,,\"spike, in maple\"\n"
		"         ^^^^^^^^\n"
		"  the spreadsheet changed what was typed: for 5 ft 3 in write 5'-3\", for\n"
		"  3 ft 5 in write 3'-5\", for 5.3 ft write 5.3; columns set to text keep what is\n"
		"  typed, and so does the inch mark\n"
		"larch.csv:3:16: error: cell D3 (foresight at TP-2) has two decimal points: "
		"'4.1.2' [two-points]\n"
		"    TP-2,05/03/26,,4.1.2,,\"spike, in maple\"\n"
		"                   ^^^^^\n"
		"  leave one of them\n"
		"larch.csv: 2 errors: not reduced\n");
}

/* Columns are counted in characters, marks set by what is seen; ESC never gets out. */
static void marks_what_is_seen(void **state)
{
	(void)state;
	assert_string_equal(
		messages_of("point,BS,IS,known elevation\n"
			    "\xE6\xB0\xB4\x1b\xC3\xA9,oops,,1\n",
			    NULL),
		"larch.csv:2:5: error: cell B2 (backsight at \xE6\xB0\xB4\\x1b\xC3\xA9) is not "
		"a length: 'oops' [not-a-reading]\n"
		"    \xE6\xB0\xB4\\x1b\xC3\xA9,oops,,1\n"
		"            ^^^^\n"
		"  write a reading such as 5.29, 5'-3 1/2\" or 1.613 m, leave the cell empty where\n"
		"  there is none, and keep words for the remarks\n"
		"larch.csv: 1 error\n");
}

static void shortens_long_lines(void **state)
{
	static char book[2048];
	size_t used = (size_t)snprintf(book, sizeof book, "%s",
				       "remarks,point,BS,IS,known elevation,notes\n");
	const char *text;

	(void)state;
	memset(book + used, 'a', 300);
	snprintf(book + used + 300, 400, ",BM,5..5,,1,%0200d\n", 7);
	text = messages_of(book, NULL);
	assert_non_null(strstr(text, "\n    ...aaaaaaaaaaaaaaaaaaaa,BM,5..5,,1,00000"));
	assert_non_null(strstr(text, "000...\n                               ^^^^\n"));
	for (const char *line = text; *line; line += strcspn(line, "\n") + 1)
		if (line[0] == ' ')
			assert_true(strcspn(line, "\n") <= RB_TEXT_COLUMNS);
}

static void counts_what_is_too_many(void **state)
{
	static char book[4096];
	size_t used =
		(size_t)snprintf(book, sizeof book, "point,BS,IS,known elevation\n");
	const char *text;

	(void)state;
	for (int i = 0; i < 35; i++)
		used += (size_t)snprintf(book + used, sizeof book - used, "P%d,,x,\n", i);
	text = messages_of(book, "not reduced");
	assert_non_null(strstr(text, "larch.csv:21:"));
	assert_null(strstr(text, "larch.csv:22:"));
	assert_non_null(
		strstr(text, "larch.csv: and 15 more like this [not-a-reading]\n"));
	assert_non_null(strstr(text, "larch.csv: 35 errors"));
}

static void writes_the_last_line(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;

	(void)state;
	rb_findings_init(&findings, arena, "a.csv");
	capture_init(&capture);
	rb_messages_write_verdict(&capture.sink, &findings, NULL, plain);
	assert_string_equal(captured(&capture), "");
	findings.count = 1;
	findings.of_severity[RB_ERROR] = 2;
	findings.of_severity[RB_FAILED] = 1;
	findings.of_severity[RB_WARNING] = 1;
	findings.of_severity[RB_NOTE] = 3;
	capture_init(&capture);
	rb_messages_write_verdict(&capture.sink, &findings, "not reduced", plain);
	assert_string_equal(captured(&capture),
			    "a.csv: 2 errors, 1 failed check, 1 warning, "
			    "3 notes: not reduced\n");
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(quotes_and_marks),
		cmocka_unit_test(marks_what_is_seen),
		cmocka_unit_test(shortens_long_lines),
		cmocka_unit_test(counts_what_is_too_many),
		cmocka_unit_test(writes_the_last_line),
	};

	return cmocka_run_group_tests_name("message_text", tests, NULL, NULL);
}
