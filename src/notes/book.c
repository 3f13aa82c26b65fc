/* SPDX-License-Identifier: MIT */
/* A book from the bytes of a file, and what can be asked of it. */
#include "rodbook/book.h"

#include <stdlib.h>
#include <string.h>

#include "notes/book_reader.h"
#include "notes/heading.h"
#include "notes/seek.h"

/* clang-format off */
static const char *const rod_on_names[RB_ON_PLACES] = {
	[RB_ON_UNSAID]        = "",
	[RB_ON_GROUND]        = "ground",
	[RB_ON_HUB]           = "hub",
	[RB_ON_INVERT]        = "invert",
	[RB_ON_TOP_OF_PIPE]   = "top of pipe",
	[RB_ON_INSIDE_TOP]    = "inside top",
	[RB_ON_TRENCH_BOTTOM] = "trench bottom",
	[RB_ON_BEDDING]       = "bedding",
	[RB_ON_RIM]           = "rim",
	[RB_ON_FLOOR]         = "floor",
	[RB_ON_OTHER]         = "other",
};

/* Fewest decimals of a style, by unit; the most that a rod or a print has. */
static const int least_decimals[] = {
	[RB_FEET] = 2, [RB_INCHES] = 2, [RB_FEET_INCHES] = 2, [RB_METRES] = 3,
	[RB_MILLIMETRES] = 0,
};
/* clang-format on */

#define MOST_DECIMALS 5

const char *rb_rod_on_name(enum rb_rod_on place)
{
	return rod_on_names[place];
}

enum rb_rod_on rb_rod_on_parse(const char *text, size_t length)
{
	char folded[32];

	if (length >= sizeof folded)
		return RB_ON_UNSAID;
	rb_name_fold(folded, text, length);
	for (int i = RB_ON_UNSAID + 1; i < RB_ON_PLACES; i++)
		if (!strcmp(folded, rod_on_names[i]))
			return (enum rb_rod_on)i;
	return RB_ON_UNSAID;
}

/* How often a character stands in a text: in parts so short that a byte counts them,
 * which compilers turn into a loop over many bytes at once. */
static uint32_t count_of(const char *text, size_t length, char c)
{
	uint32_t all = 0;

	for (size_t part; length; length -= part, text += part) {
		uint8_t count = 0;

		part = length < UINT8_MAX ? length : UINT8_MAX;
		for (size_t i = 0; i < part; i++)
			count = (uint8_t)(count + (text[i] == c));
		all += count;
	}
	return all;
}

/* No file of so many lines holds more rows. */
static uint32_t most_rows(const struct rb_source *source)
{
	uint32_t lines = 1 + count_of(source->text, source->length, '\n');
	const char *end = source->text + source->length;

	for (const char *s = source->text; (s = memchr(s, '\r', (size_t)(end - s))); s++)
		lines += s + 1 == end || s[1] != '\n';
	return lines;
}

static bool take_arrays(struct rb_book_reader *r)
{
	struct rb_book *book = r->book;
	const int32_t *cell_of = r->sheet->cell_of;

	book->row = rb_arena_take(r->arena, r->room, sizeof *book->row);
	book->rod_on = rb_arena_take(r->arena, r->room, 1);
	book->written = rb_arena_take(r->arena, r->room, 1);
	book->name = rb_arena_take(r->arena, r->room, sizeof *book->name);
	book->is_known = rb_arena_take(r->arena, r->room, sizeof *book->is_known);
	r->text_room = r->sheet->source->length + 40 * (size_t)r->room + 64;
	book->text = rb_arena_take(r->arena, r->text_room, 1);
	if (!book->row || !book->rod_on || !book->written || !book->name ||
	    !book->is_known || !book->text)
		return false;
	if (cell_of[RB_REMARKS] >= 0) {
		book->remarks = rb_arena_take(r->arena, r->room, sizeof *book->remarks);
		return book->remarks != NULL;
	}
	return true;
}

static bool on_header(void *self, const struct rb_sheet *sheet)
{
	struct rb_book_reader *r = self;
	struct rb_book *book = r->book;

	r->sheet = sheet;
	r->room = most_rows(sheet->source);
	book->decimal_comma = sheet->source->separator != ',';
	memcpy(book->cell_of, sheet->cell_of, sizeof book->cell_of);
	if (!take_arrays(r))
		return rb_findings_no_memory(r->findings);
	book->text[0] = '\0';
	r->text_used = 1;
	r->names.text = book->text;
	r->names.name = book->name;
	rb_book_choose_columns(r);
	rb_book_take_keys(r);
	r->row_unit = book->unit;
	return true;
}

