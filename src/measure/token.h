/* SPDX-License-Identifier: MIT */
/*
 * token.h - an expression, cut into lengths, numbers, operators and brackets.
 *
 * A length is the longest run of text that reads as one and carries a mark.  What decides
 * between `3/4"` and a division, and between 5'-3" and a difference, is here alone.
 */
#ifndef RB_MEASURE_TOKEN_H
#define RB_MEASURE_TOKEN_H

#include "measure/expression.h"

#define RB_TOKENS (4 * RB_OPERATIONS)

struct rb_token {
	char sign; /* + - * / ( ), or 0: an operand */
	struct rb_ratio value;
	size_t at, length; /* in the text */
};

struct rb_tokens {
	struct rb_token item[RB_TOKENS];
	int count;
	enum rb_expression_refusal refusal;
	size_t where;
	struct rb_reading reading; /* the length that was refused */
};

/* Cut a text.  Numbers are lengths of rules->unit where the text has no length with a
 * mark and nothing is multiplied or divided. */
void rb_tokens_read(const char *text, size_t length, const struct rb_reading_rules *rules,
		    struct rb_tokens *out);

#endif
