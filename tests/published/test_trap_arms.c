/* SPDX-License-Identifier: MIT */
/*
 * The longest trap arm falls one diameter: diameter / slope.
 *
 * Source: IRC P3105.2 and IPC 909.2 (read second-hand); 2 in at 1/4 in/ft is 8 ft (read
 * second-hand), the others computed; IPC Table 909.1 has the same figures (value from
 * memory).
 */
#include "../drain/job.h"

#include "drain/fall_budget.h"

/* clang-format off */
static const struct { int quarters; int64_t one_in, feet; } table[] = {
	{ 5, 48, 5 }, { 6, 48, 6 }, { 8, 48, 8 }, { 12, 48, 12 }, { 16, 48, 16 },
	{ 12, 96, 24 }, { 16, 96, 32 },
};
/* clang-format on */

static void arms(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
		rb_length arm = rb_longest_trap_arm(
			(rb_length){ table[i].quarters * RB_INCH / 4 },
			(rb_slope){ { 1 }, { table[i].one_in } });

		if (arm.nm == table[i].feet * RB_FOOT)
			continue;
		print_error("row %zu: %lld nm\n", i, (long long)arm.nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(arms) };

	return cmocka_run_group_tests_name("trap arms", tests, NULL, NULL);
}
