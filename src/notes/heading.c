/* SPDX-License-Identifier: MIT */
/* Headings: known, with a unit behind, or nearly known. */
#include "notes/heading.h"

#include <string.h>

#include "measure/reading.h"
#include "notes/names.h"
#include "notes/word.h"

#define HEADING_DROPS ".()/_-+ "

size_t rb_heading_fold(char word[static RB_FOLDED_WORD], const char *text, size_t length,
		       const char *dropped)
{
	char plain[RB_FOLDED_WORD];
	size_t used = 0;

	if (length >= RB_FOLDED_WORD)
		return 0;
	length = rb_name_fold(plain, text, length);
	for (size_t i = 0; i < length; i++)
		if (!strchr(dropped, plain[i]))
			word[used++] = plain[i];
	word[used] = '\0';
	return used;
}

/* A name of the form, which stands in small letters, against a folded heading. */
static bool same_heading(const char *name, const char *word)
{
	for (; *name; name++)
		if (!strchr(HEADING_DROPS, *name) && *name != *word++)
			return false;
	return !*word;
}

/* The column of a heading as it stands. */
static int named_by(const struct rb_form *form, struct rb_cell cell)
{
	char word[RB_FOLDED_WORD];

	if (!rb_heading_fold(word, cell.text, cell.length, ""))
		return -1;
	for (size_t i = 0; i < form->exacts; i++)
		if (!strcmp(form->exact[i].name, word))
			return form->exact[i].column;
	if (!rb_heading_fold(word, cell.text, cell.length, HEADING_DROPS))
		return -1;
	for (size_t i = 0; i < form->headings; i++)
		if (same_heading(form->heading[i].name, word))
			return form->heading[i].column;
	return -1;
}

/* -- a unit in brackets behind -- */

/* Where the bracket opens that closes at the end of the cell; 0: none does. */
static size_t bracket_of(struct rb_cell cell)
{
	char close = cell.length ? cell.text[cell.length - 1] : '\0';
	char open = close == ')' ? '(' : '[';
	size_t at = cell.length - 1;

	if (close != ')' && close != ']')
		return 0;
	while (at && cell.text[at] != open)
		at--;
	return at;
}

/* "BS (ft)" without its unit; false where it has none. */
static bool split_unit(struct rb_cell *cell, enum rb_unit *unit)
{
	size_t at = bracket_of(*cell);

	if (!at || !rb_unit_parse(cell->text + at, cell->length - at, unit))
		return false;
	while (at && cell->text[at - 1] == ' ')
		at--;
	cell->length = at;
	return at > 0;
}

static enum rb_measured measured(const struct rb_form *form, int column)
{
	return form->measured && column >= 0 ? form->measured[column] : RB_UNMEASURED;
}

int rb_heading_column(const struct rb_form *form, struct rb_cell cell)
{
	int column = named_by(form, cell);
	enum rb_unit unit;

	if (column >= 0 || !form->measured || !split_unit(&cell, &unit))
		return column;
	column = named_by(form, cell);
	return measured(form, column) == RB_UNMEASURED ? -1 : column;
}

int rb_headings_map(const struct rb_form *form, const struct rb_record *record,
		    int32_t cell_of[RB_SHEET_COLUMNS])
{
	int found = 0;

	for (int i = 0; i < RB_SHEET_COLUMNS; i++)
		cell_of[i] = -1;
	for (uint32_t i = 0; i < record->cells; i++) {
		int column = rb_heading_column(form, record->cell[i]);

		if (column < 0 || cell_of[column] >= 0)
			continue;
		cell_of[column] = (int32_t)i;
		found++;
	}
	if (form->settle)
		form->settle(cell_of);
	return found;
}

/* The elevations of a feet-inches book may be written in whole feet. */
static bool agrees(enum rb_unit unit, enum rb_measured in, enum rb_unit wanted)
{
	return unit == wanted ||
	       (in == RB_ELEVATIONS && wanted == RB_FEET_INCHES && unit == RB_FEET);
}

bool rb_is_unit_alone(struct rb_cell cell, enum rb_unit *unit)
{
	return rb_unit_parse(cell.text, cell.length, unit);
}

