/* SPDX-License-Identifier: MIT */
/* CSV cells: quotes, and the guard against formulas. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>

#include "capture.h"
#include "report/csv.h"

static struct capture capture;

/* clang-format off */
static const struct {
	const char *text, *cell;
} cases[] = {
	{ "rim",             "rim" },
	{ "rim, south",      "\"rim, south\"" },
	{ "4\" pipe",        "\"4\"\" pipe\"" },
	{ "two\nlines",      "\"two\nlines\"" },
	{ "=HYPERLINK(\"x\")", "\"'=HYPERLINK(\"\"x\"\")\"" },
	{ "+10",             "'+10" },
	{ "-BM1",            "'-BM1" },
	{ "@5",              "'@5" },
	{ "\tx",             "\"'\tx\"" },
	{ "'quoted'",        "''quoted'" },   /* our reader takes one apostrophe off */
	{ "'=1",             "''=1" },
	{ "caf\xC3\xA9",     "caf\xC3\xA9" },
	{ "bad \xFF byte",   "bad \xEF\xBF\xBD byte" },
	{ " blank",          "\" blank\"" },
	{ "blank ",          "\"blank \"" },
	{ " blanks, both ",  "\" blanks, both \"" },
	{ "blank, last ",    "\"blank, last \"" },
	/* as long as the short way goes, and one letter more */
	{ "1234567890123456789012345678901234567890123456789012345678901234",
	  "1234567890123456789012345678901234567890123456789012345678901234" },
	{ "12345678901234567890123456789012345678901234567890123456789012345",
	  "12345678901234567890123456789012345678901234567890123456789012345" },
	{ "1234567890123456789012345678901234567890123456789012345678901234 ",
	  "\"1234567890123456789012345678901234567890123456789012345678901234 \"" },
	{ "a;b",             "\"a;b\"" },
	{ "",                "" },
};
/* clang-format on */

static void quotes_and_guards(void **state)
{
	struct rb_csv csv;
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		capture_init(&capture);
		rb_csv_init(&csv, &capture.sink);
		rb_csv_text(&csv, cases[i].text);
		rb_csv_end_row(&csv);
		assert_true(rb_sink_flush(&capture.sink));
		capture.text[capture.used - 1] = '\0'; /* the end of the row */
		if (!strcmp(capture.text, cases[i].cell))
			continue;
		print_error("row %zu: got %s, want %s\n", i, capture.text, cases[i].cell);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void parts_cells(void **state)
{
	struct rb_csv csv;

	(void)state;
	capture_init(&capture);
	rb_csv_init(&csv, &capture.sink);
	rb_csv_text(&csv, NULL);
	rb_csv_number(&csv, "-0.42", 5);
	rb_csv_number(&csv, "5'-3\"", 5);
	rb_csv_number(&csv, "", 0);
	rb_csv_end_row(&csv);
	rb_csv_text(&csv, "x");
	rb_csv_end_row(&csv);
	assert_string_equal(captured(&capture), ",-0.42,\"5'-3\"\"\",\nx\n");
}

/* A row of more than a block of the sink holds. */
static void goes_on_beyond_a_block(void **state)
{
	struct rb_csv csv;
	const char *text;

	(void)state;
	capture_init(&capture);
	rb_csv_init(&csv, &capture.sink);
	for (int i = 0; i < 9000; i++) {
		rb_csv_rounded(&csv, rb_length_of(i * RB_FOOT), RB_FEET, 4);
		rb_csv_text(&csv, i % 1000 ? "left" : "left, right");
	}
	rb_csv_end_row(&csv);
	text = captured(&capture);
	for (int i = 0; i < 9000; i++) {
		char cells[32];
		int length = snprintf(cells, sizeof cells, "%d,%s%c", i,
				      i % 1000 ? "left" : "\"left, right\"",
				      i < 8999 ? ',' : '\n');

		assert_memory_equal(text, cells, (size_t)length);
		text += length;
	}
	assert_string_equal(text, "");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(quotes_and_guards),
		cmocka_unit_test(parts_cells),
		cmocka_unit_test(goes_on_beyond_a_block),
	};

	return cmocka_run_group_tests_name("csv", tests, NULL, NULL);
}
