/* SPDX-License-Identifier: MIT */
/*
 * svg.h - a canvas that writes SVG.
 *
 * Whole coordinates, to the right and down, one to a pixel of the screen.  Everything is
 * black on white and told apart by its stroke; text stays text.  Lettering is of one
 * width, so that what a text covers is known before it is drawn.  There are no styles, no
 * scripts and no references: a picture stands inside a page as well as alone.
 */
#ifndef RB_REPORT_SVG_H
#define RB_REPORT_SVG_H

#include "report/sink.h"

#define RB_SVG_COLUMN  8  /* pixels that a column of text takes at most */
#define RB_SVG_LINE    16 /* from line to line */
#define RB_SVG_ASCENT  12 /* of the letters above the line on which they stand */
#define RB_SVG_DESCENT 4

struct rb_pixel {
	int x, y;
};

/* What a text or a mark covers: from left and top up to but not including the others. */
struct rb_box {
	int left, top, right, bottom;
};

enum rb_stroke {
	RB_STROKE_HAIR,   /* thin */
	RB_STROKE_GRID,   /* thin and grey: for the eye to follow */
	RB_STROKE_LEADER, /* thin and grey: from a label to what it names */
	RB_STROKE_SOLID,
	RB_STROKE_HEAVY,
	RB_STROKE_DASHED,
	RB_STROKE_DOT_DASHED,
	RB_STROKE_HEAVY_DOTTED, /* what fails */
	RB_STROKE_FILLED,       /* no stroke: black inside */
	RB_STROKE_PAPER,        /* thin, white inside */
	RB_STROKES
};

enum rb_anchor { RB_ANCHOR_START, RB_ANCHOR_MIDDLE, RB_ANCHOR_END };

struct rb_svg {
	struct rb_sink *sink;
	bool alone; /* a file of its own, not a part of a page */
};

/*
 * Begin a picture.
 *
 *   number   tells the pictures of one page apart
 *   title    what it shows; `part` of `parts` is said behind it where there are several
 *   words    what it says: the conclusion, for those who cannot see it
 */
struct rb_svg_head {
	int width, height;
	unsigned number;
	const char *title, *words;
	unsigned part, parts;
};

void rb_svg_begin(struct rb_svg *svg, const struct rb_svg_head *head);
void rb_svg_end(struct rb_svg *svg);

void rb_svg_line(struct rb_svg *svg, enum rb_stroke stroke, struct rb_pixel from,
		 struct rb_pixel to);
void rb_svg_polyline(struct rb_svg *svg, enum rb_stroke stroke,
		     const struct rb_pixel *pixel, size_t pixels);
void rb_svg_polygon(struct rb_svg *svg, enum rb_stroke stroke,
		    const struct rb_pixel *pixel, size_t pixels);
void rb_svg_rect(struct rb_svg *svg, enum rb_stroke stroke, struct rb_box box);
void rb_svg_dot(struct rb_svg *svg, enum rb_stroke stroke, struct rb_pixel at,
		int radius);

/* Write a text; `at` is on the line on which the letters stand. */
void rb_svg_text(struct rb_svg *svg, struct rb_pixel at, enum rb_anchor anchor,
		 const char *text, bool strong);

/* What such a text covers. */
struct rb_box rb_svg_text_box(struct rb_pixel at, enum rb_anchor anchor,
			      const char *text);

#endif
