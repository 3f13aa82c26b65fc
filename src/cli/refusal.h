/* SPDX-License-Identifier: MIT */
/*
 * refusal.h - a command line that is wrong, as only the command itself can see.
 *
 * Options that do not go together, a value that the file at hand shows to be none: in
 * words on standard error, or with --messages json a message of the object at the end.
 */
#ifndef RB_CLI_REFUSAL_H
#define RB_CLI_REFUSAL_H

#include "cli/job.h"
#include "report/phrase.h"

/* A complaint on its way: its words go to `sink`. */
struct rb_misuse {
	struct rb_job *job;
	struct rb_output output; /* where messages are text */
	struct rb_phrase phrase; /* where they are JSON */
	struct rb_sink sink;
};

void rb_misuse_begin(struct rb_misuse *misuse, struct rb_job *job);

/* The job then ends with RB_EXIT_INPUT. */
void rb_misuse_end(struct rb_misuse *misuse);

/* In one sentence. */
void rb_refuse(struct rb_job *job, const char *words);

/* An option may not stand so ("stands in place of a plan"). */
void rb_refuse_use(struct rb_job *job, enum rb_option option, const char *words);

/* An option's value is none that it takes. */
void rb_refuse_value(struct rb_job *job, enum rb_option option);

/* Refuse a command line on which - stands for more than one file: standard input is at
 * its end once it was read.  Nothing is said where the job has failed already. */
void rb_refuse_standard_input_twice(struct rb_job *job);

#endif
