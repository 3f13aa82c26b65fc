/* SPDX-License-Identifier: MIT */
/* Fall available, needed and spare, and what would do when it is short. */
#include "job.h"

#include <stdlib.h>

#include "drain/fall_budget.h"

#define HEAD "point,chainage,invert,invert in,slope,step\n"

static struct rb_budget *budget_of(struct job *job)
{
	struct rb_minimum minimum = { .slope = job->plan->minimum };

	return rb_budget(job->arena, &job->findings, job->inverts, &minimum);
}

/* clang-format off */
static const struct budget_case {
	const char *what, *text;
	int64_t available, needed; /* ten-thousandths of a foot */
	bool is_short;
} budget_cases[] = {
	{ "plenty", "minimum slope,1%\n" HEAD "A,0,100,,,\nB,50,99,,,\n", 10000, 5000, false },
	{ "exactly", "minimum slope,2%\n" HEAD "A,0,100,,,\nB,50,99,,,\n", 10000, 10000, false },
	{ "short", "minimum slope,1/4 in/ft\n" HEAD "A,0,100,,,\nB,50,99,,,\n", 10000, 10417, true },
	{ "a step in between is needed", "minimum slope,1%\n" HEAD
	  "A,0,100,,,\nB,25,,,,0.6\nC,50,99,,,\n", 10000, 11000, true },
	{ "a step at the outlet is needed", "minimum slope,1%\n" HEAD
	  "A,0,100,,,\nB,50,99,,,0.6\n", 10000, 11000, true },
	{ "a step at the upstream end is not", "minimum slope,1%\n" HEAD
	  "A,0,100,,,0.6\nB,50,99,,,\n", 10000, 5000, false },
};
/* clang-format on */

