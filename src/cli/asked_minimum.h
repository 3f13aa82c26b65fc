/* SPDX-License-Identifier: MIT */
/*
 * asked_minimum.h - which minimum slope a line is held against.
 *
 * --minimum or --rules of the command line go before what the plan says; a rules file
 * that the plan names stands relative to the plan.
 */
#ifndef RB_CLI_ASKED_MINIMUM_H
#define RB_CLI_ASKED_MINIMUM_H

#include "cli/values.h"
#include "drain/rules.h"
#include "rodbook/plan.h"

struct rb_asked_minimum {
	struct rb_minimum minimum;
	rb_length size;  /* by which the rule was looked up; or none */
	bool overridden; /* the plan said otherwise */
};

/* Refuse options that do not go together, as far as that is seen before a file is read:
 * `plan`, there will be a plan, and it may name rules. */
bool rb_minimum_is_misused(struct rb_job *job, bool plan);

/*
 * Find the minimum of a command line that was found in order; false after an error.
 *
 *   plan  NULL: there is none
 *   file  that of the plan, for findings about it
 */
bool rb_ask_minimum(struct rb_values *values, const struct rb_plan *plan,
		    struct rb_job_file *file, struct rb_asked_minimum *out);

/* A file that the plan names, in the arena of the job; NULL, with that said, without
 * memory. */
const char *rb_beside_plan(struct rb_job *job, const struct rb_plan *plan,
			   const char *name);

#endif
