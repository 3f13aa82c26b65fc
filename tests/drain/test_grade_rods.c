/* SPDX-License-Identifier: MIT */
/* Grade rods, and the height of instrument that would serve. */
#include "job.h"

#include "drain/grade_rods.h"

#define PIPE "pipe,4 in sch 40\nbedding,4 in\n"
#define LINE "outlet,last\nslope,1/4 in/ft\npoint,chainage,invert\nA,0,96.75\nB,48,\n"

static void three_surfaces(void **state)
{
	struct job job = job_of(PIPE LINE, NONE);
	struct rb_grade_rods *rods =
		rb_grade_rods(job.arena, &job.findings, job.inverts, FT(104, 0));

	(void)state;
	assert_int_equal(rods->rod[0][RB_INVERT].reading.nm, FT(7, 2500).nm);
	assert_int_equal(rods->rod[1][RB_INVERT].reading.nm, FT(8, 2500).nm);
	assert_int_equal(rods->rod[0][RB_TOP_OF_PIPE].reading.nm,
			 FT(7, 2500).nm - 4263 * RB_INCH / 1000);
	assert_int_equal(rods->rod[0][RB_TRENCH_BOTTOM].reading.nm,
			 FT(7, 2500).nm + 4237 * RB_INCH / 1000);
	assert_int_equal(job.findings.count, 0);
	job_end(&job);
}

/* At a step each pipe has its rods: B goes out at 95.25 and comes in at 95.75. */
static void both_pipes_of_a_step(void **state)
{
	struct job job = job_of("pipe,4 in sch 40\nbedding,4 in\nrod,9 ft\noutlet,last\n"
				"slope,1/4 in/ft\npoint,chainage,invert,step\n"
				"A,0,96.75,\nB,48,,0.5\n",
				NONE);
	struct rb_grade_rods *rods =
		rb_grade_rods(job.arena, &job.findings, job.inverts, FT(95, 6000));

	(void)state;
	assert_int_equal(rods->rod[1][RB_INVERT].reading.nm, FT(0, 3500).nm);
	assert_int_equal(rods->rod_in[1][RB_INVERT].reading.nm, FT(0, -1500).nm);
	assert_int_equal(rods->rod_in[1][RB_INVERT].reach, RB_GRADE_ABOVE_SIGHT);
	assert_int_equal(rods->rod_in[1][RB_TRENCH_BOTTOM].reading.nm,
			 FT(0, -1500).nm + 4237 * RB_INCH / 1000);
	assert_false(rb_length_given(rods->rod_in[0][RB_INVERT].reading));
	job_end(&job);
}

