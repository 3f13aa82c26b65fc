/* SPDX-License-Identifier: MIT */
/* message.c - the table of words, and how a finding fills their holes. */
#include "report/message.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "report/likely.h"
#include "report/shown.h"
#include "report/slope_words.h"
#include "report/width.h"

static const struct rb_words words[RB_CODES] = {
#define RB_WORDS(code, arguments, text, hint)                                            \
	[RB_CODE_##code] = { arguments, text, hint },
#include "report/words.def"
#undef RB_WORDS
};

/* What to do about a length that was typed and stands in no file. */
static const char *const typed[RB_CODES] = {
#define RB_TYPED(code, hint) [RB_CODE_##code] = (hint),
#include "report/words_typed.def"
#undef RB_TYPED
};

const struct rb_words *rb_words_of(enum rb_code code)
{
	return &words[code];
}

const char *rb_words_typed(enum rb_code code)
{
	return typed[code];
}

const char *rb_severity_name(enum rb_severity severity)
{
	static const char *const name[] = {
		[RB_NOTE] = "note",
		[RB_WARNING] = "warning",
		[RB_FAILED] = "failed",
		[RB_ERROR] = "error",
	};

	return name[severity];
}

/* What is being worded, and the text that grows. */
struct wording {
	const struct rb_findings *findings;
	const struct rb_finding *finding;
	const char *cell; /* "B9", or "" */
	char *text;
	size_t used;
	bool missing; /* a hole had nothing to say */
};

static void put_bytes(struct wording *w, const char *bytes, size_t length)
{
	if (w->used + length >= RB_MESSAGE_TEXT)
		return;
	memcpy(w->text + w->used, bytes, length);
	w->used += length;
	w->text[w->used] = '\0';
}

static void put(struct wording *w, const char *text)
{
	put_bytes(w, text, strlen(text));
}

static void put_number(struct wording *w, int64_t number)
{
	char digits[24];

	snprintf(digits, sizeof digits, "%" PRId64, number);
	put(w, digits);
}

#define SHOWN_COLUMNS 100 /* of a text of the user's within a message */
#define SHOWN_BYTES   300

/* The user's own words, made visible, and cut where they are very long. */
static void put_shown(struct wording *w, const char *text)
{
	size_t length = strlen(text);
	size_t fits = rb_width_fit(text, length, SHOWN_COLUMNS);
	char out[RB_GLYPH_TEXT];
	size_t at = 0;

	while (at < fits && at < SHOWN_BYTES) {
		struct rb_glyph glyph = rb_glyph_of(text + at, length - at);

		if (glyph.plain)
			put_bytes(w, text + at, glyph.bytes);
		else
			put_bytes(w, out, rb_glyph_escape(out, glyph));
		at += glyph.bytes;
	}
	if (at < length)
		put(w, "...");
}

/* -- places -- */

/* On the command line, or line by line: no file was read. */
static bool is_typed(const struct rb_findings *findings)
{
	return !findings->source;
}

static bool has_cell(const struct rb_place *place)
{
	return place->line && place->cell >= 0;
}

static void put_row(struct wording *w, const struct rb_place *place)
{
	const struct rb_source *source = w->findings->source;

	put(w, source ? "row " : "line ");
	put_number(w, source ? rb_source_sheet_row(source, place->line) : place->line);
}

/* cell B9 (backsight at TP2); row 9 (TP2); the file. */
static void put_place(struct wording *w)
{
	const struct rb_place *place = &w->finding->place;
	bool named = place->point && *place->point;

	if (!place->line || (is_typed(w->findings) && place->heading)) {
		put(w, place->heading ? place->heading : "the file");
		return;
	}
	if (*w->cell) {
		put(w, "cell ");
		put(w, w->cell);
	} else {
		put_row(w, place);
	}
	if (!named && !(place->heading && has_cell(place)))
		return;
	put(w, " (");
	if (place->heading && has_cell(place)) {
		put(w, place->heading);
		put(w, named ? " at " : "");
	}
	if (named)
		put_shown(w, place->point);
	put(w, ")");
}

/* The letters of a sheet's column: A to Z, AA, AB ... */
static void name_cell(char out[static RB_CELL_NAME], const struct rb_source *source,
		      const struct rb_place *place)
{
	char back[RB_CELL_NAME];
	size_t letters = 0, used = 0;
	struct wording row = { .text = out };

	*out = '\0';
	if (!source || !has_cell(place))
		return;
	for (int64_t column = place->cell + INT64_C(1); column > 0;
	     column = (column - 1) / 26)
		back[letters++] = (char)('A' + (column - 1) % 26);
	while (letters)
		out[used++] = back[--letters];
	row.used = used;
	put_number(&row, rb_source_sheet_row(source, place->line));
}

/* -- arguments -- */

/* As many as a rod shows. */
static const int least_decimals[] = { [RB_FEET] = 2,
				      [RB_INCHES] = 2,
				      [RB_FEET_INCHES] = 2,
				      [RB_METRES] = 3,
				      [RB_MILLIMETRES] = 0 };

/* Two lengths in one message are held against each other: both show why. */
static bool is_pair(const struct rb_finding *finding, int i)
{
	const struct rb_argument *argument = finding->argument;

	return i < 2 && argument[0].kind == RB_LENGTH && argument[1].kind == RB_LENGTH;
}

/* Write the length, of two that are held against each other with places enough. */
static void put_length(struct wording *w, int i, bool sized)
{
	const struct rb_argument *argument = w->finding->argument;
	enum rb_unit unit = argument[i].unit;
	rb_length a = argument[i].length, b = argument[1 - (i & 1)].length;
	struct rb_style style = { unit, least_decimals[unit], 16, true };
	char text[RB_LENGTH_TEXT], other[RB_LENGTH_TEXT];

	if (sized)
		a = rb_length_absolute(a);
	b = rb_length_absolute(b); /* sizes are held against each other, not signs */
	if (a.nm < 0)
		b = rb_length_negate(b);
	if (!is_pair(w->finding, i))
		rb_shown(text, a, unit);
	else
		rb_shown_pair(text, other, a, b, style);
	put(w, text);
}

/* 0.28 ft low: what a sign says, in words. */
static void put_off(struct wording *w, int i)
{
	rb_length off = w->finding->argument[i].length;

	if (!off.nm) {
		put(w, "exactly right");
		return;
	}
	put_length(w, i, true);
	put(w, off.nm < 0 ? " low" : " high");
}

/* The slope that one is held against in a message; itself where it is alone. */
static rb_slope other_slope(const struct wording *w, const struct rb_argument *argument)
{
	const struct rb_argument *other = w->finding->argument;

	for (int i = 0; i < RB_ARGUMENTS; i++)
		if (&other[i] != argument && other[i].kind == RB_SLOPE)
			return other[i].slope;
	return argument->slope;
}

static void put_slope(struct wording *w, const struct rb_argument *argument)
{
	int places = rb_slope_places(argument->slope, other_slope(w, argument));
	char text[RB_SLOPE_TEXT];

	rb_slope_format(text, argument->slope, RB_PER_FOOT, places);
	put(w, text);
	put(w, " (");
	rb_slope_format(text, argument->slope, RB_PERCENT, places - 1);
	put(w, text);
	put(w, ")");
}

static void put_argument(struct wording *w, int i)
{
	const struct rb_argument *argument = &w->finding->argument[i];
	char text[RB_LENGTH_TEXT];

	switch (argument->kind) {
	case RB_NOTHING:
		w->missing = true;
		break;
	case RB_TEXT:
		w->missing |= !*argument->text;
		put_shown(w, argument->text);
		break;
	case RB_LENGTH:
		put_length(w, i, false);
		break;
	case RB_READING:
		rb_shown(text, argument->length, argument->unit);
		put(w, text);
		break;
	case RB_COUNT:
	case RB_LINE:
		put_number(w, argument->count);
		break;
	case RB_SLOPE:
		put_slope(w, argument);
		break;
	}
}

/* -8: a number that a sheet may have worked out of -5-3. */
static void put_minus(struct wording *w, int i)
{
	static const char minus[] = "\u2212"; /* or a plain one */
	const char *text = w->finding->argument[i].text;

	w->missing |= *text != '-' && strncmp(text, minus, strlen(minus)) != 0;
	put_shown(w, text);
}

/* The word for one, or for more: {0|row|rows}. */
static void put_counted(struct wording *w, int i, const char *both)
{
	size_t one = strcspn(both, "|}");
	const char *more = both + one + 1;

	if (w->finding->argument[i].count == 1)
		put_bytes(w, both, one);
	else
		put_bytes(w, more, strcspn(more, "}"));
}

/* Was the cell typed with marks?  Then its likely readings have them too. */
static bool has_marks(const struct rb_argument *cell)
{
	return cell->kind == RB_TEXT && strpbrk(cell->text, "'\"") != NULL;
}

static void put_likely(struct wording *w, bool marked)
{
	const struct rb_argument *argument = w->finding->argument;
	const struct rb_argument *first = NULL;
	char text[RB_READING_WORDS];
	int rank = 0;

	marked |= has_marks(&argument[0]) || argument[1].marked;
	for (int i = 0; i < RB_ARGUMENTS; i++) {
		if (argument[i].kind != RB_READING)
			continue;
		first = first ? first : &argument[i];
		rb_likely(text, &argument[i], first, rank, marked);
		put(w, rank++ ? ", " : "");
		put(w, text);
	}
	w->missing |= !rank;
}

/* -- templates -- */

/* {0}, and what may stand behind the number; a test looks at all templates. */
static void put_numbered(struct wording *w, int i, const char *form)
{
	bool is_length = w->finding->argument[i].kind == RB_LENGTH;
	bool is_text = w->finding->argument[i].kind == RB_TEXT;

	if (!strncmp(form, " whole}", 7)) /* made visible when it was put together */
		put(w, w->finding->argument[i].text);
	else if (!strncmp(form, " off}", 5) && is_length)
		put_off(w, i);
	else if (!strncmp(form, " size}", 6) && is_length)
		put_length(w, i, true);
	else if (!strncmp(form, " minus}", 7) && is_text)
		put_minus(w, i);
	else if (form[0] == '|')
		put_counted(w, i, form + 1);
	else
		put_argument(w, i);
}

static void put_hole(struct wording *w, const char *hole)
{
	if (!strncmp(hole, "place}", 6))
		put_place(w);
	else if (!strncmp(hole, "likely}", 7))
		put_likely(w, false);
	else if (!strncmp(hole, "marks}", 6))
		put_likely(w, true);
	else
		put_numbered(w, hole[0] - '0', hole + 1);
}

/* Fill the holes of a template, leaving out each [part] that has nothing to say. */
static void fill(struct wording *w, char text[static RB_MESSAGE_TEXT],
		 const char *template)
{
	size_t part = 0;

	w->text = text;
	w->used = 0;
	*text = '\0';
	while (*template) {
		size_t plain = strcspn(template, "{[]");

		put_bytes(w, template, plain);
		template += plain;
		if (*template == '{') {
			put_hole(w, template + 1);
			template += strcspn(template, "}") + 1;
		} else if (*template == '[') {
			part = w->used;
			w->missing = false;
			template ++;
		} else if (*template == ']') {
			w->used = w->missing ? part : w->used;
			text[w->used] = '\0';
			template ++;
		}
	}
}

/* The bytes of so many characters. */
static size_t bytes_of(const char *text, uint32_t characters)
{
	size_t bytes = 0;

	while (text[bytes] && (characters || (text[bytes] & 0xC0) == 0x80))
		characters -= (text[bytes++] & 0xC0) != 0x80;
	return bytes;
}

/* Where a place stands in a line that was typed. */
static struct rb_span span_of(const char *line, const struct rb_place *place)
{
	size_t from = bytes_of(line, place->column - 1);

	return (struct rb_span){ .line = line,
				 .line_length = strlen(line),
				 .from = from,
				 .length = bytes_of(line + from, place->width),
				 .column = place->column };
}

void rb_message_make(struct rb_message *out, const struct rb_findings *findings,
		     const struct rb_finding *finding, struct rb_cursor *cursor)
{
	const struct rb_words *wording = rb_words_of(finding->code);
	struct wording w = { .findings = findings,
			     .finding = finding,
			     .cell = out->cell };
	const struct rb_place *place = &finding->place;

	out->severity = rb_code_severity(finding->code);
	out->code = rb_code_name(finding->code);
	name_cell(out->cell, findings->source, place);
	fill(&w, out->text, wording->text);
	fill(&w, out->hint,
	     is_typed(findings) && typed[finding->code] ? typed[finding->code]
							: wording->hint);
	out->line = place->line;
	out->column = place->column;
	out->quoted = findings->typed && place->column;
	if (out->quoted) {
		out->span = span_of(findings->typed, place);
		return;
	}
	out->quoted = findings->source && place->line &&
		      rb_source_span(findings->source, cursor, place->line, place->cell,
				     &out->span);
	if (!out->quoted)
		return;
	out->line += out->span.lines_down;
	out->column = has_cell(place) ? out->span.column : 0;
}
