/* SPDX-License-Identifier: MIT */
/* -u, --decimals and --fraction; bold or not. */
#include "cli/style.h"

#include <unistd.h>

#include "cli/stream.h"

#define DECIMALS_MOST 6

/* By unit: its size, and the decimals that one shows at least. */
static const struct {
	int64_t size;
	int decimals;
} units[] = {
	[RB_FEET] = { RB_FOOT, 2 },
	[RB_INCHES] = { RB_INCH, 2 },
	[RB_FEET_INCHES] = { RB_FOOT, 2 },
	[RB_METRES] = { RB_METRE, 3 },
	[RB_MILLIMETRES] = { RB_MILLIMETRE, 0 },
};

/* The finest difference that a style shows, in nanometres. */
static int64_t step_of(struct rb_style style)
{
	int64_t step = units[style.unit].size;

	if (style.unit == RB_FEET_INCHES)
		return RB_INCH / style.fraction;
	for (int i = 0; i < style.decimals; i++)
		step /= 10;
	return step;
}

/* The fewest decimals of a unit that show a step. */
static int decimals_for(enum rb_unit unit, int64_t step)
{
	int64_t size = units[unit].size;
	int decimals = 0;

	for (; size > step && decimals < DECIMALS_MOST; size /= 10)
		decimals++;
	return decimals > units[unit].decimals ? decimals : units[unit].decimals;
}

struct rb_style rb_asked_style(const struct rb_command_line *line, struct rb_style own)
{
	const char *fraction = rb_given_text(line, RB_OPTION_FRACTION);
	struct rb_style style = own;

	style.unit = rb_given_unit(line, own.unit);
	if (style.unit != own.unit)
		style.decimals = decimals_for(style.unit, step_of(own));
	style.decimals = rb_given_number(line, RB_OPTION_DECIMALS, style.decimals);
	if (fraction)
		style.fraction = 8 << rb_given_number(line, RB_OPTION_FRACTION, 0);
	return style;
}

struct rb_reduction rb_asked_reduction(const struct rb_command_line *line,
				       const struct rb_book *book)
{
	return (struct rb_reduction){
		.style = rb_asked_style(line, rb_book_style(book)),
		.unit_asked = rb_given(line, RB_OPTION_UNIT),
		.fraction_asked = rb_given(line, RB_OPTION_FRACTION),
		.decimals = rb_given_number(line, RB_OPTION_DECIMALS, -1),
	};
}

struct rb_text_style rb_result_style(const struct rb_command_line *line)
{
	bool to_terminal = !rb_given(line, RB_OPTION_OUTPUT);
	int wish = rb_given_number(line, RB_OPTION_COLOR, RB_COLOR_AUTO);

	return (struct rb_text_style){
		RB_TEXT_COLUMNS,
		to_terminal && rb_stream_color(STDOUT_FILENO, (enum rb_color)wish)
	};
}
