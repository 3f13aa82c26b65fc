/* SPDX-License-Identifier: MIT */
/* book_reader.h - what the files that read a book share; for src/notes/book*.c only. */
#ifndef RB_NOTES_BOOK_READER_H
#define RB_NOTES_BOOK_READER_H

#include "measure/reading.h"
#include "notes/keeper.h"
#include "notes/names.h"
#include "notes/sheet.h"
#include "notes/sixtyfourths.h"

enum rb_book_key {
	RB_KEY_PROJECT,
	RB_KEY_DATE,
	RB_KEY_CREW,
	RB_KEY_STUDENT,
	RB_KEY_INSTRUMENT,
	RB_KEY_ROD,
	RB_KEY_WEATHER,
	RB_KEY_DATUM,
	RB_KEY_UNIT,
	RB_KEY_TOLERANCE,
	RB_KEY_ADJUST,
	RB_KEY_COLLIMATION,
	RB_KEY_SIGHT_LIMIT,
	RB_KEY_BALANCE_LIMIT,
	RB_KEY_DECIMALS,
	RB_KEY_ROD_ON
};

/* The keys and headings of a book. */
extern const struct rb_form rb_book_form;

/* What the readings of a book have in common; it takes the whole book to tell. */
struct rb_habits {
	uint32_t readings;  /* bare decimals of feet, so far */
	bool over_eleven;   /* digits behind a point, as a number, exceed 11 */
	bool ten_or_eleven; /* they are 10 or 11 at least once */
	bool tenths;        /* some have one digit */
	bool hundredths;    /* some have more than one digit */
	uint32_t inverted;  /* lines */
	uint32_t last_inverted;
	uint32_t inverted_line[RB_FINDINGS_OF_A_KIND];
	struct rb_sixtyfourths sixtyfourths[RB_ELEVATION + 1]; /* by column */
};

/* The chainage last written with a plus in a column of chainages. */
struct rb_plus {
	char text[24];
	size_t before, behind; /* figures before the plus, and right behind it */
	bool counts;           /* there is one, and those before it are not all 0 */
};

#define RB_VALUE_COLUMNS 8

/* A column of lengths that the header has, and the cell in which it stands. */
struct rb_value_column {
	uint32_t cell;
	enum rb_column column;
	enum rb_reading_kind kind;
};

struct rb_book_reader {
	struct rb_arena *arena;
	struct rb_findings *findings;
	struct rb_book *book;
	const struct rb_sheet *sheet;
	struct rb_reading_rules rules[RB_READING_KINDS]; /* by enum rb_reading_kind */
	struct rb_value_column value[RB_VALUE_COLUMNS];
	uint32_t values;
	enum rb_unit row_unit;
	bool unit_known; /* from the key, or from the first row's unit */
	struct rb_names names;
	uint32_t room; /* rows, points: no file of that many lines has more */
	size_t text_used, text_room;
	char hundreds[24]; /* of the last name or chainage like 1+50 */
	size_t hundreds_length;
	struct rb_plus plus;
	uint32_t first_sight; /* the row of the first backsight, or RB_NO_ROW */
	struct rb_habits habits;
};

/* Turn the keys into values. */
void rb_book_take_keys(struct rb_book_reader *reader);

/* Which of the columns of lengths the header has. */
void rb_book_choose_columns(struct rb_book_reader *reader);

/* Take a row below the header. */
bool rb_book_take_row(void *reader, const struct rb_record *record);

/* The cell of a row that holds a column. */
static inline struct rb_cell rb_book_cell(const struct rb_book_reader *reader,
					  const struct rb_record *record,
					  enum rb_column column)
{
	return rb_sheet_cell(reader->sheet->cell_of, (int)column, record);
}

/* Add a finding about a cell. */
void rb_book_say(struct rb_book_reader *reader, const struct rb_record *record,
		 enum rb_column column, enum rb_code code, struct rb_argument first,
		 struct rb_argument second);

/* The same, with more than two arguments. */
void rb_book_say4(struct rb_book_reader *reader, const struct rb_record *record,
		  enum rb_column column, enum rb_code code,
		  const struct rb_argument argument[RB_ARGUMENTS]);

/* Say that the chainage of a row was refused. */
void rb_book_refused_chainage(struct rb_book_reader *reader,
			      const struct rb_record *record,
			      const struct rb_reading *reading);

/* The text of a cell, as an argument that outlives its record. */
struct rb_argument rb_book_kept(struct rb_book_reader *reader, struct rb_cell cell);

/* Put a value into its column, which has an array from its first value on. */
bool rb_book_set_value(struct rb_book_reader *reader, enum rb_column column,
		       rb_length value);

/* Put a text into the book's; its offset. */
uint32_t rb_book_store(struct rb_book_reader *reader, const char *text, size_t length);

/* Twice the room where a list of `count` has filled it: at each power of two. */
bool rb_book_grow(struct rb_book_reader *reader, void **list, uint32_t count,
		  size_t size);

/* Nothing that begins otherwise is a station: 1+50, +10, 10. */
static inline bool rb_book_may_be_station(char first)
{
	return (first >= '0' && first <= '9') || first == '+';
}

/* The whole of a station that was written short: `+10`, or `10` as a sheet leaves it,
 * takes the hundreds last written.  Anything else is itself. */
struct rb_cell rb_book_whole_station(struct rb_book_reader *reader, struct rb_cell cell,
				     char whole[static 64]);

/* Take the chainage of a row from its column, or from a name that is one.  What a sheet
 * may have made of `+10` is told. */
bool rb_book_take_chainage(struct rb_book_reader *reader, const struct rb_record *record);

/* Give the row its point: the name that was sought, `typed` in full. */
bool rb_book_take_name(struct rb_book_reader *reader, const struct rb_record *record,
		       struct rb_cell typed, struct rb_cell name);

/* Is the row no point, but a key with its value that stands below the header, where it is
 * not read?  Told where it would change numbers, and does not stand above the header the
 * same. */
bool rb_book_is_key(struct rb_book_reader *reader, const struct rb_record *record);

/* A name that may be one of sums or of a point is told where it matters: where the row
 * holds a sight, or sums stand like a turning point. */
void rb_book_doubt_name(struct rb_book_reader *reader, const struct rb_record *record,
			enum rb_keeper keeper);

/* Note a reading among the habits, and say at the end what they look like. */
void rb_habits_note(struct rb_habits *habits, const struct rb_reading *reading,
		    uint32_t line);
void rb_habits_say(const struct rb_book_reader *reader);

#endif
