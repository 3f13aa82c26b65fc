/* SPDX-License-Identifier: MIT */
/* test_plan_header.c - which row is a plan's header, and how the plan is written. */
#include "job.h"

#include "rodbook/plan.h"

/* clang-format off */
/* The columns in any order; two of point, chainage and an invert are enough. */
static const struct {
	const char *header, *first, *second;
} headers[] = {
	{ "point,chainage,invert", "A,0,95.00", "B,50," },
	{ "chainage,point,invert", "0,A,95.00", "50,B," },
	{ "invert,chainage,point", "95.00,0,A", ",50,B" },
	{ "chainage,invert",       "0,95.00",   "50," },
	{ "invert,chainage",       "95.00,0",   ",50" },
	{ "chainage,invert in",    "0,95.00",   "50," },
	{ "invert in,chainage",    "95.00,0",   ",50" },
	{ "point,invert",          "0+00,95.00", "0+50," },
	{ "point,invert in",       "0+00,95.00", "0+50," },
};

static const char *const no_headers[] = {
	"point,slope\nA,1%\n", "chainage,slope\n0,1%\n", "invert,slope\n95,1%\n",
};

/* As many decimals as a rod of the unit shows, or sixteenths of an inch; no unit. */
static const struct {
	const char *unit;
	int64_t length;
	const char *shown;
} styles[] = {
	{ "ft",    RB_FOOT / 1000 * 95125,               "95.13" },
	{ "in",    RB_INCH * 1001 / 8,           "125.13\"" },
	{ "ft-in", RB_INCH * 1001 / 8,           "10'-5 1/8\"" },
	{ "m",     95125 * RB_MILLIMETRE,        "95.125" },
	{ "mm",    95125 * RB_MILLIMETRE,        "95125" },
};
/* clang-format on */

static struct rb_plan *plan_in(struct job *job, const char *text)
{
	return rb_plan_read(job->arena, &job->findings, text, strlen(text));
}

static void headers_in_any_order(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof headers / sizeof *headers; i++) {
		struct job job = job_new();
		const struct rb_plan *plan;
		char text[200];

		snprintf(text, sizeof text, "outlet,last\nslope,1%%\n%s\n%s\n%s\n",
			 headers[i].header, headers[i].first, headers[i].second);
		plan = plan_in(&job, text);
		if (!plan || plan->rows != 2 ||
		    plan->row[1].chainage.nm != 50 * RB_FOOT) {
			print_error("%s\n", headers[i].header);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

static void less_is_no_header(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof no_headers / sizeof *no_headers; i++) {
		struct job job = job_new();

		assert_null(plan_in(&job, no_headers[i]));
		assert_true(job_found(&job.findings, RB_CODE_NO_HEADER));
		job_end(&job);
	}
}

static void lengths_are_shown_as_on_a_rod(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof styles / sizeof *styles; i++) {
		struct job job = job_new();
		char text[200], shown[RB_LENGTH_TEXT];
		const struct rb_plan *plan;

		snprintf(text, sizeof text,
			 "unit,%s\noutlet,last\nslope,1%%\npoint,chainage,invert\n"
			 "A,0 ft,95 ft\nB,50 ft,\n",
			 styles[i].unit);
		plan = plan_in(&job, text);
		job_print(&job.findings);
		assert_non_null(plan);
		rb_length_format(shown, rb_length_of(styles[i].length),
				 rb_plan_style(plan));
		assert_string_equal(shown, styles[i].shown);
		job_end(&job);
	}
}

/* A sheet with semicolons has decimal commas, and the plan knows it. */
static void commas_are_kept_in_mind(void **state)
{
	struct job job = job_new();
	const struct rb_plan *plan =
		plan_in(&job, "outlet;last\nslope;1%\npoint;chainage;invert\n"
			      "A;0;95,00\nB;50;\n");

	(void)state;
	assert_non_null(plan);
	assert_true(plan->decimal_comma);
	plan = plan_in(&job, "outlet,last\nslope,1%\npoint,chainage,invert\n"
			     "A,0,95.00\nB,50,\n");
	assert_non_null(plan);
	assert_false(plan->decimal_comma);
	job_end(&job);
}

