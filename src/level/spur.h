/* SPDX-License-Identifier: MIT */
/* spur.h - setups off the chain; part of rb_sections(). */
#ifndef RB_LEVEL_SPUR_H
#define RB_LEVEL_SPUR_H

#include "rodbook/reduce.h"

/* Find the spurs from which anything was sighted, once every setup has its section, and
 * note each.  False: memory ran out. */
bool rb_spurs_find(struct rb_sections *sections, struct rb_arena *arena,
		   struct rb_findings *findings);

#endif
