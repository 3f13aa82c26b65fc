/* SPDX-License-Identifier: MIT */
/*
 * hand_suspicion.h - a wrong cell, and what one slip or another would have given.
 *
 * Part of hand_cause.c: the tests of its table that look at how a number was written
 * stand in hand_pen.c.  Each is asked whether its slip would give just the value that is
 * written.
 */
#ifndef RB_LEVEL_HAND_SUSPICION_H
#define RB_LEVEL_HAND_SUSPICION_H

#include "level/hand_walk.h"

#define RB_FAR_BACK 64 /* setups and rows that are looked at for another value */

struct rb_suspicion {
	const struct rb_hand_walk *walk;
	const struct rb_hand_cell *cell;
	rb_length step; /* of the cell's last place */
	int sign;       /* +1: base + reading; -1: base - reading */
	uint32_t row;   /* the row of the value that was used instead; or RB_NO_ROW */
};

static inline bool rb_suspect_written(const struct rb_suspicion *s, rb_length value)
{
	return rb_hand_same(s->cell->written, value, s->step);
}

/* What comes out of another base or another reading. */
static inline rb_length rb_suspect_from(const struct rb_suspicion *s, rb_length base,
					rb_length reading)
{
	return s->sign > 0 ? rb_length_add(base, reading) : rb_length_sub(base, reading);
}

static inline bool rb_with_base(const struct rb_suspicion *s, rb_length base)
{
	return rb_suspect_written(s, rb_suspect_from(s, base, s->cell->reading));
}

static inline bool rb_with_reading(const struct rb_suspicion *s, rb_length reading)
{
	return rb_suspect_written(s, rb_suspect_from(s, s->cell->base, reading));
}

/* Ten inches carried as a foot, or a foot borrowed as ten. */
bool rb_pen_base_ten(struct rb_suspicion *s);
/* Inches taken for decimals of a foot, or the reverse. */
bool rb_pen_as_decimals(struct rb_suspicion *s);
/* The fraction of an inch dropped. */
bool rb_pen_fraction_dropped(struct rb_suspicion *s);
/* Two neighbouring digits exchanged. */
bool rb_pen_exchanged(struct rb_suspicion *s);
/* The value of the line above. */
bool rb_pen_copied(struct rb_suspicion *s);
/* A coarser place than that of the column, or cut off. */
bool rb_pen_rounded(struct rb_suspicion *s);
/* One digit out by one, or a foot or an inch, where there was one to carry or borrow. */
bool rb_pen_carry_lost(struct rb_suspicion *s);
/* A digit of the known elevation, on which the cell stands or which it repeats, that is
 * another one. */
bool rb_pen_benchmark(struct rb_suspicion *s);

#endif
