/* SPDX-License-Identifier: MIT */
/*
 * profile_band.h - the places under a strip, side by side.
 *
 * Each stands under its place if it can; where places are too near, their columns are
 * pushed apart, in their order and no further than they must be, and lines lead to them.
 */
#ifndef RB_REPORT_PROFILE_BAND_H
#define RB_REPORT_PROFILE_BAND_H

#include "report/profile_scale.h"

/* The lines of text that the fullest place has. */
int rb_band_lines(const struct rb_profile *profile);

/* How many places fit side by side, up to a right edge, with all of their numbers. */
size_t rb_band_side(const struct rb_profile *profile, int right);

/* The pixels that the band takes from top to bottom. */
int rb_band_height(int lines);

/*
 * Draw the band.
 *
 *   left    where the strip's first place stands
 *   right   the last pixel that may be used
 *   top     the lower edge of the plot
 */
void rb_band_draw(struct rb_svg *svg, const struct rb_profile *profile,
		  const struct rb_profile_scale *scale,
		  const struct rb_profile_strip *strip, int left, int right, int top);

/*
 * Push columns apart, in place: the middles of `count` columns of a width, ascending,
 * within left to right.  They must fit side by side.
 */
void rb_band_spread(int *middle, size_t count, int width, int left, int right);

#endif
