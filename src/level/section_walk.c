/* SPDX-License-Identifier: MIT */
/* From the end of a section back to where it began, setup by setup. */
#include "level/section_walk.h"

static uint32_t backsight_row(const struct rb_reduced *reduced, uint32_t setup)
{
	return reduced->shot[reduced->setup[setup].shot].backsight_row;
}

struct rb_section_walk rb_section_walk(const struct rb_reduced *reduced,
				       const struct rb_section *section)
{
	return (struct rb_section_walk){ reduced, section, section->last,
					 &reduced->shot[section->end],
					 backsight_row(reduced, section->last) };
}

bool rb_walk_back(struct rb_section_walk *walk)
{
	const struct rb_reduced *reduced = walk->reduced;
	uint32_t via = reduced->setup[walk->setup].via;

	if (walk->setup == walk->section->first || via == RB_NO_SHOT)
		return false;
	walk->sight = &reduced->shot[via];
	walk->setup = walk->sight->setup;
	walk->backsight_row = backsight_row(reduced, walk->setup);
	return true;
}
