/* SPDX-License-Identifier: MIT */
/*
 * Records from text, through libcsv in strict mode.
 *
 * libcsv reports no positions, so it is fed a physical line at a time: whatever ends,
 * ends on the line just fed, and where a record began is known.  It stops at two things.
 * At a quote inside a cell that did not begin with one (5'-3 1/2"): that byte is fed
 * leniently and stays.  At text behind a closing quote: that is a fault of the file, and
 * lenient feeding would swallow the rest of it, so the line is given up.
 */
#include <csv.h>
#include <string.h>

#include "notes/rows.h"

/* A cell this long has lost its closing quote; sheets hold 32 767 characters in one. */
#define CELL_MAX 131072

struct reader {
	struct rb_arena *arena;
	struct rb_findings *findings;
	struct rb_source *source;
	struct csv_parser parser;
	size_t offset;        /* of the next line to be fed */
	uint32_t line;        /* its number */
	size_t record_offset; /* where the record began, and the line after its first */
	size_t after_first;
	uint32_t record_line;
	bool in_record; /* the record goes on from the line before */
	bool ended;     /* the record ended on the line just fed */
	bool no_memory;
	bool carriages; /* the source has carriage returns */
	char *text;     /* the cells' texts, each with its NUL */
	size_t used, room;
	struct rb_cell *cell;
	uint32_t cells, cell_room;
};

/* Twice the room, contents kept; what is left behind goes with the arena. */
static void *grown(struct rb_arena *arena, const void *old, size_t count, size_t room,
		   size_t size)
{
	void *bigger = rb_arena_take(arena, room, size);

	if (bigger && count)
		memcpy(bigger, old, count * size);
	return bigger;
}

/* Bytes of the blank that s begins with: ASCII, no-break and thin spaces, zero width. */
static size_t blank_at(const char *s, size_t length)
{
	const unsigned char *u = (const unsigned char *)s;

	if (u[0] == ' ' || (u[0] >= '\t' && u[0] <= '\r'))
		return 1;
	if (length >= 2 && u[0] == 0xC2 && u[1] == 0xA0)
		return 2;
	if (length >= 3 && u[0] == 0xE2 && u[1] == 0x80 &&
	    ((u[2] >= 0x80 && u[2] <= 0x8B) || u[2] == 0xAF))
		return 3;
	if (length >= 3 && !memcmp(s, "\xEF\xBB\xBF", 3))
		return 3;
	return 0;
}

static size_t blank_before(const char *s, size_t length)
{
	for (size_t size = 1; size <= 3 && size <= length; size++)
		if (blank_at(s + length - size, size) == size)
			return size;
	return 0;
}

/* Is it ASCII, and no blank?  Most cells begin and end so. */
static bool is_tight(char c)
{
	return c > ' ' && c <= '~';
}

static struct rb_cell without_blanks(char *text, size_t length)
{
	size_t blank;

	while (length && (blank = blank_at(text, length)))
		text += blank, length -= blank;
	while (length && (blank = blank_before(text, length)))
		length -= blank;
	text[length] = '\0';
	return (struct rb_cell){ text, length };
}

/* The cell without blanks around it; its text ends in NUL. */
static inline struct rb_cell trimmed(char *text, size_t length)
{
	if (!length || (is_tight(text[0]) && is_tight(text[length - 1])))
		return (struct rb_cell){ text, length };
	return without_blanks(text, length);
}

/* A bigger block for the texts to come: those of the record so far stay where they are.
 */
static bool make_room_for_text(struct reader *r, size_t length)
{
	do
		r->room = r->room ? 2 * r->room : 512;
	while (r->room <= length);
	r->text = rb_arena_take(r->arena, r->room, 1);
	r->used = 0;
	return r->text != NULL;
}

static bool make_room_for_cell(struct reader *r)
{
	uint32_t room = r->cell_room ? 2 * r->cell_room : 32;

	r->cell = grown(r->arena, r->cell, r->cells, room, sizeof *r->cell);
	r->cell_room = room;
	return r->cell != NULL;
}

