/* SPDX-License-Identifier: MIT */
/* The bytes of a file, made into text that the CSV reader can be given. */
#include <string.h>

#include "notes/rows.h"

/* What a file that is no CSV begins with. */
static const struct {
	const char *bytes;
	size_t length;
	const char *what;
} magic[] = {
	{ "PK\003\004", 4, "a spreadsheet (.xlsx, .ods) or another zipped file" },
	{ "\xD0\xCF\x11\xE0", 4, "a spreadsheet (.xls)" },
	{ "%PDF", 4, "a PDF" },
	{ "{\\rtf", 5, "a word processor's file" },
	{ "<?xml", 5, "a spreadsheet in XML" },
	{ "<!doc", 5, "a web page" },
	{ "<html", 5, "a web page" },
	{ "<table", 6, "a web page" },
};

/* Web pages are written in capitals and in small letters. */
static bool begins_with(const char *bytes, const char *begin, size_t length)
{
	for (size_t i = 0; i < length; i++) {
		char c = bytes[i];

		if (begin[0] == '<' && c >= 'A' && c <= 'Z')
			c = (char)(c - 'A' + 'a');
		if (c != begin[i])
			return false;
	}
	return true;
}

static bool is_csv(struct rb_findings *findings, const char *bytes, size_t length)
{
	for (size_t i = 0; i < sizeof magic / sizeof *magic; i++) {
		if (length < magic[i].length ||
		    !begins_with(bytes, magic[i].bytes, magic[i].length))
			continue;
		rb_findings_add(findings, RB_CODE_SHEET_FILE, rb_in_file(),
				rb_text(magic[i].what), rb_nothing());
		return false;
	}
	return true;
}

static uint32_t line_of(const char *bytes, size_t offset)
{
	uint32_t line = 1;

	for (size_t i = 0; i < offset; i++)
		line += bytes[i] == '\n' || (bytes[i] == '\r' && bytes[i + 1] != '\n');
	return line;
}

/* UTF-16 has a mark of its own, or a NUL in every other byte from the start. */
static bool is_utf16(const char *bytes, size_t length)
{
	if (length < 2)
		return false;
	return !memcmp(bytes, "\xFF\xFE", 2) || !memcmp(bytes, "\xFE\xFF", 2) ||
	       (length >= 4 && (!bytes[0] != !bytes[1]) && (!bytes[2] != !bytes[3]));
}

static bool has_no_nul(struct rb_findings *findings, const char *bytes, size_t length)
{
	const char *nul;

	if (is_utf16(bytes, length)) {
		rb_findings_add(findings, RB_CODE_UTF16, rb_in_file(), rb_nothing(),
				rb_nothing());
		return false;
	}
	nul = length ? memchr(bytes, '\0', length) : NULL;
	if (!nul)
		return true;
	rb_findings_add(
		findings, RB_CODE_NUL_BYTE,
		rb_at(line_of(bytes, (size_t)(nul - bytes)), RB_WHOLE_ROW, NULL, NULL),
		rb_nothing(), rb_nothing());
	return false;
}

/* Bytes of the UTF-8 sequence at s, or 0 if it is none (RFC 3629). */
static size_t sequence(const unsigned char *s, size_t left)
{
	size_t size = s[0] < 0x80   ? 1
		      : s[0] < 0xC2 ? 0
		      : s[0] < 0xE0 ? 2
		      : s[0] < 0xF0 ? 3
		      : s[0] < 0xF5 ? 4
				    : 0;

	if (size > left)
		return 0;
	for (size_t i = 1; i < size; i++)
		if ((s[i] & 0xC0) != 0x80)
			return 0;
	if ((s[0] == 0xE0 && s[1] < 0xA0) || (s[0] == 0xED && s[1] > 0x9F) ||
	    (s[0] == 0xF0 && s[1] < 0x90) || (s[0] == 0xF4 && s[1] > 0x8F))
		return 0;
	return size;
}

