/* SPDX-License-Identifier: MIT */
/*
 * book.h - a day's level notes, as they were typed.
 *
 * A book is the keys above the header and one row for each place where the rod stood, in
 * the order observed.  Its values are exactly what was written: nothing is computed here,
 * nothing repaired.  The columns stand side by side as arrays over the rows, and only
 * those that the header has; a cell that was empty holds rb_length_none().
 */
#ifndef RODBOOK_BOOK_H
#define RODBOOK_BOOK_H

#include "rodbook/arena.h"
#include "rodbook/finding.h"
#include "rodbook/length.h"
#include "rodbook/tolerance.h"

enum rb_column {
	RB_POINT,
	RB_KNOWN_ELEVATION,
	RB_BACKSIGHT,
	RB_INTERMEDIATE,
	RB_FORESIGHT,
	RB_BACKSIGHT_DISTANCE,
	RB_FORESIGHT_DISTANCE,
	RB_CHAINAGE,
	RB_MEASURE_DOWN,
	RB_HEIGHT_OF_INSTRUMENT,
	RB_ELEVATION,
	RB_ROD_ON,
	RB_REMARKS,
	RB_UNIT_OF_ROW,
	RB_PASSED_OVER, /* correction, adjusted: what our own CSV carries */
	RB_STATION,     /* a heading that is the point or the chainage: settled at once */
	RB_BOOK_COLUMNS
};

/* Where the rod stood. */
enum rb_rod_on {
	RB_ON_UNSAID,
	RB_ON_GROUND,
	RB_ON_HUB,
	RB_ON_INVERT,
	RB_ON_TOP_OF_PIPE,
	RB_ON_INSIDE_TOP,
	RB_ON_TRENCH_BOTTOM,
	RB_ON_BEDDING,
	RB_ON_RIM,
	RB_ON_FLOOR,
	RB_ON_OTHER,
	RB_ON_PLACES
};

enum rb_adjust { RB_BY_SETUPS, RB_BY_DISTANCE, RB_NOT_ADJUSTED };

/* What stands above the header; all optional, texts "" where not given. */
struct rb_book_keys {
	const char *project, *date, *crew, *student, *instrument, *weather, *datum;
	rb_length rod; /* its length; 25 ft where not given, any in our own CSV */
	bool rod_given;
	struct rb_tolerance tolerance;
	enum rb_adjust adjust;
	struct rb_place tolerance_place, adjust_place; /* line 0: not in the book */
	rb_length collimation; /* rise of the line of sight over collimation_run */
	rb_length collimation_run;
	rb_length sight_limit, balance_limit; /* not given: no limit */
	struct rb_place sight_limit_place, balance_limit_place;
	int decimals; /* -1: not given */
	enum rb_rod_on rod_on;
};

/* How finely the values of a column were written. */
struct rb_places {
	int decimals; /* the most decimals, in the unit of the book; -1: none written */
	int denominator; /* the finest fraction of an inch; 0: none written in inches */
};

/* Bits of struct rb_row's `written`: this value was written in feet and inches. */
#define RB_WRITTEN_IN_INCHES(column)                                                     \
	(1u << (column)) /* backsight, intermediate, foresight,                          \
			  * known elevation only */

/* A row. */
struct rb_row {
	uint32_t point; /* index of the point; RB_NO_POINT where there is no name */
};

/* A row whose name is spelled otherwise than where the point first stood. */
struct rb_spelling {
	uint32_t row, text;
};

/* A known elevation, and the row and the column in which it was first written. */
struct rb_benchmark {
	rb_length elevation;
	uint32_t point, row;
	enum rb_column column;
};

/* Bit of `written`: a row named sum, total, misclosure or the like; its numbers are the
 * note keeper's, no sights, and only `check` reads them. */
#define RB_WRITTEN_BY_KEEPER 0x80u

#define RB_NO_POINT UINT32_MAX
#define RB_NO_ROW   UINT32_MAX

/* The file's line where row `row` begins, and so on for the rows after it until the next
 * jump: rows and lines go hand in hand but for blank rows, comments and long cells. */
struct rb_line_jump {
	uint32_t row, line;
};

