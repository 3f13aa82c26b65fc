/* SPDX-License-Identifier: MIT */
/* escape.c - characters that markup would take for its own. */
#include "report/escape.h"

#include <stdio.h>
#include <string.h>

#include "report/width.h"

#define REPLACEMENT "\xEF\xBF\xBD" /* U+FFFD */

static const char *entity_of(char c)
{
	static const struct {
		char c;
		const char *entity;
	} entities[] = {
		{ '&', "&amp;" },  { '<', "&lt;" },   { '>', "&gt;" },
		{ '"', "&quot;" }, { '\'', "&#39;" },
	};

	for (size_t i = 0; i < sizeof entities / sizeof *entities; i++)
		if (entities[i].c == c)
			return entities[i].entity;
	return NULL;
}

/* What stands in place of a character that does not go as it is; NULL: it may go. */
static const char *instead(struct rb_glyph glyph, char out[static RB_GLYPH_TEXT])
{
	if (!glyph.whole)
		return REPLACEMENT;
	if (glyph.plain)
		return NULL;
	if (glyph.code == '\n' || glyph.code == '\r' || glyph.code == '\t')
		return " ";
	if (glyph.code < 0x20 || (glyph.code >= 0x7F && glyph.code < 0xA0))
		return "";
	rb_glyph_escape(out, glyph);
	return out;
}

/* The bytes with which a text begins that go as they are: most of them. */
static size_t free_run(const char *text, size_t length)
{
	size_t at = 0;

	while (at < length && text[at] >= 0x20 && text[at] < 0x7F && !entity_of(text[at]))
		at++;
	return at;
}

void rb_sink_escaped(struct rb_sink *sink, const char *text, size_t length)
{
	char out[RB_GLYPH_TEXT];

	for (size_t at = 0; at < length;) {
		size_t run = free_run(text + at, length - at);
		struct rb_glyph glyph;
		const char *other;

		rb_sink_bytes(sink, text + at, run);
		at += run;
		if (at == length)
			return;
		glyph = rb_glyph_of(text + at, length - at);
		other = entity_of(text[at]);
		if (!other)
			other = instead(glyph, out);
		if (other)
			rb_sink_text(sink, other);
		else
			rb_sink_bytes(sink, text + at, glyph.bytes);
		if (rb_turn_ends(text, at, length))
			rb_sink_text(sink, RB_LEFT_TO_RIGHT);
		at += glyph.bytes;
	}
}

void rb_sink_escaped_text(struct rb_sink *sink, const char *text)
{
	rb_sink_escaped(sink, text, strlen(text));
}

/* Letters and digits go as they are, other ASCII by its number: then neither a quote nor
 * the end of the style sheet can stand in it. */
static void put_css(struct rb_sink *sink, const char *text, struct rb_glyph glyph)
{
	char out[RB_GLYPH_TEXT];
	bool letter = glyph.code > 0x7F || glyph.code == ' ' ||
		      (glyph.code >= '0' && glyph.code <= '9') ||
		      (glyph.code >= 'A' && glyph.code <= 'Z') ||
		      (glyph.code >= 'a' && glyph.code <= 'z');

	if (letter) {
		rb_sink_bytes(sink, text, glyph.bytes);
		return;
	}
	snprintf(out, sizeof out, "\\%06lx", (unsigned long)glyph.code);
	rb_sink_text(sink, out);
}

void rb_sink_css_string(struct rb_sink *sink, const char *text)
{
	size_t length = strlen(text);
	char out[RB_GLYPH_TEXT];

	for (size_t at = 0; at < length;) {
		struct rb_glyph glyph = rb_glyph_of(text + at, length - at);
		const char *other = instead(glyph, out);

		if (!other)
			put_css(sink, text + at, glyph);
		while (other && *other) {
			struct rb_glyph part = rb_glyph_of(other, strlen(other));

			put_css(sink, other, part);
			other += part.bytes;
		}
		at += glyph.bytes;
	}
}
