/* SPDX-License-Identifier: MIT */
/*
 * html_table.h - a table of a page as an element.
 *
 * Numbers are aligned on the decimal point by blanks behind them, in letters of one
 * width; the first cell of a row is its head.  How small the print must be for the
 * table to fit on paper is worked out here, because a sheet cannot scroll.
 */
#ifndef RB_REPORT_HTML_TABLE_H
#define RB_REPORT_HTML_TABLE_H

#include "report/sink.h"
#include "rodbook/table.h"

/* Write a table in a box of its own; `number` names one without a caption.  False if the
 * table's arena has no memory left, or the table had none. */
bool rb_html_table(struct rb_sink *sink, const struct rb_table *table, unsigned number);

#endif
