/* SPDX-License-Identifier: MIT */
/*
 * peg_effect.h - what a level's error does to a book.
 *
 * Equal sights cancel it; what is left grows with backsight lengths less foresight
 * lengths.  Nothing of a book is corrected: the cure is balanced sights.
 */
#ifndef RB_LEVEL_PEG_EFFECT_H
#define RB_LEVEL_PEG_EFFECT_H

#include "level/two_peg.h"
#include "rodbook/reduce.h"

struct rb_peg_effect {
	const struct rb_two_peg *peg;
	const struct rb_sections *sections;
	rb_length *difference; /* by section: backsight less foresight lengths; none where
				* a length is missing */
	rb_length *lift; /* by section: how much too high its end came out, none too */
	uint32_t worst;  /* the shot that is out the most, before any adjustment;
			  * RB_NO_SHOT: no sight lengths, or nothing is out */
	rb_length worst_lift;
};

/* NULL if memory ran out, which is noted among the findings. */
struct rb_peg_effect *rb_peg_effect(struct rb_arena *arena, struct rb_findings *findings,
				    const struct rb_two_peg *peg,
				    const struct rb_sections *sections);

#endif
