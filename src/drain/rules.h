/* SPDX-License-Identifier: MIT */
/*
 * rules.h - minimum slopes by size of pipe, as a rule prints them.
 *
 * A rules file is the user's: it names its rule, where it was read, and which edition,
 * and every result judged by it names them again.  The authority having jurisdiction
 * decides.
 */
#ifndef RB_DRAIN_RULES_H
#define RB_DRAIN_RULES_H

#include "rodbook/finding.h"

struct rb_rule {
	rb_length up_to; /* the largest size it speaks of; none: every larger size */
	rb_slope minimum;
	const char *remarks;
	uint32_t line;
};

struct rb_rules {
	const char *file;
	const char *name, *source, *edition, *read; /* "" where not given */
	rb_length smallest; /* the smallest size that the rule speaks of; none: every size
			     */
	struct rb_rule *rule; /* by size, the one for every larger size last */
	uint32_t rules;
};

/*
 * Read a rules file: keys rule, source, edition, read and smallest size, then the columns
 * `size up to`, `minimum slope` and `remarks`.  Sizes without a mark are inches, or
 * millimetres from 20 up.  NULL after an error.
 */
struct rb_rules *rb_rules_read(struct rb_arena *arena, struct rb_findings *findings,
			       const char *bytes, size_t length);

/* The rule for a nominal size, or NULL where the file speaks of no such size. */
const struct rb_rule *rb_rules_find(const struct rb_rules *rules, rb_length size);

/* The minimum slope asked of a line, and by what. */
struct rb_minimum {
	rb_slope slope;               /* not given: nothing is asked */
	const struct rb_rules *rules; /* NULL: the plan's or the caller's own figure */
	const struct rb_rule *rule;
};

/*
 * The minimum for a pipe of nominal size `size` by the rules.  Findings: the size is not
 * known (errors with `place`, where it should have been written), no rule for it.  False
 * after an error.
 */
bool rb_minimum_by_rules(struct rb_findings *findings, const struct rb_rules *rules,
			 rb_length size, struct rb_place place, struct rb_minimum *out);

#endif
