/* SPDX-License-Identifier: MIT */
/*
 * profile_marks.h - what the lines and marks of a picture look like.
 *
 * One table of strokes and one small drawing a mark; shapes alone tell them apart.
 */
#ifndef RB_REPORT_PROFILE_MARKS_H
#define RB_REPORT_PROFILE_MARKS_H

#include "report/profile.h"

/* Draw a line of a picture. */
void rb_profile_stroke(struct rb_svg *svg, enum rb_profile_look look,
		       struct rb_pixel from, struct rb_pixel to);

/* Draw a mark; returns what it covers. */
struct rb_box rb_profile_draw_mark(struct rb_svg *svg, enum rb_profile_mark mark,
				   struct rb_pixel at);

#endif
