/* SPDX-License-Identifier: MIT */
/* check.h - sights onto points that had an elevation already; part of rb_sections(). */
#ifndef RB_LEVEL_CHECK_H
#define RB_LEVEL_CHECK_H

#include "rodbook/reduce.h"

/* Find the checks, give each to its section, and warn of those beyond the section's
 * tolerance.  False: memory ran out. */
bool rb_checks_find(struct rb_sections *sections, struct rb_arena *arena,
		    struct rb_findings *findings);

#endif
