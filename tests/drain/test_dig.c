/* SPDX-License-Identifier: MIT */
/* One reading, one answer. */
#include "job.h"

#include <inttypes.h>

#include "drain/dig.h"

static void answers(void **state)
{
	const rb_length eighth = { RB_INCH / 8 };
	/* clang-format off */
	const struct { int64_t wanted, read; bool digging; enum rb_dig_answer answer; } cases[] = {
		{ 80, 70, true,  RB_DIG },       /* eighths of an inch */
		{ 80, 80, true,  RB_ON_GRADE },
		{ 80, 79, true,  RB_ON_GRADE },  /* within is at most */
		{ 80, 78, true,  RB_DIG },
		{ 80, 81, true,  RB_ON_GRADE },
		{ 80, 82, true,  RB_OVER_DUG },
		{ 80, 84, false, RB_FILL },
		{ -8, -20, true, RB_DIG },       /* an inverted rod */
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rb_dig dig =
			rb_dig(rb_exact_of((rb_length){ cases[i].wanted * eighth.nm }),
			       (rb_length){ cases[i].read * eighth.nm }, eighth,
			       cases[i].digging);

		if (dig.answer == cases[i].answer &&
		    dig.difference.nm == (cases[i].wanted - cases[i].read) * eighth.nm)
			continue;
		print_error("row %zu: %s\n", i, rb_dig_answer_name(dig.answer));
		wrong++;
	}
	assert_int_equal(wrong, 0);
	assert_int_equal(rb_dig(rb_exact_of(FT(5, 0)), (rb_length){ 5 * RB_FOOT - 1 },
				(rb_length){ 0 }, true)
				 .answer,
			 RB_DIG); /* a nanometre is more than nothing */
	assert_int_equal(rb_dig_within(RB_FEET_INCHES).nm, RB_INCH / 8);
	assert_int_equal(rb_dig_within(RB_MILLIMETRES).nm, 3 * RB_MILLIMETRE);
}

/* A third of a nanometre decides, and is not rounded away before it can. */
static void the_exact_grade_rod_decides(void **state)
{
	/* clang-format off */
	static const struct { struct rb_exact wanted; enum rb_dig_answer answer; } cases[] = {
		{ {  RB_INCH / 8,     0, 1 }, RB_ON_GRADE },
		{ {  RB_INCH / 8,     1, 3 }, RB_DIG },
		{ { -RB_INCH / 8,     0, 1 }, RB_ON_GRADE },
		{ { -RB_INCH / 8 - 1, 2, 3 }, RB_OVER_DUG },
	};
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rb_dig dig = rb_dig(cases[i].wanted, rb_length_of(0),
					   rb_length_of(RB_INCH / 8), true);

		assert_int_equal(dig.answer, cases[i].answer);
		assert_int_equal(rb_length_absolute(dig.difference).nm, RB_INCH / 8);
	}
}

static void wanted_at_a_chainage(void **state)
{
	struct job job =
		job_of("pipe,4 in sch 40\nbedding,4 in\noutlet,last\nslope,1/4 in/ft\n"
		       "point,chainage,invert\nA,0,96.75\nB,48,\n",
		       NONE);
	struct rb_exact wanted = { 0, 0, 1 };

	(void)state;
	assert_true(rb_dig_wanted(&job.findings, job.inverts, FT(104, 0), FT(24, 0),
				  RB_INVERT, &wanted));
	assert_int_equal(wanted.whole, FT(7, 7500).nm);
	assert_true(rb_dig_wanted(&job.findings, job.inverts, FT(104, 0), FT(24, 0),
				  RB_TRENCH_BOTTOM, &wanted));
	assert_int_equal(wanted.whole, FT(7, 7500).nm + 4237 * RB_INCH / 1000);
	assert_int_equal(job.findings.count, 0);
	assert_false(rb_dig_wanted(&job.findings, job.inverts, FT(104, 0), FT(49, 0),
				   RB_INVERT, &wanted));
	assert_true(job_found(&job.findings, RB_CODE_OFF_THE_LINE));
	assert_string_equal(
		job_finding(&job.findings, RB_CODE_OFF_THE_LINE)->argument[1].text, "A");
	assert_string_equal(
		job_finding(&job.findings, RB_CODE_OFF_THE_LINE)->argument[2].text, "B");
	job_end(&job);
}