static void say_near_names(struct rb_book_reader *r)
{
	const struct rb_book *book = r->book;

	for (uint32_t i = 0; i < r->names.nears; i++) {
		const struct rb_near *near = &r->names.near[i];
		uint32_t row = 0;

		while (row < book->rows && book->row[row].point != near->name)
			row++;
		if (row < book->rows && !(book->written[row] & RB_WRITTEN_BY_KEEPER) &&
		    !rb_name_is_ground(rb_book_point(book, near->name)))
			rb_findings_add(r->findings, RB_CODE_NEAR_NAME,
					rb_book_place(book, row, RB_POINT),
					rb_text(rb_book_point(book, near->name)),
					rb_text(rb_book_point(book, near->other)));
	}
}

static int by_point(const void *a, const void *b)
{
	const struct rb_benchmark *x = a, *y = b;

	if (x->point != y->point)
		return x->point < y->point ? -1 : 1;
	return (x->row > y->row) - (x->row < y->row);
}

/* Sort the known elevations; one that is written twice must be the same. */
static void sort_benchmarks(struct rb_book_reader *r)
{
	struct rb_book *book = r->book;
	struct rb_benchmark *kept = book->benchmark;
	uint32_t count = book->benchmarks;

	if (!count)
		return;
	qsort(kept, count, sizeof *kept, by_point);
	for (uint32_t i = 1; i < count; i++) {
		const struct rb_benchmark *next = &book->benchmark[i];

		if (next->point != kept->point)
			*++kept = *next;
		else if (rb_length_compare(next->elevation, kept->elevation) != 0)
			rb_findings_add4(r->findings, RB_CODE_KNOWN_TWICE,
					 rb_book_place(book, next->row, next->column),
					 (struct rb_argument[RB_ARGUMENTS]){
						 rb_measure(next->elevation, book->unit),
						 rb_measure(kept->elevation, book->unit),
						 rb_line(rb_book_line(book, kept->row)),
						 rb_nothing() });
	}
	book->benchmarks = (uint32_t)(kept - book->benchmark) + 1;
}

/* What stands under elevation on the row that opens the book, or above it, is probably
 * what was meant. */
static void say_no_known_elevation(struct rb_book_reader *r, struct rb_place header)
{
	const struct rb_book *book = r->book;
	struct rb_argument argument[RB_ARGUMENTS] = { rb_nothing(), rb_nothing() };

	for (uint32_t row = 0; row <= r->first_sight; row++) {
		rb_length elevation = rb_book_value(book, RB_ELEVATION, row);

		if (!rb_length_given(elevation) || book->row[row].point == RB_NO_POINT ||
		    book->written[row] & RB_WRITTEN_BY_KEEPER)
			continue;
		argument[0] = rb_line(rb_book_line(book, row));
		argument[1] = rb_measure(elevation, book->unit);
		argument[2] = rb_text(rb_book_typed(book, row));
	}
	rb_findings_add4(r->findings, RB_CODE_NO_KNOWN_ELEVATION, header, argument);
}

/* Is there enough in the book to begin with? */
static void check_whole(struct rb_book_reader *r)
{
	const struct rb_book *book = r->book;
	struct rb_place header = rb_at(r->sheet->header_line, RB_WHOLE_ROW, NULL, NULL);

	rb_habits_say(r);
	if (r->first_sight == RB_NO_ROW &&
	    !r->findings->of_severity[RB_ERROR]) /* an unreadable one is told already */
		rb_findings_add(r->findings, RB_CODE_NO_SIGHT, header, rb_nothing(),
				rb_nothing());
	else if (!book->benchmarks && !r->findings->of_severity[RB_ERROR])
		say_no_known_elevation(r, header);
}

static bool read_sheet(struct rb_book_reader *r, const char *bytes, size_t length)
{
	const struct rb_sheet_reader reader = { on_header, rb_book_take_row, r };

	if (!rb_sheet_read(r->arena, r->findings, &rb_book_form, bytes, length, &reader))
		return false;
	rb_headings_check_units(r->findings, r->sheet, r->book->unit);
	sort_benchmarks(r);
	check_whole(r);
	if (!rb_names_compare(&r->names, r->book->is_known))
		return rb_findings_no_memory(r->findings);
	say_near_names(r);
	return true;
}

