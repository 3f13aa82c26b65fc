/* SPDX-License-Identifier: MIT */
/*
 * convert_page.h - a length in every notation, as a person reads it.
 *
 * The nearest mark of the tape stands first, with what the rounding leaves; then the
 * decimal notations, aligned on their points.
 */
#ifndef RB_REPORT_CONVERT_PAGE_H
#define RB_REPORT_CONVERT_PAGE_H

#include "report/conversion.h"
#include "rodbook/table.h"

/* Add one conversion to a page; `steps`: with the arithmetic, line by line. */
void rb_conversion_add(struct rb_page *page, const struct rb_conversion *c, bool steps);

#endif