/* The unit that a row has for a column: behind its heading, or alone below it. */
static bool unit_of(const struct rb_sheet *sheet, const struct rb_record *row, int column,
		    enum rb_unit *unit)
{
	struct rb_cell cell = rb_sheet_cell(sheet->cell_of, column, row);

	if (row == &sheet->units)
		return rb_is_unit_alone(cell, unit);
	return named_by(sheet->form, cell) < 0 && split_unit(&cell, unit);
}

static void check_units(struct rb_findings *findings, const struct rb_sheet *sheet,
			const struct rb_record *row, enum rb_unit book)
{
	bool told[RB_MILLIMETRES + 1] = { false };

	for (int c = 0; c < RB_SHEET_COLUMNS; c++) {
		enum rb_measured in = measured(sheet->form, c);
		enum rb_unit wanted = in == RB_RUNS ? rb_unit_of_runs(book) : book, unit;
		struct rb_cell cell = rb_sheet_cell(sheet->cell_of, c, row);

		if (in == RB_UNMEASURED || !unit_of(sheet, row, c, &unit) ||
		    agrees(unit, in, wanted) || told[unit])
			continue;
		told[unit] = true;
		rb_findings_add(findings, RB_CODE_HEADING_UNIT,
				rb_at(row->line, sheet->cell_of[c], NULL, NULL),
				rb_text(cell.text), rb_text(rb_unit_name(wanted)));
	}
}

void rb_headings_check_units(struct rb_findings *findings, const struct rb_sheet *sheet,
			     enum rb_unit book)
{
	check_units(findings, sheet, &sheet->header, book);
	check_units(findings, sheet, &sheet->units, book);
}

/* -- what it looks like -- */

#define MOST_WORDS 8

static size_t words_of(const char *folded, struct rb_word words[static MOST_WORDS])
{
	size_t count = 0;

	while (count < MOST_WORDS && rb_word_next(&folded, &words[count]))
		count++;
	return count;
}

/* Has the heading a word for each word of the pattern? */
static bool has_words(const struct rb_word *words, size_t count, const char *pattern)
{
	while (*pattern) {
		char one[RB_FOLDED_WORD];
		size_t length = strcspn(pattern, " "), i = 0;

		memcpy(one, pattern, length);
		one[length] = '\0';
		while (i < count && !rb_word_is(words[i], one))
			i++;
		if (i == count)
			return false;
		pattern += length + (pattern[length] == ' ');
	}
	return true;
}

static int by_words(const struct rb_form *form, const char *folded)
{
	struct rb_word words[MOST_WORDS];
	size_t count = words_of(folded, words);

	for (size_t i = 0; i < form->nears; i++) {
		const char *name = form->near[i].name;
		bool whole = name[0] == '=';

		if ((!whole || count == 1) && has_words(words, count, name + whole))
			return form->near[i].column;
	}
	return -1;
}

/* A heading that is few letters away. */
static int by_letters(const struct rb_form *form, const char *word, size_t length)
{
	char plain[RB_FOLDED_WORD];

	for (size_t i = 0; length > 2 && i < form->headings; i++) {
		const char *name = form->heading[i].name;
		size_t other = rb_heading_fold(plain, name, strlen(name), HEADING_DROPS);
		int most = other > 5 ? 2 : 1;

		if (other > 2 &&
		    rb_letters_apart(word, length, plain, other, most) <= most)
			return form->heading[i].column;
	}
	return -1;
}

int rb_heading_nearest(const struct rb_form *form, struct rb_cell cell)
{
	char word[RB_FOLDED_WORD];
	size_t at = bracket_of(cell), length;
	int column;

	if (at > 1) /* slope (in/ft), elevation (checked) */
		cell.length = at - 1;
	if (!rb_heading_fold(word, cell.text, cell.length, ""))
		return -1;
	column = named_by(form, cell);
	if (column < 0)
		column = by_words(form, word);
	if (column >= 0)
		return column;
	length = rb_heading_fold(word, cell.text, cell.length, HEADING_DROPS);
	return by_letters(form, word, length);
}
