/* SPDX-License-Identifier: MIT */
/* minimum_json.c - a slope and where it is printed. */
#include "report/minimum_json.h"

#include "report/leg_json.h"

void rb_minimum_put_json(struct rb_json *json, const struct rb_minimum *minimum)
{
	static const struct rb_rules none = { .name = NULL };
	const struct rb_rules *rules = minimum->rules ? minimum->rules : &none;

	rb_json_key(json, "minimum");
	if (!rb_slope_given(minimum->slope)) {
		rb_json_null(json);
		return;
	}
	rb_json_open_line(json, '{');
	rb_json_put_slope(json, "inches_per_foot", minimum->slope, RB_PER_FOOT, 4);
	rb_json_put_slope(json, "percent", minimum->slope, RB_PERCENT, 4);
	rb_json_put_text(json, "rule", rules->name);
	rb_json_put_text(json, "source", rules->source);
	rb_json_put_text(json, "edition", rules->edition);
	rb_json_put_text(json, "read", rules->read);
	rb_json_close(json);
}