static void unknown_surfaces_have_no_rod(void **state)
{
	/* clang-format off */
	static const struct { const char *keys; bool top, bottom; } cases[] = {
		{ "", false, false },
		{ "pipe,4 in\n", false, false },
		{ "pipe,4 in sch 40\n", true, false },
		{ "bedding,4 in\n", false, false },
		{ "pipe wall,1/4 in\nbedding,none\n", false, true },
		{ PIPE, true, true },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		struct rb_grade_rods *rods;
		char text[300];

		snprintf(text, sizeof text, "%s" LINE, cases[i].keys);
		job_read(&job, text, NONE);
		rods = rb_grade_rods(job.arena, &job.findings, job.inverts, FT(104, 0));
		if (rb_length_given(rods->rod[0][RB_TOP_OF_PIPE].reading) !=
			    cases[i].top ||
		    rb_length_given(rods->rod[0][RB_TRENCH_BOTTOM].reading) !=
			    cases[i].bottom) {
			print_error("row %zu\n", i);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* A negative grade rod: what must be raised above is the highest surface, the top of the
 * pipe. */
static void grade_above_the_sight(void **state)
{
	struct job job = job_of(PIPE LINE, NONE);
	struct rb_grade_rods *rods =
		rb_grade_rods(job.arena, &job.findings, job.inverts, FT(96, 0));
	const struct rb_finding *f =
		job_finding(&job.findings, RB_CODE_GRADE_ABOVE_SIGHT);
	rb_length top = { FT(96, 7500).nm + 4263 * RB_INCH / 1000 };

	(void)state;
	assert_int_equal(rods->rod[0][RB_INVERT].reading.nm, -FT(0, 7500).nm);
	assert_int_equal(rods->rod[0][RB_INVERT].reach, RB_GRADE_ABOVE_SIGHT);
	assert_int_equal(rods->rod[1][RB_INVERT].reach, RB_ROD_REACHES);
	assert_int_equal(rods->lowest_hi.nm, top.nm);
	assert_int_equal(job.findings.count, 1);
	assert_non_null(f);
	assert_string_equal(f->argument[0].text, "A");
	assert_string_equal(f->argument[1].text, "top of pipe");
	/* 1.10525 and 97.10525, to hundredths on the side that serves. */
	assert_int_equal(f->argument[2].length.nm, FT(1, 1100).nm);
	assert_int_equal(f->argument[3].length.nm, FT(97, 1100).nm);
	job_end(&job);
}

static void grade_beyond_the_rod(void **state)
{
	struct job job = job_of("rod,13\n" PIPE LINE, NONE);
	struct rb_grade_rods *rods =
		rb_grade_rods(job.arena, &job.findings, job.inverts, FT(110, 0));
	const struct rb_finding *f = job_finding(&job.findings, RB_CODE_GRADE_BEYOND_ROD);
	rb_length bottom = { FT(95, 7500).nm - 4237 * RB_INCH / 1000 };

	(void)state;
	assert_int_equal(rods->rod[1][RB_TRENCH_BOTTOM].reach, RB_BEYOND_ROD);
	assert_int_equal(rods->highest_hi.nm, bottom.nm + 13 * RB_FOOT);
	assert_non_null(f);
	assert_string_equal(f->argument[0].text, "B");
	assert_int_equal(f->argument[3].length.nm, FT(108, 3900).nm); /* 108.3969 */
	/* From there all is reached. */
	rods = rb_grade_rods(job.arena, &job.findings, job.inverts, rods->highest_hi);
	assert_int_equal(rods->rod[1][RB_TRENCH_BOTTOM].reach, RB_ROD_REACHES);
	assert_int_equal(job.findings.of_code[RB_CODE_GRADE_BEYOND_ROD], 1);
	/* The sight at the height of the invert reads 0, and that can be read. */
	rods = rb_grade_rods(job.arena, &job.findings, job.inverts, FT(96, 7500));
	assert_int_equal(rods->rod[0][RB_INVERT].reading.nm, 0);
	assert_int_equal(rods->rod[0][RB_INVERT].reach, RB_ROD_REACHES);
	job_end(&job);
}

/* What is a whole hundredth serves as it stands. */
static void whole_steps_are_not_moved(void **state)
{
	struct job job = job_of("rod,13\n" LINE, NONE);
	const struct rb_finding *f;

	(void)state;
	rb_grade_rods(job.arena, &job.findings, job.inverts, FT(96, 0));
	f = job_finding(&job.findings, RB_CODE_GRADE_ABOVE_SIGHT);
	assert_int_equal(f->argument[2].length.nm, FT(0, 7500).nm);
	assert_int_equal(f->argument[3].length.nm, FT(96, 7500).nm);
	rb_grade_rods(job.arena, &job.findings, job.inverts, FT(109, 0));
	f = job_finding(&job.findings, RB_CODE_GRADE_BEYOND_ROD);
	assert_int_equal(f->argument[2].length.nm, FT(13, 2500).nm);
	assert_int_equal(f->argument[3].length.nm, FT(108, 7500).nm);
	job_end(&job);
}

/* In feet and inches the crew reads eighths: 1.10525 ft is 13.263 in. */
static void steps_of_an_inch(void **state)
{
	struct job job =
		job_of("unit,ft-in\npipe,4 in sch 40\noutlet,last\nslope,1/4 in/ft\n"
		       "point,chainage,invert\nA,0,96'-9\"\nB,48,\n",
		       NONE);
	const struct rb_finding *f;

	(void)state;
	assert_non_null(job.inverts);
	rb_grade_rods(job.arena, &job.findings, job.inverts, FT(96, 0));
	f = job_finding(&job.findings, RB_CODE_GRADE_ABOVE_SIGHT);
	assert_int_equal(f->argument[2].length.nm, 13 * RB_INCH + RB_INCH / 4);
	assert_int_equal(f->argument[3].length.nm, 97 * RB_FOOT + 11 * RB_INCH / 8);
	job_end(&job);
}

/* Below the datum, too, a height of instrument that serves lies above the surface. */
static void steps_below_zero(void **state)
{
	struct job job = job_of("outlet,last\nslope,1%\npoint,chainage,invert\n"
				"A,0,-5.255\nB,50,\n",
				NONE);
	const struct rb_finding *f;

	(void)state;
	rb_grade_rods(job.arena, &job.findings, job.inverts, FT(-6, 0));
	f = job_finding(&job.findings, RB_CODE_GRADE_ABOVE_SIGHT);
	assert_int_equal(f->argument[2].length.nm, FT(0, 7500).nm); /* 0.745 */
	assert_int_equal(f->argument[3].length.nm, -FT(5, 2500).nm);
	job_end(&job);
}

/* 1:7 of 1 ft is 43 542 857 1/7 nm: what lies a seventh of a nanometre out of reach is
 * out of reach, though it rounds to what is not. */
static void the_exact_rod_decides(void **state)
{
	const int64_t seventh = 43542857;
	struct job job = job_of("rod,13\noutlet,last\nslope,1:7\n"
				"point,chainage,invert\nA,0,0\nB,1,\n",
				NONE);
	rb_length hi = { 13 * RB_FOOT - seventh };
	struct rb_grade_rods *rods =
		rb_grade_rods(job.arena, &job.findings, job.inverts, hi);

	(void)state;
	assert_int_equal(rods->rod[1][RB_INVERT].reading.nm, 13 * RB_FOOT);
	assert_int_equal(rods->rod[1][RB_INVERT].reach, RB_BEYOND_ROD);
	assert_int_equal(rods->highest_hi.nm, hi.nm - 1);
	job_end(&job);
	job = job_of("rod,13\noutlet,first\nslope,1:7\n"
		     "point,chainage,invert\nA,0,0\nB,1,\n",
		     NONE);
	rods = rb_grade_rods(job.arena, &job.findings, job.inverts,
			     (rb_length){ seventh });
	assert_int_equal(rods->rod[0][RB_INVERT].reading.nm, 0);
	assert_int_equal(rods->rod[0][RB_INVERT].reach, RB_GRADE_ABOVE_SIGHT);
	assert_int_equal(rods->lowest_hi.nm, seventh + 1);
	job_end(&job);
}

/* And one from which the rod reaches lies on or below the highest that serves. */
static void whole_steps_below_zero(void **state)
{
	struct job job = job_of("rod,13\noutlet,last\nslope,1%\npoint,chainage,invert\n"
				"A,0,-20.00\nB,50,\n",
				NONE);
	const struct rb_finding *f;

	(void)state;
	rb_grade_rods(job.arena, &job.findings, job.inverts, FT(0, 0));
	f = job_finding(&job.findings, RB_CODE_GRADE_BEYOND_ROD);
	assert_non_null(f);
	assert_int_equal(f->argument[3].length.nm, -FT(7, 5000).nm); /* -20.50 and 13 */
	job_end(&job);
}

/* A height of instrument is named only where it serves every station, in the hundredths
 * that are read: at 10.01 ft the line falls all but as far as the rod is long. */
static void none_is_named_where_none_serves(void **state)
{
	/* clang-format off */
	static const struct { const char *rod; int64_t hi; enum rb_code code; bool named; } cases[] = {
		{ "5",      104, RB_CODE_GRADE_BEYOND_ROD,  false },
		{ "5",       95, RB_CODE_GRADE_ABOVE_SIGHT, false },
		{ "10.001", 104, RB_CODE_GRADE_BEYOND_ROD,  false },
		{ "10.001",  95, RB_CODE_GRADE_ABOVE_SIGHT, false },
		{ "10.02",  104, RB_CODE_GRADE_BEYOND_ROD,  true },
		{ "10.02",   95, RB_CODE_GRADE_ABOVE_SIGHT, true },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		const struct rb_finding *f;
		char text[300];

		snprintf(text, sizeof text, "rod,%s ft\n%s", cases[i].rod,
			 "outlet,last\nslope,10%\npoint,chainage,invert\n"
			 "A,0,100.0005\nB,100,\n");
		job_read(&job, text, NONE);
		rb_grade_rods(job.arena, &job.findings, job.inverts, FT(cases[i].hi, 0));
		f = job_finding(&job.findings, cases[i].code);
		if (!f || (f->argument[3].kind != RB_NOTHING) != cases[i].named) {
			print_error("row %zu\n", i);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

static void a_second_benchmark_checks(void **state)
{
	struct rb_todays_hi today =
		rb_hi_of_benchmarks(FT(100, 0), FT(4, 2700), FT(98, 5000), FT(5, 7800));

	(void)state;
	assert_int_equal(today.hi.nm, FT(104, 2700).nm);
	assert_true(today.checked);
	assert_int_equal(today.difference.nm, FT(0, 100).nm);
	today = rb_hi_of_benchmarks(FT(100, 0), FT(4, 2700), NONE, NONE);
	assert_false(today.checked);
	assert_false(rb_length_given(today.difference));
}

/* Two heights of instrument may differ by the grade tolerance, or else by 1/4 in or 5 mm.
 */
static void two_benchmarks_agree_within_the_grade_tolerance(void **state)
{
	/* clang-format off */
	static const struct { const char *keys; int64_t apart, allowed; bool agree; } cases[] = {
		{ "", RB_INCH / 4, RB_INCH / 4, true },
		{ "", -RB_INCH / 4, RB_INCH / 4, true },
		{ "", RB_INCH / 4 + 1, RB_INCH / 4, false },
		{ "", -RB_INCH / 4 - 1, RB_INCH / 4, false },
		{ "unit,m\n", 5 * RB_MILLIMETRE, 5 * RB_MILLIMETRE, true },
		{ "unit,m\n", 5 * RB_MILLIMETRE + 1, 5 * RB_MILLIMETRE, false },
		{ "grade tolerance,1/8 in\n", RB_INCH / 8, RB_INCH / 8, true },
		{ "grade tolerance,1/8 in\n", RB_INCH / 8 + 1, RB_INCH / 8, false },
		{ "grade tolerance,1 in\n", RB_INCH, RB_INCH, true },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		struct rb_todays_hi today;
		const struct rb_finding *f;
		char text[300];

		snprintf(text, sizeof text, "%s%s", cases[i].keys,
			 "outlet,last\nslope,1:48\npoint,chainage,invert\n"
			 "A,0,30 m\nB,15,\n");
		job_read(&job, text, NONE);
		today = rb_hi_of_benchmarks(FT(100, 0), FT(4, 0), FT(99, 0),
					    rb_length_of(FT(5, 0).nm + cases[i].apart));
		rb_hi_judge(&job.findings, job.plan, &today);
		f = job_finding(&job.findings, RB_CODE_HI_DIFFERS);
		if (!f != cases[i].agree ||
		    (f && (f->argument[0].length.nm !=
				   rb_length_absolute(rb_length_of(cases[i].apart)).nm ||
			   f->argument[1].length.nm != cases[i].allowed))) {
			print_error("row %zu\n", i);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

static void one_benchmark_is_not_judged(void **state)
{
	struct job job = job_of(PIPE LINE, NONE);
	struct rb_todays_hi today = rb_hi_of_benchmarks(FT(100, 0), FT(4, 0), NONE, NONE);

	(void)state;
	rb_hi_judge(&job.findings, job.plan, &today);
	assert_int_equal(job.findings.count, 0);
	job_end(&job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(three_surfaces),
		cmocka_unit_test(both_pipes_of_a_step),
		cmocka_unit_test(unknown_surfaces_have_no_rod),
		cmocka_unit_test(grade_above_the_sight),
		cmocka_unit_test(grade_beyond_the_rod),
		cmocka_unit_test(whole_steps_are_not_moved),
		cmocka_unit_test(steps_of_an_inch),
		cmocka_unit_test(steps_below_zero),
		cmocka_unit_test(whole_steps_below_zero),
		cmocka_unit_test(the_exact_rod_decides),
		cmocka_unit_test(none_is_named_where_none_serves),
		cmocka_unit_test(a_second_benchmark_checks),
		cmocka_unit_test(two_benchmarks_agree_within_the_grade_tolerance),
		cmocka_unit_test(one_benchmark_is_not_judged),
	};

	return cmocka_run_group_tests_name("grade rods", tests, NULL, NULL);
}
