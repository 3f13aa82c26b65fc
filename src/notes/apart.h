/* SPDX-License-Identifier: MIT */
/* apart.h - a unit that stands in a cell of its own, beside the value of a key. */
#ifndef RB_NOTES_APART_H
#define RB_NOTES_APART_H

#include "notes/sheet.h"

struct rb_apart {
	uint32_t cell;  /* the first that holds such a unit */
	char whole[64]; /* the value with what belongs to it, as one text; "" where that
			 * is none: the value has a unit of its own */
};

/*
 * Is the first thing that stands behind the value of a key, from cell `next` of its row,
 * the unit that the value lacks, or a second one: `5` and `mm`, `0.1 ft` and `sqrt(mi)`,
 * `1/4` and `in/ft`?  Only keys whose values are lengths, slopes or units are looked at,
 * and words are none.  True, and *out is set.
 */
bool rb_apart_find(const struct rb_form *form, const struct rb_key *key,
		   struct rb_cell value, const struct rb_record *record, uint32_t next,
		   struct rb_apart *out);

#endif
