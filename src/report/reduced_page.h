/* SPDX-License-Identifier: MIT */
/*
 * reduced_page.h - a reduced book as a page.
 *
 * Every place of the rod with its height of instrument and its elevation, raw and
 * adjusted side by side; then what the sums prove, what the levels prove, and where to
 * look if they do not.
 */
#ifndef RB_REPORT_REDUCED_PAGE_H
#define RB_REPORT_REDUCED_PAGE_H

#include "report/reduction.h"
#include "rodbook/table.h"

/* Make the page, in the arena; NULL if there is no memory. */
struct rb_page *rb_reduced_page(struct rb_arena *arena, const struct rb_reduction *r);

#endif
