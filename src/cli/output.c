/* SPDX-License-Identifier: MIT */
/* Write a result whole, or leave nothing. */
#include "cli/output.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/input.h"
#include "cli/interrupted.h"
#include "cli/scrap.h"

#define LINKS_MOST                                                                       \
	40 /* followed before they are taken for a ring, as the system does              \
	    */
#define PATTERN ".rodbook-XXXXXX"

/* -- paths ----------------------------------------------------------------------- */

/* The length of the folder in front of a path's last name, its slash included. */
static size_t folder_length(const char *path)
{
	const char *slash = strrchr(path, '/');

	return slash ? (size_t)(slash - path) + 1 : 0;
}

/* `name` in the folder of `path`; NULL if there is no memory. */
static char *beside(const char *path, const char *name)
{
	size_t folder = *name == '/' ? 0 : folder_length(path), length = strlen(name);
	char *joined = malloc(folder + length + 1);

	if (!joined)
		return NULL;
	memcpy(joined, path, folder);
	memcpy(joined + folder, name, length + 1);
	return joined;
}

/* Renaming over a symbolic link would replace the link. */
char *rb_output_target(const char *name)
{
	char *now = beside("", name);
	char link[PATH_MAX];

	for (int links = 0; now && links < LINKS_MOST; links++) {
		ssize_t length = readlink(now, link, sizeof link - 1);
		char *next;

		if (length < 0)
			return now;
		link[length] = '\0';
		next = beside(now, link);
		free(now);
		now = next;
	}
	errno = now ? ELOOP : ENOMEM;
	free(now);
	return NULL;
}

static bool is_stream(const char *name)
{
	return !name || !strcmp(name, "-") || !strcmp(name, "/dev/stdout");
}

/* Not files to be replaced: the program's own streams by their names, pipes, devices. */
static bool is_direct(const char *name)
{
	struct stat about;

	if (!strncmp(name, "/dev/fd/", 8) || !strncmp(name, "/proc/", 6) ||
	    !strcmp(name, "/dev/stderr"))
		return true;
	return !stat(name, &about) && !S_ISREG(about.st_mode);
}

bool rb_output_is_input(const char *name, const struct stat *input)
{
	struct stat about;
	int found = is_stream(name) ? fstat(STDOUT_FILENO, &about) : stat(name, &about);

	return !found && S_ISREG(about.st_mode) && about.st_dev == input->st_dev &&
	       about.st_ino == input->st_ino;
}

/* -- opening --------------------------------------------------------------------- */

static bool fail(struct rb_output *output)
{
	if (!output->error)
		output->error = errno ? errno : EIO;
	return false;
}

/* The mode that the new file is to have: the old one's, or that of any new file. */
static mode_t wanted_mode(const char *target, bool *old)
{
	struct stat about;
	mode_t mask = umask(0);

	umask(mask);
	*old = !stat(target, &about);
	return *old ? about.st_mode & 07777 : 0666 & ~mask;
}

/* A pattern that was tried is used up. */
static void make_temporary(struct rb_output *output)
{
	do {
		free(output->temporary);
		output->temporary = beside(output->target, PATTERN);
		output->fd = output->temporary ? mkstemp(output->temporary) : -1;
	} while (output->temporary && rb_interrupted(output->fd));
	output->made = output->fd >= 0;
}

/* Where modes are not kept (on a stick, on a share) the system may refuse: then the file
 * is for its owner alone, which is no reason to go without it. */
static void set_mode(struct rb_output *output, mode_t mode)
{
	while (rb_interrupted(fchmod(output->fd, mode)))
		continue;
}

/* Make the file under its temporary name; a file that may not be written is not replaced
 * either, though its folder would allow it. */
static bool open_beside(struct rb_output *output)
{
	bool old;
	mode_t mode = wanted_mode(output->target, &old);

	if (old && access(output->target, W_OK))
		return fail(output);
	make_temporary(output);
	if (!output->made)
		return fail(output);
	set_mode(output, mode);
	return rb_scrap_set(output->temporary) || fail(output);
}

static bool open_new(struct rb_output *output)
{
	do
		output->fd = open(output->target, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC,
				  0666);
	while (rb_interrupted(output->fd));
	output->made = output->fd >= 0;
	return (output->made && rb_scrap_set(output->target)) || fail(output);
}

static bool open_direct(struct rb_output *output, const char *name)
{
	do
		output->fd = open(name, O_WRONLY | O_CLOEXEC | O_NOCTTY);
	while (rb_interrupted(output->fd));
	return output->fd >= 0 || fail(output);
}

