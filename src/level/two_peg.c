/* SPDX-License-Identifier: MIT */
/* two_peg.c - the form of a two-peg test, and its error. */
#include "level/two_peg.h"

#include <string.h>

#include "level/places.h"
#include "measure/wide.h"
#include "notes/heading.h"

/* clang-format off */
enum key { KEY_UNIT, KEY_DATE, KEY_INSTRUMENT };

static const struct rb_key keys[] = {
	{ "unit",       KEY_UNIT },
	{ "date",       KEY_DATE },
	{ "instrument", KEY_INSTRUMENT },
};

enum column { COLUMN_SETUP, COLUMN_A, COLUMN_B, COLUMN_DISTANCE_A, COLUMN_DISTANCE_B };

static const struct rb_heading headings[] = {
	{ "setup",         COLUMN_SETUP },
	{ "set up",        COLUMN_SETUP },
	{ "position",      COLUMN_SETUP },
	{ "a",             COLUMN_A },
	{ "peg a",         COLUMN_A },
	{ "reading a",     COLUMN_A },
	{ "b",             COLUMN_B },
	{ "peg b",         COLUMN_B },
	{ "reading b",     COLUMN_B },
	{ "distance a",    COLUMN_DISTANCE_A },
	{ "distance to a", COLUMN_DISTANCE_A },
	{ "dist a",        COLUMN_DISTANCE_A },
	{ "da",            COLUMN_DISTANCE_A },
	{ "distance b",    COLUMN_DISTANCE_B },
	{ "distance to b", COLUMN_DISTANCE_B },
	{ "dist b",        COLUMN_DISTANCE_B },
	{ "db",            COLUMN_DISTANCE_B },
};

static const enum rb_measured measured[RB_SHEET_COLUMNS] = {
	[COLUMN_A]          = RB_READINGS,
	[COLUMN_B]          = RB_READINGS,
	[COLUMN_DISTANCE_A] = RB_RUNS,
	[COLUMN_DISTANCE_B] = RB_RUNS,
};

static const char *const column_name[RB_SHEET_COLUMNS] = {
	[COLUMN_SETUP]      = "setup",
	[COLUMN_A]          = "a",
	[COLUMN_B]          = "b",
	[COLUMN_DISTANCE_A] = "distance a",
	[COLUMN_DISTANCE_B] = "distance b",
};

/* What a setup needs, where it goes, and what it is. */
static const struct {
	int column; /* enum column */
	enum rb_reading_kind kind;
	size_t at;
} values[] = {
	{ COLUMN_A,          RB_OF_ROD, offsetof(struct rb_peg_setup, a) },
	{ COLUMN_B,          RB_OF_ROD, offsetof(struct rb_peg_setup, b) },
	{ COLUMN_DISTANCE_A, RB_OF_RUN, offsetof(struct rb_peg_setup, distance_a) },
	{ COLUMN_DISTANCE_B, RB_OF_RUN, offsetof(struct rb_peg_setup, distance_b) },
};

static const struct rb_peg_limit limits[RB_PEG_LIMITS] = {
	{ { RB_MILLIMETRE },      { 50 * RB_METRE }, "1 mm in 50 m",
	  "Australian first-order levelling instructions" },
	{ { RB_FOOT / 1000 * 3 }, { 100 * RB_FOOT }, "0.003 ft in 100 ft",
	  "USGS, TM 3-A19" },
	{ { RB_FOOT / 1000 * 5 }, { 100 * RB_FOOT }, "0.005 ft in 100 ft",
	  "TM 5-6675-329-13&P, p. 4-9" },
	{ { 2 * RB_MILLIMETRE },  { 30 * RB_METRE }, "2 mm in 30 m",
	  "the same, in metres" },
};
/* clang-format on */

#define COUNT(table) (sizeof(table) / sizeof *(table))

