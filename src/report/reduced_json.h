/* SPDX-License-Identifier: MIT */
/*
 * reduced_json.h - a reduced book as JSON.
 *
 * {"rodbook", "schema", "book", "unit", "points", "sections", "messages"}: the form is
 * described in docs/formats.md.  Keys may be added, none goes away; what is absent is
 * null.
 */
#ifndef RB_REPORT_REDUCED_JSON_H
#define RB_REPORT_REDUCED_JSON_H

#include "report/reduction.h"
#include "report/sink.h"

/* Write the object; false if there was no memory (what is written then is not whole). */
bool rb_reduced_write_json(struct rb_sink *sink, const struct rb_reduction *r,
			   const struct rb_findings *findings);

#endif
