/* SPDX-License-Identifier: MIT */
/*
 * shot_again.h - places of a book that were shot more than once.
 *
 * A pipe that did not lie right is lifted and shot again: what counts is how it lies now,
 * the last shot.  Benchmarks and known points keep their elevation, and a turning point
 * that is reached again replaces nothing.
 */
#ifndef RB_LEVEL_SHOT_AGAIN_H
#define RB_LEVEL_SHOT_AGAIN_H

#include "level/spots.h"

/*
 * Find the last shot of each place: of one point, or of one chainage where there is no
 * name, with the rod on the same thing.  Sets `again` of all before it; where a point has
 * one chainage, shots that do not write it have it too.  False: no memory.
 */
bool rb_find_shots_again(struct rb_spots *spots, const struct rb_allocator *allocator);

/* Note, at its row, that a shot does not count; true where it does not. */
bool rb_was_shot_again(struct rb_findings *findings, const struct rb_spots *spots,
		       const struct rb_spot *spot);

#endif
