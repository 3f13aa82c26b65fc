/* SPDX-License-Identifier: MIT */
/*
 * fault.h - which call of the program is to fail, and how.
 *
 * The program is linked into the test with its calls for memory and to the system led
 * through interpose.c (the linker's --wrap).  Each kind of call is counted from 1; the
 * plan names the calls that do not go as they should.  It lies in memory that the test
 * shares with the process that runs the program, so that what came of it can be read
 * afterwards.
 */
#ifndef RB_TESTS_FAULT_H
#define RB_TESTS_FAULT_H

#include <stdbool.h>
#include <stdint.h>

enum fault_call {
	FAULT_MEMORY, /* malloc, realloc, strdup, strndup, getline */
	FAULT_ARENA,  /* a block taken from an arena */
	FAULT_OPEN,
	FAULT_READ,
	FAULT_WRITE, /* to anything but standard error */
	FAULT_FSYNC,
	FAULT_CLOSE,
	FAULT_RENAME,
	FAULT_FSTAT,
	FAULT_STAT,
	FAULT_MKSTEMP,
	FAULT_FCHMOD,
	FAULT_UNLINK,
	FAULT_FLOCK,
	FAULT_READLINK,
	FAULT_ACCESS,
	FAULT_CALLS
};

enum fault_way {
	FAULT_NONE,
	FAULT_ERROR,    /* it fails with errno `number` */
	FAULT_SHORT,    /* one byte is read or written, no more */
	FAULT_NOTHING,  /* write() takes nothing and says so */
	FAULT_SIGNAL,   /* the signal `number` comes just before it */
	FAULT_MEANWHILE /* meanwhile() is done just before it */
};

struct fault_plan {
	enum fault_call call;
	unsigned long first, last; /* the calls of this kind that are struck */
	enum fault_way way;
	int number;
	void (*meanwhile)(void);
	uint32_t chunk; /* most bytes that read() gives at a time; 0: as many as there are
			 */
	int64_t room; /* bytes that are taken before write() fails with `full`; -1: all */
	int full;

	/* What came of it. */
	bool armed; /* false: all calls go as they should and none is counted */
	unsigned long count[FAULT_CALLS];
	unsigned long struck;
	long live; /* blocks taken and not given back */
};

extern struct fault_plan *fault;

/* "open", "arena": for the one who reads what went wrong. */
const char *fault_call_name(enum fault_call call);

#endif
