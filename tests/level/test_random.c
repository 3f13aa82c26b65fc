/* SPDX-License-Identifier: MIT */
/* test_random.c - the same numbers everywhere, and none likelier than another. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "level/random.h"

/* The first numbers of SplitMix64 from the seed 1234567, as implementations of it in many
 * languages publish them (value from memory). */
static void known_numbers(void **state)
{
	static const uint64_t wanted[] = {
		UINT64_C(6457827717110365317),  UINT64_C(3203168211198807973),
		UINT64_C(9817491932198370423),  UINT64_C(4593380528125082431),
		UINT64_C(16408922859458223821),
	};
	struct rb_random random = { 1234567 };

	(void)state;
	for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
		assert_true(rb_random_next(&random) == wanted[i]);
}

static void stays_within(void **state)
{
	struct rb_random random = rb_random_start(7, 1);
	int count[7] = { 0 };

	(void)state;
	for (int i = 0; i < 7000; i++) {
		int64_t n = rb_random_between(&random, -3, 3);

		assert_in_range(n + 3, 0, 6);
		count[n + 3]++;
	}
	for (int i = 0; i < 7; i++)
		assert_in_range(count[i], 850, 1150);
	assert_int_equal(rb_random_between(&random, 5, 5), 5);
	rb_random_between(&random, INT64_MIN / 2, INT64_MAX / 2);
}

/* Of three eighths of all numbers there are, two runs fit and a part of a third: taken as
 * they come, the first third of them would be half as likely again as the last. */
static void wide_ranges_are_even(void **state)
{
	const int64_t third = INT64_C(1) << 61;
	struct rb_random random = rb_random_start(7, 2);
	int count[3] = { 0 };

	(void)state;
	for (int i = 0; i < 6000; i++)
		count[rb_random_between(&random, 0, 3 * third - 1) / third]++;
	for (int i = 0; i < 3; i++)
		assert_in_range(count[i], 1850, 2150);
}

static void streams_differ(void **state)
{
	uint64_t first[64];

	(void)state;
	for (uint64_t i = 0; i < 64; i++) {
		struct rb_random random = rb_random_start(i / 8, i % 8);

		first[i] = rb_random_next(&random);
		for (uint64_t j = 0; j < i; j++)
			assert_true(first[i] != first[j]);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(known_numbers),
		cmocka_unit_test(stays_within),
		cmocka_unit_test(wide_ranges_are_even),
		cmocka_unit_test(streams_differ),
	};

	return cmocka_run_group_tests_name("random", tests, NULL, NULL);
}
