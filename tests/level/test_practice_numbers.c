/* SPDX-License-Identifier: MIT */
/*
 * test_practice_numbers.c - the numbers of practice problems: within what is real, and
 * for one seed the same for ever, so that a sheet handed out today can be marked next
 * year.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "level/practice.h"

#define COUNT(table) (sizeof(table) / sizeof *(table))
#define SEEDS        1200
#define FT(n)        ((n)*RB_FOOT)
#define NOTHING      0, 0

static const enum rb_unit units[] = { RB_FEET, RB_INCHES, RB_FEET_INCHES, RB_METRES,
				      RB_MILLIMETRES };

static struct rb_practice_options options_of(enum rb_practice_kind kind, uint64_t seed)
{
	return (struct rb_practice_options){ .kind = kind,
					     .seed = seed,
					     .unit = units[seed % COUNT(units)],
					     .fraction = 8 << seed % 4 };
}

/* -- what is real: rods to 13 ft, elevations about 100, pipes of house drains -- */

/* clang-format off */
static const struct range {
	enum rb_practice_kind kind;
	enum rb_task task;
	int64_t a_from, a_to, b_from, b_to; /* b: above a, where it belongs to a level */
	bool b_from_a;
	int64_t factor_from, factor_to;
} ranges[] = {
	{ RB_PRACTICE_CONVERT, RB_TASK_TO_INCHES,   0, FT(13), NOTHING, false, 0, 0 },
	{ RB_PRACTICE_CONVERT, RB_TASK_TO_FEET,     0, FT(13), NOTHING, false, 0, 0 },
	{ RB_PRACTICE_CONVERT, RB_TASK_FROM_METRES, 0, FT(13), NOTHING, false, 0, 0 },
	{ RB_PRACTICE_CONVERT, RB_TASK_TO_METRES,   0, FT(13), NOTHING, false, 0, 0 },
	{ RB_PRACTICE_CONVERT, RB_TASK_ADD,         FT(90), FT(110), 0, FT(13), false, 0, 0 },
	{ RB_PRACTICE_CONVERT, RB_TASK_SUBTRACT,    FT(95), FT(110), 0, FT(13), false, 0, 0 },
	{ RB_PRACTICE_CONVERT, RB_TASK_DIVIDE,      FT(4), FT(30), NOTHING, false, 2, 8 },
	{ RB_PRACTICE_FALL,    RB_TASK_FALL,         FT(92), FT(106), NOTHING, false, 0, 0 },
	{ RB_PRACTICE_FALL,    RB_TASK_LOWER_INVERT, FT(92), FT(106), NOTHING, false, 0, 0 },
	{ RB_PRACTICE_FALL,    RB_TASK_GRADE_ROD,    FT(92), FT(106), FT(-12), FT(-1), true, 0, 0 },
	{ RB_PRACTICE_FALL,    RB_TASK_DIG,          FT(3), FT(12), RB_INCH / 8 * -25,
	  RB_FOOT / 4 + RB_INCH / 8, true, 0, 0 },
};
/* clang-format on */

static bool is_within(int64_t value, int64_t from, int64_t to)
{
	return (from == 0 && to == 0) ? value == 0 : value > from && value <= to;
}

static bool is_real(const struct rb_problem *p, const struct range *r)
{
	int64_t b = p->b.nm - (r->b_from_a ? p->a.nm : 0);

	return is_within(p->a.nm, r->a_from, r->a_to) &&
	       (r->b_from_a ? b >= r->b_from && b <= r->b_to
			    : is_within(b, r->b_from, r->b_to)) &&
	       p->factor >= r->factor_from && p->factor <= r->factor_to;
}

static void numbers_are_real(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(ranges); i++) {
		const struct range *r = &ranges[i];
		struct rb_arena *arena = rb_arena_new(NULL);
		int64_t least = INT64_MAX, most = 0;

		for (uint64_t seed = 0; seed < SEEDS; seed++) {
			const struct rb_practice_options o = options_of(r->kind, seed);
			const struct rb_problem *p = rb_practice(arena, &o, 1);

			if (p->task != r->task)
				continue;
			least = p->a.nm < least ? p->a.nm : least;
			most = p->a.nm > most ? p->a.nm : most;
			if (is_real(p, r))
				continue;
			print_error("row %zu, seed %llu: %lld nm, %lld nm, %lld\n", i,
				    (unsigned long long)seed, (long long)p->a.nm,
				    (long long)p->b.nm, (long long)p->factor);
			wrong++;
		}
		/* the whole range comes up */
		assert_true(least - r->a_from < (r->a_to - r->a_from) / 8);
		assert_true(r->a_to - most < (r->a_to - r->a_from) / 8);
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* Drains are asked for at parts of an inch a foot, or at one in so many, and a slope that
 * is to be worked out is a little steeper than such a one. */
static void slopes_are_those_of_drains(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS; seed++) {
		const struct rb_practice_options o = options_of(RB_PRACTICE_FALL, seed);
		const struct rb_problem *p = rb_practice(arena, &o, 1);
		bool metric = o.unit == RB_METRES || o.unit == RB_MILLIMETRES;
		int64_t least = metric ? 3 * RB_METRE : FT(8);
		int64_t most = metric ? 40 * RB_METRE : FT(120);
		rb_length fall = rb_slope_over(p->slope, p->run);

		assert_in_range(p->run.nm, least, most);
		/* 1/16 in a foot is 1 in 192, 1/2 in is 1 in 24 */
		assert_true(fall.nm * 200 >= p->run.nm && fall.nm * 24 <= p->run.nm);
		if (p->task != RB_TASK_SLOPE)
			continue;
		/* the round fall less a step at most, and up to two steps more */
		assert_true(p->a.nm - p->b.nm > fall.nm - RB_INCH / 8);
		assert_true(p->a.nm - p->b.nm <= fall.nm + 2 * (RB_INCH / 8));
	}
	rb_arena_free(arena);
}

