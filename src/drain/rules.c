/* SPDX-License-Identifier: MIT */
/* rules.c - the form of a rules file, and the rule for a size. */
#include "drain/rules.h"

#include <stdlib.h>
#include <string.h>

#include "drain/cells.h"
#include "drain/pipe.h"

/* clang-format off */
enum key { KEY_RULE, KEY_SOURCE, KEY_EDITION, KEY_READ, KEY_SMALLEST };

static const struct rb_key keys[] = {
	{ "rule",          KEY_RULE },
	{ "source",        KEY_SOURCE },
	{ "edition",       KEY_EDITION },
	{ "read",          KEY_READ },
	{ "smallest size", KEY_SMALLEST },
};

enum column { COLUMN_UP_TO, COLUMN_MINIMUM, COLUMN_REMARKS };

static const struct rb_heading headings[] = {
	{ "size up to",    COLUMN_UP_TO },
	{ "up to",         COLUMN_UP_TO },
	{ "size",          COLUMN_UP_TO },
	{ "minimum slope", COLUMN_MINIMUM },
	{ "slope",         COLUMN_MINIMUM },
	{ "remarks",       COLUMN_REMARKS },
	{ "note",          COLUMN_REMARKS },
	{ "notes",         COLUMN_REMARKS },
};

static const char *const column_name[] = {
	[COLUMN_UP_TO] = "size up to",
	[COLUMN_MINIMUM] = "minimum slope",
	[COLUMN_REMARKS] = "remarks",
};
/* clang-format on */

static bool is_header(const int32_t cell_of[RB_SHEET_COLUMNS])
{
	return cell_of[COLUMN_UP_TO] >= 0 && cell_of[COLUMN_MINIMUM] >= 0;
}

static const struct rb_form form = {
	.key = keys,
	.keys = sizeof keys / sizeof *keys,
	.lengths = 1u << KEY_SMALLEST,
	.heading = headings,
	.headings = sizeof headings / sizeof *headings,
	.column_name = column_name,
	.passed_over = -1,
	.is_header = is_header,
	.header_wanted = "the columns 'size up to' and 'minimum slope'",
};

struct reader {
	struct rb_cells cells;
	struct rb_rules *rules;
	int32_t cell_of[RB_SHEET_COLUMNS];
	uint32_t room;
};

#define LEAST_MILLIMETRES (20 * RB_INCH)

/* A size without a mark from 20 up is no pipe in inches that a plumber lays. */
static rb_length read_size(struct reader *r, struct rb_cell cell, struct rb_place place)
{
	rb_length size;

	if (rb_cell_is_empty(cell))
		return rb_length_none();
	size = rb_pipe_size_parse(cell.text, cell.length);
	if (!rb_length_given(size))
		rb_findings_add(r->cells.findings, RB_CODE_BAD_PIPE_SIZE, place,
				rb_text(rb_cells_text(&r->cells, cell)), rb_nothing());
	else if (strspn(cell.text, "0123456789") == cell.length &&
		 size.nm >= LEAST_MILLIMETRES)
		size = rb_length_of(size.nm / RB_INCH * RB_MILLIMETRE);
	return size;
}

static bool on_header(void *self, const struct rb_sheet *sheet)
{
	struct reader *r = self;
	struct rb_rules *rules = r->rules;

	r->cells.decimal_comma = sheet->source->separator != ',';
	memcpy(r->cell_of, sheet->cell_of, sizeof r->cell_of);
	rules->name = rb_cells_text(&r->cells, rb_key_cell(&sheet->key[KEY_RULE]));
	rules->source = rb_cells_text(&r->cells, rb_key_cell(&sheet->key[KEY_SOURCE]));
	rules->edition = rb_cells_text(&r->cells, rb_key_cell(&sheet->key[KEY_EDITION]));
	rules->read = rb_cells_text(&r->cells, rb_key_cell(&sheet->key[KEY_READ]));
	rules->smallest = read_size(r, rb_key_cell(&sheet->key[KEY_SMALLEST]),
				    sheet->key[KEY_SMALLEST].place);
	if (!*rules->name)
		rb_findings_add(r->cells.findings, RB_CODE_RULE_UNNAMED, rb_in_file(),
				rb_nothing(), rb_nothing());
	return true;
}

static int by_size(rb_length a, rb_length b)
{
	if (!rb_length_given(a) || !rb_length_given(b))
		return rb_length_given(b) - rb_length_given(a);
	return rb_length_compare(rb_pipe_size_by_name(a), rb_pipe_size_by_name(b));
}

/* Room for one more rule. */
static bool grow(struct reader *r)
{
	uint32_t room = r->room ? 2 * r->room : 16;
	struct rb_rule *more;

	if (r->rules->rules < r->room)
		return true;
	more = rb_arena_take(r->cells.arena, room, sizeof *more);
	if (!more)
		return rb_findings_no_memory(r->cells.findings);
	if (r->rules->rules)
		memcpy(more, r->rules->rule, r->rules->rules * sizeof *more);
	r->rules->rule = more;
	r->room = room;
	return true;
}