static bool has_room(const struct reader *r, size_t length)
{
	return r->cells < r->cell_room && length < r->room - r->used;
}

/* Make room for one more cell of such a length.  False: there is none, nor will there be.
 */
static bool make_room(struct reader *r, size_t length)
{
	if (r->no_memory || (r->cells == r->cell_room && !make_room_for_cell(r)) ||
	    (r->room - r->used <= length && !make_room_for_text(r, length))) {
		r->no_memory = true;
		r->cells = r->cell_room = 0;
	}
	return !r->no_memory;
}

/* A function of its own also when compiled: an empty cell has nothing to do with it. */
__attribute__((noinline)) static void add_cell(struct reader *r, const void *bytes,
					       size_t length)
{
	char *text;

	if (!has_room(r, length) && !make_room(r, length))
		return;
	text = r->text + r->used;
	r->used += length + 1;
	if (length)
		memcpy(text, bytes, length);
	text[length] = '\0';
	r->cell[r->cells++] = trimmed(text, length);
}

static void on_cell(void *bytes, size_t length, void *self)
{
	struct reader *r = self;

	if (!length && r->cells < r->cell_room) /* as every other cell of a book */
		r->cell[r->cells++] = (struct rb_cell){ "", 0 };
	else
		add_cell(r, bytes, length);
}

static void on_row(int end, void *self)
{
	struct reader *r = self;

	(void)end;
	r->ended = true;
}

static void forget_record(struct reader *r)
{
	r->in_record = r->ended = false;
	r->cells = 0;
	r->used = 0;
}

static bool deliver(struct reader *r, rb_on_record *each, void *self)
{
	struct rb_record record = { r->record_line, r->cells, r->cell };
	bool on = each(self, &record);

	forget_record(r);
	return on;
}

/* It takes no memory before the first byte. */
static void start_parser(struct reader *r)
{
	const struct rb_allocator *allocator = rb_arena_allocator(r->arena);

	csv_init(&r->parser, CSV_STRICT | CSV_STRICT_FINI);
	csv_set_realloc_func(&r->parser, allocator->resize);
	csv_set_free_func(&r->parser, allocator->release);
	csv_set_delim(&r->parser, (unsigned char)r->source->separator);
	csv_set_blk_size(&r->parser, 4096);
}

static void fault(struct reader *r, enum rb_code code)
{
	rb_findings_add(r->findings, code,
			rb_at(r->record_line, (int32_t)r->cells, NULL, NULL),
			rb_nothing(), rb_nothing());
}

/* Give up the record and begin anew with the line at `offset`. */
static void restart(struct reader *r, size_t offset, uint32_t line)
{
	csv_free(&r->parser);
	forget_record(r);
	r->offset = offset;
	r->line = line;
	start_parser(r);
}

/* Bytes of the line that begins at the offset, its end included. */
static size_t line_size(const struct reader *r)
{
	const char *line = r->source->text + r->offset;
	size_t left = r->source->length - r->offset;
	const char *newline = memchr(line, '\n', left);
	size_t size = newline ? (size_t)(newline - line) + 1 : left;
	const char *carriage = r->carriages ? memchr(line, '\r', size) : NULL;

	if (carriage && carriage + 1 != newline)
		size = (size_t)(carriage - line) + 1;
	return size;
}

/* Feed a line, going on behind bare inch marks.  False: memory ran out. */
static bool feed(struct reader *r, const char *line, size_t size)
{
	size_t fed = 0;

	while (fed < size) {
		fed += csv_parse(&r->parser, line + fed, size - fed, on_cell, on_row, r);
		if (r->no_memory)
			return false;
		if (fed == size)
			return true;
		if (csv_error(&r->parser) != CSV_EPARSE)
			return false;
		if (r->parser.quoted) {
			fault(r, RB_CODE_AFTER_QUOTE);
			restart(r, r->offset, r->line);
			return true;
		}
		csv_set_opts(&r->parser, 0);
		fed += csv_parse(&r->parser, line + fed, 1, on_cell, on_row, r);
		csv_set_opts(&r->parser, CSV_STRICT | CSV_STRICT_FINI);
	}
	return true;
}

