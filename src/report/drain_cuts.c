/* SPDX-License-Identifier: MIT */
/* drain_cuts.c - the cut sheet: from the ground, and from the hubs. */
#include <stdio.h>
#include <string.h>

#include "report/drain_parts.h"
#include "report/elevations_words.h"
#include "report/legs_table.h"
#include "report/section_words.h"

#define CELLS    10
#define CHAINAGE "chain-\nage"

/* A row on its way: texts of its own and pointers to them. */
struct row {
	char text[CELLS][RB_LENGTH_TEXT];
	const char *cell[CELLS];
	size_t cells;
};

static void put_text(struct row *row, const char *text)
{
	row->cell[row->cells++] = text;
}

static void put_number(struct row *row, rb_length a, struct rb_style style)
{
	rb_drain_cell(row->text[row->cells], a, style);
	put_text(row, row->text[row->cells]);
}

/* Elevations in feet and inches are as fine as the cuts beside them. */
static struct rb_style elevations(const struct rb_drain_maker *m)
{
	return m->r->style.unit == RB_FEET_INCHES ? m->inches : m->r->style;
}

/* A cut in both notations; a fill says so. */
static void put_cut(const struct rb_drain_maker *m, struct row *row, rb_length cut)
{
	bool fill = rb_length_given(cut) && cut.nm < 0;
	rb_length size = fill ? rb_length_negate(cut) : cut;
	char text[RB_LENGTH_TEXT];

	rb_drain_cell(text, size, m->decimal);
	snprintf(row->text[row->cells], sizeof row->text[0], "%s%.40s",
		 fill ? "fill " : "", text);
	put_text(row, row->text[row->cells]);
	put_number(row, size, m->inches);
}

static void put_place(const struct rb_drain_maker *m, struct row *row, uint32_t i,
		      bool names)
{
	const struct rb_station *station = &m->r->inverts->station[i];

	put_text(row, station->name);
	if (!names)
		return;
	rb_drain_chainage(m, row->text[row->cells], station->chainage);
	put_text(row, row->text[row->cells]);
}

static size_t put_columns(struct rb_table_column *to, const struct rb_table_column *from,
			  size_t count, bool names)
{
	size_t columns = 0;

	for (size_t i = 0; i < count; i++)
		if (names || strcmp(from[i].heading, CHAINAGE) != 0)
			to[columns++] = from[i];
	return columns;
}

/* -- from the ground -- */

static struct rb_table *start_ground(struct rb_drain_maker *m, bool names)
{
	const struct rb_table_column all[] = {
		{ "point", RB_LEFT, RB_SPILLS },
		{ CHAINAGE, RB_RIGHT, RB_KEEPS },
		{ "ground", rb_drain_align(m), RB_KEEPS },
		{ "invert", rb_drain_align(m), RB_KEEPS },
		{ "cut to\ninvert", RB_ON_POINT, RB_KEEPS },
		{ "ft-in", RB_ON_INCHES, RB_KEEPS },
		{ "cut to\ntrench", RB_ON_POINT, RB_KEEPS },
		{ "ft-in", RB_ON_INCHES, RB_KEEPS },
		{ "cover", RB_ON_POINT, RB_MOVES },
	};
	struct rb_table_column column[CELLS];
	size_t columns = put_columns(column, all, sizeof all / sizeof *all, names);

	return rb_drain_table(
		m, rb_drain_caption(m, "Cut sheet, from the ground", m->r->sheet->ground),
		column, columns);
}

/* Interpolated ground is marked with a tilde. */
static void put_ground(const struct rb_drain_maker *m, struct row *row,
		       const struct rb_cut *cut)
{
	char *text = row->text[row->cells];

	rb_drain_cell(text, cut->ground, elevations(m));
	if (cut->how == RB_GROUND_BETWEEN) {
		memmove(text + 1, text, strlen(text) + 1);
		*text = '~';
	}
	put_text(row, text);
}

