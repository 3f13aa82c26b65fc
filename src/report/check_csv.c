/* SPDX-License-Identifier: MIT */
/* check_csv.c - checked books and marks as CSV. */
#include "report/checked.h"

#include <stdio.h>
#include <string.h>

#include "report/csv.h"
#include "report/decimal.h"
#include "report/json.h"
#include "report/titles.h"

static void put_count(struct rb_csv *csv, uint32_t count)
{
	char text[16];
	int length = snprintf(text, sizeof text, "%u", count);

	rb_csv_number(csv, text, (size_t)length);
}

static void put_length(struct rb_csv *csv, rb_length value,
		       const struct rb_checked *checked, struct rb_style style)
{
	char text[RB_LENGTH_TEXT];
	size_t length;

	if (style.unit == RB_FEET_INCHES) {
		rb_length_format(text, value, style);
		rb_csv_number(csv, text, strlen(text));
		return;
	}
	length = rb_decimal_write(text, value, style.unit,
				  checked->decimals < 0 ? rb_json_decimals(style.unit)
							: checked->decimals,
				  0);
	rb_csv_number(csv, text, length);
}

static void put_cell(struct rb_csv *csv, const struct rb_checked *checked,
		     const struct rb_checked_book *at, const struct rb_hand_cell *cell)
{
	const struct rb_book *book = rb_checked_of(at);
	struct rb_style style = at->style;

	style.unit = rb_hand_unit(cell->column, style.unit);
	rb_csv_text(csv, rb_title_file(book->file));
	rb_csv_text(csv, book->key.student);
	put_count(csv, rb_book_line(book, cell->row));
	rb_csv_text(csv, rb_book_typed(book, cell->row));
	rb_csv_text(csv, book->heading[cell->column]);
	put_length(csv, cell->written, checked, style);
	put_length(csv, cell->follows, checked, style);
	rb_csv_text(csv, rb_hand_cause_name(cell->cause));
	rb_csv_end_row(csv);
}

bool rb_checked_write_csv(struct rb_sink *sink, const struct rb_checked *checked)
{
	struct rb_csv csv;

	rb_sink_text(sink, "book,student,line,point,column,written,follows,likely\n");
	rb_csv_init(&csv, sink);
	for (size_t i = 0; i < checked->books; i++) {
		const struct rb_checked_book *at = &checked->book[i];

		for (uint32_t k = 0; k < at->check->cells; k++)
			if (at->check->cell[k].state == RB_HAND_WRONG)
				put_cell(&csv, checked, at, &at->check->cell[k]);
	}
	return true;
}

bool rb_marks_write_csv(struct rb_sink *sink, const struct rb_checked *checked)
{
	static const enum rb_hand_state states[] = { RB_HAND_RIGHT, RB_HAND_WRONG,
						     RB_HAND_CARRIED, RB_HAND_EMPTY };
	struct rb_csv csv;

	rb_sink_text(sink, "student,book,cells,right,wrong,carried,not_filled_in\n");
	rb_csv_init(&csv, sink);
	for (size_t i = 0; i < checked->books; i++) {
		const struct rb_hand_check *check = checked->book[i].check;
		const struct rb_book *book = rb_checked_of(&checked->book[i]);

		rb_csv_text(&csv, book->key.student);
		rb_csv_text(&csv, rb_title_file(book->file));
		put_count(&csv, check->cells);
		for (size_t k = 0; k < sizeof states / sizeof *states; k++)
			put_count(&csv, rb_hand_count(check, states[k]));
		rb_csv_end_row(&csv);
	}
	return true;
}
