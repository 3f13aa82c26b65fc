/* SPDX-License-Identifier: MIT */
/* conversion.c - exact ratios, rounded once for each notation. */
#include "report/conversion.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "measure/number.h"
#include "measure/unit.h"
#include "measure/wide.h"
#include "report/json.h"

bool rb_conversion_make(struct rb_conversion *out, const char *input,
			const struct rb_conversion_style *style)
{
	const struct rb_reading_rules rules = { style->unit, RB_OF_TAPE, false,
						rb_length_none() };
	size_t length = strlen(input);

	out->input = input;
	out->style = *style;
	rb_expression_parse(input, length, &rules, &out->worked);
	out->reading = rb_reading_parse(input, length, &rules);
	return out->worked.refusal == RB_EXPRESSION_READ;
}

rb_length rb_conversion_mark(const struct rb_conversion *c)
{
	int64_t part = RB_INCH / c->style.fraction;
	struct rb_ratio true_length = c->worked.ratio;

	return rb_length_of(part * rb_wide_divide(true_length.num,
						  rb_wide_mul(true_length.den, part)));
}

/* The most decimals that a number can have and still be counted in 64 bits. */
static int decimals_that_fit(rb_wide top, rb_wide bottom, int decimals)
{
	rb_wide size = (top < 0 ? -top : top) / bottom;

	while (decimals > 0 && size >= (INT64_MAX - 1) / rb_ten_to(decimals))
		decimals--;
	return decimals;
}

/* top / bottom as a decimal number; true if that is exact. */
static bool write_quotient(char buf[static RB_RATIO_TEXT], rb_wide top, rb_wide bottom,
			   int decimals, int least)
{
	rb_wide scaled;
	int64_t parts;
	long long whole, rest;

	decimals = decimals_that_fit(top, bottom, decimals);
	scaled = top * rb_ten_to(decimals);
	parts = rb_wide_divide(scaled, bottom);
	while (decimals > least && parts % 10 == 0) {
		parts /= 10;
		decimals--;
	}
	whole = llabs(parts / rb_ten_to(decimals));
	rest = llabs(parts % rb_ten_to(decimals));
	if (decimals)
		snprintf(buf, RB_RATIO_TEXT, "%s%lld.%0*lld", parts < 0 ? "-" : "", whole,
			 decimals, rest);
	else
		snprintf(buf, RB_RATIO_TEXT, "%s%lld", parts < 0 ? "-" : "", whole);
	return scaled % bottom == 0;
}

bool rb_ratio_write(char buf[static RB_RATIO_TEXT], struct rb_ratio a, enum rb_unit unit,
		    int decimals, int least)
{
	rb_wide bottom = rb_wide_mul(a.den, a.is_length ? rb_unit_nm(unit) : 1);

	return write_quotient(buf, a.num, bottom, decimals, least);
}

int rb_conversion_left(char buf[static RB_RATIO_TEXT], const struct rb_conversion *c,
		       int decimals, int least)
{
	struct rb_ratio length = c->worked.ratio;
	rb_wide left = rb_wide_mul(rb_conversion_mark(c).nm, length.den) - length.num;

	write_quotient(buf, left, rb_wide_mul(length.den, RB_INCH), decimals, least);
	return rb_wide_compare(left, 0);
}

int rb_conversion_decimals(const struct rb_conversion *c, enum rb_unit unit)
{
	return c->style.decimals < 0 ? rb_json_decimals(unit) : c->style.decimals;
}
