/* SPDX-License-Identifier: MIT */
/*
 * totals.h - sums along a chain of setups.
 *
 * Chains may share their beginning, so walking each of them back could take time that
 * grows with the square of the book.  Where none is shared they are walked, which takes
 * no memory; where any is, sums up to every setup are worked out once.
 */
#ifndef RB_LEVEL_TOTALS_H
#define RB_LEVEL_TOTALS_H

#include "rodbook/reduce.h"

struct rb_totals {
	rb_length backsight, foresight;
	rb_length rise, fall;                         /* from sight to sight, both >= 0 */
	rb_length backsight_length, foresight_length; /* none if one is missing */
};

struct rb_chains {
	const struct rb_reduced *reduced;
	struct rb_totals *before; /* by setup: its chain up to and with its backsight; or
				   * NULL: walk */
	struct rb_totals *within; /* by setup: only rise and fall, over all its sights */
};

/* Prepare to sum chains; `shared` when some setups are in several.  False: no memory. */
bool rb_chains_init(struct rb_chains *chains, struct rb_arena *arena,
		    const struct rb_reduced *reduced, bool shared);

/* The sums of the chain that ends with the shot `end`, seen from its last setup. */
struct rb_totals rb_chain_totals(const struct rb_chains *chains, uint32_t end);

#endif