struct rb_output rb_output_stream(int fd)
{
	return (struct rb_output){ .fd = fd };
}

bool rb_output_open(struct rb_output *output, const char *name, enum rb_output_way way)
{
	sigset_t before;
	bool done;

	*output = (struct rb_output){ .name = name, .fd = -1 };
	if (is_stream(name)) {
		output->fd = STDOUT_FILENO;
		return true;
	}
	if (way == RB_REPLACE && is_direct(name))
		return open_direct(output, name);
	output->target = way == RB_REPLACE ? rb_output_target(name) : beside("", name);
	if (!output->target)
		return fail(output);
	rb_scrap_hold(&before);
	done = way == RB_REPLACE ? open_beside(output) : open_new(output);
	if (!done)
		rb_output_abandon(output);
	rb_scrap_release(&before);
	return done;
}

/* -- writing --------------------------------------------------------------------- */

bool rb_output_write(void *self, const char *bytes, size_t length)
{
	struct rb_output *output = self;

	while (length && !output->reader_left && !output->error) {
		ssize_t written = write(output->fd, bytes, length);

		if (written == 0)
			errno = EIO; /* it would take nothing for ever */
		if (written < 0 && errno == EPIPE && !output->target)
			output->reader_left = true;
		else if (written <= 0 && !rb_held_up(output->fd, POLLOUT, written))
			fail(output);
		else if (written > 0) {
			bytes += written;
			length -= (size_t)written;
		}
	}
	return !output->error && !output->reader_left;
}

/* -- closing --------------------------------------------------------------------- */

/* A new name is safe only when its folder is on the disk too; where the system cannot do
 * that, the file itself is whole all the same. */
static void sync_folder(const char *path)
{
	char *folder = beside(path, ".");
	int fd = -1;

	while (folder &&
	       rb_interrupted(fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC)))
		continue;
	free(folder);
	if (fd < 0)
		return;
	while (rb_interrupted(fsync(fd)))
		continue;
	close(fd);
}

static void forget(struct rb_output *output)
{
	rb_scrap_set(NULL);
	free(output->temporary);
	free(output->target);
	output->temporary = output->target = NULL;
	output->fd = -1;
	output->made = false;
}

void rb_output_abandon(struct rb_output *output)
{
	if (output->fd >= 0)
		close(output->fd);
	if (output->made)
		unlink(output->temporary ? output->temporary : output->target);
	forget(output);
}

/* Some devices cannot be synchronised: that is no failure of theirs. */
static bool reaches_the_disk(int fd)
{
	int result;

	do
		result = fsync(fd);
	while (rb_interrupted(result));
	return !result || errno == EINVAL || errno == ENOTSUP;
}

/* A descriptor is gone though a signal broke its closing off: that is not done anew. */
static bool close_file(struct rb_output *output)
{
	int fd = output->fd;

	output->fd = -1;
	if (output->target && !reaches_the_disk(fd)) {
		fail(output);
		close(fd);
		return false;
	}
	return !close(fd) || errno == EINTR || fail(output);
}

void rb_output_guard(struct rb_output *output, const struct stat *old)
{
	output->guarded = true;
	output->old = old;
}

/* Has nobody else written to the old file, or made one, since it was read? */
static bool may_take_its_place(const struct rb_output *output)
{
	const struct stat *old = output->old;
	struct stat now;
	bool gone;

	if (!output->guarded)
		return true;
	gone = stat(output->target, &now);
	if (gone && errno != ENOENT)
		return false;
	if (gone ? !old : old && rb_input_is_as_before(&now, old))
		return true;
	errno = RB_CHANGED_MEANWHILE;
	return false;
}

static bool put_in_place(struct rb_output *output)
{
	int result;

	if (!output->temporary)
		return true;
	if (!may_take_its_place(output))
		return fail(output);
	do
		result = rename(output->temporary, output->target);
	while (rb_interrupted(result));
	return !result || fail(output);
}

bool rb_output_close(struct rb_output *output)
{
	sigset_t before;
	bool done;

	if (output->error || (output->fd >= 0 && !close_file(output))) {
		rb_output_abandon(output);
		return false;
	}
	rb_scrap_hold(&before);
	done = put_in_place(output);
	if (done && output->target)
		sync_folder(output->target);
	if (done)
		forget(output);
	else
		rb_output_abandon(output);
	rb_scrap_release(&before);
	return done;
}