static struct rb_place place_of(const struct reader *r, uint32_t line, enum column column)
{
	return rb_at(line, r->cell_of[column], NULL, column_name[column]);
}

static bool on_row(void *self, const struct rb_record *record)
{
	struct reader *r = self;
	struct rb_place size = place_of(r, record->line, COLUMN_UP_TO);
	struct rb_place slope = place_of(r, record->line, COLUMN_MINIMUM);
	struct rb_cell up_to = rb_sheet_cell(r->cell_of, COLUMN_UP_TO, record);
	struct rb_cell minimum = rb_sheet_cell(r->cell_of, COLUMN_MINIMUM, record);
	struct rb_rule rule = {
		.up_to = read_size(r, up_to, size),
		.minimum = rb_cells_slope(&r->cells, minimum, slope),
		.remarks = rb_cells_text(
			&r->cells, rb_sheet_cell(r->cell_of, COLUMN_REMARKS, record)),
		.line = record->line,
	};

	if (rb_cell_is_empty(minimum) && rb_cell_is_empty(up_to))
		return true; /* a remark */
	if (rb_cell_is_empty(minimum))
		rb_findings_add(r->cells.findings, RB_CODE_RULE_WITHOUT_SLOPE, slope,
				rb_nothing(), rb_nothing());
	else if (rb_slope_given(rule.minimum) && rule.minimum.fall.nm <= 0)
		rb_findings_add(r->cells.findings, RB_CODE_SLOPE_NOT_DOWN, slope,
				rb_text(rb_cells_text(&r->cells, minimum)), rb_nothing());
	if (!rb_cell_is_empty(up_to) && !rb_length_given(rule.up_to))
		return true; /* the size was refused */
	if (!grow(r))
		return false;
	r->rules->rule[r->rules->rules++] = rule;
	return true;
}

static int by_size_and_line(const void *a, const void *b)
{
	const struct rb_rule *x = a, *y = b;
	int order = by_size(x->up_to, y->up_to);

	return order ? order : (x->line > y->line) - (x->line < y->line);
}

/* Put the rules in order of size; two of one size contradict. */
static void sort(const struct reader *r)
{
	struct rb_rules *rules = r->rules;

	if (rules->rules)
		qsort(rules->rule, rules->rules, sizeof *rules->rule, by_size_and_line);
	for (uint32_t i = 1, first = 0; i < rules->rules; i++) {
		if (by_size(rules->rule[first].up_to, rules->rule[i].up_to) != 0)
			first = i;
		else
			rb_findings_add(r->cells.findings, RB_CODE_RULE_SIZE_TWICE,
					place_of(r, rules->rule[i].line, COLUMN_UP_TO),
					rb_line(rules->rule[first].line), rb_nothing());
	}
}

struct rb_rules *rb_rules_read(struct rb_arena *arena, struct rb_findings *findings,
			       const char *bytes, size_t length)
{
	struct rb_rules *rules = rb_arena_take_clear(arena, 1, sizeof *rules);
	struct reader r = { .cells = { .arena = arena, .findings = findings },
			    .rules = rules };
	const struct rb_sheet_reader reader = { on_header, on_row, &r };

	if (!rules)
		return rb_findings_no_memory(findings), NULL;
	rules->file = findings->file;
	if (!rb_sheet_read(arena, findings, &form, bytes, length, &reader))
		return NULL;
	sort(&r);
	if (!rules->rules && rb_findings_allow_result(findings))
		rb_findings_add(findings, RB_CODE_NO_RULES, rb_in_file(), rb_nothing(),
				rb_nothing());
	return rb_findings_allow_result(findings) ? rules : NULL;
}

const struct rb_rule *rb_rules_find(const struct rb_rules *rules, rb_length size)
{
	if (rb_length_given(rules->smallest) && by_size(size, rules->smallest) < 0)
		return NULL;
	for (uint32_t i = 0; i < rules->rules; i++)
		if (by_size(size, rules->rule[i].up_to) <= 0)
			return &rules->rule[i];
	return NULL;
}

/* A size that no tape has in inches is one in millimetres. */
static struct rb_argument size_as_named(rb_length size)
{
	return rb_measure(size,
			  size.nm % RB_SIXTYFOURTH == 0 ? RB_INCHES : RB_MILLIMETRES);
}

bool rb_minimum_by_rules(struct rb_findings *findings, const struct rb_rules *rules,
			 rb_length size, struct rb_place place, struct rb_minimum *out)
{
	*out = (struct rb_minimum){ .rules = rules };
	if (!rb_length_given(size)) {
		rb_findings_add(findings, RB_CODE_SIZE_NEEDED, place,
				rb_text(rules->name), rb_nothing());
		return false;
	}
	out->rule = rb_rules_find(rules, size);
	if (!out->rule) {
		rb_findings_add(findings, RB_CODE_NO_RULE_FOR_SIZE, place,
				rb_text(rules->name), size_as_named(size));
		return false;
	}
	out->slope = out->rule->minimum;
	return true;
}
