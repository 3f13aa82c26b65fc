/* SPDX-License-Identifier: MIT */
/*
 * expression.h - arithmetic on lengths, as written: 8'-6 3/4" / 3.
 *
 * + - * / and brackets over lengths (every notation of reading.h) and numbers (whole,
 * decimal, or a fraction), with units tracked: a length times a length, or a sum of a
 * length and a number, is refused.  Values are exact ratios until the end, and rounded
 * once to the nearest nanometre.  In an expression a minus with blanks on both sides
 * subtracts; `5'-3"` is one length.
 */
#ifndef RB_MEASURE_EXPRESSION_H
#define RB_MEASURE_EXPRESSION_H

#include "measure/reading.h"

enum rb_expression_refusal {
	RB_EXPRESSION_READ,
	RB_EXPRESSION_EMPTY,
	RB_EXPRESSION_LENGTH,      /* a length in it cannot be read: see `reading` */
	RB_EXPRESSION_SYNTAX,      /* something is missing or too much, at `where` */
	RB_EXPRESSION_SQUARE,      /* a length times a length, or a number over a length */
	RB_EXPRESSION_MIXED,       /* a length plus a number */
	RB_EXPRESSION_NUMBER,      /* the whole is a number, not a length */
	RB_EXPRESSION_DIVIDE_ZERO,
	RB_EXPRESSION_BIG          /* beyond what the arithmetic holds */
};

/* An exact value on the way: num / den nanometres (is_length) or num / den. */
struct rb_ratio {
	int64_t num, den; /* den > 0, reduced */
	bool is_length;
};

/* One operation as it was done, for `--steps`. */
struct rb_operation {
	char sign; /* '+', '-', '*', '/' */
	struct rb_ratio left, right, result;
};

#define RB_OPERATIONS 32

struct rb_expression {
	enum rb_expression_refusal refusal;
	size_t where;              /* refused: offset in bytes */
	struct rb_reading reading; /* RB_EXPRESSION_LENGTH: the length that was refused */
	rb_length value;           /* RB_EXPRESSION_READ: rounded once */
	bool exact;                /* value was not rounded */
	struct rb_ratio ratio;     /* the value before rounding */
	struct rb_operation step[RB_OPERATIONS];
	int steps;
};

/* Work out an expression; a bare number beside lengths is a factor, a text that is one
 * bare number alone is a length in rules->unit. */
void rb_expression_parse(const char *text, size_t length,
			 const struct rb_reading_rules *rules, struct rb_expression *out);

#endif
