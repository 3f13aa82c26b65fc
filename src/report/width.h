/* SPDX-License-Identifier: MIT */
/*
 * width.h - what a text looks like on a terminal.
 *
 * The one place where text on its way to a terminal is made harmless: control characters
 * and characters that move or hide others are written out (ESC as \x1b), so are bytes
 * that are no UTF-8; all else goes as it is.  Columns count what is then seen: a
 * combining mark takes none, a CJK character or an emoji two, a character written out as
 * many as it is long.
 */
#ifndef RB_REPORT_WIDTH_H
#define RB_REPORT_WIDTH_H

#include "report/sink.h"

#define RB_GLYPH_TEXT    12             /* bytes for a character written out */
#define RB_LEFT_TO_RIGHT "\xE2\x80\x8E" /* U+200E, takes no column */

/* One character of a text. */
struct rb_glyph {
	size_t bytes;   /* in the text: at least 1 */
	size_t columns; /* on the terminal */
	uint32_t code;  /* Unicode; of a byte that is no UTF-8, the byte */
	bool whole;     /* it is UTF-8 */
	bool plain;     /* it goes as it is; else it is written out */
};

/* The first character of a text of at least one byte. */
struct rb_glyph rb_glyph_of(const char *text, size_t length);

/* Write out a character that is not plain (ESC as \x1b); returns the bytes written, all
 * of them ASCII, with a NUL behind them. */
size_t rb_glyph_escape(char out[static RB_GLYPH_TEXT], struct rb_glyph glyph);

/*
 * Does a run of letters that are written from right to left (Hebrew, Arabic) end with the
 * character at this place?  Blanks between such letters belong to the run.  Where it
 * does, RB_LEFT_TO_RIGHT goes behind it: the numbers that follow would otherwise be drawn
 * before the name, and those of a row in the opposite order (Unicode Standard Annex 9,
 * rules W2, W7 and N1).
 */
bool rb_turn_ends(const char *text, size_t at, size_t length);

/* The columns that a text takes. */
size_t rb_width(const char *text, size_t length);

/* How many bytes of a text fit in so many columns; whole characters, with the combining
 * marks behind them. */
size_t rb_width_fit(const char *text, size_t length, size_t columns);

/* Write a text, made harmless, with RB_LEFT_TO_RIGHT where rb_turn_ends() says so. */
void rb_sink_shown(struct rb_sink *sink, const char *text, size_t length);

/*
 * Write words wrapped at blanks and line ends.
 *
 *   at       the column at which the first line already stands
 *   indent   of the lines after it
 *   columns  of a line; a word longer than that goes on over the lines it takes
 *
 * A number is not parted from its fraction or its unit (blanks.h).
 *
 * Ends without a line end.
 */
void rb_sink_wrapped(struct rb_sink *sink, const char *text, size_t at, size_t indent,
		     size_t columns);

/* The same for the first bytes of a text, up to a line end or its end. */
void rb_sink_wrapped_part(struct rb_sink *sink, const char *text, size_t length,
			  size_t at, size_t indent, size_t columns);

#endif
