/* SPDX-License-Identifier: MIT */
/* Words for every code, and their holes filled. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>

#include "capture.h"
#include "report/message.h"
#include "report/message_order.h"
#include "report/width.h"

/* -- the table -- */

static bool is_hole_of(const char *hole, size_t length, const char *arguments)
{
	size_t i = (size_t)(hole[0] - '0');
	char kind = i < strlen(arguments) ? arguments[i] : '\0';

	if (hole[0] < '0' || hole[0] > '9')
		return (length == 5 && !memcmp(hole, "place", 5)) ||
		       (length == 6 && !memcmp(hole, "likely", 6) &&
			strchr(arguments, 'r')) ||
		       (length == 5 && !memcmp(hole, "marks", 5) &&
			strchr(arguments, 'r'));
	if (!kind)
		return false;
	if (length == 1)
		return true;
	if (hole[1] == '|')
		return strchr("CcNn", kind) && memchr(hole + 2, '|', length - 2);
	if (length == 7 && !memcmp(hole + 1, " minus", 6))
		return strchr("Tt", kind);
	if (length == 7 && !memcmp(hole + 1, " whole", 6))
		return kind == 'T';
	return strchr("Ll", kind) && ((length == 5 && !memcmp(hole + 1, " off", 4)) ||
				      (length == 6 && !memcmp(hole + 1, " size", 5)));
}

/* An argument that may be nothing stands only in a part that may be left out. */
static bool may_be_missing(const char *hole, const char *arguments)
{
	if (hole[0] == 'l' || hole[0] == 'm' || !strncmp(hole + 1, " minus", 6))
		return true;
	return hole[0] >= '0' && hole[0] <= '3' &&
	       strchr("tlrcns", arguments[hole[0] - '0']);
}

static int faults_of(const char *template, const char *arguments)
{
	int faults = 0;
	bool inside = false;

	for (const char *c = template; *c; c++) {
		size_t length = strcspn(c, "}");

		faults += (*c == '[' && inside) || (*c == ']' && !inside);
		inside = *c == '[' || (inside && *c != ']');
		if (*c != '{')
			continue;
		faults += !c[length] || !is_hole_of(c + 1, length - 1, arguments);
		faults += !inside && may_be_missing(c + 1, arguments);
		c += length - (c[length] == '\0');
	}
	return faults + inside;
}

/* Lower case, no full stop: but a name of a notation may begin with a capital. */
static bool ends_well(const char *text)
{
	size_t length = strlen(text);

	return !length || !strchr(".!, ", text[length - 1]);
}