static bool is_header(const int32_t cell_of[RB_SHEET_COLUMNS])
{
	return cell_of[COLUMN_A] >= 0 && cell_of[COLUMN_B] >= 0 &&
	       cell_of[COLUMN_DISTANCE_A] >= 0 && cell_of[COLUMN_DISTANCE_B] >= 0;
}

static const struct rb_form form = {
	.key = keys,
	.keys = COUNT(keys),
	.heading = headings,
	.headings = COUNT(headings),
	.measured = measured,
	.column_name = column_name,
	.passed_over = -1,
	.is_header = is_header,
	.header_wanted = "the columns a, b, distance a and distance b",
	.header_such_as = "setup, a, b, distance a, distance b",
};

struct reader {
	struct rb_arena *arena;
	struct rb_findings *findings;
	struct rb_two_peg *peg;
	int32_t cell_of[RB_SHEET_COLUMNS];
	bool decimal_comma;
	int rows; /* that hold a reading or a distance */
};

static const char *text_of(const struct rb_sheet *sheet, enum key key)
{
	return sheet->key[key].length ? sheet->key[key].text : "";
}

static bool on_header(void *self, const struct rb_sheet *sheet)
{
	struct reader *r = self;
	const struct rb_key_value *unit = &sheet->key[KEY_UNIT];

	memcpy(r->cell_of, sheet->cell_of, sizeof r->cell_of);
	r->decimal_comma = sheet->source->separator != ',';
	r->peg->date = text_of(sheet, KEY_DATE);
	r->peg->instrument = text_of(sheet, KEY_INSTRUMENT);
	r->peg->unit = RB_FEET;
	if (unit->length && !rb_unit_parse(unit->text, unit->length, &r->peg->unit))
		rb_findings_add(r->findings, RB_CODE_BAD_UNIT, unit->place,
				rb_text(unit->text), rb_text("ft, in, ft-in, m or mm"));
	rb_headings_check_units(r->findings, sheet, r->peg->unit);
	return true;
}

/* -- rows -- */

static bool is_remark(const struct reader *r, const struct rb_record *record)
{
	for (size_t i = 0; i < COUNT(values); i++)
		if (rb_sheet_cell(r->cell_of, values[i].column, record).length)
			return false;
	return true;
}

/* How finely the readings are written: the finest of them tells what the rod shows. */
static void note_places(struct rb_two_peg *peg, const struct rb_reading *reading)
{
	int decimals = reading->sixtyfourth ? 4 : reading->decimals;
	rb_length step = rb_reading_step(reading);

	if (decimals > peg->decimals)
		peg->decimals = decimals;
	if (reading->denominator > peg->fraction)
		peg->fraction = reading->denominator;
	if (!peg->unsure.nm || 2 * step.nm < peg->unsure.nm)
		peg->unsure = rb_length_of(2 * step.nm);
}

static rb_length read_value(struct reader *r, const struct rb_record *record, size_t i,
			    const char *name)
{
	int column = values[i].column;
	struct rb_cell cell = rb_sheet_cell(r->cell_of, column, record);
	struct rb_place place = rb_at(record->line, r->cell_of[column],
				      *name ? name : NULL, column_name[column]);
	const struct rb_reading_rules rules = { r->peg->unit, values[i].kind,
						r->decimal_comma, rb_length_none() };
	struct rb_reading reading;

	reading = rb_sheet_length(r->findings, cell, place, &rules);
	if (reading.refusal == RB_REFUSE_EMPTY) /* an apostrophe alone is empty, too */
		rb_findings_add(r->findings, RB_CODE_PEG_CELL_EMPTY, place, rb_nothing(),
				rb_nothing());
	if (values[i].kind == RB_OF_ROD && rb_length_given(reading.value))
		note_places(r->peg, &reading);
	return reading.value;
}

