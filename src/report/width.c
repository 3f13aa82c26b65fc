/* SPDX-License-Identifier: MIT */
/* width.c - characters: their columns, and those that are never let through. */
#include "report/width.h"

#include <string.h>

#include "report/blanks.h"

struct range {
	uint32_t from, to;
};

/* clang-format off */
/* Characters that take no column: marks that sit on the one before, joiners, selectors. */
static const struct range combining[] = {
	{ 0x0300, 0x036F }, { 0x0483, 0x0489 }, { 0x0591, 0x05BD }, { 0x05BF, 0x05BF },
	{ 0x05C1, 0x05C2 }, { 0x0610, 0x061A }, { 0x064B, 0x065F }, { 0x0670, 0x0670 },
	{ 0x06D6, 0x06DC }, { 0x06DF, 0x06E4 }, { 0x0900, 0x0902 }, { 0x093C, 0x093C },
	{ 0x0941, 0x0948 }, { 0x094D, 0x094D }, { 0x0E31, 0x0E31 }, { 0x0E34, 0x0E3A },
	{ 0x0E47, 0x0E4E }, { 0x1AB0, 0x1AFF }, { 0x1DC0, 0x1DFF }, { 0x200C, 0x200D },
	{ 0x20D0, 0x20FF }, { 0x302A, 0x302D }, { 0x3099, 0x309A }, { 0xFE00, 0xFE0F },
	{ 0xFE20, 0xFE2F }, { 0x1F3FB, 0x1F3FF }, { 0xE0100, 0xE01EF },
};

/* Characters that take two columns (Unicode Standard Annex 11: W and F; emoji). */
static const struct range wide[] = {
	{ 0x1100, 0x115F }, { 0x231A, 0x231B }, { 0x23E9, 0x23EC }, { 0x23F0, 0x23F0 },
	{ 0x23F3, 0x23F3 }, { 0x25FD, 0x25FE }, { 0x2614, 0x2615 }, { 0x2648, 0x2653 },
	{ 0x267F, 0x267F }, { 0x2693, 0x2693 }, { 0x26A1, 0x26A1 }, { 0x26AA, 0x26AB },
	{ 0x26BD, 0x26BE }, { 0x26C4, 0x26C5 }, { 0x26CE, 0x26CE }, { 0x26D4, 0x26D4 },
	{ 0x26EA, 0x26EA }, { 0x26F2, 0x26F3 }, { 0x26F5, 0x26F5 }, { 0x26FA, 0x26FA },
	{ 0x26FD, 0x26FD }, { 0x2705, 0x2705 }, { 0x270A, 0x270B }, { 0x2728, 0x2728 },
	{ 0x274C, 0x274C }, { 0x274E, 0x274E }, { 0x2753, 0x2755 }, { 0x2757, 0x2757 },
	{ 0x2795, 0x2797 }, { 0x27B0, 0x27B0 }, { 0x27BF, 0x27BF }, { 0x2B1B, 0x2B1C },
	{ 0x2B50, 0x2B50 }, { 0x2B55, 0x2B55 }, { 0x2E80, 0x303E }, { 0x3041, 0x33FF },
	{ 0x3400, 0x4DBF }, { 0x4E00, 0x9FFF }, { 0xA000, 0xA4CF }, { 0xA960, 0xA97F },
	{ 0xAC00, 0xD7A3 }, { 0xF900, 0xFAFF }, { 0xFE10, 0xFE19 }, { 0xFE30, 0xFE6F },
	{ 0xFF01, 0xFF60 }, { 0xFFE0, 0xFFE6 }, { 0x16FE0, 0x18DFF }, { 0x1AFF0, 0x1B2FF },
	{ 0x1F004, 0x1F004 }, { 0x1F0CF, 0x1F0CF }, { 0x1F18E, 0x1F18E }, { 0x1F191, 0x1F19A },
	{ 0x1F1E6, 0x1F202 }, { 0x1F210, 0x1F23B }, { 0x1F240, 0x1F248 }, { 0x1F250, 0x1F251 },
	{ 0x1F260, 0x1F265 }, { 0x1F300, 0x1F320 }, { 0x1F32D, 0x1F335 }, { 0x1F337, 0x1F37C },
	{ 0x1F37E, 0x1F393 }, { 0x1F3A0, 0x1F3CA }, { 0x1F3CF, 0x1F3D3 }, { 0x1F3E0, 0x1F3F0 },
	{ 0x1F3F4, 0x1F3F4 }, { 0x1F3F8, 0x1F43E }, { 0x1F440, 0x1F440 }, { 0x1F442, 0x1F4FC },
	{ 0x1F4FF, 0x1F53D }, { 0x1F54B, 0x1F54E }, { 0x1F550, 0x1F567 }, { 0x1F57A, 0x1F57A },
	{ 0x1F595, 0x1F596 }, { 0x1F5A4, 0x1F5A4 }, { 0x1F5FB, 0x1F64F }, { 0x1F680, 0x1F6C5 },
	{ 0x1F6CC, 0x1F6CC }, { 0x1F6D0, 0x1F6D2 }, { 0x1F6D5, 0x1F6D7 }, { 0x1F6DD, 0x1F6DF },
	{ 0x1F6EB, 0x1F6EC }, { 0x1F6F4, 0x1F6FC }, { 0x1F7E0, 0x1F7EB }, { 0x1F90C, 0x1F93A },
	{ 0x1F93C, 0x1F945 }, { 0x1F947, 0x1F9FF }, { 0x1FA70, 0x1FAFF }, { 0x20000, 0x3FFFD },
};

