/* SPDX-License-Identifier: MIT */
/*
 * slips.h - what a written number may have been, one slip away.
 *
 * A slip is made in the notation in which the number was written: digits are exchanged in
 * decimals or in feet and inches, as they stand in the notes.  What comes out is always a
 * reading that a rod can show: 0 to its length, on the side of zero on which it was
 * written, but for the slip of the sign itself.
 */
#ifndef RB_LEVEL_SLIPS_H
#define RB_LEVEL_SLIPS_H

#include "level/suspects.h"

/* Digits that stand together: a whole number, what one of it is worth, and what it must
 * stay below (12 for inches beside feet). */
struct rb_figures {
	int64_t number, one, below;
	int least_digits; /* leading zeros that are written: 0.42 is 042 */
};

enum rb_measure_system { RB_SYSTEM_FEET, RB_SYSTEM_INCHES, RB_SYSTEM_METRIC };

#define RB_FIGURES 2

/* A number in the notes, as it was written. */
struct rb_written {
	uint32_t row;
	enum rb_column column;
	rb_length value;
	int effect;     /* what one more of it adds to the misclosure: 1 or -1 */
	bool elevation; /* a known elevation, not a rod reading */
	enum rb_measure_system system;
	bool in_parts;   /* feet, inches and a fraction */
	int denominator; /* in parts: the finest fraction of the book, 8 to 64 */
	rb_length rod;   /* its length */
	struct rb_figures figures[RB_FIGURES];
	int figure_count; /* 0: written in no notation whose digits are known */
};

/* Find out how the value was written; row, column, value and effect are set already. */
void rb_written_read(struct rb_written *written, const struct rb_book *book);

/* Called with each thing that the number may have been. */
typedef void rb_slip_taker(void *context, const struct rb_written *written,
			   enum rb_slip slip, rb_length maybe);

/* Every plausible slip of one number, some 80 at most; a value may come twice, under two
 * kinds.  Never the value as written. */
void rb_slips_each(const struct rb_written *written, rb_slip_taker *take, void *context);

/* The step of the marks on a rod of this unit: 0.01 ft, 1/8 in, 1 mm; in nm. */
int64_t rb_rod_step(enum rb_unit unit);

#endif
