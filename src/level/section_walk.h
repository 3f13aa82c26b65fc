/* SPDX-License-Identifier: MIT */
/*
 * section_walk.h - the sights that enter a section's misclosure, from its last to its
 * first.
 *
 * A step is a setup: the backsight that was taken from it, and the sight by which the
 * chain leaves it.
 */
#ifndef RB_LEVEL_SECTION_WALK_H
#define RB_LEVEL_SECTION_WALK_H

#include "rodbook/reduce.h"

struct rb_section_walk {
	const struct rb_reduced *reduced;
	const struct rb_section *section;
	uint32_t setup;
	const struct rb_shot *sight; /* the sight that leaves this setup on the chain */
	uint32_t backsight_row;
};

/* At the setup from which the section's end was seen. */
struct rb_section_walk rb_section_walk(const struct rb_reduced *reduced,
				       const struct rb_section *section);

/* One setup back; false from the first one. */
bool rb_walk_back(struct rb_section_walk *walk);

#endif
