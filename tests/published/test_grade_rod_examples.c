/* SPDX-License-Identifier: MIT */
/*
 * The grade rod rule: grade rod = height of instrument - finished grade; cut = grade rod
 * - ground rod.
 *
 * Source: NAVEDTRA 14069 Engineering Aid, ch. 14, figs 14-36 and 14-20 (read); a
 * contractor's licence exam item (data read, answer computed): required 107.85, benchmark
 * 106.35, backsight 4.65, reading 2.40.
 */
#include "../drain/job.h"

#include "drain/dig.h"

static void exam_item(void **state)
{
	struct rb_todays_hi today =
		rb_hi_of_benchmarks(FT(106, 3500), FT(4, 6500), NONE, NONE);
	rb_length grade_rod = rb_length_sub(today.hi, FT(107, 8500));
	struct rb_dig dig =
		rb_dig(rb_exact_of(grade_rod), FT(2, 4000), rb_dig_within(RB_FEET), true);

	(void)state;
	assert_int_equal(today.hi.nm, FT(111, 0).nm);
	assert_int_equal(grade_rod.nm, FT(3, 1500).nm);
	assert_int_equal(rb_length_sub(today.hi, FT(2, 4000)).nm, FT(108, 6000).nm);
	assert_int_equal(dig.difference.nm, 9 * RB_INCH);
	assert_int_equal(dig.answer, RB_DIG);
}

/* Fig. 14-20 uses 128.0 for 122.53 + 5.5 = 128.03; ours rounds the elevation alone, and
 * shows the same. */
static void rounded_once(void **state)
{
	struct rb_todays_hi today =
		rb_hi_of_benchmarks(FT(122, 5300), FT(5, 5000), NONE, NONE);
	char text[RB_LENGTH_TEXT];

	(void)state;
	assert_int_equal(today.hi.nm, FT(128, 300).nm);
	rb_length_format(text, rb_length_sub(today.hi, FT(1, 9000)),
			 (struct rb_style){ RB_FEET, 1, 0, false });
	assert_string_equal(text, "126.1");
	rb_length_format(text, rb_length_sub(today.hi, FT(3, 3000)),
			 (struct rb_style){ RB_FEET, 1, 0, false });
	assert_string_equal(text, "124.7");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(exam_item),
		cmocka_unit_test(rounded_once),
	};

	return cmocka_run_group_tests_name("grade rod examples", tests, NULL, NULL);
}
