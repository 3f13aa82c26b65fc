/* SPDX-License-Identifier: MIT */
/*
 * drain_page.h - a drain as a page.
 *
 * Is there enough fall, the inverts, the grade rods from today's height of instrument,
 * the cut sheet, the pipe as it lies; cautions, and last the verdicts.
 */
#ifndef RB_REPORT_DRAIN_PAGE_H
#define RB_REPORT_DRAIN_PAGE_H

#include "report/drain_result.h"
#include "rodbook/table.h"

/* Make the page, in the arena; with `steps` the arithmetic.  NULL if there is no memory.
 */
struct rb_page *rb_drain_page(struct rb_arena *arena, const struct rb_drain_result *r,
			      bool steps);

#endif
