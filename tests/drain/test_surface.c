/* SPDX-License-Identifier: MIT */
/* test_surface.c - how far a surface lies over the invert, and what is wanted to tell. */
#include "job.h"

#include "drain/surface.h"

#define SIZE "pipe (a size and a kind, such as 4 in sch 40)"

/* clang-format off */
/* A 4 in pipe: 4 1/2 in outside, walls of 1/4 in; in sixteenths of an inch, 0: not given. */
static const struct {
	int outside, wall, bedding;
	const char *top, *trench; /* what is wanted; NULL: nothing */
	int above, below;         /* the invert, where nothing is wanted */
} cases[] = {
	{ 72, 4, 64, NULL, NULL, 68, 68 },
	{ 72, 4, 0,  NULL, "bedding", 68, 0 },
	{ 72, 0, 64, "pipe wall", "pipe wall", 0, 0 },
	{ 72, 0, 0,  "pipe wall", "pipe wall and bedding", 0, 0 },
	{ 0,  4, 64, "pipe outside", NULL, 0, 68 },
	{ 0,  4, 0,  "pipe outside", "bedding", 0, 0 },
	{ 0,  0, 64, SIZE, SIZE, 0, 0 },
	{ 0,  0, 0,  SIZE, SIZE " and bedding", 0, 0 },
};
/* clang-format on */

static rb_length sixteenths(int n)
{
	return n ? rb_length_of(n * (RB_INCH / 16)) : rb_length_none();
}

static bool wants(const struct rb_plan *plan, enum rb_surface surface, const char *wanted,
		  int above)
{
	const char *key = rb_surface_key(plan, surface);
	rb_length got = rb_surface_above(plan, surface);

	if (key && wanted ? strcmp(key, wanted) != 0 : key != wanted) {
		print_error("%s wanted for the %s\n", key ? key : "nothing",
			    rb_surface_name(surface));
		return false;
	}
	return wanted || got.nm == above * (RB_INCH / 16);
}

static void what_is_wanted_is_named(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct rb_plan plan = {
			.pipe = { .size = rb_length_none(),
				  .outside = sixteenths(cases[i].outside),
				  .wall = sixteenths(cases[i].wall) },
			.bedding = sixteenths(cases[i].bedding)
		};

		if (wants(&plan, RB_TOP_OF_PIPE, cases[i].top, cases[i].above) &&
		    wants(&plan, RB_TRENCH_BOTTOM, cases[i].trench, -cases[i].below) &&
		    wants(&plan, RB_INVERT, NULL, 0))
			continue;
		print_error("row %zu\n", i);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* Below the invert lie the wall and the bedding, whichever is known. */
static void the_trench_is_as_deep_as_is_known(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct rb_plan plan = { .pipe = { .wall = sixteenths(
								cases[i].wall) },
					      .bedding = sixteenths(cases[i].bedding) };
		int least = cases[i].wall + cases[i].bedding;

		if (rb_trench_at_least(&plan).nm == least * (RB_INCH / 16))
			continue;
		print_error("row %zu\n", i);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(what_is_wanted_is_named),
		cmocka_unit_test(the_trench_is_as_deep_as_is_known),
	};

	return cmocka_run_group_tests_name("surface", tests, NULL, NULL);
}
