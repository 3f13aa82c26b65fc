/* SPDX-License-Identifier: MIT */
/*
 * random.h - numbers that look random and are the same on every machine.
 *
 * SplitMix64: G. L. Steele, D. Lea, C. H. Flood, Fast Splittable Pseudorandom Number
 * Generators, OOPSLA 2014; the constants are those of the public-domain version by
 * S. Vigna (2015).  The same seed gives the same numbers for ever: sheets depend on it.
 */
#ifndef RB_LEVEL_RANDOM_H
#define RB_LEVEL_RANDOM_H

#include <stddef.h>
#include <stdint.h>

struct rb_random {
	uint64_t state;
};

/* A generator for a seed and a number within it: each number has a stream of its own, so
 * that the third problem does not hang on the first two. */
struct rb_random rb_random_start(uint64_t seed, uint64_t number);

/* The next 64 bits. */
uint64_t rb_random_next(struct rb_random *random);

/* A whole number from low to high, both included, each as likely as any other. */
int64_t rb_random_between(struct rb_random *random, int64_t low, int64_t high);

#endif
