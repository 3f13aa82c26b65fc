/* SPDX-License-Identifier: MIT */
/*
 * several.h - points that more than one book knows.
 *
 * Benchmarks, and points that no levels were carried over, side by side with their
 * differences.  Known elevations are compared exactly; two that were written in different
 * units agree within half a place of the coarser one, since one of them was converted.
 * Only the latest version of a book counts.
 */
#ifndef RB_RECORD_SEVERAL_H
#define RB_RECORD_SEVERAL_H

#include "record/ledger.h"

/* A point as one book knows it. */
struct rb_sighting {
	const char *point;   /* as typed there */
	rb_length elevation; /* known, or as levelled: adjusted where it is */
	bool known;
	enum rb_unit written; /* of a known elevation */
	enum rb_rod_on rod_on;
	uint32_t book;         /* of the ledger */
	struct rb_place place; /* in the book, where it is a new one */
};

/* Two books that know a point: the later one is new. */
struct rb_pair {
	struct rb_sighting earlier, later;
	bool other_datum; /* the books name different ones */
	bool agrees;      /* of two known elevations: they are the same */
};

struct rb_several {
	struct rb_pair *pair; /* by point, then in the order of the books */
	uint32_t pairs;
	uint32_t benchmarks; /* pairs of two known elevations */
	uint32_t differing;  /* those of them that do not agree */
};

/*
 * Find the points that more than one book knows, at least one of them a book that was
 * added now.  Each benchmark that differs is a finding of the later book.  NULL if there
 * is no memory.
 */
struct rb_several *rb_several(const struct rb_ledger *ledger);

#endif
