/* SPDX-License-Identifier: MIT */
/*
 * text.h - a page as plain text.
 *
 * Black on white and monospaced: columns as wide as what stands in them, numbers aligned,
 * hairlines of dashes, 80 columns where the page can be that narrow.  Whatever the page
 * holds, no control character and no byte that is no UTF-8 gets out.
 */
#ifndef RB_REPORT_TEXT_H
#define RB_REPORT_TEXT_H

#include "report/sink.h"
#include "rodbook/table.h"

#define RB_TEXT_COLUMNS 80

struct rb_text_style {
	size_t columns; /* of the terminal, at least 40; usually RB_TEXT_COLUMNS */
	bool bold;      /* mark titles and verdicts for a terminal; never needed */
};

/* Write a page; its verdicts come last.  Columns are laid out in the page's arena; false
 * if it has no memory left, or the page had none. */
bool rb_page_write_text(struct rb_sink *sink, const struct rb_page *page,
			struct rb_text_style style);

#endif
