/* SPDX-License-Identifier: MIT */
/*
 * A 4 in Schedule 40 drain in feet and inches, set and then laid: our own scenario, every
 * value computed apart from this program (the pipe: ASTM D1785, outside 4.500 in, wall
 * 0.237 in, read).  Benchmark 100'-0", backsight 4'-3 1/2"; invert 96'-9" at 0, 1/4
 * in/ft, bedding 4 in.
 */
#include "../drain/job.h"

#include "drain/dig.h"
#include "drain/laid.h"

#define PLAN                                                                             \
	"unit,ft-in\npipe,4 in sch 40\nbedding,4 in\nslope,1/4 in/ft\n"                  \
	"minimum slope,1/4 in/ft\ngrade tolerance,1/2 in\noutlet,last\n"                 \
	"point,chainage,invert\n0,0,96'-9\"\n10,10,\n20,20,\n30,30,\n40,40,\n42,42,\n"

/* clang-format off */
static const struct { const char *invert, *rod, *top, *bottom; int64_t top_mils, bottom_mils; } rows[] = {
	{ "96'-9\"",      "7'-6 1/2\"",  "7'-2 1/4\"", "7'-10 3/4\"",  86237,  94737 },
	{ "96'-6 1/2\"",  "7'-9\"",      "7'-4 3/4\"", "8'-1 1/4\"",   88737,  97237 },
	{ "96'-4\"",      "7'-11 1/2\"", "7'-7 1/4\"", "8'-3 3/4\"",   91237,  99737 },
	{ "96'-1 1/2\"",  "8'-2\"",      "7'-9 3/4\"", "8'-6 1/4\"",   93737, 102237 },
	{ "95'-11\"",     "8'-4 1/2\"",  "8'-0 1/4\"", "8'-8 3/4\"",   96237, 104737 },
	{ "95'-10 1/2\"", "8'-5\"",      "8'-0 3/4\"", "8'-9 1/4\"",   96737, 105237 },
};
/* clang-format on */

static bool shows(rb_length a, const char *printed)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, a, (struct rb_style){ RB_FEET_INCHES, 0, 8, false });
	if (!strcmp(text, printed))
		return true;
	print_error("%s for %s\n", text, printed);
	return false;
}

static void grade_rods(void **state)
{
	struct job job = job_of(PLAN, NONE);
	struct rb_todays_hi today = rb_hi_of_benchmarks(
		FT(100, 0), (rb_length){ 103 * RB_INCH / 2 }, NONE, NONE);
	struct rb_grade_rods *rods =
		rb_grade_rods(job.arena, &job.findings, job.inverts, today.hi);
	int wrong = 0;

	(void)state;
	assert_true(shows(today.hi, "104'-3 1/2\""));
	for (uint32_t i = 0; i < 6; i++) {
		const struct rb_grade_rod *rod = rods->rod[i];

		wrong += !shows(rb_exact_round(job.inverts->station[i].out),
				rows[i].invert) ||
			 !shows(rod[RB_INVERT].reading, rows[i].rod) ||
			 !shows(rod[RB_TOP_OF_PIPE].reading, rows[i].top) ||
			 !shows(rod[RB_TRENCH_BOTTOM].reading, rows[i].bottom) ||
			 rod[RB_TOP_OF_PIPE].reading.nm != rows[i].top_mils * 25400 ||
			 rod[RB_TRENCH_BOTTOM].reading.nm != rows[i].bottom_mils * 25400;
	}
	assert_int_equal(wrong, 0);
	assert_int_equal(job.findings.count, 0);
	job_end(&job);
}

/* Rod on top of the barrel: 10 1/2 in end to end in 42 ft is exactly 1/4 in/ft, and at 20
 * ft the pipe is 3/4 in high: 0.175 in/ft before it, 0.325 after. */
static void right_end_to_end_wrong_in_the_middle(void **state)
{
	struct job job = job_of(PLAN, NONE);
	struct rb_findings findings;
	struct rb_minimum minimum = { .slope = job.plan->minimum };
	struct rb_spots *spots;
	struct rb_laid *laid;
	static const int per_foot[] = { 250, 175, 325, 250,
					250 }; /* in/ft, thousandths */
	int wrong = 0;

	(void)state;
	rb_findings_init(&findings, job.arena, "laid.csv");
	spots = job_book(job.arena, &findings,
			 "unit,ft-in\nrod on,top of pipe\n"
			 "point,chainage,known elevation,backsight,intermediate\n"
			 "BM,,100'-0\",4'-3 1/2\",\n"
			 "0,0,,,7'-2 1/4\"\n10,10,,,7'-4 3/4\"\n20,20,,,7'-6 1/2\"\n"
			 "30,30,,,7'-9 3/4\"\n40,40,,,8'-0 1/4\"\n42,42,,,8'-0 3/4\"\n");
	laid = rb_laid(job.arena, &findings, &job.findings, job.inverts, spots, &minimum);
	job_print(&findings);
	assert_non_null(laid);
	assert_int_equal(laid->shots, 6);
	for (uint32_t i = 0; i < 5; i++)
		wrong += rb_slope_compare(laid->leg[i].slope,
					  (rb_slope){ { per_foot[i] }, { 12000 } }) != 0;
	assert_int_equal(wrong, 0);
	assert_int_equal(laid->leg[1].verdict, RB_LEG_FLAT);
	assert_false(laid->leg[1].within_reading);
	for (uint32_t i = 0; i < 5; i++)
		assert_int_equal(laid->leg[i].verdict, i == 1 ? RB_LEG_FLAT : RB_LEG_OK);
	/* 3/4 in less the 0.013 in by which an eighth differs from the barrel. */
	assert_int_equal(laid->shot[2].deviation.nm, 737 * 25400);
	assert_int_equal(rb_length_sub(laid->shot[0].invert, laid->shot[5].invert).nm,
			 21 * RB_INCH / 2);
	assert_true(laid->shot[2].out);
	assert_int_equal(findings.of_code[RB_CODE_LAID_OUT], 1);
	assert_int_equal(findings.of_code[RB_CODE_LEG_FLAT], 1);
	assert_int_equal(laid->ponds, 0);
	/* Quarter inches are read to an eighth either way: 0.25 / 10 ft. */
	assert_int_equal(rb_slope_compare(laid->leg[0].uncertainty,
					  (rb_slope){ { 25 }, { 12000 } }),
			 0);
	job_end(&job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(grade_rods),
		cmocka_unit_test(right_end_to_end_wrong_in_the_middle),
	};

	return cmocka_run_group_tests_name("feet-inches drain", tests, NULL, NULL);
}