/* A loop around the job: elevations about 100 ft, sights of 1 to 6 ft over the higher of
 * two points that are at most 3 ft from the benchmark; a foot is in whole millimetres a
 * little less. */
static void loops_are_flat(void **state)
{
	static const int64_t allowed[] = { [RB_FEET] = RB_FOOT / 50,
					   [RB_INCHES] = RB_INCH / 4,
					   [RB_FEET_INCHES] = RB_INCH / 4,
					   [RB_METRES] = 5 * RB_MILLIMETRE,
					   [RB_MILLIMETRES] = 5 * RB_MILLIMETRE };
	const int64_t foot = FT(1) - RB_MILLIMETRE;

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS; seed++) {
		struct rb_practice_options o = options_of(RB_PRACTICE_LOOP, seed);
		struct rb_arena *arena = rb_arena_new(NULL);
		const struct rb_practice_book *book = rb_practice(arena, &o, 1)->book;
		int64_t known = book->row[0].known.nm, setups = 0;

		assert_int_equal(book->tolerance.nm, allowed[o.unit]);
		assert_int_equal(book->slip, RB_CAUSE_UNKNOWN);
		assert_in_range(known, FT(95), FT(105));
		for (uint32_t i = 0; i < book->rows; i++) {
			const struct rb_practice_row *row = &book->row[i];

			setups += rb_length_given(row->backsight);
			if (rb_length_given(row->backsight))
				assert_in_range(row->backsight.nm, foot, FT(6 + 6));
			if (rb_length_given(row->foresight)) {
				assert_in_range(row->elevation.nm, known - FT(3),
						known + FT(3));
				assert_in_range(row->foresight.nm, foot, FT(6 + 6));
			}
			if (rb_length_given(row->intermediate))
				assert_in_range(row->intermediate.nm, foot, FT(12));
		}
		assert_in_range(setups, 2, 5);
		rb_arena_free(arena);
	}
}

/* -- the same for ever -- */

/* Every number of a problem, one after another, in one (FNV-1a). */
static void mix(uint64_t *sum, int64_t number)
{
	for (int i = 0; i < 8; i++)
		*sum = (*sum ^ ((uint64_t)number >> 8 * i & 0xff)) *
		       UINT64_C(0x100000001b3);
}

static void mix_problem(uint64_t *sum, const struct rb_problem *p)
{
	mix(sum, p->task);
	mix(sum, p->a.nm);
	mix(sum, p->b.nm);
	mix(sum, p->run.nm);
	mix(sum, p->factor);
	for (uint32_t i = 0; p->book && i < p->book->rows; i++) {
		const struct rb_practice_row *row = &p->book->row[i];

		for (const char *c = row->point; *c; c++)
			mix(sum, *c);
		for (const char *c = row->remark; *c; c++)
			mix(sum, *c);
		mix(sum, row->backsight.nm);
		mix(sum, row->intermediate.nm);
		mix(sum, row->foresight.nm);
		mix(sum, row->height.nm);
		mix(sum, row->elevation.nm);
	}
}

/* Three sheets for each unit.  A sum that changes says that sheets handed out before can
 * not be marked any more: then that is told to those who use them, beside the new sum. */
static const struct {
	enum rb_practice_kind kind;
	bool inverted, plant;
	uint64_t sum;
} sheets[] = {
	{ RB_PRACTICE_CONVERT, false, false, UINT64_C(0x76f27af4fd8a8c29) },
	{ RB_PRACTICE_FALL, false, false, UINT64_C(0x41505b41fe45871c) },
	{ RB_PRACTICE_LOOP, false, false, UINT64_C(0xb05e2b5880a72f55) },
	{ RB_PRACTICE_LOOP, true, false, UINT64_C(0xd906f93dbbc7c9eb) },
	{ RB_PRACTICE_LOOP, false, true, UINT64_C(0x106e9cfa3cae45e2) },
	{ RB_PRACTICE_LOOP, true, true, UINT64_C(0xcbd553381d6ba713) },
};

static void sheets_of_old_stay(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(sheets); i++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		uint64_t sum = UINT64_C(0xcbf29ce484222325);

		for (uint64_t seed = 0; seed < SEEDS; seed++) {
			struct rb_practice_options o = options_of(sheets[i].kind, seed);

			o.inverted = sheets[i].inverted;
			o.plant = sheets[i].plant;
			mix_problem(&sum, rb_practice(arena, &o, 1 + (int)(seed % 3)));
		}
		rb_arena_free(arena);
		if (sum == sheets[i].sum)
			continue;
		print_error("row %zu: 0x%016llx\n", i, (unsigned long long)sum);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(numbers_are_real),
		cmocka_unit_test(slopes_are_those_of_drains),
		cmocka_unit_test(loops_are_flat),
		cmocka_unit_test(sheets_of_old_stay),
	};

	return cmocka_run_group_tests_name("numbers of practice", tests, NULL, NULL);
}
