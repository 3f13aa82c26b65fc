/* SPDX-License-Identifier: MIT */
/* html_words.c - blanks at which no line may end. */
#include "report/html_words.h"

#include <string.h>

#include "report/escape.h"

#define NO_BREAK "\xC2\xA0" /* U+00A0 */

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

/* The bytes up to a blank behind a number that must stay with what follows. */
static size_t before_kept_blank(const char *text)
{
	size_t at = 0;

	for (; text[at]; at++)
		if (at && text[at] == ' ' && is_digit(text[at - 1]) &&
		    (is_fraction(text + at + 1) || is_unit(text + at + 1)))
			break;
	return at;
}

void rb_sink_html_words(struct rb_sink *sink, const char *text)
{
	for (;;) {
		size_t bytes = before_kept_blank(text);

		rb_sink_escaped(sink, text, bytes);
		if (!text[bytes])
			return;
		rb_sink_text(sink, NO_BREAK);
		text += bytes + 1;
	}
}
