/* SPDX-License-Identifier: MIT */
/* json.c - commas, indents, escapes and numbers. */
#include "report/json.h"

#include <stdio.h>
#include <string.h>

#include "report/decimal.h"
#include "report/width.h"
#include "rodbook/version.h"

void rb_json_init(struct rb_json *json, struct rb_sink *sink)
{
	*json = (struct rb_json){ .sink = sink };
}

static bool on_one_line(const struct rb_json *json)
{
	return json->line && json->depth >= json->line;
}

static void new_line(struct rb_json *json)
{
	rb_sink_char(json->sink, '\n');
	rb_sink_pad(json->sink, ' ', 2 * (size_t)json->depth);
}

/* What comes before a value or a key: a comma, a line end, nothing behind a key. */
static void begin(struct rb_json *json)
{
	bool filled = json->filled[json->depth];

	if (json->named) {
		json->named = false;
		return;
	}
	json->filled[json->depth] = true;
	if (!json->depth)
		return;
	if (filled)
		rb_sink_char(json->sink, ',');
	if (!on_one_line(json))
		new_line(json);
	else if (filled)
		rb_sink_char(json->sink, ' ');
}

void rb_json_open(struct rb_json *json, char bracket)
{
	begin(json);
	rb_sink_char(json->sink, bracket);
	if (json->depth + 1 < RB_JSON_DEPTH)
		json->depth++;
	json->close[json->depth] = bracket == '{' ? '}' : ']';
	json->filled[json->depth] = false;
}

void rb_json_open_line(struct rb_json *json, char bracket)
{
	rb_json_open(json, bracket);
	if (!json->line)
		json->line = json->depth;
}

void rb_json_close(struct rb_json *json)
{
	bool line = on_one_line(json);
	char bracket = json->close[json->depth];
	bool filled = json->filled[json->depth];

	if (json->line == json->depth)
		json->line = 0;
	json->depth--;
	if (filled && !line)
		new_line(json);
	rb_sink_char(json->sink, bracket);
}

static void put_unit(struct rb_sink *sink, uint32_t unit)
{
	char out[8];

	snprintf(out, sizeof out, "\\u%04x", (unsigned)(unit & 0xFFFF));
	rb_sink_text(sink, out);
}

/* What JSON itself cannot hold, and what would drive a terminal or turn the writing. */
static void put_escaped(struct rb_sink *sink, struct rb_glyph glyph)
{
	static const char names[] = "\bb\ff\nn\rr\tt\"\"\\\\";

	for (const char *name = names; *name; name += 2) {
		if ((unsigned char)*name != glyph.code)
			continue;
		rb_sink_char(sink, '\\');
		rb_sink_char(sink, name[1]);
		return;
	}
	if (glyph.whole && glyph.code > 0xFFFF) {
		put_unit(sink, 0xD7C0 + (glyph.code >> 10)); /* a pair of surrogates */
		put_unit(sink, 0xDC00 + (glyph.code & 0x3FF));
	} else {
		put_unit(sink, glyph.whole ? glyph.code : 0xFFFD);
	}
}

static bool is_plain(unsigned char c)
{
	return c >= 0x20 && c < 0x7F && c != '"' && c != '\\';
}

/* How many bytes go as they are. */
static size_t plain_run(const char *text)
{
	size_t run = 0;

	while (is_plain((unsigned char)text[run]))
		run++;
	return run;
}

void rb_json_string(struct rb_json *json, const char *text)
{
	size_t length = strlen(text), at = 0;

	begin(json);
	rb_sink_char(json->sink, '"');
	while (at < length) {
		size_t run = plain_run(text + at);
		struct rb_glyph glyph;

		rb_sink_bytes(json->sink, text + at, run);
		at += run;
		if (at == length)
			break;
		glyph = rb_glyph_of(text + at, length - at);
		if (!glyph.plain || glyph.code < 0x80)
			put_escaped(json->sink, glyph);
		else
			rb_sink_bytes(json->sink, text + at, glyph.bytes);
		at += glyph.bytes;
	}
	rb_sink_char(json->sink, '"');
}

/* A key is one of our own words: nothing in it needs an escape. */
void rb_json_key(struct rb_json *json, const char *key)
{
	begin(json);
	rb_sink_char(json->sink, '"');
	rb_sink_text(json->sink, key);
	rb_sink_text(json->sink, "\": ");
	json->named = true;
}

void rb_json_text(struct rb_json *json, const char *text)
{
	if (text && *text)
		rb_json_string(json, text);
	else
		rb_json_null(json);
}

void rb_json_count(struct rb_json *json, int64_t number)
{
	begin(json);
	rb_sink_number(json->sink, number);
}

void rb_json_bool(struct rb_json *json, bool value)
{
	begin(json);
	rb_sink_text(json->sink, value ? "true" : "false");
}

void rb_json_null(struct rb_json *json)
{
	begin(json);
	rb_sink_text(json->sink, "null");
}

void rb_json_number(struct rb_json *json, const char *number)
{
	begin(json);
	rb_sink_text(json->sink, *number ? number : "null");
}

void rb_json_length(struct rb_json *json, rb_length a, enum rb_unit unit, int decimals)
{
	char text[RB_DECIMAL_TEXT];

	if (!rb_length_given(a)) {
		rb_json_null(json);
		return;
	}
	begin(json);
	rb_sink_bytes(json->sink, text,
		      rb_decimal_write(text, a, unit, decimals, decimals ? 1 : 0));
}

static void put_version(struct rb_json *json)
{
	rb_json_key(json, "rodbook");
	rb_json_string(json, RB_VERSION);
	rb_json_key(json, "schema");
	rb_json_count(json, RB_SCHEMA);
}

void rb_json_head(struct rb_json *json)
{
	rb_json_open(json, '{');
	put_version(json);
}

void rb_json_head_line(struct rb_json *json)
{
	rb_json_open_line(json, '{');
	put_version(json);
}

void rb_json_end(struct rb_json *json)
{
	while (json->depth)
		rb_json_close(json);
	rb_sink_char(json->sink, '\n');
}

int rb_json_decimals(enum rb_unit unit)
{
	static const int decimals[] = { [RB_FEET] = 4,
					[RB_INCHES] = 3,
					[RB_FEET_INCHES] = 4,
					[RB_METRES] = 4,
					[RB_MILLIMETRES] = 1 };

	return decimals[unit];
}
