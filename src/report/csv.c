/* SPDX-License-Identifier: MIT */
/* csv.c - commas, quotes and the guard against formulas. */
#include "report/csv.h"

#include <string.h>

#include "report/width.h"

void rb_csv_init(struct rb_csv *csv, struct rb_sink *sink)
{
	*csv = (struct rb_csv){ .sink = sink };
}

#define AHEAD 2048 /* nearly always a whole row */

void rb_csv_go_on(struct rb_csv *csv)
{
	if (csv->to)
		rb_sink_took(csv->sink, csv->to);
	csv->to = rb_sink_room(csv->sink, AHEAD);
	csv->last = csv->to + AHEAD - RB_CSV_SHORT - 1;
}

/* What the bytes of a cell ask for. */
#define PLAIN   0
#define QUOTED  1 /* cannot stand without quotes */
#define CAREFUL 2 /* a quote, or not ASCII and so maybe no UTF-8: byte by byte */

/* clang-format off */
#define P PLAIN
#define Q QUOTED
#define C CAREFUL
static const unsigned char needs_of[256] = {
	Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, /* 00, control bytes */
	Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, Q, /* 10 */
	P, P, Q|C, P, P, P, P, P, P, P, P, P, Q, P, P, P, /* 20: the quote, the comma */
	P, P, P, P, P, P, P, P, P, P, P, Q, P, P, P, P, /* 30: the semicolon */
	P, P, P, P, P, P, P, P, P, P, P, P, P, P, P, P, /* 40 */
	P, P, P, P, P, P, P, P, P, P, P, P, P, P, P, P, /* 50 */
	P, P, P, P, P, P, P, P, P, P, P, P, P, P, P, P, /* 60 */
	P, P, P, P, P, P, P, P, P, P, P, P, P, P, P, P, /* 70 */
	C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, /* 80, no ASCII */
	C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, /* 90 */
	C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, /* A0 */
	C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, /* B0 */
	C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, /* C0 */
	C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, /* D0 */
	C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, /* E0 */
	C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, C, /* F0 */
};
#undef P
#undef Q
#undef C
/* clang-format on */

static unsigned char needs_of_all(const char *text, size_t length)
{
	unsigned char needs = PLAIN;

	for (size_t i = 0; i < length; i++)
		needs |= needs_of[(unsigned char)text[i]];
	if (length && (text[0] == ' ' || text[length - 1] == ' '))
		needs |= QUOTED; /* blanks outside quotes are taken off */
	return needs;
}

/* Runs of good bytes at once; quotes doubled, bad bytes replaced. */
static void put_careful(struct rb_sink *sink, const char *text, size_t length)
{
	size_t from = 0, at = 0;

	while (at < length) {
		struct rb_glyph glyph = rb_glyph_of(text + at, length - at);

		if (!glyph.whole || glyph.code == '"') {
			rb_sink_bytes(sink, text + from, at - from);
			rb_sink_text(sink, glyph.whole ? "\"\"" : "\xEF\xBF\xBD");
			from = at + 1;
		}
		at += glyph.bytes;
	}
	rb_sink_bytes(sink, text + from, length - from);
}

static void put_cell(struct rb_sink *sink, const char *text, size_t length, bool guarded)
{
	unsigned char needs = needs_of_all(text, length);

	if (needs & QUOTED)
		rb_sink_char(sink, '"');
	if (guarded)
		rb_sink_char(sink, '\'');
	if (needs & CAREFUL)
		put_careful(sink, text, length);
	else
		rb_sink_bytes(sink, text, length);
	if (needs & QUOTED)
		rb_sink_char(sink, '"');
}

/* Would a spreadsheet run it, or our reader take an apostrophe off it? */
static bool is_guarded(char first)
{
	switch (first) {
	case '=':
	case '+':
	case '-':
	case '@':
	case '\t':
	case '\r':
	case '\'':
		return true;
	default:
		return false;
	}
}

/* Nearly all cells are short and need nothing: written as they are looked at.  Where it
 * ends; NULL: this one is another. */
static char *put_plain(char *to, const char *text)
{
	size_t length = 0;

	while (length < RB_CSV_SHORT && needs_of[(unsigned char)text[length]] == PLAIN) {
		to[length] = text[length];
		length++;
	}
	if (length == RB_CSV_SHORT || text[length] || text[0] == ' ' ||
	    text[length - 1] == ' ')
		return NULL;
	return to + length;
}

/* A cell by way of the sink, of any length and with whatever it needs. */
static void put_long(struct rb_csv *csv, const char *text, size_t length, bool guarded)
{
	rb_sink_took(csv->sink, csv->to);
	put_cell(csv->sink, text, length, guarded);
	csv->to = NULL;
	rb_csv_go_on(csv);
	rb_csv_end(csv, csv->to);
}

void rb_csv_text(struct rb_csv *csv, const char *text)
{
	char *to = rb_csv_begin(csv);
	bool guarded;

	if (!text || !*text) {
		rb_csv_end(csv, to);
		return;
	}
	guarded = is_guarded(*text);
	to = guarded ? NULL : put_plain(to, text);
	if (to)
		rb_csv_end(csv, to);
	else
		put_long(csv, text, strlen(text), guarded);
}

void rb_csv_number(struct rb_csv *csv, const char *text, size_t length)
{
	char *to = rb_csv_begin(csv);

	if (length > RB_CSV_SHORT || memchr(text, '"', length)) {
		put_long(csv, text, length, false);
		return;
	}
	memcpy(to, text, length);
	rb_csv_end(csv, to + length);
}

void rb_csv_end_row(struct rb_csv *csv)
{
	csv->to[-1] = '\n';
	rb_sink_took(csv->sink, csv->to);
	csv->to = NULL;
}
