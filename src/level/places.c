/* SPDX-License-Identifier: MIT */
/* places.c - decimals and fractions as steps. */
#include "level/places.h"

#include "measure/unit.h"

rb_length rb_decimal_step(enum rb_unit unit, int decimals)
{
	int64_t step = rb_unit_nm(unit);

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
