/* SPDX-License-Identifier: MIT */
/*
 * jurisdiction.h - at which depth of trench a place's own rule asks for something.
 *
 * A table of the common ones, each with its citation, or a file of the user's.  Where
 * none is set, the least depth of the table stands in, and says so.  Nothing here calls a
 * trench safe: below every limit the place's rule and the competent person on site
 * decide.
 */
#ifndef RB_DRAIN_JURISDICTION_H
#define RB_DRAIN_JURISDICTION_H

#include "rodbook/finding.h"

struct rb_limit {
	rb_length depth;  /* from this depth on */
	const char *rule; /* the citation */
	const char *asks; /* what it asks for, in words that follow "asks for" */
};

struct rb_jurisdiction {
	const char *name;
	const char *locate; /* the citation for locating buried services; "" for none */
	const struct rb_limit *limit; /* by depth */
	size_t limits;
};

/* The jurisdictions of the table; *count is set. */
const struct rb_jurisdiction *rb_jurisdictions(size_t *count);

/* The one of that name, forgiving case and doubled blanks; NULL: it is none of the table.
 */
const struct rb_jurisdiction *rb_jurisdiction_find(const char *name);

/* What stands in where none is set. */
const struct rb_jurisdiction *rb_jurisdiction_unset(void);

/*
 * Read a jurisdiction from the bytes of a file: keys `jurisdiction` and `locate`, columns
 * `depth`, `rule` and `asks for`.  NULL after an error.
 */
const struct rb_jurisdiction *rb_jurisdiction_read(struct rb_arena *arena,
						   struct rb_findings *findings,
						   const char *bytes, size_t length);

#endif
