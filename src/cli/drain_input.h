/* SPDX-License-Identifier: MIT */
/*
 * drain_input.h - the line that drain and dig work on, and today's height of instrument.
 *
 * The line is a plan, or one straight pipe given by --invert, --slope and --length.  The
 * height of instrument comes from the command line alone: it is never that of an older
 * book.
 */
#ifndef RB_CLI_DRAIN_INPUT_H
#define RB_CLI_DRAIN_INPUT_H

#include "cli/values.h"
#include "drain/inverts.h"
#include "report/drain_result.h"

struct rb_drain_input {
	struct rb_values values;  /* numbers are in the unit of the plan */
	struct rb_job_file *file; /* of the plan; without one, the command line */
	const struct rb_plan *plan;
	const struct rb_inverts *inverts;
	bool has_plan;
};

/* Refuse options that do not go together, before a file is read. */
bool rb_drain_is_misused(struct rb_job *job);

/* Read the line of a command line that was found in order; false after an error. */
bool rb_drain_input_read(struct rb_drain_input *input, struct rb_job *job);

/* Today's height of instrument from --hi, or from --benchmark and --backsight, readings
 * on the plan's rod; none where neither was given. Two benchmarks that disagree are
 * warned of.  False after an error. */
bool rb_todays_hi_read(struct rb_values *values, const struct rb_plan *plan,
		       struct rb_todays_hi *today,
		       struct rb_sighted_benchmark benchmark[static 2]);

#endif
