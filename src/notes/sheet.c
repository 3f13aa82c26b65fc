/* SPDX-License-Identifier: MIT */
/* Keys, header and rows of a file, by the tables of its form. */
#include "notes/sheet.h"

#include <string.h>

#include "measure/reading.h"
#include "notes/names.h"

struct state {
	struct rb_arena *arena;
	struct rb_findings *findings;
	const struct rb_form *form;
	const struct rb_sheet_reader *reader;
	struct rb_sheet *sheet;
	uint32_t nearly_header; /* the first line with any heading on it */
};

#define WORD 48

/* The cell in small letters, blanks and dashes of all kinds made plain, and with the
 * `dropped` characters left out. */
static size_t fold(char word[static WORD], const char *text, size_t length,
		   const char *dropped)
{
	char plain[WORD];
	size_t used = 0;

	if (length >= WORD)
		return 0;
	length = rb_name_fold(plain, text, length);
	for (size_t i = 0; i < length; i++)
		if (!strchr(dropped, plain[i]))
			word[used++] = plain[i];
	word[used] = '\0';
	return used;
}

#define HEADING_DROPS ".()/_-+ "

static bool same_heading(const char *name, const char *word)
{
	char plain[WORD];

	fold(plain, name, strlen(name), HEADING_DROPS);
	return !strcmp(plain, word);
}

/* The column that a heading names, or -1. */
static int column_of(const struct rb_form *form, const struct rb_cell *cell)
{
	char word[WORD];

	if (!fold(word, cell->text, cell->length, ""))
		return -1;
	for (size_t i = 0; i < form->exacts; i++)
		if (!strcmp(form->exact[i].name, word))
			return form->exact[i].column;
	if (!fold(word, cell->text, cell->length, HEADING_DROPS))
		return -1;
	for (size_t i = 0; i < form->headings; i++)
		if (same_heading(form->heading[i].name, word))
			return form->heading[i].column;
	return -1;
}

/* Which cell holds which column; the first of two of one meaning. */
static int map_columns(const struct rb_form *form, const struct rb_record *record,
		       int32_t cell_of[RB_SHEET_COLUMNS])
{
	int found = 0;

	for (int i = 0; i < RB_SHEET_COLUMNS; i++)
		cell_of[i] = -1;
	for (uint32_t i = 0; i < record->cells; i++) {
		int column = column_of(form, &record->cell[i]);

		if (column < 0 || cell_of[column] >= 0)
			continue;
		cell_of[column] = (int32_t)i;
		found++;
	}
	if (form->settle)
		form->settle(cell_of);
	return found;
}

static bool is_header(void *self, const struct rb_record *record)
{
	int32_t cell_of[RB_SHEET_COLUMNS];
	const struct rb_form *form = self;

	return map_columns(form, record, cell_of) && form->is_header(cell_of);
}

static const char *nearest_heading(const struct rb_form *form, const struct rb_cell *cell)
{
	char word[WORD], plain[WORD];
	size_t length = fold(word, cell->text, cell->length, HEADING_DROPS);

	for (size_t i = 0; length > 2 && i < form->headings; i++) {
		size_t other = fold(plain, form->heading[i].name,
				    strlen(form->heading[i].name), HEADING_DROPS);
		int most = other > 4 ? 2 : 1;

		if (other > 2 &&
		    rb_letters_apart(word, length, plain, other, most) <= most)
			return form->column_name[form->heading[i].column];
	}
	return NULL;
}

static struct rb_argument text_of(struct state *s, const struct rb_cell *cell)
{
	return rb_text(rb_findings_text(s->findings, cell->text, cell->length));
}

/* A column that nothing is known of, or one more of a meaning that is there already. */
static void say_odd_heading(struct state *s, const struct rb_record *record, uint32_t i)
{
	const struct rb_cell *cell = &record->cell[i];
	int column = column_of(s->form, cell);
	struct rb_place place = rb_at(record->line, (int32_t)i, NULL, NULL);
	const char *nearest;

	for (int c = 0; c < RB_SHEET_COLUMNS; c++)
		if (s->sheet->cell_of[c] == (int32_t)i)
			return;
	if (!cell->length || (column >= 0 && column == s->form->passed_over))
		return;
	if (column >= 0) {
		rb_findings_add(s->findings, RB_CODE_SAME_COLUMN_TWICE, place,
				rb_text(s->form->column_name[column]), text_of(s, cell));
		return;
	}
	nearest = nearest_heading(s->form, cell);
	rb_findings_add(s->findings, RB_CODE_UNKNOWN_COLUMN, place, text_of(s, cell),
			nearest ? rb_text(nearest) : rb_nothing());
}

static bool take_header(struct state *s, const struct rb_record *record)
{
	struct rb_sheet *sheet = s->sheet;

	sheet->header_line = record->line;
	map_columns(s->form, record, sheet->cell_of);
	for (uint32_t i = 0; i < record->cells; i++)
		say_odd_heading(s, record, i);
	return s->reader->on_header(s->reader->self, sheet);
}

