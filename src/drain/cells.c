/* SPDX-License-Identifier: MIT */
/* cells.c - a value, nothing, or a finding. */
#include "drain/cells.h"

#include <string.h>

#include "rodbook/plan.h"

const char *rb_cells_text(struct rb_cells *cells, struct rb_cell cell)
{
	return rb_cell_is_empty(cell)
		       ? ""
		       : rb_findings_text(cells->findings, cell.text, cell.length);
}

struct rb_cell rb_key_cell(const struct rb_key_value *value)
{
	return (struct rb_cell){ value->length ? value->text : "", value->length };
}

static struct rb_reading_rules rules_of(const struct rb_cells *cells,
					enum rb_reading_kind kind)
{
	return (struct rb_reading_rules){
		.unit = cells->unit,
		.kind = kind,
		.decimal_comma = cells->decimal_comma,
		.limit = rb_length_none(),
	};
}

struct rb_reading rb_cells_reading(struct rb_cells *cells, struct rb_cell cell,
				   struct rb_place place, enum rb_reading_kind kind)
{
	struct rb_reading_rules rules = rules_of(cells, kind);
	struct rb_reading reading;

	if (rb_cell_is_empty(cell))
		cell = (struct rb_cell){ "", 0 };
	reading = rb_sheet_length(cells->findings, cell, place, &rules);
	if (reading.refusal == RB_READ && reading.odd_fraction)
		rb_findings_add(cells->findings, RB_CODE_ODD_FRACTION, place,
				rb_text(rb_cells_text(cells, cell)), rb_nothing());
	return reading;
}

rb_length rb_cells_length(struct rb_cells *cells, struct rb_cell cell,
			  struct rb_place place, enum rb_reading_kind kind)
{
	return rb_cells_reading(cells, cell, place, kind).value;
}

#define SLOPE 96

static enum rb_slope_refusal parse_slope(const struct rb_cells *cells,
					 struct rb_cell cell, rb_slope *slope)
{
	char text[SLOPE];

	if (!cells->decimal_comma || cell.length >= SLOPE)
		return rb_slope_parse(cell.text, cell.length, slope);
	for (size_t i = 0; i < cell.length; i++)
		text[i] = cell.text[i] == ',' ? '.' : cell.text[i];
	return rb_slope_parse(text, cell.length, slope);
}

/* 01:48:00 and 4-Jan, which a sheet makes of 1:48 and 1/4. */
static bool say_changed_slope(struct rb_cells *cells, struct rb_cell cell,
			      struct rb_place place)
{
	const struct rb_reading_rules rules = rules_of(cells, RB_OF_TAPE);
	struct rb_reading reading = rb_reading_parse(cell.text, cell.length, &rules);

	return rb_sheet_say_changed(cells->findings, RB_CODE_SLOPE_CHANGED, cell, place,
				    &reading);
}

/* 2:36, which a sheet makes of 1:96; nobody writes 1:18 like that. */
static bool is_clock(struct rb_cell cell)
{
	const char *end = cell.text + cell.length;

	if ((cell.length != 4 && cell.length != 5) || end[-3] != ':')
		return false;
	for (const char *c = cell.text; c < end; c++)
		if (c != end - 3 && (*c < '0' || *c > '9'))
			return false;
	return end[-4] > '1' || (cell.length == 5 && *cell.text > '0');
}

rb_slope rb_cells_slope(struct rb_cells *cells, struct rb_cell cell,
			struct rb_place place)
{
	static const enum rb_code codes[] = {
		[RB_SLOPE_BARE] = RB_CODE_SLOPE_BARE,
		[RB_SLOPE_REVERSED] = RB_CODE_SLOPE_REVERSED,
		[RB_SLOPE_ZERO_RUN] = RB_CODE_SLOPE_ZERO_RUN,
		[RB_SLOPE_NONSENSE] = RB_CODE_BAD_SLOPE,
		[RB_SLOPE_EMPTY] = RB_CODE_BAD_SLOPE, /* marks alone */
	};
	rb_slope slope = { rb_length_of(0), rb_length_of(0) };
	enum rb_slope_refusal refusal;

	if (rb_cell_is_empty(cell))
		return slope;
	refusal = parse_slope(cells, cell, &slope);
	if (is_clock(cell))
		refusal = RB_SLOPE_NONSENSE;
	if (refusal == RB_SLOPE_READ && !rb_slope_is_steep(slope))
		return slope;
	if (refusal == RB_SLOPE_READ)
		rb_findings_add(cells->findings, RB_CODE_SLOPE_STEEP, place,
				rb_ratio_of(slope), rb_nothing());
	else if (refusal != RB_SLOPE_NONSENSE || !say_changed_slope(cells, cell, place))
		rb_findings_add(cells->findings, codes[refusal], place,
				rb_text(rb_cells_text(cells, cell)), rb_nothing());
	return (rb_slope){ rb_length_of(0), rb_length_of(0) };
}

/* Put the hundreds last written in front of `+10`; false: there are none, or no room. */
static bool complete(const struct rb_cells *cells, struct rb_cell cell,
		     char text[static 64], struct rb_cell *whole)
{
	size_t before = strlen(cells->hundred);

	if (!before || before + cell.length > 64)
		return false;
	memcpy(text, cells->hundred, before);
	memcpy(text + before, cell.text, cell.length);
	*whole = (struct rb_cell){ text, before + cell.length };
	return true;
}

/* Remember the figures before the plus and count the digits behind it. */
static int note_plus(struct rb_cells *cells, struct rb_cell cell)
{
	const char *plus = memchr(cell.text, '+', cell.length);
	size_t before = plus ? (size_t)(plus - cell.text) : 0;
	int digits = 0;

	if (!plus || before >= sizeof cells->hundred)
		return 0;
	memcpy(cells->hundred, cell.text, before);
	cells->hundred[before] = '\0';
	for (size_t i = before + 1; i < cell.length; i++, digits++)
		if (cell.text[i] < '0' || cell.text[i] > '9')
			break;
	return digits;
}

static rb_length refuse_chainage(struct rb_cells *cells, struct rb_cell cell,
				 struct rb_place place, const struct rb_reading *reading)
{
	rb_sheet_refused_chainage(cells->findings, cell, place, reading,
				  rb_unit_of_runs(cells->unit));
	return rb_length_none();
}

rb_length rb_cells_chainage(struct rb_cells *cells, struct rb_cell cell,
			    struct rb_place place, int *plus)
{
	struct rb_reading_rules rules = rules_of(cells, RB_OF_RUN);
	struct rb_reading reading = { .refusal = RB_REFUSE_TEXT };
	struct rb_cell whole = cell;
	char text[64];

	*plus = 0;
	if (rb_cell_is_empty(cell))
		return rb_length_none();
	if (*cell.text == '+' && !complete(cells, cell, text, &whole))
		return refuse_chainage(cells, cell, place, &reading);
	reading = rb_chainage_parse(whole.text, whole.length, &rules);
	if (reading.refusal != RB_READ)
		return refuse_chainage(cells, cell, place, &reading);
	*plus = note_plus(cells, whole);
	return reading.value;
}
