/* SPDX-License-Identifier: MIT */
/* strict.c - text, and comma separated values. */
#include "strict.h"

#include <csv.h>
#include <string.h>

#include "target.h"

/* -- keeping -- */

static bool keep(void *self, const char *bytes, size_t length)
{
	struct kept *kept = self;

	if (kept->room - kept->length <= length) {
		kept->room = 2 * (kept->length + length) + 1;
		kept->bytes = realloc(kept->bytes, kept->room);
		HOLDS(kept->bytes);
	}
	memcpy(kept->bytes + kept->length, bytes, length);
	kept->length += length;
	return true;
}

void kept_begin(struct kept *kept)
{
	kept->bytes = NULL;
	kept->length = 0;
	kept->room = 0;
	rb_sink_init(&kept->sink, keep, kept);
}

void kept_end(struct kept *kept)
{
	HOLDS(rb_sink_flush(&kept->sink));
	keep(kept, "", 1);
	kept->length--;
}

void kept_free(struct kept *kept)
{
	free(kept->bytes);
}

/* -- text -- */

/* The bytes of the character at `at`, which must be one (The Unicode Standard, table
 * 3-7: neither overlong, nor half of a pair, nor beyond the last). */
static size_t character(const unsigned char *at, size_t left, uint32_t *code)
{
	static const uint32_t least[] = { 0, 0, 0x80, 0x800, 0x10000 };
	size_t bytes = *at < 0xE0 ? 2 : *at < 0xF0 ? 3 : 4;

	*code = *at;
	if (*at < 0x80) /* nearly all of them */
		return 1;
	HOLDS(*at >= 0xC2 && *at < 0xF5);
	HOLDS(bytes <= left);
	*code &= 0x7Fu >> bytes;
	for (size_t i = 1; i < bytes; i++) {
		HOLDS((at[i] & 0xC0) == 0x80);
		*code = *code << 6 | (at[i] & 0x3Fu);
	}
	HOLDS(*code >= least[bytes] && *code <= 0x10FFFF);
	HOLDS(*code < 0xD800 || *code > 0xDFFF);
	return bytes;
}

/* Nothing that drives a terminal or turns the writing; U+200E but behind letters from
 * right to left, where the writers put it. */
static void is_harmless(uint32_t code, uint32_t before)
{
	HOLDS(code == '\n' || code >= 0x20);
	HOLDS(code < 0x7F || code > 0x9F);
	HOLDS(code < 0x202A || code > 0x202E);
	HOLDS(code < 0x2066 || code > 0x2069);
	HOLDS(code != 0x200F && code != 0x061C);
	HOLDS(code != 0x200E || before >= 0x0590);
}

static bool starts(const char *text, const char *with)
{
	return strncmp(text, with, strlen(with)) == 0;
}

static void check_text(const struct kept *kept, bool bold)
{
	uint32_t code = 0, before = 0;

	for (size_t at = 0; at < kept->length;) {
		const char *text = kept->bytes + at;

		if (bold && *text == '\033' &&
		    (starts(text, "\033[1m") || starts(text, "\033[0m"))) {
			at += 4;
			continue;
		}
		at += character((const unsigned char *)text, kept->length - at, &code);
		is_harmless(code, before);
		before = code;
	}
}

void strict_text(const struct kept *kept)
{
	check_text(kept, false);
}

void strict_bold_text(const struct kept *kept)
{
	check_text(kept, true);
}

/* -- comma separated values -- */

struct rows {
	size_t cells, of_first;
	size_t rows;
};

/* -12.5 and -0'-2": numbers of our own, and nothing that a sheet would run. */
static bool is_negative_number(const char *cell, size_t length)
{
	size_t at = 1;

	while (at < length && strchr("0123456789.", cell[at]))
		at++;
	if (at == 1)
		return false;
	if (at == length)
		return true;
	if (length - at == 3 && !memcmp(cell + at, " ft", 3))
		return true;
	if (length - at == 2 && !memcmp(cell + at, " m", 2))
		return true;
	return cell[length - 1] == '"' && cell[0] == '-' &&
	       strspn(cell + at, "0123456789'- /\"") >= length - at;
}

static void look_at_cell(void *bytes, size_t length, void *self)
{
	struct rows *rows = self;
	const char *cell = bytes;

	rows->cells++;
	if (length && strchr("=+-@\t\r", cell[0]))
		HOLDS(cell[0] == '-' && is_negative_number(cell, length));
	HOLDS(!length || !memchr(cell, '\0', length));
}

static void end_row(int c, void *self)
{
	struct rows *rows = self;

	(void)c;
	if (!rows->rows++)
		rows->of_first = rows->cells;
	HOLDS(rows->cells == rows->of_first);
	rows->cells = 0;
}

void strict_csv(const struct kept *kept)
{
	struct csv_parser parser;
	struct rows rows = { 0 };

	HOLDS(!csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI));
	HOLDS(csv_parse(&parser, kept->bytes, kept->length, look_at_cell, end_row,
			&rows) == kept->length);
	HOLDS(!csv_fini(&parser, look_at_cell, end_row, &rows));
	csv_free(&parser);
	HOLDS(!kept->length || kept->bytes[kept->length - 1] == '\n');
	for (size_t at = 0; at < kept->length;) {
		uint32_t code;

		at += character((const unsigned char *)kept->bytes + at,
				kept->length - at, &code);
	}
}
