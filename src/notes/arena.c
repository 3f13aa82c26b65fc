/* SPDX-License-Identifier: MIT */
/* The only place where memory is taken and given back. */
#include "rodbook/arena.h"

#include <stdlib.h>
#include <string.h>

#ifndef CHUNK /* the tests make it small, so that every taking asks the allocator */
#define CHUNK 65536
#endif
#define LARGE (CHUNK / 4) /* from here on a block of its own */

struct block {
	struct block *next;
	max_align_t bytes[];
};

struct rb_arena {
	struct rb_allocator allocator;
	struct block *block; /* all of them, the last taken first */
	char *free;          /* what is left of the current chunk */
	size_t left;
};

struct rb_arena *rb_arena_new(const struct rb_allocator *allocator)
{
	static const struct rb_allocator plain = { realloc, free };
	const struct rb_allocator *from = allocator ? allocator : &plain;
	struct rb_arena *arena = from->resize(NULL, sizeof *arena);

	if (!arena)
		return NULL;
	*arena = (struct rb_arena){ .allocator = *from };
	return arena;
}

void rb_arena_free(struct rb_arena *arena)
{
	struct rb_allocator allocator;

	if (!arena)
		return;
	allocator = arena->allocator;
	for (struct block *next, *b = arena->block; b; b = next) {
		next = b->next;
		allocator.release(b);
	}
	allocator.release(arena);
}

const struct rb_allocator *rb_arena_allocator(const struct rb_arena *arena)
{
	return &arena->allocator;
}

static char *new_block(struct rb_arena *arena, size_t size)
{
	struct block *b = arena->allocator.resize(NULL, sizeof *b + size);

	if (!b)
		return NULL;
	b->next = arena->block;
	arena->block = b;
	return (char *)b->bytes;
}

void *rb_arena_take(struct rb_arena *arena, size_t count, size_t size)
{
	const size_t unit = sizeof(max_align_t);
	char *taken;

	if (size && count > (SIZE_MAX / 2) / size)
		return NULL;
	size = (count * size + unit - 1) / unit * unit;
	if (size >= LARGE)
		return new_block(arena, size);
	if (size > arena->left) {
		char *chunk = new_block(arena, CHUNK);

		if (!chunk)
			return NULL;
		arena->free = chunk;
		arena->left = CHUNK;
	}
	taken = arena->free;
	arena->free += size;
	arena->left -= size;
	return taken;
}

void *rb_arena_take_clear(struct rb_arena *arena, size_t count, size_t size)
{
	void *taken = rb_arena_take(arena, count, size);

	if (taken)
		memset(taken, 0, count * size);
	return taken;
}

char *rb_arena_text(struct rb_arena *arena, const char *text, size_t length)
{
	char *copy = rb_arena_take(arena, length + 1, 1);

	if (!copy)
		return NULL;
	memcpy(copy, text, length);
	copy[length] = '\0';
	return copy;
}
