/* SPDX-License-Identifier: MIT */
/* shown.c - places enough, and not more. */
#include "report/shown.h"

#include "measure/unit.h"

int rb_shown_decimals(rb_length a, enum rb_unit unit, int most)
{
	int64_t whole = rb_unit_nm(unit), rest = a.nm % whole;
	int decimals = 0;

	/* The rest is below one unit, so ten times it always fits. */
	while (rest != 0 && decimals < most) {
		rest = rest * 10 % whole;
		decimals++;
	}
	return rest == 0 ? decimals : -1;
}

int rb_shown_fraction(rb_length a)
{
	for (int part = 1; part <= 64; part *= 2)
		if (a.nm % RB_INCH * part % RB_INCH == 0)
			return part;
	return 0;
}

/* The most places that a single length is given: a rod and a print show no more. */
static int most_decimals(enum rb_unit unit)
{
	return unit == RB_MILLIMETRES ? 2 : unit == RB_INCHES ? 4 : 5;
}

void rb_shown(char buf[static RB_LENGTH_TEXT], rb_length a, enum rb_unit unit)
{
	struct rb_style style = { .unit = unit, .marked = true };
	int fraction = rb_shown_fraction(a);

	style.decimals = rb_shown_decimals(a, unit, most_decimals(unit));
	if (style.decimals < 0)
		style.decimals = most_decimals(unit);
	style.fraction = fraction ? fraction : 64;
	rb_length_format(buf, a, style);
}

/* Something that is shown as nothing says nothing. */
static bool vanishes(rb_length a, struct rb_style style)
{
	return a.nm && !rb_length_as_shown(a, style).nm;
}

struct rb_style rb_shown_style(rb_length a, struct rb_style style)
{
	if (!rb_length_given(a) || !vanishes(a, style))
		return style;
	if (style.unit == RB_FEET_INCHES) {
		style.fraction = 64;
		if (!vanishes(a, style))
			return style;
		style = (struct rb_style){ RB_FEET, 4, 64, true };
	}
	while (style.decimals < 9 && vanishes(a, style))
		style.decimals++;
	return style;
}

/* Do both say what they are, and which is greater? */
static bool told_apart(rb_length a, rb_length b, struct rb_style style)
{
	return (a.nm == b.nm ||
		rb_length_as_shown(a, style).nm != rb_length_as_shown(b, style).nm) &&
	       !vanishes(a, style) && !vanishes(b, style);
}

/* Drop the zeros that more places gave to a length that needs none of them. */
static struct rb_style without_zeros(rb_length a, struct rb_style style, int least)
{
	int needed = rb_shown_decimals(rb_length_as_shown(a, style), style.unit,
				       style.decimals);

	if (needed >= 0 && needed < style.decimals)
		style.decimals = needed > least ? needed : least;
	return style;
}

void rb_shown_pair(char a_text[static RB_LENGTH_TEXT], char b_text[static RB_LENGTH_TEXT],
		   rb_length a, rb_length b, struct rb_style style)
{
	int least = style.decimals;

	if (style.unit == RB_FEET_INCHES) {
		if (!told_apart(a, b, style))
			style.fraction = 64;
		if (!told_apart(a, b, style)) {
			style.unit = RB_FEET;
			style.decimals = least = 4;
		}
	}
	while (style.unit != RB_FEET_INCHES && style.decimals < 9 &&
	       !told_apart(a, b, style))
		style.decimals++;
	if (style.decimals > least && style.decimals < 9)
		style.decimals++; /* 8.66 says more than 8.7 */
	rb_length_format(a_text, a, without_zeros(a, style, least));
	rb_length_format(b_text, b, without_zeros(b, style, least));
}
