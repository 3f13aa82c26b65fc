/* SPDX-License-Identifier: MIT */
/*
 * word.h - the words of a name or a heading.
 *
 * A word is a run of letters, a run of figures, a sign of a sum, or a plus or minus that
 * stands alone.  A stop or a stroke within initials is passed over: B.S. and B/S are bs.
 */
#ifndef RB_NOTES_WORD_H
#define RB_NOTES_WORD_H

#include <stdbool.h>
#include <stddef.h>

/* Capital sigma, and the sign of a sum. */
#define RB_SIGMA    "\xCE\xA3"
#define RB_SUM_SIGN "\xE2\x88\x91"

struct rb_word {
	const char *text; /* within the text; not ended */
	size_t length;
};

/* The next word of a text that rb_name_fold() made; `text` moves behind it.  False: there
 * is none left. */
bool rb_word_next(const char **text, struct rb_word *word);

/* Is it this word, in small letters?  A * at the end of `pattern` stands for any rest. */
bool rb_word_is(struct rb_word word, const char *pattern);

/* Is it a run of figures? */
bool rb_word_is_figures(struct rb_word word);

/* Is it one of the two signs of a sum? */
bool rb_word_is_sum_sign(struct rb_word word);

#endif
