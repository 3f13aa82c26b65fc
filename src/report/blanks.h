/* SPDX-License-Identifier: MIT */
/*
 * blanks.h - blanks at which no line may end.
 *
 * A number stays with its fraction and its unit, 0'-0 1/8", 0.02 ft, 2 %, and with what
 * is added to it or taken from it: 14.28 - 14.29.
 */
#ifndef RB_REPORT_BLANKS_H
#define RB_REPORT_BLANKS_H

#include <stddef.h>

/* The bytes of a text up to its first blank that must be kept with what stands on both
 * sides, or all of them. */
size_t rb_before_kept_blank(const char *text);

/* The bytes of the word with which a text begins: up to a blank or a line end at which a
 * line may end. */
size_t rb_word_length(const char *text);

#endif
