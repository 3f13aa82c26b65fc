/* SPDX-License-Identifier: MIT */
/* test_practice.c - problems stay real, and are the same for the same seed. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "level/practice.h"

#define SEEDS    400
#define LONGEST  (13 * RB_FOOT)
#define INVERTED 1u
#define PLANTED  2u

static const enum rb_unit units[] = { RB_FEET, RB_INCHES, RB_FEET_INCHES, RB_METRES,
				      RB_MILLIMETRES };

static struct rb_practice_options options_of(enum rb_practice_kind kind, uint64_t seed,
					     unsigned flags)
{
	return (struct rb_practice_options){ .kind = kind,
					     .seed = seed,
					     .unit = units[seed % 5],
					     .fraction = 8 << seed % 3,
					     .inverted = (flags & INVERTED) != 0,
					     .plant = (flags & PLANTED) != 0 };
}

static bool is_on_rod(rb_length reading)
{
	return !rb_length_given(reading) || (reading.nm > 0 && reading.nm <= LONGEST);
}

/* Is every number what comes out of those before it?  Returns the rows that are not. */
static uint32_t wrong_rows(const struct rb_practice_book *book)
{
	rb_length height = rb_length_none();
	uint32_t wrong = 0;

	for (uint32_t i = 0; i < book->rows; i++) {
		const struct rb_practice_row *row = &book->row[i];
		rb_length sight = rb_length_given(row->foresight) ? row->foresight
								  : row->intermediate;
		rb_length from =
			rb_length_given(row->known) ? row->known : row->elevation;
		bool off = rb_length_given(sight) &&
			   row->elevation.nm != height.nm - sight.nm;

		if (rb_length_given(row->backsight)) {
			off |= row->height.nm != from.nm + row->backsight.nm;
			height = row->height;
		}
		wrong += off;
	}
	return wrong;
}

static void loops_are_real(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	int wrong = 0;

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS; seed++) {
		const struct rb_practice_options o =
			options_of(RB_PRACTICE_LOOP, seed, 0);
		const struct rb_practice_book *book = rb_practice(arena, &o, 1)->book;
		rb_length last = book->row[book->rows - 1].elevation;
		bool real = wrong_rows(book) == 0 &&
			    last.nm - book->row[0].known.nm == book->misclosure.nm &&
			    rb_length_absolute(book->misclosure).nm <= book->tolerance.nm;

		for (uint32_t i = 0; i < book->rows; i++)
			real &= is_on_rod(book->row[i].backsight) &&
				is_on_rod(book->row[i].intermediate) &&
				is_on_rod(book->row[i].foresight) &&
				(!i ||
				 book->row[i].backsight.nm != book->row[i].foresight.nm ||
				 !rb_length_given(book->row[i].backsight));
		if (real)
			continue;
		print_error("seed %llu\n", (unsigned long long)seed);
		wrong++;
	}
	rb_arena_free(arena);
	assert_int_equal(wrong, 0);
}

static void inverted_where_asked(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS; seed++) {
		const struct rb_practice_options o =
			options_of(RB_PRACTICE_LOOP, seed, INVERTED);
		const struct rb_practice_book *book = rb_practice(arena, &o, 1)->book;
		int inverted = 0;

		for (uint32_t i = 0; i < book->rows; i++)
			inverted += rb_length_given(book->row[i].intermediate) &&
				    book->row[i].intermediate.nm < 0;
		assert_int_equal(inverted, 1);
		assert_int_equal(wrong_rows(book), 0);
	}
	rb_arena_free(arena);
}

static void as_many_setups_as_asked(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);

	(void)state;
	for (int setups = 2; setups <= 99; setups += 97) {
		struct rb_practice_options o = options_of(RB_PRACTICE_LOOP, 3, 0);
		const struct rb_practice_book *book;
		int backsights = 0;

		o.setups = setups;
		book = rb_practice(arena, &o, 1)->book;
		for (uint32_t i = 0; i < book->rows; i++)
			backsights += rb_length_given(book->row[i].backsight);
		assert_int_equal(backsights, setups);
	}
	rb_arena_free(arena);
}

