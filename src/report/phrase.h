/* SPDX-License-Identifier: MIT */
/*
 * phrase.h - a text put together from pieces.
 *
 * It grows in an arena, and may be cleared and used again.  Adding never fails: a phrase
 * that had no memory remembers it, and its text stays whole up to there.
 */
#ifndef RB_REPORT_PHRASE_H
#define RB_REPORT_PHRASE_H

#include "rodbook/arena.h"
#include "rodbook/length.h"

struct rb_phrase {
	struct rb_arena *arena;
	char *text; /* "" at first, and where there was no memory at all */
	size_t used, room;
	bool out_of_memory;
	char nothing[1]; /* the text where there was no memory at all */
};

void rb_phrase_init(struct rb_phrase *phrase, struct rb_arena *arena);
void rb_phrase_clear(struct rb_phrase *phrase);
void rb_phrase_text(struct rb_phrase *phrase, const char *text);
void rb_phrase_number(struct rb_phrase *phrase, int64_t number);
void rb_phrase_length(struct rb_phrase *phrase, rb_length a, struct rb_style style);

/* A length with its unit and the places that it needs (rb_shown()). */
void rb_phrase_shown(struct rb_phrase *phrase, rb_length a, enum rb_unit unit);

/* Words of the user's on one line: line ends and tabs become blanks. */
void rb_phrase_words(struct rb_phrase *phrase, const char *text);

/* Say whether a line of working had to round: " (rounded)" where its result is; where
 * only numbers before the result are, that the result is exact all the same. */
void rb_phrase_rounded(struct rb_phrase *phrase, bool before_exact, bool result_exact);

#endif
