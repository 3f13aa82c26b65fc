/* SPDX-License-Identifier: MIT */
/* random.c - SplitMix64. */
#include "level/random.h"

#define GOLDEN UINT64_C(0x9E3779B97F4A7C15) /* 2^64 over the golden ratio, made odd */

uint64_t rb_random_next(struct rb_random *random)
{
	uint64_t z = random->state += GOLDEN;

	z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
	z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
	return z ^ (z >> 31);
}

/* Mixed twice, so that seed 1, number 2 is not seed 2, number 1. */
struct rb_random rb_random_start(uint64_t seed, uint64_t number)
{
	struct rb_random of_seed = { seed };
	struct rb_random of_number = { rb_random_next(&of_seed) ^ number };

	return (struct rb_random){ rb_random_next(&of_number) };
}

int64_t rb_random_between(struct rb_random *random, int64_t low, int64_t high)
{
	uint64_t count = (uint64_t)(high - low) + 1;
	/* what is left over beyond whole runs of count would make small numbers likelier
	 */
	uint64_t unfair = (UINT64_MAX - count + 1) % count;
	uint64_t got;

	do
		got = rb_random_next(random);
	while (got > UINT64_MAX - unfair);
	return low + (int64_t)(got % count);
}
