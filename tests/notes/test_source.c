/* SPDX-License-Identifier: MIT */
/* test_source.c - the bytes of a file, made readable or refused. */
#include "notes.h"

#include "notes/rows.h"

#define BYTES(text) text, sizeof text - 1

struct opened {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_source *source;
};

static struct opened open_bytes(const char *bytes, size_t length)
{
	struct opened o = { .arena = rb_arena_new(NULL) };

	rb_findings_init(&o.findings, o.arena, "book.csv");
	o.source = rb_source_open(o.arena, &o.findings, bytes, length);
	return o;
}

/* clang-format off */
static const struct source_case {
	const char *what;
	const char *bytes;
	size_t length;
	const char *text;     /* NULL: refused */
	const char *findings;
	char separator;       /* what a line "sep=;" settles */
	uint32_t first_line;
} source_cases[] = {
	{ "plain",               BYTES("point,bs\n"),               "point,bs\n", "", 0, 1 },
	{ "nothing at all",      BYTES(""),                         "", "", 0, 1 },
	{ "one byte",            BYTES("a"),                        "a", "", 0, 1 },
	/* a spreadsheet's own file, by its first bytes */
	{ "xlsx or ods",         BYTES("PK\003\004rest"),           NULL, "spreadsheet-file", 0, 0 },
	{ "xls",                 BYTES("\xD0\xCF\x11\xE0\xA1\xB1"), NULL, "spreadsheet-file", 0, 0 },
	{ "pdf",                 BYTES("%PDF-1.7\n"),               NULL, "spreadsheet-file", 0, 0 },
	{ "rtf",                 BYTES("{\\rtf1\\ansi"),            NULL, "spreadsheet-file", 0, 0 },
	{ "flat xml",            BYTES("<?xml version"),            NULL, "spreadsheet-file", 0, 0 },
	{ "html",                BYTES("<!DOCTYPE html>"),          NULL, "spreadsheet-file", 0, 0 },
	{ "html, small letters", BYTES("<!doctype html>"),          NULL, "spreadsheet-file", 0, 0 },
	{ "html with a mark",    BYTES("\xEF\xBB\xBF<html>"),       NULL, "spreadsheet-file", 0, 0 },
	{ "html tag",            BYTES("<html>"),                   NULL, "spreadsheet-file", 0, 0 },
	{ "html in capitals",    BYTES("<HTML>"),                   NULL, "spreadsheet-file", 0, 0 },
	{ "half a magic number", BYTES("PK\003"),                   "PK\003", "", 0, 1 },
	{ "PK nail",             BYTES("PK nail,5.32\n"),           "PK nail,5.32\n", "", 0, 1 },
	/* what is no text */
	{ "utf-16, little",      BYTES("\xFF\xFEp\0o\0"),           NULL, "utf-16", 0, 0 },
	{ "utf-16, big",         BYTES("\xFE\xFF\0p\0o"),           NULL, "utf-16", 0, 0 },
	{ "utf-16 without mark", BYTES("p\0o\0i\0n\0t\0"),          NULL, "utf-16", 0, 0 },
	{ "utf-16, big, no mark", BYTES("\0p\0o\0i\0n\0t"),         NULL, "utf-16", 0, 0 },
	{ "a NUL",               BYTES("a,b\nc,\0d\n"),             NULL, "nul-byte@2", 0, 0 },
	{ "a NUL, CRLF",         BYTES("a,b\r\nc\r\n\r\n\0"),       NULL, "nul-byte@4", 0, 0 },
	{ "two NULs first",      BYTES("\0\0ab"),                   NULL, "nul-byte@1", 0, 0 },
	{ "a NUL second",        BYTES("a\0bc"),                    NULL, "nul-byte@1", 0, 0 },
	{ "a NUL and no more",   BYTES("a\0b"),                     NULL, "nul-byte@1", 0, 0 },
	{ "a NUL, CR",           BYTES("a,b\rc\r\0"),               NULL, "nul-byte@3", 0, 0 },
	/* a byte order mark is taken off, before a quote too */
	{ "mark",                BYTES("\xEF\xBB\xBFpoint"),        "point", "", 0, 1 },
	{ "mark, quote",         BYTES("\xEF\xBB\xBF\"point\""),    "\"point\"", "", 0, 1 },
	{ "only a mark",         BYTES("\xEF\xBB\xBF"),             "", "", 0, 1 },
	/* Windows-1252 */
	{ "feet and inches",     BYTES("5\x92-3 \xBD\x94"),         "5\u2019-3 \u00BD\u201D", "windows-1252", 0, 1 },
	{ "dash and blank",      BYTES("3\x96\xA0" "4"),            "3\u2013\u00A04", "windows-1252", 0, 1 },
	{ "euro, fractions",     BYTES("\x80\xBC\xBE"),             "\u20AC\u00BC\u00BE", "windows-1252", 0, 1 },
	{ "ends of the table",   BYTES("\x9F\x82"),                 "\u0178\u201A", "windows-1252", 0, 1 },
	{ "unused bytes",        BYTES("\x81\x8D\x8F\x90\x9D"),     "\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD", "windows-1252", 0, 1 },
	{ "last letter",         BYTES("\xFF!"),                    "\u00FF!", "windows-1252", 0, 1 },
	{ "cut off",             BYTES("abc\xE2\x80"),              "abc\u00E2\u20AC", "windows-1252", 0, 1 },
	/* not UTF-8 after RFC 3629 */
	{ "overlong",            BYTES("\xC0\xAF"),                 "\u00C0\u00AF", "windows-1252", 0, 1 },
	{ "overlong, three",     BYTES("\xE0\x80\xAF"),             "\u00E0\u20AC\u00AF", "windows-1252", 0, 1 },
	{ "surrogate",           BYTES("\xED\xA0\x80"),             "\u00ED\u00A0\u20AC", "windows-1252", 0, 1 },
	{ "overlong, four",      BYTES("\xF0\x80\x80\x80"),         "\u00F0\u20AC\u20AC\u20AC", "windows-1252", 0, 1 },
	{ "beyond Unicode",      BYTES("\xF4\x90\x80\x80"),         "\u00F4\uFFFD\u20AC\u20AC", "windows-1252", 0, 1 },
	/* UTF-8 stays as it is, wherever it stands among the eights */
	{ "utf-8",               BYTES("5\u2032-3 \u00BD\u2033"),   "5\u2032-3 \u00BD\u2033", "", 0, 1 },
	{ "utf-8, later",        BYTES("abcdefg\u00BDhijklmnopqrs\u2033"), "abcdefg\u00BDhijklmnopqrs\u2033", "", 0, 1 },
	{ "before the surrogates", BYTES("\xED\x9F\xBF"),          "\xED\x9F\xBF", "", 0, 1 },
	{ "first of three",      BYTES("\xE0\xA0\x80"),             "\u0800", "", 0, 1 },
	{ "last of Unicode",     BYTES("\xF4\x8F\xBF\xBF"),         "\U0010FFFF", "", 0, 1 },
	{ "four bytes",          BYTES("\U0001F4CF rod"),           "\U0001F4CF rod", "", 0, 1 },
	/* a first line that says how cells are separated */
	{ "sep=;",               BYTES("sep=;\npoint;bs\n"),        "point;bs\n", "", ';', 2 },
	{ "SEP=,",               BYTES("SEP=,\r\npoint,bs\n"),      "point,bs\n", "", ',', 2 },
	{ "sep=TAB, CR",         BYTES("Sep=\t\rpoint"),            "point", "", '\t', 2 },
	{ "sep=| is of no use",  BYTES("sep=|\npoint"),             "point", "", 0, 2 },
	{ "sep=; alone",         BYTES("sep=;"),                    "", "", ';', 2 },
	{ "mark and sep=;",      BYTES("\xEF\xBB\xBFsep=;\na"),     "a", "", ';', 2 },
	{ "sep= with more",      BYTES("sep=;;\na"),                "sep=;;\na", "", 0, 1 },
	{ "separate",            BYTES("separate\na"),              "separate\na", "", 0, 1 },
};
/* clang-format on */

