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

rb_length rb_reduction_backsight(const struct rb_reduction *r, uint32_t shot)
{
	uint32_t row = rb_reduction_reduced(r)->shot[shot].backsight_row;

	return row == RB_NO_ROW ? rb_length_none()
				: rb_book_sight(rb_reduction_book(r), RB_BACKSIGHT, row);
}

rb_length rb_reduction_instrument(const struct rb_reduction *r, uint32_t shot)
{
	const struct rb_reduced *reduced = rb_reduction_reduced(r);
	uint32_t opens = rb_shot_opens(&reduced->shot[shot]);

	return opens == RB_NO_SETUP ? rb_length_none()
				    : reduced->setup[opens].height_of_instrument;
}

rb_length rb_reduction_known(const struct rb_reduction *r, uint32_t shot)
{
	const struct rb_book *book = rb_reduction_book(r);

	return rb_book_known(book,
			     book->row[rb_reduction_reduced(r)->shot[shot].row].point);
}

enum rb_unit rb_reduction_unit(const struct rb_reduction *r)
{
	return r->style.unit == RB_FEET_INCHES && !r->unit_asked ? RB_FEET
								 : r->style.unit;
}
