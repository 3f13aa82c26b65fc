/* SPDX-License-Identifier: MIT */
/* plan.c - the columns and rows of a drain plan. */
#include "rodbook/plan.h"

#include <string.h>

#include "drain/cells.h"
#include "drain/plan_check.h"
#include "drain/plan_keys.h"
#include "level/places.h"
#include "notes/heading.h"
#include "notes/sixtyfourths.h"

/* clang-format off */
static const struct rb_heading headings[] = {
	{ "point",            RB_PLAN_POINT },
	{ "pt",               RB_PLAN_POINT },
	{ "name",             RB_PLAN_POINT },
	{ "station",          RB_PLAN_STATION },
	{ "sta",              RB_PLAN_STATION },
	{ "stn",              RB_PLAN_STATION },
	{ "chainage",         RB_PLAN_CHAINAGE },
	{ "ch",               RB_PLAN_CHAINAGE },
	{ "distance",         RB_PLAN_CHAINAGE },
	{ "run",              RB_PLAN_CHAINAGE },
	{ "invert",           RB_PLAN_INVERT },
	{ "invert out",       RB_PLAN_INVERT },
	{ "flow line",        RB_PLAN_INVERT },
	{ "invert in",        RB_PLAN_INVERT_IN },
	{ "slope",            RB_PLAN_SLOPE },
	{ "step",             RB_PLAN_STEP },
	{ "manhole drop",     RB_PLAN_STEP },
	{ "footing bottom",   RB_PLAN_FOOTING_BOTTOM },
	{ "footing away",     RB_PLAN_FOOTING_AWAY },
	{ "hub offset",       RB_PLAN_OFFSET },
	{ "offset",           RB_PLAN_OFFSET },
	{ "hub side",         RB_PLAN_SIDE },
	{ "side",             RB_PLAN_SIDE },
	{ "remarks",          RB_PLAN_REMARKS },
	{ "note",             RB_PLAN_REMARKS },
	{ "notes",            RB_PLAN_REMARKS },
	{ "description",      RB_PLAN_REMARKS },
};

static const char *const column_name[RB_PLAN_COLUMNS] = {
	[RB_PLAN_POINT] = "point",
	[RB_PLAN_CHAINAGE] = "chainage",
	[RB_PLAN_INVERT] = "invert",
	[RB_PLAN_INVERT_IN] = "invert in",
	[RB_PLAN_SLOPE] = "slope",
	[RB_PLAN_STEP] = "step",
	[RB_PLAN_FOOTING_BOTTOM] = "footing bottom",
	[RB_PLAN_FOOTING_AWAY] = "footing away",
	[RB_PLAN_OFFSET] = "hub offset",
	[RB_PLAN_SIDE] = "hub side",
	[RB_PLAN_REMARKS] = "remarks",
	[RB_PLAN_STATION] = "station",
};
/* clang-format on */

static const enum rb_measured measured[RB_SHEET_COLUMNS] = {
	[RB_PLAN_CHAINAGE] = RB_RUNS,     [RB_PLAN_STATION] = RB_RUNS,
	[RB_PLAN_INVERT] = RB_ELEVATIONS, [RB_PLAN_INVERT_IN] = RB_ELEVATIONS,
	[RB_PLAN_STEP] = RB_READINGS,     [RB_PLAN_FOOTING_BOTTOM] = RB_ELEVATIONS,
	[RB_PLAN_FOOTING_AWAY] = RB_RUNS, [RB_PLAN_OFFSET] = RB_RUNS,
};

static void settle(int32_t cell_of[RB_SHEET_COLUMNS])
{
	int32_t station = cell_of[RB_PLAN_STATION];

	if (cell_of[RB_PLAN_POINT] < 0)
		cell_of[RB_PLAN_POINT] = station;
	else if (cell_of[RB_PLAN_CHAINAGE] < 0)
		cell_of[RB_PLAN_CHAINAGE] = station;
}

