/* SPDX-License-Identifier: MIT */
/* hand_walk.h - what the files that check a hand-reduced book share; src/level/hand_*.c.
 */
#ifndef RB_LEVEL_HAND_WALK_H
#define RB_LEVEL_HAND_WALK_H

#include "level/hand_check.h"

/* A value on its way from cell to cell. */
struct rb_carried {
	rb_length
		own; /* as the note keeper wrote it; worked out where the cell is empty */
	rb_length
		other;  /* as it would stand without the slip or the rounding before it */
	bool tainted;   /* something before it is wrong */
	bool unwritten; /* a cell is there for it, and is empty */
};

/* Sums of what stands in the rows so far. */
struct rb_hand_totals {
	rb_length column[RB_ELEVATION + 1];
	rb_length turning; /* the sights that carry the levels on, wherever they are
			      booked */
};

struct rb_hand_walk {
	struct rb_findings *findings;
	const struct rb_reduced *reduced;
	const struct rb_book *book;
	struct rb_hand_check *out;
	struct rb_carried *elevation; /* by shot */
	struct rb_carried *height;    /* by setup */
	rb_length decimal[RB_ELEVATION +
			  1]; /* by column: one in its last decimal, or none */
	rb_length fraction[RB_ELEVATION + 1]; /* its finest part of an inch, or none */
	uint32_t setup, shot; /* of the cell at hand, or RB_NO_SETUP, RB_NO_SHOT */
	struct rb_hand_totals since, all; /* since the sums before, and from the top */
	uint32_t sums_from;               /* the first row below the sums before */
	bool summed;     /* there are sums since the last row that was none */
	uint32_t closed; /* the last foresight onto a known point, or RB_NO_SHOT */
	rb_length first,
		last; /* elevations: of the first point, and the last carried on */
};

/* Find out how finely each column is written. */
void rb_hand_find_steps(struct rb_hand_walk *walk);

/* What the last place of a value is worth in its column. */
rb_length rb_hand_step_of(const struct rb_hand_walk *walk, enum rb_column column,
			  rb_length value);

/* Are two values the same to half of a step? */
static inline bool rb_hand_same(rb_length a, rb_length b, rb_length step)
{
	return 2 * rb_length_absolute(rb_length_sub(a, b)).nm <= step.nm;
}

/* What a cell should hold. */
struct rb_hand_due {
	uint32_t row;
	enum rb_column column;
	enum rb_hand_step step;
	rb_length base, reading; /* as in struct rb_hand_cell */
	bool base_unwritten;
	struct rb_carried follows;
	rb_length truth; /* by the readings alone */
	bool wanted;     /* an empty cell counts as not filled in */
};

/* Judge a cell, and return what the note keeper goes on with. */
struct rb_carried rb_hand_judge(struct rb_hand_walk *walk, const struct rb_hand_due *due);

/* Judge the cells of a row of the note keeper's own: sums, a difference, a misclosure. */
void rb_hand_judge_sums(struct rb_hand_walk *walk, uint32_t row);

/* Find out what was probably done in a wrong cell: sets its cause and cause_row. */
void rb_hand_find_cause(const struct rb_hand_walk *walk, struct rb_hand_cell *cell);

#endif
