/* SPDX-License-Identifier: MIT */
/* seek.h - the place of a number in a list that is sorted by it. */
#ifndef RB_NOTES_SEEK_H
#define RB_NOTES_SEEK_H

#include <stddef.h>
#include <stdint.h>

/*
 * The first item of a list whose number is not below the key; `count` where all are.
 *
 *   list    sorted by that number; may be NULL where count is 0
 *   size    of an item
 *   offset  of the number in it, a uint32_t
 */
uint32_t rb_seek(const void *list, uint32_t count, size_t size, size_t offset,
		 uint32_t key);

#endif
