/* SPDX-License-Identifier: MIT */
/*
 * arena.h - one owner for all memory.
 *
 * Everything that a book, its reduction and its report need is taken from an arena and
 * given back with it, all at once; nothing else in the library allocates or frees.
 */
#ifndef RODBOOK_ARENA_H
#define RODBOOK_ARENA_H

#include <stddef.h>
#include <stdint.h>

/* Where an arena takes its memory from: both as in <stdlib.h>.  The CSV reader's buffer
 * is taken from there too. */
struct rb_allocator {
	void *(*resize)(void *old, size_t size);
	void (*release)(void *old);
};

struct rb_arena;

/* A new, empty arena, or NULL if there is no memory.  allocator is copied; NULL: realloc
 * and free. */
struct rb_arena *rb_arena_new(const struct rb_allocator *allocator);

/* Give back the arena and all that was taken from it; NULL is fine. */
void rb_arena_free(struct rb_arena *arena);

/* The allocator that the arena was made with. */
const struct rb_allocator *rb_arena_allocator(const struct rb_arena *arena);

/*
 * Take count objects of size bytes, aligned for any type, NOT cleared; NULL if there is
 * no memory (or count * size is more than there can be).  A large block is one of its
 * own, so what is never written to costs no real memory.
 */
void *rb_arena_take(struct rb_arena *arena, size_t count, size_t size);

/* The same, cleared to zero bytes. */
void *rb_arena_take_clear(struct rb_arena *arena, size_t count, size_t size);

/* A copy of length bytes with a NUL behind them, or NULL. */
char *rb_arena_text(struct rb_arena *arena, const char *text, size_t length);

#endif
