/* SPDX-License-Identifier: MIT */
/* message_text.c - a finding with its place, the user's own line, and what to do. */
#include "report/message_text.h"

#include <string.h>

#include "report/message_order.h"
#include "report/width.h"

#define QUOTE_INDENT 4
#define HINT_INDENT  2
#define CONTEXT      24 /* columns kept before a cell where a line is shortened */
#define CUT          "..."

static void put_bold(struct rb_sink *sink, const char *text, bool bold)
{
	rb_sink_text(sink, bold ? "\x1b[1m" : "");
	rb_sink_text(sink, text);
	rb_sink_text(sink, bold ? "\x1b[0m" : "");
}

static void put_file(struct rb_sink *sink, const struct rb_findings *findings)
{
	const char *file = findings->file ? findings->file : "";

	rb_sink_shown(sink, file, strlen(file));
}

static void put_head(struct rb_sink *sink, const struct rb_findings *findings,
		     const struct rb_message *message, bool bold)
{
	put_file(sink, findings);
	if (message->line) {
		rb_sink_char(sink, ':');
		rb_sink_number(sink, message->line);
	}
	if (message->column) {
		rb_sink_char(sink, ':');
		rb_sink_number(sink, message->column);
	}
	rb_sink_text(sink, ": ");
	put_bold(sink, rb_severity_name(message->severity), bold);
	rb_sink_text(sink, ": ");
	rb_sink_text(sink, message->text);
	rb_sink_text(sink, " [");
	rb_sink_text(sink, message->code);
	rb_sink_text(sink, "]\n");
}

/* Part of the user's line: from and to are offsets in bytes. */
struct window {
	size_t from, to;
};

/* Step back from an offset by whole characters, at most so many columns. */
static size_t back_from(const char *line, size_t at, size_t columns)
{
	while (at > 0) {
		size_t before = at - 1;

		while (before > 0 && at - before < 4 && (line[before] & 0xC0) == 0x80)
			before--;
		if (rb_width(line + before, at - before) > columns)
			break;
		columns -= rb_width(line + before, at - before);
		at = before;
	}
	return at;
}

/* The part of a line that fits beside its cell. */
static struct window window_of(const struct rb_span *span, size_t columns)
{
	struct window all = { 0, span->line_length }, part;

	if (rb_width(span->line, span->line_length) <= columns)
		return all;
	columns -= 2 * strlen(CUT);
	part.from = back_from(span->line, span->from, CONTEXT);
	part.to = part.from + rb_width_fit(span->line + part.from,
					   span->line_length - part.from, columns);
	if (part.to == span->line_length)
		part.from = back_from(span->line, part.to, columns);
	return part;
}

static void put_marks(struct rb_sink *sink, const struct rb_span *span,
		      struct window part, bool cut)
{
	size_t end =
		span->from + span->length < part.to ? span->from + span->length : part.to;
	size_t before = rb_width(span->line + part.from, span->from - part.from);
	size_t marks = end > span->from
			       ? rb_width(span->line + span->from, end - span->from)
			       : 0;

	rb_sink_pad(sink, ' ', QUOTE_INDENT + before + (cut ? strlen(CUT) : 0));
	rb_sink_pad(sink, '^', marks ? marks : 1);
	rb_sink_char(sink, '\n');
}

static void put_quote(struct rb_sink *sink, const struct rb_message *message,
		      size_t columns)
{
	const struct rb_span *span = &message->span;
	struct window part = window_of(span, columns - QUOTE_INDENT);

	rb_sink_pad(sink, ' ', QUOTE_INDENT);
	rb_sink_text(sink, part.from > 0 ? CUT : "");
	rb_sink_shown(sink, span->line + part.from, part.to - part.from);
	rb_sink_text(sink, part.to < span->line_length ? CUT : "");
	rb_sink_char(sink, '\n');
	if (message->column)
		put_marks(sink, span, part, part.from > 0);
}

static void put_message(struct rb_sink *sink, const struct rb_findings *findings,
			const struct rb_message *message, struct rb_text_style style)
{
	put_head(sink, findings, message, style.bold);
	if (message->quoted)
		put_quote(sink, message, style.columns);
	rb_sink_pad(sink, ' ', HINT_INDENT);
	rb_sink_wrapped(sink, message->hint, HINT_INDENT, HINT_INDENT, style.columns);
	rb_sink_char(sink, '\n');
}

static void put_others(struct rb_sink *sink, const struct rb_findings *findings,
		       enum rb_code code, size_t others)
{
	put_file(sink, findings);
	rb_sink_text(sink, ": and ");
	rb_sink_number(sink, (int64_t)others);
	rb_sink_text(sink, " more like this [");
	rb_sink_text(sink, rb_code_name(code));
	rb_sink_text(sink, "]\n");
}

static void put_all(struct rb_sink *sink, const struct rb_findings *findings,
		    const struct rb_finding *const *ordered, enum rb_severity least,
		    struct rb_text_style style)
{
	size_t written[RB_CODES] = { 0 };
	struct rb_cursor cursor = { 0 };
	struct rb_message message;

	for (size_t i = 0; i < findings->count; i++) {
		enum rb_code code = ordered[i]->code;
		size_t others;

		if (rb_code_severity(code) < least)
			continue;
		rb_message_make(&message, findings, ordered[i], &cursor);
		put_message(sink, findings, &message, style);
		others = rb_messages_others(findings, ordered[i], written);
		if (others)
			put_others(sink, findings, code, others);
	}
}

bool rb_messages_write_text(struct rb_sink *sink, const struct rb_findings *findings,
			    enum rb_severity least, struct rb_text_style style)
{
	const struct rb_finding **ordered = rb_messages_in_order(findings);
	bool all = !findings->out_of_memory && (ordered || !findings->count);

	if (ordered)
		put_all(sink, findings, (const struct rb_finding *const *)ordered, least,
			style);
	if (all)
		return true;
	put_file(sink, findings);
	rb_sink_text(sink, ": ");
	put_bold(sink, "error", style.bold);
	rb_sink_text(sink, ": there is not enough memory [out-of-memory]\n");
	return false;
}

void rb_messages_write_verdict(struct rb_sink *sink, const struct rb_findings *findings,
			       const char *outcome, struct rb_text_style style)
{
	static const struct {
		enum rb_severity severity;
		const char *one, *more;
	} words[] = {
		{ RB_ERROR, "error", "errors" },
		{ RB_FAILED, "failed check", "failed checks" },
		{ RB_WARNING, "warning", "warnings" },
		{ RB_NOTE, "note", "notes" },
	};
	const char *between = ": ";
	size_t found = 0;

	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		found += findings->of_severity[words[i].severity];
	if (!found && !outcome)
		return;
	put_file(sink, findings);
	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		size_t count = findings->of_severity[words[i].severity];

		if (!count)
			continue;
		rb_sink_text(sink, between);
		rb_sink_number(sink, (int64_t)count);
		rb_sink_char(sink, ' ');
		rb_sink_text(sink, count == 1 ? words[i].one : words[i].more);
		between = ", ";
	}
	if (outcome) {
		rb_sink_text(sink, ": ");
		put_bold(sink, outcome, style.bold);
	}
	rb_sink_char(sink, '\n');
}
