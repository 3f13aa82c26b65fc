/* SPDX-License-Identifier: MIT */
/*
 * plan_check.h - is a plan whole, and does it agree with itself?
 *
 * After the check the rows are in order along the line, every row has a chainage of its
 * own, steps agree with the inverts beside them, and it is settled which end is the
 * outlet.
 */
#ifndef RB_DRAIN_PLAN_CHECK_H
#define RB_DRAIN_PLAN_CHECK_H

#include "rodbook/plan.h"

/* Add a finding for everything that is missing or contradicts, and settle the outlet. */
void rb_plan_check(struct rb_findings *findings, struct rb_plan *plan);

/* The step of a row: as written, or the difference of its inverts; 0 where neither says.
 */
rb_length rb_plan_step(const struct rb_plan_row *row);

/* The invert out of a row as far as the row itself fixes it, or none. */
rb_length rb_plan_fixed(const struct rb_plan_row *row);

#endif
