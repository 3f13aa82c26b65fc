/* SPDX-License-Identifier: MIT */
/* reduced_table.c - places, readings, heights of instrument, elevations, remarks. */
#include "report/reduced_table.h"

#include <string.h>

#include "level/spots.h"
#include "report/section_words.h"
#include "report/shown.h"

enum {
	POINT,
	CHAINAGE,
	BACKSIGHT,
	INSTRUMENT,
	INTERMEDIATE,
	FORESIGHT,
	ELEVATION,
	ADJUSTED,
	BELOW,
	REMARKS,
	COLUMNS
};

static const char *const headings[COLUMNS] = {
	"point", "chainage", "BS", "HI", "IS", "FS", "elevation", "adjusted", "below", "",
};

/* A table on its way: which columns it has, and the row at hand. */
struct maker {
	const struct rb_reduction *r;
	struct rb_table *table;
	struct rb_phrase *phrase;
	bool has[COLUMNS];
	const uint32_t *check_of; /* by shot: its check + 1, or 0; NULL: no checks */
	char number[COLUMNS][RB_LENGTH_TEXT];
	const char *cell[COLUMNS];
};

struct rb_style rb_adjusted_style(struct rb_style style, bool fraction_asked)
{
	if (style.decimals < 9)
		style.decimals++;
	if (!fraction_asked && style.fraction < 64)
		style.fraction *= 2;
	return style;
}

/* -- which columns -- */

static bool any_value(const struct rb_book *book, enum rb_column column)
{
	for (uint32_t row = 0; book->value[column] && row < book->rows; row++)
		if (rb_length_given(rb_book_sight(book, column, row)))
			return true;
	return false;
}

static bool any_adjusted(const struct rb_sections *sections)
{
	for (uint32_t i = 0; i < sections->sections; i++)
		if (sections->section[i].adjusted)
			return true;
	return false;
}

static void choose_columns(struct maker *m)
{
	const struct rb_book *book = rb_reduction_book(m->r);

	for (int i = 0; i < COLUMNS; i++)
		m->has[i] = true;
	m->has[CHAINAGE] = any_value(book, RB_CHAINAGE);
	m->has[INTERMEDIATE] = any_value(book, RB_INTERMEDIATE);
	m->has[FORESIGHT] = any_value(book, RB_FORESIGHT);
	m->has[ADJUSTED] = any_adjusted(rb_reduction_sections(m->r));
	m->has[BELOW] = any_value(book, RB_MEASURE_DOWN);
}

static bool start_table(struct maker *m, struct rb_page *page)
{
	struct rb_table_column column[COLUMNS];
	size_t columns = 0;

	for (int i = 0; i < COLUMNS; i++) {
		enum rb_align align =
			m->r->style.unit == RB_FEET_INCHES ? RB_ON_INCHES : RB_ON_POINT;

		if (!m->has[i])
			continue;
		column[columns++] = (struct rb_table_column){
			.heading = headings[i],
			.align = i == POINT || i == REMARKS ? RB_LEFT
				 : i == CHAINAGE            ? RB_RIGHT
							    : align,
			.room = i == POINT || i == REMARKS    ? RB_SPILLS
				: i == CHAINAGE || i == BELOW ? RB_MOVES
				: i == ADJUSTED               ? RB_MOVES_LAST
							      : RB_KEEPS,
		};
	}
	m->table = rb_page_table(page, NULL, column, columns);
	return m->table != NULL;
}

/* -- rows -- */

static void clear_row(struct maker *m)
{
	memset(m->cell, 0, sizeof m->cell);
	rb_phrase_clear(m->phrase);
}

/* Add the row: the cells of the columns that there are. */
static void add_row(struct maker *m, enum rb_row_kind kind)
{
	const char *cell[COLUMNS];
	size_t cells = 0;

	m->cell[REMARKS] = m->phrase->text;
	for (int i = 0; i < COLUMNS; i++)
		if (m->has[i])
			cell[cells++] = m->cell[i];
	rb_table_add(m->table, kind, cell);
}

/* A reading that is not nothing is not shown as nothing, however few places are asked
 * for. */
static void set(struct maker *m, int column, rb_length value, struct rb_style style)
{
	rb_length_format(m->number[column], value, rb_shown_style(value, style));
	m->cell[column] = m->number[column];
}

static void set_numbers(struct maker *m, uint32_t shot)
{
	const struct rb_reduction *r = m->r;
	const struct rb_shot *s = &rb_reduction_reduced(r)->shot[shot];
	bool side = s->booked == RB_BOOKED_INTERMEDIATE;
	struct rb_style finer = rb_adjusted_style(r->style, r->fraction_asked);

	set(m, BACKSIGHT, rb_reduction_backsight(r, shot), r->style);
	set(m, INSTRUMENT, rb_reduction_instrument(r, shot), r->style);
	set(m, side ? INTERMEDIATE : FORESIGHT,
	    rb_shot_reading(rb_reduction_reduced(r), shot), r->style);
	set(m, ELEVATION, s->elevation, r->style);
	set(m, ADJUSTED, rb_shot_adjusted(r->adjusted, shot), finer);
	set(m, BELOW, rb_shot_below(r->adjusted, shot), r->style);
}

/* -- remarks -- */

static void part(struct rb_phrase *phrase)
{
	rb_phrase_text(phrase, phrase->used ? "; " : "");
}

