/* SPDX-License-Identifier: MIT */
/* reduction.c - what a place of the rod carries, gathered from its rows. */
#include "report/reduction.h"

#include <string.h>

static rb_length of_rows(const struct rb_book *book, enum rb_column column,
			 const struct rb_shot *shot)
{
	rb_length value = rb_book_value(book, column, shot->row);

	if (!rb_length_given(value) && shot->backsight_row != RB_NO_ROW)
		value = rb_book_value(book, column, shot->backsight_row);
	return value;
}

struct rb_place_rows rb_reduction_rows(const struct rb_reduction *r, uint32_t shot)
{
	const struct rb_book *book = rb_reduction_book(r);
	const struct rb_shot *s = &rb_reduction_reduced(r)->shot[shot];
	bool two = s->backsight_row != RB_NO_ROW && s->backsight_row != s->row;
	struct rb_place_rows rows = {
		.chainage = of_rows(book, RB_CHAINAGE, s),
		.rod_on = (enum rb_rod_on)book->rod_on[s->row],
		.remark = rb_book_remark(book, s->row),
		.other_remark = two ? rb_book_remark(book, s->backsight_row) : "",
	};

	if (two && rows.rod_on == RB_ON_UNSAID)
		rows.rod_on = (enum rb_rod_on)book->rod_on[s->backsight_row];
	if (!strcmp(rows.remark, rows.other_remark))
		rows.other_remark = "";
	return rows;
}

enum rb_unit rb_reduction_unit(const struct rb_reduction *r)
{
	return r->style.unit == RB_FEET_INCHES && !r->unit_asked ? RB_FEET
								 : r->style.unit;
}
