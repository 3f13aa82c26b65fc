/* SPDX-License-Identifier: MIT */
/*
 * shape.h - a marked text as a row of letters, one a token.
 *
 * `5'-3 1/2"` is NFNN/NI: number, feet, number, number over number, inches.  Every form
 * in which a length can be written is one short word, so that all of them stand in a
 * table.
 */
#ifndef RB_MEASURE_SHAPE_H
#define RB_MEASURE_SHAPE_H

#include "measure/mark.h"
#include "measure/number.h"

/*
 * Letters of a shape: N whole number, D decimal, P and K numbers that are none
 * (rb_number_kind), F feet, I inches, M metres, C centimetres, T millimetres, - and /,
 * ? for all else.  Blanks part tokens and leave no trace; nor does a dash behind feet.
 */
#define RB_SHAPE         8
#define RB_SHAPE_NUMBERS 4

struct rb_shape {
	char text[RB_SHAPE + 2]; /* a longer text has '?' in the last place */
	int at[RB_SHAPE + 2];    /* where each token starts in the marked text */
	int length;
	struct rb_number number[RB_SHAPE_NUMBERS];
	int number_at[RB_SHAPE_NUMBERS];
	int numbers;
};

/* Take the tokens of the part of a marked text from `begin` to `end`. */
void rb_shape_read(const struct rb_marked *marked, int begin, int end,
		   const struct rb_reading_rules *rules, struct rb_shape *out);

#endif
