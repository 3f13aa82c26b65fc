/* SPDX-License-Identifier: MIT */
/* The plan as it was typed: keys, columns, and every error with the cell to fill. */
#include "job.h"

#include "drain/pipe.h"

static void reads_every_key_and_column(void **state)
{
	struct job job =
		job_of("Larch Street\n"
		       "drain,Larch Street drain\nunit,ft\npipe,4 in sch 40\n"
		       "slope,1/4 in/ft\nminimum slope,1/8 in/ft\nbedding,4 in\n"
		       "cover,1.5\noutlet,last\ngrade tolerance,1/4 in\nrod,13\n"
		       "jurisdiction,us osha\ndatum,site\n\n"
		       "point,chainage,invert,invert in,slope,step,footing bottom,"
		       "footing away,hub offset,hub side,remarks\n"
		       "A,0+00,100.00,,1/8 in/ft,,,,8,left,at the house\n"
		       "B,0+20,,,,1 in,96.5,3,8,left,\n"
		       "C,0+50,,,-,,,,,,main\n",
		       NONE);
	const struct rb_plan *plan = job.plan;

	(void)state;
	assert_non_null(plan);
	assert_string_equal(plan->drain, "Larch Street drain");
	assert_string_equal(plan->jurisdiction, "us osha");
	assert_string_equal(plan->datum, "site");
	assert_int_equal(plan->pipe.wall.nm, 237 * RB_INCH / 1000);
	assert_int_equal(plan->bedding.nm, 4 * RB_INCH);
	assert_int_equal(plan->cover.nm, FT(1, 5000).nm);
	assert_int_equal(plan->grade_tolerance.nm, RB_INCH / 4);
	assert_int_equal(plan->rod.nm, 13 * RB_FOOT);
	assert_int_equal(plan->outlet, RB_OUTLET_LAST);
	assert_int_equal(plan->plus, 2);
	assert_int_equal(plan->rows, 3);
	assert_int_equal(plan->row[1].step.nm, RB_INCH);
	assert_int_equal(plan->row[1].footing_away.nm, 3 * RB_FOOT);
	assert_int_equal(plan->row[0].offset.nm, 8 * RB_FOOT);
	assert_string_equal(plan->row[0].side, "left");
	assert_string_equal(plan->row[2].remarks, "main");
	assert_false(rb_slope_given(plan->row[2].slope));
	job_end(&job);
}

static void nothing_is_assumed(void **state)
{
	struct job job = job_of(
		"outlet,last\nslope,2%\npoint,chainage,invert\nA,0,100\nB,50,\n", NONE);
	const struct rb_plan *plan = job.plan;

	(void)state;
	assert_non_null(plan);
	assert_false(rb_length_given(plan->bedding));
	assert_false(rb_length_given(plan->cover));
	assert_false(rb_length_given(plan->grade_tolerance));
	assert_false(rb_length_given(rb_pipe_top(&plan->pipe)));
	assert_false(rb_slope_given(plan->minimum));
	assert_int_equal(plan->rod.nm, 25 * RB_FOOT);
	assert_string_equal(plan->jurisdiction, "");
	job_end(&job);
}

static void measured_sizes_override_the_table(void **state)
{
	struct job job =
		job_of("pipe,4 in sch 40\npipe wall,0.265 in\noutlet,last\nslope,2%\n"
		       "bedding,none\npoint,chainage,invert\nA,0,100\nB,50,\n",
		       NONE);

	(void)state;
	assert_non_null(job.plan);
	assert_int_equal(rb_pipe_top(&job.plan->pipe).nm, 4235 * RB_INCH / 1000);
	assert_true(job.plan->pipe.measured);
	assert_int_equal(job.plan->bedding.nm, 0);
	job_end(&job);
}

/* A kind that no table has is fine where both were measured. */
static void measured_pipe_needs_no_table(void **state)
{
	struct job job =
		job_of("pipe,6 in clay\npipe outside,7-1/2 in\npipe wall,3/4 in\n"
		       "outlet,last\nslope,2%\npoint,chainage,invert\nA,0,100\nB,50,\n",
		       NONE);

	(void)state;
	assert_non_null(job.plan);
	assert_int_equal(job.plan->pipe.size.nm, 6 * RB_INCH);
	assert_int_equal(rb_pipe_top(&job.plan->pipe).nm, 27 * RB_INCH / 4);
	job_end(&job);
}

