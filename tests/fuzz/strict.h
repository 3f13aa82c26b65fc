/* SPDX-License-Identifier: MIT */
/*
 * strict.h - is a result what its format says?
 *
 * Small checkers that forgive nothing and share no code with the writers: each ends the
 * process at the first byte that is out of order.
 */
#ifndef RB_TESTS_FUZZ_STRICT_H
#define RB_TESTS_FUZZ_STRICT_H

#include "report/sink.h"

/* A result that is kept whole in memory, with a sink that writes to it. */
struct kept {
	struct rb_sink sink;
	char *bytes; /* ends in a NUL that is not counted */
	size_t length, room;
};

void kept_begin(struct kept *kept);

/* Flush; from then on the bytes can be looked at. */
void kept_end(struct kept *kept);
void kept_free(struct kept *kept);

/* UTF-8 without a control character but the line end; nothing that turns the direction
 * of writing. */
void strict_text(const struct kept *kept);

/* The same, and ESC in nothing but the two marks for bold and plain. */
void strict_bold_text(const struct kept *kept);

/* One value as RFC 8259 says, no key twice in an object, no -0, text as above. */
void strict_json(const struct kept *kept);

/* Known elements only, closed in order, attributes quoted and known, no script, no
 * reference to anything outside; `svg`: a picture alone. */
void strict_markup(const struct kept *kept, bool svg);

/* As many cells in every row as in the first, as libcsv parts them, and none that a sheet
 * would run. */
void strict_csv(const struct kept *kept);

#endif
