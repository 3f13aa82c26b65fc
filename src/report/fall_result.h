/* SPDX-License-Identifier: MIT */
/*
 * fall_result.h - the fall along a book, as its writers take it.
 *
 * Everything that the stages found, and how it is to be shown; page and JSON are made
 * from this and nothing else.
 */
#ifndef RB_REPORT_FALL_RESULT_H
#define RB_REPORT_FALL_RESULT_H

#include "drain/rules.h"
#include "level/fall.h"

struct rb_fall_result {
	const struct rb_fall *fall;
	const struct rb_spots *spots;
	struct rb_minimum minimum; /* its slope is not given: nothing is asked */
	rb_length size;            /* of the pipe, where rules were asked; or none */
	struct rb_style style;
	int decimals; /* of JSON; -1: rb_json_decimals() */
};

#endif
