/* SPDX-License-Identifier: MIT */
/*
 * A key with its value below the header, where keys are not read.
 *
 * A row is a key's by what it holds, not by which column stands where: a key under the
 * point column and something besides it, or a key under another column (neither remarks
 * nor where the rod stood) and nothing but its value.  Words for the record are passed
 * over; what would change numbers is told.
 */
#include <string.h>

#include "notes/book_reader.h"

/* The keys that are words for the record, and change no number. */
static bool is_of_words(int key)
{
	static const enum rb_book_key words[] = {
		RB_KEY_PROJECT,    RB_KEY_DATE,    RB_KEY_CREW,  RB_KEY_STUDENT,
		RB_KEY_INSTRUMENT, RB_KEY_WEATHER, RB_KEY_DATUM,
	};

	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if ((int)words[i] == key)
			return true;
	return false;
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Every key begins with three letters: nearly no reading and no name of a point does. */
static const struct rb_key *key_in(struct rb_cell cell)
{
	for (size_t i = 0; i < 3; i++)
		if (i >= cell.length || !is_letter(cell.text[i]))
			return NULL;
	return rb_sheet_key(&rb_book_form, cell);
}

struct key_row {
	const struct rb_key *key;
	uint32_t at;       /* its cell */
	const char *value; /* behind a colon in the same cell, or "" */
	uint32_t others;   /* cells besides it that hold anything */
	bool number;       /* one of them is a sight or a known elevation */
	bool as_above;     /* the value is that which stands above the header */
};

static bool holds_words(const struct rb_sheet *sheet, uint32_t cell)
{
	return (int32_t)cell == sheet->cell_of[RB_REMARKS] ||
	       (int32_t)cell == sheet->cell_of[RB_ROD_ON];
}

/* The key under the point column, else the only one that stands where no words do. */
static bool find_key(struct key_row *row, const struct rb_sheet *sheet,
		     const struct rb_record *record)
{
	row->at = (uint32_t)sheet->cell_of[RB_POINT];
	row->key = row->at < record->cells ? key_in(record->cell[row->at]) : NULL;
	if (row->key)
		return true;
	for (uint32_t i = 0; i < record->cells; i++) {
		const struct rb_key *key =
			holds_words(sheet, i) ? NULL : key_in(record->cell[i]);

		if (!key)
			continue;
		if (row->key)
			return false;
		row->key = key;
		row->at = i;
	}
	return row->key != NULL;
}

/* Read as a number, or refused as one that is written wrong: a sight that nobody can read
 * must be told, and not pass for a word.  Dates, and numbers that are too long for a rod,
 * are words of a record. */
static bool is_meant_as_number(enum rb_refusal refusal)
{
	static const enum rb_refusal numbers[] = {
		RB_READ,
		RB_REFUSE_INCHES,
		RB_REFUSE_FRACTION,
		RB_REFUSE_ZERO,
		RB_REFUSE_ROUNDED,
		RB_REFUSE_COMMA,
		RB_REFUSE_BARE,
		RB_REFUSE_UNMARKED,
		RB_REFUSE_THOUSANDS,
		RB_REFUSE_FINE,
		RB_REFUSE_SIGNS,
		RB_REFUSE_FINE_MARK,
		RB_REFUSE_INVERTED,
		RB_REFUSE_NEGATIVE,
	};

	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++)
		if (numbers[i] == refusal)
			return true;
	return false;
}

static bool is_number(const struct rb_book_reader *r, uint32_t at, struct rb_cell cell)
{
	for (int c = RB_KNOWN_ELEVATION; c <= RB_FORESIGHT; c++) {
		bool known = c == RB_KNOWN_ELEVATION;
		const struct rb_reading_rules *rules =
			&r->rules[known ? RB_OF_ELEVATION : RB_OF_ROD];

		if (r->sheet->cell_of[c] == (int32_t)at)
			return is_meant_as_number(
				rb_reading_parse(cell.text, cell.length, rules).refusal);
	}
	return false;
}

/* What stands in the row besides the key. */
static void look_around(struct key_row *row, const struct rb_book_reader *r,
			const struct rb_record *record)
{
	const struct rb_key_value *above = &r->sheet->key[row->key->key];
	const char *colon = strchr(record->cell[row->at].text, ':');

	row->value = colon ? colon + 1 + strspn(colon + 1, " ") : "";
	row->as_above = above->length && !strcmp(above->text, row->value);
	for (uint32_t i = 0; i < record->cells; i++) {
		if (i == row->at || rb_cell_is_empty(record->cell[i]))
			continue;
		row->others++;
		row->number |= is_number(r, i, record->cell[i]);
		if (!*row->value && above->length)
			row->as_above |= !strcmp(above->text, record->cell[i].text);
	}
}

static bool is_keys(const struct key_row *row, const struct rb_sheet *sheet)
{
	bool is_named = row->at == (uint32_t)sheet->cell_of[RB_POINT];

	if (is_of_words(row->key->key) && row->number)
		return false;
	if (is_named)
		return *row->value || row->others;
	return row->others == (*row->value ? 0 : 1);
}

static void say_key(struct rb_book_reader *r, const struct rb_record *record,
		    const struct key_row *row)
{
	const struct rb_key_value *above = &r->sheet->key[row->key->key];
	struct rb_place place = rb_at(record->line, (int32_t)row->at, NULL, NULL);

	if (!above->length)
		rb_findings_add(r->findings, RB_CODE_KEY_BELOW_HEADER, place,
				rb_text(row->key->name), rb_nothing());
	else if (!row->as_above)
		rb_findings_add(r->findings, RB_CODE_SAME_KEY_TWICE, place,
				rb_text(row->key->name), rb_line(above->place.line));
}

bool rb_book_is_key(struct rb_book_reader *r, const struct rb_record *record)
{
	struct key_row row = { 0 };

	if (!find_key(&row, r->sheet, record))
		return false;
	look_around(&row, r, record);
	if (!is_keys(&row, r->sheet))
		return false;
	if (!is_of_words(row.key->key))
		say_key(r, record, &row);
	return true;
}