struct rb_book {
	const char *file; /* as the user named it */
	struct rb_book_keys key;
	enum rb_unit unit;
	bool decimal_comma;
	uint32_t rows;
	uint32_t sights, backsights; /* rows that hold a sight; a backsight */
	struct rb_row *row;
	uint8_t *rod_on;  /* enum rb_rod_on, by row: what its cell says, without the key
			   * (rb_shot_rod_on() in reduce.h) */
	uint8_t *written; /* RB_WRITTEN_IN_INCHES bits, by row */
	rb_length *value[RB_ELEVATION +
			 1]; /* by column, then by row; NULL: nothing stands in
			      * the column.  Known elevations: `benchmark` */
	int chainage_plus;   /* how chainages are written: digits behind the plus of the
			      * first that has one; 0: bare */
	uint32_t *remarks;   /* offset into text, by row; NULL: no column */
	struct rb_places places[RB_ELEVATION + 1];     /* without the rows of sums */
	struct rb_places sum_places[RB_ELEVATION + 1]; /* of the note keeper's sums */
	int32_t cell_of[RB_BOOK_COLUMNS]; /* which cell of a row; -1: no such column */
	char *text;                       /* names and remarks; offset 0 is "" */
	uint32_t points;                  /* distinct names */
	uint32_t *name;                 /* of a point as first typed: offset into text */
	bool *is_known;                 /* by point: has it a known elevation? */
	struct rb_benchmark *benchmark; /* sorted by point */
	uint32_t benchmarks;
	struct rb_spelling *spelling; /* sorted by row */
	uint32_t spellings;
	struct rb_line_jump *jump;
	uint32_t jumps;
	const char *const *heading; /* what a column is called, by enum rb_column */
};

/*
 * Read a book from the bytes of a file.
 *
 *   bytes    kept by the caller until the arena is freed; never changed
 *   findings every fault, in one go; only where rb_findings_allow_result() holds
 *            afterwards is there a book
 *
 * Returns the book, in the arena, or NULL.
 */
struct rb_book *rb_book_read(struct rb_arena *arena, struct rb_findings *findings,
			     const char *bytes, size_t length);

/* The value of a cell; none where the book has no such column or the cell is empty. */
static inline rb_length rb_book_value(const struct rb_book *book, enum rb_column column,
				      uint32_t row)
{
	return book->value[column] ? book->value[column][row] : rb_length_none();
}

/* How finely a column is written where its sums count as well. */
struct rb_places rb_book_places(const struct rb_book *book, enum rb_column column);

/* The rod reading of a sight or its length, or none: as rb_book_value(), but a row of the
 * note keeper's sums holds no sight. */
static inline rb_length rb_book_sight(const struct rb_book *book, enum rb_column column,
				      uint32_t row)
{
	return book->written[row] & RB_WRITTEN_BY_KEEPER
		       ? rb_length_none()
		       : rb_book_value(book, column, row);
}

/* The name of a row as typed (never NULL), and its remark. */
const char *rb_book_typed(const struct rb_book *book, uint32_t row);

static inline const char *rb_book_remark(const struct rb_book *book, uint32_t row)
{
	return book->remarks ? book->text + book->remarks[row] : "";
}

/* The name of a point as it was first typed. */
static inline const char *rb_book_point(const struct rb_book *book, uint32_t point)
{
	return point == RB_NO_POINT ? "" : book->text + book->name[point];
}

/* The known elevation of a point, or none; RB_NO_POINT has none. */
rb_length rb_book_known(const struct rb_book *book, uint32_t point);

/* The line of the file on which a row begins. */
uint32_t rb_book_line(const struct rb_book *book, uint32_t row);

/* The place of a cell, or of a row, for a finding. */
struct rb_place rb_book_place(const struct rb_book *book, uint32_t row,
			      enum rb_column column);
struct rb_place rb_book_row_place(const struct rb_book *book, uint32_t row);

/* The unit in which results of the book are shown unless asked otherwise, with as many
 * decimals as its most precise reading, at least 2 (ft), 3 (m), 2 (in), 0 (mm). */
struct rb_style rb_book_style(const struct rb_book *book);

/* The same for what the note keeper worked out: as finely as that is written, too, and in
 * feet and inches to the 64th, so that a value is shown as it stands in its cell. */
struct rb_style rb_book_hand_style(const struct rb_book *book);

/* "ground", "top of pipe", ...; "" for RB_ON_UNSAID. */
const char *rb_rod_on_name(enum rb_rod_on place);

/* Read such a name, forgiving case and blanks; RB_ON_UNSAID if it is none. */
enum rb_rod_on rb_rod_on_parse(const char *text, size_t length);

#endif
