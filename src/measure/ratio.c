/* SPDX-License-Identifier: MIT */
/* ratio.c - sums, products and quotients of ratios, with their units. */
#include "measure/ratio.h"

#include "measure/wide.h"

#define MOST (INT64_C(1) << 62) /* so that a sum of two products fits 128 bits */

static rb_wide magnitude(rb_wide a)
{
	return a < 0 ? -a : a;
}

static enum rb_expression_refusal reduced(rb_wide num, rb_wide den, bool is_length,
					  struct rb_ratio *out)
{
	rb_wide common = rb_wide_common_divisor(magnitude(num), magnitude(den));

	if (den < 0)
		num = -num, den = -den;
	num /= common;
	den /= common;
	if (magnitude(num) >= MOST || den >= MOST)
		return RB_EXPRESSION_BIG;
	*out = (struct rb_ratio){ (int64_t)num, (int64_t)den, is_length };
	return RB_EXPRESSION_READ;
}

static enum rb_expression_refusal sum(struct rb_ratio a, struct rb_ratio b,
				      struct rb_ratio *out)
{
	if (a.is_length != b.is_length)
		return RB_EXPRESSION_MIXED;
	return reduced(rb_wide_mul(a.num, b.den) + rb_wide_mul(b.num, a.den),
		       rb_wide_mul(a.den, b.den), a.is_length, out);
}

static enum rb_expression_refusal product(struct rb_ratio a, struct rb_ratio b,
					  struct rb_ratio *out)
{
	if (a.is_length && b.is_length)
		return RB_EXPRESSION_SQUARE;
	return reduced(rb_wide_mul(a.num, b.num), rb_wide_mul(a.den, b.den),
		       a.is_length || b.is_length, out);
}

static enum rb_expression_refusal quotient(struct rb_ratio a, struct rb_ratio b,
					   struct rb_ratio *out)
{
	if (!b.num)
		return RB_EXPRESSION_DIVIDE_ZERO;
	if (!a.is_length && b.is_length)
		return RB_EXPRESSION_SQUARE;
	return reduced(rb_wide_mul(a.num, b.den), rb_wide_mul(a.den, b.num),
		       a.is_length && !b.is_length, out);
}

enum rb_expression_refusal rb_ratio_work(char sign, struct rb_ratio left,
					 struct rb_ratio right, struct rb_ratio *out)
{
	switch (sign) {
	case '-':
		right.num = -right.num;
		return sum(left, right, out);
	case '*':
		return product(left, right, out);
	case '/':
		return quotient(left, right, out);
	default:
		return sum(left, right, out);
	}
}
