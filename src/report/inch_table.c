/* SPDX-License-Identifier: MIT */
/* inch_table.c - the card of inches and decimals of a foot. */
#include "report/inch_table.h"

#include <stdio.h>
#include <string.h>

#include "rodbook/length.h"

#define INCHES 12

/* "3/8"; "0" for no part. */
static void name_part(char text[static RB_LENGTH_TEXT], int part, int whole)
{
	while (part && part % 2 == 0) {
		part /= 2;
		whole /= 2;
	}
	if (part)
		snprintf(text, RB_LENGTH_TEXT, "%d/%d", part, whole);
	else
		snprintf(text, RB_LENGTH_TEXT, "0");
}

/* Without the zero before the point: twelve columns fit a page. */
static void add_row(struct rb_table *table, int part, int fraction, int decimals)
{
	const struct rb_style feet = { RB_FEET, decimals, 0, false };
	char text[INCHES + 1][RB_LENGTH_TEXT];
	const char *cell[INCHES + 1] = { text[0] };

	name_part(text[0], part, fraction);
	for (int inch = 0; inch < INCHES; inch++) {
		int64_t nm = inch * RB_INCH + part * (RB_INCH / fraction);

		rb_length_format(text[inch + 1], rb_length_of(nm), feet);
		cell[inch + 1] = text[inch + 1] + (text[inch + 1][0] == '0');
	}
	rb_table_add(table, RB_ROW, cell);
}

struct rb_page *rb_inch_table_page(struct rb_arena *arena, int fraction, int decimals)
{
	static const char *const inches[INCHES] = { "0", "1", "2", "3", "4",  "5",
						    "6", "7", "8", "9", "10", "11" };
	struct rb_table_column column[INCHES + 1] = { { "in", RB_RIGHT, RB_KEEPS } };
	struct rb_page *page = rb_page_new(arena);
	struct rb_table *table;

	if (!page)
		return NULL;
	for (int inch = 0; inch < INCHES; inch++)
		column[inch + 1] =
			(struct rb_table_column){ inches[inch], RB_RIGHT, RB_KEEPS };
	rb_page_add(page, RB_TITLE, "Inches and parts of an inch in decimals of a foot",
		    NULL);
	table = rb_page_table(page, NULL, column, INCHES + 1);
	if (!table)
		return NULL;
	for (int part = 0; part < fraction; part++)
		add_row(table, part, fraction, decimals);
	rb_page_add(
		page, RB_PARAGRAPH,
		"Inches stand across, the part of an inch at the left: under 3, beside 1/2, "
		"is 3 1/2 in. One inch is 1/12 ft exactly; each number is rounded once.",
		NULL);
	return page;
}
