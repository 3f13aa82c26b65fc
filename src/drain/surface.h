/* SPDX-License-Identifier: MIT */
/*
 * surface.h - the three places on a pipe that a crew sets and digs to.
 *
 *   top of pipe   = invert + outside - wall
 *   trench bottom = invert - wall - bedding
 *
 * What the plan does not say is not known: nothing is assumed for a wall or a bedding.
 */
#ifndef RB_DRAIN_SURFACE_H
#define RB_DRAIN_SURFACE_H

#include "drain/inverts.h"

enum rb_surface { RB_INVERT, RB_TOP_OF_PIPE, RB_TRENCH_BOTTOM, RB_SURFACES };

/* "invert", "top of pipe", "trench bottom". */
const char *rb_surface_name(enum rb_surface surface);

/* How far a surface lies above the invert (below: negative): the outside less the wall,
 * or minus wall and bedding.  None where the plan does not say. */
rb_length rb_surface_above(const struct rb_plan *plan, enum rb_surface surface);

/* How far below the invert the trench goes, as far as the plan says: wall and bedding,
 * and where one of them is not known it goes deeper than that. */
rb_length rb_trench_at_least(const struct rb_plan *plan);

/* The elevation of a surface over an exact invert, rounded once; or none. */
rb_length rb_surface_at(const struct rb_plan *plan, enum rb_surface surface,
			struct rb_exact invert);

/* The key of the plan, in words, that would tell where the surface is; NULL: it is known.
 */
const char *rb_surface_key(const struct rb_plan *plan, enum rb_surface surface);

#endif
