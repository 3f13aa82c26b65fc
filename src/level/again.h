/* SPDX-License-Identifier: MIT */
/* again.h - points that were reached a second time, with nothing hanging on them. */
#ifndef RB_LEVEL_AGAIN_H
#define RB_LEVEL_AGAIN_H

#include "rodbook/reduce.h"

/*
 * Call `on_again` for each sight onto a named point that was sighted before with the rod
 * on the same thing: not a known point, not ground or a surface, not a point on which a
 * backsight was taken.  Where nothing is said of the rod, it stood on the ground.  In the
 * order of the shots; `earlier` is the sight before.  False: memory ran out.
 */
bool rb_each_again(const struct rb_reduced *reduced, const struct rb_allocator *allocator,
		   void (*on_again)(void *self, uint32_t shot, uint32_t earlier),
		   void *self);

#endif
