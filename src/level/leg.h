/* SPDX-License-Identifier: MIT */
/*
 * leg.h - the slope from one place to the next, judged.
 *
 * A leg runs from an upstream place to a downstream one; its fall is positive downstream
 * and its slope is the exact ratio of two lengths, so that 1:50 passes a rule of 1:50 and
 * fails one of 1/4 in/ft.  What is asked of it comes from the caller: this room knows no
 * rule.
 */
#ifndef RB_LEVEL_LEG_H
#define RB_LEVEL_LEG_H

#include "rodbook/finding.h"

enum rb_leg_verdict {
	RB_LEG_NOT_JUDGED, /* it falls, and no minimum was asked */
	RB_LEG_OK,
	RB_LEG_FLAT, /* flatter than the minimum asked */
	RB_LEG_LEVEL,
	RB_LEG_UPHILL,
	RB_LEG_VERDICTS
};

struct rb_leg {
	const char *from, *to;  /* upstream, downstream: names, never NULL */
	rb_length upper, lower; /* elevations of its ends, to the nearest nanometre */
	rb_length length;       /* horizontal, > 0 */
	rb_length fall;         /* to the nearest nanometre */
	rb_slope slope;         /* exact */
	rb_slope minimum;       /* not given: none is asked */
	rb_slope uncertainty;   /* either way, at worst; not given: it was not measured */
	enum rb_leg_verdict verdict;
	bool within_reading; /* it fails by no more than the uncertainty */
};

/* Judge a leg of known slope and minimum, exactly. */
void rb_leg_judge(struct rb_leg *leg);

/* Add the finding for a leg that is flat, level or uphill (RB_CODE_LEG_...: failed). */
void rb_leg_report(struct rb_findings *findings, const struct rb_leg *leg,
		   struct rb_place place);

/* "ok", "flat", "level", "uphill"; NULL for RB_LEG_NOT_JUDGED. */
const char *rb_leg_verdict_name(enum rb_leg_verdict verdict);

#endif
