/* SPDX-License-Identifier: MIT */
/*
 * mark.h - one cell in plain marks.
 *
 * Phones, word processors and spreadsheets write a foot mark in a dozen ways.  Here every
 * character is turned into the one ASCII mark that it stands for, and the place where it
 * stood is kept, so that all that reads lengths knows one alphabet only.
 */
#ifndef RB_MEASURE_MARK_H
#define RB_MEASURE_MARK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define RB_MARKED       64   /* a cell of more characters is no length */
#define RB_MARK_UNKNOWN '\1' /* stands for every character without a meaning here */

struct rb_marked {
	char text[RB_MARKED + 1]; /* lower case, single blanks, none outside; ' " - / and
				   * letters and digits; ends in NUL */
	uint32_t
		at[RB_MARKED + 1]; /* where each stood, in bytes; at[length] is the end */
	int length;
	bool apostrophe; /* a leading apostrophe, kept by a sheet, was taken off */
	bool mojibake;   /* has characters of UTF-8 that was read as Windows-1252 */
};

/* Put a cell of UTF-8 text in plain marks; false if it is too long to be a length.  One
 * leading apostrophe and one pair of outer quotes are taken off. */
bool rb_mark(const char *text, size_t length, struct rb_marked *out);

/*
 * Undo mojibake: write the bytes that were read as Windows-1252 to out, `size` bytes
 * owned by the caller.  Returns their number; 0 if the text has a character that
 * Windows-1252 has not, or does not fit.
 */
size_t rb_mojibake_undo(const char *text, size_t length, char *out, size_t size);

#endif
