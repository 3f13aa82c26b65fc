/* SPDX-License-Identifier: MIT */
/* Words, out of folded text. */
#include "notes/word.h"

#include <string.h>

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (unsigned char)c >= 0x80;
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static size_t sum_sign_at(const char *s)
{
	if (!strncmp(s, RB_SIGMA, sizeof RB_SIGMA - 1))
		return sizeof RB_SIGMA - 1;
	return strncmp(s, RB_SUM_SIGN, sizeof RB_SUM_SIGN - 1) ? 0
							       : sizeof RB_SUM_SIGN - 1;
}

/* A plus or minus with nothing beside it that it could join. */
static bool is_lone_sign(const char *begin, const char *s)
{
	return (*s == '+' || *s == '-') &&
	       !(s > begin && (is_letter(s[-1]) || is_digit(s[-1]))) &&
	       !is_letter(s[1]) && !is_digit(s[1]);
}

/* A letter, or a stop or stroke behind a lone one: B.S., F/S. */
static bool goes_on(const char *from, const char *s)
{
	if (*s == '.' || *s == '/')
		return s == from + 1 && is_letter(s[1]);
	return is_letter(*s) && !sum_sign_at(s);
}

static const char *end_of(const char *from)
{
	const char *s = from;

	if (sum_sign_at(s))
		return s + sum_sign_at(s);
	if (*s == '+' || *s == '-')
		return s + 1;
	if (is_digit(*s))
		while (is_digit(*s))
			s++;
	else
		while (goes_on(from, s))
			s++;
	return s;
}

bool rb_word_next(const char **text, struct rb_word *word)
{
	const char *s = *text;

	while (*s && !is_letter(*s) && !is_digit(*s) && !is_lone_sign(*text, s))
		s++;
	word->text = s;
	*text = *s ? end_of(s) : s;
	word->length = (size_t)(*text - s);
	return word->length > 0;
}

bool rb_word_is(struct rb_word word, const char *pattern)
{
	for (size_t i = 0; i < word.length && *pattern != '*'; i++) {
		char c = word.text[i];

		if (c != '.' && c != '/' && c != *pattern++)
			return false;
	}
	return !*pattern || *pattern == '*';
}

bool rb_word_is_figures(struct rb_word word)
{
	return is_digit(word.text[0]);
}

bool rb_word_is_sum_sign(struct rb_word word)
{
	return sum_sign_at(word.text) > 0;
}
