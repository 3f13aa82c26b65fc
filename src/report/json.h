/* SPDX-License-Identifier: MIT */
/*
 * json.h - JSON, written piece by piece.
 *
 * Commas, line ends and escapes are the writer's business: the caller opens and closes
 * what it means and names its values.  The outcome is always valid: text that is no UTF-8
 * gets U+FFFD in its place, what turns the writing or cannot be seen is written out (the
 * value stays the same), numbers are decimal numbers without a binary fraction
 * between, there is no -0, and what is absent is null.  Indented by two; an object opened
 * as a line stands on one line.
 */
#ifndef RB_REPORT_JSON_H
#define RB_REPORT_JSON_H

#include "report/sink.h"
#include "rodbook/length.h"

#define RB_JSON_DEPTH 16

struct rb_json {
	struct rb_sink *sink;
	int depth;
	char close[RB_JSON_DEPTH];  /* by depth: the bracket that ends it */
	bool filled[RB_JSON_DEPTH]; /* something stands in it already */
	int line;   /* the depth from which all stands on one line; 0: none */
	bool named; /* a key was written: its value comes next */
};

void rb_json_init(struct rb_json *json, struct rb_sink *sink);

/* Open an object ('{') or an array ('['), over lines or on one. */
void rb_json_open(struct rb_json *json, char bracket);
void rb_json_open_line(struct rb_json *json, char bracket);
void rb_json_close(struct rb_json *json);

/* Name the next value; the key is a plain word. */
void rb_json_key(struct rb_json *json, const char *key);

void rb_json_string(struct rb_json *json, const char *text);
/* The same, null where the text is NULL or "". */
void rb_json_text(struct rb_json *json, const char *text);
void rb_json_count(struct rb_json *json, int64_t number);
void rb_json_bool(struct rb_json *json, bool value);
void rb_json_null(struct rb_json *json);
/* A number that is text already ("2.0833"), null where it is "". */
void rb_json_number(struct rb_json *json, const char *number);

/* A length rounded once to so many decimals of the unit (feet for RB_FEET_INCHES), zeros
 * at the end left out but for one: 98.24, 100.0, and 1613 where decimals is 0; null where
 * it is not given. */
void rb_json_length(struct rb_json *json, rb_length a, enum rb_unit unit, int decimals);

/* Open the object of a result: {"rodbook": "0.1.0", "schema": 1 */
void rb_json_head(struct rb_json *json);

/* The same, the whole object on one line: for results that come line by line. */
void rb_json_head_line(struct rb_json *json);

/* Close what is open and end the line. */
void rb_json_end(struct rb_json *json);

/* The decimals of a length in JSON and CSV unless asked otherwise: 4 in feet and metres,
 * 3 in inches, 1 in millimetres. */
int rb_json_decimals(enum rb_unit unit);

#endif
