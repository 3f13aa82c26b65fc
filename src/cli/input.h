/* SPDX-License-Identifier: MIT */
/*
 * input.h - the bytes of a file or of standard input.
 *
 * An input is read whole before anything is made of it, and a file that somebody wrote to
 * meanwhile is refused: what was read could be half old and half new.  A regular file
 * takes one block of its size, a pipe one that grows.
 */
#ifndef RB_CLI_INPUT_H
#define RB_CLI_INPUT_H

#include <stdbool.h>
#include <stddef.h>

#include <sys/stat.h>

/* In place of an errno: the file is no longer what it was when it was read. */
#define RB_CHANGED_MEANWHILE (-1)

struct rb_input {
	const char *name; /* as the user gave it, for messages; "-" is standard input */
	char *bytes;      /* owned: rb_input_free() */
	size_t length;
	struct stat about; /* which file it is, so that it is not written over */
};

/*
 * Read a file whole; "-" reads standard input.  Directories are refused.
 *
 * Returns false where it cannot be read, with the reason in errno (RB_CHANGED_MEANWHILE
 * is one); nothing is owned then. What is longer than the library takes (4 GiB) is read
 * only as far as it needs to see that.
 */
bool rb_input_read(struct rb_input *input, const char *name);

/* Is a file as it was, as far as the system can tell: the same, as long, not written to
 * since? */
bool rb_input_is_as_before(const struct stat *now, const struct stat *before);

void rb_input_free(struct rb_input *input);

#endif
