/* SPDX-License-Identifier: MIT */
/*
 * spots.h - the places of a book with the elevations that are used from it.
 *
 * A spot is a place where the rod stood, with its adjusted elevation where its section
 * was adjusted and the raw one elsewhere.  A rim with a measure down gives two: the rim,
 * and the invert below it.  Spots stand in the order observed.
 */
#ifndef RB_LEVEL_SPOTS_H
#define RB_LEVEL_SPOTS_H

#include "rodbook/reduce.h"

struct rb_spot {
	const char *name; /* as typed; the chainage, as the book writes them, where there
			     is no name */
	uint32_t point;   /* RB_NO_POINT: no name */
	uint32_t row;     /* of the book */
	uint32_t chainage_row, rod_on_row; /* where these two stand: rb_shot_row() */
	rb_length chainage;                /* none where not written */
	rb_length elevation;
	enum rb_rod_on rod_on; /* rb_shot_rod_on() */
	enum rb_kind kind;
	bool adjusted;  /* the elevation is */
	uint32_t again; /* the spot that counts in its place (shot_again.h); RB_NO_SPOT:
			 * this one does */
};

#define RB_NO_SPOT UINT32_MAX

struct rb_spots {
	const struct rb_book *book;
	const struct rb_sections *sections; /* for their spurs, which nothing checks */
	struct rb_spot *spot;
	uint32_t count;
	uint32_t adjusted; /* spots with an adjusted elevation */
	bool beyond;       /* a section of the book misses its tolerance */
	rb_length step;    /* the finest place to which the sights were written */
};

/* The spots of a book; NULL if memory ran out. */
struct rb_spots *rb_spots(struct rb_arena *arena, struct rb_findings *findings,
			  const struct rb_adjusted *adjusted);

/*
 * The finest place to which the sights of a book were written: 0.01 ft, 1/8 in.  Where
 * decimals and fractions are mixed, the coarser of the two.  A reading is taken to be
 * good to half of it either way; none where the book says nothing.
 */
rb_length rb_book_step(const struct rb_book *book);

/*
 * Write a chainage without a unit: "50" and "12.5" with plus 0, "0+50" with 2 digits
 * behind the plus, "0+050" with 3; in feet or metres after rb_unit_of_runs(), rounded to
 * a tenth of a millimetre or a ten-thousandth of a foot.
 */
void rb_chainage_format(char buf[static RB_LENGTH_TEXT], rb_length chainage,
			enum rb_unit unit, int plus);

/* The digits behind the plus for a page in one unit, of chainages that were written so in
 * another: stations of a hundred feet, plain metres, where feet became metres. */
int rb_chainage_plus(int plus, enum rb_unit written, enum rb_unit shown);

#endif
