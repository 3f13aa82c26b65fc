/* SPDX-License-Identifier: MIT */
/*
 * convert_json.h - lengths in every notation, for other programs: JSON and CSV.
 *
 * JSON is a bare array with an object a line; it is valid however many stand in it, so
 * that the lengths may come one by one.
 */
#ifndef RB_REPORT_CONVERT_JSON_H
#define RB_REPORT_CONVERT_JSON_H

#include "report/conversion.h"
#include "report/csv.h"
#include "report/json.h"

/* Write one conversion into an open array: input, feet, inches, metres, feet_inches (the
 * nearest mark of the tape) and rounding_error_inches (that mark minus the length). */
void rb_conversion_write_json(struct rb_json *json, const struct rb_conversion *c);

/* The same as CSV: the row of headings, and a row of values. */
void rb_conversion_write_csv_head(struct rb_csv *csv);
void rb_conversion_write_csv(struct rb_csv *csv, const struct rb_conversion *c);

#endif
