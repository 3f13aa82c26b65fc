/* SPDX-License-Identifier: MIT */
/*
 * leg_steps.h - a leg's slope, worked out on paper.
 */
#ifndef RB_REPORT_LEG_STEPS_H
#define RB_REPORT_LEG_STEPS_H

#include "level/leg.h"
#include "report/phrase.h"

/* Append the lines of a leg: its fall from two elevations, the slope from fall and
 * length, and the comparison with the minimum as a product, without a division. */
void rb_leg_steps(struct rb_phrase *phrase, const struct rb_leg *leg,
		  struct rb_style style);

/* Append "name = a + b = sum" or "name = a - b = difference", indented, with the working
 * in feet and inches behind it. */
void rb_named_sum(struct rb_phrase *phrase, const char *name, rb_length a, rb_length b,
		  struct rb_style style);
void rb_named_difference(struct rb_phrase *phrase, const char *name, rb_length a,
			 rb_length b, struct rb_style style);

#endif
