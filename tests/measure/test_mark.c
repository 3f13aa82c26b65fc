/* SPDX-License-Identifier: MIT */
/* test_mark.c - every character that stands for a mark, and no other; mojibake undone. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "measure/mark.h"

#define UNKNOWN "\1"
#define NO_MARK ""

/* clang-format off */
/* By the names of the Unicode standard; a mark of several characters is a fraction, which
 * a blank keeps apart from the figure before it. */
static const struct mark_case {
	const char *name;
	uint32_t code;
	const char *plain;
} marks[] = {
	{ "tab",                              0x09,   " " },
	{ "line feed",                        0x0A,   " " },
	{ "carriage return",                  0x0D,   " " },
	{ "backspace",                        0x08,   UNKNOWN },
	{ "shift out",                        0x0E,   UNKNOWN },
	{ "unit separator",                   0x1F,   UNKNOWN },
	{ "exclamation mark",                 0x21,   "!" },
	{ "grave accent",                     0x60,   "'" },
	{ "capital a",                        'A',    "a" },
	{ "capital z",                        'Z',    "z" },
	{ "commercial at",                    '@',    "@" },
	{ "left square bracket",              '[',    "[" },
	{ "tilde",                            0x7E,   "~" },
	{ "delete",                           0x7F,   UNKNOWN },
	{ "padding character",                0x80,   UNKNOWN },
	{ "no-break space",                   0xA0,   " " },
	{ "left-pointing double angle quotation mark",  0xAB, "\"" },
	{ "soft hyphen",                      0xAD,   NO_MARK },
	{ "degree sign",                      0xB0,   "o" },
	{ "acute accent",                     0xB4,   "'" },
	{ "masculine ordinal indicator",      0xBA,   "o" },
	{ "right-pointing double angle quotation mark", 0xBB, "\"" },
	{ "vulgar fraction one quarter",      0xBC,   " 1/4 " },
	{ "vulgar fraction one half",         0xBD,   " 1/2 " },
	{ "vulgar fraction three quarters",   0xBE,   " 3/4 " },
	{ "capital a with diaeresis",         0xC4,   "a" },
	{ "capital e with grave",             0xC8,   "e" },
	{ "capital e with acute",             0xC9,   "e" },
	{ "capital e with circumflex",        0xCA,   "e" },
	{ "capital u with circumflex",        0xDB,   "u" },
	{ "small a with diaeresis",           0xE4,   "a" },
	{ "small e with grave",               0xE8,   "e" },
	{ "small e with acute",               0xE9,   "e" },
	{ "small e with circumflex",          0xEA,   "e" },
	{ "small u with circumflex",          0xFB,   "u" },
	{ "modifier letter prime",            0x2B9,  "'" },
	{ "modifier letter double prime",     0x2BA,  "\"" },
	{ "modifier letter apostrophe",       0x2BC,  "'" },
	{ "en quad",                          0x2000, " " },
	{ "em quad",                          0x2001, " " },
	{ "en space",                         0x2002, " " },
	{ "em space",                         0x2003, " " },
	{ "three-per-em space",               0x2004, " " },
	{ "four-per-em space",                0x2005, " " },
	{ "six-per-em space",                 0x2006, " " },
	{ "figure space",                     0x2007, " " },
	{ "punctuation space",                0x2008, " " },
	{ "thin space",                       0x2009, " " },
	{ "hair space",                       0x200A, " " },
	{ "zero width space",                 0x200B, " " },
	{ "zero width non-joiner",            0x200C, NO_MARK },
	{ "zero width joiner",                0x200D, NO_MARK },
	{ "left-to-right mark",               0x200E, NO_MARK },
	{ "right-to-left mark",               0x200F, NO_MARK },
	{ "hyphen",                           0x2010, "-" },
	{ "non-breaking hyphen",              0x2011, "-" },
	{ "figure dash",                      0x2012, "-" },
	{ "en dash",                          0x2013, "-" },
	{ "em dash",                          0x2014, "-" },
	{ "horizontal bar",                   0x2015, "-" },
	{ "left single quotation mark",       0x2018, "'" },
	{ "right single quotation mark",      0x2019, "'" },
	{ "single low-9 quotation mark",      0x201A, "'" },
	{ "single high-reversed-9 quotation mark", 0x201B, "'" },
	{ "left double quotation mark",       0x201C, "\"" },
	{ "right double quotation mark",      0x201D, "\"" },
	{ "double low-9 quotation mark",      0x201E, "\"" },
	{ "double high-reversed-9 quotation mark", 0x201F, "\"" },
	{ "narrow no-break space",            0x202F, " " },
	{ "prime",                            0x2032, "'" },
	{ "double prime",                     0x2033, "\"" },
	{ "fraction slash",                   0x2044, "/" },
	{ "medium mathematical space",        0x205F, " " },
	{ "word joiner",                      0x2060, NO_MARK },
	{ "vulgar fraction one seventh",      0x2150, " 1/7 " },
	{ "vulgar fraction one ninth",        0x2151, " 1/9 " },
	{ "vulgar fraction one tenth",        0x2152, " 1/10 " },
	{ "vulgar fraction one third",        0x2153, " 1/3 " },
	{ "vulgar fraction two thirds",       0x2154, " 2/3 " },
	{ "vulgar fraction one fifth",        0x2155, " 1/5 " },
	{ "vulgar fraction two fifths",       0x2156, " 2/5 " },
	{ "vulgar fraction three fifths",     0x2157, " 3/5 " },
	{ "vulgar fraction four fifths",      0x2158, " 4/5 " },
	{ "vulgar fraction one sixth",        0x2159, " 1/6 " },
	{ "vulgar fraction five sixths",      0x215A, " 5/6 " },
	{ "vulgar fraction one eighth",       0x215B, " 1/8 " },
	{ "vulgar fraction three eighths",    0x215C, " 3/8 " },
	{ "vulgar fraction five eighths",     0x215D, " 5/8 " },
	{ "vulgar fraction seven eighths",    0x215E, " 7/8 " },
	{ "minus sign",                       0x2212, "-" },
	{ "division slash",                   0x2215, "/" },
	{ "ideographic space",                0x3000, " " },
	{ "zero width no-break space",        0xFEFF, NO_MARK },
	{ "fullwidth quotation mark",         0xFF02, "\"" },
	{ "fullwidth apostrophe",             0xFF07, "'" },
	{ "fullwidth hyphen-minus",           0xFF0D, "-" },
	{ "fullwidth solidus",                0xFF0F, "/" },
	{ "last character of all",            0x10FFFF, UNKNOWN },
};

