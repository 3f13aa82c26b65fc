/* SPDX-License-Identifier: MIT */
/* sight_lengths.h - what is asked of the lengths of sights; part of rb_sections(). */
#ifndef RB_LEVEL_SIGHT_LENGTHS_H
#define RB_LEVEL_SIGHT_LENGTHS_H

#include "rodbook/reduce.h"

/* Has the section all its sight lengths, and are they not all 0? */
static inline bool rb_section_has_length(const struct rb_section *section)
{
	return rb_length_given(section->length) && section->length.nm > 0;
}

/* False, with a finding, where the tolerance or the adjustment goes by length and some
 * section has not all of them, or none above 0, or where memory ran out. */
bool rb_sight_lengths_suffice(const struct rb_sections *sections,
			      const struct rb_judging *judging,
			      struct rb_findings *findings);

/* Hold the sights against the limits of the book, and say where that cannot be done.
 * False: memory ran out. */
bool rb_sight_lengths_judge(const struct rb_sections *sections,
			    struct rb_findings *findings);

#endif
