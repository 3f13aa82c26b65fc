/* SPDX-License-Identifier: MIT */
/* Standard output and standard error. */
#include "cli/stream.h"

#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/input.h"
#include "cli/interrupted.h"
#include "report/width.h"

/* As deep as the stack ever is: four sinks, one within another, and what stands between.
 */
#define STACK_ROOM ((size_t)6 * RB_SINK_BLOCK)

/* Where memory has run out the stack cannot grow either, and even to say so takes some of
 * it: it is made as deep as it need be while there is memory. */
static void deepen_stack(void)
{
	volatile char room[STACK_ROOM];

	/* Page by page: of an array with one place in use a compiler may keep that alone.
	 */
	for (size_t i = 0; i < sizeof room; i += 1024)
		room[i] = 0;
}

/* A closed standard output is opened for reading, so that writing to it still fails. */
void rb_streams_prepare(void)
{
	static const int way[] = { O_RDONLY, O_RDONLY, O_WRONLY };

	deepen_stack();
	(void)signal(SIGPIPE, SIG_IGN);
	(void)signal(SIGXFSZ, SIG_IGN);
	for (int fd = STDIN_FILENO; fd <= STDERR_FILENO; fd++)
		while (fcntl(fd, F_GETFD) < 0 && open("/dev/null", way[fd]) != fd)
			if (errno != EINTR)
				_exit(RB_EXIT_SYSTEM);
}

void rb_stream_open(struct rb_stream *stream, int fd)
{
	stream->output = rb_output_stream(fd);
	rb_sink_init(&stream->sink, rb_output_write, &stream->output);
}

enum rb_exit rb_stream_close(struct rb_stream *stream, enum rb_exit status)
{
	if (rb_sink_flush(&stream->sink) || stream->output.reader_left ||
	    stream->output.fd == STDERR_FILENO)
		return status;
	return rb_system_failed("standard output", stream->output.error);
}

bool rb_stream_color(int fd, enum rb_color wish)
{
	const char *none = getenv("NO_COLOR"), *terminal = getenv("TERM");

	if (wish != RB_COLOR_AUTO)
		return wish == RB_COLOR_ALWAYS;
	return (!none || !*none) && terminal && strcmp(terminal, "dumb") != 0 &&
	       isatty(fd);
}

const char *rb_system_reason(int error)
{
	return error == RB_CHANGED_MEANWHILE
		       ? "changed meanwhile by another program; run it again"
		       : strerror(error);
}

enum rb_exit rb_system_failed(const char *what, int error)
{
	struct rb_stream stream;

	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink, "rodbook: ");
	rb_sink_shown(&stream.sink, what, strlen(what));
	rb_sink_text(&stream.sink, ": ");
	rb_sink_text(&stream.sink, rb_system_reason(error));
	rb_sink_char(&stream.sink, '\n');
	rb_sink_flush(&stream.sink);
	return RB_EXIT_SYSTEM;
}
