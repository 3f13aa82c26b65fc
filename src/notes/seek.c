/* SPDX-License-Identifier: MIT */
/* seek.c - by halves. */
#include "notes/seek.h"

#include <string.h>

uint32_t rb_seek(const void *list, uint32_t count, size_t size, size_t offset,
		 uint32_t key)
{
	const char *bytes = list;
	uint32_t low = 0, high = count;

	while (low < high) {
		uint32_t middle = low + (high - low) / 2, number;

		memcpy(&number, bytes + middle * size + offset, sizeof number);
		if (number < key)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}
