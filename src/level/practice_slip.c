/* SPDX-License-Identifier: MIT */
/* practice_slip.c - one slip in a worked book, and what it carries with it. */
#include "level/practice_book.h"

/* The cell in which the slip is made, and what stands around it. */
struct spot {
	const struct rb_practice_book *book;
	uint32_t row;
	enum rb_column column; /* RB_HEIGHT_OF_INSTRUMENT or RB_ELEVATION */
	rb_length right, base, reading;
	rb_length height_before; /* of the setup before this one, or none */
	rb_length side_before;   /* elevation of the last intermediate sight of the setup
				  * that ends in this row, or none */
	rb_length elevation_above; /* in the row above, or none */
	int64_t step;
};

static bool in_inches(const struct spot *s)
{
	return s->book->unit == RB_FEET_INCHES || s->book->unit == RB_INCHES;
}

/* -- slips: each gives the wrong value, or none where it cannot be made -- */

static rb_length added(const struct spot *s)
{
	return rb_length_add(s->base, s->reading);
}

static rb_length subtracted(const struct spot *s)
{
	return rb_length_sub(s->base, s->reading);
}

static rb_length wrong_height(const struct spot *s)
{
	if (!rb_length_given(s->height_before))
		return rb_length_none();
	return rb_length_sub(s->height_before, s->reading);
}

static rb_length from_side(const struct spot *s)
{
	if (!rb_length_given(s->side_before))
		return rb_length_none();
	return rb_length_add(s->side_before, s->reading);
}

static rb_length copied(const struct spot *s)
{
	return s->elevation_above;
}

static rb_length fraction_dropped(const struct spot *s)
{
	if (!in_inches(s))
		return rb_length_none();
	return rb_length_of(s->right.nm - s->right.nm % RB_INCH);
}

static int64_t whole_inches(rb_length a)
{
	return a.nm % RB_FOOT / RB_INCH;
}

/* Ten inches to the foot: two inches too many after a carry, too few after a borrow. */
static rb_length base_ten(const struct spot *s)
{
	int64_t base = whole_inches(s->base), reading = whole_inches(s->reading);
	bool adds = s->column == RB_HEIGHT_OF_INSTRUMENT;

	if (s->book->unit != RB_FEET_INCHES || s->reading.nm < 0)
		return rb_length_none();
	if (adds ? base + reading < 12 : base >= reading)
		return rb_length_none();
	return rb_length_of(s->right.nm + (adds ? 2 : -2) * RB_INCH);
}

/* 98.24 written 98.42 */
static rb_length exchanged(const struct spot *s)
{
	int64_t count = s->right.nm / s->step;
	int64_t last = count % 10, before = count / 10 % 10;

	if (in_inches(s))
		return rb_length_none();
	return rb_length_of((count + 9 * (last - before)) * s->step);
}

#define HEIGHT    (1u << RB_HEIGHT_OF_INSTRUMENT)
#define ELEVATION (1u << RB_ELEVATION)

/* The first of each column can always be made. */
static const struct slip {
	enum rb_hand_cause cause;
	unsigned columns;
	rb_length (*wrong)(const struct spot *s);
} slips[] = {
	{ RB_CAUSE_ADDED, ELEVATION, added },
	{ RB_CAUSE_SUBTRACTED, HEIGHT, subtracted },
	{ RB_CAUSE_WRONG_HEIGHT, ELEVATION, wrong_height },
	{ RB_CAUSE_FROM_INTERMEDIATE, HEIGHT, from_side },
	{ RB_CAUSE_COPIED, ELEVATION, copied },
	{ RB_CAUSE_FRACTION, HEIGHT | ELEVATION, fraction_dropped },
	{ RB_CAUSE_BASE_TEN, HEIGHT | ELEVATION, base_ten },
	{ RB_CAUSE_EXCHANGED, HEIGHT | ELEVATION, exchanged },
};

#define SLIPS (sizeof slips / sizeof *slips)

/* -- where -- */

static uint32_t cells_of(const struct rb_practice_row *row)
{
	return rb_length_given(row->height) + rb_length_given(row->elevation);
}

