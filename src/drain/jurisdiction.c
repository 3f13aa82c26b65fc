/* SPDX-License-Identifier: MIT */
/* jurisdiction.c - depth limits with their citations. */
#include "drain/jurisdiction.h"

#include <stdlib.h>
#include <string.h>

#include "drain/cells.h"
#include "notes/names.h"

/* clang-format off */
#define FT(feet)          { (feet) * RB_FOOT }
#define MM(millimetres)   { (millimetres) * RB_MILLIMETRE }

static const struct rb_limit us_osha[] = {
	{ FT(4),  "29 CFR 1926.651(c)(2)",
	  "a ladder, stair or ramp within 25 ft of travel of every worker" },
	{ FT(5),  "29 CFR 1926.652(a)(1)",
	  "sloping, shoring or a shield, unless the trench is in stable rock" },
	{ FT(20), "29 CFR 1926.652",
	  "a design by a registered professional engineer" },
};
static const struct rb_limit alberta[] = {
	{ MM(1500), "Alberta OHS Code s. 450 (section from memory, check before use)",
	  "protection of the workers from cave-in" },
	{ MM(1500), "Alberta OHS Code s. 455",
	  "a way out within 8 m of every worker" },
};
static const struct rb_limit bc[] = {
	{ MM(1200), "BC OHS Regulation 20.78-20.81",
	  "sloping or shoring" },
	{ MM(6000), "BC OHS Regulation 20.78-20.81",
	  "a professional engineer's instructions" },
};
static const struct rb_limit ontario[] = {
	{ MM(1200), "Ontario O. Reg. 213/91 (from memory, check before use)",
	  "sloping, shoring or a shield" },
};
static const struct rb_limit canada_federal[] = {
	{ MM(1400), "SOR/86-304 s. 3.12",
	  "shoring where the sides are 45 degrees or steeper" },
};
static const struct rb_limit unset[] = {
	{ MM(1200), "no jurisdiction is set: 1.2 m is the least of the limits listed, and the"
		    " place's own rule decides",
	  "sloping, shoring or shields in some places: look up the rule of this one" },
};

#define COUNT(table)  (sizeof(table) / sizeof *(table))
#define LIMITS(table) (table), COUNT(table)

static const struct rb_jurisdiction table[] = {
	{ "us osha",        "29 CFR 1926.651(b)(1)-(4)",      LIMITS(us_osha) },
	{ "alberta",        "Alberta OHS Code s. 447-448",    LIMITS(alberta) },
	{ "bc",             "BC OHS Regulation 20.78-20.81",  LIMITS(bc) },
	{ "ontario",        "Ontario O. Reg. 213/91 s. 228(1) (from memory, check before use)",
	  LIMITS(ontario) },
	{ "canada federal", "SOR/86-304 s. 3.12",             LIMITS(canada_federal) },
};
static const struct rb_jurisdiction not_set = {
	"",
	"29 CFR 1926.651(b)(1)-(4) in the United States; elsewhere the place's own rule",
	LIMITS(unset),
};

enum key { KEY_JURISDICTION, KEY_LOCATE, KEY_UNIT };

static const struct rb_key keys[] = {
	{ "jurisdiction", KEY_JURISDICTION },
	{ "locate",       KEY_LOCATE },
	{ "unit",         KEY_UNIT },
};

enum column { COLUMN_DEPTH, COLUMN_RULE, COLUMN_ASKS, COLUMNS };

static const struct rb_heading headings[] = {
	{ "depth",    COLUMN_DEPTH },
	{ "rule",     COLUMN_RULE },
	{ "citation", COLUMN_RULE },
	{ "asks for", COLUMN_ASKS },
	{ "text",     COLUMN_ASKS },
};

static const char *const column_name[COLUMNS] = {
	[COLUMN_DEPTH] = "depth",
	[COLUMN_RULE] = "rule",
	[COLUMN_ASKS] = "asks for",
};
/* clang-format on */

const struct rb_jurisdiction *rb_jurisdictions(size_t *count)
{
	*count = COUNT(table);
	return table;
}

const struct rb_jurisdiction *rb_jurisdiction_unset(void)
{
	return &not_set;
}

#define NAME 64

const struct rb_jurisdiction *rb_jurisdiction_find(const char *name)
{
	char folded[NAME];

	if (strlen(name) + 1 > sizeof folded)
		return NULL;
	folded[rb_name_fold(folded, name, strlen(name))] = '\0';
	for (size_t i = 0; i < COUNT(table); i++) {
		char other[NAME];

		other[rb_name_fold(other, table[i].name, strlen(table[i].name))] = '\0';
		if (!strcmp(folded, other))
			return &table[i];
	}
	return NULL;
}

/* -- a file -- */

