/* SPDX-License-Identifier: MIT */
/*
 * html_style.h - the look of a page on a screen and on paper.
 *
 * Black on white with hairlines, in the fonts that the system has; numbers in letters of
 * one width.  The sheet of styles is the same for every page.
 */
#ifndef RB_REPORT_HTML_STYLE_H
#define RB_REPORT_HTML_STYLE_H

#include "report/sink.h"

void rb_html_style(struct rb_sink *sink);

#endif