/* Characters that drive a terminal, turn the direction of writing, or cannot be seen. */
static const struct range hidden[] = {
	{ 0x0000, 0x001F }, { 0x007F, 0x009F }, { 0x00AD, 0x00AD }, { 0x061C, 0x061C },
	{ 0x180E, 0x180E }, { 0x200B, 0x200B }, { 0x200E, 0x200F }, { 0x2028, 0x202E },
	{ 0x2060, 0x206F }, { 0xFEFF, 0xFEFF }, { 0xFFF0, 0xFFFB }, { 0xFFFE, 0xFFFF },
	{ 0xE0000, 0xE007F },
};

/* Letters that are written from right to left, with their marks. */
static const struct range turned[] = {
	{ 0x0590, 0x08FF }, { 0xFB1D, 0xFDFF }, { 0xFE70, 0xFEFC }, { 0x10800, 0x10FFF },
	{ 0x1E800, 0x1EFFF },
};
/* clang-format on */

#define UTF8_MOST    4 /* bytes of a character */
#define COUNT(table) (sizeof(table) / sizeof *(table))

static bool among(uint32_t code, const struct range *table, size_t count)
{
	size_t low = 0, high = count;

	while (low < high) {
		size_t middle = (low + high) / 2;

		if (code > table[middle].to)
			low = middle + 1;
		else
			high = middle;
	}
	return low < count && code >= table[low].from;
}

/* The bytes of the UTF-8 sequence that a first byte opens; 0: it opens none. */
static size_t sequence_length(unsigned char first)
{
	if (first < 0x80)
		return 1;
	if (first < 0xC2 || first > 0xF4)
		return 0;
	return first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
}

/* Surrogates, overlong forms and what lies beyond Unicode are no UTF-8. */
static bool is_code(uint32_t code, size_t bytes)
{
	static const uint32_t least[] = { 0, 0, 0x80, 0x800, 0x10000 };

	return code >= least[bytes] && code <= 0x10FFFF &&
	       !(code >= 0xD800 && code <= 0xDFFF);
}

/* Decode one character; false if the first byte is no UTF-8. */
static bool decode(const char *text, size_t length, struct rb_glyph *glyph)
{
	static const unsigned char mask[] = { 0, 0x7F, 0x1F, 0x0F, 0x07 };
	size_t bytes = sequence_length((unsigned char)text[0]);
	uint32_t code;

	if (!bytes || bytes > length)
		return false;
	code = (unsigned char)text[0] & mask[bytes];
	for (size_t i = 1; i < bytes; i++) {
		unsigned char next = (unsigned char)text[i];

		if ((next & 0xC0) != 0x80)
			return false;
		code = code << 6 | (next & 0x3F);
	}
	glyph->bytes = bytes;
	glyph->code = code;
	return is_code(code, bytes);
}

static size_t columns_of(uint32_t code)
{
	if (code < 0x300)
		return 1;
	if (among(code, combining, COUNT(combining)))
		return 0;
	return among(code, wide, COUNT(wide)) ? 2 : 1;
}

struct rb_glyph rb_glyph_of(const char *text, size_t length)
{
	struct rb_glyph glyph = { .bytes = 1, .code = (unsigned char)text[0] };
	char out[RB_GLYPH_TEXT];

	if (glyph.code >= 0x20 && glyph.code < 0x7F) {
		glyph.columns = 1;
		glyph.whole = glyph.plain = true;
		return glyph;
	}
	glyph.whole = decode(text, length, &glyph);
	if (!glyph.whole) {
		glyph.bytes = 1;
		glyph.code = (unsigned char)text[0];
	}
	glyph.plain = glyph.whole && !among(glyph.code, hidden, COUNT(hidden));
	glyph.columns =
		glyph.plain ? columns_of(glyph.code) : rb_glyph_escape(out, glyph);
	return glyph;
}

static size_t put_hex(char *out, uint32_t code, int digits)
{
	for (int i = digits - 1; i >= 0; i--) {
		out[i] = "0123456789abcdef"[code & 0xF];
		code >>= 4;
	}
	return (size_t)digits;
}

size_t rb_glyph_escape(char out[static RB_GLYPH_TEXT], struct rb_glyph glyph)
{
	size_t used = 0;

	out[used++] = '\\';
	if (glyph.code == '\t' || glyph.code == '\n' || glyph.code == '\r') {
		out[used++] = glyph.code == '\t' ? 't' : glyph.code == '\n' ? 'n' : 'r';
	} else if (glyph.code < 0x100) {
		out[used++] = 'x';
		used += put_hex(out + used, glyph.code, 2);
	} else {
		out[used++] = 'u';
		used += put_hex(out + used, glyph.code, glyph.code > 0xFFFF ? 6 : 4);
	}
	out[used] = '\0';
	return used;
}

