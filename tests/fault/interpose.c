/* SPDX-License-Identifier: MIT */
/* Stand between the program and the system, and let it fail where the plan says. */
#include "fault.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "rodbook/arena.h"

struct fault_plan *fault;

const char *fault_call_name(enum fault_call call)
{
	static const char *const names[FAULT_CALLS] = {
		"memory", "arena",  "open",     "read",   "write",   "fsync",
		"close",  "rename", "fstat",    "stat",   "mkstemp", "fchmod",
		"unlink", "flock",  "readlink", "access",
	};

	return names[call];
}

/* What the program calls, and what it would have called. */
#define WRAPPED(type, name, ...)                                                         \
	type __real_##name(__VA_ARGS__);                                                 \
	type __wrap_##name(__VA_ARGS__);                                                 \
	type __wrap_##name(__VA_ARGS__)

static void do_meanwhile(void)
{
	fault->armed = false;
	fault->meanwhile();
	fault->armed = true;
}

/* Count a call; how it is to go.  An error's number is in errno. */
static enum fault_way way_of(enum fault_call call)
{
	unsigned long n;

	if (!fault || !fault->armed)
		return FAULT_NONE;
	n = ++fault->count[call];
	if (fault->way == FAULT_NONE || call != fault->call || n < fault->first ||
	    n > fault->last)
		return FAULT_NONE;
	fault->struck++;
	if (fault->way == FAULT_SIGNAL)
		raise(fault->number);
	if (fault->way == FAULT_MEANWHILE)
		do_meanwhile();
	errno = fault->number;
	return fault->way;
}

static bool fails(enum fault_call call)
{
	return way_of(call) == FAULT_ERROR;
}

/* -- memory ---------------------------------------------------------------------- */

static bool no_memory(enum fault_call call)
{
	if (!fails(call))
		return false;
	errno = ENOMEM;
	return true;
}

static void *taken(void *block)
{
	if (block && fault && fault->armed)
		fault->live++;
	return block;
}

WRAPPED(void *, malloc, size_t size)
{
	return no_memory(FAULT_MEMORY) ? NULL : taken(__real_malloc(size));
}

WRAPPED(void *, calloc, size_t count, size_t size)
{
	return no_memory(FAULT_MEMORY) ? NULL : taken(__real_calloc(count, size));
}

WRAPPED(void *, realloc, void *block, size_t size)
{
	if (no_memory(FAULT_MEMORY))
		return NULL;
	return block ? __real_realloc(block, size) : taken(__real_realloc(NULL, size));
}

WRAPPED(void, free, void *block)
{
	if (block && fault && fault->armed)
		fault->live--;
	__real_free(block);
}

WRAPPED(char *, strdup, const char *text)
{
	return no_memory(FAULT_MEMORY) ? NULL : taken(__real_strdup(text));
}

WRAPPED(char *, strndup, const char *text, size_t most)
{
	return no_memory(FAULT_MEMORY) ? NULL : taken(__real_strndup(text, most));
}

/* Without memory for a line it leaves the stream's marks of end and error alone. */
WRAPPED(ssize_t, getline, char **line, size_t *room, FILE *stream)
{
	char *before = *line;
	ssize_t length = -1;

	if (!no_memory(FAULT_MEMORY))
		length = __real_getline(line, room, stream);
	if (!before)
		taken(*line);
	return length;
}

WRAPPED(void *, rb_arena_take, struct rb_arena *arena, size_t count, size_t size)
{
	return no_memory(FAULT_ARENA) ? NULL : __real_rb_arena_take(arena, count, size);
}

WRAPPED(void *, rb_arena_take_clear, struct rb_arena *arena, size_t count, size_t size)
{
	return no_memory(FAULT_ARENA) ? NULL
				      : __real_rb_arena_take_clear(arena, count, size);
}

WRAPPED(char *, rb_arena_text, struct rb_arena *arena, const char *text, size_t length)
{
	return no_memory(FAULT_ARENA) ? NULL : __real_rb_arena_text(arena, text, length);
}

