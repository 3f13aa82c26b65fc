/* SPDX-License-Identifier: MIT */
/*
 * Grade stakes checked and replaced with a level.
 *
 * Source: NAVEDTRA 14081 Equipment Operator Basic, ch. 15 (read).
 *   stake C 7.5, rod on hub 5.0: 12.5 is wanted; 12.2 read: cut 0.3 more
 *   stake F 7.0, rod on hub 12.0: 5.0 is wanted; 5.5 read: fill 0.5
 *   missing stake: 365.01 + 11.56 = 376.57; 1.42 read; finish 378.75: F 3.60.  The
 * printed text subtracts 376.15, a misprint of 375.15, and still says 3.6 fig. 15-54:
 * 4+00 F 7.0 to 240.0, backsight 4.0, 4+50 reads 4.5, design 239.0: F 6.5 The negative
 * grade rods are computed.
 */
#include "../drain/job.h"

#include "drain/cut_sheet.h"
#include "drain/dig.h"

static void hub_and_cut(void **state)
{
	struct rb_dig dig =
		rb_dig(rb_exact_of(rb_dig_wanted_from_hub(FT(5, 0), FT(7, 5000))),
		       FT(12, 2000), rb_dig_within(RB_FEET), true);

	(void)state;
	assert_int_equal(dig.wanted.nm, FT(12, 5000).nm);
	assert_int_equal(dig.answer, RB_DIG);
	assert_int_equal(dig.difference.nm, FT(0, 3000).nm);
}

static void hub_and_fill(void **state)
{
	struct rb_dig dig =
		rb_dig(rb_exact_of(rb_dig_wanted_from_hub(FT(12, 0), FT(-7, 0))),
		       FT(5, 5000), rb_dig_within(RB_FEET), false);

	(void)state;
	assert_int_equal(dig.wanted.nm, FT(5, 0).nm);
	assert_int_equal(dig.answer, RB_FILL);
	assert_int_equal(dig.difference.nm, -FT(0, 5000).nm);
}

static void missing_stake(void **state)
{
	struct job job = job_of(
		"outlet,last\nslope,1%\nstation,invert\n1+00,378.75\n2+00,\n", NONE);
	struct rb_spots *ground = job_book(
		job.arena, &job.findings,
		"rod on,ground\nstation,known elevation,backsight,intermediate\nBM,365.01,11.56,\n"
		"1+00,,,1.42\n");
	struct rb_cut_sheet *sheet = rb_cut_sheet(job.arena, &job.findings, &job.findings,
						  job.inverts, ground, NONE);
	struct rb_todays_hi today =
		rb_hi_of_benchmarks(FT(365, 100), FT(11, 5600), NONE, NONE);
	struct rb_grade_rods *rods =
		rb_grade_rods(job.arena, &job.findings, job.inverts, today.hi);

	(void)state;
	assert_int_equal(today.hi.nm, FT(376, 5700).nm);
	assert_int_equal(sheet->cut[0].ground.nm, FT(375, 1500).nm);
	assert_int_not_equal(sheet->cut[0].ground.nm,
			     FT(376, 1500).nm); /* the misprint */
	assert_int_equal(sheet->cut[0].cut.nm, -FT(3, 6000).nm);
	assert_int_equal(rods->rod[0][RB_INVERT].reading.nm, -FT(2, 1800).nm);
	assert_int_equal(rods->rod[0][RB_INVERT].reach, RB_GRADE_ABOVE_SIGHT);
	job_end(&job);
}

static void grade_above_the_instrument(void **state)
{
	struct job job =
		job_of("outlet,last\nstation,invert\n4+00,240.0\n4+50,239.0\n", NONE);
	struct rb_spots *ground = job_book(
		job.arena, &job.findings,
		"station,known elevation,backsight,intermediate\n4+00,233.0,4.0,\n4+50,,,4.5\n");
	struct rb_cut_sheet *sheet = rb_cut_sheet(job.arena, &job.findings, &job.findings,
						  job.inverts, ground, NONE);
	struct rb_grade_rods *rods =
		rb_grade_rods(job.arena, &job.findings, job.inverts, FT(237, 0));

	(void)state;
	assert_non_null(sheet);
	assert_int_equal(sheet->cut[1].ground.nm, FT(232, 5000).nm);
	assert_int_equal(sheet->cut[1].cut.nm, -FT(6, 5000).nm);
	assert_int_equal(rods->rod[1][RB_INVERT].reading.nm, -FT(2, 0).nm);
	job_end(&job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hub_and_cut),
		cmocka_unit_test(hub_and_fill),
		cmocka_unit_test(missing_stake),
		cmocka_unit_test(grade_above_the_instrument),
	};

	return cmocka_run_group_tests_name("grade stakes", tests, NULL, NULL);
}