/* Nearly all text is told by its first byte to have no such letter; one that is written
 * out (U+061C) is none. */
static bool is_turned(const char *text, size_t length)
{
	struct rb_glyph glyph;

	if (!length || (unsigned char)*text < 0xD6)
		return false;
	glyph = rb_glyph_of(text, length);
	return glyph.plain && among(glyph.code, turned, COUNT(turned));
}

bool rb_turn_ends(const char *text, size_t at, size_t length)
{
	size_t next;

	if (!is_turned(text + at, length - at))
		return false;
	next = at + rb_glyph_of(text + at, length - at).bytes;
	if (next < length && text[next] == ' ')
		next++;
	return !is_turned(text + next, length - next);
}

/* The bytes of printable ASCII with which a text begins: nearly always all of them, and
 * each takes a column. */
static size_t plain_run(const char *text, size_t length)
{
	size_t at = 0;

	while (at < length && text[at] >= 0x20 && text[at] < 0x7F)
		at++;
	return at;
}

size_t rb_width(const char *text, size_t length)
{
	size_t at = plain_run(text, length), columns = at;

	while (at < length) {
		struct rb_glyph glyph = rb_glyph_of(text + at, length - at);

		columns += glyph.columns;
		at += glyph.bytes;
	}
	return columns;
}

size_t rb_width_fit(const char *text, size_t length, size_t columns)
{
	size_t at = plain_run(text, length < columns ? length : columns);

	columns -= at;
	while (at < length) {
		struct rb_glyph glyph = rb_glyph_of(text + at, length - at);

		if (glyph.columns > columns)
			break;
		columns -= glyph.columns;
		at += glyph.bytes;
	}
	return at;
}

/* The first bytes of a text; what stands behind them is only looked at. */
static void put_shown(struct rb_sink *sink, const char *text, size_t bytes, size_t length)
{
	char out[RB_GLYPH_TEXT];

	for (size_t at = 0; at < bytes;) {
		size_t run = plain_run(text + at, bytes - at);
		struct rb_glyph glyph;

		rb_sink_bytes(sink, text + at, run);
		at += run;
		if (at == bytes)
			return;
		glyph = rb_glyph_of(text + at, bytes - at);
		if (glyph.plain)
			rb_sink_bytes(sink, text + at, glyph.bytes);
		else
			rb_sink_bytes(sink, out, rb_glyph_escape(out, glyph));
		if (rb_turn_ends(text, at, length))
			rb_sink_text(sink, RB_LEFT_TO_RIGHT);
		at += glyph.bytes;
	}
}

void rb_sink_shown(struct rb_sink *sink, const char *text, size_t length)
{
	put_shown(sink, text, length, length);
}

/* A word with as much behind it as tells whether a run of turned letters goes on. */
static void put_part(struct rb_sink *sink, const char *text, size_t bytes)
{
	size_t length = bytes;

	while (length < bytes + 1 + UTF8_MOST && text[length])
		length++;
	put_shown(sink, text, bytes, length);
}

/* A word wider than a line goes on over as many lines as it takes; the column then. */
static size_t put_word(struct rb_sink *sink, const char *word, size_t length,
		       size_t width, size_t at, size_t indent, size_t columns)
{
	if (at + width <= columns) {
		put_part(sink, word, length);
		return at + width;
	}
	for (;;) {
		size_t room = columns > at ? columns - at : 0;
		size_t fits = rb_width_fit(word, length, room);

		if (!fits && at <= indent)
			fits = rb_glyph_of(word, length).bytes;
		put_part(sink, word, fits);
		word += fits;
		length -= fits;
		if (!length)
			return at + rb_width(word - fits, fits);
		rb_sink_char(sink, '\n');
		rb_sink_pad(sink, ' ', indent);
		at = indent;
	}
}

void rb_sink_wrapped_part(struct rb_sink *sink, const char *text, size_t length,
			  size_t at, size_t indent, size_t columns)
{
	const char *end = text + length;
	bool first_word = true;

	for (text += strspn(text, " \n"); text < end; text += strspn(text, " \n")) {
		size_t bytes = rb_word_length(text);
		size_t width = rb_width(text, bytes);

		if (indent + width > columns) { /* a sum that no line holds */
			bytes = strcspn(text, " \n");
			width = rb_width(text, bytes);
		}
		if (!first_word && at + 1 + width > columns) {
			rb_sink_char(sink, '\n');
			rb_sink_pad(sink, ' ', indent);
			at = indent;
		} else if (!first_word) {
			rb_sink_char(sink, ' ');
			at++;
		}
		at = put_word(sink, text, bytes, width, at, indent, columns);
		text += bytes;
		first_word = false;
	}
}

void rb_sink_wrapped(struct rb_sink *sink, const char *text, size_t at, size_t indent,
		     size_t columns)
{
	rb_sink_wrapped_part(sink, text, strlen(text), at, indent, columns);
}