/* -- files ----------------------------------------------------------------------- */

WRAPPED(int, open, const char *path, int flags, ...)
{
	va_list rest;
	mode_t mode;

	va_start(rest, flags);
	mode = flags & O_CREAT ? va_arg(rest, mode_t) : 0;
	va_end(rest);
	return fails(FAULT_OPEN) ? -1 : __real_open(path, flags, mode);
}

/* What open() becomes where the compiler guards it. */
WRAPPED(int, __open_2, const char *path, int flags)
{
	return fails(FAULT_OPEN) ? -1 : __real_open(path, flags);
}

WRAPPED(ssize_t, read, int fd, void *bytes, size_t length)
{
	enum fault_way way = way_of(FAULT_READ);

	if (way == FAULT_ERROR)
		return -1;
	if (way == FAULT_SHORT && length)
		length = 1;
	if (fault && fault->armed && fault->chunk && length > fault->chunk)
		length = fault->chunk;
	return __real_read(fd, bytes, length);
}

/* As much as there is room for; 0 with an error where there is none left. */
static size_t fitting(size_t length)
{
	if (!fault || !fault->armed || fault->room < 0)
		return length;
	if (!fault->room) {
		fault->struck++;
		errno = fault->full;
		return 0;
	}
	if (length > (size_t)fault->room)
		length = (size_t)fault->room;
	fault->room -= (int64_t)length;
	return length;
}

WRAPPED(ssize_t, write, int fd, const void *bytes, size_t length)
{
	enum fault_way way;
	size_t fits;

	if (fd == STDERR_FILENO)
		return __real_write(fd, bytes, length);
	way = way_of(FAULT_WRITE);
	if (way == FAULT_ERROR)
		return -1;
	if (way == FAULT_NOTHING)
		return 0;
	fits = fitting(length);
	if (length && !fits)
		return -1;
	return __real_write(fd, bytes, way == FAULT_SHORT && fits ? 1 : fits);
}

/* The disk itself is not what is tested, and it is slow. */
WRAPPED(int, fsync, int fd)
{
	if (fails(FAULT_FSYNC))
		return -1;
	return fault && fault->armed ? 0 : __real_fsync(fd);
}

/* The descriptor is gone even where close() says that something was amiss. */
WRAPPED(int, close, int fd)
{
	bool failing = fails(FAULT_CLOSE);
	int error = errno, result = __real_close(fd);

	if (!failing)
		return result;
	errno = error;
	return -1;
}

WRAPPED(int, rename, const char *from, const char *to)
{
	return fails(FAULT_RENAME) ? -1 : __real_rename(from, to);
}

WRAPPED(int, fstat, int fd, struct stat *about)
{
	return fails(FAULT_FSTAT) ? -1 : __real_fstat(fd, about);
}

WRAPPED(int, stat, const char *path, struct stat *about)
{
	return fails(FAULT_STAT) ? -1 : __real_stat(path, about);
}

WRAPPED(int, mkstemp, char *pattern)
{
	return fails(FAULT_MKSTEMP) ? -1 : __real_mkstemp(pattern);
}

WRAPPED(int, fchmod, int fd, mode_t mode)
{
	return fails(FAULT_FCHMOD) ? -1 : __real_fchmod(fd, mode);
}

WRAPPED(int, unlink, const char *path)
{
	return fails(FAULT_UNLINK) ? -1 : __real_unlink(path);
}

WRAPPED(int, flock, int fd, int operation)
{
	return fails(FAULT_FLOCK) ? -1 : __real_flock(fd, operation);
}

WRAPPED(ssize_t, readlink, const char *path, char *bytes, size_t length)
{
	return fails(FAULT_READLINK) ? -1 : __real_readlink(path, bytes, length);
}

WRAPPED(int, access, const char *path, int mode)
{
	return fails(FAULT_ACCESS) ? -1 : __real_access(path, mode);
}