static bool note_long_record(struct reader *r)
{
	struct rb_source *s = r->source;
	uint32_t extra = r->line - r->record_line - 1;
	uint32_t before = s->long_records ? s->long_record[s->long_records - 1].extra : 0;

	if (!extra)
		return true;
	if (s->long_records == s->long_room) {
		uint32_t room = s->long_room ? 2 * s->long_room : 16;

		s->long_record = grown(r->arena, s->long_record, s->long_records, room,
				       sizeof *s->long_record);
		s->long_room = room;
		if (!s->long_record)
			return false;
	}
	s->long_record[s->long_records++] =
		(struct rb_long_record){ r->record_line, before + extra };
	return true;
}

/* The quote that opened this cell has no end: say so, and go on with the next line. */
static void give_up_open_quote(struct reader *r)
{
	fault(r, RB_CODE_OPEN_QUOTE);
	restart(r, r->after_first, r->record_line + 1);
}

static bool next_line(struct reader *r)
{
	const char *line = r->source->text + r->offset;
	size_t size = line_size(r);

	if (!r->in_record) {
		r->record_line = r->line;
		r->record_offset = r->offset;
		r->after_first = r->offset + size;
	}
	r->offset += size;
	r->line++;
	r->in_record = true;
	if (!feed(r, line, size))
		return false;
	if (!r->ended && !r->parser.quoted && strchr("\r\n", line[size - 1]))
		forget_record(r); /* a blank line */
	else if (!r->ended && r->parser.quoted && r->offset - r->record_offset > CELL_MAX)
		give_up_open_quote(r);
	return true;
}

/* The last line need not end, but its quotes do.  False: memory ran out. */
static bool finish(struct reader *r)
{
	if (csv_fini(&r->parser, on_cell, on_row, r) != 0)
		give_up_open_quote(r);
	return !r->no_memory;
}

static bool read_all(struct reader *r, rb_on_record *each, void *self, bool *stopped)
{
	do {
		while (r->offset < r->source->length) {
			if (!next_line(r))
				return false;
			if (!r->ended)
				continue;
			if (!note_long_record(r))
				return false;
			if (!deliver(r, each, self))
				return *stopped = true;
		}
		if (!finish(r))
			return false;
		if (r->ended && !deliver(r, each, self))
			return *stopped = true;
	} while (r->offset < r->source->length);
	return true;
}

bool rb_rows_read(struct rb_arena *arena, struct rb_findings *findings,
		  struct rb_source *source, rb_on_record *each, void *self)
{
	struct reader r = { .arena = arena, .findings = findings, .source = source };
	bool stopped = false, read;

	r.line = source->first_line;
	r.carriages = source->length && memchr(source->text, '\r', source->length);
	source->long_records = 0;
	start_parser(&r);
	read = read_all(&r, each, self, &stopped);
	csv_free(&r.parser);
	if (!read)
		return rb_findings_no_memory(findings);
	return !stopped;
}

bool rb_record_keep(struct rb_arena *arena, struct rb_record *out,
		    const struct rb_record *record)
{
	struct rb_cell *cell =
		rb_arena_take(arena, (size_t)record->cells + 1, sizeof *cell);

	if (!cell)
		return false;
	for (uint32_t i = 0; i < record->cells; i++) {
		cell[i].length = record->cell[i].length;
		cell[i].text = rb_arena_text(arena, record->cell[i].text, cell[i].length);
		if (!cell[i].text)
			return false;
	}
	*out = (struct rb_record){ record->line, record->cells, cell };
	return true;
}
