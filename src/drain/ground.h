/* SPDX-License-Identifier: MIT */
/*
 * ground.h - the ground along a line, from the shots taken on it.
 *
 * Between two shots with chainage the ground is a straight line; beyond them it is
 * unknown.
 */
#ifndef RB_DRAIN_GROUND_H
#define RB_DRAIN_GROUND_H

#include "drain/exact.h"
#include "level/spots.h"

struct rb_ground_point {
	const char *name;
	rb_length chainage, elevation;
	uint32_t row; /* of the book */
};

struct rb_ground {
	struct rb_ground_point *point; /* by chainage, then by row */
	uint32_t points;
};

/* Was the rod on the ground?  Nothing said counts as ground, but on a benchmark. */
bool rb_is_ground(const struct rb_spot *spot);

/* Put the points in order of chainage. */
void rb_ground_sort(struct rb_ground *ground);

/* The ground at a chainage: a shot's own elevation (*is_shot), or the straight line
 * between the two around it.  False, and *elevation not set, where it is unknown. */
bool rb_ground_at(const struct rb_ground *ground, rb_length chainage, bool *is_shot,
		  struct rb_exact *elevation);

#endif
