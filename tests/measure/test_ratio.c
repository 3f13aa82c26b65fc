/* SPDX-License-Identifier: MIT */
/* test_ratio.c - one operation on two ratios, with its units and its bounds. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "measure/ratio.h"

#define HUGE (INT64_C(1) << 61)

#define LENGTH(num, den)                                                                 \
	{                                                                                \
		num, den, true                                                           \
	}
#define NUMBER(num, den)                                                                 \
	{                                                                                \
		num, den, false                                                          \
	}

/* clang-format off */
static const struct {
	struct rb_ratio left;
	char sign;
	struct rb_ratio right, result;
	enum rb_expression_refusal refusal;
} cases[] = {
	{ LENGTH(3, 1),   '+', LENGTH(4, 1),   LENGTH(7, 1),    RB_EXPRESSION_READ },
	{ LENGTH(1, 2),   '+', LENGTH(1, 3),   LENGTH(5, 6),    RB_EXPRESSION_READ },
	{ LENGTH(1, 6),   '+', LENGTH(1, 3),   LENGTH(1, 2),    RB_EXPRESSION_READ },
	{ LENGTH(1, 2),   '-', LENGTH(1, 3),   LENGTH(1, 6),    RB_EXPRESSION_READ },
	{ LENGTH(1, 3),   '-', LENGTH(1, 2),   LENGTH(-1, 6),   RB_EXPRESSION_READ },
	{ LENGTH(5, 7),   '-', LENGTH(5, 7),   LENGTH(0, 1),    RB_EXPRESSION_READ },
	{ NUMBER(1, 2),   '+', NUMBER(1, 2),   NUMBER(1, 1),    RB_EXPRESSION_READ },
	{ LENGTH(6, 1),   '*', NUMBER(2, 3),   LENGTH(4, 1),    RB_EXPRESSION_READ },
	{ NUMBER(2, 3),   '*', LENGTH(6, 1),   LENGTH(4, 1),    RB_EXPRESSION_READ },
	{ LENGTH(-6, 1),  '*', NUMBER(-1, 4),  LENGTH(3, 2),    RB_EXPRESSION_READ },
	{ LENGTH(7, 1),   '*', NUMBER(0, 1),   LENGTH(0, 1),    RB_EXPRESSION_READ },
	{ LENGTH(7, 1),   '/', NUMBER(2, 1),   LENGTH(7, 2),    RB_EXPRESSION_READ },
	{ LENGTH(7, 1),   '/', NUMBER(-2, 3),  LENGTH(-21, 2),  RB_EXPRESSION_READ },
	{ LENGTH(7, 1),   '/', LENGTH(14, 1),  NUMBER(1, 2),    RB_EXPRESSION_READ },
	{ NUMBER(7, 1),   '/', NUMBER(14, 1),  NUMBER(1, 2),    RB_EXPRESSION_READ },
	{ LENGTH(HUGE, 1), '+', LENGTH(HUGE - 1, 1), LENGTH(2 * HUGE - 1, 1), RB_EXPRESSION_READ },
	{ LENGTH(1, HUGE - 1), '/', NUMBER(2, 1), LENGTH(1, 2 * HUGE - 2), RB_EXPRESSION_READ },

	{ LENGTH(1, 1),   '+', NUMBER(1, 1),   NUMBER(9, 9),    RB_EXPRESSION_MIXED },
	{ NUMBER(1, 1),   '-', LENGTH(1, 1),   NUMBER(9, 9),    RB_EXPRESSION_MIXED },
	{ LENGTH(1, 1),   '*', LENGTH(1, 1),   NUMBER(9, 9),    RB_EXPRESSION_SQUARE },
	{ NUMBER(1, 1),   '/', LENGTH(1, 1),   NUMBER(9, 9),    RB_EXPRESSION_SQUARE },
	{ LENGTH(1, 1),   '/', NUMBER(0, 1),   NUMBER(9, 9),    RB_EXPRESSION_DIVIDE_ZERO },
	{ LENGTH(1, 1),   '/', LENGTH(0, 1),   NUMBER(9, 9),    RB_EXPRESSION_DIVIDE_ZERO },
	{ NUMBER(0, 1),   '/', NUMBER(0, 1),   NUMBER(9, 9),    RB_EXPRESSION_DIVIDE_ZERO },
	{ LENGTH(HUGE, 1), '+', LENGTH(HUGE, 1), NUMBER(9, 9),  RB_EXPRESSION_BIG },
	{ LENGTH(-HUGE, 1), '-', LENGTH(HUGE, 1), NUMBER(9, 9), RB_EXPRESSION_BIG },
	{ LENGTH(HUGE, 1), '*', NUMBER(HUGE, 1), NUMBER(9, 9),  RB_EXPRESSION_BIG },
	{ LENGTH(1, HUGE), '/', NUMBER(HUGE, 1), NUMBER(9, 9),  RB_EXPRESSION_BIG },
	{ LENGTH(1, HUGE), '/', NUMBER(2, 1), NUMBER(9, 9),     RB_EXPRESSION_BIG },
	{ LENGTH(1, HUGE), '+', LENGTH(1, HUGE - 1), NUMBER(9, 9), RB_EXPRESSION_BIG },
};
/* clang-format on */

static bool same(struct rb_ratio a, struct rb_ratio b)
{
	return a.num == b.num && a.den == b.den && a.is_length == b.is_length;
}

/* What is refused leaves the result alone. */
static void works(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rb_ratio got = NUMBER(9, 9);
		enum rb_expression_refusal refusal =
			rb_ratio_work(cases[i].sign, cases[i].left, cases[i].right, &got);

		if (refusal == cases[i].refusal && same(got, cases[i].result))
			continue;
		print_error("row %zu: refusal %d, %lld/%lld%s\n", i, refusal,
			    (long long)got.num, (long long)got.den,
			    got.is_length ? " nm" : "");
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* Adding a share n times gives the whole back: nothing is lost on the way. */
static void shares_add_up(void **state)
{
	int wrong = 0;

	(void)state;
	for (int64_t n = 1; n <= 64; n++) {
		const struct rb_ratio whole = LENGTH(1613000000, 1);
		struct rb_ratio sum = LENGTH(0, 1), share = sum;

		rb_ratio_work('/', whole, (struct rb_ratio)NUMBER(n, 1), &share);
		for (int64_t i = 0; i < n; i++)
			rb_ratio_work('+', sum, share, &sum);
		if (same(sum, whole))
			continue;
		print_error("%lld shares: %lld/%lld\n", (long long)n, (long long)sum.num,
			    (long long)sum.den);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(works),
		cmocka_unit_test(shares_add_up),
	};

	return cmocka_run_group_tests_name("ratio", tests, NULL, NULL);
}
