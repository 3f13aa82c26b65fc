/* SPDX-License-Identifier: MIT */
/*
 * expression.h - arithmetic on lengths, as written: 8'-6 3/4" / 3.
 *
 * + - * / and brackets over lengths (every notation of reading.h) and numbers (whole,
 * decimal, a fraction or a mixed number), with units tracked: a length times a length, or
 * a sum of a length and a number, is refused.  Values are exact ratios until the end, and
 * rounded once to the nearest nanometre.
 *
 * What is one length, and what is arithmetic:
 *
 *   5'-3"  3/4"  63 1/2"    one length each: the longest run of text that reads as a
 *                           length with a mark or a unit.  In a ft-in book the dash form
 *                           is one too: 5-3-1/2
 *   104' - 96'              a minus subtracts with blanks on both sides, or beside a
 *                           bracket.  5'-3"-1/2" and 104.27-98.24 are refused: nobody
 *                           can tell
 *   5'/2  5' / 2            a slash behind a length divides; 5'/2/2 halves twice, and
 *                           5' / 1/2 divides by the number 1/2
 *   x X and their signs     multiply: 2 x 5', 2x5'; so do the sign, the dot and the
 *                           division sign of print
 *   a fault in a length     5'-13", 5-3 in a book in feet, 1,5 in a comma file: told,
 *                           never cut to a shorter length that would read
 *
 * Bare numbers: where nothing in the text has a mark and nothing is multiplied or divided
 * (5.29, or 5.29 + 3.10), all are lengths as readings of the book, in rules->unit, and
 * refused as such readings are (5.10 in a ft-in book).  Everywhere else a bare number is
 * a number: 5.29 * 2 comes to RB_EXPRESSION_NUMBER, 5' + 3 to RB_EXPRESSION_MIXED.
 */
#ifndef RB_MEASURE_EXPRESSION_H
#define RB_MEASURE_EXPRESSION_H

#include "measure/reading.h"

enum rb_expression_refusal {
	RB_EXPRESSION_READ,
	RB_EXPRESSION_EMPTY,
	RB_EXPRESSION_LENGTH, /* a length in it cannot be read: see `reading` */
	RB_EXPRESSION_SYNTAX, /* something is missing or too much, at `where` */
	RB_EXPRESSION_SQUARE, /* a length times a length, or a number over a length */
	RB_EXPRESSION_MIXED,  /* a length plus a number */
	RB_EXPRESSION_NUMBER, /* the whole is a number, in `ratio`: no length */
	RB_EXPRESSION_DIVIDE_ZERO,
	RB_EXPRESSION_BIG /* RB_LENGTH_MAX at the end, 62 bits on the way, 15 figures of a
			   * number, RB_OPERATIONS, 32 brackets in brackets */
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
	size_t where; /* refused: offset in bytes; of units that do not fit and
		       * of a division by zero, where the right side begins */
	struct rb_reading reading; /* RB_EXPRESSION_LENGTH: the length that was refused */
	rb_length value;           /* RB_EXPRESSION_READ: rounded once */
	bool exact;                /* value was not rounded */
	struct rb_ratio ratio;     /* the value before rounding */
	struct rb_operation step[RB_OPERATIONS];
	int steps;
};

/*
 * Work out an expression.
 *
 *   text    UTF-8, `length` bytes; it need not end in NUL
 *   rules   what a bare number and a comma mean, as for one reading
 *   out     owned by the caller; step[] has what was worked out before a refusal, too
 *
 * Never fails otherwise than by a refusal; allocates nothing.
 */
void rb_expression_parse(const char *text, size_t length,
			 const struct rb_reading_rules *rules, struct rb_expression *out);

#endif
