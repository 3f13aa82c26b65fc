/* SPDX-License-Identifier: MIT */
/* chain.h - which chains of setups are sections; part of rb_sections(). */
#ifndef RB_LEVEL_CHAIN_H
#define RB_LEVEL_CHAIN_H

#include "rodbook/reduce.h"

/*
 * Find where sections end: every foresight onto a known point, and the last sight of each
 * chain that reaches none.  Allocates sections->section and sets `end` and `last` of
 * each, in the order of their ends, and sections->of_setup; `shared` tells whether some
 * setups are in several chains.  False: memory ran out.
 */
bool rb_chains_find(struct rb_sections *sections, struct rb_arena *arena, bool *shared);

/* The section that ends with the shot, or NULL. */
const struct rb_section *rb_section_ending(const struct rb_sections *sections,
					   uint32_t shot);

#endif