static bool is_header(const int32_t cell_of[RB_SHEET_COLUMNS])
{
	return cell_of[COLUMN_DEPTH] >= 0 && cell_of[COLUMN_RULE] >= 0;
}

static const struct rb_form form = {
	.key = keys,
	.keys = COUNT(keys),
	.heading = headings,
	.headings = COUNT(headings),
	.column_name = column_name,
	.passed_over = -1,
	.is_header = is_header,
	.header_wanted = "the columns depth and rule",
};

/* A limit with its line: of one depth, the first in the file stays the first. */
struct found {
	struct rb_limit limit;
	uint32_t line;
};

struct reader {
	struct rb_cells cells;
	struct rb_jurisdiction *jurisdiction;
	struct found *found;
	size_t limits, room;
	int32_t cell_of[RB_SHEET_COLUMNS];
};

static bool grow(struct reader *r)
{
	size_t room = r->room ? 2 * r->room : 8;
	struct found *more;

	if (r->limits < r->room)
		return true;
	more = rb_arena_take(r->cells.arena, room, sizeof *more);
	if (!more)
		return rb_findings_no_memory(r->cells.findings);
	if (r->limits)
		memcpy(more, r->found, r->limits * sizeof *more);
	r->found = more;
	r->room = room;
	return true;
}

static int by_depth(const void *a, const void *b)
{
	const struct found *x = a, *y = b;
	int order = rb_length_compare(x->limit.depth, y->limit.depth);

	return order ? order : (x->line > y->line) - (x->line < y->line);
}

/* Hand the limits over, the least depth first; false without memory. */
static bool set_limits(struct reader *r)
{
	struct rb_limit *limit =
		rb_arena_take(r->cells.arena, r->limits + 1, sizeof *limit);

	if (!limit)
		return rb_findings_no_memory(r->cells.findings);
	if (r->limits)
		qsort(r->found, r->limits, sizeof *r->found, by_depth);
	for (size_t i = 0; i < r->limits; i++)
		limit[i] = r->found[i].limit;
	r->jurisdiction->limit = limit;
	r->jurisdiction->limits = r->limits;
	return true;
}

static bool on_header(void *self, const struct rb_sheet *sheet)
{
	struct reader *r = self;
	const struct rb_key_value *unit = &sheet->key[KEY_UNIT];

	r->cells.decimal_comma = sheet->source->separator != ',';
	memcpy(r->cell_of, sheet->cell_of, sizeof r->cell_of);
	if (unit->length && !rb_unit_parse(unit->text, unit->length, &r->cells.unit))
		rb_findings_add(r->cells.findings, RB_CODE_BAD_UNIT, unit->place,
				rb_text(unit->text), rb_nothing());
	r->jurisdiction->name =
		rb_cells_text(&r->cells, rb_key_cell(&sheet->key[KEY_JURISDICTION]));
	r->jurisdiction->locate =
		rb_cells_text(&r->cells, rb_key_cell(&sheet->key[KEY_LOCATE]));
	return true;
}

static bool on_row(void *self, const struct rb_record *record)
{
	struct reader *r = self;
	struct rb_place place = rb_at(record->line, r->cell_of[COLUMN_DEPTH], NULL,
				      column_name[COLUMN_DEPTH]);
	struct rb_cell cell = rb_sheet_cell(r->cell_of, COLUMN_DEPTH, record);
	struct rb_limit limit = {
		rb_cells_length(&r->cells, cell, place, RB_OF_RUN),
		rb_cells_text(&r->cells, rb_sheet_cell(r->cell_of, COLUMN_RULE, record)),
		rb_cells_text(&r->cells, rb_sheet_cell(r->cell_of, COLUMN_ASKS, record)),
	};

	if (rb_cell_is_empty(cell))
		rb_findings_add(r->cells.findings, RB_CODE_LIMIT_WITHOUT_DEPTH, place,
				rb_nothing(), rb_nothing());
	if (rb_length_given(limit.depth) && grow(r))
		r->found[r->limits++] = (struct found){ limit, record->line };
	return true;
}

const struct rb_jurisdiction *rb_jurisdiction_read(struct rb_arena *arena,
						   struct rb_findings *findings,
						   const char *bytes, size_t length)
{
	struct reader r = { .cells = { .arena = arena, .findings = findings } };
	const struct rb_sheet_reader reader = { on_header, on_row, &r };

	r.jurisdiction = rb_arena_take_clear(arena, 1, sizeof *r.jurisdiction);
	if (!r.jurisdiction)
		return rb_findings_no_memory(findings), NULL;
	if (!rb_sheet_read(arena, findings, &form, bytes, length, &reader) ||
	    !rb_findings_allow_result(findings) || !set_limits(&r))
		return NULL;
	return r.jurisdiction;
}
