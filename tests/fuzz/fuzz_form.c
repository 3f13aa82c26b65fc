/* SPDX-License-Identifier: MIT */
/*
 * A book in another form is the same book: the order of its columns, line ends of all
 * systems, commas, semicolons and tabs, quotes where none are needed.
 *
 * The input is parted at commas and line ends, whatever stands in it, and written anew.
 */
#include <string.h>

#include "notes/book_reader.h"
#include "notes/heading.h"
#include "work.h"

#define COLUMNS 16
#define ROWS    64
#define ROOM    32768

struct grid {
	struct part cell[ROWS][COLUMNS];
	int rows, columns, header; /* header: the row with the headings */
};

/* A form in which a grid can be written. */
struct form {
	char separator;
	const char *line_end;
	bool quoted;
	int first; /* the column that comes first below the keys, the others in turn */
};

/* -- parting -- */

/* The header as the reader sees it: what stands above is keys, whose values stand behind
 * them. */
static bool is_header(const struct part *part, uint32_t cells)
{
	struct rb_cell cell[COLUMNS];
	const struct rb_record record = { 1, cells, cell };
	int32_t cell_of[RB_SHEET_COLUMNS];

	for (uint32_t i = 0; i < cells; i++)
		cell[i] = (struct rb_cell){ part[i].bytes, part[i].length };
	return rb_headings_map(&rb_book_form, &record, cell_of) &&
	       rb_book_form.is_header(cell_of);
}

/* Take a line apart; false if it has too many cells. */
static bool take_line(struct grid *grid, const char *line, size_t length)
{
	int column = 0;

	for (size_t from = 0, at = 0; at <= length; at++) {
		if (at < length && line[at] != ',')
			continue;
		if (column == COLUMNS)
			return false;
		grid->cell[grid->rows][column++] =
			(struct part){ line + from, at - from };
		from = at + 1;
	}
	if (column > grid->columns)
		grid->columns = column;
	if (grid->header < 0 && is_header(grid->cell[grid->rows], (uint32_t)column))
		grid->header = grid->rows;
	grid->rows++;
	return true;
}

/* False where the input has no header of ours, or is too large. */
static bool take_apart(struct grid *grid, const char *bytes, size_t size)
{
	*grid = (struct grid){ .header = -1 };
	for (size_t from = 0, at = 0; at <= size; at++) {
		if (at < size && bytes[at] != '\n')
			continue;
		if (grid->rows == ROWS || !take_line(grid, bytes + from, at - from))
			return false;
		from = at + 1;
	}
	return grid->header >= 0;
}

/* -- writing -- */

struct written {
	char bytes[ROOM];
	size_t length;
};

static void put(struct written *w, const char *bytes, size_t length)
{
	HOLDS(w->length + length <= ROOM);
	memcpy(w->bytes + w->length, bytes, length);
	w->length += length;
}

/* Quoted where it must be, with quotes doubled. */
static void put_cell(struct written *w, struct part cell, bool quoted)
{
	bool needs = quoted || (cell.length && memchr(cell.bytes, '"', cell.length));

	if (needs)
		put(w, "\"", 1);
	for (size_t i = 0; i < cell.length; i++)
		put(w, cell.bytes[i] == '"' ? "\"\"" : &cell.bytes[i],
		    cell.bytes[i] == '"' ? 2 : 1);
	if (needs)
		put(w, "\"", 1);
}

static void write_grid(struct written *w, const struct grid *grid,
		       const struct form *form)
{
	w->length = 0;
	for (int row = 0; row < grid->rows; row++) {
		int first = row < grid->header ? 0 : form->first;

		for (int i = 0; i < grid->columns; i++) {
			int column = (i + first) % grid->columns;

			if (i > 0)
				put(w, &form->separator, 1);
			put_cell(w, grid->cell[row][column], form->quoted);
		}
		put(w, form->line_end, strlen(form->line_end));
	}
}

/* -- the same -- */

static void same_findings(const struct rb_findings *a, const struct rb_findings *b)
{
	for (int code = 0; code < RB_CODES; code++)
		HOLDS(a->of_code[code] == b->of_code[code]);
}

