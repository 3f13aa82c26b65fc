/* SPDX-License-Identifier: MIT */
/* test_practice_slip.c - the slip that is planted is the one that the key names. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "level/practice.h"

#define COUNT(table) (sizeof(table) / sizeof *(table))
#define SEEDS        3000

static const enum rb_unit units[] = { RB_FEET, RB_INCHES, RB_FEET_INCHES, RB_METRES,
				      RB_MILLIMETRES };

/* The cell of the slip, from the readings and the values before it. */
struct around {
	const struct rb_practice_book *book;
	rb_length base, reading;
	rb_length height_before; /* of the setup before the one that saw it */
	rb_length last_side;     /* seen from the setup that ends in this row */
	rb_length above;         /* the elevation in the row before */
	rb_length wrong, right;
	int64_t step;
	bool adds;
};

static rb_length sight_of(const struct rb_practice_row *row)
{
	return rb_length_given(row->foresight) ? row->foresight : row->intermediate;
}

static struct around around_of(const struct rb_practice_book *book, int64_t step)
{
	const struct rb_practice_row *row = &book->row[book->slip_row];
	struct around a = { .book = book,
			    .base = rb_length_none(),
			    .height_before = rb_length_none(),
			    .last_side = rb_length_none(),
			    .above = rb_length_none(),
			    .right = book->right,
			    .step = step,
			    .adds = book->slip_column == RB_HEIGHT_OF_INSTRUMENT };

	for (uint32_t i = 0; i < book->slip_row; i++) {
		const struct rb_practice_row *before = &book->row[i];

		a.above = before->elevation;
		if (rb_length_given(before->height)) {
			a.height_before = a.base;
			a.base = before->height;
			a.last_side = rb_length_none();
		} else {
			a.last_side = before->elevation;
		}
	}
	a.reading = sight_of(row);
	a.wrong = row->elevation;
	if (a.adds) {
		a.base = rb_length_given(row->known) ? row->known : row->elevation;
		a.reading = row->backsight;
		a.wrong = row->height;
	}
	return a;
}

static int64_t inches(rb_length a)
{
	return a.nm / RB_INCH % 12;
}

/* What the slip that is named gives, or none where nobody could have made it here. */
static rb_length given_by(enum rb_hand_cause slip, const struct around *a)
{
	int64_t count = a->right.nm / a->step;

	switch (slip) {
	case RB_CAUSE_ADDED:
		return a->adds ? rb_length_none() : rb_length_add(a->base, a->reading);
	case RB_CAUSE_SUBTRACTED:
		return a->adds ? rb_length_sub(a->base, a->reading) : rb_length_none();
	case RB_CAUSE_WRONG_HEIGHT:
		return rb_length_sub(a->height_before, a->reading);
	case RB_CAUSE_FROM_INTERMEDIATE:
		return rb_length_add(a->last_side, a->reading);
	case RB_CAUSE_COPIED:
		return a->above;
	case RB_CAUSE_FRACTION:
		return rb_length_of(a->right.nm / RB_INCH * RB_INCH);
	case RB_CAUSE_BASE_TEN: /* there must be twelve inches to carry, or to borrow */
		if (a->book->unit != RB_FEET_INCHES ||
		    (a->adds ? inches(a->base) + inches(a->reading) < 12
			     : inches(a->base) >= inches(a->reading)))
			return rb_length_none();
		return rb_length_of(a->right.nm + (a->adds ? 2 : -2) * RB_INCH);
	case RB_CAUSE_EXCHANGED: /* the last two digits */
		return rb_length_of(
			(count / 100 * 100 + count % 10 * 10 + count / 10 % 10) *
			a->step);
	default:
		return rb_length_none();
	}
}

static rb_length due(const struct around *a)
{
	return a->adds ? rb_length_add(a->base, a->reading)
		       : rb_length_sub(a->base, a->reading);
}

static void the_slip_is_the_one_named(void **state)
{
	int wrong = 0;

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS; seed++) {
		const struct rb_practice_options o = {
			.kind = RB_PRACTICE_LOOP,
			.seed = seed,
			.unit = units[seed % COUNT(units)],
			.fraction = 8 << seed % 4,
			.inverted = seed % 3 == 0,
			.plant = true,
		};
		struct rb_arena *arena = rb_arena_new(NULL);
		const struct rb_practice_book *book = rb_practice(arena, &o, 1)->book;
		int64_t step = o.unit == RB_FEET ? RB_FOOT / 100
			       : o.unit == RB_METRES || o.unit == RB_MILLIMETRES
				       ? RB_MILLIMETRE
				       : RB_INCH / o.fraction;
		struct around a = around_of(book, step);

		if (a.wrong.nm == a.right.nm || due(&a).nm != a.right.nm ||
		    given_by(book->slip, &a).nm != a.wrong.nm) {
			print_error("seed %llu, slip %d in row %u: %lld for %lld nm\n",
				    (unsigned long long)seed, book->slip, book->slip_row,
				    (long long)a.wrong.nm, (long long)a.right.nm);
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_slip_is_the_one_named),
	};

	return cmocka_run_group_tests_name("practice_slip", tests, NULL, NULL);
}
