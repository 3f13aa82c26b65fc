/* SPDX-License-Identifier: MIT */
/*
 * html_words.h - words of a page, escaped, with no number broken.
 *
 * The blank within 9'-3 11/16" and between a number and its unit holds the line together.
 */
#ifndef RB_REPORT_HTML_WORDS_H
#define RB_REPORT_HTML_WORDS_H

#include "report/sink.h"

void rb_sink_html_words(struct rb_sink *sink, const char *text);

#endif