/* Windows-1252 from 0x80 to 0x9F, by the Unicode consortium's table CP1252; the five
 * bytes that have no character are read as the control codes of the same number. */
static const uint32_t windows_1252[] = {
	0x20AC, 0x0081, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
	0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0x008D, 0x017D, 0x008F,
	0x0090, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
	0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x009D, 0x017E, 0x0178,
};
/* clang-format on */

static size_t put_utf8(char *to, uint32_t code)
{
	if (code < 0x80) {
		to[0] = (char)code;
		return 1;
	}
	if (code < 0x800) {
		to[0] = (char)(0xC0 | code >> 6);
		to[1] = (char)(0x80 | (code & 0x3F));
		return 2;
	}
	if (code < 0x10000) {
		to[0] = (char)(0xE0 | code >> 12);
		to[1] = (char)(0x80 | (code >> 6 & 0x3F));
		to[2] = (char)(0x80 | (code & 0x3F));
		return 3;
	}
	to[0] = (char)(0xF0 | code >> 18);
	to[1] = (char)(0x80 | (code >> 12 & 0x3F));
	to[2] = (char)(0x80 | (code >> 6 & 0x3F));
	to[3] = (char)(0x80 | (code & 0x3F));
	return 4;
}

/* 7 and 8 keep what is between them from being trimmed: 7 X 8. */
static void mark_between(uint32_t code, struct rb_marked *out)
{
	char text[8] = "7";
	size_t length = 1 + put_utf8(text + 1, code);

	text[length++] = '8';
	assert_true(rb_mark(text, length, out));
}

