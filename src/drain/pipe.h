/* SPDX-License-Identifier: MIT */
/*
 * pipe.h - outside diameters and walls of pipe, by size and kind.
 *
 * A nominal size is a name: the outside of a 4 in Schedule 40 pipe is 4.500 in, and its
 * invert lies 4.263 in below its top.  Sizes come from the table, with the source of each
 * kind, or from the user's own measure; nothing else is assumed.
 */
#ifndef RB_DRAIN_PIPE_H
#define RB_DRAIN_PIPE_H

#include "rodbook/plan.h"

struct rb_pipe_size {
	rb_length size, outside, wall;
};

struct rb_pipe_kind {
	const char *name;
	const char
		*alias; /* words set apart by |, in lower case, letters and digits only */
	const char *source;
	const char *seen; /* how the figures were seen, in words */
	const struct rb_pipe_size *size;
	size_t sizes;
};

/* The kinds of the table; *count is set. */
const struct rb_pipe_kind *rb_pipe_kinds(size_t *count);

enum rb_pipe_refusal {
	RB_PIPE_READ,
	RB_PIPE_NO_SIZE,     /* no size before the kind */
	RB_PIPE_NO_KIND,     /* the words behind the size are no kind of the table */
	RB_PIPE_NOT_IN_TABLE /* the kind has no such size: its outside and wall are none
			      */
};

/*
 * Read a pipe from UTF-8 text: "4 in sch 40", "4\" SDR 35", "100 mm", "3 in no-hub".  A
 * bare number is inches; metric sizes stand for the inch sizes that carry their name (100
 * mm sch 40 is 4 in).  *out is set as far as it was understood.
 */
enum rb_pipe_refusal rb_pipe_parse(const char *text, size_t length, struct rb_pipe *out);

/* Read a nominal size alone: "4 in", "2-1/2 in", "2 1/2\"", "100 mm", "4"; none if it is
 * no length above 0. */
rb_length rb_pipe_size_parse(const char *text, size_t length);

/* The inch size that goes by a metric name (100 mm is 4 in), or the size itself: a rule
 * in one and a pipe in the other mean the same pipe. */
rb_length rb_pipe_size_by_name(rb_length size);

/* The next larger size that is made, by the inch sizes of the trade; none beyond 36 in.
 */
rb_length rb_pipe_next_size(rb_length size);

#endif