static void note_cover(struct rb_drain_maker *m, struct rb_table *table,
		       const struct rb_cut *cut)
{
	bool in = rb_length_given(cut->cover_in);
	rb_length least = in ? cut->cover_in : cut->cover;

	if (!cut->is_short)
		return;
	rb_phrase_text(&m->phrase,
		       least.nm < 0 ? "NOT COVERED, it stands out by " : "COVER SHORT, ");
	rb_drain_say_both(m, least);
	rb_phrase_text(&m->phrase, in ? " over the pipe that comes in" : "");
	rb_phrase_text(&m->phrase, ", and the plan asks for ");
	rb_drain_say_both(m, m->r->plan->cover);
	rb_table_note(table, m->phrase.text);
	rb_phrase_clear(&m->phrase);
}

static void add_ground(struct rb_drain_maker *m, struct rb_table *table, bool names)
{
	for (uint32_t i = 0; i < m->r->inverts->stations; i++) {
		const struct rb_cut *cut = &m->r->sheet->cut[i];
		struct row row = { .cells = 0 };

		put_place(m, &row, i, names);
		put_ground(m, &row, cut);
		put_number(&row, cut->invert, elevations(m));
		put_cut(m, &row, cut->cut);
		put_cut(m, &row, cut->cut_to_trench);
		put_number(&row, cut->cover, m->decimal);
		rb_table_add(table, RB_ROW, row.cell);
		note_cover(m, table, cut);
	}
}

static void say_extreme(struct rb_drain_maker *m, const char *words,
			const struct rb_extreme *extreme, const char *at)
{
	if (!rb_length_given(extreme->value))
		return;
	rb_phrase_text(&m->phrase, words);
	if (extreme->value.nm < 0)
		rb_phrase_text(&m->phrase, "minus ");
	rb_drain_say_both(m, extreme->value);
	rb_phrase_text(&m->phrase, at);
	rb_phrase_words(&m->phrase, extreme->where);
}

static void add_extremes(struct rb_drain_maker *m)
{
	const struct rb_cut_sheet *sheet = m->r->sheet;

	rb_elevations_words(&m->phrase, sheet->ground);
	say_extreme(m, sheet->at_least ? " The trench is at least " : " Deepest trench ",
		    &sheet->deepest, sheet->at_least ? " deep at " : " at ");
	say_extreme(m,
		    rb_length_given(sheet->deepest.value) ? "; least cover "
							  : " Least cover ",
		    &sheet->least_cover, " at ");
	if (rb_length_given(sheet->deepest.value) ||
	    rb_length_given(sheet->least_cover.value))
		rb_phrase_text(&m->phrase, ".");
	rb_phrase_text(&m->phrase, " ~ is ground between two shots.");
	rb_drain_add(m, RB_PARAGRAPH);
}

/* Where the plan asks for a cover and one is known, the least decides. */
void rb_drain_cover_verdict(struct rb_drain_maker *m)
{
	const struct rb_extreme *least = &m->r->sheet->least_cover;
	rb_length asked = m->r->plan->cover;
	bool is_short;

	if (!rb_length_given(asked) || !rb_length_given(least->value))
		return;
	is_short = rb_exact_compare(least->exact, rb_exact_of(asked)) < 0;
	rb_phrase_text(&m->phrase, is_short ? "COVER SHORT: " : "COVERED: ");
	rb_phrase_text(&m->phrase, least->value.nm < 0 ? "minus " : "");
	rb_drain_say_both(m, least->value);
	rb_phrase_text(&m->phrase, " at ");
	rb_phrase_words(&m->phrase, least->where);
	rb_phrase_text(&m->phrase, " at the least, and the plan asks for ");
	rb_drain_say_both(m, asked);
	rb_phrase_text(&m->phrase, ".");
	rb_drain_add(m, RB_VERDICT);
}

/* -- from the hubs -- */

static bool any_hub(const struct rb_drain_maker *m)
{
	for (uint32_t i = 0; i < m->r->inverts->stations; i++)
		if (rb_length_given(m->r->sheet->cut[i].hub))
			return true;
	return false;
}

/* Elevations in feet and inches take the room of the board's decimals. */
static bool in_decimals(const struct rb_drain_maker *m)
{
	return m->r->style.unit != RB_FEET_INCHES;
}

