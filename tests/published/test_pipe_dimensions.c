/* SPDX-License-Identifier: MIT */
/*
 * test_pipe_dimensions.c - the pipe table against printed dimensions: the outside
 * diameter, and what is left of it inside the walls.
 *
 * Schedule 40: limits of ASTM D1785 and D2665 in millimetres as a distributor's sheet
 * gives them for 1-1/2 to 8 in; 5, 10 and 12 in and the inch forms: values from memory.
 * SDR 35: outside diameters of ASTM D3034; walls of 6 to 12 in: values from memory.
 * Cast iron, service weight: outside and inside diameters of the barrel, ASTM A74, as a
 * manufacturer's use-and-care manual prints them, p. 14.
 * Extra heavy (ASTM A74) and no-hub (CISPI 301, ASTM A888): values from memory.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "drain/pipe.h"

#define MIL INT64_C(25400) /* a thousandth of an inch */

/* clang-format off */
static const struct {
	const char *kind;
	int64_t size, outside, inside; /* thousandths of an inch */
} printed[] = {
	{ "sch 40",  1500,  1900,  1610 }, { "sch 40",  2000,  2375,  2067 },
	{ "sch 40",  3000,  3500,  3068 }, { "sch 40",  4000,  4500,  4026 },
	{ "sch 40",  5000,  5563,  5047 }, { "sch 40",  6000,  6625,  6065 },
	{ "sch 40",  8000,  8625,  7981 }, { "sch 40", 10000, 10750, 10020 },
	{ "sch 40", 12000, 12750, 11938 },
	{ "sdr 35",  4000,  4215,  3975 }, { "sdr 35",  6000,  6275,  5915 },
	{ "sdr 35",  8000,  8400,  7920 }, { "sdr 35", 10000, 10500,  9900 },
	{ "sdr 35", 12000, 12500, 11780 },
	{ "cast iron service",  2000,  2300,  1960 }, { "cast iron service",  3000,  3300,  2960 },
	{ "cast iron service",  4000,  4300,  3940 }, { "cast iron service",  5000,  5300,  4940 },
	{ "cast iron service",  6000,  6300,  5940 }, { "cast iron service",  8000,  8380,  7940 },
	{ "cast iron service", 10000, 10500,  9940 }, { "cast iron service", 12000, 12500, 11940 },
	{ "cast iron extra heavy",  2000,  2380,  2000 },
	{ "cast iron extra heavy",  3000,  3500,  3000 },
	{ "cast iron extra heavy",  4000,  4500,  4000 },
	{ "cast iron extra heavy",  5000,  5500,  5000 },
	{ "cast iron extra heavy",  6000,  6500,  6000 },
	{ "cast iron extra heavy",  8000,  8620,  8000 },
	{ "cast iron extra heavy", 10000, 10750, 10010 },
	{ "cast iron extra heavy", 12000, 12750, 12010 },
	{ "no-hub",  1500,  1900,  1580 }, { "no-hub",  2000,  2350,  2030 },
	{ "no-hub",  3000,  3350,  3030 }, { "no-hub",  4000,  4380,  4000 },
	{ "no-hub",  5000,  5300,  4920 }, { "no-hub",  6000,  6300,  5920 },
	{ "no-hub",  8000,  8380,  7920 }, { "no-hub", 10000, 10560, 10000 },
	{ "no-hub", 12000, 12500, 11940 },
};
/* clang-format on */

static const struct rb_pipe_size *size_of(const char *kind, int64_t size)
{
	size_t kinds;
	const struct rb_pipe_kind *all = rb_pipe_kinds(&kinds);

	for (size_t k = 0; k < kinds; k++)
		for (size_t i = 0; !strcmp(all[k].name, kind) && i < all[k].sizes; i++)
			if (all[k].size[i].size.nm == size * MIL)
				return &all[k].size[i];
	return NULL;
}

static void pipes_are_as_printed(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof printed / sizeof *printed; i++) {
		const struct rb_pipe_size *s = size_of(printed[i].kind, printed[i].size);

		if (s && s->outside.nm == printed[i].outside * MIL &&
		    s->outside.nm - 2 * s->wall.nm == printed[i].inside * MIL)
			continue;
		print_error("%s, %lld\n", printed[i].kind, (long long)printed[i].size);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void no_other_is_in_the_table(void **state)
{
	size_t kinds, sizes = 0;
	const struct rb_pipe_kind *all = rb_pipe_kinds(&kinds);

	(void)state;
	for (size_t k = 0; k < kinds; k++)
		sizes += all[k].sizes;
	assert_int_equal(sizes, sizeof printed / sizeof *printed);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(pipes_are_as_printed),
		cmocka_unit_test(no_other_is_in_the_table),
	};

	return cmocka_run_group_tests_name("pipe dimensions", tests, NULL, NULL);
}