static void available_and_needed(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof budget_cases / sizeof *budget_cases; i++) {
		const struct budget_case *c = &budget_cases[i];
		struct job job = job_of(c->text, NONE);
		struct rb_budget *b = job.inverts ? budget_of(&job) : NULL;
		int64_t half = RB_FOOT / 20000;

		if (!b || rb_exact_round(b->available).nm != FT(0, c->available).nm ||
		    llabs(rb_exact_round(b->needed).nm - FT(0, c->needed).nm) > half ||
		    b->is_short != c->is_short ||
		    job_found(&job.findings, RB_CODE_FALL_SHORT) != c->is_short) {
			print_error("%s\n", c->what);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

static void nothing_asked_is_not_judged(void **state)
{
	struct job job = job_of(HEAD "A,0,100,,,\nB,50,99,,,\n", NONE);
	struct rb_budget *b = budget_of(&job);

	(void)state;
	assert_false(b->judged);
	assert_false(b->is_short);
	assert_int_equal(b->leg[0].verdict, RB_LEG_NOT_JUDGED);
	assert_int_equal(job.findings.count, 0);
	job_end(&job);
}

/* A pipe that runs uphill is wrong whether or not anything is asked of it. */
static void uphill_fails_unasked(void **state)
{
	struct job job = job_of("outlet,last\n" HEAD "A,0,99,,,\nB,50,100,,,\n", NONE);
	struct rb_budget *b = budget_of(&job);

	(void)state;
	assert_int_equal(b->leg[0].verdict, RB_LEG_UPHILL);
	assert_int_equal(job.findings.of_severity[RB_FAILED], 1);
	job_end(&job);
}

static void a_whole_that_has_enough_can_have_a_flat_leg(void **state)
{
	struct job job = job_of("minimum slope,1%\noutlet,last\n" HEAD
				"A,0,100,,4%,\nB,50,,,0.5%,\nC,100,,,,\n",
				NONE);
	struct rb_budget *b = budget_of(&job);

	(void)state;
	assert_false(b->is_short);
	assert_int_equal(b->leg[0].verdict, RB_LEG_OK);
	assert_int_equal(b->leg[1].verdict, RB_LEG_FLAT);
	assert_int_equal(job_finding(&job.findings, RB_CODE_LEG_FLAT)->place.line, 5);
	job_end(&job);
}

/* 1 ft over 50 ft, 1/4 in/ft asked: 12 in of 12 1/2 in. */
static void says_what_would_do(void **state)
{
	struct job job =
		job_of("pipe,2 in sch 40\n" HEAD "A,0,100,,,\nB,50,99,,,\n", NONE);
	const char *text = "rule,R\nsize up to,minimum slope\n2-1/2 in,1/4 in/ft\n"
			   "6 in,1/8 in/ft\n,1/16 in/ft\n";
	struct rb_rules *rules =
		rb_rules_read(job.arena, &job.findings, text, strlen(text));
	struct rb_minimum minimum;
	struct rb_budget *b;

	(void)state;
	assert_true(rb_minimum_by_rules(&job.findings, rules, job.plan->pipe.size,
					rb_in_file(), &minimum));
	b = rb_budget(job.arena, &job.findings, job.inverts, &minimum);
	assert_true(b->is_short);
	assert_int_equal(b->remedies.raise.nm, RB_INCH / 2);
	assert_string_equal(
		job_finding(&job.findings, RB_CODE_FALL_SHORT)->argument[2].text, "A");
	assert_string_equal(
		job_finding(&job.findings, RB_CODE_FALL_SHORT)->argument[3].text, "B");
	assert_int_equal(b->remedies.route.nm, 48 * RB_FOOT);
	assert_int_equal(b->remedies.larger.nm, 3 * RB_INCH);
	assert_true(rb_slope_given(b->remedies.larger_slope));
	assert_int_equal(
		rb_slope_compare(b->remedies.larger_slope, (rb_slope){ { 1 }, { 96 } }),
		0);
	assert_int_equal(rb_slope_compare(b->remedies.slope, (rb_slope){ { 1 }, { 50 } }),
			 0);
	job_end(&job);
}

/* 6 1/4 in over 50 ft is what a pipe over 2 in needs, exactly. */
static void a_larger_pipe_may_just_do(void **state)
{
	struct job job = job_of("unit,ft-in\npipe,2 in sch 40\n" HEAD
				"A,0,100'-0\",,,\nB,50,\"99'-5 3/4\"\"\",,,\n",
				NONE);
	const char *text = "rule,R\nsize up to,minimum slope\n2 in,1/4 in/ft\n"
			   "3 in,1/8 in/ft\n,1/16 in/ft\n";
	struct rb_rules *rules =
		rb_rules_read(job.arena, &job.findings, text, strlen(text));
	struct rb_minimum minimum;

	(void)state;
	assert_true(rb_minimum_by_rules(&job.findings, rules, job.plan->pipe.size,
					rb_in_file(), &minimum));
	assert_int_equal(rb_budget(job.arena, &job.findings, job.inverts, &minimum)
				 ->remedies.larger.nm,
			 5 * RB_INCH / 2);
	job_end(&job);
}

/* One note a span of uniform grade, whatever stations stand on it. */
static void each_span_is_noted_once(void **state)
{
	/* clang-format off */
	static const struct { const char *what, *text; size_t notes; } cases[] = {
		{ "exactly a place", "minimum slope,1%\n" HEAD "A,0,100.00,,,\nB,50,99.49,,,\n", 1 },
		{ "more than one",   "minimum slope,1%\n" HEAD "A,0,100.00,,,\nB,50,99.48,,,\n", 0 },
		{ "one span of two legs", "minimum slope,1/8 in/ft\n" HEAD
		  "A,0,100.00,,,\nB,20,,,,\nC,50,99.48,,,\n", 1 },
		{ "two spans of one fall", "minimum slope,1/8 in/ft\n" HEAD
		  "A,0,100.00,,,\nB,50,99.48,,,\nC,99.9,98.96,,,\n", 2 },
		{ "two spans of one fall and length", "minimum slope,1/8 in/ft\n" HEAD
		  "A,0,100.00,,,\nB,50,99.48,,,\nC,100,98.96,,,\n", 2 },
		/* 1:7 of 0.3048 m is 43 542 857 1/7 nm, and the inverts are written to 1 nm */
		{ "a seventh more than a place", "unit,m\nminimum slope,1:7\n" HEAD
		  "A,0,0.043542856,,,\nB,0.3048,0.000000000,,,\n", 0 },
		{ "a seventh less", "unit,m\nminimum slope,1:7\n" HEAD
		  "A,0,0.043542858,,,\nB,0.3048,0.000000000,,,\n", 1 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_of(cases[i].text, NONE);

		budget_of(&job);
		if (job.findings.of_code[RB_CODE_TURNS_ON_ROUNDING] != cases[i].notes) {
			print_error("%s\n", cases[i].what);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* Raised by what is said, or run as far as is said, it holds: not a nanometre more is
 * needed, nor a nanometre less enough. */
static void remedies_hold(void **state)
{
	struct job job =
		job_of("minimum slope,1:60.6\n" HEAD "A,0,100,,,\nB,50,99.5,,,\n", NONE);
	struct rb_budget *b = budget_of(&job);
	rb_length raise, route;

	(void)state;
	assert_true(b->is_short);
	raise = b->remedies.raise;
	route = b->remedies.route;
	job.plan->row[0].invert.nm += raise.nm;
	job.inverts = rb_inverts(job.arena, &job.findings, job.plan, NONE);
	assert_false(budget_of(&job)->is_short);
	job.plan->row[0].invert.nm -= 1;
	job.inverts = rb_inverts(job.arena, &job.findings, job.plan, NONE);
	assert_true(budget_of(&job)->is_short);
	job.plan->row[0].invert = FT(100, 0);
	job.plan->row[1].chainage = route;
	job.inverts = rb_inverts(job.arena, &job.findings, job.plan, NONE);
	assert_false(budget_of(&job)->is_short);
	job.plan->row[1].chainage.nm += 1;
	job.inverts = rb_inverts(job.arena, &job.findings, job.plan, NONE);
	assert_true(budget_of(&job)->is_short);
	job_end(&job);
}

static void no_remedy_where_there_is_none(void **state)
{
	struct job job = job_of("minimum slope,1%\noutlet,last\n" HEAD
				"A,0,100,,,\nB,50,100.2,,,0.1\n",
				NONE);
	struct rb_budget *b = budget_of(&job);

	(void)state;
	assert_true(b->is_short);
	assert_false(rb_length_given(b->remedies.route));
	assert_false(rb_length_given(b->remedies.larger));
	assert_false(rb_slope_given(b->remedies.slope));
	assert_int_equal(b->remedies.raise.nm, FT(0, 8000).nm);
	job_end(&job);
	/* steps that take all there is leave no fall to lay the pipe at */
	job = job_of("minimum slope,1%\n" HEAD "A,0,100,,,\nB,25,,,,1\nC,50,99,,,\n",
		     NONE);
	b = budget_of(&job);
	assert_true(b->is_short);
	assert_false(rb_length_given(b->remedies.route));
	assert_false(rb_slope_given(b->remedies.slope));
	job_end(&job);
}

/* The verdict is exact; where half a place of the two inverts would turn it, that is
 * said. */
static void verdicts_that_turn_on_rounding(void **state)
{
	/* clang-format off */
	static const struct { const char *invert; bool is_short; size_t notes; } cases[] = {
		{ "99.48", true, 1 }, /* 0.52 of 0.520833: short by 0.0008 */
		{ "99.47", false, 1 }, /* 0.0092 to spare */
		{ "99.46", false, 0 },
		{ "99.49", true, 0 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		char text[200];
		struct rb_budget *b;

		snprintf(text, sizeof text,
			 "minimum slope,1/8 in/ft\n" HEAD "A,0,100.00,,,\nB,50,%s,,,\n",
			 cases[i].invert);
		job_read(&job, text, NONE);
		b = budget_of(&job);
		if (job.findings.of_code[RB_CODE_TURNS_ON_ROUNDING] != cases[i].notes) {
			print_error("%s: %zu notes\n", cases[i].invert,
				    job.findings.of_code[RB_CODE_TURNS_ON_ROUNDING]);
			wrong++;
		}
		wrong += b->is_short != cases[i].is_short;
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(available_and_needed),
		cmocka_unit_test(nothing_asked_is_not_judged),
		cmocka_unit_test(uphill_fails_unasked),
		cmocka_unit_test(a_whole_that_has_enough_can_have_a_flat_leg),
		cmocka_unit_test(says_what_would_do),
		cmocka_unit_test(a_larger_pipe_may_just_do),
		cmocka_unit_test(each_span_is_noted_once),
		cmocka_unit_test(remedies_hold),
		cmocka_unit_test(no_remedy_where_there_is_none),
		cmocka_unit_test(verdicts_that_turn_on_rounding),
	};

	return cmocka_run_group_tests_name("fall budget", tests, NULL, NULL);
}
