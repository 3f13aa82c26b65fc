/* SPDX-License-Identifier: MIT */
/*
 * inch_table.h - inches and parts of an inch in decimals of a foot: the card to pin up.
 *
 * Every entry is an exact fraction rounded once, half away from zero, as handbooks do.
 */
#ifndef RB_REPORT_INCH_TABLE_H
#define RB_REPORT_INCH_TABLE_H

#include "rodbook/table.h"

/* A page with inches 0 to 11 across and the parts of an inch down.
 *
 *   fraction  parts of an inch: 8, 16, 32 or 64
 *   decimals  1 to 9; with 4 the page is 80 columns wide at most
 *
 * NULL if memory ran out. */
struct rb_page *rb_inch_table_page(struct rb_arena *arena, int fraction, int decimals);

#endif
