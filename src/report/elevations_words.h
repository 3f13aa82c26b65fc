/* SPDX-License-Identifier: MIT */
/*
 * elevations_words.h - which elevations of a book were used, and whether it closes.
 */
#ifndef RB_REPORT_ELEVATIONS_WORDS_H
#define RB_REPORT_ELEVATIONS_WORDS_H

#include "level/spots.h"
#include "report/phrase.h"

/* "Elevations from larch-ground.csv: adjusted." and, where a section misses its
 * tolerance, that it was used all the same. */
void rb_elevations_words(struct rb_phrase *phrase, const struct rb_spots *spots);

/* The same in one word: "adjusted", "raw", "adjusted and raw". */
const char *rb_elevations_name(const struct rb_spots *spots);

#endif
