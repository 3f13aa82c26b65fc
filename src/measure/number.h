/* SPDX-License-Identifier: MIT */
/*
 * number.h - a number as written, and the exact length that so many of a unit make.
 *
 * A number is kept as its digits and the place of its point, never as a binary fraction:
 * what is written with a point is a whole number of nanometres or it is not, and that is
 * decided by one division without a rest.
 */
#ifndef RB_MEASURE_NUMBER_H
#define RB_MEASURE_NUMBER_H

#include "measure/reading.h"

struct rb_number {
	int64_t digits; /* without the point; at most 18 figures */
	int places;     /* of those, behind the point */
	int written;    /* figures behind the point, as written */
	int figures;    /* figures before the point, as written */
	bool cut;       /* figures other than 0 were dropped behind the point */
	bool huge;      /* figures were dropped before the point */
};

/* What a run of digits, points and commas is: also its letter in a shape. */
enum rb_number_kind {
	RB_NUMBER_WHOLE = 'N',
	RB_NUMBER_DECIMAL = 'D',
	RB_NUMBER_POINTS =
		'P',          /* two points, or points and commas that are no grouping */
	RB_NUMBER_COMMA = 'K' /* a comma that this file cannot have in a number */
};

/* Read the digits, points and commas at *text, at least one digit, and move *text behind
 * them.  What a comma
 * means is in the rules; *out is set for whole and decimal numbers. */
enum rb_number_kind rb_number_scan(const char **text,
				   const struct rb_reading_rules *rules,
				   struct rb_number *out);

/* 10 to the power of places, 0 to 18. */
int64_t rb_ten_to(int places);

/* So many of a unit of unit_nm: RB_READ, RB_REFUSE_FINE (finer than a nanometre) or
 * RB_REFUSE_LONG.  *nm is set on RB_READ. */
enum rb_refusal rb_number_length(const struct rb_number *n, int64_t unit_nm, int64_t *nm);

/*
 * Six or more decimals of a foot that are the rounded or the cut-off value of a whole
 * 64th of an inch, without being it: true, and *nm is that 64th.
 */
bool rb_number_sixtyfourth(const struct rb_number *n, int64_t *nm);

/* The number, within RB_LENGTH_MAX, rounded to `places` decimals of a unit of unit_nm,
 * half away from zero: in nanometres, the nearest. */
int64_t rb_number_rounded(const struct rb_number *n, int64_t unit_nm, int places);

#endif
