/* SPDX-License-Identifier: MIT */
/* plan_keys.c - the table of a plan's keys, and how each is read. */
#include "drain/plan_keys.h"

#include <string.h>

#include "drain/pipe.h"

/* clang-format off */
const struct rb_key rb_plan_keys[RB_PLAN_KEYS] = {
	{ "drain",           RB_PLAN_KEY_DRAIN },
	{ "datum",           RB_PLAN_KEY_DATUM },
	{ "jurisdiction",    RB_PLAN_KEY_JURISDICTION },
	{ "rules",           RB_PLAN_KEY_RULES },
	{ "unit",            RB_PLAN_KEY_UNIT },
	{ "pipe",            RB_PLAN_KEY_PIPE },
	{ "pipe outside",    RB_PLAN_KEY_PIPE_OUTSIDE },
	{ "pipe wall",       RB_PLAN_KEY_PIPE_WALL },
	{ "slope",           RB_PLAN_KEY_SLOPE },
	{ "minimum slope",   RB_PLAN_KEY_MINIMUM },
	{ "bedding",         RB_PLAN_KEY_BEDDING },
	{ "cover",           RB_PLAN_KEY_COVER },
	{ "outlet",          RB_PLAN_KEY_OUTLET },
	{ "grade tolerance", RB_PLAN_KEY_TOLERANCE },
	{ "rod",             RB_PLAN_KEY_ROD },
};

/* The coarsest place that an invert is taken to be written to: a sheet drops the zeros of
 * 100.00, and nobody who writes 96'-9" means it to half an inch. */
static const int64_t usual_place[] = {
	[RB_FEET] = RB_FOOT / 100,
	[RB_INCHES] = RB_INCH / 8,
	[RB_FEET_INCHES] = RB_INCH / 8,
	[RB_METRES] = RB_MILLIMETRE,
	[RB_MILLIMETRES] = RB_MILLIMETRE,
};
/* clang-format on */

struct reader {
	struct rb_cells *cells;
	struct rb_plan *plan;
	const struct rb_sheet *sheet;
};

static void refuse(const struct reader *r, enum rb_plan_key key, enum rb_code code)
{
	const struct rb_key_value *value = &r->sheet->key[key];

	rb_findings_add(r->cells->findings, code, value->place, rb_text(value->text),
			rb_nothing());
}

static const char *text_of(const struct reader *r, enum rb_plan_key key)
{
	return r->sheet->key[key].length ? r->sheet->key[key].text : "";
}

/* A length that may be 0: a cover, a tolerance. */
static rb_length length_of(const struct reader *r, enum rb_plan_key key)
{
	const struct rb_key_value *value = &r->sheet->key[key];
	rb_length length =
		rb_cells_length(r->cells, rb_key_cell(value), value->place, RB_OF_TAPE);

	if (rb_length_given(length) && length.nm < 0)
		refuse(r, key, RB_CODE_NEGATIVE);
	return length;
}

/* A length above 0: a diameter, a wall. */
static rb_length size_of(const struct reader *r, enum rb_plan_key key)
{
	rb_length length = length_of(r, key);

	if (length.nm == 0)
		refuse(r, key, RB_CODE_NOT_ABOVE_ZERO);
	return length;
}

static rb_slope slope_of(const struct reader *r, enum rb_plan_key key)
{
	const struct rb_key_value *value = &r->sheet->key[key];

	return rb_cells_slope(r->cells, rb_key_cell(value), value->place);
}

static bool is_word(const struct reader *r, enum rb_plan_key key, const char *word)
{
	const struct rb_key_value *value = &r->sheet->key[key];

	if (value->length != strlen(word))
		return false;
	for (size_t i = 0; i < value->length; i++)
		if ((value->text[i] | 0x20) != word[i])
			return false;
	return true;
}

static void read_unit(const struct reader *r)
{
	const struct rb_key_value *value = &r->sheet->key[RB_PLAN_KEY_UNIT];

	if (value->length && !rb_unit_parse(value->text, value->length, &r->plan->unit))
		rb_findings_add(r->cells->findings, RB_CODE_BAD_UNIT, value->place,
				rb_text(value->text), rb_text("ft, in, ft-in, m or mm"));
	r->cells->unit = r->plan->unit;
	r->plan->invert_place = rb_length_of(usual_place[r->plan->unit]);
}

static void read_outlet(const struct reader *r)
{
	if (is_word(r, RB_PLAN_KEY_OUTLET, "first"))
		r->plan->outlet = RB_OUTLET_FIRST;
	else if (is_word(r, RB_PLAN_KEY_OUTLET, "last"))
		r->plan->outlet = RB_OUTLET_LAST;
	else if (r->sheet->key[RB_PLAN_KEY_OUTLET].length)
		rb_findings_add(r->cells->findings, RB_CODE_BAD_KEY,
				r->sheet->key[RB_PLAN_KEY_OUTLET].place,
				rb_text(text_of(r, RB_PLAN_KEY_OUTLET)),
				rb_text("first or last"));
}

static void read_bedding(const struct reader *r)
{
	r->plan->bedding = is_word(r, RB_PLAN_KEY_BEDDING, "none")
				   ? rb_length_of(0)
				   : length_of(r, RB_PLAN_KEY_BEDDING);
}

