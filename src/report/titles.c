/* SPDX-License-Identifier: MIT */
/* titles.c - files and units, in words. */
#include "report/titles.h"

#include <string.h>

const char *rb_title_file(const char *path)
{
	const char *slash = path ? strrchr(path, '/') : NULL;

	if (!path || !strcmp(path, "-"))
		return "standard input";
	return slash ? slash + 1 : path;
}

const char *rb_title_unit(enum rb_unit unit)
{
	static const char *const words[] = {
		[RB_FEET] = "decimal feet",           [RB_INCHES] = "inches",
		[RB_FEET_INCHES] = "feet and inches", [RB_METRES] = "metres",
		[RB_MILLIMETRES] = "millimetres",
	};

	return words[unit];
}

void rb_title_aside(struct rb_phrase *phrase, const char *path, enum rb_unit unit)
{
	rb_phrase_words(phrase, rb_title_file(path));
	rb_phrase_text(phrase, ", ");
	rb_phrase_text(phrase, rb_title_unit(unit));
}