static bool on_row(void *self, const struct rb_record *record)
{
	struct reader *r = self;
	struct rb_cell name = rb_sheet_cell(r->cell_of, COLUMN_SETUP, record);
	struct rb_peg_setup setup = { .line = record->line };

	if (is_remark(r, record))
		return true;
	setup.name = rb_arena_text(r->arena, name.text, name.length);
	if (!setup.name)
		return rb_findings_no_memory(r->findings);
	for (size_t i = 0; i < COUNT(values); i++) {
		rb_length value = read_value(r, record, i, setup.name);

		memcpy((char *)&setup + values[i].at, &value, sizeof value);
	}
	if (r->rows < 2)
		r->peg->setup[r->rows] = setup;
	r->rows++;
	return true;
}

/* -- the error -- */

#define STEEPEST 10 /* one in so many: far beyond any level, and the sums stay small */

static rb_length apart(rb_length a, rb_length b)
{
	return rb_length_sub(a, b);
}

static void work_out(struct rb_findings *findings, struct rb_two_peg *peg)
{
	const struct rb_peg_setup *first = &peg->setup[0], *second = &peg->setup[1];
	struct rb_place place = rb_at(second->line, RB_WHOLE_ROW, NULL, NULL);
	rb_length lengths = apart(first->distance_a, first->distance_b);

	peg->rise = apart(apart(second->a, second->b), apart(first->a, first->b));
	peg->run = apart(apart(second->distance_a, second->distance_b), lengths);
	if (peg->run.nm < 0) {
		peg->rise = rb_length_negate(peg->rise);
		peg->run = rb_length_negate(peg->run);
	}
	if (peg->run.nm == 0) {
		rb_findings_add(findings, RB_CODE_PEG_SAME_DISTANCES, place,
				rb_measure(lengths, rb_unit_of_runs(peg->unit)),
				rb_nothing());
	} else if (rb_length_absolute(peg->rise).nm > peg->run.nm / STEEPEST) {
		rb_findings_add(findings, RB_CODE_PEG_TOO_STEEP, place,
				rb_measure(rb_length_absolute(peg->rise), peg->unit),
				rb_measure(peg->run, rb_unit_of_runs(peg->unit)));
	} else {
		peg->corrected_a = rb_length_sub(
			second->a, rb_two_peg_over(peg, second->distance_a));
		peg->corrected_b = rb_length_sub(
			second->b, rb_two_peg_over(peg, second->distance_b));
	}
}

struct rb_two_peg *rb_two_peg_read(struct rb_arena *arena, struct rb_findings *findings,
				   const char *bytes, size_t length)
{
	struct rb_two_peg *peg = rb_arena_take_clear(arena, 1, sizeof *peg);
	struct reader r = { .arena = arena, .findings = findings, .peg = peg };
	const struct rb_sheet_reader reader = { on_header, on_row, &r };

	if (!peg) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	peg->file = findings->file;
	if (!rb_sheet_read(arena, findings, &form, bytes, length, &reader))
		return NULL;
	if (r.rows != 2)
		rb_findings_add(findings, RB_CODE_PEG_ROWS, rb_in_file(),
				rb_number(r.rows), rb_nothing());
	if (rb_findings_allow_result(findings))
		work_out(findings, peg);
	return rb_findings_allow_result(findings) ? peg : NULL;
}

rb_length rb_two_peg_over(const struct rb_two_peg *peg, rb_length distance)
{
	return rb_length_share(distance, peg->rise.nm, peg->run.nm);
}

rb_length rb_two_peg_hundred(enum rb_unit unit)
{
	return rb_length_of(100 *
			    (rb_unit_of_runs(unit) == RB_METRES ? RB_METRE : RB_FOOT));
}

const struct rb_peg_limit *rb_peg_limit(size_t i)
{
	return &limits[i];
}

bool rb_two_peg_exceeds(const struct rb_two_peg *peg, const struct rb_peg_limit *limit)
{
	return rb_wide_compare_ratios(rb_length_absolute(peg->rise).nm, peg->run.nm,
				      limit->rise.nm, limit->run.nm) > 0;
}
