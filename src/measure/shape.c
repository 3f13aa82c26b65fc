/* SPDX-License-Identifier: MIT */
/* shape.c - the tokens of a marked text. */
#include "measure/shape.h"

#include <string.h>

/* clang-format off */
static const struct word {
	const char *text;
	char letter;
} words[] = {
	{ "ft", 'F' },         { "feet", 'F' },        { "foot", 'F' },
	{ "in", 'I' },         { "inch", 'I' },        { "inches", 'I' },
	{ "ins", 'I' },
	{ "m", 'M' },          { "metre", 'M' },       { "metres", 'M' },
	{ "meter", 'M' },      { "meters", 'M' },
	{ "mm", 'T' },         { "millimetre", 'T' },  { "millimetres", 'T' },
	{ "millimeter", 'T' }, { "millimeters", 'T' },
	{ "cm", 'C' },         { "centimetre", 'C' },  { "centimetres", 'C' },
	{ "centimeter", 'C' }, { "centimeters", 'C' },
};
/* clang-format on */

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return c >= 'a' && c <= 'z';
}

static bool starts_number(const char *text)
{
	return is_digit(*text) || ((*text == '.' || *text == ',') && is_digit(text[1]));
}

/* A word for a unit, with its full stop; a stop with a figure behind it may be a decimal
 * point ("5 ft.5 in"), and then nothing is known. */
static char unit_word(const char **text)
{
	const char *word = *text;
	size_t length = 0;

	while (is_letter(word[length]))
		length++;
	*text += length;
	if (**text == '.') {
		if (is_digit((*text)[1]))
			return '?';
		++*text;
	}
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (strncmp(word, words[i].text, length) == 0 &&
		    words[i].text[length] == '\0')
			return words[i].letter;
	return '?';
}

static char number_token(const char **text, int at, const struct rb_reading_rules *rules,
			 struct rb_shape *out)
{
	struct rb_number number;
	enum rb_number_kind kind = rb_number_scan(text, rules, &number);

	if (out->numbers == RB_SHAPE_NUMBERS)
		return '?';
	out->number_at[out->numbers] = at;
	out->number[out->numbers++] = number;
	return (char)kind;
}

static char mark_token(const char **text)
{
	char c = *(*text)++;

	if (c == '\'')
		return 'F';
	if (c == '"')
		return 'I';
	return c == '-' || c == '/' ? c : '?';
}

static bool number_follows(const char *text)
{
	return starts_number(text + (*text == ' '));
}

void rb_shape_read(const struct rb_marked *marked, int begin, int end,
		   const struct rb_reading_rules *rules, struct rb_shape *out)
{
	const char *from = marked->text + begin;
	bool after_feet = false;
	char letter = '\0';

	out->length = 0;
	out->numbers = 0;
	while (from < marked->text + end && letter != '?') {
		int at = (int)(from - marked->text);

		if (*from == ' ') {
			from++;
			continue;
		}
		if (starts_number(from))
			letter = number_token(&from, at, rules, out);
		else
			letter = is_letter(*from) ? unit_word(&from) : mark_token(&from);
		if (letter == '-' && after_feet && number_follows(from))
			continue;
		after_feet = letter == 'F';
		if (out->length == RB_SHAPE)
			letter = '?';
		out->text[out->length] = letter;
		out->at[out->length++] = at;
	}
	out->text[out->length] = '\0';
}
