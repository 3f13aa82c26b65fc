/* SPDX-License-Identifier: MIT */
/* From a line and a cell back to the user's own bytes: only findings come here. */
#include <string.h>

#include "notes/rows.h"
#include "notes/seek.h"

/* Bytes of the physical line at s, without and with its end. */
static size_t line_at(const char *s, size_t left, size_t *whole)
{
	const char *feed = memchr(s, '\n', left);
	size_t n = feed ? (size_t)(feed - s) : left;
	const char *carriage = memchr(s, '\r', n);

	if (carriage)
		n = (size_t)(carriage - s);
	*whole = n;
	if (n < left)
		*whole += n + 1 < left && s[n] == '\r' && s[n + 1] == '\n' ? 2 : 1;
	return n;
}

static bool move_to(const struct rb_source *source, struct rb_cursor *cursor,
		    uint32_t line)
{
	if (!cursor->line || cursor->line > line)
		*cursor = (struct rb_cursor){ 0, source->first_line };
	while (cursor->line < line && cursor->offset < source->length) {
		size_t whole;

		line_at(source->text + cursor->offset, source->length - cursor->offset,
			&whole);
		cursor->offset += whole;
		cursor->line++;
	}
	return cursor->line == line && cursor->offset < source->length;
}

/* Where the cell that begins at s ends: at a separator or a line end outside quotes. */
static size_t cell_size(const struct rb_source *source, const char *s, size_t left)
{
	size_t i = 0;
	bool quoted;

	while (i < left && s[i] == ' ')
		i++;
	quoted = i < left && s[i] == '"';
	for (i += quoted; i < left; i++) {
		if (quoted && s[i] == '"')
			quoted = i + 1 < left && s[i + 1] == '"' ? (i++, true) : false;
		else if (!quoted &&
			 (s[i] == source->separator || s[i] == '\n' || s[i] == '\r'))
			break;
	}
	return i;
}

/* Take blanks and quotes off both ends of a cell, and anything behind a line end. */
static void tighten(const char *s, size_t *from, size_t *length)
{
	const char *end;

	while (*length && strchr(" \t\"", s[*from]))
		++*from, --*length;
	end = s + *from;
	for (size_t i = 0; i < *length; i++)
		if (end[i] == '\n' || end[i] == '\r')
			*length = i;
	while (*length && strchr(" \t", end[*length - 1]))
		--*length;
	if (*length > 1 && end[*length - 1] == '"' && s[*from - (*from > 0)] == '"')
		--*length;
}

uint32_t rb_characters(const char *text, size_t bytes)
{
	uint32_t n = 0;

	for (size_t i = 0; i < bytes; i++)
		n += ((unsigned char)text[i] & 0xC0) != 0x80;
	return n;
}

/* Turn an offset from the record's beginning into the physical line that holds it. */
static void settle_line(const char *s, size_t left, size_t cell, struct rb_span *span)
{
	size_t begin = 0, whole;

	span->lines_down = 0;
	span->line_length = line_at(s, left, &whole);
	while (cell >= begin + whole && begin + whole < left) {
		begin += whole;
		span->lines_down++;
		span->line_length = line_at(s + begin, left - begin, &whole);
	}
	span->line = s + begin;
	span->from = cell - begin;
}

bool rb_source_span(const struct rb_source *source, struct rb_cursor *cursor,
		    uint32_t line, int32_t cell, struct rb_span *span)
{
	size_t at = 0, left, size;
	const char *s;

	if (!move_to(source, cursor, line))
		return false;
	s = source->text + cursor->offset;
	left = source->length - cursor->offset;
	size = cell_size(source, s, left);
	for (int32_t i = 0;
	     i < cell && at + size < left && s[at + size] == source->separator; i++) {
		at += size + 1;
		size = cell_size(source, s + at, left - at);
	}
	if (cell != RB_WHOLE_ROW)
		tighten(s, &at, &size);
	settle_line(s, left, at, span);
	span->length = cell == RB_WHOLE_ROW ? span->line_length : size;
	span->column = 1 + rb_characters(span->line, span->from);
	return true;
}

uint32_t rb_source_sheet_row(const struct rb_source *source, uint32_t line)
{
	uint32_t after = rb_seek(source->long_record, source->long_records,
				 sizeof *source->long_record,
				 offsetof(struct rb_long_record, line), line);

	return line - (after ? source->long_record[after - 1].extra : 0);
}
