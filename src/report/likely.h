/* SPDX-License-Identifier: MIT */
/*
 * likely.h - what a refused cell was likely meant to be, and how to write that.
 *
 * A candidate is a length and no more; the words make it one of the two things that a
 * person would have typed, a decimal or feet and inches.
 */
#ifndef RB_REPORT_LIKELY_H
#define RB_REPORT_LIKELY_H

#include "rodbook/finding.h"

#define RB_READING_WORDS ((size_t)2 * RB_LENGTH_TEXT)

/*
 * One candidate in words, as "for 5 ft 3 in write 5'-3\"".
 *
 *   first   the candidate before all others, which the others are held against
 *   rank    0 for the first itself
 *   marked  the cell had, or should have had, foot and inch marks
 */
void rb_likely(char buf[static RB_READING_WORDS], const struct rb_argument *candidate,
	       const struct rb_argument *first, int rank, bool marked);

#endif
