/* SPDX-License-Identifier: MIT */
/* mark.c - the typographic marks of feet, inches, minus and fractions, made plain. */
#include "measure/mark.h"

#include <string.h>

#define NOTHING '\2' /* a character that is passed over */
#define NO_CODE 0xFFFDu

/* clang-format off */
/* Characters outside ASCII with one meaning.  A degree sign is what phones make of a
 * zero; accents are dropped so that month names in four languages can be known. */
static const struct sign {
	uint32_t first, last;
	char as;
} signs[] = {
	{ 0x00A0, 0x00A0, ' ' },  /* no-break space */
	{ 0x00AB, 0x00AB, '"' },  /* outer quote, opening */
	{ 0x00AD, 0x00AD, NOTHING }, /* soft hyphen */
	{ 0x00B0, 0x00B0, 'o' },  /* degree sign */
	{ 0x00B4, 0x00B4, '\'' }, /* acute accent */
	{ 0x00BA, 0x00BA, 'o' },  /* masculine ordinal */
	{ 0x00BB, 0x00BB, '"' },  /* what a French sheet makes of an inch mark */
	{ 0x00C4, 0x00C4, 'a' }, { 0x00E4, 0x00E4, 'a' },
	{ 0x00C8, 0x00CA, 'e' }, { 0x00E8, 0x00EA, 'e' },
	{ 0x00DB, 0x00DB, 'u' }, { 0x00FB, 0x00FB, 'u' },
	{ 0x02B9, 0x02B9, '\'' }, { 0x02BA, 0x02BA, '"' }, /* modifier primes */
	{ 0x02BC, 0x02BC, '\'' }, /* modifier apostrophe */
	{ 0x2000, 0x200B, ' ' },  /* spaces of all widths */
	{ 0x200C, 0x200F, NOTHING }, /* joiners and direction marks */
	{ 0x2010, 0x2015, '-' },  /* hyphens and dashes */
	{ 0x2018, 0x201B, '\'' }, /* single quotes */
	{ 0x201C, 0x201F, '"' },  /* double quotes */
	{ 0x202F, 0x202F, ' ' }, { 0x205F, 0x205F, ' ' },
	{ 0x2032, 0x2032, '\'' }, { 0x2033, 0x2033, '"' }, /* primes */
	{ 0x2044, 0x2044, '/' },  /* fraction slash */
	{ 0x2060, 0x2060, NOTHING },
	{ 0x2212, 0x2212, '-' },  /* minus */
	{ 0x2215, 0x2215, '/' },  /* division slash */
	{ 0x3000, 0x3000, ' ' },
	{ 0xFEFF, 0xFEFF, NOTHING }, /* byte order mark */
	{ 0xFF02, 0xFF02, '"' }, { 0xFF07, 0xFF07, '\'' }, /* full width */
	{ 0xFF0D, 0xFF0D, '-' }, { 0xFF0F, 0xFF0F, '/' },
};

static const struct vulgar {
	uint32_t code;
	const char *as; /* blanks keep it apart from the digits beside it */
} vulgars[] = {
	{ 0x00BC, " 1/4 " }, { 0x00BD, " 1/2 " }, { 0x00BE, " 3/4 " },
	{ 0x2150, " 1/7 " }, { 0x2151, " 1/9 " }, { 0x2152, " 1/10 " },
	{ 0x2153, " 1/3 " }, { 0x2154, " 2/3 " },
	{ 0x2155, " 1/5 " }, { 0x2156, " 2/5 " }, { 0x2157, " 3/5 " }, { 0x2158, " 4/5 " },
	{ 0x2159, " 1/6 " }, { 0x215A, " 5/6 " },
	{ 0x215B, " 1/8 " }, { 0x215C, " 3/8 " }, { 0x215D, " 5/8 " }, { 0x215E, " 7/8 " },
};

/* Windows-1252 from 0x80 to 0x9F (the Unicode consortium's table CP1252); the five
 * bytes without a character stand for themselves. */
static const uint16_t windows_1252[32] = {
	0x20AC, 0x0081, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
	0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0x008D, 0x017D, 0x008F,
	0x0090, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
	0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x009D, 0x017E, 0x0178,
};
/* clang-format on */

/* Bytes of the sequence that a lead byte opens; 0: it opens none. */
static size_t sequence_length(unsigned char lead)
{
	if (lead < 0x80)
		return 1;
	if (lead >= 0xC2 && lead < 0xE0)
		return 2;
	if (lead >= 0xE0 && lead < 0xF0)
		return 3;
	return lead >= 0xF0 && lead < 0xF5 ? 4 : 0;
}

