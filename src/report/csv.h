/* SPDX-License-Identifier: MIT */
/*
 * csv.h - cells of a CSV file.
 *
 * Quoted as RFC 4180 says where a cell needs it, and guarded: a text that a spreadsheet
 * would run as a formula (it begins with = + - @, a TAB or a CR), or that our reader
 * would take an apostrophe off, gets an apostrophe in front.  Numbers are ours and go
 * bare.
 */
#ifndef RB_REPORT_CSV_H
#define RB_REPORT_CSV_H

#include "report/decimal.h"
#include "report/sink.h"

/* A row that is being written, in place in the sink's block. */
struct rb_csv {
	struct rb_sink *sink;
	char *to;   /* where the next cell goes; NULL between rows */
	char *last; /* beyond it there may be no room for a short one */
};

#define RB_CSV_SHORT 64 /* bytes of a cell for which there is room from the beginning */

void rb_csv_init(struct rb_csv *csv, struct rb_sink *sink);

/* A cell of words; NULL is empty.  Bad UTF-8 in it becomes U+FFFD. */
void rb_csv_text(struct rb_csv *csv, const char *text);

/* A cell that is a number or a reading of our own making: quoted where it holds an inch
 * mark, never guarded. */
void rb_csv_number(struct rb_csv *csv, const char *text, size_t length);

/* Room for more of the row. */
void rb_csv_go_on(struct rb_csv *csv);

/* Begin a cell: where up to RB_CSV_SHORT bytes can be written in place, before
 * rb_csv_end(). */
static inline char *rb_csv_begin(struct rb_csv *csv)
{
	if (!csv->to || csv->to >= csv->last)
		rb_csv_go_on(csv);
	return csv->to;
}

/* A comma behind every cell; that of the last one becomes the end of the row. */
static inline void rb_csv_end(struct rb_csv *csv, char *end)
{
	*end = ',';
	csv->to = end + 1;
}

static inline void rb_csv_empty(struct rb_csv *csv)
{
	rb_csv_end(csv, rb_csv_begin(csv));
}

/* A cell that is a length in a unit: rounded to so many decimals, or as exactly as
 * rb_decimal_write_exact() has it; empty where it is not given. */
static inline void rb_csv_rounded(struct rb_csv *csv, rb_length a, enum rb_unit unit,
				  int decimals)
{
	char *to = rb_csv_begin(csv);

	if (rb_length_given(a))
		to += rb_decimal_write(to, a, unit, decimals, 0);
	rb_csv_end(csv, to);
}

static inline void rb_csv_exact(struct rb_csv *csv, rb_length a, enum rb_unit unit,
				int decimals)
{
	char *to = rb_csv_begin(csv);

	if (rb_length_given(a))
		to += rb_decimal_write_exact(to, a, unit, decimals);
	rb_csv_end(csv, to);
}

/* End the row, which has at least one cell.  Between rows the sink may be written to. */
void rb_csv_end_row(struct rb_csv *csv);

#endif
