/* SPDX-License-Identifier: MIT */
/* leg_json.c - lengths, slopes and a verdict under their keys. */
#include "report/leg_json.h"

#include <string.h>

/* Decimals of a slope, and of what a reading leaves uncertain in it. */
#define DECIMALS 4
#define FINE     6

struct rb_json_lengths rb_json_lengths_of(enum rb_unit unit, int decimals)
{
	if (unit == RB_FEET_INCHES)
		unit = RB_FEET;
	return (struct rb_json_lengths){ unit, decimals < 0 ? rb_json_decimals(unit)
							    : decimals };
}

void rb_json_put(struct rb_json *json, const char *key, rb_length value,
		 struct rb_json_lengths lengths)
{
	rb_json_key(json, key);
	rb_json_length(json, value, lengths.unit, lengths.decimals);
}

void rb_json_put_text(struct rb_json *json, const char *key, const char *text)
{
	rb_json_key(json, key);
	rb_json_text(json, text);
}

void rb_json_put_bool(struct rb_json *json, const char *key, bool value)
{
	rb_json_key(json, key);
	rb_json_bool(json, value);
}

/* Zeros at the end say nothing, but the first after the point. */
static void trim(char *number)
{
	char *point = strchr(number, '.');
	size_t end = strlen(number);

	while (point && number + end - 1 > point + 1 && number[end - 1] == '0')
		end--;
	number[end] = '\0';
}

void rb_json_put_slope(struct rb_json *json, const char *key, rb_slope slope,
		       enum rb_slope_form form, int decimals)
{
	char number[RB_SLOPE_TEXT] = "";

	if (rb_slope_given(slope))
		rb_slope_number(number, slope, form, decimals);
	trim(number);
	rb_json_key(json, key);
	rb_json_number(json, number);
}

void rb_leg_put_json(struct rb_json *json, const struct rb_leg *leg,
		     struct rb_json_lengths lengths)
{
	rb_json_put_text(json, "from", leg->from);
	rb_json_put_text(json, "to", leg->to);
	rb_json_put(json, "length", leg->length, lengths);
	rb_json_put(json, "fall", leg->fall, lengths);
	rb_json_put_slope(json, "inches_per_foot", leg->slope, RB_PER_FOOT, DECIMALS);
	rb_json_put_slope(json, "percent", leg->slope, RB_PERCENT, DECIMALS);
	rb_json_put_slope(json, "one_in", leg->slope, RB_ONE_IN, DECIMALS);
	rb_json_put_slope(json, "degrees", leg->slope, RB_DEGREES, DECIMALS);
	rb_json_put_slope(json, "minimum_inches_per_foot", leg->minimum, RB_PER_FOOT,
			  DECIMALS);
	rb_json_put_slope(json, "uncertainty_inches_per_foot", leg->uncertainty,
			  RB_PER_FOOT, FINE);
	rb_json_put_text(json, "verdict", rb_leg_verdict_name(leg->verdict));
	rb_json_put_bool(json, "within_reading", leg->within_reading);
}
