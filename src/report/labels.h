/* SPDX-License-Identifier: MIT */
/*
 * labels.h - where the words of a picture go.
 *
 * Labels are placed one after another, the most important first.  Each goes to the place
 * nearest to what it names where it covers no label that is placed already, and rather no
 * line.  Where there is none it is left out: two labels never overlap.
 */
#ifndef RB_REPORT_LABELS_H
#define RB_REPORT_LABELS_H

#include "report/svg.h"
#include "rodbook/arena.h"

enum rb_side { RB_SIDE_ABOVE, RB_SIDE_BELOW, RB_SIDE_LEFT, RB_SIDE_RIGHT };

struct rb_label {
	struct rb_pixel at; /* what it names */
	int clear;          /* pixels to keep from there */
	enum rb_side side;  /* where it stands best */
	const char *text;
};

/* Where it went. */
struct rb_placed {
	struct rb_pixel at; /* of the text */
	enum rb_anchor anchor;
	struct rb_box box;
	bool led;               /* it stands so far off that a line must lead to it */
	struct rb_pixel leader; /* where on the label that line begins */
};

struct rb_labels {
	struct rb_box within; /* no label reaches out of it */
	struct rb_box *box;   /* what is taken */
	size_t boxes, boxes_most;
	struct rb_pixel (*line)[2]; /* what is better not covered */
	size_t lines, lines_most;
};

/* Room for so many labels (and boxes kept free) and lines; false if there is no memory.
 */
bool rb_labels_init(struct rb_labels *labels, struct rb_arena *arena, size_t boxes,
		    size_t lines);

/* Begin a new picture within a box. */
void rb_labels_begin(struct rb_labels *labels, struct rb_box within);

/* Keep a box free of labels; one too many is not noted. */
void rb_labels_take(struct rb_labels *labels, struct rb_box box);

/* Note a line that labels should not cover. */
void rb_labels_line(struct rb_labels *labels, struct rb_pixel from, struct rb_pixel to);

/* Place a label and take its box; false if there is no place for it. */
bool rb_labels_place(struct rb_labels *labels, const struct rb_label *label,
		     struct rb_placed *placed);

/* Do two boxes have a pixel in common? */
bool rb_box_overlaps(struct rb_box a, struct rb_box b);

#endif