/* Decode one character of UTF-8; a byte that is none gives NO_CODE and counts as one. */
static size_t decode(const char *text, size_t left, uint32_t *code)
{
	static const unsigned char lead_bits[] = { 0, 0x7F, 0x1F, 0x0F, 0x07 };
	unsigned char lead = (unsigned char)*text;
	size_t bytes = sequence_length(lead);

	*code = NO_CODE;
	if (bytes == 0 || bytes > left)
		return 1;
	uint32_t value = lead & lead_bits[bytes];
	for (size_t i = 1; i < bytes; i++) {
		unsigned char next = (unsigned char)text[i];

		if ((next & 0xC0) != 0x80)
			return 1;
		value = value << 6 | (next & 0x3FU);
	}
	*code = value;
	return bytes;
}

static char plain_ascii(unsigned char c)
{
	if (c >= 'A' && c <= 'Z')
		return (char)(c - 'A' + 'a');
	if (c == ' ' || (c >= '\t' && c <= '\r'))
		return ' ';
	if (c == '`')
		return '\'';
	return c < ' ' || c > '~' ? RB_MARK_UNKNOWN : (char)c;
}

static char plain_sign(uint32_t code)
{
	for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
		if (code >= signs[i].first && code <= signs[i].last)
			return signs[i].as;
	return RB_MARK_UNKNOWN;
}

static const char *vulgar_fraction(uint32_t code)
{
	for (size_t i = 0; i < sizeof vulgars / sizeof *vulgars; i++)
		if (code == vulgars[i].code)
			return vulgars[i].as;
	return NULL;
}

/* Add one mark; false if there is no room for it. */
static bool put(struct rb_marked *m, char mark, size_t at)
{
	char last = m->length > 0 ? m->text[m->length - 1] : ' ';

	if (mark == NOTHING || (mark == ' ' && last == ' '))
		return true;
	if (mark == '\'' && m->length == 0 && !m->apostrophe) {
		m->apostrophe = true;
		return true;
	}
	if (mark == '\'' && last == '\'') { /* two foot marks are an inch mark */
		m->text[m->length - 1] = '"';
		return true;
	}
	if (m->length == RB_MARKED)
		return mark == ' '; /* trimmed, unless something follows */
	m->text[m->length] = mark;
	m->at[m->length++] = (uint32_t)at;
	return true;
}

static bool put_code(struct rb_marked *m, uint32_t code, size_t at)
{
	const char *fraction;

	if (code < 0x80)
		return put(m, plain_ascii((unsigned char)code), at);
	fraction = vulgar_fraction(code);
	if (fraction == NULL)
		return put(m, plain_sign(code), at);
	for (; *fraction != '\0'; fraction++)
		if (!put(m, *fraction, at))
			return false;
	return true;
}

/* Is this the lead byte of a sequence of ours, and a later byte of it, both read as
 * characters?  No note keeper writes such a pair. */
static bool is_mojibake(uint32_t before, uint32_t code)
{
	bool lead = before == 0xC2 || before == 0xC3 || before == 0xE2;

	return code == NO_CODE || (lead && code >= 0x80);
}

static void trim(struct rb_marked *m)
{
	int from = 0;

	while (from < m->length && m->text[from] == ' ')
		from++;
	while (m->length > from && m->text[m->length - 1] == ' ')
		m->length--;
	m->length -= from;
	memmove(m->text, m->text + from, (size_t)m->length);
	memmove(m->at, m->at + from, ((size_t)m->length + 1) * sizeof *m->at);
}

/* A text that opens with a quote is quoted as a whole: its last quote is no inch mark. */
static void strip_quotes(struct rb_marked *m)
{
	if (m->length < 2 || m->text[0] != '"' || m->text[m->length - 1] != '"')
		return;
	m->text[0] = ' ';
	m->length--;
	trim(m);
}

bool rb_mark(const char *text, size_t length, struct rb_marked *out)
{
	uint32_t before = 0, code;

	out->length = 0;
	out->apostrophe = false;
	out->mojibake = false;
	for (size_t i = 0; i < length; before = code) {
		size_t at = i;

		i += decode(text + i, length - i, &code);
		if (code >= 0x80 && is_mojibake(before, code))
			out->mojibake = true;
		if (!put_code(out, code, at))
			return false;
	}
	out->at[out->length] = (uint32_t)length;
	if (out->length > 0) {
		trim(out);
		strip_quotes(out);
	}
	out->text[out->length] = '\0';
	return true;
}

/* The byte that Windows-1252 has for a character; -1: none. */
static int windows_byte(uint32_t code)
{
	for (int i = 0; i < 32; i++)
		if (windows_1252[i] == code)
			return 0x80 + i;
	return code < 0x80 || (code >= 0xA0 && code <= 0xFF) ? (int)code : -1;
}

size_t rb_mojibake_undo(const char *text, size_t length, char *out, size_t size)
{
	size_t bytes = 0;

	for (size_t i = 0; i < length;) {
		uint32_t code;
		int byte;

		i += decode(text + i, length - i, &code);
		byte = windows_byte(code);
		if (byte < 0 || bytes == size)
			return 0;
		out[bytes++] = (char)(unsigned char)byte;
	}
	return bytes;
}
