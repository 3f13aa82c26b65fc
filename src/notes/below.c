/* SPDX-License-Identifier: MIT */
/* Rows below the header that repeat it, give units, or begin another book. */
#include "notes/below.h"

#include <string.h>

#include "notes/heading.h"

bool rb_below_begin(struct rb_below *below, struct rb_arena *arena,
		    struct rb_findings *findings, struct rb_sheet *sheet)
{
	const struct rb_record *header = &sheet->header;

	*below =
		(struct rb_below){ .arena = arena, .findings = findings, .sheet = sheet };
	below->bare =
		rb_arena_take(arena, (size_t)header->cells + 1, sizeof *below->bare);
	if (!below->bare)
		return rb_findings_no_memory(findings);
	for (uint32_t i = 0; i < header->cells; i++)
		if (!header->cell[i].length)
			below->bare[below->bares++] = i;
	for (int c = 0; c < RB_SHEET_COLUMNS; c++)
		if (sheet->form->sights >> c & 1 && sheet->cell_of[c] >= 0)
			below->sight[below->sights++] = (uint32_t)sheet->cell_of[c];
	return true;
}

/* -- the header once more, as on the second page of a book -- */

static bool same_cells(struct rb_cell a, struct rb_cell b)
{
	char one[RB_FOLDED_WORD], other[RB_FOLDED_WORD];

	if (a.length >= RB_FOLDED_WORD || b.length >= RB_FOLDED_WORD)
		return a.length == b.length && !memcmp(a.text, b.text, a.length);
	rb_heading_fold(one, a.text, a.length, "");
	rb_heading_fold(other, b.text, b.length, "");
	return !strcmp(one, other);
}

/* Do two cells part before anything in them that folding would change, but for case? */
static bool part_soon(struct rb_cell a, struct rb_cell b)
{
	size_t both = a.length < b.length ? a.length : b.length;

	for (size_t i = 0; i < both; i++) {
		char x = a.text[i], y = b.text[i];

		if (x <= ' ' || x > '~' || y <= ' ' || y > '~')
			return false;
		if ((x ^ y) & ~0x20)
			return true;
	}
	return false;
}

/* Nearly always the first cell settles it. */
static bool is_header_again(const struct rb_record *header,
			    const struct rb_record *record)
{
	const struct rb_cell none = { "", 0 };
	uint32_t cells = record->cells > header->cells ? record->cells : header->cells;

	if (header->cells && record->cells && part_soon(header->cell[0], record->cell[0]))
		return false;
	for (uint32_t i = 0; i < cells; i++) {
		struct rb_cell a = i < header->cells ? header->cell[i] : none;
		struct rb_cell b = i < record->cells ? record->cell[i] : none;

		if (!same_cells(a, b))
			return false;
	}
	return true;
}

/* -- another header, as where two books were put into one file -- */

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* A word under a column of sights: nearly no row has one. */
static bool has_word_for_sight(const struct rb_below *below,
			       const struct rb_record *record)
{
	for (uint32_t i = 0; i < below->sights; i++)
		if (below->sight[i] < record->cells &&
		    is_letter(record->cell[below->sight[i]].text[0]))
			return true;
	return false;
}

static bool is_other_header(const struct rb_below *below, const struct rb_record *record)
{
	int32_t cell_of[RB_SHEET_COLUMNS];

	return has_word_for_sight(below, record) &&
	       rb_headings_map(below->sheet->form, record, cell_of) > 1 &&
	       below->sheet->form->is_header(cell_of);
}

/* -- a row of units right below the header -- */

static bool is_row_of_units(const struct rb_below *below, const struct rb_record *record)
{
	uint32_t units = 0;
	enum rb_unit unit;

	if (below->begun || !below->sheet->form->sights)
		return false;
	for (uint32_t i = 0; i < record->cells; i++) {
		if (rb_cell_is_empty(record->cell[i]))
			continue;
		if (!rb_is_unit_alone(record->cell[i], &unit))
			return false;
		units++;
	}
	return units > 0;
}

static void take_units(struct rb_below *below, const struct rb_record *record)
{
	struct rb_place place = rb_at(record->line, RB_WHOLE_ROW, NULL, NULL);

	if (rb_record_keep(below->arena, &below->sheet->units, record))
		rb_findings_add(below->findings, RB_CODE_UNITS_ROW, place, rb_nothing(),
				rb_nothing());
	else
		rb_findings_no_memory(below->findings);
}

/* -- cells that no column holds -- */

static void note_stray(struct rb_below *below, const struct rb_record *record, uint32_t i)
{
	const struct rb_cell *cell = &record->cell[i];

	if (rb_cell_is_empty(*cell) || below->strays++)
		return;
	below->stray = rb_at(record->line, (int32_t)i, NULL, NULL);
	below->stray_text = rb_findings_text(below->findings, cell->text, cell->length);
}

static void note_strays(struct rb_below *below, const struct rb_record *record)
{
	for (uint32_t i = 0; i < below->bares && below->bare[i] < record->cells; i++)
		note_stray(below, record, below->bare[i]);
	for (uint32_t i = below->sheet->header.cells; i < record->cells; i++)
		note_stray(below, record, i);
}

/* -- all of them -- */

bool rb_below_passes(struct rb_below *below, const struct rb_record *record)
{
	if (below->other)
		return true;
	if (is_header_again(&below->sheet->header, record)) {
		if (!below->agains++)
			below->again = record->line;
		return true;
	}
	if (is_row_of_units(below, record)) {
		take_units(below, record);
		return true;
	}
	below->begun = true;
	below->other = is_other_header(below, record);
	if (below->other)
		rb_findings_add(below->findings, RB_CODE_OTHER_HEADER,
				rb_at(record->line, RB_WHOLE_ROW, NULL, NULL),
				rb_line(below->sheet->header.line), rb_nothing());
	else
		note_strays(below, record);
	return below->other;
}

void rb_below_say(const struct rb_below *below)
{
	if (below->agains)
		rb_findings_add(below->findings, RB_CODE_HEADER_AGAIN,
				rb_at(below->again, RB_WHOLE_ROW, NULL, NULL),
				below->agains > 1 ? rb_number(below->agains - 1)
						  : rb_nothing(),
				rb_nothing());
	if (below->strays)
		rb_findings_add(below->findings, RB_CODE_NO_HEADING, below->stray,
				rb_text(below->stray_text),
				below->strays > 1 ? rb_number(below->strays - 1)
						  : rb_nothing());
}
