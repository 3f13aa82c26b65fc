/* SPDX-License-Identifier: MIT */
/*
 * drain_csv.h - the cut sheet as CSV.
 *
 * One row a station, from the upper end to the outlet; lengths in one unit, and what the
 * crew sets in feet and inches too.  docs/formats.md describes the columns.
 */
#ifndef RB_REPORT_DRAIN_CSV_H
#define RB_REPORT_DRAIN_CSV_H

#include "report/drain_result.h"
#include "report/sink.h"

void rb_drain_write_csv(struct rb_sink *sink, const struct rb_drain_result *r);

#endif
