/* SPDX-License-Identifier: MIT */
/*
 * interrupted.h - system calls that are made anew.
 *
 * A call that had done nothing when a signal came says so with EINTR.  One that would
 * have to wait says EAGAIN, where another program that has the same pipe or terminal made
 * it so: nothing is wrong with it, and it is waited for.
 */
#ifndef RB_CLI_INTERRUPTED_H
#define RB_CLI_INTERRUPTED_H

#include <errno.h>
#include <poll.h>
#include <stdbool.h>
#include <sys/types.h>

/* Is a call with this result to be made anew? */
static inline bool rb_interrupted(ssize_t result)
{
	return result < 0 && errno == EINTR;
}

/* The same for reading (POLLIN) and writing (POLLOUT), once it can go on. */
static inline bool rb_held_up(int fd, short events, ssize_t result)
{
	struct pollfd one = { fd, events, 0 };

	if (result >= 0 || (errno != EAGAIN && errno != EWOULDBLOCK))
		return rb_interrupted(result);
	return poll(&one, 1, -1) >= 0 || errno == EINTR;
}

#endif
