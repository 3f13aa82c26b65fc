/* SPDX-License-Identifier: MIT */
/* Names and remarks that would be markup, or drive a reader astray. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/escape.h"
#include "report/html_words.h"

#define MARK "\xE2\x80\x8E"

static struct capture capture;

/* clang-format off */
static const struct {
	const char *text, *escaped;
} cases[] = {
	{ "rim, south side",          "rim, south side" },
	{ "<script>alert(1)</script>", "&lt;script&gt;alert(1)&lt;/script&gt;" },
	{ "\" onload=\"x",             "&quot; onload=&quot;x" },
	{ "' onload='x",               "&#39; onload=&#39;x" },
	{ "&lt;",                      "&amp;lt;" },
	{ "]]>",                       "]]&gt;" },
	{ "<!--",                      "&lt;!--" },
	{ "two\nlines\tand\ra tab",    "two lines and a tab" },
	{ "\x1B[31mred\x07",           "[31mred" },
	{ "a\x7F" "b",                 "ab" },
	{ "a\xC2\x9B" "b",             "ab" },                    /* C1: a control too */
	{ "bad \xFF byte",             "bad \xEF\xBF\xBD byte" },
	{ "half \xE2\x80",             "half \xEF\xBF\xBD\xEF\xBF\xBD" },
	{ "\xC0\xBCscript>",           "\xEF\xBF\xBD\xEF\xBF\xBDscript&gt;" }, /* overlong < */
	{ "\xED\xA0\x80",              "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD" }, /* surrogate */
	{ "\xE2\x80\xAE" "6202",       "\\u202e6202" },           /* right-to-left override */
	{ "\xE2\x81\xA6x\xE2\x81\xA9", "\\u2066x\\u2069" },       /* isolates */
	{ "a\xE2\x80\x8B" "b",         "a\\u200bb" },             /* no width */
	{ "\xEF\xBF\xBE",              "\\ufffe" },               /* no character of XML */
	{ "5\xE2\x80\xB2-3\xC2\xBD",   "5\xE2\x80\xB2-3\xC2\xBD" },
	/* The numbers behind a name that is written from the right stay behind it. */
	{ "\xD7\xA9\xD7\x9C",          "\xD7\xA9\xD7\x9C" MARK },
	{ "\xD7\xA9 \xD7\x9C: 0.17 ft", "\xD7\xA9 \xD7\x9C" MARK ": 0.17 ft" },
	{ "\xD8\xA8-\xD8\xA8 4",       "\xD8\xA8" MARK "-\xD8\xA8" MARK " 4" },
	{ "\xD8\x9C" "4",               "\\u061c4" },            /* written out: no letter */
	{ "\xD7\xA9  4 \xF0\x9E\xA4\x80<", "\xD7\xA9" MARK "  4 \xF0\x9E\xA4\x80" MARK "&lt;" },
	{ "",                          "" },
};

static const struct {
	const char *text, *words;
} words[] = {
	{ "is 9'-3 11/16\" high",  "is 9&#39;-3\xC2\xA0" "11/16&quot; high" },
	{ "0.01 ft low, 2 setups", "0.01\xC2\xA0" "ft low, 2 setups" },
	{ "2.08 % of 4 in",        "2.08\xC2\xA0% of 4\xC2\xA0in" },
	{ "12 inverts",            "12 inverts" },
	{ "from 4 ",               "from 4 " },
	{ " 5 <ft",                " 5 &lt;ft" },
	{ "",                      "" },
};

static const struct {
	const char *text, *css;
} sheets[] = {
	{ "larch 2",         "larch 2" },
	{ "a\"}</style><b>", "a\\000022\\00007d\\00003c\\00002fstyle\\00003e\\00003cb\\00003e" },
	{ "a\\",             "a\\00005c" },
	{ "a\nb",            "a b" },
	{ "\xE2\x80\xAE",    "\\00005cu202e" },
	{ "a\xFF" "b",         "a\xEF\xBF\xBD" "b" },
};
/* clang-format on */

static int compare(size_t row, const char *text, const char *want)
{
	const char *got = captured(&capture);

	if (!strcmp(got, want))
		return 0;
	print_error("row %zu, \"%s\": got %s, want %s\n", row, text, got, want);
	return 1;
}

static void escapes(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		capture_init(&capture);
		rb_sink_escaped_text(&capture.sink, cases[i].text);
		wrong += compare(i, cases[i].text, cases[i].escaped);
	}
	assert_int_equal(wrong, 0);
}

static void keeps_numbers_together(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		capture_init(&capture);
		rb_sink_html_words(&capture.sink, words[i].text);
		wrong += compare(i, words[i].text, words[i].words);
	}
	assert_int_equal(wrong, 0);
}

static void stays_within_a_css_string(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof sheets / sizeof *sheets; i++) {
		capture_init(&capture);
		rb_sink_css_string(&capture.sink, sheets[i].text);
		wrong += compare(i, sheets[i].text, sheets[i].css);
	}
	assert_int_equal(wrong, 0);
}

/* Every byte, and every pair of bytes: nothing gets out that is markup or no UTF-8. */
static void lets_no_byte_through(void **state)
{
	int wrong = 0;

	(void)state;
	for (unsigned first = 1; first < 256; first++)
		for (unsigned second = 1; second < 256; second++) {
			const char text[] = { (char)first, (char)second, '\0' };
			const char *got;

			capture_init(&capture);
			rb_sink_escaped_text(&capture.sink, text);
			got = captured(&capture);
			for (; *got; got++)
				if ((unsigned char)*got < ' ' ||
				    strchr("<>\"'\x7F", *got) ||
				    (unsigned char)*got >= 0xF5) {
					print_error("%02x %02x lets %02x out\n", first,
						    second, (unsigned char)*got);
					wrong++;
				}
		}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(escapes),
		cmocka_unit_test(keeps_numbers_together),
		cmocka_unit_test(stays_within_a_css_string),
		cmocka_unit_test(lets_no_byte_through),
	};

	return cmocka_run_group_tests_name("escape", tests, NULL, NULL);
}
