/* SPDX-License-Identifier: MIT */
/* test_fraction.c - fractions that a tape has, and those that a sheet rounded. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "measure/fraction.h"

/* clang-format off */
static const struct length_case {
	int64_t numerator, denominator, unit_nm;
	enum rb_refusal refusal;
	int64_t nm;
} lengths[] = {
	{ 0,  1,  RB_INCH, RB_READ, 0 },
	{ 1,  2,  RB_INCH, RB_READ, RB_INCH / 2 },
	{ 1,  2,  RB_FOOT, RB_READ, RB_FOOT / 2 },
	{ 255, 256, RB_FOOT, RB_READ, 255 * (RB_FOOT / 256) },
	{ 63, 64, RB_INCH, RB_READ, 63 * RB_SIXTYFOURTH },
	{ 1,  10, RB_INCH, RB_READ, RB_INCH / 10 },
	{ 1,  5,  RB_INCH, RB_READ, RB_INCH / 5 },
	{ 1,  8,  RB_INCH, RB_READ, RB_INCH / 8 },
	{ 1,  0,  RB_INCH, RB_REFUSE_ZERO, 0 },
	{ 0,  0,  RB_INCH, RB_REFUSE_ZERO, 0 },
	{ 1,  1,  RB_INCH, RB_REFUSE_FRACTION, RB_INCH },
	{ 9,  8,  RB_INCH, RB_REFUSE_FRACTION, 9 * RB_INCH / 8 },
	{ 9,  7,  RB_INCH, RB_REFUSE_FRACTION, 0 },
	{ 6,  3,  RB_INCH, RB_REFUSE_FRACTION, 2 * RB_INCH },
	{ INT64_MAX, 1, RB_INCH, RB_REFUSE_FRACTION, 0 }, /* beyond all lengths */
	{ RB_LENGTH_MAX / RB_METRE, 1, RB_METRE, RB_REFUSE_FRACTION, RB_LENGTH_MAX },
	{ RB_LENGTH_MAX / RB_METRE + 1, 1, RB_METRE, RB_REFUSE_FRACTION, 0 },
	{ 1,  3,  RB_FOOT, RB_REFUSE_ROUNDED, RB_FOOT / 3 },
	{ 1,  6,  RB_FOOT, RB_REFUSE_ROUNDED, RB_FOOT / 6 },
	{ 1,  7,  RB_INCH, RB_REFUSE_ROUNDED, 0 },
	{ 1,  9,  RB_INCH, RB_REFUSE_ROUNDED, 0 },
	{ 1,  11, RB_INCH, RB_REFUSE_ROUNDED, 0 },
	{ 1,  12, RB_INCH, RB_REFUSE_ROUNDED, 0 },
	{ 1,  4096, RB_INCH, RB_REFUSE_FINE_MARK, 0 },
	{ 3,  1024, RB_INCH, RB_REFUSE_FINE_MARK, 0 },
};

static const struct shown_case {
	int64_t numerator, denominator;
	int room, count;
	int64_t sixtyfourths[4];
} shown[] = {
	{ 1, 3, 3, 2, { 20, 22 } },         /* 5/16 and 11/32 */
	{ 1, 3, 1, 1, { 20 } },
	{ 1, 3, 0, 0, { 0 } },
	{ 2, 3, 3, 2, { 44, 42 } },
	{ 1, 6, 3, 1, { 10 } },             /* 5/32; 3/16 is nearer to 1/5 */
	{ 5, 6, 3, 1, { 54 } },
	{ 1, 7, 3, 1, { 9 } },              /* 9/64, as nothing coarser is */
	{ 6, 7, 3, 1, { 55 } },
	{ 1, 9, 3, 2, { 4, 6 } },           /* 1/16: 1/9 is the nearest with one figure */
	{ 2, 9, 3, 1, { 14 } },
	{ 4, 9, 3, 2, { 28, 30 } },
	{ 3, 7, 3, 1, { 27 } },
	{ 20, 69, 3, 1, { 20 } },           /* none: the nearest 16th */
	{ 20, 69, 1, 1, { 20 } },
	{ 1, 100, 3, 1, { 0 } },
	{ 3, 100, 3, 1, { 0 } },
	{ 4, 100, 3, 1, { 4 } },
};
/* clang-format on */

static void lengths_of_fractions(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) {
		const struct length_case *c = &lengths[i];
		int64_t nm = -1;
		enum rb_refusal refusal = rb_fraction_length(
			(struct rb_fraction){ c->numerator, c->denominator }, c->unit_nm,
			&nm);

		if (refusal == c->refusal && nm == c->nm)
			continue;
		print_error("%lld/%lld: refusal %d, %lld nm\n", (long long)c->numerator,
			    (long long)c->denominator, (int)refusal, (long long)nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void a_tape_is_parted_in_halves(void **state)
{
	int64_t known = 2;

	(void)state;
	for (int64_t denominator = 0; denominator <= 200; denominator++) {
		bool on_tape = denominator == known && known <= 64;

		known *= denominator == known ? 2 : 1;
		if (rb_fraction_on_tape(denominator) != on_tape)
			print_error("1/%lld\n", (long long)denominator);
		assert_int_equal(rb_fraction_on_tape(denominator), on_tape);
	}
}

static void fractions_are_reduced(void **state)
{
	(void)state;
	assert_int_equal(rb_fraction_reduced((struct rb_fraction){ 8, 16 }), 2);
	assert_int_equal(rb_fraction_reduced((struct rb_fraction){ 5, 16 }), 16);
	assert_int_equal(rb_fraction_reduced((struct rb_fraction){ 6, 4 }), 2);
	assert_int_equal(rb_fraction_reduced((struct rb_fraction){ 0, 16 }), 1);
	assert_int_equal(rb_fraction_reduced((struct rb_fraction){ 10, 15 }), 3);
}

static void what_a_sheet_shows_so(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof shown / sizeof *shown; i++) {
		const struct shown_case *c = &shown[i];
		rb_length got[4] = { { 0 } };
		int count = rb_fraction_shown_as(
			(struct rb_fraction){ c->numerator, c->denominator }, got,
			c->room);
		bool right = count == c->count;

		for (int k = 0; k < c->count && right; k++)
			right = got[k].nm == c->sixtyfourths[k] * RB_SIXTYFOURTH;
		if (right)
			continue;
		print_error("%lld/%lld: %d, %lld %lld %lld\n", (long long)c->numerator,
			    (long long)c->denominator, count,
			    (long long)(got[0].nm / RB_SIXTYFOURTH),
			    (long long)(got[1].nm / RB_SIXTYFOURTH),
			    (long long)(got[2].nm / RB_SIXTYFOURTH));
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(lengths_of_fractions),
		cmocka_unit_test(a_tape_is_parted_in_halves),
		cmocka_unit_test(fractions_are_reduced),
		cmocka_unit_test(what_a_sheet_shows_so),
	};

	return cmocka_run_group_tests_name("fraction", tests, NULL, NULL);
}
