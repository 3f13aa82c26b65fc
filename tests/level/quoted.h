/* SPDX-License-Identifier: MIT */
/* quoted.h - a cell as CSV has it, in quotes, with its own doubled. */
#ifndef TESTS_LEVEL_QUOTED_H
#define TESTS_LEVEL_QUOTED_H

#include <stdio.h>

static inline const char *quoted(char out[static 40], const char *cell)
{
	size_t used = 0;

	out[used++] = '"';
	for (; *cell; cell++) {
		if (*cell == '"')
			out[used++] = '"';
		out[used++] = *cell;
	}
	snprintf(out + used, 40 - used, "\"");
	return out;
}

#endif
