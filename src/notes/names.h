/* SPDX-License-Identifier: MIT */
/*
 * names.h - which cells name the same point.
 *
 * Two names are one when they are equal after dropping case, outer and doubled blanks and
 * kinds of dash.  Each distinct name has a number, from 0 in the order of appearance; its
 * text is that of the first cell that had it.
 */
#ifndef RB_NOTES_NAMES_H
#define RB_NOTES_NAMES_H

#include "rodbook/arena.h"
#include "rodbook/book.h"

/* Two names that are nearly one; the later one first. */
struct rb_near {
	uint32_t name, other;
};

#define RB_NOT_PLAIN UINT32_MAX

/* More pairs of near names than this are not told. */
#define RB_NEAR_NAMES 64

struct rb_names {
	struct rb_arena *arena; /* for the table: may go when the reading is done */
	const char *text;       /* of the book: name[i] is an offset into it */
	uint32_t *name;         /* room for every row, by the caller */
	uint32_t count;
	struct rb_slot {
		uint32_t hash, number; /* the number + 1; 0: free */
	} * slot;
	uint32_t slots;    /* a power of two */
	uint32_t at, hash; /* where the name that was just not found goes */
	size_t folds;      /* length of the folded name */
	uint32_t letters;  /* in it, if it is plain ASCII; else RB_NOT_PLAIN */
	uint32_t alike;    /* a name with its letters and digits, or RB_NO_POINT */
	struct rb_near near[RB_NEAR_NAMES];
	uint32_t nears;
	bool spaced;              /* some name has words */
	unsigned char plain[256]; /* what plain characters fold to */
	char *folded;             /* the name looked for */
	char *other;              /* one that it is compared with */
	size_t room;              /* of both: more than the longest name so far */
};

/* Look for a name: the table is fetched from memory meanwhile, so that in a long book it
 * is there when rb_names_sought() asks.  False: no memory. */
bool rb_names_seek(struct rb_names *names, const char *text, size_t length);

/* The number of the name last sought, or RB_NO_POINT if it is not there. */
uint32_t rb_names_sought(struct rb_names *names);

/* Both at once. */
bool rb_names_find(struct rb_names *names, const char *text, size_t length,
		   uint32_t *number);

/* Enter the name that was just not found, standing at `offset` of the text, and give its
 * number. */
void rb_names_enter(struct rb_names *names, uint32_t offset, uint32_t *number);

/*
 * Add to `near` the names that are a known name with words behind it; those that have the
 * same letters and digits were found on entering.  False: no memory.
 */
bool rb_names_compare(struct rb_names *names, const bool *is_known);

/* Fold a name into `out` (at least length + 1 bytes); returns the folded length. */
size_t rb_name_fold(char *out, const char *text, size_t length);

/* Have two names the same letters and digits? */
bool rb_names_nearly_same(const char *name, const char *other);

/* Is it the name of ground or of a surface (ground, cl, spot, a name in brackets)?  Such
 * are not compared when they come again. */
bool rb_name_is_ground(const char *text);

#endif