static bool is_header(const int32_t cell_of[RB_SHEET_COLUMNS])
{
	bool point = cell_of[RB_PLAN_POINT] >= 0,
	     chainage = cell_of[RB_PLAN_CHAINAGE] >= 0;

	return (point && chainage) ||
	       ((point || chainage) &&
		(cell_of[RB_PLAN_INVERT] >= 0 || cell_of[RB_PLAN_INVERT_IN] >= 0));
}

static const struct rb_form form = {
	.key = rb_plan_keys,
	.keys = RB_PLAN_KEYS,
	.lengths = 1u << RB_PLAN_KEY_PIPE | 1u << RB_PLAN_KEY_PIPE_OUTSIDE |
		   1u << RB_PLAN_KEY_PIPE_WALL | 1u << RB_PLAN_KEY_BEDDING |
		   1u << RB_PLAN_KEY_COVER | 1u << RB_PLAN_KEY_TOLERANCE |
		   1u << RB_PLAN_KEY_ROD,
	.slopes = 1u << RB_PLAN_KEY_SLOPE | 1u << RB_PLAN_KEY_MINIMUM,
	.heading = headings,
	.headings = sizeof headings / sizeof *headings,
	.measured = measured,
	.column_name = column_name,
	.passed_over = -1,
	.settle = settle,
	.is_header = is_header,
	.header_wanted = "a point column, a chainage column and an invert column",
	.header_such_as = "point, chainage, invert, slope",
};

struct reader {
	struct rb_cells cells;
	struct rb_plan *plan;
	uint32_t room;
	struct rb_sixtyfourths sixtyfourths[RB_PLAN_COLUMNS];
};

struct rb_place rb_plan_place(const struct rb_plan *plan, uint32_t row,
			      enum rb_plan_column column)
{
	return rb_at(plan->row[row].line, plan->cell_of[column], plan->row[row].name,
		     column_name[column]);
}

struct rb_style rb_plan_style(const struct rb_plan *plan)
{
	static const int decimals[] = {
		[RB_FEET] = 2,   [RB_INCHES] = 2,      [RB_FEET_INCHES] = 0,
		[RB_METRES] = 3, [RB_MILLIMETRES] = 0,
	};

	return (struct rb_style){ plan->unit, decimals[plan->unit], 16, false };
}

static bool on_header(void *self, const struct rb_sheet *sheet)
{
	struct reader *r = self;

	r->cells.decimal_comma = sheet->source->separator != ',';
	r->plan->decimal_comma = r->cells.decimal_comma;
	memcpy(r->plan->cell_of, sheet->cell_of, sizeof r->plan->cell_of);
	rb_plan_read_keys(&r->cells, r->plan, sheet);
	rb_headings_check_units(r->cells.findings, sheet, r->plan->unit);
	return true;
}

/* A row that is being read. */
struct row_reader {
	struct reader *r;
	const struct rb_record *record;
	struct rb_plan_row *row;
};

static struct rb_cell cell_of(const struct row_reader *w, enum rb_plan_column column)
{
	return rb_sheet_cell(w->r->plan->cell_of, (int)column, w->record);
}

static struct rb_place place_of(const struct row_reader *w, enum rb_plan_column column)
{
	return rb_at(w->record->line, w->r->plan->cell_of[column], w->row->name,
		     column_name[column]);
}

static rb_length row_length(struct row_reader *w, enum rb_plan_column column,
			    enum rb_reading_kind kind)
{
	return rb_cells_length(&w->r->cells, cell_of(w, column), place_of(w, column),
			       kind);
}

static rb_length row_invert(struct row_reader *w, enum rb_plan_column column)
{
	struct rb_reading reading = rb_cells_reading(
		&w->r->cells, cell_of(w, column), place_of(w, column), RB_OF_ELEVATION);
	rb_length place;

	if (!rb_length_given(reading.value))
		return reading.value;
	rb_sixtyfourths_note(&w->r->sixtyfourths[column], w->r->cells.findings,
			     cell_of(w, column), place_of(w, column), &reading);
	place = rb_reading_step(&reading);
	if (rb_length_compare(place, w->r->plan->invert_place) < 0)
		w->r->plan->invert_place = place;
	return reading.value;
}