static void unknown_surface_names_its_key(void **state)
{
	/* clang-format off */
	static const struct { const char *keys; enum rb_surface surface; const char *key; } cases[] = {
		{ "", RB_TOP_OF_PIPE, "pipe (a size and a kind, such as 4 in sch 40)" },
		{ "bedding,none\n", RB_TRENCH_BOTTOM, "pipe (a size and a kind, such as 4 in sch 40)" },
		{ "pipe outside,4 in\n", RB_TRENCH_BOTTOM, "pipe wall and bedding" },
		{ "pipe wall,1/4 in\n", RB_TOP_OF_PIPE, "pipe outside" },
		{ "pipe,4 in sch 40\n", RB_TRENCH_BOTTOM, "bedding" },
	};
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		struct rb_exact wanted;
		char text[200];

		snprintf(
			text, sizeof text,
			"%soutlet,last\nslope,1%%\npoint,chainage,invert\nA,0,96\nB,48,\n",
			cases[i].keys);
		job_read(&job, text, NONE);
		assert_false(rb_dig_wanted(&job.findings, job.inverts, FT(104, 0),
					   FT(24, 0), cases[i].surface, &wanted));
		assert_int_equal(job.findings.count, 1);
		assert_string_equal(job_finding(&job.findings, RB_CODE_SURFACE_UNKNOWN)
					    ->argument[1]
					    .text,
				    cases[i].key);
		job_end(&job);
	}
}

/* What the crew reads is the grade rod as it is printed, in either notation: still on
 * grade at every station. */
static void on_grade_at_every_station(void **state)
{
	static const struct rb_style printed[] = { { RB_FEET_INCHES, 0, 8, false },
						   { RB_FEET, 2, 0, false } };
	int wrong = 0;

	(void)state;
	for (int seed = 1; seed <= 60; seed++) {
		struct job job = job_new();
		struct rb_grade_rods *rods;
		char text[300];

		snprintf(text, sizeof text,
			 "pipe,6 in sdr 35\nbedding,6 in\noutlet,last\nslope,1:%d.%d\n"
			 "point,chainage,invert\nA,%d.%02d,93.%02d\nB,%d,\n",
			 40 + seed, seed % 10, seed % 7, seed, seed * 7 % 100,
			 100 + seed);
		job_read(&job, text, FT(7, 0));
		rods = rb_grade_rods(job.arena, &job.findings, job.inverts,
				     FT(103, 3300));
		for (uint32_t i = 0; i < job.inverts->stations; i++)
			for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++)
				for (size_t p = 0; p < 2; p++) {
					rb_length rod = rods->rod[i][s].reading;
					rb_length read =
						rb_length_as_shown(rod, printed[p]);
					struct rb_exact wanted = { 0, 0, 1 };
					struct rb_dig dig;

					rb_dig_wanted(&job.findings, job.inverts,
						      rods->hi,
						      job.inverts->station[i].chainage, s,
						      &wanted);
					dig = rb_dig(wanted, read, rb_dig_within(RB_FEET),
						     true);
					wrong += dig.answer != RB_ON_GRADE ||
						 dig.wanted.nm != rod.nm;
				}
		wrong += job.findings.count != 0;
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(answers),
		cmocka_unit_test(the_exact_grade_rod_decides),
		cmocka_unit_test(wanted_at_a_chainage),
		cmocka_unit_test(unknown_surface_names_its_key),
		cmocka_unit_test(on_grade_at_every_station),
	};

	return cmocka_run_group_tests_name("dig", tests, NULL, NULL);
}
