/* SPDX-License-Identifier: MIT */
/* Signs of damage in a name. */
#include "notes/mangled.h"

#include <stdbool.h>
#include <string.h>

#include "measure/mark.h"
#include "measure/reading.h"
#include "notes/rows.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* 1.00E+05, 1,00E+05, 2.00E-01, 1E+05; but 3E-2 is a name that people give. */
static bool is_exponent(const char *s)
{
	const char *begin = s;
	bool point, plus;

	while (is_digit(*s))
		s++;
	point = s > begin && (*s == '.' || *s == ',');
	s += point;
	while (is_digit(*s))
		s++;
	if (s == begin || (*s != 'E' && *s != 'e') || (s[1] != '+' && s[1] != '-'))
		return false;
	plus = s[1] == '+';
	s += 2;
	if (!is_digit(s[0]) || !is_digit(s[1]))
		return false;
	return !s[2 + strspn(s + 2, "0123456789")] && (point || plus);
}

/* A date, a time, an error: as they would be refused in a cell of readings. */
static bool is_of_a_sheet(const char *name, size_t length)
{
	const struct rb_reading_rules rules = { RB_FEET, RB_OF_ROD, false,
						rb_length_none() };
	enum rb_refusal refusal;

	if (!is_digit(name[0]) && name[0] != '#' && name[0] != 'E')
		return false;
	if (!strpbrk(name, "#-/:"))
		return false;
	refusal = rb_reading_parse(name, length, &rules).refusal;
	return refusal == RB_REFUSE_SHEET || refusal == RB_REFUSE_TIME ||
	       (refusal == RB_REFUSE_DATE && length > 4);
}

/* The bytes that were read as Windows-1252, where they are UTF-8 and something else. */
static bool is_misread(const char *name, size_t length,
		       char meant[static RB_MANGLED_NAME])
{
	size_t size;

	if (length >= RB_MANGLED_NAME)
		return false;
	size = rb_mojibake_undo(name, length, meant, RB_MANGLED_NAME - 1);
	meant[size] = '\0';
	return size > 0 && size < length && rb_source_is_utf8(meant, size);
}

static bool is_plain(const char *name)
{
	while (*name && (unsigned char)*name < 0x80)
		name++;
	return !*name;
}

enum rb_mangled rb_name_mangled(const char *name, size_t length,
				char meant[static RB_MANGLED_NAME])
{
	if (!is_plain(name) && is_misread(name, length, meant))
		return RB_MANGLED_LETTERS;
	meant[0] = '\0';
	if ((is_digit(name[0]) && is_exponent(name)) || is_of_a_sheet(name, length))
		return RB_MANGLED_BY_SHEET;
	return RB_NOT_MANGLED;
}
