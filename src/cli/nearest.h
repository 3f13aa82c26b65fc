/* SPDX-License-Identifier: MIT */
/*
 * nearest.h - "did you mean" for commands, options and choices.
 *
 * Candidates are tried one after another; a third of the letters, and at least one, may
 * be wrong.  A suggestion is only ever shown: nothing is run or read in place of what was
 * typed.
 */
#ifndef RB_CLI_NEAREST_H
#define RB_CLI_NEAREST_H

struct rb_nearest {
	const char *word; /* what was typed */
	const char *best; /* the nearest candidate so far; NULL: none is near */
	int distance;     /* of best, in letters */
};

/* Nothing tried yet. */
struct rb_nearest rb_nearest_to(const char *word);

/* Try a candidate; the earlier of two that are equally near stays. */
void rb_nearest_try(struct rb_nearest *nearest, const char *candidate);

#endif
