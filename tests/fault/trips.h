/* SPDX-License-Identifier: MIT */
/* trips.h - every way in which something is read and written, once. */
#ifndef RB_TESTS_FAULT_TRIPS_H
#define RB_TESTS_FAULT_TRIPS_H

#include "scenes.h"

struct trip {
	struct scene scene;
	const char *writes; /* the file or stream that is named where that fails */
	const char *also;   /* another file that is written before; NULL: none */
};

extern const struct trip trips[];
extern const size_t trip_count;

#endif
