/* SPDX-License-Identifier: MIT */
/*
 * test_schofield_breach_3.c - a line with two turning points.
 *
 * W. Schofield and M. Breach, Engineering Surveying, ch. 3, an exercise on collimation:
 * data from memory, results computed here.  With every backsight 100 m and every
 * foresight 30 m, a line of sight that rises by 6 minutes of arc puts the end 3 x 70 m x
 * tan 6' = 0.366 m out.
 */
#include "run_book.h"

#include "level/peg_effect.h"

/* clang-format off */
static const struct printed_row exercise[] = {
	{ "BM",  "112.28", "1.143", "", "", "113.423", NULL, "112.28", NULL },
	{ "2",   "", "", "1.765", "", NULL, "-0.622", "111.658", NULL },
	{ "3",   "", "", "2.566", "", NULL, "-0.801", "110.857", NULL },
	{ "TP1", "", "1.390", "", "3.819", "110.994", "-1.253", "109.604", NULL },
	{ "5",   "", "", "2.262", "", NULL, "-0.872", "108.732", NULL },
	{ "6",   "", "", "0.664", "", NULL, "+1.598", "110.330", NULL },
	{ "TP2", "", "3.722", "", "0.433", "114.283", "+0.231", "110.561", NULL },
	{ "8",   "", "", "2.886", "", NULL, "+0.836", "111.397", NULL },
	{ "9",   "", "", "1.618", "", NULL, "+1.268", "112.665", NULL },
	{ "TBM", "", "", "", "0.616", NULL, "+1.002", "113.667", NULL },
};
/* clang-format on */

static void exercise_on_collimation(void **state)
{
	const struct printed_page page = {
		.keys = "unit,m\n",
		.row = exercise,
		.rows = sizeof exercise / sizeof *exercise,
		.sum_backsight = "6.255",
		.sum_foresight = "4.868",
		.rises = "4.935",
		.falls = "3.548",
		.setups = 3,
		.verdict = RB_OPEN,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

/* 6 minutes of arc are 0.174533 m in 100 m: each backsight is 0.17453 too high and each
 * foresight 0.05236, so that TBM is at 113.3005. */
static void with_the_line_of_sight_tilted(void **state)
{
	static const char peg_file[] = "unit,m\nsetup,a,b,distance a,distance b\n"
				       "midway,1.500000,1.500000,50,50\n"
				       "beyond b,1.674533,1.500000,100,0\n";
	struct run r = run_text("unit,m\npoint,known elevation,bs,fs,bs dist,fs dist\n"
				"BM,112.280,1.143,,100,\nTP1,,1.390,3.819,100,30\n"
				"TP2,,3.722,0.433,100,30\nTBM,,,0.616,,30\n",
				false);
	const rb_length backsight = { 100 * RB_METRE }, foresight = { 30 * RB_METRE };
	struct rb_two_peg *peg;
	struct rb_peg_effect *effect;
	rb_length mark;
	int wrong = 0;

	(void)state;
	assert_non_null(r.adjusted);
	peg = rb_two_peg_read(r.arena, &r.findings, peg_file, sizeof peg_file - 1);
	assert_non_null(peg);
	effect = rb_peg_effect(r.arena, &r.findings, peg, r.sections);
	assert_non_null(effect);
	assert_int_equal(effect->difference[0].nm, 210 * RB_METRE);
	mark = r.reduced->shot[r.reduced->shots - 1].elevation;
	wrong += wrong_length("backsight", rb_two_peg_over(peg, backsight), "0.17453",
			      RB_METRES, false);
	wrong += wrong_length("foresight", rb_two_peg_over(peg, foresight), "0.05236",
			      RB_METRES, false);
	wrong += wrong_length("TBM", rb_length_sub(mark, effect->lift[0]), "113.3005",
			      RB_METRES, false);
	assert_int_equal(wrong, 0);
	run_end(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(exercise_on_collimation),
		cmocka_unit_test(with_the_line_of_sight_tilted),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
