/* SPDX-License-Identifier: MIT */
/* Heights as ratios: sums stay exact and round once. */
#include "job.h"

static void rounds_half_away_from_zero(void **state)
{
	/* clang-format off */
	static const struct { struct rb_exact a; int64_t nm; } cases[] = {
		{ { 5, 0, 1 },   5 },
		{ { 5, 1, 3 },   5 },
		{ { 5, 1, 2 },   6 },
		{ { 5, 2, 3 },   6 },
		{ { -6, 1, 2 }, -6 }, /* -5.5 */
		{ { -6, 2, 3 }, -5 }, /* -5 1/3 */
		{ { -6, 1, 3 }, -6 }, /* -5 2/3 */
		{ { 0, 1, 2 },   1 },
		{ { -1, 1, 2 }, -1 }, /* -0.5 */
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		rb_length got = rb_exact_round(cases[i].a);

		if (got.nm == cases[i].nm)
			continue;
		print_error("row %zu: %lld\n", i, (long long)got.nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void thirds_add_up(void **state)
{
	const rb_slope third = { { 1 }, { 3 } };
	struct rb_exact sum = rb_exact_of((rb_length){ -1 });

	(void)state;
	for (int i = 0; i < 3; i++)
		sum = rb_exact_add(sum, rb_exact_fall(third, (rb_length){ 1 }));
	assert_int_equal(rb_exact_sign(sum), 0);
	sum = rb_exact_sub(sum, rb_exact_fall(third, (rb_length){ 1 }));
	assert_int_equal(rb_exact_sign(sum), -1);
	assert_int_equal(sum.whole, -1);
	assert_int_equal(sum.num, 2);
	assert_int_equal(rb_exact_compare(sum, rb_exact_of((rb_length){ -1 })), 1);
}

static void backfall_is_negative(void **state)
{
	const rb_slope up = { { -1 }, { 48 } };

	(void)state;
	struct rb_exact part = rb_exact_fall(up, (rb_length){ 1 });

	assert_int_equal(rb_exact_round(rb_exact_fall(up, FT(48, 0))).nm, -RB_FOOT);
	assert_int_equal(part.whole, -1); /* and 47/48 */
	assert_int_equal(part.num, 47);
	assert_int_equal(part.den, 48);
}

static void signs_and_order(void **state)
{
	struct rb_exact none = rb_exact_of((rb_length){ 0 });
	struct rb_exact one = rb_exact_of((rb_length){ 1 });
	struct rb_exact third =
		rb_exact_fall((rb_slope){ { 1 }, { 3 } }, (rb_length){ 1 });

	(void)state;
	assert_int_equal(one.den, 1);
	assert_int_equal(rb_exact_sign(none), 0);
	assert_int_equal(rb_exact_sign(one), 1);
	assert_int_equal(rb_exact_sign(third), 1);
	assert_int_equal(rb_exact_sign(rb_exact_sub(none, third)), -1);
	assert_true(rb_exact_compare(none, one) < 0);
	assert_true(rb_exact_compare(one, none) > 0);
	assert_true(rb_exact_compare(none, third) < 0);
	assert_true(rb_exact_compare(third, none) > 0);
	assert_int_equal(rb_exact_compare(third, third), 0);
}

/* A common denominator beyond 2^61 is given up, not overflowed: the error stays far below
 * a nanometre. */
static void survives_odd_denominators(void **state)
{
	static const int64_t primes[] = { 999999937, 999999929, 999999893, 999999883 };
	struct rb_exact sum = rb_exact_of((rb_length){ 0 });

	(void)state;
	for (size_t i = 0; i < 4; i++)
		sum = rb_exact_add(sum, rb_exact_fall((rb_slope){ { 1 }, { primes[i] } },
						      (rb_length){ primes[i] / 4 }));
	assert_true(sum.num >= 0 && sum.num < sum.den);
	assert_in_range(rb_exact_round(sum).nm, 1, 1);
}

static void run_is_the_longest_that_holds(void **state)
{
	const rb_slope slope = { { 1 }, { 48 } }, steep = { { 7 }, { 3 } };

	(void)state;
	assert_int_equal(rb_exact_run(rb_exact_of(FT(1, 0)), slope).nm, 48 * RB_FOOT);
	assert_int_equal(rb_exact_run(rb_exact_of((rb_length){ 10 }), steep).nm, 4);
	assert_int_equal(rb_exact_run((struct rb_exact){ 9, 1, 3 }, steep).nm, 4);
	assert_int_equal(rb_exact_run((struct rb_exact){ 9, 1, 4 }, steep).nm, 3);
	assert_false(rb_length_given(
		rb_exact_run(rb_exact_of((rb_length){ RB_LENGTH_MAX }), slope)));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(rounds_half_away_from_zero),
		cmocka_unit_test(thirds_add_up),
		cmocka_unit_test(backfall_is_negative),
		cmocka_unit_test(signs_and_order),
		cmocka_unit_test(survives_odd_denominators),
		cmocka_unit_test(run_is_the_longest_that_holds),
	};

	return cmocka_run_group_tests_name("exact", tests, NULL, NULL);
}
