/* SPDX-License-Identifier: MIT */
/*
 * dig_result.h - one reading and its answer, in words and as JSON.
 *
 * One line a reading: what a person in a ditch can act on, without a sign or an arrow.
 */
#ifndef RB_REPORT_DIG_RESULT_H
#define RB_REPORT_DIG_RESULT_H

#include "drain/dig.h"
#include "report/phrase.h"
#include "report/sink.h"

struct rb_dig_result {
	struct rb_dig dig;
	struct rb_todays_hi today;                /* in the hub mode none */
	struct rb_sighted_benchmark benchmark[2]; /* that it comes from; or none */
	rb_length at;                             /* chainage; none in the hub mode */
	rb_length
		step; /* there: how much higher the pipe comes in; none without a step */
	const char *on;        /* "trench", "invert", "top"; "" in the hub mode */
	bool on_pipe;          /* the rod stands on the pipe: it is raised or lowered */
	rb_length within;      /* how near is on grade */
	struct rb_style style; /* of JSON */
	struct rb_style
		words; /* of the words: inches with a fraction, or a metric unit */
	int decimals;  /* of JSON; -1: rb_json_decimals() */
};

/* "dig 1 1/4 in", "over-dug by 1/2 in: bring back with compacted bedding", "on grade
 * (within 1/8 in)", "fill 0.152 m", "raise the pipe 1/2 in". */
void rb_dig_words(struct rb_phrase *phrase, const struct rb_dig_result *result);

/* At a step, which pipe was meant: "; that is the pipe going out, the one coming in lies
 * 6 in higher".  Nothing elsewhere. */
void rb_dig_step(struct rb_phrase *phrase, const struct rb_dig_result *result);

/* "HI 104.27 - ..." is not repeated here: wanted - read = difference, step by step. */
void rb_dig_steps(struct rb_phrase *phrase, const struct rb_dig_result *result);

/* What a second benchmark makes of the height of instrument, in one line; with the steps,
 * its sums below.  Nothing where there is nothing to say. */
void rb_dig_hi(struct rb_phrase *phrase, const struct rb_dig_result *result, bool steps);

/* Write the object on one line; false if there was no memory. */
bool rb_dig_write_json(struct rb_sink *sink, struct rb_phrase *phrase,
		       const struct rb_dig_result *result);

#endif
