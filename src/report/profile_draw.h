/* SPDX-License-Identifier: MIT */
/*
 * profile_draw.h - one strip of a picture, in pixels.
 *
 * From top to bottom: the plot with its elevation scale, a band with the places and their
 * numbers, a line of words about the scale.  Names in the band are moved sideways until
 * none covers another, and led to from their places.
 */
#ifndef RB_REPORT_PROFILE_DRAW_H
#define RB_REPORT_PROFILE_DRAW_H

#include "report/profile_scale.h"

#define RB_STRIP_WIDTH   720
#define RB_STRIP_MARGIN  6
#define RB_STRIP_COLUMNS ((RB_STRIP_WIDTH - 2 * RB_STRIP_MARGIN) / RB_SVG_COLUMN)

struct rb_strip_drawer {
	const struct rb_profile *profile;
	struct rb_profile_scale scale;
	struct rb_labels labels;
	const char *scale_words;
	int band_lines;
	bool out_of_memory; /* some words could not be made */
};

/* Fit a picture and make ready to draw; false if there is no memory. */
bool rb_strip_drawer_init(struct rb_strip_drawer *drawer,
			  const struct rb_profile *profile);

/* The pixels that a strip takes from top to bottom. */
int rb_strip_height(const struct rb_strip_drawer *drawer, size_t strip);

/* Draw a strip with its upper edge at `top`. */
void rb_strip_draw(struct rb_strip_drawer *drawer, struct rb_svg *svg, size_t strip,
		   int top);

#endif