/* One slip, one row that does not follow; every kind of slip comes up. */
static void one_slip(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	int seen[RB_HAND_CAUSES] = { 0 }, kinds = 0, wrong = 0;

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS; seed++) {
		const struct rb_practice_options o =
			options_of(RB_PRACTICE_LOOP, seed, PLANTED);
		const struct rb_practice_book *book = rb_practice(arena, &o, 1)->book;

		seen[book->slip]++;
		if (book->slip != RB_CAUSE_UNKNOWN && wrong_rows(book) == 1)
			continue;
		print_error("seed %llu: slip %d, %u rows are wrong\n",
			    (unsigned long long)seed, book->slip, wrong_rows(book));
		wrong++;
	}
	for (int i = 0; i < RB_HAND_CAUSES; i++)
		kinds += seen[i] > 0;
	rb_arena_free(arena);
	assert_int_equal(wrong, 0);
	assert_int_equal(kinds, 8);
}

static bool same(const struct rb_problem *a, const struct rb_problem *b)
{
	if (a->task != b->task || a->a.nm != b->a.nm || a->b.nm != b->b.nm ||
	    a->run.nm != b->run.nm || a->factor != b->factor || !a->book != !b->book)
		return false;
	if (!a->book)
		return true;
	return a->book->rows == b->book->rows && a->book->slip == b->book->slip &&
	       a->book->slip_row == b->book->slip_row &&
	       a->book->row[1].elevation.nm == b->book->row[1].elevation.nm;
}

static void same_seed_same_problem(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);

	(void)state;
	for (int kind = RB_PRACTICE_CONVERT; kind <= RB_PRACTICE_FALL; kind++) {
		int different = 0;

		for (uint64_t seed = 0; seed < 50; seed++) {
			const struct rb_practice_options o =
				options_of((enum rb_practice_kind)kind, seed, PLANTED);
			const struct rb_problem *third = rb_practice(arena, &o, 3);

			assert_true(same(third, rb_practice(arena, &o, 3)));
			different += !same(third, rb_practice(arena, &o, 4));
		}
		assert_in_range(different, 45, 50);
	}
	rb_arena_free(arena);
}

/* What stood on a sheet once must stand on it for ever. */
static void a_sheet_of_old(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_practice_options o = {
		.kind = RB_PRACTICE_LOOP, .seed = 7, .unit = RB_FEET, .fraction = 16
	};
	const struct rb_practice_book *book = rb_practice(arena, &o, 1)->book;

	(void)state;
	assert_int_equal(book->rows, 11);
	assert_int_equal(book->row[0].known.nm, 9961 * (RB_FOOT / 100));
	assert_int_equal(book->row[0].backsight.nm, 482 * (RB_FOOT / 100));
	assert_int_equal(book->row[10].foresight.nm, 283 * (RB_FOOT / 100));
	rb_arena_free(arena);
}

static void falls_are_real(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	int seen[RB_TASKS] = { 0 };

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS; seed++) {
		const struct rb_practice_options o =
			options_of(RB_PRACTICE_FALL, seed, 0);
		const struct rb_problem *p = rb_practice(arena, &o, 1);

		seen[p->task]++;
		assert_true(rb_slope_given(p->slope) && p->run.nm > 0);
		if (p->task == RB_TASK_SLOPE)
			assert_true(p->a.nm >= p->b.nm);
		if (p->task == RB_TASK_GRADE_ROD)
			assert_true(is_on_rod(rb_length_sub(p->a, p->b)));
		if (p->task == RB_TASK_DIG)
			assert_true(is_on_rod(p->a) && is_on_rod(p->b));
	}
	for (int task = RB_TASK_FALL; task <= RB_TASK_DIG; task++)
		assert_true(seen[task] > 0);
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(loops_are_real),
		cmocka_unit_test(inverted_where_asked),
		cmocka_unit_test(as_many_setups_as_asked),
		cmocka_unit_test(one_slip),
		cmocka_unit_test(same_seed_same_problem),
		cmocka_unit_test(a_sheet_of_old),
		cmocka_unit_test(falls_are_real),
	};

	return cmocka_run_group_tests_name("practice", tests, NULL, NULL);
}