static void stations_are_read_as_in_a_book(void **state)
{
	struct job job = job_of("outlet,last\nslope,1%\nstation,invert\n"
				"0+00,100\n+50,\n1+00,\n+25.5,\n",
				NONE);

	(void)state;
	job_print(&job.findings);
	assert_non_null(job.plan);
	assert_int_equal(job.plan->row[1].chainage.nm, 50 * RB_FOOT);
	assert_int_equal(job.plan->row[3].chainage.nm, FT(125, 5000).nm);
	assert_string_equal(job.plan->row[3].name, "+25.5");
	job_end(&job);
}

/* A station is the chainage only where no column is that, be it the first. */
static void a_station_beside_a_chainage(void **state)
{
	struct job job = job_of("outlet,last\nslope,1%\nchainage,point,station,invert\n"
				"0,A,3+00,100\n50,B,3+50,\n",
				NONE);

	(void)state;
	assert_non_null(job.plan);
	assert_int_equal(job.plan->row[1].chainage.nm, 50 * RB_FOOT);
	job_end(&job);
}

static void a_dash_is_empty(void **state)
{
	struct job job =
		job_of("outlet,last\npoint,chainage,invert,slope\n"
		       "A,0,100.00,1/8 in/ft\nB,20,-,1/4 in/ft\nC,50,\xe2\x80\x93,-\n",
		       NONE);

	(void)state;
	assert_non_null(job.inverts);
	job_end(&job);
}

static void semicolons_have_decimal_commas(void **state)
{
	struct job job = job_of("unit;m\noutlet;last\nslope;1,5%\npoint;chainage;invert\n"
				"A;0;30,480\nB;12,5;\n",
				NONE);

	(void)state;
	assert_non_null(job.inverts);
	assert_int_equal(job_invert(&job, "B").nm, INT64_C(30292500000));
	job_end(&job);
}

#define HEAD     "point,chainage,invert,invert in,slope,step,footing bottom,footing away\n"
#define ANY_CELL (-2)

