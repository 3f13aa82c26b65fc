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

/* A row that is being written: cells are parted by commas by themselves. */
struct rb_csv {
	struct rb_sink *sink;
	bool begun; /* the row has a cell already */
};

void rb_csv_init(struct rb_csv *csv, struct rb_sink *sink);

/* A cell of words; NULL is empty.  Bad UTF-8 in it becomes U+FFFD. */
void rb_csv_text(struct rb_csv *csv, const char *text);

/* A cell that is a number or a reading of our own making: quoted where it holds an inch
 * mark, never guarded. */
void rb_csv_number(struct rb_csv *csv, const char *text, size_t length);

/* Begin a cell: its comma, and room to write what it holds in place, to be closed with
 * rb_sink_took(). */
static inline char *rb_csv_begin(struct rb_csv *csv, size_t room)
{
	char *to = rb_sink_room(csv->sink, room + 1);

	*to = ',';
	to += csv->begun;
	csv->begun = true;
	return to;
}

static inline void rb_csv_empty(struct rb_csv *csv)
{
	rb_sink_took(csv->sink, rb_csv_begin(csv, 0));
}

/* A cell that is a length in a unit: rounded to so many decimals, or as exactly as
 * rb_decimal_write_exact() has it; empty where it is not given. */
static inline void rb_csv_rounded(struct rb_csv *csv, rb_length a, enum rb_unit unit,
				  int decimals)
{
	char *to = rb_csv_begin(csv, RB_DECIMAL_TEXT);

	if (rb_length_given(a))
		to += rb_decimal_write(to, a, unit, decimals, 0);
	rb_sink_took(csv->sink, to);
}

static inline void rb_csv_exact(struct rb_csv *csv, rb_length a, enum rb_unit unit,
				int decimals)
{
	char *to = rb_csv_begin(csv, RB_DECIMAL_TEXT);

	if (rb_length_given(a))
		to += rb_decimal_write_exact(to, a, unit, decimals);
	rb_sink_took(csv->sink, to);
}

void rb_csv_end_row(struct rb_csv *csv);

#endif
