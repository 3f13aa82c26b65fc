/* SPDX-License-Identifier: MIT */
/*
 * dig.h - rod readings and their answers: the one of the command line, or those that are
 * typed line by line.
 *
 * Lines are answered one by one, each as soon as it is read; a refused line gets its
 * message, and the rest go on.
 */
#ifndef RB_CLI_DIG_H
#define RB_CLI_DIG_H

#include "cli/drain_input.h"
#include "report/dig_result.h"

/* What the answers hang on. */
struct rb_digging {
	struct rb_job *job;
	struct rb_drain_input input; /* without a line in the hub mode */
	struct rb_values *values;
	enum rb_unit unit; /* of the line, or of the numbers beside a hub */
	rb_length rod;     /* its length */
	enum rb_surface surface;
	bool digging;           /* what stands low was dug too deep */
	bool placed;            /* the grade rod is known: of the hub, or at --at */
	struct rb_exact wanted; /* the grade rod */
	struct rb_dig_result answer;
	struct rb_phrase phrase;
};

/* Find the grade rod at a chainage; false after an error. */
bool rb_dig_place(struct rb_digging *w, rb_length at);

/* Find the answer to a reading. */
void rb_dig_read(struct rb_digging *w, rb_length read);

/* Write the answer; false if there was no memory. */
bool rb_dig_write(struct rb_sink *sink, struct rb_digging *w);

/* Write where the height of instrument comes from, if there is something to say of it;
 * false if there was no memory. */
bool rb_dig_write_hi(struct rb_sink *sink, struct rb_digging *w);

/* Answer standard input line by line; false where no line was asked for. */
bool rb_dig_lines(struct rb_digging *w);

#endif
