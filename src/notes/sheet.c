/* SPDX-License-Identifier: MIT */
/* Keys, header and rows of a file, by the tables of its form. */
#include "notes/sheet.h"

#include <string.h>

#include "notes/apart.h"
#include "notes/below.h"
#include "notes/heading.h"

struct state {
	struct rb_arena *arena;
	struct rb_findings *findings;
	const struct rb_form *form;
	const struct rb_sheet_reader *reader;
	struct rb_sheet *sheet;
	struct rb_record
		nearest; /* the row most like a header, as long as there is none */
	int nearness;    /* and how much it is */
	struct rb_below below;
};

static bool is_header(void *self, const struct rb_record *record)
{
	int32_t cell_of[RB_SHEET_COLUMNS];
	const struct rb_form *form = self;

	return rb_headings_map(form, record, cell_of) && form->is_header(cell_of);
}

static struct rb_argument text_of(struct state *s, const struct rb_cell *cell)
{
	return rb_text(rb_findings_text(s->findings, cell->text, cell->length));
}

/* A column that nothing is known of, or one more of a meaning that is there already. */
static void say_odd_heading(struct state *s, const struct rb_record *record, uint32_t i)
{
	const struct rb_cell *cell = &record->cell[i];
	int column = rb_heading_column(s->form, *cell);
	struct rb_place place = rb_at(record->line, (int32_t)i, NULL, NULL);
	int nearest;
	bool sight;

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
	nearest = rb_heading_nearest(s->form, *cell);
	sight = nearest >= 0 && s->form->sights >> nearest & 1;
	rb_findings_add(
		s->findings, sight ? RB_CODE_UNREAD_SIGHTS : RB_CODE_UNKNOWN_COLUMN,
		place, text_of(s, cell),
		nearest < 0 ? rb_nothing() : rb_text(s->form->column_name[nearest]));
}

static bool take_header(struct state *s, const struct rb_record *record)
{
	struct rb_sheet *sheet = s->sheet;

	if (!rb_record_keep(s->arena, &sheet->header, record))
		return rb_findings_no_memory(s->findings);
	sheet->header_line = record->line;
	rb_headings_map(s->form, record, sheet->cell_of);
	for (uint32_t i = 0; i < record->cells; i++)
		say_odd_heading(s, record, i);
	if (!rb_below_begin(&s->below, s->arena, s->findings, sheet))
		return false;
	return s->reader->on_header(s->reader->self, sheet);
}

/* The key that a cell names, and how much of the cell that is (a colon included). */
static const struct rb_key *key_of(const struct rb_form *form, const struct rb_cell *cell,
				   size_t *taken)
{
	const char *colon = memchr(cell->text, ':', cell->length);
	size_t length = colon ? (size_t)(colon - cell->text) : cell->length;
	char word[RB_FOLDED_WORD];

	*taken = colon ? length + 1 : length;
	while (length && cell->text[length - 1] == ' ')
		length--;
	if (!rb_heading_fold(word, cell->text, length, ""))
		return NULL;
	for (size_t i = 0; i < form->keys; i++)
		if (!strcmp(form->key[i].name, word))
			return &form->key[i];
	return NULL;
}

const struct rb_key *rb_sheet_key(const struct rb_form *form, struct rb_cell cell)
{
	size_t taken;

	return key_of(form, &cell, &taken);
}

/* A word like a key, alone or before a colon; or the key itself, with its value behind it
 * as no key has it: unit=m, Unit (m). */
