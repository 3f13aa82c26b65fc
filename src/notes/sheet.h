/* SPDX-License-Identifier: MIT */
/*
 * sheet.h - the form that all our files share: keys, a header row, rows.
 *
 * A form is two tables: the keys that may stand above the header and the headings that
 * columns may have.  Reading a sheet by its form gives the keys' values as text, and
 * which cell of a row holds which column; then every row below the header that holds
 * anything and is no comment.
 */
#ifndef RB_NOTES_SHEET_H
#define RB_NOTES_SHEET_H

#include <string.h>

#include "notes/rows.h"

struct rb_key {
	const char *name; /* lower case */
	int key;          /* 0 .. RB_SHEET_KEYS - 1 */
};

struct rb_heading {
	const char *name; /* lower case */
	int column;       /* 0 .. RB_SHEET_COLUMNS - 1 */
};

#define RB_SHEET_KEYS    32
#define RB_SHEET_COLUMNS 32

/* In what the numbers of a column are. */
enum rb_measured {
	RB_UNMEASURED, /* words, slopes, or whatever has no unit */
	RB_READINGS,   /* the unit of the file */
	RB_ELEVATIONS, /* the same; in a feet-inches file also feet */
	RB_RUNS        /* along the ground: feet or metres */
};

struct rb_form {
	const struct rb_key *key;
	size_t keys;
	uint32_t lengths, slopes; /* a bit for each key whose value is one */
	/* Headings compared as written first ("+"), then those compared with blanks and
	 * . ( ) / _ - + left out. */
	const struct rb_heading *exact;
	size_t exacts;
	const struct rb_heading *heading;
	size_t headings;
	/* What a heading that is none of them may have meant, for the message: every word
	 * of the name stands in it, in any order; * ends the beginning of a word, and =
	 * says that the word stands alone. */
	const struct rb_heading *near;
	size_t nears;
	/* By column number; NULL: no heading has a unit in brackets behind it. */
	const enum rb_measured *measured;
	uint32_t sights; /* a bit for each column whose loss would be one of readings */
	const char *const *column_name; /* what a column is called, by number */
	int passed_over; /* a column number that may stand several times; -1: none */
	/* Give a heading that can mean two things its meaning; NULL: none can. */
	void (*settle)(int32_t cell_of[RB_SHEET_COLUMNS]);
	/* Is a row with these columns the header? */
	bool (*is_header)(const int32_t cell_of[RB_SHEET_COLUMNS]);
	const char
		*header_wanted; /* for the message: "a point column and a sight column" */
	const char *header_such_as; /* one that would do: "point, backsight, foresight" */
	/* Say what a file without a header is, from the row most like one (no cells: none
	 * is); false: nothing is said.  NULL: nothing ever is. */
	bool (*say_headless)(struct rb_findings *findings,
			     const struct rb_record *nearest);
};

/* A key's value: text in the arena, and where it stands; length 0 where not given. */
struct rb_key_value {
	const char *text;
	size_t length;
	struct rb_place place;
};

struct rb_sheet {
	const struct rb_form *form;
	struct rb_source *source;
	struct rb_key_value key[RB_SHEET_KEYS];
	int32_t cell_of[RB_SHEET_COLUMNS]; /* -1: no such column */
	uint32_t header_line;              /* 0: no header was found */
	struct rb_record header;           /* its cells, in the arena */
	struct rb_record units;            /* a row of units below it, or no cells */
};

struct rb_sheet_reader {
	/* Called once, when the header is known and before the first row. */
	bool (*on_header)(void *self, const struct rb_sheet *sheet);
	/* Called for each row below it that holds anything and is no comment. */
	bool (*on_row)(void *self, const struct rb_record *record);
	void *self;
};

/*
 * Read the bytes of a file by a form.  Findings: those of rows.h, no header, a column or
 * a key twice, unknown columns, nearly keys.  The sheet, in the arena; NULL if there is
 * nothing to go on with (no header, no memory, or the reader stopped).
 */
struct rb_sheet *rb_sheet_read(struct rb_arena *arena, struct rb_findings *findings,
			       const struct rb_form *form, const char *bytes,
			       size_t length, const struct rb_sheet_reader *reader);

/* The cell of a row that holds a column; an empty text where there is none. */
static inline struct rb_cell rb_sheet_cell(const int32_t cell_of[], int column,
					   const struct rb_record *record)
{
	int32_t at = cell_of[column];

	if (at < 0 || (uint32_t)at >= record->cells)
		return (struct rb_cell){ "", 0 };
	return record->cell[at];
}

/* A text without the apostrophe that our own files put before one that a spreadsheet
 * would run as a formula (csv.h). */
static inline struct rb_cell rb_cell_unguarded(struct rb_cell cell)
{
	if (cell.length > 1 && cell.text[0] == '\'' && strchr("=+-@'\t", cell.text[1]))
		return (struct rb_cell){ cell.text + 1, cell.length - 1 };
	return cell;
}

/* Nothing, or nothing but dashes of any kind: so people strike out what is not there. */
bool rb_cell_is_dashes(struct rb_cell cell);

static inline bool rb_cell_is_empty(struct rb_cell cell)
{
	return !cell.length ||
	       ((cell.text[0] == '-' || (unsigned char)cell.text[0] >= 0x80) &&
		rb_cell_is_dashes(cell));
}

/*
 * Read a length from a cell or a key, and add the finding if it is none: the one place
 * where refusals of reading.h become findings.
 *
 * Returns the reading; its value is rb_length_none() where the cell is empty or refused.
 */
struct rb_reading;
struct rb_reading_rules;
struct rb_reading rb_sheet_length(struct rb_findings *findings, struct rb_cell cell,
				  struct rb_place place,
				  const struct rb_reading_rules *rules);

/* Add the finding for a reading that was refused; an empty one is told as no reading. */
void rb_sheet_refused(struct rb_findings *findings, struct rb_cell cell,
		      struct rb_place place, const struct rb_reading *reading,
		      enum rb_unit unit);

/* Add a finding of that code where a reading was refused because a spreadsheet made a
 * date or a time of the cell; false: for another reason, or not at all. */
bool rb_sheet_say_changed(struct rb_findings *findings, enum rb_code code,
			  struct rb_cell cell, struct rb_place place,
			  const struct rb_reading *reading);

/* Add the finding for a chainage that was refused; `unit` is that of runs. */
void rb_sheet_refused_chainage(struct rb_findings *findings, struct rb_cell cell,
			       struct rb_place place, const struct rb_reading *reading,
			       enum rb_unit unit);

/* The key that a cell names, with or without a colon and a value behind, or NULL. */
const struct rb_key *rb_sheet_key(const struct rb_form *form, struct rb_cell cell);

/* The distance in letters between two words (insertions, deletions, exchanges of
 * neighbours, substitutions), at most `most` + 1: more is not worked out. */
int rb_letters_apart(const char *a, size_t a_length, const char *b, size_t b_length,
		     int most);

#endif
