/* SPDX-License-Identifier: MIT */
/*
 * escape.h - text of the user's inside HTML and SVG.
 *
 * The one place where text on its way into markup is made harmless: in an element or in a
 * quoted attribute alike it is text and nothing else.  Control characters are dropped
 * (line ends and tabs become blanks), bytes that are no UTF-8 become U+FFFD, and
 * characters that turn the direction of writing or cannot be seen are written out, as on
 * a terminal (\u202e).
 */
#ifndef RB_REPORT_ESCAPE_H
#define RB_REPORT_ESCAPE_H

#include "report/sink.h"

/* Write a text, escaped. */
void rb_sink_escaped(struct rb_sink *sink, const char *text, size_t length);

/* The same, up to the NUL. */
void rb_sink_escaped_text(struct rb_sink *sink, const char *text);

/* Write a text as what stands between the quotes of a CSS string, in the same way. */
void rb_sink_css_string(struct rb_sink *sink, const char *text);

#endif
