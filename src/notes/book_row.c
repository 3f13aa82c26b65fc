/* SPDX-License-Identifier: MIT */
/* One row of a book: its name, its values, its remark. */
#include <string.h>

#include "notes/book_reader.h"

/* What a column holds: this is all that reading its cells takes. */
static const struct {
	enum rb_column column;
	enum rb_reading_kind kind;
} value_columns[RB_VALUE_COLUMNS] = {
	{ RB_BACKSIGHT, RB_OF_ROD },
	{ RB_INTERMEDIATE, RB_OF_ROD },
	{ RB_FORESIGHT, RB_OF_ROD },
	{ RB_BACKSIGHT_DISTANCE, RB_OF_RUN },
	{ RB_FORESIGHT_DISTANCE, RB_OF_RUN },
	{ RB_MEASURE_DOWN, RB_OF_DROP },
	{ RB_HEIGHT_OF_INSTRUMENT, RB_OF_ELEVATION },
	{ RB_ELEVATION, RB_OF_ELEVATION },
};

void rb_book_choose_columns(struct rb_book_reader *r)
{
	for (size_t i = 0; i < RB_VALUE_COLUMNS; i++) {
		int32_t cell = r->sheet->cell_of[value_columns[i].column];

		if (cell >= 0)
			r->value[r->values++] =
				(struct rb_value_column){ (uint32_t)cell,
							  value_columns[i].column,
							  value_columns[i].kind };
	}
}

