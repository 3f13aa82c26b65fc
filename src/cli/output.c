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

/* The file that a path stands for: renaming over a symbolic link would replace the link.
 * Owned by the caller; NULL with errno at a failure. */
static char *follow(const char *path)
{
	char *now = beside("", path);
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

/* Make the file under its temporary name; a file that may not be written is not replaced
 * either, though its folder would allow it. */
static bool open_beside(struct rb_output *output)
{
	bool old;
	mode_t mode = wanted_mode(output->target, &old);

	if (old && access(output->target, W_OK))
		return fail(output);
	output->temporary = beside(output->target, PATTERN);
	output->fd = output->temporary ? mkstemp(output->temporary) : -1;
	output->made = output->fd >= 0;
	if (!output->made || fchmod(output->fd, mode))
		return fail(output);
	return rb_scrap_set(output->temporary) || fail(output);
}

static bool open_new(struct rb_output *output)
{
	output->fd = open(output->target, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
	output->made = output->fd >= 0;
	return (output->made && rb_scrap_set(output->target)) || fail(output);
}

static bool open_direct(struct rb_output *output, const char *name)
{
	do
		output->fd = open(name, O_WRONLY | O_CLOEXEC | O_NOCTTY);
	while (output->fd < 0 && errno == EINTR);
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
	output->target = way == RB_REPLACE ? follow(name) : beside("", name);
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

		if (written < 0 && errno == EPIPE)
			output->reader_left = true;
		else if (written < 0 && errno != EINTR)
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
	int fd = folder ? open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC) : -1;

	free(folder);
	if (fd < 0)
		return;
	fsync(fd);
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

/* Pipes and some devices cannot be synchronised: that is no failure of theirs. */
static bool close_file(struct rb_output *output)
{
	int fd = output->fd;

	output->fd = -1;
	if (output->target && fsync(fd) && errno != EINVAL && errno != ENOTSUP) {
		fail(output);
		close(fd);
		return false;
	}
	return !close(fd) || fail(output);
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
	done = !output->temporary || !rename(output->temporary, output->target) ||
	       fail(output);
	if (done && output->target)
		sync_folder(output->target);
	if (done)
		forget(output);
	else
		rb_output_abandon(output);
	rb_scrap_release(&before);
	return done;
}
