/* SPDX-License-Identifier: MIT */
/*
 * profile_svg.h - a picture of levels or of a drain as SVG.
 *
 * Ground dashed, new work solid, what fails heavy and dotted beside its words; an
 * elevation scale on the left, the places and their numbers underneath, labels at what
 * they name.  The scale is said in words.
 */
#ifndef RB_REPORT_PROFILE_SVG_H
#define RB_REPORT_PROFILE_SVG_H

#include "report/profile.h"

/* Write all of a picture as an SVG file; false if there is no memory, or the picture had
 * none. */
bool rb_profile_write_svg(struct rb_sink *sink, const struct rb_profile *profile);

/* Write a picture as elements <figure> of a page, one a strip, so that none need be cut
 * over two sheets of paper. */
bool rb_profile_write_figures(struct rb_sink *sink, const struct rb_profile *profile);

#endif
