/* SPDX-License-Identifier: MIT */
/*
 * dig.h - one rod reading, one answer.
 *
 * A rod that reads less than the grade rod stands high: dig.  One that reads more stands
 * low: fill, or, where ground was to be taken away, it is over-dug.
 * Source: NAVEDTRA 14081 Equipment Operator Basic, ch. 15 (hub and cut).
 */
#ifndef RB_DRAIN_DIG_H
#define RB_DRAIN_DIG_H

#include "drain/grade_rods.h"

enum rb_dig_answer { RB_ON_GRADE, RB_DIG, RB_FILL, RB_OVER_DUG };

struct rb_dig {
	rb_length wanted; /* the grade rod */
	rb_length read;
	rb_length difference; /* wanted - read: positive to dig, negative low */
	enum rb_dig_answer answer;
};

/*
 * The answer to a reading, from the exact grade rod; what is kept of it is rounded.
 *
 *   within    how near is on grade: rb_dig_within(), unless the user says otherwise
 *   digging   low is over-dug (a trench bottom); otherwise low is to be filled or raised
 */
struct rb_dig rb_dig(struct rb_exact wanted, rb_length read, rb_length within,
		     bool digging);

/* 1/8 in, or 3 mm in a metric unit. */
rb_length rb_dig_within(enum rb_unit unit);

/* Does the plan say where the surface lies?  False after an error. */
bool rb_dig_knows(struct rb_findings *findings, const struct rb_plan *plan,
		  enum rb_surface surface);

/*
 * The grade rod of a surface at a chainage of a line from a height of instrument.  False,
 * and *wanted not set, after an error: the chainage is not on the line, the surface is
 * not known.
 */
bool rb_dig_wanted(struct rb_findings *findings, const struct rb_inverts *inverts,
		   rb_length hi, rb_length chainage, enum rb_surface surface,
		   struct rb_exact *wanted);

/* Without a plan: the rod on the hub and the cut (negative: a fill) marked on its stake.
 */
rb_length rb_dig_wanted_from_hub(rb_length hub_rod, rb_length cut);

/* "on grade", "dig", "fill", "over-dug". */
const char *rb_dig_answer_name(enum rb_dig_answer answer);

#endif
