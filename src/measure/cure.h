/* SPDX-License-Identifier: MIT */
/*
 * cure.h - what a refused text was likely meant to be.
 *
 * A cure is tried on a copy, and only ever suggested: the text stays refused.
 */
#ifndef RB_MEASURE_CURE_H
#define RB_MEASURE_CURE_H

#include "measure/mark.h"
#include "measure/reading.h"

/* Read a marked text: signs, and a form.  What a cure is tried with. */
void rb_marked_read(const struct rb_marked *marked, const struct rb_reading_rules *rules,
		    struct rb_reading *out);

/* Take over what a cured text reads as, or may have been. */
void rb_meant_by(struct rb_reading *r, const struct rb_reading_rules *rules,
		 const struct rb_reading *cured);

/* Tell a refused text without candidates more closely: damage of a sheet, a letter for a
 * digit, a comma, a blank or a mark too much.  Its refusal may become another. */
void rb_cure(const struct rb_marked *marked, const struct rb_reading_rules *rules,
	     struct rb_reading *r);

#endif
