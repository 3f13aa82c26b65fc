/* SPDX-License-Identifier: MIT */
/* Columns, and what never reaches a terminal. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/width.h"

static struct capture capture;

/* clang-format off */
static const struct width_case {
	const char *text, *shown;
	size_t columns;
} width_cases[] = {
	{ "rim",                    "rim",                     3 },
	{ "5\xE2\x80\xB2-3 \xC2\xBD\xE2\x80\xB3", "5\xE2\x80\xB2-3 \xC2\xBD\xE2\x80\xB3", 7 },
	{ "e\xCC\x81t\xC3\xA9",     "e\xCC\x81t\xC3\xA9",      3 },
	{ "\xE6\xB0\xB4\xE6\xBA\x96", "\xE6\xB0\xB4\xE6\xBA\x96", 4 },
	{ "\xF0\x9F\x9A\xA7",       "\xF0\x9F\x9A\xA7",        2 },
	{ "\x1b[31m",               "\\x1b[31m",               8 },
	{ "a\tb\r\n",               "a\\tb\\r\\n",             8 },
	{ "\x7f",                   "\\x7f",                   4 },
	{ "\xC2\x9B" "0m",          "\\x9b0m",                 6 }, /* C1: another escape */
	{ "\xE2\x80\xAE",           "\\u202e",                 6 }, /* right to left */
	{ "\xD7\xA9 12",            "\xD7\xA9\xE2\x80\x8E 12", 4 }, /* 12 stays behind it */
	{ "\xD8\x9C" "12",           "\\u061c12",               8 }, /* written out: no letter */
	{ "\xD7\xA9\xD8\x9C",         "\xD7\xA9\xE2\x80\x8E\\u061c", 7 },
	{ "\xEF\xBB\xBF",           "\\ufeff",                 6 },
	{ "\xFF\xC3",               "\\xff\\xc3",              8 },
	{ "\xC0\x80",               "\\xc0\\x80",              8 }, /* overlong */
	{ "\xED\xA0\x80",           "\\xed\\xa0\\x80",        12 }, /* a surrogate */
	{ "\xF4\x90\x80\x80",       "\\xf4\\x90\\x80\\x80",   16 }, /* beyond Unicode */
	{ "\xE2\x82",               "\\xe2\\x82",              8 }, /* cut off */
};
/* clang-format on */

static void shows_and_measures(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof width_cases / sizeof *width_cases; i++) {
		const struct width_case *c = &width_cases[i];
		size_t columns = rb_width(c->text, strlen(c->text));

		capture_init(&capture);
		rb_sink_shown(&capture.sink, c->text, strlen(c->text));
		if (!strcmp(captured(&capture), c->shown) && columns == c->columns)
			continue;
		print_error("row %zu: got %s in %zu columns, want %s in %zu\n", i,
			    capture.text, columns, c->shown, c->columns);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* Whatever the bytes, what is shown is UTF-8 without a control character, and as wide as
 * was said. */
static void lets_nothing_through(void **state)
{
	char text[4];
	int wrong = 0;

	(void)state;
	for (uint32_t i = 0; i < 0x20000 && wrong < 10; i++) {
		size_t columns = 0;

		text[0] = (char)(i & 0xFF);
		text[1] = (char)((i * 7) >> 3 & 0xFF);
		text[2] = (char)(i >> 9 & 0xFF);
		text[3] = (char)(i * 31 & 0xFF);
		capture_init(&capture);
		rb_sink_shown(&capture.sink, text, sizeof text);
		captured(&capture);
		for (size_t at = 0; at < capture.used;) {
			struct rb_glyph glyph =
				rb_glyph_of(capture.text + at, capture.used - at);

			at += glyph.bytes;
			if (glyph.code == 0x200E) /* our own mark */
				continue;
			wrong += !glyph.plain;
			columns += glyph.columns;
		}
		wrong += rb_width(text, sizeof text) != columns;
	}
	assert_int_equal(wrong, 0);
}

static void fits_whole_characters(void **state)
{
	(void)state;
	assert_int_equal(rb_width_fit("ab\xE6\xB0\xB4", 5, 3), 2);
	assert_int_equal(rb_width_fit("ab\xE6\xB0\xB4", 5, 4), 5);
	assert_int_equal(rb_width_fit("ae\xCC\x81z", 5, 2), 4);
}

static void wraps_at_blanks(void **state)
{
	(void)state;
	capture_init(&capture);
	rb_sink_wrapped(&capture.sink, "one two\nthree  fourfourfour five", 4, 2, 12);
	assert_string_equal(captured(&capture),
			    "one two\n  three\n  fourfourfo\n  ur five");
	/* Nothing fits behind what stands there; and no line holds so wide a character.
	 */
	capture_init(&capture);
	rb_sink_wrapped(&capture.sink, "fourteenletter", 12, 2, 12);
	assert_string_equal(captured(&capture), "\n  fourteenle\n  tter");
	capture_init(&capture);
	rb_sink_wrapped(&capture.sink, "\xE6\xB0\xB4\xE6\xB0\xB4", 0, 0, 1);
	assert_string_equal(captured(&capture), "\xE6\xB0\xB4\n\xE6\xB0\xB4");
	/* Two words of one name, and the number behind them. */
	capture_init(&capture);
	rb_sink_wrapped(&capture.sink, "\xD7\xA9 \xD7\x9C 12", 0, 0, 40);
	assert_string_equal(captured(&capture), "\xD7\xA9 \xD7\x9C\xE2\x80\x8E 12");
}

/* A number stays with its fraction and its unit; a word too long for a line is cut. */
static void keeps_numbers_whole(void **state)
{
	/* clang-format off */
	static const struct { const char *text, *wrapped; } cases[] = {
		{ "it comes out 0'-0 1/8\" high", "it comes out\n  0'-0 1/8\"\n  high" },
		{ "each of them 0.02 ft.", "each of them\n  0.02 ft." },
		{ "each of them 0.02 feet", "each of them\n  0.02 feet" },
		{ "three setups 12 feet on", "three setups\n  12 feet on" },
		{ "1.5 + 2.5 + 3.5 + 4.5", "1.5 + 2.5\n  + 3.5 + 4.5" },
		{ "abcdefghijklmnopqrstuvwxyz end", "abcdefghijklmn\n  opqrstuvwxyz\n  end" },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		capture_init(&capture);
		rb_sink_wrapped(&capture.sink, cases[i].text, 0, 2, 14);
		if (!strcmp(captured(&capture), cases[i].wrapped))
			continue;
		print_error("%s: got\n%s\n", cases[i].text, captured(&capture));
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(shows_and_measures),
		cmocka_unit_test(lets_nothing_through),
		cmocka_unit_test(fits_whole_characters),
		cmocka_unit_test(wraps_at_blanks),
		cmocka_unit_test(keeps_numbers_whole),
	};

	return cmocka_run_group_tests_name("width", tests, NULL, NULL);
}
