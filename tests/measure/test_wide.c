/* SPDX-License-Identifier: MIT */
/* test_wide.c - 128-bit products: quotients, roots and ratios. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "measure/wide.h"

static void divides_half_away_from_zero(void **state)
{
	/* clang-format off */
	static const struct { int64_t a, b, quotient; } cases[] = {
		{ 7, 2, 4 }, { -7, 2, -4 }, { 7, -2, -4 }, { -7, -2, 4 },
		{ 1, 3, 0 }, { 2, 3, 1 }, { -1, 3, 0 }, { -2, 3, -1 },
		{ 5, 10, 1 }, { -5, 10, -1 }, { 4, 10, 0 }, { 6, 3, 2 }, { 0, 9, 0 },
		{ INT64_MAX, 1, INT64_MAX }, { INT64_MIN, 1, INT64_MIN },
		{ INT64_MAX, INT64_MAX, 1 }, { INT64_MAX / 2 + 1, INT64_MAX, 1 },
		{ INT64_MAX / 2, INT64_MAX, 0 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		int64_t got = rb_wide_divide(cases[i].a, cases[i].b);

		if (got == cases[i].quotient)
			continue;
		print_error("%lld / %lld: got %lld\n", (long long)cases[i].a,
			    (long long)cases[i].b, (long long)got);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void divides_products_beyond_64_bits(void **state)
{
	(void)state;
	assert_int_equal(rb_wide_divide(rb_wide_mul(INT64_MAX, 1000), 1000), INT64_MAX);
	assert_int_equal(rb_wide_divide(rb_wide_mul(INT64_MAX, INT64_MAX), -INT64_MAX),
			 -INT64_MAX);
	/* six times 2^62 and two, a quarter of it: a half is left, away from zero */
	assert_int_equal(rb_wide_divide(rb_wide_mul(INT64_C(1) << 62, 6) + 2, 4),
			 INT64_C(6917529027641081857));
	assert_int_equal(rb_wide_divide(rb_wide_mul(-(INT64_C(1) << 62), 6) - 2, 4),
			 -INT64_C(6917529027641081857));
	assert_int_equal(rb_wide_divide(rb_wide_mul(INT64_C(1) << 62, 6) + 2, -4),
			 -INT64_C(6917529027641081857));
	assert_int_equal(rb_wide_divide(rb_wide_mul(INT64_C(1) << 62, 6) + 1, 4),
			 INT64_C(6917529027641081856));
}

static void check_root(int64_t root)
{
	rb_wide square = rb_wide_mul(root, root);

	assert_int_equal(rb_wide_root(square), root);
	assert_int_equal(rb_wide_root(square - 1), root - 1);
	assert_int_equal(rb_wide_root(square + 2 * (rb_wide)root), root);
}

static void roots_are_the_whole_ones_below(void **state)
{
	(void)state;
	assert_int_equal(rb_wide_root(0), 0);
	for (int64_t root = 1; root < 5000; root++)
		check_root(root);
	for (int64_t root = 5000; root < INT64_MAX / 7; root = root * 7 + 3)
		check_root(root);
	check_root(INT64_MAX);
}

static void products_are_compared(void **state)
{
	rb_wide big = rb_wide_mul(INT64_MAX, INT64_MAX);

	(void)state;
	assert_true(rb_wide_compare(big, big - 1) > 0);
	assert_true(rb_wide_compare(-big, big) < 0);
	assert_int_equal(rb_wide_compare(big, big), 0);
}

/* Against cross products, as far as those fit. */
static void ratios_are_compared_exactly(void **state)
{
	int wrong = 0;

	(void)state;
	for (int a = 0; a < 12; a++)
		for (int b = 1; b < 12; b++)
			for (int c = 0; c < 12; c++)
				for (int d = 1; d < 12; d++) {
					int got = rb_wide_compare_ratios(a, b, c, d);

					wrong += got != rb_wide_compare(a * d, c * b);
				}
	assert_int_equal(wrong, 0);
}

/* Neighbours of one ratio whose cross products take 250 bits. */
static void ratios_beyond_128_bits(void **state)
{
	rb_wide big = rb_wide_mul(INT64_MAX, INT64_MAX);

	(void)state;
	assert_int_equal(rb_wide_compare_ratios(big, big - 1, big, big - 1), 0);
	assert_true(rb_wide_compare_ratios(big, big - 1, big - 1, big - 2) < 0);
	assert_true(rb_wide_compare_ratios(big - 1, big, big - 2, big - 1) > 0);
	assert_true(rb_wide_compare_ratios(0, big, 1, big) < 0);
}

static void common_divisors(void **state)
{
	rb_wide large = rb_wide_mul(INT64_MAX, 6);

	(void)state;
	assert_int_equal(rb_wide_common_divisor(12, 18), 6);
	assert_int_equal(rb_wide_common_divisor(18, 12), 6);
	assert_int_equal(rb_wide_common_divisor(7, 5), 1);
	assert_int_equal(rb_wide_common_divisor(9, 0), 9);
	assert_int_equal(rb_wide_common_divisor(0, 9), 9);
	assert_true(rb_wide_common_divisor(large, rb_wide_mul(INT64_MAX, 4)) ==
		    rb_wide_mul(INT64_MAX, 2));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(divides_half_away_from_zero),
		cmocka_unit_test(divides_products_beyond_64_bits),
		cmocka_unit_test(roots_are_the_whole_ones_below),
		cmocka_unit_test(products_are_compared),
		cmocka_unit_test(common_divisors),
		cmocka_unit_test(ratios_are_compared_exactly),
		cmocka_unit_test(ratios_beyond_128_bits),
	};

	return cmocka_run_group_tests_name("wide", tests, NULL, NULL);
}