static void say_nearly_key(struct state *s, const struct rb_record *record, uint32_t i)
{
	const struct rb_cell *cell = &record->cell[i];
	char word[RB_FOLDED_WORD];
	size_t length =
		rb_heading_fold(word, cell->text, strcspn(cell->text, ":=(["), "");

	if (rb_heading_column(s->form, *cell) >= 0)
		return;
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

	while (*text == ' ') /* no cell ends in one */
		text++, length--;
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

/* A value that begins in cell i, with the unit that stands in a cell of its own behind:
 * that is told, and the two are read as one, so that nothing is said of the half. */
static bool take_whole_value(struct state *s, const struct rb_record *record, uint32_t i,
			     const struct rb_key *key, struct rb_cell value)
{
	struct rb_apart apart;

	if (!rb_apart_find(s->form, key, value, record, i + 1, &apart))
		return take_value(s, record, i, key, value.text, value.length);
	rb_findings_add4(
		s->findings, RB_CODE_UNIT_APART,
		rb_at(record->line, (int32_t)apart.cell, NULL, key->name),
		(struct rb_argument[RB_ARGUMENTS]){
			text_of(s, &record->cell[apart.cell]), rb_text(key->name),
			*apart.whole ? rb_text(rb_findings_text(s->findings, apart.whole,
								strlen(apart.whole)))
				     : rb_nothing() });
	if (*apart.whole)
		value = (struct rb_cell){ apart.whole, strlen(apart.whole) };
	return take_value(s, record, i, key, value.text, value.length);
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
			if (!take_whole_value(s, record, i, key,
					      (struct rb_cell){ cell->text + taken,
								cell->length - taken }))
				return false;
			continue;
		}
		while (next < record->cells && !record->cell[next].length)
			next++;
		if (next == record->cells ||
		    key_of(s->form, &record->cell[next], &unused))
			continue;
		if (!take_whole_value(s, record, next, key, record->cell[next]))
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

/* -- no header at all -- */

/* How much a row is like a header: 2 for a heading, 1 for what looks like one. */
static int nearness_of(struct state *s, const struct rb_record *record)
{
	int nearness = 0;
	size_t taken;
	uint32_t i = 0;

	while (!record->cell[i].length) /* one of them says something */
		i++;
	if (key_of(s->form, &record->cell[i], &taken))
		return 0;
	for (; i < record->cells; i++)
		if (rb_heading_column(s->form, record->cell[i]) >= 0)
			nearness += 2;
		else if (rb_heading_nearest(s->form, record->cell[i]) >= 0)
			nearness++;
	return nearness;
}

static bool note_nearest(struct state *s, const struct rb_record *record)
{
	int nearness = nearness_of(s, record);

	if (nearness < 2 || nearness <= s->nearness)
		return true;
	s->nearness = nearness;
	return rb_record_keep(s->arena, &s->nearest, record) ||
	       rb_findings_no_memory(s->findings);
}

static bool on_record(void *self, const struct rb_record *record)
{
	struct state *s = self;
	int32_t cell_of[RB_SHEET_COLUMNS];
	int found;

	if (says_nothing(record))
		return true;
	if (s->sheet->header_line)
		return rb_below_passes(&s->below, record) ||
		       s->reader->on_row(s->reader->self, record);
	found = rb_headings_map(s->form, record, cell_of);
	if (found && s->form->is_header(cell_of))
		return take_header(s, record);
	return note_nearest(s, record) && take_keys(s, record);
}

static void say_no_header(struct state *s)
{
	const char *such_as = s->form->header_such_as;
	const struct rb_argument arguments[RB_ARGUMENTS] = {
		rb_text(s->form->header_wanted),
		s->nearness ? rb_line(s->nearest.line) : rb_nothing(),
		such_as ? rb_text(such_as) : rb_nothing(),
	};

	if (s->form->say_headless && s->form->say_headless(s->findings, &s->nearest))
		return;
	rb_findings_add4(s->findings, RB_CODE_NO_HEADER,
			 rb_at(s->nearest.line, RB_WHOLE_ROW, NULL, NULL), arguments);
	for (uint32_t i = 0; i < s->nearest.cells; i++)
		if (rb_heading_column(s->form, s->nearest.cell[i]) < 0 &&
		    rb_heading_nearest(s->form, s->nearest.cell[i]) >= 0)
			say_odd_heading(s, &s->nearest, i);
}

struct rb_sheet *rb_sheet_read(struct rb_arena *arena, struct rb_findings *findings,
			       const struct rb_form *form, const char *bytes,
			       size_t length, const struct rb_sheet_reader *reader)
{
	struct rb_source *source = rb_source_open(arena, findings, bytes, length);
	struct state s = {
		.arena = arena, .findings = findings, .form = form, .reader = reader
	};

	if (!source)
		return NULL;
	s.sheet = rb_arena_take_clear(arena, 1, sizeof *s.sheet);
	if (!s.sheet) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	s.sheet->form = form;
	for (int i = 0; i < RB_SHEET_COLUMNS; i++)
		s.sheet->cell_of[i] = -1;
	s.sheet->source = source;
	if (!rb_source_separate(arena, source, is_header, (void *)form)) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	if (!rb_rows_read(arena, findings, source, on_record, &s))
		return NULL;
	if (s.sheet->header_line) {
		rb_below_say(&s.below);
		return s.sheet;
	}
	say_no_header(&s);
	return NULL;
}
