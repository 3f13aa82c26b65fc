/* SPDX-License-Identifier: MIT */
/*
 * profile_scale.h - how a picture fits on its paper.
 *
 * A run is cut into strips of a width; all have one scale.  Elevations are marked in
 * steps of 1, 2 or 5, and where the run is to scale, heights are drawn 1, 2, 5, 10 ...
 * times larger, so that the exaggeration can be said in one word.
 */
#ifndef RB_REPORT_PROFILE_SCALE_H
#define RB_REPORT_PROFILE_SCALE_H

#include "report/profile.h"

struct rb_profile_strip {
	const struct rb_profile_place *place; /* the first */
	size_t places;
	const struct rb_profile_item *item; /* the first that may reach into it */
	rb_length left, right;
	rb_length low, high; /* whole steps */
};

struct rb_profile_scale {
	struct rb_profile_strip
		*strip;      /* the last place of one is the first of the next */
	size_t strips;       /* 0: there is nothing to draw */
	rb_length step;      /* between the marked elevations */
	int64_t pixels_tall; /* for so much height */
	rb_length tall;
	int64_t pixels_long; /* for so much of the run */
	rb_length run;
	int exaggeration; /* 0: not to scale along the run */
	rb_length bar;    /* a length of 1, 2 or 5 to be shown along the run; or none */
};

/*
 * Fit a picture.
 *
 *   width    pixels of a strip
 *   side     places that fit side by side under it
 *   height   pixels that a strip may be high at most
 *
 * False if there is no memory; the strips are in the picture's arena.
 */
bool rb_profile_fit(struct rb_profile_scale *scale, const struct rb_profile *profile,
		    int width, size_t side, int height);

/* Pixels to the right of a strip's left end, and up from its lowest elevation. */
int rb_profile_right(const struct rb_profile_scale *scale,
		     const struct rb_profile_strip *strip, rb_length along);
int rb_profile_up(const struct rb_profile_scale *scale,
		  const struct rb_profile_strip *strip, rb_length elevation);

#endif
