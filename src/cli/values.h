/* SPDX-License-Identifier: MIT */
/*
 * values.h - lengths and slopes that stand on the command line.
 *
 * They are read as the cells of a file are, in the unit of the plan or the book they go
 * with, and are refused in the same words.
 */
#ifndef RB_CLI_VALUES_H
#define RB_CLI_VALUES_H

#include "cli/job.h"
#include "drain/cells.h"

struct rb_values {
	struct rb_job *job;
	struct rb_job_file *words; /* the command line, as a file with findings */
	struct rb_cells cells;     /* they know the unit, and the hundreds last written */
};

/* Begin to read values; false if there is no memory. */
bool rb_values_begin(struct rb_values *values, struct rb_job *job, enum rb_unit unit);

/* The findings about the command line. */
static inline struct rb_findings *rb_values_findings(const struct rb_values *values)
{
	return &values->words->findings;
}

/* The value of an option, its `nth` from 0; none where it was not given or is refused. */
rb_length rb_value_length(struct rb_values *values, enum rb_option option,
			  enum rb_reading_kind kind, int nth);

/* The same of words that stand elsewhere; `what` names them in a message: "the reading".
 */
rb_length rb_value_of(struct rb_values *values, const char *text, const char *what,
		      enum rb_reading_kind kind);

/* A reading, by its words: an error where it is beyond a rod of that length. */
rb_length rb_value_on_rod(struct rb_values *values, const char *text, const char *what,
			  rb_length rod);

/* The same of an option, its `nth` from 0; none where it was not given. */
rb_length rb_value_reading(struct rb_values *values, enum rb_option option, rb_length rod,
			   int nth);

/* A slope, at most 45 degrees. */
rb_slope rb_value_slope(struct rb_values *values, enum rb_option option);

/* A slope that must fall: a minimum. */
rb_slope rb_value_minimum(struct rb_values *values);

/* A chainage in words. */
rb_length rb_value_chainage(struct rb_values *values, const char *text, const char *what);

#endif
