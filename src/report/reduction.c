/* SPDX-License-Identifier: MIT */
/* reduction.c - what a place of the rod carries, gathered from its rows. */
#include "report/reduction.h"

#include <string.h>

struct rb_place_rows rb_reduction_rows(const struct rb_reduction *r, uint32_t shot)
{
	const struct rb_book *book = rb_reduction_book(r);
	const struct rb_reduced *reduced = rb_reduction_reduced(r);
	const struct rb_shot *s = &reduced->shot[shot];
	bool two = s->backsight_row != RB_NO_ROW && s->backsight_row != s->row;
	struct rb_place_rows rows = {
		.chainage = rb_shot_value(reduced, RB_CHAINAGE, shot),
		.rod_on = rb_shot_rod_on(reduced, shot),
		.remark = rb_book_remark(book, s->row),
		.other_remark = two ? rb_book_remark(book, s->backsight_row) : "",
	};

	if (two && !strcmp(rows.remark, rows.other_remark))
		rows.other_remark = "";
	return rows;
}

enum rb_unit rb_reduction_unit(const struct rb_reduction *r)
{
	return r->style.unit == RB_FEET_INCHES && !r->unit_asked ? RB_FEET
								 : r->style.unit;
}
