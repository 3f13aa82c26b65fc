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

static void *memory_resize(void *old, size_t size)
{
	return memory_left-- > 0 ? realloc(old, size) : NULL;
}

/*
 * Call run() with ever more memory until it says that it is done; false if it never is.
 * *failures: how often it was not.
 */
static bool memory_fails(bool (*run)(struct rb_arena *arena, const void *with),
			 const void *with, int *failures)
{
	const struct rb_allocator allocator = { memory_resize, free };

	for (*failures = 0; *failures < 200000; ++*failures) {
		struct rb_arena *arena;
		bool done;

		memory_left = *failures;
		arena = rb_arena_new(&allocator);
		done = arena && run(arena, with);
		rb_arena_free(arena);
		assert_true(!done ||
			    memory_left >= 0); /* done without what it asked for */
		if (done)
			return true;
	}
	return false;
}

#endif
