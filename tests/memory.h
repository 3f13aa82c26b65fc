/* SPDX-License-Identifier: MIT */
/*
 * memory.h - for tests that run out of memory everywhere: whatever is taken from an arena
 * is asked of the allocator on its own, and the n-th asking fails, for n = 0, 1, 2 ...
 *
 * The test then has an arena of its own in place of the library's.
 */
#ifndef TESTS_MEMORY_H
#define TESTS_MEMORY_H

#define CHUNK 4 /* no two takings share a block */
#include "notes/arena.c"

#include <stdbool.h>

static int memory_left;
static size_t memory_refused;  /* bytes of what was refused last */
static bool memory_comes_back; /* only one asking fails, with any for less behind it */

static void *memory_resize(void *old, size_t size)
{
	int left = memory_left--;

	if (left > 0 || (left < 0 && memory_comes_back && size >= memory_refused)) {
		memory_refused = 0;
		return realloc(old, size);
	}
	memory_refused = size;
	return NULL;
}

static bool memory_is_enough(bool (*run)(struct rb_arena *arena, const void *with),
			     const void *with, int takings, bool comes_back)
{
	const struct rb_allocator allocator = { memory_resize, free };
	struct rb_arena *arena;
	bool done;

	memory_left = takings;
	memory_comes_back = comes_back;
	arena = rb_arena_new(&allocator);
	done = arena && run(arena, with);
	rb_arena_free(arena);
	assert_true(!done || memory_left >= 0); /* nothing is done by half */
	return done;
}

/*
 * Call run() with ever more memory until it says that it is done; false if it never is.
 * *failures: how often it was not.
 */
static bool memory_fails(bool (*run)(struct rb_arena *arena, const void *with),
			 const void *with, int *failures)
{
	for (*failures = 0; *failures < 200000; ++*failures) {
		bool done = memory_is_enough(run, with, *failures, false);

		if (memory_is_enough(run, with, *failures, true) != done)
			return false;
		if (done)
			return true;
	}
	return false;
}

#endif
