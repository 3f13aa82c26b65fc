/* SPDX-License-Identifier: MIT */
/*
 * rows.h - the bytes of a file, cut into records of cells.
 *
 * The only user of the CSV library.  A source is valid UTF-8 without a byte order mark,
 * or it is refused; a record's cells are trimmed, NUL-terminated, and good until the
 * next.
 */
#ifndef RB_NOTES_ROWS_H
#define RB_NOTES_ROWS_H

#include "rodbook/finding.h"

/* The text of a file, made readable. */
struct rb_source {
	const char *text; /* UTF-8, without a byte order mark */
	size_t length;
	char separator;      /* ',', ';' or TAB; 0 until it is known */
	uint32_t first_line; /* the line on which text begins: 2 behind a line "sep=;" */
	/* Records of more than one line, so that a line can be turned into a sheet's row.
	 */
	struct rb_long_record {
		uint32_t line, extra; /* where it begins; lines beyond the first, so far
					 in all */
	} * long_record;
	uint32_t long_records, long_room;
};

struct rb_cell {
	const char *text;
	size_t length;
};

struct rb_record {
	uint32_t line; /* where it begins, from 1 */
	uint32_t cells;
	const struct rb_cell *cell;
};

/* What is done with a record; false stops the reading. */
typedef bool rb_on_record(void *self, const struct rb_record *record);

/*
 * Make the bytes of a file readable: refuse a spreadsheet's own file, UTF-16 and NUL
 * bytes; take off a byte order mark and a line "sep=;"; decode Windows-1252 where it is
 * not UTF-8.  The bytes are borrowed.  NULL after an error.  Sets findings->source.
 */
struct rb_source *rb_source_open(struct rb_arena *arena, struct rb_findings *findings,
				 const char *bytes, size_t length);

/* Are the bytes UTF-8 (RFC 3629)? */
bool rb_source_is_utf8(const char *bytes, size_t length);

/*
 * Settle on a separator: the first of comma, semicolon and TAB with which `is_header`
 * says true of one of the first rows; else the one under which the quotes are right and
 * most cells are parted.  A line "sep=;" goes first. False: memory ran out.
 */
bool rb_source_separate(struct rb_arena *arena, struct rb_source *source,
			bool (*is_header)(void *self, const struct rb_record *record),
			void *self);

/*
 * Hand every record to `each`, blank lines left out.  A bare inch mark inside a cell
 * stays; text behind a closing quote and a quote that never closes are findings, and the
 * reading goes on.  False if it was stopped, or memory ran out.
 */
bool rb_rows_read(struct rb_arena *arena, struct rb_findings *findings,
		  struct rb_source *source, rb_on_record *each, void *self);

/* Copy a record into an arena: what is handed over is good until the next.  False: no
 * memory. */
bool rb_record_keep(struct rb_arena *arena, struct rb_record *out,
		    const struct rb_record *record);

/* The row of the sheet that holds the line: lines less those inside long cells. */
uint32_t rb_source_sheet_row(const struct rb_source *source, uint32_t line);

/* Where a cell stands in the source. */
struct rb_span {
	const char *line; /* the physical line, without its end */
	size_t line_length;
	size_t from, length; /* the cell's own bytes within the line, blanks and quotes
			      * around it included in neither */
	uint32_t column;     /* of its first byte, from 1, in characters */
	uint32_t lines_down; /* lines between the record's first and this one */
};

/* Find the lines of many findings in one pass: start at a zeroed cursor and ask in
 * ascending order of line. */
struct rb_cursor {
	size_t offset;
	uint32_t line;
};

/* How many characters so many bytes of UTF-8 are. */
uint32_t rb_characters(const char *text, size_t bytes);

/* The span of a cell (RB_WHOLE_ROW: of the whole line) of the record that begins on
 * `line`.  False if the source has no such line. */
bool rb_source_span(const struct rb_source *source, struct rb_cursor *cursor,
		    uint32_t line, int32_t cell, struct rb_span *span);

#endif
