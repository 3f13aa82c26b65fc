/* SPDX-License-Identifier: MIT */
/* convert_json.c - input, feet, inches, metres, feet_inches, rounding_error_inches. */
#include "report/convert_json.h"

#include <string.h>

#define COLUMNS 6

static const char *const columns[COLUMNS] = {
	"input", "feet", "inches", "metres", "feet_inches", "rounding_error_inches",
};

/* The values of the columns behind the first, as they are written. */
struct values {
	char feet[RB_RATIO_TEXT], inches[RB_RATIO_TEXT], metres[RB_RATIO_TEXT];
	char mark[RB_LENGTH_TEXT], left[RB_RATIO_TEXT];
};

static void write_in(char buf[static RB_RATIO_TEXT], const struct rb_conversion *c,
		     struct rb_ratio a, enum rb_unit unit)
{
	int decimals = rb_conversion_decimals(c, unit);

	rb_ratio_write(buf, a, unit, decimals, decimals ? 1 : 0);
}

static struct values values_of(const struct rb_conversion *c)
{
	const struct rb_style tape = { RB_FEET_INCHES, 0, c->style.fraction, true };
	int decimals = rb_conversion_decimals(c, RB_INCHES);
	struct values v = { .feet = "" };

	write_in(v.feet, c, c->worked.ratio, RB_FEET);
	write_in(v.inches, c, c->worked.ratio, RB_INCHES);
	write_in(v.metres, c, c->worked.ratio, RB_METRES);
	rb_conversion_left(v.left, c, decimals, decimals ? 1 : 0);
	rb_length_format(v.mark, rb_conversion_mark(c), tape);
	return v;
}

void rb_conversion_write_json(struct rb_json *json, const struct rb_conversion *c)
{
	struct values v = values_of(c);

	rb_json_open_line(json, '{');
	rb_json_key(json, columns[0]);
	rb_json_string(json, c->input);
	rb_json_key(json, columns[1]);
	rb_json_number(json, v.feet);
	rb_json_key(json, columns[2]);
	rb_json_number(json, v.inches);
	rb_json_key(json, columns[3]);
	rb_json_number(json, v.metres);
	rb_json_key(json, columns[4]);
	rb_json_string(json, v.mark);
	rb_json_key(json, columns[5]);
	rb_json_number(json, v.left);
	rb_json_close(json);
}

void rb_conversion_write_csv_head(struct rb_csv *csv)
{
	for (size_t i = 0; i < COLUMNS; i++)
		rb_csv_text(csv, columns[i]);
	rb_csv_end_row(csv);
}

void rb_conversion_write_csv(struct rb_csv *csv, const struct rb_conversion *c)
{
	struct values v = values_of(c);
	const char *const numbers[COLUMNS - 1] = { v.feet, v.inches, v.metres, v.mark,
						   v.left };

	rb_csv_text(csv, c->input);
	for (size_t i = 0; i < COLUMNS - 1; i++)
		rb_csv_number(csv, numbers[i], strlen(numbers[i]));
	rb_csv_end_row(csv);
}
