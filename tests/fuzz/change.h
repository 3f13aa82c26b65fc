/* SPDX-License-Identifier: MIT */
/*
 * change.h - a text that is changed, and what the fuzzer's seeds know.
 *
 * KNOWN names a folder with the files "measures", "cells" and "lines": what stands in the
 * seeds of all targets, so that each odd reading of a test comes into every column of
 * every kind of file.  Without it nothing is known.
 */
#ifndef RB_TESTS_FUZZ_CHANGE_H
#define RB_TESTS_FUZZ_CHANGE_H

#include <stddef.h>
#include <stdint.h>

/* What libFuzzer calls to change an input, and its own way to do it. */
size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t room, unsigned seed);
size_t LLVMFuzzerMutate(uint8_t *data, size_t size, size_t room);

struct text {
	uint8_t *bytes;
	size_t length, room;
	uint32_t draws;
};

struct span {
	size_t from, to;
};

/* Any place of a text; the first of one that is empty. */
size_t somewhere(struct text *t);

/* What stands around a place between any of these characters. */
struct span around(const struct text *t, size_t at, const char *ends);

/* Put bytes, which do not lie in the text, in place of a span; not where there is no
 * room. */
void put(struct text *t, struct span s, const void *bytes, size_t length);

/* The lines of a file, by where they begin; the last one is an end. */
struct known {
	char *bytes;
	size_t *line;
	int lines;
};

extern struct known known_measures, known_cells, known_lines;

/* Any of them in place of a span. */
void put_known(struct text *t, struct span s, const struct known *known);

#endif
