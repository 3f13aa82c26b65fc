/* SPDX-License-Identifier: MIT */
/*
 * fall_json.h - the fall along a book as JSON.
 *
 * {"rodbook", "schema", "book", "unit", "elevations", "minimum", "legs", "total",
 * "messages"}; docs/formats.md describes it.
 */
#ifndef RB_REPORT_FALL_JSON_H
#define RB_REPORT_FALL_JSON_H

#include "report/fall_result.h"
#include "report/sink.h"

/* Write the object, with the findings of `files` files; false without memory. */
bool rb_fall_write_json(struct rb_sink *sink, const struct rb_fall_result *r,
			const struct rb_findings *const *findings, size_t files);

#endif