static bool is_sight(enum rb_column column)
{
	return column >= RB_BACKSIGHT && column <= RB_FORESIGHT;
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static struct rb_place place_of(const struct rb_book_reader *r,
				const struct rb_record *record, enum rb_column column)
{
	const char *point = rb_book_cell(r, record, RB_POINT).text;

	return rb_at(record->line, r->sheet->cell_of[column], *point ? point : NULL,
		     rb_book_form.column_name[column]);
}

/* Findings outlive the record: so must the name in their place. */
void rb_book_say4(struct rb_book_reader *r, const struct rb_record *record,
		  enum rb_column column, enum rb_code code,
		  const struct rb_argument argument[RB_ARGUMENTS])
{
	struct rb_place place = place_of(r, record, column);

	if (place.point)
		place.point =
			rb_findings_text(r->findings, place.point, strlen(place.point));
	rb_findings_add4(r->findings, code, place, argument);
}

void rb_book_say(struct rb_book_reader *r, const struct rb_record *record,
		 enum rb_column column, enum rb_code code, struct rb_argument first,
		 struct rb_argument second)
{
	rb_book_say4(r, record, column, code,
		     (struct rb_argument[RB_ARGUMENTS]){ first, second });
}

void rb_book_refused_chainage(struct rb_book_reader *r, const struct rb_record *record,
			      const struct rb_reading *reading)
{
	rb_sheet_refused_chainage(r->findings, rb_book_cell(r, record, RB_CHAINAGE),
				  place_of(r, record, RB_CHAINAGE), reading,
				  rb_unit_of_runs(r->row_unit));
}

struct rb_argument rb_book_kept(struct rb_book_reader *r, struct rb_cell cell)
{
	return rb_text(rb_findings_text(r->findings, cell.text, cell.length));
}

uint32_t rb_book_store(struct rb_book_reader *r, const char *text, size_t length)
{
	uint32_t at = (uint32_t)r->text_used;

	if (!length || length >= r->text_room - r->text_used)
		return 0;
	memcpy(r->book->text + at, text, length);
	r->book->text[at + length] = '\0';
	r->text_used += length + 1;
	return at;
}

bool rb_book_grow(struct rb_book_reader *r, void **list, uint32_t count, size_t size)
{
	void *bigger;

	if (*list && (count & (count - 1)))
		return true;
	bigger = rb_arena_take(r->arena, count ? 2 * (size_t)count : 1, size);
	if (!bigger)
		return rb_findings_no_memory(r->findings);
	if (*list)
		memcpy(bigger, *list, count * size);
	*list = bigger;
	return true;
}

/* Of how many parts of an inch a reading is written: decimals are parts, too. */
static int parts_of_inch(const struct rb_reading *reading)
{
	static const int parts[] = { 1, 10, 100, 1000 };
	const int most = (int)(sizeof parts / sizeof *parts) - 1;

	if (reading->decimals <= 0)
		return reading->denominator;
	return parts[reading->decimals < most ? reading->decimals : most];
}

static bool is_keepers_row(const struct rb_book_reader *r)
{
	return r->book->written[r->book->rows] & RB_WRITTEN_BY_KEEPER;
}

/* How finely a sum is written says nothing of the readings. */
static struct rb_places *places_of(struct rb_book_reader *r, enum rb_column column)
{
	return is_keepers_row(r) ? &r->book->sum_places[column]
				 : &r->book->places[column];
}

/* How finely a column is written in decimals; readings in another unit than the book's
 * do not tell. */
static void note_decimals(struct rb_book_reader *r, enum rb_column column,
			  const struct rb_reading *reading)
{
	int *most = &places_of(r, column)->decimals;
	int decimals = reading->sixtyfourth ? 4 : reading->decimals;

	if (decimals > *most &&
	    (reading->unit == r->book->unit ||
	     (reading->unit == RB_FEET && r->book->unit == RB_FEET_INCHES)))
		*most = decimals;
}

/* The same in inches, and in feet and inches. */
static void note_inches(struct rb_book_reader *r, enum rb_column column,
			const struct rb_reading *reading)
{
	struct rb_places *places = places_of(r, column);
	bool of_book = reading->notation == RB_AS_INCHES && r->book->unit == RB_INCHES;
	int decimals = reading->sixtyfourth ? 4 : reading->decimals;
	int parts = of_book ? reading->denominator : parts_of_inch(reading);

	if (of_book && decimals > 0 && decimals > places->decimals)
		places->decimals = decimals;
	if (parts > places->denominator)
		places->denominator = parts;
	if (column <= RB_FORESIGHT)
		r->book->written[r->book->rows] |=
			(uint8_t)RB_WRITTEN_IN_INCHES((unsigned)column);
}

static void say_beyond_rod(struct rb_book_reader *r, const struct rb_record *record,
			   enum rb_column column, rb_length value)
{
	rb_book_say(r, record, column, RB_CODE_BEYOND_ROD,
		    rb_rod_reading(value, r->row_unit),
		    rb_measure(r->book->key.rod, r->row_unit));
}

static void take_sight(struct rb_book_reader *r, const struct rb_record *record,
		       enum rb_column column, const struct rb_reading *reading)
{
	rb_habits_note(&r->habits, reading, record->line);
	if (rb_length_absolute(reading->value).nm > r->book->key.rod.nm)
		say_beyond_rod(r, record, column, reading->value);
	if (column == RB_BACKSIGHT && r->first_sight == RB_NO_ROW)
		r->first_sight = r->book->rows;
}

static bool says_a_name(const struct rb_reading *reading, enum rb_column column,
			struct rb_cell cell)
{
	static const char letters[] =
		"abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";

	return column == RB_KNOWN_ELEVATION && reading->refusal == RB_REFUSE_TEXT &&
	       !is_digit(cell.text[0]) && strpbrk(cell.text, letters);
}

/* A cell that cannot be read.  Words among the note keeper's sums are nobody's business,
 * and what else stands there stops nothing. */
static void say_unread(struct rb_book_reader *r, const struct rb_record *record,
		       enum rb_column column, const struct rb_reading *reading)
{
	struct rb_cell cell = rb_book_cell(r, record, column);

	if (reading->refusal == RB_REFUSE_EMPTY)
		return;
	if (is_keepers_row(r)) {
		if (reading->refusal != RB_REFUSE_TEXT)
			rb_book_say(r, record, column, RB_CODE_UNREAD_SUM,
				    rb_book_kept(r, cell), rb_nothing());
		return;
	}
	if (says_a_name(reading, column, cell))
		rb_book_say(r, record, column, RB_CODE_NAME_FOR_ELEVATION,
			    rb_book_kept(r, cell), rb_nothing());
	else
		rb_sheet_refused(r->findings, cell, place_of(r, record, column), reading,
				 r->row_unit);
}

/* Read a cell that is no plain number.  False: there is no value, and what cannot be read
 * is said. */
static bool read_long(struct rb_book_reader *r, const struct rb_record *record,
		      enum rb_column column, const struct rb_reading_rules *rules,
		      struct rb_reading *reading)
{
	struct rb_cell cell = rb_book_cell(r, record, column);

	*reading = rb_reading_parse(cell.text, cell.length, rules);
	if (reading->refusal == RB_READ) {
		if (reading->odd_fraction)
			rb_book_say(r, record, column, RB_CODE_ODD_FRACTION,
				    rb_book_kept(r, cell), rb_nothing());
		rb_sixtyfourths_note(&r->habits.sixtyfourths[column], r->findings, cell,
				     place_of(r, record, column), reading);
		return true;
	}
	if (!rb_cell_is_empty(cell))
		say_unread(r, record, column, reading);
	return false;
}

/* Read a cell that is not empty; the value, or none. */
static rb_length take_value(struct rb_book_reader *r, const struct rb_record *record,
			    enum rb_column column, enum rb_reading_kind kind)
{
	struct rb_cell cell = rb_book_cell(r, record, column);
	bool keepers = is_keepers_row(r);
	const struct rb_reading_rules *rules =
		&r->rules[keepers && kind == RB_OF_ROD ? RB_OF_ELEVATION : kind];
	struct rb_reading reading;

	if (!rb_reading_plain(cell.text, cell.length, rules, &reading) &&
	    !read_long(r, record, column, rules, &reading))
		return rb_length_none();
	if (reading.notation == RB_AS_DECIMAL)
		note_decimals(r, column, &reading);
	else
		note_inches(r, column, &reading);
	if (!keepers && is_sight(column))
		take_sight(r, record, column, &reading);
	return reading.value;
}

bool rb_book_set_value(struct rb_book_reader *r, enum rb_column column, rb_length value)
{
	rb_length **values = &r->book->value[column];

	if (!*values) {
		if (!rb_length_given(value))
			return true;
		*values = rb_arena_take(r->arena, r->room, sizeof **values);
		if (!*values)
			return rb_findings_no_memory(r->findings);
		for (uint32_t i = 0; i < r->book->rows; i++)
			(*values)[i] = rb_length_none();
	}
	(*values)[r->book->rows] = value;
	return true;
}

static bool take_values(struct rb_book_reader *r, const struct rb_record *record)
{
	for (uint32_t i = 0; i < r->values; i++) {
		const struct rb_value_column *v = &r->value[i];
		rb_length value = rb_length_none();

		if (v->cell < record->cells && record->cell[v->cell].length)
			value = take_value(r, record, v->column, v->kind);
		if (!rb_book_set_value(r, v->column, value))
			return false;
	}
	return true;
}

/* Two sights of a kind that cannot stand in one row, and a backsight on nobody; whether a
 * foresight needs a name shows only when all rows are read. */
static void check_sights(struct rb_book_reader *r, const struct rb_record *record)
{
	uint32_t row = r->book->rows;
	bool back = rb_length_given(rb_book_sight(r->book, RB_BACKSIGHT, row));
	bool fore = rb_length_given(rb_book_sight(r->book, RB_FORESIGHT, row));
	bool between = rb_length_given(rb_book_sight(r->book, RB_INTERMEDIATE, row));

	r->book->backsights += back;
	r->book->sights += back || fore || between;
	if (!back && !fore)
		return;
	if (between)
		rb_book_say(r, record, RB_INTERMEDIATE, RB_CODE_SIGHTS_TOGETHER,
			    rb_text(back ? "backsight" : "foresight"), rb_nothing());
	if (back && r->book->row[row].point == RB_NO_POINT)
		rb_book_say(r, record, RB_BACKSIGHT, RB_CODE_NO_NAME,
			    rb_text("backsight"), rb_nothing());
}

/* A known elevation: in its own column, or, in a book without one, the elevation of the
 * benchmark that opens the book. */
static bool take_known(struct rb_book_reader *r, const struct rb_record *record)
{
	struct rb_book *book = r->book;
	uint32_t point = book->row[book->rows].point;
	bool own = r->sheet->cell_of[RB_KNOWN_ELEVATION] >= 0;
	enum rb_column column = own ? RB_KNOWN_ELEVATION : RB_ELEVATION;
	rb_length known = own && rb_book_cell(r, record, column).length
				  ? take_value(r, record, column, RB_OF_ELEVATION)
			  : own ? rb_length_none()
				: rb_book_value(book, column, book->rows);
	void *list = book->benchmark;

	if ((!own && r->first_sight != book->rows) || !rb_length_given(known) ||
	    book->written[book->rows] & RB_WRITTEN_BY_KEEPER)
		return true;
	if (point == RB_NO_POINT) {
		rb_book_say(r, record, column, RB_CODE_NO_NAME,
			    rb_text("known elevation"), rb_nothing());
		return true;
	}
	if (!rb_book_grow(r, &list, book->benchmarks, sizeof *book->benchmark))
		return false;
	book->benchmark = list;
	book->is_known[point] = true;
	book->benchmark[book->benchmarks++] =
		(struct rb_benchmark){ known, point, book->rows, column };
	return true;
}

static void take_rod_on(struct rb_book_reader *r, const struct rb_record *record)
{
	struct rb_cell cell = rb_book_cell(r, record, RB_ROD_ON);
	enum rb_rod_on place = RB_ON_UNSAID;

	if (!rb_cell_is_empty(cell)) {
		place = rb_rod_on_parse(cell.text, cell.length);
		if (place == RB_ON_UNSAID)
			rb_book_say(r, record, RB_ROD_ON, RB_CODE_BAD_ROD_ON,
				    rb_book_kept(r, cell), rb_nothing());
	}
	r->book->rod_on[r->book->rows] = (uint8_t)place;
}

/* The unit of a row's numbers; the first that is given is the book's where no key is. */
static void take_unit(struct rb_book_reader *r, const struct rb_record *record)
{
	struct rb_cell cell = rb_book_cell(r, record, RB_UNIT_OF_ROW);
	enum rb_unit unit = r->book->unit;

	if (rb_cell_is_empty(cell))
		cell.length = 0;
	if (cell.length && !rb_unit_parse(cell.text, cell.length, &unit))
		rb_book_say(r, record, RB_UNIT_OF_ROW, RB_CODE_BAD_UNIT,
			    rb_book_kept(r, cell), rb_text("ft, in, ft-in, m or mm"));
	if (cell.length && !r->unit_known) {
		r->unit_known = true;
		r->book->unit = unit;
	}
	r->row_unit = unit;
	for (int kind = 0; kind < RB_READING_KINDS; kind++)
		r->rules[kind].unit = unit;
}

/* Does the row at hand stand on a line as the last jump has it? */
static bool follows(const struct rb_book *book, uint32_t line)
{
	const struct rb_line_jump *last = &book->jump[book->jumps - 1];

	return last->line + (book->rows - last->row) == line;
}

static bool note_line(struct rb_book_reader *r, uint32_t line)
{
	struct rb_book *book = r->book;
	void *list = book->jump;

	if (book->jumps && follows(book, line))
		return true;
	if (!rb_book_grow(r, &list, book->jumps, sizeof *book->jump))
		return false;
	book->jump = list;
	book->jump[book->jumps++] = (struct rb_line_jump){ book->rows, line };
	return true;
}

bool rb_book_take_row(void *reader, const struct rb_record *record)
{
	struct rb_book_reader *r = reader;
	struct rb_book *book = r->book;
	struct rb_cell remark = rb_cell_unguarded(rb_book_cell(r, record, RB_REMARKS));
	struct rb_cell typed = rb_cell_unguarded(rb_book_cell(r, record, RB_POINT));
	char whole[64];
	struct rb_cell name = rb_book_may_be_station(*typed.text)
				      ? rb_book_whole_station(r, typed, whole)
				      : typed;
	enum rb_keeper keeper;

	if (rb_book_is_key(r, record))
		return true;
	if (!rb_names_seek(&r->names, name.text, name.length))
		return rb_findings_no_memory(r->findings);
	keeper = r->names.letters < RB_KEEPERS_LEAST ? RB_NOT_KEEPERS
						     : rb_keeper_of(typed.text);
	book->written[book->rows] = keeper > RB_KEEPERS_DOUBT ? RB_WRITTEN_BY_KEEPER : 0;
	if (r->sheet->cell_of[RB_UNIT_OF_ROW] >= 0)
		take_unit(r, record);
	if (!note_line(r, record->line) || !take_values(r, record) ||
	    !rb_book_take_name(r, record, typed, name))
		return false;
	if (!take_known(r, record) || !rb_book_take_chainage(r, record))
		return false;
	check_sights(r, record);
	if (keeper != RB_NOT_KEEPERS)
		rb_book_doubt_name(r, record, keeper);
	take_rod_on(r, record);
	if (book->remarks)
		book->remarks[book->rows] = rb_book_store(r, remark.text, remark.length);
	book->rows++;
	return true;
}
