/* SPDX-License-Identifier: MIT */
/*
 * interrupted.h - system calls that a signal broke off.
 *
 * A call that had done nothing when a signal came says so with EINTR, and is made anew.
 */
#ifndef RB_CLI_INTERRUPTED_H
#define RB_CLI_INTERRUPTED_H

#include <errno.h>
#include <stdbool.h>
#include <sys/types.h>

/* Is a call with this result to be made anew? */
static inline bool rb_interrupted(ssize_t result)
{
	return result < 0 && errno == EINTR;
}

#endif