/* Two rows at one chainage, or the last at that of the first: told once. */
static void one_chainage_is_told_once(void **state)
{
	struct job job = job_new();

	(void)state;
	plan_in(&job, "outlet,last\nslope,1%\npoint,chainage,invert\nA,0,95.00\nB,0,\n");
	assert_int_equal(job.findings.of_code[RB_CODE_SAME_CHAINAGE], 1);
	job_end(&job);
	job = job_new();
	plan_in(&job,
		"outlet,last\nslope,1%\npoint,chainage,invert\nA,0,95.00\nB,50,\nC,0,\n");
	assert_int_equal(job.findings.of_code[RB_CODE_SAME_CHAINAGE], 1);
	job_end(&job);
}

/* A slope at the outlet was meant for the leg that comes to it, from the station before.
 */
static void a_slope_at_the_outlet_names_the_one_before(void **state)
{
	static const struct {
		const char *outlet, *before;
	} outlets[] = { { "last", "C" }, { "first", "B" } };

	(void)state;
	for (size_t i = 0; i < 2; i++) {
		struct job job = job_new();
		char text[200];

		snprintf(text, sizeof text,
			 "outlet,%s\npoint,chainage,invert,slope\n"
			 "A,0,100,1%%\nB,20,,1%%\nC,50,,1%%\nD,90,,1%%\n",
			 outlets[i].outlet);
		plan_in(&job, text);
		assert_string_equal(job_finding(&job.findings, RB_CODE_SLOPE_AT_OUTLET)
					    ->argument[0]
					    .text,
				    outlets[i].before);
		job_end(&job);
	}
}

/* A meaning that stands over two columns: which one is meant is not known. */
static void a_second_column_is_told(void **state)
{
	struct job job = job_new();

	(void)state;
	plan_in(&job, "outlet,last\nslope,1%\npoint,chainage,chainage,invert\n"
		      "A,0,0,95.00\nB,50,50,\n");
	assert_int_equal(job.findings.of_code[RB_CODE_SAME_COLUMN_TWICE], 1);
	job_end(&job);
}

/* Of a pipe that is given by invert, slope and length nothing else is known. */
static void a_straight_pipe_has_no_more(void **state)
{
	struct job job = job_new();
	const struct rb_plan *plan =
		rb_plan_straight(job.arena, &job.findings, RB_FEET, FT(90, 0),
				 (rb_slope){ { 1 }, { 100 } }, FT(50, 0), RB_OUTLET_LAST);

	(void)state;
	assert_non_null(plan);
	assert_false(rb_length_given(plan->bedding));
	assert_false(rb_length_given(plan->cover));
	assert_false(rb_length_given(plan->grade_tolerance));
	for (int i = 0; i < RB_PLAN_COLUMNS; i++)
		assert_int_equal(plan->cell_of[i], -1);
	assert_int_equal(plan->rows, 2);
	assert_int_equal(plan->row[0].chainage.nm, 0);
	assert_int_equal(plan->row[1].chainage.nm, 50 * RB_FOOT);
	assert_string_equal(plan->row[0].name, "0+00");
	job_end(&job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(headers_in_any_order),
		cmocka_unit_test(less_is_no_header),
		cmocka_unit_test(lengths_are_shown_as_on_a_rod),
		cmocka_unit_test(commas_are_kept_in_mind),
		cmocka_unit_test(one_chainage_is_told_once),
		cmocka_unit_test(a_slope_at_the_outlet_names_the_one_before),
		cmocka_unit_test(a_second_column_is_told),
		cmocka_unit_test(a_straight_pipe_has_no_more),
	};

	return cmocka_run_group_tests_name("header of a plan", tests, NULL, NULL);
}
