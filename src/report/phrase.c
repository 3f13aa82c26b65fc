/* SPDX-License-Identifier: MIT */
/* phrase.c - texts that grow. */
#include "report/phrase.h"

#include <stdio.h>
#include <string.h>

#include "report/shown.h"

#define FIRST_ROOM 256

void rb_phrase_init(struct rb_phrase *phrase, struct rb_arena *arena)
{
	*phrase = (struct rb_phrase){ .arena = arena, .room = FIRST_ROOM };
	phrase->text = rb_arena_take(arena, FIRST_ROOM, 1);
	phrase->out_of_memory = !phrase->text;
	if (!phrase->text)
		phrase->text = phrase->nothing;
	rb_phrase_clear(phrase);
}

void rb_phrase_clear(struct rb_phrase *phrase)
{
	phrase->used = 0;
	phrase->text[0] = '\0';
}

static bool make_room(struct rb_phrase *phrase, size_t length)
{
	size_t room = 2 * (phrase->used + length) + 1;
	char *text;

	if (phrase->out_of_memory)
		return false;
	if (phrase->used + length < phrase->room)
		return true;
	text = rb_arena_take(phrase->arena, room, 1);
	if (!text) {
		phrase->out_of_memory = true;
		return false;
	}
	memcpy(text, phrase->text, phrase->used);
	phrase->text = text;
	phrase->room = room;
	return true;
}

void rb_phrase_text(struct rb_phrase *phrase, const char *text)
{
	size_t length = strlen(text);

	if (!make_room(phrase, length))
		return;
	memcpy(phrase->text + phrase->used, text, length + 1);
	phrase->used += length;
}

void rb_phrase_number(struct rb_phrase *phrase, int64_t number)
{
	char digits[24];

	snprintf(digits, sizeof digits, "%lld", (long long)number);
	rb_phrase_text(phrase, digits);
}

void rb_phrase_length(struct rb_phrase *phrase, rb_length a, struct rb_style style)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, a, style);
	rb_phrase_text(phrase, text);
}

void rb_phrase_shown(struct rb_phrase *phrase, rb_length a, enum rb_unit unit)
{
	char text[RB_LENGTH_TEXT];

	rb_shown(text, a, unit);
	rb_phrase_text(phrase, text);
}

void rb_phrase_words(struct rb_phrase *phrase, const char *text)
{
	size_t from = phrase->used;

	rb_phrase_text(phrase, text);
	for (; from < phrase->used; from++)
		if (strchr("\r\n\t", phrase->text[from]))
			phrase->text[from] = ' ';
}

void rb_phrase_rounded(struct rb_phrase *phrase, bool before_exact, bool result_exact)
{
	if (!result_exact)
		rb_phrase_text(phrase, " (rounded)");
	else if (!before_exact)
		rb_phrase_text(phrase, " (exact)");
}
