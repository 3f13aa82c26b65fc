/* SPDX-License-Identifier: MIT */
/*
 * stream.h - the program's own streams: standard output and standard error.
 *
 * Results go to the first, words about them to the second; both are written through a
 * sink, and a failure of the first is a failure of the program.
 */
#ifndef RB_CLI_STREAM_H
#define RB_CLI_STREAM_H

#include "cli/command.h"
#include "cli/options.h"
#include "cli/output.h"
#include "report/sink.h"

struct rb_stream {
	struct rb_output output;
	struct rb_sink sink;
};

/* Make the streams fit to be written to, also where memory has run out: a closed one must
 * not be mistaken for a file that is opened later, and neither a pipe that was closed
 * early nor a limit on the size of files may end the program unasked. */
void rb_streams_prepare(void);

/* A sink on STDOUT_FILENO or STDERR_FILENO. */
void rb_stream_open(struct rb_stream *stream, int fd);

/* Write what is left; `status`, or RB_EXIT_SYSTEM, with its reason on standard error,
 * where not all could be written. */
enum rb_exit rb_stream_close(struct rb_stream *stream, enum rb_exit status);

/* Is color wanted on a stream?  RB_COLOR_AUTO: on a terminal that is not dumb, unless
 * NO_COLOR is set. */
bool rb_stream_color(int fd, enum rb_color wish);

/* Why the system failed: `error` is an errno, or RB_CHANGED_MEANWHILE. */
const char *rb_system_reason(int error);

/* Say "rodbook: what: reason" on standard error.  Always returns RB_EXIT_SYSTEM. */
enum rb_exit rb_system_failed(const char *what, int error);

#endif
