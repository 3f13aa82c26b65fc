/* SPDX-License-Identifier: MIT */
/*
 * caution.h - where the numbers of a job can hurt someone.
 *
 * A caution comes where a number triggers it, with the number, the place and the
 * citation. Its absence says nothing: a trench is never called safe.
 */
#ifndef RB_DRAIN_CAUTION_H
#define RB_DRAIN_CAUTION_H

#include "drain/cut_sheet.h"
#include "drain/grade_rods.h"
#include "drain/jurisdiction.h"

enum rb_caution_kind {
	RB_CAUTION_LOCATE,  /* before any digging: buried services */
	RB_CAUTION_DEPTH,   /* the trench is as deep as a limit */
	RB_CAUTION_FOOTING, /* the trench cuts the 45 degree line below a footing */
	RB_CAUTION_ROD      /* the rod is extended: overhead lines */
};

struct rb_caution {
	enum rb_caution_kind kind;
	const char *rule;  /* the citation; "" where there is none */
	const char *where; /* a station or a shot; "" for the whole line */
	const char *asks;  /* RB_CAUTION_DEPTH: what the rule asks for */
	rb_length value;   /* the depth; how far the trench must stay away; the reading */
	rb_length limit;   /* the limit; how far away it is; the closed rod */
	bool at_least;     /* the depth is more: the trench bottom is not known */
};

struct rb_cautions {
	const struct rb_jurisdiction *jurisdiction;
	struct rb_caution *item;
	uint32_t count;
};

/*
 * The cautions of a line.
 *
 *   jurisdiction  rb_jurisdiction_find(), _read() or _unset()
 *   sheet         the cut sheet, which knows the depths
 *   rods          the grade rods, or NULL
 *
 * NULL if memory ran out.
 */
struct rb_cautions *rb_cautions(struct rb_arena *arena, struct rb_findings *findings,
				const struct rb_jurisdiction *jurisdiction,
				const struct rb_cut_sheet *sheet,
				const struct rb_grade_rods *rods);

#endif
