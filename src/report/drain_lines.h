/* SPDX-License-Identifier: MIT */
/*
 * drain_lines.h - the ground and the laid pipe of a drain's picture, gap by gap.
 *
 * Both have places of their own between the stations; they are handed over from left to
 * right, so that each is looked at once.
 */
#ifndef RB_REPORT_DRAIN_LINES_H
#define RB_REPORT_DRAIN_LINES_H

#include "report/drain_result.h"
#include "report/phrase.h"
#include "report/profile.h"

struct rb_drain_lines {
	const struct rb_drain_result *r;
	struct rb_profile *profile;
	struct rb_phrase *phrase; /* empty, and left so */
	struct rb_style style;    /* of what is off, in decimals */
	uint32_t next_ground, next_laid, next_leg, next_pond;
	bool ground_named, laid_named;
};

/* Draw the ground from a station to the next downstream. */
void rb_drain_ground_line(struct rb_drain_lines *lines, uint32_t station);

/* Draw the laid pipe up to a run; at the outlet, up to its end. */
void rb_drain_laid_line(struct rb_drain_lines *lines, rb_length run);

#endif
