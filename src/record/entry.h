/* SPDX-License-Identifier: MIT */
/*
 * entry.h - a line of the site record: a place, its elevation, and what that is worth.
 *
 * An entry says what its book says and no more: raw and adjusted elevation side by side,
 * and whether the section they come from closed.
 */
#ifndef RB_RECORD_ENTRY_H
#define RB_RECORD_ENTRY_H

#include "report/reduction.h"

struct rb_entry {
	const char *point;       /* as typed; "" where it has no name */
	const char *section;     /* "BM-1 to BM-2"; "" where it hangs on none */
	const char *remarks;     /* "" where there are none */
	rb_length elevation;     /* raw */
	rb_length adjusted;      /* none where its section was not adjusted */
	rb_length known;         /* the known elevation of the point, or none */
	rb_length below;         /* at the end of a measure down, or none */
	enum rb_unit written;    /* the unit in which `known` was written */
	enum rb_verdict verdict; /* of the section; RB_OPEN without one */
	enum rb_kind kind;
	enum rb_rod_on rod_on;
	uint32_t book; /* of the ledger */
	uint32_t line; /* of the book; of one that was recorded before, of the record */
};

/*
 * Write the entries of a reduced book, one for each place of the rod, in the order
 * observed.
 *
 *   entry  room for as many as the book has shots
 *   book   the number of the book in its ledger
 *
 * Texts are in the arena or in the book.  False if there is no memory.
 */
bool rb_entries_of(struct rb_arena *arena, const struct rb_reduction *reduction,
		   uint32_t book, struct rb_entry *entry);

/* The elevation that is used: the adjusted one where there is one. */
static inline rb_length rb_entry_best(const struct rb_entry *entry)
{
	return rb_length_given(entry->adjusted) ? entry->adjusted : entry->elevation;
}

/* Was the place levelled, so that it is closed or not?  Off the line, on a spur, it has
 * no section and nothing closes it; a benchmark alone was not levelled. */
static inline bool rb_entry_is_levelled(const struct rb_entry *entry)
{
	return *entry->section || entry->kind != RB_BENCHMARK;
}

/* The unit in which a known elevation of a book was written: one that feet or inches do
 * not hold exactly was written in metres. */
enum rb_unit rb_known_unit(const struct rb_book *book,
			   const struct rb_benchmark *benchmark);

#endif