static void same_book(const struct work *a, const struct work *b)
{
	HOLDS(!a->reduction.adjusted == !b->reduction.adjusted);
	if (!a->reduction.adjusted)
		return;
	HOLDS(a->reduced->shots == b->reduced->shots);
	HOLDS(a->reduced->setups == b->reduced->setups);
	for (uint32_t i = 0; i < a->reduced->shots; i++) {
		HOLDS(a->reduced->shot[i].elevation.nm ==
		      b->reduced->shot[i].elevation.nm);
		HOLDS(a->reduced->shot[i].kind == b->reduced->shot[i].kind);
		HOLDS(rb_shot_adjusted(a->reduction.adjusted, i).nm ==
		      rb_shot_adjusted(b->reduction.adjusted, i).nm);
	}
}

static void same_work(const struct work *a, const struct work *b, bool in_order)
{
	same_book(a, b);
	if (in_order)
		same_findings(&a->findings, &b->findings);
}

/* Does the reader see the same header as this file, and no other?  Without one nobody can
 * tell by what the cells are parted, and without a book where it stands. */
static bool sees_header(const struct work *work, const struct grid *grid, bool in_order)
{
	if (work->findings.of_code[RB_CODE_NO_HEADER])
		return false;
	if (!work->book)
		return in_order;
	return !work->book->rows ||
	       (work->book->cell_of[RB_POINT] == 0 &&
		rb_book_line(work->book, 0) > (uint32_t)grid->header + 1);
}

/* Can three figures stand there, or letters and marks that pass for them (O, l, a degree
 * sign), with blanks between them or without? */
static bool may_be_three(struct part cell, size_t at)
{
	int figures = 0;

	for (; at < cell.length; at++) {
		unsigned char c = (unsigned char)cell.bytes[at];

		if (c != ' ' && c < 0x80 && !strchr("0123456789OoIiLl", c))
			break;
		figures += c != ' ';
	}
	return figures >= 3;
}

/* Does a cell hold a number with three places?  In millimetres it may be thousands where
 * commas part nothing, and is refused there, in a cell or in a key. */
static bool has_three_places(const struct grid *grid)
{
	for (int row = 0; row < grid->rows; row++)
		for (int column = 0; column < grid->columns; column++) {
			struct part cell = grid->cell[row][column];

			for (size_t i = 0; i < cell.length; i++)
				if (cell.bytes[i] == '.' && may_be_three(cell, i + 1))
					return true;
		}
	return false;
}

static void compare(const struct grid *grid, const struct form *form)
{
	static const struct form plain = { ',', "\n", false, 0 };
	struct rb_arena *arena = rb_arena_new(NULL);
	struct written one, other;
	struct work a, b;

	HOLDS(arena);
	write_grid(&one, grid, &plain);
	write_grid(&other, grid, form);
	work_out(&a, arena, (struct part){ one.bytes, one.length });
	if (sees_header(&a, grid, form->first == 0)) {
		work_out(&b, arena, (struct part){ other.bytes, other.length });
		if (form->separator == ',' || !has_three_places(grid))
			same_work(&a, &b, form->first == 0);
		else if (b.reduction.adjusted)
			same_book(&a, &b);
	}
	rb_arena_free(arena);
}

/* Left out: what means something else in another form.  A semicolon or a tab may part
 * cells, a # in front makes a comment, a NUL is no text, and the first bytes that tell of
 * UTF-16, of a web page, of a spreadsheet's own file or of the byte order tell nothing
 * behind a quote.
 */
static bool is_neutral(const uint8_t *data, size_t size)
{
	if (size && (data[0] >= 0x80 || data[0] == '<' || data[0] == '%' ||
		     data[0] == '{' || (data[0] == 'P' && size > 1 && data[1] == 'K')))
		return false;
	for (size_t i = 0; i < size; i++)
		if (!data[i] || strchr(";\t\r#", data[i]))
			return false;
	return true;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const char *const ends[] = { "\n", "\r\n", "\r" };
	static const char separators[] = ",;\t";
	uint32_t draws = drawn_from(data, size);
	struct grid grid;
	struct form form;

	if (size > 4096 || !is_neutral(data, size) ||
	    !take_apart(&grid, (const char *)data, size))
		return 0;
	form.separator = separators[draw(&draws, 3)];
	form.line_end = ends[draw(&draws, 3)];
	form.quoted = draw(&draws, 2);
	form.first = draw(&draws, 2) * draw(&draws, grid.columns);
	compare(&grid, &form);
	return 0;
}
