/* SPDX-License-Identifier: MIT */
/* A table of slots, tried one after the other. */
#include "record/index.h"

#include <string.h>

#define SLOTS_AT_FIRST 64
#define HASH_START     UINT64_C(0xCBF29CE484222325) /* FNV-1a */
#define HASH_PRIME     UINT64_C(0x100000001B3)

/* The slot that holds the text, or the free one where it would go. */
static struct rb_index_slot *slot_of(const struct rb_index *index, const char *text)
{
	uint64_t hash = HASH_START;
	uint32_t at;

	for (const char *c = text; *c; c++)
		hash = (hash ^ (unsigned char)*c) * HASH_PRIME;
	at = (uint32_t)(hash ^ hash >> 32) & (index->slots - 1);
	while (index->slot[at].text && strcmp(index->slot[at].text, text) != 0)
		at = (at + 1) & (index->slots - 1);
	return &index->slot[at];
}

uint32_t rb_index_find(const struct rb_index *index, const char *text)
{
	const struct rb_index_slot *slot = index->slots ? slot_of(index, text) : NULL;

	return slot && slot->text ? slot->number : RB_NOT_IN_INDEX;
}

/* Never more than half full. */
static bool grow(struct rb_index *index)
{
	struct rb_index more = *index;

	more.slots = index->slots ? 2 * index->slots : SLOTS_AT_FIRST;
	more.slot = rb_arena_take_clear(index->arena, more.slots, sizeof *more.slot);
	if (!more.slot)
		return false;
	for (uint32_t i = 0; i < index->slots; i++)
		if (index->slot[i].text)
			*slot_of(&more, index->slot[i].text) = index->slot[i];
	*index = more;
	return true;
}

bool rb_index_set(struct rb_index *index, const char *text, uint32_t number)
{
	struct rb_index_slot *slot;

	if (2 * index->used >= index->slots && !grow(index))
		return false;
	slot = slot_of(index, text);
	index->used += !slot->text;
	*slot = (struct rb_index_slot){ text, number };
	return true;
}
