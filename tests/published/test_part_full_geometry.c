/* SPDX-License-Identifier: MIT */
/*
 * Part-full circles: area and hydraulic radius.
 *
 * Source: Encyclopaedia Britannica, 11th ed., "Hydraulics", secs 110-111 (read): depth
 * over radius k, hydraulic radius over radius, area over radius squared.  Ours within 1.2
 * %, of which 0.1 is the rounding of our ratios.  At k = .10 it prints .0523 for the
 * hydraulic radius, a misprint: the value is .0651.
 */
#include "../drain/job.h"

#include <stdlib.h>

#include "drain/flow.h"

/* clang-format off */
static const struct { int depth; int radius, area; } table[] = { /* thousandths; ten-thousandths */
	{ 100, 1278,  1651 }, { 200, 2420,  4500 }, { 250, 2930,  6140 },
	{ 350, 3870,  9790 }, { 450, 4660, 13710 }, { 500, 5000, 15710 },
};
/* clang-format on */

#define PI_IN_MILLIONTHS INT64_C(3141593)

/* From ratios to the full pipe: its hydraulic radius is half its radius, its area pi. */
static int64_t radius_over_radius(int depth)
{
	return rb_part_full(depth).radius / 2;
}

static int64_t area_over_square(int depth)
{
	return rb_part_full(depth).area * PI_IN_MILLIONTHS / 1000000;
}

static bool is_near(int64_t got, int64_t want)
{
	return llabs(got - want) * 1000 <= 12 * want;
}

static void geometry(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
		if (is_near(radius_over_radius(table[i].depth), table[i].radius) &&
		    is_near(area_over_square(table[i].depth), table[i].area))
			continue;
		print_error("depth %d: %lld, %lld\n", table[i].depth,
			    (long long)radius_over_radius(table[i].depth),
			    (long long)area_over_square(table[i].depth));
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void the_misprint_is_not_produced(void **state)
{
	(void)state;
	assert_true(is_near(radius_over_radius(50), 651));
	assert_false(is_near(radius_over_radius(50), 523));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(geometry),
		cmocka_unit_test(the_misprint_is_not_produced),
	};

	return cmocka_run_group_tests_name("part-full geometry", tests, NULL, NULL);
}