static bool is_plain(const struct rb_marked *m, const char *plain)
{
	size_t length = strlen(plain);

	return m->text[0] == '7' && strncmp(m->text + 1, plain, length) == 0 &&
	       m->text[1 + length] == '8';
}

static void every_mark_is_made_plain(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof marks / sizeof *marks; i++) {
		struct rb_marked m;

		mark_between(marks[i].code, &m);
		if (is_plain(&m, marks[i].plain) && !m.mojibake)
			continue;
		print_error("%s: \"%s\"\n", marks[i].name, m.text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* Printable characters of ASCII stand for themselves, but for the case of letters. */
static const char *plain_of(uint32_t code)
{
	for (size_t i = 0; i < sizeof marks / sizeof *marks; i++)
		if (marks[i].code == code)
			return marks[i].plain;
	return UNKNOWN;
}

static void no_other_character_is_a_mark(void **state)
{
	int wrong = 0;

	(void)state;
	for (uint32_t code = 0x80; code < 0x10000; code++) {
		struct rb_marked m;

		mark_between(code, &m);
		if (is_plain(&m, plain_of(code)))
			continue;
		print_error("U+%04X: \"%s\"\n", (unsigned)code, m.text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* clang-format off */
static const struct cell_case {
	const char *text, *plain;
	bool apostrophe, mojibake;
} cells[] = {
	{ "",                   "",        false, false },
	{ " ",                  "",        false, false },
	{ "\t \n",              "",        false, false },
	{ "x",                  "x",       false, false },
	{ " 5  3 ",             "5 3",     false, false },
	{ "'",                  "",        true,  false },
	{ "'5",                 "5",       true,  false },
	{ "'5'",                "5'",      true,  false },
	{ "''5",                "'5",      true,  false }, /* the second is a mark */
	{ "5''",                "5\"",     false, false },
	{ "5'''",               "5\"'",    false, false },
	{ "5' '",               "5' '",    false, false },
	{ "\"5\"",              "5",       false, false },
	{ "\" 5 \"",            "5",       false, false },
	{ "\"\"",               "",        false, false },
	{ "\"",                 "\"",      false, false },
	{ "5\"",                "5\"",     false, false },
	{ "\"5",                "\"5",     false, false },
	{ "5\xFF",              "5\1",     false, true },
	{ "5\x80",              "5\1",     false, true },
	{ "\xC2",               "\1",      false, true },  /* half a character */
	{ "\xC3\x28",           "\1(",     false, true },
	{ "\xE2\x80",           "\1\1",    false, true },
	{ "\xE2\x28\x80",       "\1(\1",   false, true },
	{ "\xF0\x9F\x98",       "\1\1\1",  false, true },
	{ "\xF0\x9F\x98\x80",   "\1",      false, false },
	{ "\xF4\x8F\xBF\xBF",   "\1",      false, false },
	{ "\xF5\x80\x80\x80",   "\1\1\1\1", false, true }, /* beyond the last character */
	{ "\xC1\x80",           "\1\1",    false, true },  /* longer than it need be */
	{ "\xC2\x80",           "\1",      false, false },
	{ "\xDF\xBF",           "\1",      false, false },
	{ "\xE0\xA0\x80",       "\1",      false, false },
	{ "\xEF\xBF\xBD",       "\1",      false, true },  /* what stands for lost bytes */
	{ "\xC3\x82\xC2\xBD",   "\1 1/2",  false, true },  /* A circumflex, one half */
	{ "\xC3\x83\xC2\xA9",   "\1\1",    false, true },
	{ "\xC3\xA2\xE2\x82\xAC", "\1\1",  false, true },
	{ "\xC3\x82\xC2\x80",   "\1\1",    false, true },
	{ "\xC3\x82" "5",       "\1" "5",  false, false },
	{ "\xC3\x81\xC2\xBD",   "\1 1/2",  false, false }, /* A acute leads nothing */
	{ "\xC3\xA1\xC2\xBD",   "\1 1/2",  false, false },
	{ "\xC3\xA3\xC2\xBD",   "\1 1/2",  false, false },
	{ "\xC3\x84\xC2\xBD",   "a 1/2",   false, false },
};

static const struct undo_case {
	const char *text;
	size_t room, bytes; /* 0: not undone */
} undone[] = {
	{ "5",                        1, 1 },
	{ "5",                        0, 0 },
	{ "\x7F\xC2\xA0\xC3\xBF",     3, 3 },
	{ "\x7F\xC2\xA0\xC3\xBF",     2, 0 },
	{ "5\xC4\x80",                8, 0 }, /* A with macron: Windows-1252 has none */
	{ "5\xC2\x80",                8, 0 }, /* 0x80 is the euro's */
	{ "5\xC2\x9F",                8, 0 },
	{ "5\xFF",                    8, 0 },
};
/* clang-format on */

static void cells_are_put_in_plain_marks(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cells / sizeof *cells; i++) {
		struct rb_marked m;

		assert_true(rb_mark(cells[i].text, strlen(cells[i].text), &m));
		if (strcmp(m.text, cells[i].plain) == 0 &&
		    m.length == (int)strlen(cells[i].plain) &&
		    m.apostrophe == cells[i].apostrophe &&
		    m.mojibake == cells[i].mojibake)
			continue;
		print_error("row %zu, \"%s\": \"%s\", apostrophe %d, mojibake %d\n", i,
			    cells[i].text, m.text, m.apostrophe, m.mojibake);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* Where each mark stood, whatever was taken off before it. */
static void places_are_kept(void **state)
{
	static const char text[] = " '5\xC2\xBD x ";
	static const uint32_t places[] = { 2, 3, 3, 3, 3, 3, 6 };
	struct rb_marked m;

	(void)state;
	assert_true(rb_mark(text, sizeof text - 1, &m));
	assert_string_equal(m.text, "5 1/2 x");
	for (size_t i = 0; i < sizeof places / sizeof *places; i++)
		assert_int_equal(m.at[i], places[i]);
	assert_int_equal(m.at[m.length], 7);
}

static void a_longer_cell_is_no_length(void **state)
{
	char text[RB_MARKED + 1];
	struct rb_marked m;

	(void)state;
	memset(text, '5', sizeof text);
	assert_true(rb_mark(text, RB_MARKED, &m));
	assert_int_equal(m.length, RB_MARKED);
	assert_int_equal(m.at[RB_MARKED], RB_MARKED);
	assert_false(rb_mark(text, RB_MARKED + 1, &m));
	memcpy(text + RB_MARKED - 2, "\xC2\xBD", 2); /* has room for two of its five */
	assert_false(rb_mark(text, RB_MARKED, &m));
}

static void bytes_of_windows_are_found_again(void **state)
{
	int wrong = 0;

	(void)state;
	for (int byte = 0x80; byte <= 0xFF; byte++) {
		char text[4], back[4];
		uint32_t code = byte < 0xA0 ? windows_1252[byte - 0x80] : (uint32_t)byte;
		size_t bytes =
			rb_mojibake_undo(text, put_utf8(text, code), back, sizeof back);

		if (bytes == 1 && (unsigned char)back[0] == byte)
			continue;
		print_error("byte %02X: %zu bytes\n", (unsigned)byte, bytes);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void undoes_only_what_windows_has(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof undone / sizeof *undone; i++) {
		char back[8];
		size_t bytes = rb_mojibake_undo(undone[i].text, strlen(undone[i].text),
						back, undone[i].room);

		if (bytes == undone[i].bytes)
			continue;
		print_error("row %zu: %zu bytes\n", i, bytes);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_mark_is_made_plain),
		cmocka_unit_test(no_other_character_is_a_mark),
		cmocka_unit_test(cells_are_put_in_plain_marks),
		cmocka_unit_test(places_are_kept),
		cmocka_unit_test(a_longer_cell_is_no_length),
		cmocka_unit_test(bytes_of_windows_are_found_again),
		cmocka_unit_test(undoes_only_what_windows_has),
	};

	return cmocka_run_group_tests_name("mark", tests, NULL, NULL);
}