static struct rb_table *start_hubs(struct rb_drain_maker *m)
{
	const struct rb_table_column column[] = {
		{ "point", RB_LEFT, RB_SPILLS },
		{ "hub", rb_drain_align(m), RB_MOVES },
		{ "offset", RB_ON_POINT, RB_KEEPS },
		{ "side", RB_LEFT, RB_KEEPS },
		{ "cut to\ninvert", RB_ON_POINT, RB_KEEPS },
		{ "ft-in", RB_ON_INCHES, RB_KEEPS },
		{ "cut to\ntrench", RB_ON_POINT, RB_KEEPS },
		{ "ft-in", RB_ON_INCHES, RB_KEEPS },
		{ "board", in_decimals(m) ? RB_ON_POINT : RB_ON_INCHES, RB_KEEPS },
		{ "ft-in", RB_ON_INCHES, RB_KEEPS },
	};
	size_t columns = sizeof column / sizeof *column - !in_decimals(m);

	return rb_drain_table(
		m, rb_drain_caption(m, "Cut sheet, from the hubs", m->r->sheet->ground),
		column, columns);
}

static void add_hubs(struct rb_drain_maker *m, struct rb_table *table)
{
	struct rb_style runs = rb_runs_style(m->r->style.unit);

	for (uint32_t i = 0; i < m->r->inverts->stations; i++) {
		const struct rb_cut *cut = &m->r->sheet->cut[i];
		const struct rb_plan_row *plan = rb_drain_row(m->r, i);
		struct row row = { .cells = 0 };

		if (!rb_length_given(cut->hub))
			continue;
		put_place(m, &row, i, false);
		put_number(&row, cut->hub, elevations(m));
		put_number(&row, plan ? plan->offset : rb_length_none(), runs);
		put_text(&row, plan && *plan->side ? plan->side : "-");
		put_cut(m, &row, cut->hub_cut);
		put_cut(m, &row, cut->hub_cut_to_trench);
		if (in_decimals(m))
			put_number(&row, cut->board, m->decimal);
		put_number(&row, cut->board, m->inches);
		rb_table_add(table, RB_ROW, row.cell);
	}
}

/* Over a step the string of the leg above stands higher than its board. */
static void say_steps(struct rb_drain_maker *m)
{
	const struct rb_inverts *inverts = m->r->inverts;

	for (uint32_t i = 1; i < inverts->stations; i++) {
		rb_length step = rb_station_step(&inverts->station[i]);

		if (!step.nm)
			continue;
		rb_phrase_text(&m->phrase, " At ");
		rb_phrase_words(&m->phrase, inverts->station[i].name);
		rb_phrase_text(&m->phrase, " the pipe comes in ");
		rb_drain_say_both(m, step);
		rb_phrase_text(&m->phrase, " higher: so much above its board goes the "
					   "string of the leg above.");
	}
}

/* The string, and the two marks on the gauge rod under it. */
static void add_boards(struct rb_drain_maker *m)
{
	rb_length board = m->r->sheet->board;
	rb_length trench = rb_surface_above(m->r->plan, RB_TRENCH_BOTTOM);

	if (!rb_length_given(board))
		return;
	rb_phrase_text(&m->phrase, "Boards stand ");
	rb_drain_say_both(m, board);
	rb_phrase_text(&m->phrase,
		       " above the invert all along, clear of the ground and the hubs at "
		       "every station: from the string down it is that much to the "
		       "invert");
	if (rb_length_given(trench)) {
		rb_phrase_text(&m->phrase, ", ");
		rb_drain_say_both(m, rb_length_sub(board, trench));
		rb_phrase_text(&m->phrase, " to the trench bottom");
	}
	rb_phrase_text(&m->phrase, ".");
	say_steps(m);
	if (any_hub(m))
		rb_phrase_text(
			&m->phrase,
			" The column board is its height above the hub. A cut from "
			"a hub beside the line is not the depth of the trench.");
	rb_drain_add(m, RB_PARAGRAPH);
}

void rb_drain_cuts_part(struct rb_drain_maker *m)
{
	bool names = rb_drain_names(m);
	struct rb_table *table;

	if (!m->r->sheet->ground)
		return;
	table = start_ground(m, names);
	if (!table)
		return;
	table->own_sheet = true;
	add_ground(m, table, names);
	m->page->out_of_memory |= table->out_of_memory;
	add_extremes(m);
	if (any_hub(m)) {
		table = start_hubs(m);
		if (!table)
			return;
		table->own_sheet = true;
		add_hubs(m, table);
		m->page->out_of_memory |= table->out_of_memory;
	}
	add_boards(m);
}