struct rb_book *rb_book_read(struct rb_arena *arena, struct rb_findings *findings,
			     const char *bytes, size_t length)
{
	struct rb_book_reader r = { .arena = arena, .findings = findings };
	bool read = false;

	r.first_sight = RB_NO_ROW;
	r.book = rb_arena_take_clear(arena, 1, sizeof *r.book);
	r.names.arena = rb_arena_new(rb_arena_allocator(arena));
	if (r.book && r.names.arena) {
		r.book->file = findings->file;
		r.book->heading = rb_book_form.column_name;
		for (int column = 0; column <= RB_ELEVATION; column++)
			r.book->places[column].decimals =
				r.book->sum_places[column].decimals = -1;
		read = read_sheet(&r, bytes, length);
	} else {
		rb_findings_no_memory(findings);
	}
	rb_arena_free(r.names.arena);
	return read && rb_findings_allow_result(findings) ? r.book : NULL;
}

/* Where a spelling of the row would stand in the list. */
static uint32_t spelling_at(const struct rb_book *book, uint32_t row)
{
	return rb_seek(book->spelling, book->spellings, sizeof *book->spelling,
		       offsetof(struct rb_spelling, row), row);
}

const char *rb_book_typed(const struct rb_book *book, uint32_t row)
{
	uint32_t at = spelling_at(book, row);

	if (at < book->spellings && book->spelling[at].row == row)
		return book->text + book->spelling[at].text;
	return rb_book_point(book, book->row[row].point);
}

rb_length rb_book_known(const struct rb_book *book, uint32_t point)
{
	if (point == RB_NO_POINT || !book->is_known[point])
		return rb_length_none();
	return book
		->benchmark[rb_seek(book->benchmark, book->benchmarks,
				    sizeof *book->benchmark,
				    offsetof(struct rb_benchmark, point), point)]
		.elevation;
}

uint32_t rb_book_line(const struct rb_book *book, uint32_t row)
{
	uint32_t after = rb_seek(book->jump, book->jumps, sizeof *book->jump,
				 offsetof(struct rb_line_jump, row), row + 1);

	return after ? book->jump[after - 1].line + (row - book->jump[after - 1].row) : 0;
}

struct rb_place rb_book_place(const struct rb_book *book, uint32_t row,
			      enum rb_column column)
{
	const char *name = row < book->rows ? rb_book_typed(book, row) : "";

	return rb_at(rb_book_line(book, row), book->cell_of[column], *name ? name : NULL,
		     book->heading[column]);
}

struct rb_place rb_book_row_place(const struct rb_book *book, uint32_t row)
{
	struct rb_place place = rb_book_place(book, row, RB_POINT);

	place.cell = RB_WHOLE_ROW;
	place.heading = NULL;
	return place;
}

static int most(int a, int b)
{
	return a > b ? a : b;
}

static int least(int a, int b)
{
	return a < b ? a : b;
}

struct rb_places rb_book_places(const struct rb_book *book, enum rb_column column)
{
	const struct rb_places *a = &book->places[column], *b = &book->sum_places[column];

	return (struct rb_places){ most(a->decimals, b->decimals),
				   most(a->denominator, b->denominator) };
}

struct rb_style rb_book_style(const struct rb_book *book)
{
	struct rb_style style = { book->unit, least_decimals[book->unit], 16, false };

	for (int column = RB_KNOWN_ELEVATION; column <= RB_FORESIGHT; column++) {
		const struct rb_places *places = &book->places[column];
		bool inches = places->denominator && book->unit == RB_FEET;

		style.decimals = most(style.decimals, inches ? 3 : places->decimals);
		style.fraction = most(style.fraction, places->denominator);
	}
	style.decimals = least(style.decimals, MOST_DECIMALS);
	if (style.fraction & (style.fraction - 1) || style.fraction > 64)
		style.fraction = 64; /* odd fractions */
	if (book->key.decimals >= 0)
		style.decimals = book->key.decimals;
	return style;
}

/* A value of 16ths shows as 16ths among 64ths, too. */
struct rb_style rb_book_hand_style(const struct rb_book *book)
{
	struct rb_style style = rb_book_style(book);
	int height = book->places[RB_HEIGHT_OF_INSTRUMENT].decimals;
	int elevation = book->places[RB_ELEVATION].decimals;

	style.fraction = 64;
	if (book->key.decimals < 0)
		style.decimals = least(MOST_DECIMALS,
				       most(style.decimals, most(height, elevation)));
	return style;
}