/* The chainage of a row: its own cell, or a name such as 0+50. */
static void read_chainage(struct row_reader *w)
{
	struct rb_cell cell = cell_of(w, RB_PLAN_CHAINAGE);
	enum rb_plan_column column = RB_PLAN_CHAINAGE;
	int plus;

	if (rb_cell_is_empty(cell) && memchr(w->row->name, '+', strlen(w->row->name))) {
		column = RB_PLAN_POINT;
		cell = cell_of(w, column);
	}
	w->row->chainage =
		rb_cells_chainage(&w->r->cells, cell, place_of(w, column), &plus);
	if (plus)
		w->r->plan->plus = plus;
	if (rb_cell_is_empty(cell))
		rb_findings_add(w->r->cells.findings, RB_CODE_NO_CHAINAGE,
				place_of(w, RB_PLAN_CHAINAGE), rb_nothing(),
				rb_nothing());
	if (!*w->row->name)
		w->row->name = rb_cells_text(&w->r->cells, cell);
}

static struct rb_plan_row *new_row(struct reader *r)
{
	struct rb_plan *plan = r->plan;

	if (plan->rows == r->room) {
		uint32_t room = r->room ? 2 * r->room : 32;
		struct rb_plan_row *more =
			rb_arena_take(r->cells.arena, room, sizeof *more);

		if (!more)
			return rb_findings_no_memory(r->cells.findings), NULL;
		if (plan->rows)
			memcpy(more, plan->row, plan->rows * sizeof *more);
		plan->row = more;
		r->room = room;
	}
	return &plan->row[plan->rows++];
}

static bool on_row(void *self, const struct rb_record *record)
{
	struct reader *r = self;
	struct row_reader w = { r, record, new_row(r) };
	struct rb_plan_row *row = w.row;

	if (!row)
		return false;
	row->line = record->line;
	row->name = rb_cells_text(&r->cells, cell_of(&w, RB_PLAN_POINT));
	read_chainage(&w);
	row->invert = row_invert(&w, RB_PLAN_INVERT);
	row->invert_in = row_invert(&w, RB_PLAN_INVERT_IN);
	row->slope = rb_cells_slope(&r->cells, cell_of(&w, RB_PLAN_SLOPE),
				    place_of(&w, RB_PLAN_SLOPE));
	row->step = row_length(&w, RB_PLAN_STEP, RB_OF_TAPE);
	row->footing_bottom = row_length(&w, RB_PLAN_FOOTING_BOTTOM, RB_OF_ELEVATION);
	row->footing_away = row_length(&w, RB_PLAN_FOOTING_AWAY, RB_OF_RUN);
	row->offset = row_length(&w, RB_PLAN_OFFSET, RB_OF_RUN);
	row->side = rb_cells_text(&r->cells, cell_of(&w, RB_PLAN_SIDE));
	row->remarks = rb_cells_text(&r->cells, cell_of(&w, RB_PLAN_REMARKS));
	return true;
}

static void say_sixtyfourths(const struct reader *r)
{
	for (int column = 0; column < RB_PLAN_COLUMNS; column++)
		rb_sixtyfourths_say(&r->sixtyfourths[column], r->cells.findings,
				    column_name[column]);
}

struct rb_plan *rb_plan_read(struct rb_arena *arena, struct rb_findings *findings,
			     const char *bytes, size_t length)
{
	struct reader r = { .cells = { .arena = arena, .findings = findings },
			    .plan = rb_plan_new(arena, findings) };
	const struct rb_sheet_reader reader = { on_header, on_row, &r };

	if (!r.plan || !rb_sheet_read(arena, findings, &form, bytes, length, &reader) ||
	    !rb_findings_allow_result(findings))
		return NULL;
	say_sixtyfourths(&r);
	rb_plan_check(findings, r.plan);
	return rb_findings_allow_result(findings) ? r.plan : NULL;
}
