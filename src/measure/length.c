/* SPDX-License-Identifier: MIT */
/* length.c - exact lengths: a share of one, and one as text for people. */
#include "rodbook/length.h"

#include "measure/wide.h"

/* clang-format off */
static const struct unit {
	const char *name;
	enum rb_unit runs;  /* the unit along the ground */
	int64_t nm;         /* of the whole unit before the point */
	const char *mark;   /* behind a number */
	bool always_marked;
} units[] = {
	[RB_FEET]        = { "ft",    RB_FEET,   RB_FOOT,       " ft", false },
	[RB_INCHES]      = { "in",    RB_FEET,   RB_INCH,       "\"",  true },
	[RB_FEET_INCHES] = { "ft-in", RB_FEET,   RB_FOOT,       "",    true },
	[RB_METRES]      = { "m",     RB_METRES, RB_METRE,      " m",  false },
	[RB_MILLIMETRES] = { "mm",    RB_METRES, RB_MILLIMETRE, " mm", false },
};
/* clang-format on */

static const int64_t tens[] = { 1,      10,      100,      1000,      10000,
				100000, 1000000, 10000000, 100000000, 1000000000 };
#define PLACES_MAX ((int)(sizeof tens / sizeof *tens) - 1)

rb_length rb_length_share(rb_length a, int64_t part, int64_t whole)
{
	return rb_length_of(rb_wide_divide(rb_wide_mul(a.nm, part), whole));
}

enum rb_unit rb_unit_of_runs(enum rb_unit unit)
{
	return units[unit].runs;
}

const char *rb_unit_name(enum rb_unit unit)
{
	return units[unit].name;
}

/* A length rounded to a step: so many wholes and so many steps of a whole. */
struct rounded {
	int64_t whole;
	int64_t steps;
	int64_t rest; /* what was left over, as a share of a step: 0 where exact */
};

/*
 * Split before rounding: the wholes times the steps need not fit 64 bits, while a rest
 * below one whole (at most 1e9 nm) times 1e9 steps does.
 */
static struct rounded round_to_steps(int64_t nm, int64_t whole_nm, int64_t steps)
{
	int64_t size = nm % whole_nm * steps;
	struct rounded r = { nm / whole_nm, size / whole_nm, size % whole_nm };

	if (r.rest >= whole_nm - r.rest)
		r.steps++;
	if (r.steps == steps) {
		r.steps = 0;
		r.whole++;
	}
	return r;
}

/* Steps of an inch in feet and inches: 16 are sixteenths. */
static int64_t parts_of(struct rb_style style)
{
	return style.fraction > 0 ? style.fraction : 1;
}

/* Steps of a whole unit. */
static int64_t steps_of(struct rb_style style)
{
	int decimals = style.decimals;

	if (style.unit == RB_FEET_INCHES)
		return 12 * parts_of(style);
	if (decimals < 0)
		decimals = 0;
	return tens[decimals < PLACES_MAX ? decimals : PLACES_MAX];
}

static struct rounded round_to_style(rb_length a, struct rb_style style)
{
	return round_to_steps(rb_length_absolute(a).nm, units[style.unit].nm,
			      steps_of(style));
}

rb_length rb_length_as_shown(rb_length a, struct rb_style style)
{
	int64_t unit = units[style.unit].nm;
	struct rounded r;
	int64_t shown;

	if (!rb_length_given(a))
		return a;
	r = round_to_style(a, style);
	shown = r.whole * unit +
		rb_wide_divide(rb_wide_mul(r.steps, unit), steps_of(style));
	return rb_length_of(a.nm < 0 ? -shown : shown);
}

/* Write a whole number of at least `width` digits; returns the end. */
static char *put_number(char *to, int64_t number, int width)
{
	char digits[24];
	int count = 0;

	while (number > 0 || count < width) {
		digits[count++] = (char)('0' + number % 10);
		number /= 10;
	}
	while (count > 0)
		*to++ = digits[--count];
	return to;
}

static char *put_text(char *to, const char *text)
{
	while (*text != '\0')
		*to++ = *text++;
	return to;
}

static char *put_decimal(char *to, struct rounded r, struct rb_style style)
{
	int64_t steps = steps_of(style);
	int places = 0;

	while (tens[places] < steps)
		places++;
	to = put_number(to, r.whole, 1);
	if (places > 0) {
		*to++ = '.';
		to = put_number(to, r.steps, places);
	}
	if (style.marked || units[style.unit].always_marked)
		to = put_text(to, units[style.unit].mark);
	return to;
}

static char *put_feet_inches(char *to, struct rounded r, struct rb_style style)
{
	int64_t parts = parts_of(style);
	int64_t inches = r.steps / parts, numerator = r.steps % parts;

	to = put_text(put_number(to, r.whole, 1), "'-");
	to = put_number(to, inches, 1);
	if (numerator > 0) {
		while (numerator % 2 == 0 && parts % 2 == 0) {
			numerator /= 2;
			parts /= 2;
		}
		*to++ = ' ';
		to = put_number(to, numerator, 1);
		*to++ = '/';
		to = put_number(to, parts, 1);
	}
	return put_text(to, "\"");
}

bool rb_length_format(char buf[static RB_LENGTH_TEXT], rb_length a, struct rb_style style)
{
	struct rounded r;
	char *to = buf;

	*to = '\0';
	if (!rb_length_given(a))
		return true;
	r = round_to_style(a, style);
	if (a.nm < 0 && (r.whole > 0 || r.steps > 0))
		*to++ = '-';
	to = style.unit == RB_FEET_INCHES ? put_feet_inches(to, r, style)
					  : put_decimal(to, r, style);
	*to = '\0';
	return r.rest == 0;
}