static void every_code_has_words(void **state)
{
	int wrong = 0;

	(void)state;
	for (int i = 0; i < RB_CODES; i++) {
		const struct rb_words *w = rb_words_of((enum rb_code)i);
		bool kinds =
			strspn(w->arguments, "TLRCNStlrcns") == strlen(w->arguments) &&
			strlen(w->arguments) <= RB_ARGUMENTS;

		if (kinds && *w->text && *w->hint && ends_well(w->text) &&
		    ends_well(w->hint) && !(w->text[0] >= 'A' && w->text[0] <= 'Z') &&
		    !faults_of(w->text, w->arguments) &&
		    !faults_of(w->hint, w->arguments))
			continue;
		print_error("%s: no words, or a hole that nothing fills: %s | %s | %s\n",
			    rb_code_name((enum rb_code)i), w->arguments, w->text,
			    w->hint);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* The program promises nothing that only a code official or a competent person can. */
static void promises_nothing(void **state)
{
	int wrong = 0;

	(void)state;
	for (int i = 0; i < RB_CODES; i++) {
		const struct rb_words *w = rb_words_of((enum rb_code)i);
		static const char *const never[] = { "meets code", "is safe", "illegal" };

		for (size_t n = 0; n < sizeof never / sizeof *never; n++)
			wrong += strstr(w->text, never[n]) || strstr(w->hint, never[n]);
	}
	assert_int_equal(wrong, 0);
}

/* -- the findings of books -- */

#define HEADER "point,BS,IS,FS,known elevation,remarks\nBM-1,4.27,,,100.00,\n"

#define FEET_INCHES "unit,ft-in\npoint,BS,IS,FS,known elevation\n"

/* clang-format off */
static const struct message_case {
	const char *book, *code, *cell, *text, *hint; /* hint: a part of it */
} message_cases[] = {
	{ HEADER "TP-1,05/03/26,,,,spike\n", "date-cell", "B3",
	  "cell B3 (backsight at TP-1) is a date, not a reading",
	  "what was typed: for 5 ft 3 in write 5'-3\", for 3 ft 5 in write 3'-5\", for 5.3 ft write 5.3;" },
	{ HEADER "TP-1,,5:03:00 AM,,,\n", "time-cell", "C3",
	  "cell C3 (intermediate at TP-1) is a time, not a reading", "write 5'-3\"" },
	{ HEADER "TP-1,5'-13\",,,,\n", "inches-over-eleven", "B3",
	  "cell B3 (backsight at TP-1) has twelve inches or more beside feet: '5'-13\"'",
	  "carry them over; for 6 ft 1 in write 6'-1\"" },
	{ HEADER "TP-1,,5.3.2,,,\n", "two-points", "C3",
	  "cell C3 (intermediate at TP-1) has two decimal points: '5.3.2'", "leave one of them" },
	{ HEADER "TP-1,,1624,,,\n", "lost-point", "C3",
	  "cell C3 (intermediate at TP-1) has lost its decimal point, or is longer than the rod: '1624'",
	  "for 16.24 ft write 16.24, for 1.624 ft write 1.624;" },
	{ HEADER "TP-1,,5O,,,\n", "letter-for-digit", "C3",
	  "cell C3 (intermediate at TP-1) has a letter among the digits: '5O'",
	  "l and I; for 5 ft write 5, for 0.5 ft write 0.5" },
	{ HEADER "TP-1,,5 29,,,\n", "spaced-digits", "C3",
	  "cell C3 (intermediate at TP-1) has digits with nothing but a space between: '5 29'",
	  "inch mark: for 5.29 ft write 5.29" },
	{ HEADER "TP-1,,nope,,,\n", "not-a-reading", "C3",
	  "cell C3 (intermediate at TP-1) is not a length: 'nope'", "keep words for the remarks" },
	{ HEADER ",2.00,,,,\n", "no-name", "B3",
	  "cell B3 (backsight) stands in a row without a name", "its backsight hangs on it" },
	{ HEADER "TP-1,2.00,3.00,,,\n", "sights-together", "C3",
	  "cell C3 (intermediate at TP-1) stands beside a backsight, and an intermediate sight stands alone",
	  "a row of its own" },
	{ HEADER "BM-1,,,4.00,101.00,\n", "known-twice", "E3",
	  "cell E3 (known elevation at BM-1) gives a known elevation of 101.00 ft, and the same point has 100.00 ft",
	  "keep the right one" },
	{ HEADER "TP-l,,,4.00,,\nTP-9,3.00,,,,\n", "not-reached", "B4",
	  "cell B4 (backsight at TP-9) is a backsight on 'TP-9', which no sight has reached",
	  "needs a foresight before" },
	{ "decimals,lots\n" HEADER "BM-1,,,4.00,,\n", "bad-key", "B1",
	  "cell B1 (decimals) cannot be read: 'lots'", "write a whole number from 0 to 6" },
	{ "unit,furlong\n" HEADER "BM-1,,,4.00,,\n", "bad-unit", "B1",
	  "cell B1 (unit) is not a unit: 'furlong'", "write ft, in, ft-in, m or mm" },
	{ "unit,ft-in\npoint,BS,IS,FS,known elevation\nBM-1,5.10,,,100\n", "no-unit-mark", "B3",
	  "cell B3 (backsight at BM-1) has no foot or inch mark: '5.10'",
	  "for 5 ft 10 in write 5'-10\", for 5.1 ft write 5.1 ft" },
	/* what a sheet makes of -5-3 */
	{ FEET_INCHES "BM-1,-8,,,100\n", "no-unit-mark", "B3",
	  "cell B3 (backsight at BM-1) has no foot or inch mark: '-8'",
	  "carries its marks; a spreadsheet works out an entry such as -5-3, to -8, and -8 may "
	  "be one: write it with its marks, -5'-3\", inv 5'-3\" or (5'-3\")" },
	{ FEET_INCHES "BM-1,\xE2\x88\x92" "8.5,,,100\n", "no-unit-mark", "B3",
	  "cell B3 (backsight at BM-1) has no foot or inch mark: ",
	  "for -8 ft 5 in write -8'-5\", for -8.5 ft write -8.5 ft; a spreadsheet works out" },
	/* a pair of numbers is feet and inches first, in such a book */
	{ FEET_INCHES "BM-1,5 3,,,100\n", "spaced-digits", "B3",
	  "cell B3 (backsight at BM-1) has digits with nothing but a space between: '5 3'",
	  "inch mark: for 5 ft 3 in write 5'-3\", for 5.3 ft write 5.3 ft" },
	{ FEET_INCHES "BM-1,5 50,,,100\n", "spaced-digits", "B3",
	  "cell B3 (backsight at BM-1) has digits with nothing but a space between: '5 50'",
	  "inch mark: for 5.5 ft write 5.5 ft" },
	{ FEET_INCHES "BM-1,5 4 1/2,,,100\n", "spaced-digits", "B3",
	  "cell B3 (backsight at BM-1) has digits with nothing but a space between: '5 4 1/2'",
	  "inch mark: for 5 ft 4 1/2 in write 5'-4 1/2\"" },
	{ FEET_INCHES "BM-1,5.O9,,,100\n", "letter-for-digit", "B3",
	  "cell B3 (backsight at BM-1) has a letter among the digits: '5.O9'",
	  "l and I; for 5 ft 9 in write 5'-9\", for 5.09 ft write 5.09 ft" },
	{ HEADER "TP-1,,5 3,,,\n", "spaced-digits", "C3",
	  "cell C3 (intermediate at TP-1) has digits with nothing but a space between: '5 3'",
	  "inch mark: for 5.3 ft write 5.3, for 5 ft 3 in write 5'-3\"" },
	{ "unit,m\npoint,BS,IS,FS,known elevation\nBM-1,1613,,,100\n", "lost-point", "B3",
	  "cell B3 (backsight at BM-1) has lost its decimal point, or is longer than the rod: '1613'",
	  "for 1.613 m write 1.613" },
	{ "a,b\n1,2\n", "no-header", "", "there is no header row: no row has", "rodbook new" },
	{ "PK\003\004rest", "spreadsheet-file", "",
	  "the file is a spreadsheet (.xlsx, .ods) or another zipped file, not CSV", "Save As" },
	{ HEADER "TP-1,,,\"4.00,,\n", "open-quote", "D3",
	  "the quote that opens cell D3", "close it" },
	{ HEADER "BM-1,,,4.21,,\n", "no-tolerance", "",
	  "no tolerance is given, so the misclosure is not judged", "--tolerance" },
	{ "tolerance,0.02\n" HEADER "BM-1,,,4.55,,\n", "does-not-close", "D4",
	  "the section from BM-1 to BM-1 does not close: 0.28 ft low, and 0.02 ft is allowed",
	  "look first" },
	{ "tolerance,9 mm sqrt(setups)\nunit,mm\npoint,BS,FS,known elevation\n"
	  "A,1000,,10 m\nA,,1010,\n", "does-not-close", "C5",
	  "the section from A to A does not close: 10 mm low, and 9 mm is allowed", "" },
	{ HEADER "TP-1,,,5.00,,\n", "open-section", "",
	  "the levels from BM-1 end open on TP-1: unchecked", "known elevation" },
	{ HEADER "TP-1,5.11,,6.03,,\nBM-2,,3.00,,100.34,\n", "open-section", "",
	  "the levels from BM-1 end open on TP-1: unchecked",
	  "the sight on BM-2 is booked as an intermediate sight, and comes out 0.01 ft high: "
	  "booked as a foresight it closes them; or carry them on" },
	{ HEADER "BM-1,,4.27,,,\n", "open-section", "",
	  "the levels from BM-1 end open on BM-1: unchecked", "comes out exactly right:" },
	{ HEADER "TP-1,,,-2.00,,\nTP-2,,(1.00),,,\nBM-1,,,4.27,,\n", "inverted", "",
	  "the rod was held upside down on lines 3 and 4: what was read there counts negative", "" },
	{ HEADER "TP-1,,\x1b[2J5,,,\n", "not-a-reading", "C3",
	  "cell C3 (intermediate at TP-1) is not a length: '\\x1b[2J5'", "" },
	{ "point,BS,IS,FS,known elevation,remrks\nBM-1,4.27,,,100.00,\nBM-1,,,4.27,,\n",
	  "unknown-column", "F1",
	  "cell F1 heads a column that is not known, and is not read: 'remrks'",
	  "did you mean 'remarks'?" },
};
/* clang-format on */

/* The first message of a code; false if there is none. */
static bool first_of(const struct rb_findings *findings, const char *code,
		     struct rb_message *message)
{
	struct rb_cursor cursor = { 0 };

	for (size_t i = 0; i < findings->count; i++) {
		const struct rb_finding *finding = findings->item[i];

		if (strcmp(rb_code_name(finding->code), code) != 0)
			continue;
		cursor = (struct rb_cursor){ 0 };
		rb_message_make(message, findings, finding, &cursor);
		return true;
	}
	return false;
}

static void words_findings(void **state)
{
	static struct rb_message m;
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof message_cases / sizeof *message_cases; i++) {
		const struct message_case *c = &message_cases[i];
		struct reduced_book b;
		bool found;

		reduce_text(&b, "t.csv", c->book, false);
		memset(&m, 0, sizeof m);
		found = first_of(&b.findings, c->code, &m);
		if (!found || strcmp(m.cell, c->cell) != 0 ||
		    strncmp(m.text, c->text, strlen(c->text)) != 0 ||
		    !strstr(m.hint, c->hint)) {
			print_error("row %zu, %s: got %s: %s\n    %s\n", i, c->code,
				    m.cell, m.text, m.hint);
			wrong++;
		}
		rb_arena_free(b.arena);
	}
	assert_int_equal(wrong, 0);
}

/* A cell of a megabyte does not make a message of a megabyte. */
static void shortens_long_texts(void **state)
{
	static char book[40000];
	static struct rb_message m;
	struct reduced_book b;
	size_t used = (size_t)snprintf(book, sizeof book, "%sTP-1,,", HEADER);

	(void)state;
	memset(book + used, 'x', 30000);
	snprintf(book + used + 30000, 100, ",,,\n");
	reduce_text(&b, "t.csv", book, false);
	assert_true(first_of(&b.findings, "not-a-reading", &m));
	assert_true(strlen(m.text) < 300);
	assert_non_null(strstr(m.text, "xxx..."));
	rb_arena_free(b.arena);
}

/* No words are longer than their room: what does not fit is left out, not written past
 * the end. */
static void never_overflows(void **state)
{
	static char heading[RB_MESSAGE_TEXT + 1];
	static struct rb_message m;
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	struct rb_cursor cursor = { 0 };

	(void)state;
	memset(heading, 'h', RB_MESSAGE_TEXT);
	rb_findings_init(&findings, arena, "t.csv");
	rb_findings_add(&findings, RB_CODE_NOT_A_READING,
			rb_at(1, RB_WHOLE_ROW, NULL, heading), rb_text("5.x"),
			rb_nothing());
	rb_message_make(&m, &findings, findings.item[0], &cursor);
	assert_string_equal(m.text, " is not a length: '5.x'");
	rb_arena_free(arena);
}

/* Fifty findings over the whole range of lines come out in order, those of one place as
 * they were found. */
static void sorts_by_place(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	const struct rb_finding **ordered;

	(void)state;
	rb_findings_init(&findings, arena, "t.csv");
	for (uint32_t i = 0; i < 20; i++)
		rb_findings_add(&findings, RB_CODE_NOT_A_READING,
				rb_at(1 + i * 7 % 5, (int32_t)(i % 2), NULL, NULL),
				rb_number(i), rb_nothing());
	rb_findings_add(&findings, RB_CODE_NO_TOLERANCE, rb_in_file(), rb_nothing(),
			rb_nothing());
	rb_findings_add(&findings, RB_CODE_UTF16, rb_in_file(), rb_nothing(),
			rb_nothing());
	ordered = rb_messages_in_order(&findings);
	assert_int_equal(ordered[0]->code, RB_CODE_UTF16);
	assert_int_equal(ordered[21]->code, RB_CODE_NO_TOLERANCE);
	for (size_t i = 2; i < 21; i++) {
		const struct rb_place *a = &ordered[i - 1]->place,
				      *b = &ordered[i]->place;

		assert_true(
			a->line < b->line ||
			(a->line == b->line &&
			 (a->cell < b->cell || (a->cell == b->cell &&
						ordered[i - 1]->argument[0].count <
							ordered[i]->argument[0].count))));
	}
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_code_has_words),
		cmocka_unit_test(promises_nothing),
		cmocka_unit_test(words_findings),
		cmocka_unit_test(shortens_long_texts),
		cmocka_unit_test(never_overflows),
		cmocka_unit_test(sorts_by_place),
	};

	return cmocka_run_group_tests_name("message", tests, NULL, NULL);
}
