/* SPDX-License-Identifier: MIT */
/*
 * two_peg.h - the two-peg test: how far a level's line of sight is out of true.
 *
 * A reading is the true one plus e times its distance, with e the rise of the line of
 * sight over a length.  Two setups, at different distances from two pegs, give
 *
 *   e = ((a2 - b2) - (a1 - b1)) / ((da2 - db2) - (da1 - db1))
 *
 * It is kept as the ratio that it is and compared as one.  For a first setup midway this
 * is the rule of NAVEDTRA 14070, fig. 6-3 (the correct far reading is c + b - a).
 */
#ifndef RB_LEVEL_TWO_PEG_H
#define RB_LEVEL_TWO_PEG_H

#include "rodbook/finding.h"

struct rb_peg_setup {
	const char *name; /* as typed, never NULL */
	rb_length a, b;   /* readings */
	rb_length distance_a, distance_b;
	uint32_t line;
};

struct rb_two_peg {
	const char *file, *date, *instrument; /* never NULL */
	enum rb_unit unit;
	int decimals,
		fraction; /* how finely the readings are written: the most decimals, 0
			   * where none has any; the finest part of an inch, 1 to 64 */
	struct rb_peg_setup setup[2];
	rb_length rise;   /* over run: positive where the line of sight rises */
	rb_length run;    /* > 0 */
	rb_length unsure; /* of rise, over the same run: four times half the last
			   * place of the finest reading */
	rb_length corrected_a, corrected_b; /* readings of the second setup, to the
					     * nearest nanometre */
};

/* Read the file of a two-peg test.  NULL after an error. */
struct rb_two_peg *rb_two_peg_read(struct rb_arena *arena, struct rb_findings *findings,
				   const char *bytes, size_t length);

/* What the error comes to over a distance, to the nearest nanometre. */
rb_length rb_two_peg_over(const struct rb_two_peg *peg, rb_length distance);

/* The length over which it is told: 100 ft, or 100 m where the unit is metric. */
rb_length rb_two_peg_hundred(enum rb_unit unit);

/* A limit that is published somewhere. */
struct rb_peg_limit {
	rb_length rise, run;
	const char *words; /* "0.003 ft in 100 ft" */
	const char *source;
};

#define RB_PEG_LIMITS 4

const struct rb_peg_limit *rb_peg_limit(size_t i);

/* Is the error, up or down, more than the limit?  Exact. */
bool rb_two_peg_exceeds(const struct rb_two_peg *peg, const struct rb_peg_limit *limit);

#endif
