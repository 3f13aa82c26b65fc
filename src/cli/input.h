/* SPDX-License-Identifier: MIT */
/*
 * input.h - the bytes of a file or of standard input.
 *
 * An input is read whole before anything is made of it, so that a file which somebody
 * saves meanwhile cannot be half old and half new.  A regular file takes one block of its
 * size, a pipe one that grows.
 */
#ifndef RB_CLI_INPUT_H
#define RB_CLI_INPUT_H

#include <stdbool.h>
#include <stddef.h>

#include <sys/stat.h>

struct rb_input {
	const char *name; /* as the user gave it, for messages; "-" is standard input */
	char *bytes;      /* owned: rb_input_free() */
	size_t length;
	struct stat about; /* which file it is, so that it is not written over */
};

/*
 * Read a file whole; "-" reads standard input.  Directories are refused.
 *
 * Returns false where it cannot be read, with the reason in errno; nothing is owned then.
 * What is longer than the library takes (4 GiB) is read only as far as it needs to see
 * that.
 */
bool rb_input_read(struct rb_input *input, const char *name);

void rb_input_free(struct rb_input *input);

#endif