static void read_rod(const struct reader *r)
{
	const struct rb_key_value *value = &r->sheet->key[RB_PLAN_KEY_ROD];
	rb_length rod =
		rb_cells_length(r->cells, rb_key_cell(value), value->place, RB_OF_RUN);

	if (rod.nm == 0)
		refuse(r, RB_PLAN_KEY_ROD, RB_CODE_NOT_ABOVE_ZERO);
	if (rb_length_given(rod))
		r->plan->rod = rod;
}

static void read_minimum(const struct reader *r)
{
	const struct rb_key_value *minimum = &r->sheet->key[RB_PLAN_KEY_MINIMUM];
	const struct rb_key_value *rules = &r->sheet->key[RB_PLAN_KEY_RULES];

	r->plan->minimum = slope_of(r, RB_PLAN_KEY_MINIMUM);
	r->plan->rules = text_of(r, RB_PLAN_KEY_RULES);
	r->plan->rules_place = rules->place;
	if (rb_slope_given(r->plan->minimum) && r->plan->minimum.fall.nm <= 0)
		refuse(r, RB_PLAN_KEY_MINIMUM, RB_CODE_SLOPE_NOT_DOWN);
	if (minimum->length && rules->length)
		rb_findings_add(r->cells->findings, RB_CODE_MINIMUM_TWICE, rules->place,
				rb_line(minimum->place.line), rb_nothing());
}

/* The pipe by its name; what was measured needs no table. */
static void read_pipe_name(const struct reader *r, bool is_measured)
{
	static const enum rb_code codes[] = {
		[RB_PIPE_NO_SIZE] = RB_CODE_BAD_PIPE_SIZE,
		[RB_PIPE_NO_KIND] = RB_CODE_BAD_PIPE_KIND,
		[RB_PIPE_NOT_IN_TABLE] = RB_CODE_PIPE_NOT_IN_TABLE,
	};
	const struct rb_key_value *value = &r->sheet->key[RB_PLAN_KEY_PIPE];
	enum rb_pipe_refusal refusal;

	if (!value->length)
		return;
	refusal = rb_pipe_parse(value->text, value->length, &r->plan->pipe);
	if (refusal != RB_PIPE_READ && (refusal == RB_PIPE_NO_SIZE || !is_measured))
		refuse(r, RB_PLAN_KEY_PIPE, codes[refusal]);
}

static void read_pipe(const struct reader *r)
{
	struct rb_pipe *pipe = &r->plan->pipe;
	rb_length outside = size_of(r, RB_PLAN_KEY_PIPE_OUTSIDE),
		  wall = size_of(r, RB_PLAN_KEY_PIPE_WALL);
	rb_length inside;

	read_pipe_name(r, rb_length_given(outside) && rb_length_given(wall));
	pipe->measured = rb_length_given(outside) || rb_length_given(wall);
	if (rb_length_given(outside))
		pipe->outside = outside;
	if (rb_length_given(wall))
		pipe->wall = wall;
	inside = rb_pipe_inside(pipe);
	if (pipe->measured && rb_length_given(inside) && inside.nm <= 0)
		refuse(r,
		       rb_length_given(wall) ? RB_PLAN_KEY_PIPE_WALL
					     : RB_PLAN_KEY_PIPE_OUTSIDE,
		       RB_CODE_WALL_TOO_THICK);
}

struct rb_plan *rb_plan_new(struct rb_arena *arena, struct rb_findings *findings)
{
	const rb_length none = rb_length_none();
	struct rb_plan *plan = rb_arena_take_clear(arena, 1, sizeof *plan);

	if (!plan)
		return rb_findings_no_memory(findings), NULL;
	plan->file = findings->file;
	plan->drain = plan->datum = plan->jurisdiction = plan->rules = "";
	plan->pipe = (struct rb_pipe){ none, none, none, NULL, false };
	plan->bedding = plan->cover = plan->grade_tolerance = none;
	plan->rod = rb_length_of(25 * RB_FOOT);
	plan->invert_place = rb_length_of(usual_place[plan->unit]);
	for (int i = 0; i < RB_PLAN_COLUMNS; i++)
		plan->cell_of[i] = -1;
	return plan;
}

void rb_plan_read_keys(struct rb_cells *cells, struct rb_plan *plan,
		       const struct rb_sheet *sheet)
{
	const struct reader reader = { cells, plan, sheet }, *r = &reader;

	read_unit(r);
	plan->drain = text_of(r, RB_PLAN_KEY_DRAIN);
	plan->datum = text_of(r, RB_PLAN_KEY_DATUM);
	plan->jurisdiction = text_of(r, RB_PLAN_KEY_JURISDICTION);
	plan->jurisdiction_place = sheet->key[RB_PLAN_KEY_JURISDICTION].place;
	plan->slope = slope_of(r, RB_PLAN_KEY_SLOPE);
	plan->slope_place = sheet->key[RB_PLAN_KEY_SLOPE].place;
	plan->cover = length_of(r, RB_PLAN_KEY_COVER);
	plan->grade_tolerance = length_of(r, RB_PLAN_KEY_TOLERANCE);
	read_rod(r);
	read_minimum(r);
	read_outlet(r);
	read_bedding(r);
	read_pipe(r);
}