/* The key that a cell names, and how much of the cell that is (a colon included). */
static const struct rb_key *key_of(const struct rb_form *form, const struct rb_cell *cell,
				   size_t *taken)
{
	const char *colon = memchr(cell->text, ':', cell->length);
	size_t length = colon ? (size_t)(colon - cell->text) : cell->length;
	char word[WORD];

	*taken = colon ? length + 1 : length;
	while (length && cell->text[length - 1] == ' ')
		length--;
	if (!fold(word, cell->text, length, ""))
		return NULL;
	for (size_t i = 0; i < form->keys; i++)
		if (!strcmp(form->key[i].name, word))
			return &form->key[i];
	return NULL;
}

static void say_nearly_key(struct state *s, const struct rb_record *record, uint32_t i)
{
	const struct rb_cell *cell = &record->cell[i];
	const char *colon = memchr(cell->text, ':', cell->length);
	char word[WORD];
	size_t length = fold(word, cell->text,
			     colon ? (size_t)(colon - cell->text) : cell->length, "");

	for (size_t k = 0; length && k < s->form->keys; k++) {
		const char *name = s->form->key[k].name;
		int most = strlen(name) > 4 ? 2 : 1;

		if (rb_letters_apart(word, length, name, strlen(name), most) > most)
			continue;
		rb_findings_add(s->findings, RB_CODE_NEARLY_A_KEY,
				rb_at(record->line, (int32_t)i, NULL, NULL),
				text_of(s, cell), rb_text(name));
		return;
	}
}

static bool take_value(struct state *s, const struct rb_record *record, uint32_t i,
		       const struct rb_key *key, const char *text, size_t length)
{
	struct rb_key_value *value = &s->sheet->key[key->key];
	struct rb_place place = rb_at(record->line, (int32_t)i, NULL, key->name);

	while (length && *text == ' ')
		text++, length--;
	if (!length)
		return true;
	if (value->length) {
		rb_findings_add(s->findings, RB_CODE_SAME_KEY_TWICE, place,
				rb_text(key->name), rb_line(value->place.line));
		return true;
	}
	value->text = rb_arena_text(s->arena, text, length);
	value->length = length;
	value->place = place;
	return value->text || rb_findings_no_memory(s->findings);
}

/* A row above the header: keys with their values, and words that are nobody's business.
 */
static bool take_keys(struct state *s, const struct rb_record *record)
{
	for (uint32_t i = 0; i < record->cells; i++) {
		const struct rb_cell *cell = &record->cell[i];
		size_t taken, unused;
		const struct rb_key *key = key_of(s->form, cell, &taken);
		uint32_t next = i + 1;

		if (!key) {
			say_nearly_key(s, record, i);
			continue;
		}
		if (taken < cell->length) {
			if (!take_value(s, record, i, key, cell->text + taken,
					cell->length - taken))
				return false;
			continue;
		}
		while (next < record->cells && !record->cell[next].length)
			next++;
		if (next == record->cells ||
		    key_of(s->form, &record->cell[next], &unused))
			continue;
		if (!take_value(s, record, next, key, record->cell[next].text,
				record->cell[next].length))
			return false;
		i = next;
	}
	return true;
}

/* Nothing at all, or a first cell that begins with # and nothing else. */
static bool says_nothing(const struct rb_record *record)
{
	for (uint32_t i = 1; i < record->cells; i++)
		if (record->cell[i].length)
			return false;
	return !record->cells || !record->cell[0].length ||
	       record->cell[0].text[0] == '#';
}

static bool on_record(void *self, const struct rb_record *record)
{
	struct state *s = self;
	int32_t cell_of[RB_SHEET_COLUMNS];
	int found;

	if (says_nothing(record))
		return true;
	if (s->sheet->header_line)
		return s->reader->on_row(s->reader->self, record);
	found = map_columns(s->form, record, cell_of);
	if (found && s->form->is_header(cell_of))
		return take_header(s, record);
	if (found > 1 && !s->nearly_header)
		s->nearly_header = record->line;
	return take_keys(s, record);
}

static void say_no_header(struct state *s)
{
	rb_findings_add(s->findings, RB_CODE_NO_HEADER,
			rb_at(s->nearly_header, RB_WHOLE_ROW, NULL, NULL),
			rb_text(s->form->header_wanted), rb_nothing());
}

struct rb_sheet *rb_sheet_read(struct rb_arena *arena, struct rb_findings *findings,
			       const struct rb_form *form, const char *bytes,
			       size_t length, const struct rb_sheet_reader *reader)
{
	struct rb_source *source = rb_source_open(arena, findings, bytes, length);
	struct state s = { arena, findings, form, reader, NULL, 0 };

	if (!source)
		return NULL;
	s.sheet = rb_arena_take_clear(arena, 1, sizeof *s.sheet);
	if (!s.sheet) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	s.sheet->form = form;
	s.sheet->source = source;
	if (!rb_source_separate(arena, source, is_header, (void *)form)) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	if (!rb_rows_read(arena, findings, source, on_record, &s))
		return NULL;
	if (s.sheet->header_line)
		return s.sheet;
	say_no_header(&s);
	return NULL;
}
