/* SPDX-License-Identifier: MIT */
/* blanks.c - numbers, and what must not be parted from them. */
#include "report/blanks.h"

#include <stdbool.h>
#include <string.h>

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* "11/16" */
static bool is_fraction(const char *text)
{
	size_t digits = strspn(text, "0123456789");

	return digits && text[digits] == '/' && is_digit(text[digits + 1]);
}

static bool is_unit(const char *text)
{
	static const char *const units[] = { "ft", "in", "m", "mm", "%" };

	for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
		size_t length = strlen(units[i]);

		if (!strncmp(text, units[i], length) && !is_letter(text[length]))
			return true;
	}
	return false;
}

/* A sign with a blank on both sides, from which one takes: 14.28 - 14.29. */
static bool is_sign(const char *text)
{
	return (text[0] == '-' || text[0] == '+') && text[1] == ' ';
}

static bool begins_number(const char *text)
{
	text += *text == '(';
	text += *text == '-';
	return is_digit(*text);
}

/* Is this blank, behind at least one byte of the text, one to be kept?  The inches stay
 * with their feet, 5 ft 3 in, and both numbers with the sign between them. */
static bool is_kept(const char *text, size_t at)
{
	const char *next = text + at + 1;
	char before = text[at - 1];

	if (text[at] != ' ')
		return false;
	if (is_sign(text + at - 1) && (at == 1 || text[at - 2] == ' '))
		return begins_number(next);
	if (is_sign(next) && (is_digit(before) || before == '"'))
		return begins_number(next + 2);
	if (is_digit(before))
		return is_fraction(next) || is_unit(next);
	return at > 3 && !strncmp(text + at - 3, " ft", 3) && is_digit(*next);
}

size_t rb_before_kept_blank(const char *text)
{
	size_t at = 0;

	for (; text[at]; at++)
		if (at && is_kept(text, at))
			break;
	return at;
}

size_t rb_word_length(const char *text)
{
	size_t at = strcspn(text, " \n");

	while (at && text[at] && is_kept(text, at))
		at += 1 + strcspn(text + at + 1, " \n");
	return at;
}