bool rb_source_is_utf8(const char *bytes, size_t length)
{
	const unsigned char *s = (const unsigned char *)bytes;

	for (size_t i = 0, size; i < length; i += size) {
		uint64_t eight;

		size = 8;
		if (length - i >= 8 && (memcpy(&eight, s + i, 8), true) &&
		    !(eight & UINT64_C(0x8080808080808080)))
			continue;
		size = sequence(s + i, length - i);
		if (!size)
			return false;
	}
	return true;
}

/* Windows-1252 from 0x80 to 0x9F; the five bytes that it does not use become U+FFFD. */
static const uint16_t windows_1252[32] = {
	0x20AC, 0xFFFD, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
	0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0xFFFD, 0x017D, 0xFFFD,
	0xFFFD, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
	0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0xFFFD, 0x017E, 0x0178,
};

static size_t put_utf8(char *out, unsigned code)
{
	if (code < 0x80)
		return out[0] = (char)code, 1;
	if (code < 0x800) {
		out[0] = (char)(0xC0 | code >> 6);
		out[1] = (char)(0x80 | (code & 0x3F));
		return 2;
	}
	out[0] = (char)(0xE0 | code >> 12);
	out[1] = (char)(0x80 | (code >> 6 & 0x3F));
	out[2] = (char)(0x80 | (code & 0x3F));
	return 3;
}

static const char *decode(struct rb_arena *arena, const char *bytes, size_t *length)
{
	size_t high = 0, used = 0;
	char *text;

	for (size_t i = 0; i < *length; i++)
		high += (unsigned char)bytes[i] >= 0x80;
	text = rb_arena_take(arena, *length + 2 * high + 1, 1);
	if (!text)
		return NULL;
	for (size_t i = 0; i < *length; i++) {
		unsigned code = (unsigned char)bytes[i];

		if (code >= 0x80 && code < 0xA0)
			code = windows_1252[code - 0x80];
		used += put_utf8(text + used, code);
	}
	*length = used;
	return text;
}

/* A first line that says "sep=;" is a spreadsheet's, and no row. */
static void skip_separator_line(struct rb_source *source)
{
	const char *s = source->text;
	size_t n = source->length;

	if (n < 5 || (s[0] != 's' && s[0] != 'S') || (s[1] != 'e' && s[1] != 'E') ||
	    (s[2] != 'p' && s[2] != 'P') || s[3] != '=' ||
	    (n > 5 && s[5] != '\n' && s[5] != '\r'))
		return;
	if (s[4] == ',' || s[4] == ';' || s[4] == '\t')
		source->separator = s[4];
	n = n > 6 && s[5] == '\r' && s[6] == '\n' ? 7 : n > 5 ? 6 : 5;
	source->text += n;
	source->length -= n;
	source->first_line = 2;
}

struct rb_source *rb_source_open(struct rb_arena *arena, struct rb_findings *findings,
				 const char *bytes, size_t length)
{
	struct rb_source *source = rb_arena_take_clear(arena, 1, sizeof *source);

	if (!source) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	if (length >= INT32_MAX) {
		rb_findings_add(findings, RB_CODE_FILE_TOO_LONG, rb_in_file(),
				rb_nothing(), rb_nothing());
		return NULL;
	}
	if (length >= 3 && !memcmp(bytes, "\xEF\xBB\xBF", 3))
		bytes += 3, length -= 3;
	if (!is_csv(findings, bytes, length) || !has_no_nul(findings, bytes, length))
		return NULL;
	*source = (struct rb_source){ .text = bytes, .length = length, .first_line = 1 };
	if (!rb_source_is_utf8(bytes, length)) {
		rb_findings_add(findings, RB_CODE_WINDOWS_1252, rb_in_file(),
				rb_nothing(), rb_nothing());
		source->text = decode(arena, bytes, &source->length);
		if (!source->text) {
			rb_findings_no_memory(findings);
			return NULL;
		}
	}
	skip_separator_line(source);
	findings->source = source;
	return source;
}
