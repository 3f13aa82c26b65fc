/* SPDX-License-Identifier: MIT */
/*
 * output.h - where a result goes: standard output, or a file written whole or not at all.
 *
 * A file is written beside its target under a name of its own and takes the target's name
 * only when every byte is on the disk; whatever fails before that, or a signal that ends
 * the program, removes it and leaves the old file as it was.  What is not a file (a pipe,
 * a device) is written directly.
 */
#ifndef RB_CLI_OUTPUT_H
#define RB_CLI_OUTPUT_H

#include <stdbool.h>
#include <stddef.h>

#include <sys/stat.h>

enum rb_output_way {
	RB_REPLACE,   /* an old file of that name gives way when the new one is whole */
	RB_NEVER_OVER /* an old file of that name is left alone: opening fails with EEXIST
		       */
};

struct rb_output {
	const char *name; /* as the user gave it; NULL or "-": standard output */
	int fd;           /* -1: not open */
	char *target;    /* owned: the file itself, symbolic links followed; NULL: written
			  * directly */
	char *temporary; /* owned: what is being written; NULL: the target itself */
	bool made;       /* a file was made that must not be left half-written */
	bool guarded;    /* rb_output_guard() was called, */
	const struct stat *old; /* with this */
	bool reader_left; /* a pipe was closed early: the rest is dropped, quietly */
	int error; /* errno of the first failure, or RB_CHANGED_MEANWHILE; 0: none */
};

/* Would this output write over the input?  Asked before anything is opened. */
bool rb_output_is_input(const char *name, const struct stat *input);

/* Open an output; false at a failure, with the reason in `error`. */
bool rb_output_open(struct rb_output *output, const char *name, enum rb_output_way way);

/* The new file holds what was in the old one, and may take its place only while that is
 * as it was when it was read: `old`, or not there at all (NULL).  Looked at last of all.
 */
void rb_output_guard(struct rb_output *output, const struct stat *old);

/* The file that a name stands for, symbolic links followed, as a text of the caller's;
 * NULL with errno at a failure. */
char *rb_output_target(const char *name);

/* One of the program's own streams, STDOUT_FILENO or STDERR_FILENO, as an output. */
struct rb_output rb_output_stream(int fd);

/* Write all of the bytes: the `write` of a struct rb_sink, with the output as its self.
 */
bool rb_output_write(void *output, const char *bytes, size_t length);

/* Put the file in its place, or, after a failure, remove it.  False if the result is not
 * there whole, with the reason in `error`. */
bool rb_output_close(struct rb_output *output);

/* Give the output up: nothing of it is left. */
void rb_output_abandon(struct rb_output *output);

#endif
