/* SPDX-License-Identifier: MIT */
/* Ground between shots: on a shot, on the straight line between two, unknown beyond. */
#include "job.h"

#include "drain/ground.h"

/* The ground there, rounded; none where it is unknown. */
static rb_length ground_at(const struct rb_ground *ground, int64_t at, bool *is_shot)
{
	struct rb_exact elevation;

	if (!rb_ground_at(ground, rb_length_of(at), is_shot, &elevation))
		return rb_length_none();
	return rb_exact_round(elevation);
}

static void between_and_beyond(void **state)
{
	/* Twice at 20: the one from the earlier row counts. */
	struct rb_ground_point points[] = {
		{ "late", { 20 }, { 999 }, 7 },  { "end", { 50 }, { 460 }, 3 },
		{ "begin", { 10 }, { 100 }, 4 }, { "early", { 20 }, { 200 }, 2 },
		{ "later", { 20 }, { 998 }, 9 },
	};
	struct rb_ground ground = { points, sizeof points / sizeof *points };
	/* clang-format off */
	static const struct { int64_t at, elevation; bool is_shot; } cases[] = {
		{ 9,  RB_NOT_GIVEN_NM, false }, { 10, 100, true },  { 15, 150, false },
		{ 13, 130, false },             { 20, 200, true },  { 50, 460, true },
		{ 35, 729, false },             { 51, RB_NOT_GIVEN_NM, false },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	rb_ground_sort(&ground);
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		bool is_shot;
		rb_length got = ground_at(&ground, cases[i].at, &is_shot);

		if (got.nm == cases[i].elevation && is_shot == cases[i].is_shot)
			continue;
		print_error("at %lld: %lld, %d\n", (long long)cases[i].at,
			    (long long)got.nm, is_shot);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void in_order_of_chainage_then_of_rows(void **state)
{
	struct rb_ground_point points[] = {
		{ "", { 3 }, { 0 }, 5 }, { "", { 1 }, { 0 }, 8 }, { "", { 3 }, { 0 }, 1 },
		{ "", { 2 }, { 0 }, 2 }, { "", { 3 }, { 0 }, 9 }, { "", { 3 }, { 0 }, 4 },
		{ "", { 1 }, { 0 }, 3 }, { "", { 3 }, { 0 }, 2 },
	};
	struct rb_ground ground = { points, sizeof points / sizeof *points };

	(void)state;
	rb_ground_sort(&ground);
	for (uint32_t i = 1; i < ground.points; i++)
		assert_true(points[i - 1].chainage.nm < points[i].chainage.nm ||
			    (points[i - 1].chainage.nm == points[i].chainage.nm &&
			     points[i - 1].row < points[i].row));
}

static void no_shots_no_ground(void **state)
{
	struct rb_ground ground = { NULL, 0 };
	bool is_shot = true;

	(void)state;
	rb_ground_sort(&ground);
	assert_false(rb_length_given(ground_at(&ground, 0, &is_shot)));
	assert_false(is_shot);
}

/* Every length of a row of shots, and every place of it. */
static void any_number_of_shots(void **state)
{
	struct rb_ground_point points[9];
	int wrong = 0;

	(void)state;
	for (uint32_t count = 1; count <= 9; count++) {
		struct rb_ground ground = { points, count };

		for (uint32_t i = 0; i < count; i++)
			points[i] = (struct rb_ground_point){
				"", { 10 * (int64_t)i }, { 70 * (int64_t)i }, i
			};
		for (int64_t at = -3; at < 100; at++) {
			bool is_shot, known = at >= 0 && at <= 10 * ((int64_t)count - 1);
			rb_length got = ground_at(&ground, at, &is_shot);

			wrong += known ? got.nm != 7 * at || is_shot != (at % 10 == 0)
				       : rb_length_given(got) || is_shot;
		}
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(between_and_beyond),
		cmocka_unit_test(in_order_of_chainage_then_of_rows),
		cmocka_unit_test(no_shots_no_ground),
		cmocka_unit_test(any_number_of_shots),
	};

	return cmocka_run_group_tests_name("ground", tests, NULL, NULL);
}