static void say_known(struct maker *m, uint32_t shot)
{
	rb_length known = rb_reduction_known(m->r, shot);
	rb_length came_out = rb_reduction_reduced(m->r)->shot[shot].elevation;
	char text[RB_LENGTH_TEXT], other[RB_LENGTH_TEXT];

	if (!rb_length_given(known))
		return;
	rb_phrase_text(m->phrase, "known");
	if (known.nm == came_out.nm)
		return;
	rb_phrase_text(m->phrase, " ");
	rb_shown_pair(text, other, known, came_out, m->r->style);
	rb_phrase_text(m->phrase, text);
}

static void say_check(struct maker *m, uint32_t shot)
{
	const struct rb_sections *sections = rb_reduction_sections(m->r);
	const struct rb_check *check;

	if (!m->check_of || !m->check_of[shot])
		return;
	check = &sections->check[m->check_of[shot] - 1];
	part(m->phrase);
	rb_phrase_text(m->phrase, check->difference.nm ? "check: " : "check: agrees");
	if (check->difference.nm)
		rb_phrase_off(m->phrase, check->difference, m->r->style);
	if (check->against == RB_NO_SHOT)
		return;
	rb_phrase_text(m->phrase, check->difference.nm ? " of line " : " with line ");
	rb_phrase_number(
		m->phrase,
		rb_reduction_line(m->r, sections->reduced->shot[check->against].row));
}

static void say_remarks(struct maker *m, const struct rb_place_rows *rows)
{
	const struct rb_book *book = rb_reduction_book(m->r);

	if (rows->rod_on != RB_ON_UNSAID && rows->rod_on != book->key.rod_on) {
		part(m->phrase);
		rb_phrase_text(m->phrase, "on ");
		rb_phrase_text(m->phrase, rb_rod_on_name(rows->rod_on));
	}
	if (*rows->remark) {
		part(m->phrase);
		rb_phrase_words(m->phrase, rows->remark);
	}
	if (*rows->other_remark) {
		part(m->phrase);
		rb_phrase_words(m->phrase, rows->other_remark);
	}
}

static void add_shot(struct maker *m, uint32_t shot)
{
	const struct rb_book *book = rb_reduction_book(m->r);
	const struct rb_shot *s = &rb_reduction_reduced(m->r)->shot[shot];
	struct rb_place_rows rows = rb_reduction_rows(m->r, shot);

	clear_row(m);
	m->cell[POINT] = rb_book_typed(book, s->row);
	if (rb_length_given(rows.chainage)) {
		rb_chainage_format(m->number[CHAINAGE], rows.chainage, m->r->style.unit,
				   rb_chainage_plus(book->chainage_plus, book->unit,
						    m->r->style.unit));
		m->cell[CHAINAGE] = m->number[CHAINAGE];
	}
	set_numbers(m, shot);
	say_known(m, shot);
	say_check(m, shot);
	say_remarks(m, &rows);
	add_row(m, RB_ROW);
}

static void add_sums(struct maker *m, const struct rb_section *section)
{
	clear_row(m);
	m->cell[POINT] = "sums";
	set(m, BACKSIGHT, section->sum_backsight, m->r->style);
	if (!section->no_foresight)
		set(m, FORESIGHT, section->sum_foresight, m->r->style);
	if (rb_reduction_sections(m->r)->sections > 1)
		rb_section_name(m->phrase, m->r, section);
	add_row(m, RB_ROW_SUMS);
}

/* -- the table -- */

/* By shot, the check that it is. */
static bool index_checks(struct maker *m, struct rb_arena *arena)
{
	const struct rb_sections *sections = rb_reduction_sections(m->r);
	uint32_t *check_of;

	if (!sections->checks)
		return true;
	check_of = rb_arena_take_clear(arena, rb_reduction_reduced(m->r)->shots,
				       sizeof *check_of);
	if (!check_of)
		return false;
	for (uint32_t i = 0; i < sections->checks; i++)
		check_of[sections->check[i].shot] = i + 1;
	m->check_of = check_of;
	return true;
}

/* A single section is summed at the end of the table, one of several where it ends. */
static bool ends_here(const struct rb_sections *sections, uint32_t section, uint32_t shot)
{
	uint32_t shots = sections->reduced->shots;

	if (section == sections->sections)
		return false;
	return sections->sections == 1 ? shot + 1 == shots
				       : sections->section[section].end == shot;
}

static void add_rows(struct maker *m)
{
	const struct rb_sections *sections = rb_reduction_sections(m->r);
	uint32_t section = 0, shots = sections->reduced->shots;

	for (uint32_t i = 0; i < shots; i++) {
		add_shot(m, i);
		if (!ends_here(sections, section, i))
			continue;
		while (ends_here(sections, section, i))
			add_sums(m, &sections->section[section++]);
		if (i + 1 < shots)
			rb_table_add(m->table, RB_ROW_RULE, NULL);
	}
}

void rb_reduced_table(struct rb_page *page, struct rb_phrase *phrase,
		      const struct rb_reduction *r)
{
	struct maker m = { .r = r, .phrase = phrase };

	choose_columns(&m);
	if (!index_checks(&m, phrase->arena) || !start_table(&m, page)) {
		page->out_of_memory = true;
		return;
	}
	add_rows(&m);
	page->out_of_memory |= m.table->out_of_memory;
}
