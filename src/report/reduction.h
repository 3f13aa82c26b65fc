/* SPDX-License-Identifier: MIT */
/*
 * reduction.h - a reduced book, as its writers take it.
 *
 * Everything that the stages found, and how it is to be shown; the page, the JSON and the
 * CSV of a book are made from this and nothing else.
 */
#ifndef RB_REPORT_REDUCTION_H
#define RB_REPORT_REDUCTION_H

#include "level/suspects.h"
#include "rodbook/reduce.h"

struct rb_reduction {
	const struct rb_adjusted *adjusted; /* and through it sections, shots and book */
	const struct rb_suspects *suspects; /* NULL: not looked for */
	struct rb_style style; /* of the page: rb_book_style(), or as asked */
	bool unit_asked;       /* --unit was given */
	bool fraction_asked;   /* --fraction was given: nothing in the table is finer */
	int decimals;          /* of JSON and CSV; -1: rb_json_decimals() */
	bool adjust_anyway;    /* --adjust-anyway was given */
	bool tolerance_overridden; /* --tolerance was given */
	bool adjust_overridden;    /* --adjust was given */
};

static inline const struct rb_sections *rb_reduction_sections(
	const struct rb_reduction *r)
{
	return r->adjusted->sections;
}

static inline const struct rb_reduced *rb_reduction_reduced(const struct rb_reduction *r)
{
	return r->adjusted->sections->reduced;
}

static inline const struct rb_book *rb_reduction_book(const struct rb_reduction *r)
{
	return r->adjusted->sections->reduced->book;
}

/* What was booked about a place on the two rows that a turning point may have. */
struct rb_place_rows {
	rb_length chainage;
	enum rb_rod_on rod_on;
	const char *remark, *other_remark; /* "" where there is none */
};

struct rb_place_rows rb_reduction_rows(const struct rb_reduction *r, uint32_t shot);

/* The shot's backsight, and the height of instrument that it gives; none without one. */
static inline rb_length rb_reduction_backsight(const struct rb_reduction *r,
					       uint32_t shot)
{
	uint32_t row = rb_reduction_reduced(r)->shot[shot].backsight_row;

	return row == RB_NO_ROW ? rb_length_none()
				: rb_book_sight(rb_reduction_book(r), RB_BACKSIGHT, row);
}

static inline rb_length rb_reduction_instrument(const struct rb_reduction *r,
						uint32_t shot)
{
	const struct rb_reduced *reduced = rb_reduction_reduced(r);
	uint32_t opens = rb_shot_opens(&reduced->shot[shot]);

	return opens == RB_NO_SETUP ? rb_length_none()
				    : reduced->setup[opens].height_of_instrument;
}

/* The known elevation of the shot's point, or none. */
static inline rb_length rb_reduction_known(const struct rb_reduction *r, uint32_t shot)
{
	const struct rb_book *book = rb_reduction_book(r);

	return rb_book_known(book,
			     book->row[rb_reduction_reduced(r)->shot[shot].row].point);
}

/* The unit of numbers in JSON and CSV: that of the page, and feet for a ft-in book unless
 * feet-inches were asked for. */
enum rb_unit rb_reduction_unit(const struct rb_reduction *r);

/* The line of the file on which a row stands. */
static inline uint32_t rb_reduction_line(const struct rb_reduction *r, uint32_t row)
{
	return rb_book_line(rb_reduction_book(r), row);
}

#endif
