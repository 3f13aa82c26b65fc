/* SPDX-License-Identifier: MIT */
/* Run, and see that it failed as it should. */
#include "places.h"

#include <stdlib.h>
#include <string.h>

struct bytes before;
struct outcome got;

void go(const struct scene *scene)
{
	prepare(scene, &before);
	run(scene, NULL, &got);
}

void assert_fails(const char *name, int error)
{
	if (!ended(&got, 3) || !is_one_message(&got.messages, name, strerror(error)) ||
	    got.output.length || !are_equal(&got.folder, &before))
		fail_msg("status %x, output %zu bytes\n%s%s", got.status,
			 got.output.length, got.messages.byte, got.folder.byte);
}

int forget(void **state)
{
	(void)state;
	free_outcome(&got);
	free(before.byte);
	before = (struct bytes){ NULL, 0, 0 };
	return 0;
}
