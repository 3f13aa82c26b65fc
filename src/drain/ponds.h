/* SPDX-License-Identifier: MIT */
/*
 * ponds.h - where water stands in a pipe as it lies.
 *
 * Walk up from the outlet and keep the highest invert met so far: a place below it is
 * wet, by the difference.
 */
#ifndef RB_DRAIN_PONDS_H
#define RB_DRAIN_PONDS_H

#include "drain/laid.h"

/* Find the ponds of shots in order downstream; step[i] is how much higher the pipe comes
 * in at shot i than it goes out.  False if memory ran out. */
bool rb_ponds(struct rb_arena *arena, struct rb_laid *laid, const rb_length *step);

#endif