static void files(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof source_cases / sizeof *source_cases; i++) {
		const struct source_case *c = &source_cases[i];
		struct opened o = open_bytes(c->bytes, c->length);
		char found[ROOM], got[ROOM] = "refused";

		wrong += differs(c->what, findings_as_text(found, &o.findings),
				 c->findings);
		if (o.source) {
			got[0] = '\0';
			add_text(got, "%.*s", (int)o.source->length, o.source->text);
			wrong += o.source->separator != c->separator ||
				 o.source->first_line != c->first_line;
			wrong += o.findings.source != o.source;
		}
		wrong += differs(c->what, got, c->text ? c->text : "refused");
		rb_arena_free(o.arena);
	}
	assert_int_equal(wrong, 0);
}

/* Every byte from 0xA0 on is the letter of that number; all of them come out as UTF-8. */
static void windows_1252_upper_half(void **state)
{
	(void)state;
	for (unsigned byte = 0xA0; byte <= 0xFF; byte++) {
		const char bytes[] = { 'a', (char)byte, ',', 'b' };
		struct opened o = open_bytes(bytes, sizeof bytes);

		assert_int_equal(o.source->length, 5);
		assert_int_equal((unsigned char)o.source->text[1], 0xC0 | byte >> 6);
		assert_int_equal((unsigned char)o.source->text[2], 0x80 | (byte & 0x3F));
		rb_arena_free(o.arena);
	}
}

/* A later NUL is found too, and the bytes given are never changed. */
static void a_nul_far_down(void **state)
{
	static char bytes[20000];
	struct opened o;

	(void)state;
	for (size_t i = 0; i < sizeof bytes; i++)
		bytes[i] = i % 10 == 9 ? '\n' : 'a';
	bytes[15003] = '\0';
	o = open_bytes(bytes, sizeof bytes);
	assert_null(o.source);
	assert_int_equal(finding_of(&o.findings, RB_CODE_NUL_BYTE)->place.line, 1501);
	rb_arena_free(o.arena);
	bytes[15003] = 'a';
	o = open_bytes(bytes, sizeof bytes);
	assert_ptr_equal(o.source->text, bytes);
	rb_arena_free(o.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(files),
		cmocka_unit_test(windows_1252_upper_half),
		cmocka_unit_test(a_nul_far_down),
	};

	return cmocka_run_group_tests_name("source", tests, NULL, NULL);
}
