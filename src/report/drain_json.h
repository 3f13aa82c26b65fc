/* SPDX-License-Identifier: MIT */
/*
 * drain_json.h - a drain as JSON.
 *
 * {"rodbook", "schema", "plan", "unit", "hi", "minimum", "stations", "legs",
 * "laid_shots", "laid_legs", "ponds", "fall", "cautions", "messages"}; docs/formats.md
 * describes it.  Keys may be added, none goes away; what is absent is null.
 */
#ifndef RB_REPORT_DRAIN_JSON_H
#define RB_REPORT_DRAIN_JSON_H

#include "report/drain_result.h"
#include "report/sink.h"

/* Write the object, with the findings of `files` files; false if there was no memory. */
bool rb_drain_write_json(struct rb_sink *sink, struct rb_arena *arena,
			 const struct rb_drain_result *r,
			 const struct rb_findings *const *findings, size_t files);

#endif