/* clang-format off */
static const struct fault_case {
	const char *what, *text;
	enum rb_code code;
	uint32_t line;
	int32_t cell; /* from 0; RB_WHOLE_ROW; ANY_CELL */
} fault_cases[] = {
	{ "one row",           HEAD "A,0,100,,,,,\n",                             RB_CODE_ONE_STATION, 0, ANY_CELL },
	{ "no chainage",       "outlet,last\n" HEAD "A,0,100,,1%,,,\nB,,,,,,,\n", RB_CODE_NO_CHAINAGE, 4, 1 },
	{ "one chainage",      "outlet,last\n" HEAD "A,0,100,,1%,,,\nB,50,,,1%,,,\nC,50,,,,,,\n",
	                                                                           RB_CODE_SAME_CHAINAGE, 5, 1 },
	{ "a loop",            "outlet,last\n" HEAD "A,0,100,,1%,,,\nB,50,,,1%,,,\nC,0,,,,,,\n",
	                                                                           RB_CODE_SAME_CHAINAGE, 5, 1 },
	{ "turned back at the end", "outlet,last\n" HEAD "A,0,100,,1%,,,\nB,50,,,1%,,,\nC,40,,,,,,\n",
	                                                                           RB_CODE_CHAINAGE_ORDER, 5, 1 },
	{ "half a measured pipe", "pipe,4 in lead\npipe outside,4 in\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n",
	                                                                           RB_CODE_BAD_PIPE_KIND, 1, 1 },
	{ "turned back",       "outlet,last\n" HEAD "A,0,100,,1%,,,\nB,50,,,1%,,,\nC,40,,,1%,,,\nD,90,,,,,,\n",
	                                                                           RB_CODE_CHAINAGE_ORDER, 5, 1 },
	{ "bad chainage",      "outlet,last\n" HEAD "A,0,100,,1%,,,\nB,far,,,,,,\n", RB_CODE_BAD_CHAINAGE, 4, 1 },
	{ "plus without hundred", "outlet,last\n" HEAD "A,0,100,,1%,,,\nB,+50,,,,,,\n", RB_CODE_BAD_CHAINAGE, 4, 1 },
	{ "no invert",         "outlet,last\n" HEAD "A,0,,,1%,,,\nB,50,,,,,,\n",   RB_CODE_NO_INVERT, 4, 2 },
	{ "no slope",          "outlet,last\n" HEAD "A,0,100,,1%,,,\nB,50,,,,,,\nC,90,,,,,,\n",
	                                                                           RB_CODE_NO_SLOPE, 4, 4 },
	{ "no slope upstream", "outlet,first\n" HEAD "A,0,100,,,,,\nB,50,,,,,,\n", RB_CODE_NO_SLOPE, 4, 4 },
	{ "no outlet",         HEAD "A,0,100,,1%,,,\nB,50,,,,,,\n",                RB_CODE_NO_OUTLET, 0, ANY_CELL },
	{ "equal inverts",     HEAD "A,0,100,,,,,\nB,50,100,,,,,\n",               RB_CODE_NO_OUTLET, 0, ANY_CELL },
	{ "bad outlet",        "outlet,left\n" HEAD "A,0,100,,1%,,,\nB,50,,,,,,\n", RB_CODE_BAD_KEY, 1, 1 },
	{ "slope at outlet",   "outlet,last\n" HEAD "A,0,100,,,,,\nB,50,,,1%,,,\n", RB_CODE_SLOPE_AT_OUTLET, 4, 4 },
	{ "slope at the first", "outlet,first\n" HEAD "A,0,100,,1%,,,\nB,50,,,1%,,,\n", RB_CODE_SLOPE_AT_OUTLET, 3, 4 },
	{ "step disagrees",    HEAD "A,0,100,,,,,\nB,50,98,98.2,,0.1,,\nC,90,97,,,,,\n", RB_CODE_STEP_DISAGREES, 3, 5 },
	{ "step up",           HEAD "A,0,100,,,,,\nB,50,98,97.9,,,,\nC,90,97,,,,,\n", RB_CODE_STEP_UP, 3, 3 },
	{ "negative step",     HEAD "A,0,100,,,,,\nB,50,,,,-0.1,,\nC,90,97,,,,,\n", RB_CODE_STEP_UP, 3, 5 },
	{ "half a footing",    HEAD "A,0,100,,,,96,\nB,50,98,,,,,\n",              RB_CODE_FOOTING_HALF, 2, 7 },
	{ "other half",        HEAD "A,0,100,,,,,3\nB,50,98,,,,,\n",               RB_CODE_FOOTING_HALF, 2, 6 },
	{ "minimum twice",     "minimum slope,1%\nrules,ipc.csv\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n",
	                                                                           RB_CODE_MINIMUM_TWICE, 2, 1 },
	{ "bare slope",        "slope,2\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n",    RB_CODE_SLOPE_BARE, 1, 1 },
	{ "slope reversed",    HEAD "A,0,100,,48:1,,,\nB,50,98,,,,,\n",            RB_CODE_SLOPE_REVERSED, 2, 4 },
	{ "slope over nothing", HEAD "A,0,100,,1:0,,,\nB,50,98,,,,,\n",            RB_CODE_SLOPE_ZERO_RUN, 2, 4 },
	{ "steep",             HEAD "A,0,100,,101%,,,\nB,50,98,,,,,\n",            RB_CODE_SLOPE_STEEP, 2, 4 },
	{ "no slope at all",   HEAD "A,0,100,,steep,,,\nB,50,98,,,,,\n",           RB_CODE_BAD_SLOPE, 2, 4 },
	{ "minimum level",     "minimum slope,0%\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_SLOPE_NOT_DOWN, 1, 1 },
	{ "no size",           "pipe,sch 40\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_BAD_PIPE_SIZE, 1, 1 },
	{ "no kind",           "pipe,4 in lead\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_BAD_PIPE_KIND, 1, 1 },
	{ "not made",          "pipe,7 in sch 40\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_PIPE_NOT_IN_TABLE, 1, 1 },
	{ "thick wall",        "pipe outside,4 in\npipe wall,2 in\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n",
	                                                                           RB_CODE_WALL_TOO_THICK, 2, 1 },
	{ "no wall",           "pipe wall,0 in\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_NOT_ABOVE_ZERO, 1, 1 },
	{ "negative cover",    "cover,-3\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n",   RB_CODE_NEGATIVE, 1, 1 },
	{ "two inverts",       "outlet,last\nslope,1%\npoint,chainage,chainage,invert\nA,0,0,100\nB,50,50,\n",
	                                                                           RB_CODE_SAME_COLUMN_TWICE, 3, 2 },
	{ "no rod",            "rod,0\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n",    RB_CODE_NOT_ABOVE_ZERO, 1, 1 },
	{ "a unit apart",      "bedding,4,in\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_UNIT_APART, 1, 2 },
	{ "a percent sign apart", "slope,2,%\n" HEAD "A,0,100,,,,,\nB,50,99,,,,,\n", RB_CODE_UNIT_APART, 1, 2 },
	{ "inches a foot apart", "minimum slope,1/4,in/ft\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_UNIT_APART, 1, 2 },
	{ "a pipe's inches apart", "pipe,4 sch 40,in\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_UNIT_APART, 1, 2 },
	{ "no unit",           "unit,furlong\n" HEAD "A,0,100,,,,,\nB,50,98,,,,,\n", RB_CODE_BAD_UNIT, 1, 1 },
	{ "invert is a date",  HEAD "A,0,5-Mar,,,,,\nB,50,98,,,,,\n",              RB_CODE_DATE_CELL, 2, 2 },
	{ "heading of another unit", "outlet,last\nslope,1%\npoint,chainage,invert (m)\nA,0,100\nB,50,\n", RB_CODE_HEADING_UNIT, 3, 2 },
	{ "bare in ft-in",     "unit,ft-in\n" HEAD "A,0,100.5,,,,,\nB,50,98'-0\",,,,,\n", RB_CODE_NO_MARK, 3, 2 },
};
/* clang-format on */

static void every_fault_names_its_cell(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof fault_cases / sizeof *fault_cases; i++) {
		const struct fault_case *c = &fault_cases[i];
		struct job job = job_of(c->text, NONE);
		const struct rb_finding *f = job_finding(&job.findings, c->code);

		if (!f || job.inverts || job.findings.of_severity[RB_ERROR] != 1 ||
		    f->place.line != c->line ||
		    (c->cell != ANY_CELL && f->place.cell != c->cell)) {
			print_error("%s: wanted %s at line %u, cell %d; got\n", c->what,
				    rb_code_name(c->code), c->line, c->cell);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* A column that is not there cannot be marked: the row is. */
static void missing_column_marks_the_row(void **state)
{
	struct job job =
		job_of("outlet,last\npoint,chainage,invert\nA,0,100\nB,50,\n", NONE);
	const struct rb_finding *f = job_finding(&job.findings, RB_CODE_NO_SLOPE);

	(void)state;
	assert_non_null(f);
	assert_int_equal(f->place.line, 3);
	assert_int_equal(f->place.cell, RB_WHOLE_ROW);
	assert_string_equal(f->argument[0].text, "A");
	assert_string_equal(f->argument[1].text, "B");
	job_end(&job);
}

/* A sheet drops zeros: the place of an invert is never taken coarser than usual. */
static void inverts_have_a_place(void **state)
{
	/* clang-format off */
	static const struct { const char *unit, *a, *b; int64_t nm; } cases[] = {
		{ "ft",    "100",         "98",         RB_FOOT / 100 },
		{ "ft",    "100.25",      "98",         RB_FOOT / 100 },
		{ "ft",    "100.25",      "98.125",     RB_FOOT / 1000 },
		{ "ft-in", "100'-0\"",    "98'-0\"",    RB_INCH / 8 },
		{ "ft-in", "100'-0 1/16\"", "98'-0\"",  RB_INCH / 16 },
		{ "m",     "30.48",       "29",         RB_MILLIMETRE },
		{ "m",     "30.4801",     "29",         RB_MILLIMETRE / 10 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		char text[200];

		snprintf(text, sizeof text,
			 "unit,%s\npoint,chainage,invert\nA,0,%s\nB,50,%s\n",
			 cases[i].unit, cases[i].a, cases[i].b);
		job_read(&job, text, NONE);
		if (!job.plan || job.plan->invert_place.nm != cases[i].nm) {
			print_error("row %zu\n", i);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* A plan grows as it is read, and each row keeps what it had. */
static void long_plans_are_whole(void **state)
{
	struct job job = job_new();
	static char text[20000];

	(void)state;
	snprintf(text, sizeof text, "outlet,last\nslope,1%%\npoint,chainage,invert\n");
	for (int i = 0; i < 300; i++)
		snprintf(text + strlen(text), sizeof text - strlen(text), "P%d,%d,%s\n",
			 i, 10 * i, i ? "" : "100");
	job_read(&job, text, NONE);
	assert_non_null(job.inverts);
	assert_int_equal(job.plan->rows, 300);
	for (uint32_t i = 0; i < 300; i++) {
		char name[12];

		snprintf(name, sizeof name, "P%u", i);
		assert_string_equal(job.plan->row[i].name, name);
		assert_int_equal(job.plan->row[i].chainage.nm, 10 * RB_FOOT * i);
		assert_int_equal(job.plan->row[i].line, i + 4);
	}
	job_end(&job);
}

static void a_nameless_row_has_its_chainage_for_a_name(void **state)
{
	struct job job = job_of("rules,ipc.csv\noutlet,last\nslope,1%\n"
				"point,chainage,invert\n,0+00,100\n-,0+50,\n",
				NONE);

	(void)state;
	assert_non_null(job.plan);
	assert_string_equal(job.plan->row[0].name, "0+00");
	assert_string_equal(job.plan->row[1].name, "0+50");
	assert_string_equal(job.plan->rules, "ipc.csv");
	assert_int_equal(job.plan->rules_place.line, 1);
	assert_int_equal(job.plan->slope_place.line, 3);
	assert_int_equal(job.plan->cell_of[RB_PLAN_STEP], -1);
	job_end(&job);
}

/* Ends of the whole line, where the outlet is not said; the row before it otherwise. */
static void the_ends_are_named(void **state)
{
	struct job job =
		job_of("slope,1%\npoint,chainage,invert\nA,0,100\nB,20,\nC,50,\n", NONE);
	const struct rb_finding *f = job_finding(&job.findings, RB_CODE_NO_OUTLET);

	(void)state;
	assert_string_equal(f->argument[0].text, "A");
	assert_string_equal(f->argument[1].text, "C");
	job_end(&job);
	job = job_of("outlet,last\npoint,chainage,invert,slope\nA,0,100,1%\nB,20,,1%\n"
		     "C,50,,1%\n",
		     NONE);
	f = job_finding(&job.findings, RB_CODE_SLOPE_AT_OUTLET);
	assert_string_equal(f->argument[0].text, "B");
	job_end(&job);
	job = job_of("outlet,first\npoint,chainage,invert,slope\nA,0,100,1%\nB,20,,1%\n"
		     "C,50,,1%\n",
		     NONE);
	f = job_finding(&job.findings, RB_CODE_SLOPE_AT_OUTLET);
	assert_string_equal(f->argument[0].text, "B");
	job_end(&job);
	job = job_of(
		"outlet,last\nslope,1%\npoint,chainage,invert\nA,7,100\nB,20,\nC,7,\n",
		NONE);
	f = job_finding(&job.findings, RB_CODE_SAME_CHAINAGE);
	assert_int_equal(f->argument[0].count, 4); /* A's line */
	job_end(&job);
}

static void formula_decimals_are_noted_once(void **state)
{
	struct job job = job_of(
		"point,chainage,invert\nA,0,100.291667\nB,20,\nC,50,99.791667\n", NONE);
	const struct rb_finding *note;

	(void)state;
	assert_non_null(job.inverts);
	assert_int_equal(job_invert(&job, "A").nm, 100 * RB_FOOT + 7 * RB_INCH / 2);
	assert_int_equal(job.findings.of_code[RB_CODE_SIXTYFOURTHS], 1);
	note = job_finding(&job.findings, RB_CODE_SIXTYFOURTHS);
	assert_int_equal(note->place.line, 2);
	assert_int_equal(note->place.cell, 2);
	assert_int_equal(note->argument[0].count, 2);
	assert_string_equal(note->argument[2].text, "100.291667");
	assert_int_equal(note->argument[3].length.nm, 100 * RB_FOOT + 7 * RB_INCH / 2);
	job_end(&job);
}

static void straight_pipe_needs_no_file(void **state)
{
	struct job job = job_new();
	const rb_slope quarter = { { RB_INCH / 4 }, { RB_FOOT } };

	(void)state;
	job.plan = rb_plan_straight(job.arena, &job.findings, RB_FEET_INCHES,
				    FT(96, 7500), quarter, FT(42, 0), RB_OUTLET_UNSAID);
	assert_non_null(job.plan);
	job.inverts = rb_inverts(job.arena, &job.findings, job.plan, FT(10, 0));
	assert_non_null(job.inverts);
	assert_int_equal(job.inverts->stations, 6);
	assert_string_equal(job.inverts->station[1].name, "0+10");
	assert_string_equal(job.inverts->station[5].name, "0+42");
	assert_int_equal(job_invert(&job, "0+42").nm, FT(95, 8750).nm);
	job_end(&job);

	job = job_new();
	job.plan = rb_plan_straight(job.arena, &job.findings, RB_FEET, FT(90, 0), quarter,
				    FT(48, 0), RB_OUTLET_FIRST);
	job.inverts = rb_inverts(job.arena, &job.findings, job.plan, NONE);
	assert_non_null(job.inverts);
	assert_int_equal(job_invert(&job, "0+48").nm, 91 * RB_FOOT);
	job_end(&job);
	job = job_new();
	assert_null(rb_plan_straight(job.arena, &job.findings, RB_FEET, FT(90, 0),
				     (rb_slope){ { 2 }, { 1 } }, FT(0, 0),
				     RB_OUTLET_FIRST));
	assert_true(job_found(&job.findings, RB_CODE_SLOPE_STEEP));
	assert_true(job_found(&job.findings, RB_CODE_NOT_ABOVE_ZERO));
	assert_int_equal(job_finding(&job.findings, RB_CODE_SLOPE_STEEP)->place.line, 0);
	assert_int_equal(job_finding(&job.findings, RB_CODE_NOT_ABOVE_ZERO)->place.line,
			 0);
	job_end(&job);
}

/* Each of the two faults alone is enough; a nanometre of pipe is none. */
static void straight_pipe_has_a_slope_and_a_length(void **state)
{
	/* clang-format off */
	static const struct { int64_t fall, length; bool is_pipe; } cases[] = {
		{ 1, 1, true }, { 1, 0, false }, { 1, -1, false }, { 2, 1, false }, { 2, 0, false },
	};
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();

		job.plan =
			rb_plan_straight(job.arena, &job.findings, RB_METRES, FT(90, 0),
					 (rb_slope){ { cases[i].fall }, { 1 } },
					 (rb_length){ cases[i].length }, RB_OUTLET_LAST);
		assert_int_equal(job.plan != NULL, cases[i].is_pipe);
		assert_int_equal(job.findings.count == 0, cases[i].is_pipe);
		job_end(&job);
	}
}

static void straight_pipe_in_metres(void **state)
{
	struct job job = job_new();

	(void)state;
	job.plan = rb_plan_straight(job.arena, &job.findings, RB_MILLIMETRES,
				    (rb_length){ 30 * RB_METRE },
				    (rb_slope){ { 1 }, { 50 } },
				    (rb_length){ 25 * RB_METRE }, RB_OUTLET_LAST);
	assert_int_equal(job.plan->unit, RB_MILLIMETRES);
	assert_int_equal(job.plan->plus, 0);
	assert_string_equal(job.plan->row[1].name, "25");
	assert_string_equal(job.plan->drain, "");
	assert_string_equal(job.plan->datum, "");
	assert_string_equal(job.plan->jurisdiction, "");
	assert_string_equal(job.plan->rules, "");
	assert_false(job.plan->pipe.measured);
	assert_false(rb_length_given(job.plan->pipe.size));
	job_end(&job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(reads_every_key_and_column),
		cmocka_unit_test(nothing_is_assumed),
		cmocka_unit_test(measured_sizes_override_the_table),
		cmocka_unit_test(measured_pipe_needs_no_table),
		cmocka_unit_test(stations_are_read_as_in_a_book),
		cmocka_unit_test(a_station_beside_a_chainage),
		cmocka_unit_test(a_dash_is_empty),
		cmocka_unit_test(semicolons_have_decimal_commas),
		cmocka_unit_test(every_fault_names_its_cell),
		cmocka_unit_test(missing_column_marks_the_row),
		cmocka_unit_test(inverts_have_a_place),
		cmocka_unit_test(long_plans_are_whole),
		cmocka_unit_test(a_nameless_row_has_its_chainage_for_a_name),
		cmocka_unit_test(the_ends_are_named),
		cmocka_unit_test(straight_pipe_has_a_slope_and_a_length),
		cmocka_unit_test(straight_pipe_in_metres),
		cmocka_unit_test(formula_decimals_are_noted_once),
		cmocka_unit_test(straight_pipe_needs_no_file),
	};

	return cmocka_run_group_tests_name("plan", tests, NULL, NULL);
}
