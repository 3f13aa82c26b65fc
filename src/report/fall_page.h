/* SPDX-License-Identifier: MIT */
/*
 * fall_page.h - the fall along a book as a page.
 */
#ifndef RB_REPORT_FALL_PAGE_H
#define RB_REPORT_FALL_PAGE_H

#include "report/fall_result.h"
#include "rodbook/table.h"

/* Make the page, in the arena; with `steps` every leg's arithmetic.  NULL if there is no
 * memory. */
struct rb_page *rb_fall_page(struct rb_arena *arena, const struct rb_fall_result *r,
			     bool steps);

#endif
