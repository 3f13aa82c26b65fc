/* SPDX-License-Identifier: MIT */
/* unit.c - units: their names, as written on a form, and what a bare number means. */
#include "measure/unit.h"

#include <string.h>

/* clang-format off */
/* Letters only, in lower case, without "decimal". */
static const struct name {
	const char *text;
	enum rb_unit unit;
} names[] = {
	{ "ft", RB_FEET }, { "feet", RB_FEET }, { "foot", RB_FEET },
	{ "in", RB_INCHES }, { "inch", RB_INCHES }, { "inches", RB_INCHES },
	{ "ftin", RB_FEET_INCHES }, { "ftandin", RB_FEET_INCHES },
	{ "feetinches", RB_FEET_INCHES }, { "feetandinches", RB_FEET_INCHES },
	{ "feetinch", RB_FEET_INCHES }, { "footinch", RB_FEET_INCHES },
	{ "m", RB_METRES }, { "metre", RB_METRES }, { "metres", RB_METRES },
	{ "meter", RB_METRES }, { "meters", RB_METRES },
	{ "mm", RB_MILLIMETRES },
	{ "millimetre", RB_MILLIMETRES }, { "millimetres", RB_MILLIMETRES },
	{ "millimeter", RB_MILLIMETRES }, { "millimeters", RB_MILLIMETRES },
};
/* clang-format on */

#define NAME_MAX 32

/* Keep the letters, made small; false for a text with figures or too many letters. */
static bool letters_of(const char *text, size_t length, char letters[static NAME_MAX])
{
	size_t count = 0;

	for (size_t i = 0; i < length; i++) {
		char c = text[i];

		if (c >= 'A' && c <= 'Z')
			c = (char)(c - 'A' + 'a');
		if (c >= '0' && c <= '9')
			return false;
		if (c < 'a' || c > 'z')
			continue;
		if (count == NAME_MAX - 1)
			return false; /* no unit has so many */
		letters[count++] = c;
	}
	letters[count] = '\0';
	return true;
}

/* "Decimal feet" and "feet (decimal)" are feet. */
static void drop_decimal(char *letters)
{
	static const char word[] = "decimal";
	char *at = strstr(letters, word);

	if (at != NULL)
		memmove(at, at + sizeof word - 1, strlen(at + sizeof word - 1) + 1);
}

bool rb_unit_parse(const char *text, size_t length, enum rb_unit *unit)
{
	char letters[NAME_MAX];

	if (!letters_of(text, length, letters))
		return false;
	drop_decimal(letters);
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strcmp(letters, names[i].text) == 0) {
			*unit = names[i].unit;
			return true;
		}
	return false;
}

int64_t rb_unit_nm(enum rb_unit unit)
{
	static const int64_t nm[] = { [RB_FEET] = RB_FOOT,
				      [RB_INCHES] = RB_INCH,
				      [RB_FEET_INCHES] = RB_FOOT,
				      [RB_METRES] = RB_METRE,
				      [RB_MILLIMETRES] = RB_MILLIMETRE };

	return nm[unit];
}

bool rb_unit_is_metric(enum rb_unit unit)
{
	return unit == RB_METRES || unit == RB_MILLIMETRES;
}