static rb_length sight_of(const struct rb_practice_row *row)
{
	return rb_length_given(row->foresight) ? row->foresight : row->intermediate;
}

/* What a backsight is added to. */
static rb_length carried(const struct rb_practice_row *row)
{
	return rb_length_given(row->known) ? row->known : row->elevation;
}

/* The heights of instrument before a row: the standing one, and the one before that; and
 * the last intermediate sight seen from the standing one. */
static void look_back(const struct rb_practice_book *book, struct spot *s,
		      rb_length *height)
{
	*height = s->height_before = s->side_before = rb_length_none();
	for (uint32_t i = 0; i < s->row; i++) {
		if (rb_length_given(book->row[i].intermediate))
			s->side_before = book->row[i].elevation;
		if (!rb_length_given(book->row[i].height))
			continue;
		s->height_before = *height;
		*height = book->row[i].height;
		s->side_before = rb_length_none();
	}
}

static struct spot spot_of(const struct rb_practice_book *book, uint32_t row,
			   enum rb_column column, int64_t step)
{
	const struct rb_practice_row *r = &book->row[row];
	struct spot s = { .book = book, .row = row, .column = column, .step = step };
	rb_length height;

	look_back(book, &s, &height);
	s.elevation_above = row ? book->row[row - 1].elevation : rb_length_none();
	if (column == RB_ELEVATION) {
		s.base = height;
		s.reading = sight_of(r);
		s.right = r->elevation;
	} else {
		s.base = carried(r);
		s.reading = r->backsight;
		s.right = r->height;
	}
	return s;
}

/* The cell of so many that hold a value worked out, in the order of the book. */
static struct spot pick_spot(const struct rb_practice_book *book, int64_t step,
			     struct rb_random *random)
{
	uint32_t cells = 0, row = 0;
	int64_t at;

	for (uint32_t i = 0; i < book->rows; i++)
		cells += cells_of(&book->row[i]);
	at = rb_random_between(random, 0, cells - 1);
	while (at >= cells_of(&book->row[row]))
		at -= cells_of(&book->row[row++]);
	/* the elevation is worked out before the height of instrument over it */
	if (rb_length_given(book->row[row].elevation) && at == 0)
		return spot_of(book, row, RB_ELEVATION, step);
	return spot_of(book, row, RB_HEIGHT_OF_INSTRUMENT, step);
}

/* -- carrying it on -- */

/* Work the book out from the slip on. */
static void work_on(struct rb_practice_book *book, const struct spot *s, rb_length wrong)
{
	rb_length height = rb_length_none();

	for (uint32_t i = 0; i < book->rows; i++) {
		struct rb_practice_row *row = &book->row[i];
		bool here = i == s->row;

		if (rb_length_given(row->elevation))
			row->elevation = here && s->column == RB_ELEVATION
						 ? wrong
						 : rb_length_sub(height, sight_of(row));
		if (!rb_length_given(row->height))
			continue;
		height = here && s->column == RB_HEIGHT_OF_INSTRUMENT
				 ? wrong
				 : rb_length_add(carried(row), row->backsight);
		row->height = height;
	}
}

static bool is_slip(const struct spot *s, const struct slip *slip, rb_length *wrong)
{
	if (!(slip->columns >> s->column & 1))
		return false;
	*wrong = slip->wrong(s);
	return rb_length_given(*wrong) && wrong->nm != s->right.nm;
}

void rb_practice_plant(struct rb_practice_book *book,
		       const struct rb_practice_options *options,
		       struct rb_random *random)
{
	struct spot s = pick_spot(book, rb_practice_step(options), random);
	size_t at = (size_t)rb_random_between(random, 0, SLIPS - 1);
	rb_length wrong;

	while (!is_slip(&s, &slips[at], &wrong))
		at = (at + 1) % SLIPS;
	book->slip = slips[at].cause;
	book->slip_row = s.row;
	book->slip_column = s.column;
	book->right = s.right;
	work_on(book, &s, wrong);
}
