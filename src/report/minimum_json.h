/* SPDX-License-Identifier: MIT */
/*
 * minimum_json.h - the minimum slope asked for, and by which rule, as JSON.
 */
#ifndef RB_REPORT_MINIMUM_JSON_H
#define RB_REPORT_MINIMUM_JSON_H

#include "drain/rules.h"
#include "report/json.h"

/* Write the key "minimum": null where nothing is asked, else an object with
 * inches_per_foot, percent, rule, source, edition and read. */
void rb_minimum_put_json(struct rb_json *json, const struct rb_minimum *minimum);

#endif
