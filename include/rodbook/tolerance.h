/* SPDX-License-Identifier: MIT */
/*
 * tolerance.h - what misclosure is allowed, compared exactly.
 *
 * A tolerance is a length, or a length times the square root of the section's length (in
 * miles, kilometres, or the like) or of its number of setups.  Roots are never taken to
 * judge: the squares are compared, in whole numbers.
 */
#ifndef RODBOOK_TOLERANCE_H
#define RODBOOK_TOLERANCE_H

#include "rodbook/length.h"

enum rb_tolerance_root {
	RB_FLAT,
	RB_PER_ROOT_MILE,
	RB_PER_ROOT_KILOMETRE,
	RB_PER_ROOT_SETUP
};

struct rb_tolerance {
	bool given;
	rb_length coefficient; /* >= 0 */
	enum rb_tolerance_root root;
};

/*
 * Read a tolerance: "0.02 ft", "1/4 in", "5 mm", "0.05 ft sqrt(mi)", "12 mm sqrt(km)",
 * "0.01 ft sqrt(setups)", "12mm√km", "12 mm √K", "0.05 ft sqrt(M)", "0.01√n"; a bare
 * number takes `unit` (feet-inches: refused unless marked).  False if it is none.
 */
bool rb_tolerance_parse(const char *text, size_t length, enum rb_unit unit,
			bool decimal_comma, struct rb_tolerance *out);

/* Does the tolerance need the section's length? */
bool rb_tolerance_needs_length(const struct rb_tolerance *t);

/*
 * Is |misclosure| at most what is allowed?  length is the section's (sum of backsight and
 * foresight distances; looked at only where it is needed), setups > 0.  Exact.
 */
bool rb_tolerance_holds(const struct rb_tolerance *t, rb_length misclosure,
			rb_length length, int64_t setups);

/* The allowed misclosure, to the nearest nanometre: for display, never for a verdict. */
rb_length rb_tolerance_allowed(const struct rb_tolerance *t, rb_length length,
			       int64_t setups);

#endif
