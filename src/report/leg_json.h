/* SPDX-License-Identifier: MIT */
/*
 * leg_json.h - a leg as JSON, the same wherever there are legs.
 */
#ifndef RB_REPORT_LEG_JSON_H
#define RB_REPORT_LEG_JSON_H

#include "level/leg.h"
#include "report/json.h"

/* How the lengths of an object are written. */
struct rb_json_lengths {
	enum rb_unit unit;
	int decimals;
};

/* The unit of numbers in a result: feet for feet-inches; decimals -1: the usual ones. */
struct rb_json_lengths rb_json_lengths_of(enum rb_unit unit, int decimals);

/* A key and its length, a key and its text: null where there is none. */
void rb_json_put(struct rb_json *json, const char *key, rb_length value,
		 struct rb_json_lengths lengths);
void rb_json_put_text(struct rb_json *json, const char *key, const char *text);
void rb_json_put_bool(struct rb_json *json, const char *key, bool value);

/* A key and a slope in a form; null where it is not given. */
void rb_json_put_slope(struct rb_json *json, const char *key, rb_slope slope,
		       enum rb_slope_form form, int decimals);

/* Write the keys of a leg into an open object: from, to, length, fall, inches_per_foot,
 * percent, one_in, degrees, minimum_inches_per_foot, uncertainty_inches_per_foot, verdict
 * and within_reading. */
void rb_leg_put_json(struct rb_json *json, const struct rb_leg *leg,
		     struct rb_json_lengths lengths);

#endif
