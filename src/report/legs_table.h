/* SPDX-License-Identifier: MIT */
/*
 * legs_table.h - legs as a table: fall and slope in every form, one row a leg.
 *
 * Numbers that mean nothing by themselves stand beside what they hang on: a slope beside
 * its length and the uncertainty of the readings, a velocity under the n it was worked
 * out with.
 */
#ifndef RB_REPORT_LEGS_TABLE_H
#define RB_REPORT_LEGS_TABLE_H

#include "level/leg.h"
#include "report/phrase.h"
#include "rodbook/table.h"

struct rb_legs {
	const char *caption; /* or NULL */
	const struct rb_leg *leg;
	uint32_t count;
	const struct rb_leg *total; /* or NULL */
	const rb_length *velocity;  /* by leg, none where not known; NULL: no column */
	struct rb_style style;      /* of falls */
	bool judged;                /* level and uphill are faults: in capitals */
};

/* Add the table to a page; failing sets page->out_of_memory. */
void rb_legs_table(struct rb_page *page, const struct rb_legs *legs);

/* How many legs have a verdict; the first of them in *first. */
uint32_t rb_legs_count(const struct rb_leg *leg, uint32_t count,
		       enum rb_leg_verdict verdict, uint32_t *first);

/*
 * Say the verdict on legs: "NOT FLATTER THAN 1/4 in/ft: all 3 legs.", "FLATTER THAN ...:
 * 1 of 3 legs, MH-1 to MH-2 with 0.18 in/ft.", "UPHILL: ...".
 *
 *   asked  the minimum in words; "" where none is asked
 *   what   "leg" or "laid leg"
 */
void rb_legs_verdict(struct rb_phrase *phrase, const struct rb_leg *leg, uint32_t count,
		     const char *asked, const char *what);

/* How a run along the ground is shown: two decimals of a foot or a metre. */
struct rb_style rb_runs_style(enum rb_unit unit);

#endif
