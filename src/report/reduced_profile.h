/* SPDX-License-Identifier: MIT */
/*
 * reduced_profile.h - a reduced book as a picture.
 *
 * Every setup with its line of sight at the height of instrument, the rods of its
 * backsight, foresights and intermediate sights between the line of sight and the point,
 * the ground dashed from point to point, names and elevations underneath.  It is to scale
 * along the run where every sight that carries the levels on has its length.
 */
#ifndef RB_REPORT_REDUCED_PROFILE_H
#define RB_REPORT_REDUCED_PROFILE_H

#include "report/profile.h"
#include "report/reduction.h"

/* Make the picture, in the arena; NULL if there is no memory. */
struct rb_profile *rb_reduced_profile(struct rb_arena *arena,
				      const struct rb_reduction *r);

#endif
