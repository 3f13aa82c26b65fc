/* SPDX-License-Identifier: MIT */
/*
 * profile.h - a picture of levels or of a drain, before it is drawn.
 *
 * Places stand from left to right; over them lines, marks and labels at their elevations.
 * A report makes one from its result and knows nothing of pixels; one routine draws any.
 * Items are added from left to right and reach no further than from one place to the
 * next, so that a long run can be cut into strips.  All texts live in the arena.
 */
#ifndef RB_REPORT_PROFILE_H
#define RB_REPORT_PROFILE_H

#include "report/labels.h"
#include "rodbook/length.h"

/* How a line is drawn, by what it is. */
enum rb_profile_look {
	RB_LOOK_SIGHT,  /* the line of sight */
	RB_LOOK_ROD,    /* a rod */
	RB_LOOK_GROUND, /* dashed */
	RB_LOOK_INVERT, /* solid */
	RB_LOOK_TOP_OF_PIPE,
	RB_LOOK_TRENCH_BOTTOM,
	RB_LOOK_FAILING, /* heavy and dotted, beside its words */
	RB_LOOK_UPRIGHT, /* a station: a thin upright */
	RB_LOOKS
};

enum rb_profile_mark {
	RB_MARK_POINT,      /* a dot */
	RB_MARK_BENCHMARK,  /* a triangle */
	RB_MARK_SURFACE,    /* a square: of a pipe or a ceiling, not of the ground */
	RB_MARK_INSTRUMENT, /* a level on its tripod, at the height of instrument */
	RB_MARK_FAILING,    /* a cross */
	RB_MARKS
};

struct rb_profile_spot {
	rb_length along, elevation;
	int aside; /* pixels to the right, for two rods on one place: what is to the left
		    * belongs to what comes before the place, to the right to what follows
		    */
};

enum rb_profile_kind { RB_ITEM_LINE, RB_ITEM_MARK, RB_ITEM_LABEL };

struct rb_profile_item {
	enum rb_profile_kind kind;
	enum rb_profile_look look;
	enum rb_profile_mark mark;
	struct rb_profile_spot from, to; /* of a mark and a label the same */
	enum rb_side side;               /* of a label */
	bool strong;
	const char *text;
	struct rb_profile_item *next;
};

#define RB_PROFILE_STRIP 24
#define RB_PROFILE_BAND  4 /* lines under a place: its name and its numbers */

struct rb_profile_place {
	rb_length along;
	const char *text[RB_PROFILE_BAND]; /* NULL: nothing; numbers are never cut */
	struct rb_profile_place *next;
};

struct rb_profile {
	const char *title;                 /* what it shows; "" until it is said */
	const char *words;                 /* the conclusion */
	const char *band[RB_PROFILE_BAND]; /* what stands on the lines under the places */
	struct rb_style style;             /* of the elevation scale */
	enum rb_unit unit_along;           /* RB_FEET or RB_METRES */
	bool to_scale; /* places stand as far apart as they are; else in even steps */
	size_t strip;  /* places side by side in a strip at most, 2 to RB_PROFILE_STRIP */

	struct rb_profile_item *first, **last;
	struct rb_profile_place *first_place, **last_place;
	size_t places, lines, labels; /* and marks, among the labels */
	size_t widest;                /* columns of the widest number under a place */
	struct rb_arena *arena;
	bool out_of_memory; /* something could not be added: do not draw it */
};

/* An empty picture, or NULL. */
struct rb_profile *rb_profile_new(struct rb_arena *arena, struct rb_style style);

/* Add a place, to the right of the one before; texts are copied. */
void rb_profile_place(struct rb_profile *profile, rb_length along,
		      const char *const text[static RB_PROFILE_BAND]);

void rb_profile_line(struct rb_profile *profile, enum rb_profile_look look,
		     struct rb_profile_spot from, struct rb_profile_spot to);
void rb_profile_mark(struct rb_profile *profile, enum rb_profile_mark mark,
		     struct rb_profile_spot at);

/* Add a label; the text is copied.  Strong ones are placed before the others. */
void rb_profile_label(struct rb_profile *profile, struct rb_profile_spot at,
		      enum rb_side side, const char *text, bool strong);

/* The part of a line between two places along; it reaches there. */
void rb_profile_clip(struct rb_profile_spot *from, struct rb_profile_spot *to,
		     rb_length left, rb_length right);

#endif
