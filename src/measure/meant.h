/* SPDX-License-Identifier: MIT */
/*
 * meant.h - what a refused text was likely meant to be.
 *
 * Only candidates are collected here, for a person to choose from: none is ever read.
 */
#ifndef RB_MEASURE_MEANT_H
#define RB_MEASURE_MEANT_H

#include "measure/fraction.h"
#include "measure/number.h"

/* Add one candidate: not twice, not over the limit of the rules, not past RB_MAYBE. */
void rb_meant(struct rb_reading *r, const struct rb_reading_rules *rules, int64_t nm);

/* Two whole numbers that a sheet made a date of: feet and inches either way round, and a
 * fraction of an inch or the decimal number, as the unit of the book makes likely. */
void rb_meant_pair(struct rb_reading *r, const struct rb_reading_rules *rules,
		   int64_t first, int64_t second);

/* `5 29`: the point that is missing, or the marks. */
void rb_meant_spaced(struct rb_reading *r, const struct rb_reading_rules *rules,
		     const struct rb_number *before, const struct rb_number *behind);

/* 5 and 3 as 5.3: so a date or a time may have been typed with a point. */
void rb_meant_decimal(struct rb_reading *r, const struct rb_reading_rules *rules,
		      int64_t whole, int64_t behind);

/* A number without marks where feet-inches are wanted: 5.10 for 5'-10", or as feet. */
void rb_meant_bare(struct rb_reading *r, const struct rb_reading_rules *rules,
		   const struct rb_number *n, bool negative);

/* A number over the limit: where its point was. */
void rb_meant_point(struct rb_reading *r, const struct rb_reading_rules *rules,
		    enum rb_unit unit, const struct rb_number *n);

/* `5 1/2` unmarked: so many inches, so many feet, or feet and a part of an inch. */
void rb_meant_unmarked(struct rb_reading *r, const struct rb_reading_rules *rules,
		       int64_t whole, struct rb_fraction part);

/* A number finer than a nanometre, rounded to the places of a rod; `before` is what was
 * read before it: the feet of 5'-3.3333333". */
void rb_meant_rounded(struct rb_reading *r, const struct rb_reading_rules *rules,
		      int64_t unit_nm, const struct rb_number *n, int64_t before);

#endif
