/* SPDX-License-Identifier: MIT */
/* places.c - decimals and fractions as steps. */
#include "level/places.h"

static const int64_t unit_nm[] = {
	[RB_FEET] = RB_FOOT,
	[RB_INCHES] = RB_INCH,
	[RB_FEET_INCHES] = RB_FOOT,
	[RB_METRES] = RB_METRE,
	[RB_MILLIMETRES] = RB_MILLIMETRE,
};

rb_length rb_decimal_step(enum rb_unit unit, int decimals)
{
	int64_t step = unit_nm[unit];

	while (decimals-- > 0 && step > 1)
		step /= 10;
	return rb_length_of(step > 0 ? step : 1);
}

rb_length rb_fraction_step(int denominator)
{
	return rb_length_of(denominator > 1 ? RB_INCH / denominator : RB_INCH);
}

rb_length rb_reading_step(const struct rb_reading *reading)
{
	if (reading->notation == RB_AS_DECIMAL && !reading->sixtyfourth)
		return rb_decimal_step(reading->unit, reading->decimals);
	if (reading->sixtyfourth)
		return rb_length_of(RB_SIXTYFOURTH);
	if (reading->decimals > 0)
		return rb_decimal_step(RB_INCHES, reading->decimals);
	return rb_fraction_step(reading->denominator);
}
