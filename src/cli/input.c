/* SPDX-License-Identifier: MIT */
/* Read a file or a pipe whole. */
#include "cli/input.h"

#include <errno.h>
#include <fcntl.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/interrupted.h"

#define FIRST_BLOCK 65536

/* The library refuses a file of more bytes than 32 bits count: one more is enough to show
 * that this is one. */
#define MOST ((size_t)UINT32_MAX + 1)

/* Room for the whole file, with a byte more: to come upon its end without growing. */
static size_t first_room(const struct stat *about)
{
	uint64_t size = about->st_size > 0 ? (uint64_t)about->st_size : 0;

	if (!S_ISREG(about->st_mode) || size < FIRST_BLOCK)
		return FIRST_BLOCK;
	return size < MOST ? (size_t)size + 1 : MOST;
}

static bool grow(struct rb_input *input, size_t *room)
{
	size_t wider = input->bytes ? *room * 2 : *room;
	char *bytes = realloc(input->bytes, wider < MOST ? wider : MOST);

	if (!bytes)
		return false;
	input->bytes = bytes;
	*room = wider < MOST ? wider : MOST;
	return true;
}

static bool read_all(struct rb_input *input, int fd)
{
	size_t room = first_room(&input->about);
	ssize_t got = 1;

	if (!grow(input, &room))
		return false;
	while (got && input->length < MOST) {
		if (input->length == room && !grow(input, &room))
			return false;
		got = read(fd, input->bytes + input->length, room - input->length);
		if (got < 0 && !rb_held_up(fd, POLLIN, got))
			return false;
		input->length += got > 0 ? (size_t)got : 0;
	}
	return true;
}

static int open_input(const char *name)
{
	int fd;

	if (!strcmp(name, "-"))
		return STDIN_FILENO;
	do
		fd = open(name, O_RDONLY | O_CLOEXEC | O_NOCTTY);
	while (rb_interrupted(fd));
	return fd;
}

static bool is_readable(int fd, struct stat *about)
{
	if (fstat(fd, about))
		return false;
	if (!S_ISDIR(about->st_mode))
		return true;
	errno = EISDIR;
	return false;
}

bool rb_input_is_as_before(const struct stat *now, const struct stat *before)
{
	return now->st_dev == before->st_dev && now->st_ino == before->st_ino &&
	       now->st_size == before->st_size &&
	       now->st_mtim.tv_sec == before->st_mtim.tv_sec &&
	       now->st_mtim.tv_nsec == before->st_mtim.tv_nsec;
}

/* What was there when the reading began, and not a byte of something later?  A file that
 * takes the place of this one by its name is another: this one stays whole. */
static bool was_left_alone(int fd, const struct stat *about)
{
	struct stat now;

	if (!S_ISREG(about->st_mode))
		return true;
	if (fstat(fd, &now))
		return false;
	errno = RB_CHANGED_MEANWHILE;
	return rb_input_is_as_before(&now, about);
}

bool rb_input_read(struct rb_input *input, const char *name)
{
	int fd = open_input(name), reason;
	bool done;

	*input = (struct rb_input){ .name = name };
	if (fd < 0)
		return false;
	done = is_readable(fd, &input->about) && read_all(input, fd) &&
	       was_left_alone(fd, &input->about);
	reason = errno;
	if (fd != STDIN_FILENO)
		close(fd);
	if (!done)
		rb_input_free(input);
	errno = reason;
	return done;
}

void rb_input_free(struct rb_input *input)
{
	free(input->bytes);
	input->bytes = NULL;
	input->length = 0;
}
