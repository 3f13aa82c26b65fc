/* SPDX-License-Identifier: MIT */
/* The nearest of several words. */
#include "cli/nearest.h"

#include <limits.h>
#include <stddef.h>
#include <string.h>

#include "notes/sheet.h"

struct rb_nearest rb_nearest_to(const char *word)
{
	return (struct rb_nearest){ word, NULL, INT_MAX };
}

void rb_nearest_try(struct rb_nearest *nearest, const char *candidate)
{
	size_t typed = strlen(nearest->word), length = strlen(candidate);
	size_t longer = typed > length ? typed : length;
	int most = longer < 6 ? 1 : (int)(longer / 3);
	int apart = rb_letters_apart(nearest->word, typed, candidate, length, most);

	if (apart > most || apart >= nearest->distance)
		return;
	nearest->best = candidate;
	nearest->distance = apart;
}
