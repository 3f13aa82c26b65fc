/* SPDX-License-Identifier: MIT */
/*
 * reduced_steps.h - the arithmetic of a reduced book, line by line.
 *
 * Every height of instrument, elevation and correction with the numbers that it was made
 * of, in the order observed; then the sums of each section.
 */
#ifndef RB_REPORT_REDUCED_STEPS_H
#define RB_REPORT_REDUCED_STEPS_H

#include "report/reduction.h"
#include "rodbook/table.h"

/* Add the steps to a page: a heading and lines.  Failing sets page->out_of_memory. */
void rb_reduced_steps(struct rb_page *page, const struct rb_reduction *r);

#endif
