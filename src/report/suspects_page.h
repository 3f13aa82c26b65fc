/* SPDX-License-Identifier: MIT */
/*
 * suspects_page.h - the single slips that would explain a misclosure, as a table.
 *
 * Each slip is a line; candidates of one kind that fit many rows are one line together.
 */
#ifndef RB_REPORT_SUSPECTS_PAGE_H
#define RB_REPORT_SUSPECTS_PAGE_H

#include "report/phrase.h"
#include "report/reduction.h"
#include "rodbook/table.h"

/* Add the suspects of a section to a page; nothing where there is none.  The phrase is
 * used for scratch. */
void rb_suspects_page(struct rb_page *page, struct rb_phrase *phrase,
		      const struct rb_reduction *r, uint32_t section);

#endif
