/* SPDX-License-Identifier: MIT */
/* The pipe as it lies: deviation, joints, ponds. */
#include "job.h"

#include "drain/laid.h"
#include "drain/match.h"

#define PIPE "pipe,4 in sch 40\n"
#define LINE "outlet,last\nslope,1%\npoint,chainage,invert\nA,0,95.00\nB,50,\nC,100,\n"
#define BOOK                                                                             \
	"point,chainage,known elevation,backsight,intermediate,foresight,rod on\nBM,,100.00,4.00,,,\n"

struct check {
	struct job job;
	struct rb_findings findings; /* of the book */
	struct rb_laid *laid;
};

static struct check laid_of(const char *plan, const char *book)
{
	struct check c = { .job = job_of(plan, NONE) };
	struct rb_minimum minimum = { .slope = { { 0 }, { 0 } } };
	struct rb_spots *spots;

	rb_findings_init(&c.findings, c.job.arena, "laid.csv");
	spots = job_book(c.job.arena, &c.findings, book);
	if (c.job.plan)
		minimum.slope = c.job.plan->minimum;
	if (c.job.inverts && spots)
		c.laid = rb_laid(c.job.arena, &c.findings, &c.job.findings, c.job.inverts,
				 spots, &minimum);
	return c;
}

/* HI 104.00: inverts 95.00, 94.50, 94.00; the top lies 4.263 in above, the inside top
 * 4.026 in. */
static void every_rod_is_turned_into_an_invert(void **state)
{
	struct check c = laid_of(PIPE LINE, BOOK "A,0,,,9.00,,invert\n"
						 "B,50,,,9' 1.737 in,,top of pipe\n"
						 "C,100,,,9' 7.974 in,,inside top\n");

	(void)state;
	job_print(&c.findings);
	assert_non_null(c.laid);
	assert_int_equal(c.laid->shots, 3);
	assert_int_equal(c.laid->shot[0].deviation.nm, 0);
	assert_int_equal(c.laid->shot[1].deviation.nm, 0);
	assert_int_equal(c.laid->shot[2].deviation.nm, 0);
	assert_int_equal(c.laid->shot[2].invert.nm, 94 * RB_FOOT);
	job_end(&c.job);
}

static void every_shot_says_where_the_rod_stood(void **state)
{
	/* clang-format off */
	static const struct { const char *rows; bool is_error; } cases[] = {
		{ "A,0,,,9.00,,invert\n", false },
		{ "A,0,,,9.00,,\n", true },
		{ "J1,,,,9.00,,\n", true },                      /* nowhere, and on nothing */
		{ "A,0,,,9.00,,invert\nTP,,,4.00,,5.00,\nC,100,,,9.00,,invert\n", false },
		{ "A,0,,,9.00,,invert\nB,,,4.00,,5.00,\n", true }, /* a station as turning point */
		{ "A,0,,,9.00,,invert\nBM,,,,,4.00,\n", false },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[400];
		struct check c;

		snprintf(book, sizeof book, BOOK "%s", cases[i].rows);
		c = laid_of(PIPE LINE, book);
		if (job_found(&c.findings, RB_CODE_LAID_WITHOUT_ROD_ON) !=
			    cases[i].is_error ||
		    !c.laid != cases[i].is_error) {
			print_error("row %zu\n", i);
			job_print(&c.findings);
			wrong++;
		}
		job_end(&c.job);
	}
	assert_int_equal(wrong, 0);
}

static void one_key_says_it_for_all(void **state)
{
	struct check c = laid_of(PIPE LINE, "rod on,invert\n" BOOK
					    "A,0,,,9.00,,\nC,100,,,10.00,,\n");

	(void)state;
	assert_non_null(c.laid);
	assert_int_equal(c.laid->shots, 2);
	job_end(&c.job);
}

static void a_top_needs_outside_and_wall(void **state)
{
	struct check c =
		laid_of(LINE, BOOK "A,0,,,8.60,,top of pipe\nC,100,,,10.00,,invert\n");

	(void)state;
	assert_null(c.laid);
	assert_int_equal(c.findings.of_code[RB_CODE_PIPE_NEEDED], 1);
	assert_int_equal(job_finding(&c.findings, RB_CODE_PIPE_NEEDED)->place.line, 3);
	job_end(&c.job);
}

static void deviation_is_judged_where_a_tolerance_is_given(void **state)
{
	struct check c = laid_of("grade tolerance,1/4 in\n" LINE,
				 BOOK "A,0,,,9.02,,invert\nB,50,,,9.52,,invert\n"
				      "C,100,,,9.97,,invert\n");

	(void)state;
	assert_int_equal(c.laid->shot[0].deviation.nm, -FT(0, 200).nm);
	assert_false(c.laid->shot[0].out); /* 0.24 in */
	assert_true(c.laid->shot[2].out);  /* 0.36 in high */
	assert_int_equal(c.findings.of_code[RB_CODE_LAID_OUT], 1);
	assert_string_equal(job_finding(&c.findings, RB_CODE_LAID_OUT)->argument[2].text,
			    "high");
	job_end(&c.job);

	c = laid_of("grade tolerance,1/4 in\n" LINE,
		    BOOK "A,0,,,9.03,,invert\nC,100,,,10.00,,invert\n");
	assert_int_equal(c.findings.of_code[RB_CODE_LAID_OUT], 1);
	assert_string_equal(job_finding(&c.findings, RB_CODE_LAID_OUT)->argument[2].text,
			    "low");
	job_end(&c.job);

	c = laid_of(LINE, BOOK "A,0,,,9.50,,invert\nC,100,,,11.97,,invert\n");
	assert_int_equal(c.findings.of_code[RB_CODE_LAID_OUT], 0);
	assert_int_equal(c.job.findings.of_code[RB_CODE_NO_GRADE_TOLERANCE], 1);
	job_end(&c.job);
}

/* Joints between stations are held against the grade there. */
static void joints_are_shots_too(void **state)
{
	struct check c =
		laid_of(LINE, BOOK "A,0,,,9.00,,invert\nJ1,13.5,,,9.14,,invert\n"
				   "J2,27,,,9.27,,invert\nC,100,,,10.00,,invert\n"
				   "off,120,,,9.00,,invert\nnowhere,,,,9.00,,invert\n");

	(void)state;
	assert_int_equal(c.laid->shots, 4);
	assert_int_equal(c.laid->shot[1].station, RB_NO_STATION);
	assert_int_equal(c.laid->shot[1].planned.nm, FT(94, 8650).nm);
	assert_int_equal(c.laid->shot[1].deviation.nm, -FT(0, 50).nm);
	assert_int_equal(c.findings.of_code[RB_CODE_SHOT_OFF_THE_LINE], 2);
	job_end(&c.job);
}

/* Right end to end, wrong in the middle. */
static void a_belly_is_found(void **state)
{
	struct check c = laid_of("minimum slope,0.5%\n" LINE,
				 BOOK "A,0,,,9.00,,invert\nB,50,,,10.10,,invert\n"
				      "C,100,,,10.00,,invert\n");

	(void)state;
	assert_int_equal(c.laid->leg[0].verdict, RB_LEG_OK);
	assert_int_equal(c.laid->leg[1].verdict, RB_LEG_UPHILL);
	assert_int_equal(c.findings.of_code[RB_CODE_LEG_UPHILL], 1);
	assert_int_equal(c.laid->ponds, 1);
	assert_int_equal(c.laid->pond[0].depth.nm, FT(0, 1000).nm);
	/* 0.10 of the 1.10 ft that the upper leg falls, of 50 ft, and the lower leg. */
	assert_int_equal(
		c.laid->pond[0].wet.nm,
		50 * RB_FOOT + rb_length_share((rb_length){ 50 * RB_FOOT }, 10, 110).nm);
	assert_int_equal(c.findings.of_code[RB_CODE_POND], 1);
	job_end(&c.job);
}

/* The leg above a manhole comes in over its step: the water reaches up from there. */
static void a_pond_reaches_through_a_manhole(void **state)
{
	struct check c = laid_of("outlet,last\nslope,1%\npoint,chainage,invert,step\n"
				 "A,0,95.00,\nB,50,,0.10\nC,100,,\n",
				 BOOK "A,0,,,9.00,,invert\nB,50,,,9.60,,invert\n"
				      "C,100,,,9.40,,invert\n");

	(void)state;
	assert_non_null(c.laid);
	assert_int_equal(c.laid->ponds, 1);
	assert_int_equal(c.laid->pond[0].depth.nm, FT(0, 2000).nm);
	/* 0.10 of the 0.50 ft from 94.50 to 95.00, of 50 ft, and the lower leg. */
	assert_int_equal(c.laid->pond[0].wet.nm, 60 * RB_FOOT);
	job_end(&c.job);
}

/* B is planned at 30.044571428 4/7 m: 1/4 in and 3/7 nm above it is out, though the
 * rounded invert lies 1/4 in below; 4/7 nm less than 1/4 in is not. */
static void the_exact_deviation_decides(void **state)
{
	static const struct {
		const char *reading;
		bool out;
	} cases[] = { { "1.449078571", true }, { "1.449078572", false } };

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[200];
		struct check c;

		snprintf(book, sizeof book, "unit,m\n" BOOK "B,,,,%s,,invert\n",
			 cases[i].reading);
		memcpy(strstr(book, "100.00,4.00"), "30.500,1.00", 11);
		c = laid_of("grade tolerance,1/4 in\noutlet,last\nslope,1 in 7\n"
			    "point,chainage,invert\nA,0,100.00\nB,10,\n",
			    book);
		assert_non_null(c.laid);
		assert_int_equal(c.laid->shot[0].out, cases[i].out);
		job_end(&c.job);
	}
}

/* Inverts 10.00, 9.90, 9.70, 9.78, 9.60: 0.08 ft of water at the third. */
static void ponds_by_walking_up(void **state)
{
	/* clang-format off */
	static const struct {
		const char *what;
		int inverts[6]; /* hundredths of a foot, every 10 ft; 0 ends */
		uint32_t ponds, from, to, deepest;
		int depth;
		int wet; /* hundredths of a foot of pipe */
	} cases[] = {
		{ "the worked one", { 1000, 990, 970, 978, 960 }, 1, 1, 3, 2, 8, 1400 },
		{ "none",           { 1000, 990, 980, 970, 960 }, 0, 0, 0, 0, 0, 0 },
		{ "level is none",  { 1000, 990, 990, 970, 960 }, 0, 0, 0, 0, 0, 0 },
		{ "to the top",     { 960, 950, 940, 980, 930 },  1, 0, 3, 2, 40, 3000 },
		{ "at the outlet",  { 1000, 990, 970, 950, 960 }, 1, 2, 4, 3, 10, 1500 },
		{ "two shots wide", { 1000, 970, 965, 980, 960 }, 1, 0, 3, 2, 15, 2333 },
		{ "two ponds",      { 1000, 960, 970, 940, 950 }, 2, 0, 2, 1, 10, 1250 },
		{ "a dam on a dam", { 1000, 970, 980, 975, 978 }, 2, 0, 2, 1, 10, 1333 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[500] =
			"point,chainage,known elevation,backsight,intermediate,rod on\n"
			"BM,,10.00,5.00,,\n";
		struct check c;

		for (int k = 0; k < 5; k++)
			snprintf(book + strlen(book), sizeof book - strlen(book),
				 "J%d,%d,,,%d.%02d,invert\n", k, 10 * k,
				 (1500 - cases[i].inverts[k]) / 100,
				 (1500 - cases[i].inverts[k]) % 100);
		c = laid_of("point,chainage,invert\nU,0,10\nD,40,9.6\n", book);
		if (!c.laid || c.laid->ponds != cases[i].ponds ||
		    (c.laid->ponds &&
		     (c.laid->pond[0].from != cases[i].from ||
		      c.laid->pond[0].to != cases[i].to ||
		      c.laid->pond[0].deepest != cases[i].deepest ||
		      c.laid->pond[0].depth.nm != FT(0, cases[i].depth * 100).nm ||
		      c.laid->pond[0].wet.nm * 100 / RB_FOOT != cases[i].wet))) {
			print_error("%s: %u ponds", cases[i].what,
				    c.laid ? c.laid->ponds : 99);
			if (c.laid && c.laid->ponds)
				print_error(", from %u to %u, deepest %u, %lld, wet %lld",
					    c.laid->pond[0].from, c.laid->pond[0].to,
					    c.laid->pond[0].deepest,
					    (long long)(c.laid->pond[0].depth.nm * 100 /
							RB_FOOT),
					    (long long)(c.laid->pond[0].wet.nm * 100 /
							RB_FOOT));
			print_error("\n");
			job_print(&c.findings);
			wrong++;
		}
		if (c.laid && c.findings.of_code[RB_CODE_POND] != cases[i].ponds) {
			print_error("%s: %zu told\n", cases[i].what,
				    c.findings.of_code[RB_CODE_POND]);
			wrong++;
		}
		job_end(&c.job);
	}
	assert_int_equal(wrong, 0);
}

/* Readings to 0.01 ft over 10 ft: a leg may be 0.01 ft flatter and nobody can tell. */
static void flat_within_the_reading_is_a_warning(void **state)
{
	struct check c = laid_of("minimum slope,1%\n" LINE,
				 BOOK "A,0,,,9.00,,invert\nJ1,10,,,9.09,,invert\n"
				      "J2,20,,,9.17,,invert\nC,100,,,10.00,,invert\n");

	(void)state;
	assert_int_equal(c.laid->leg[0].verdict, RB_LEG_FLAT);
	assert_true(c.laid->leg[0].within_reading);
	assert_int_equal(c.laid->leg[1].verdict, RB_LEG_FLAT);
	assert_false(c.laid->leg[1].within_reading);
	assert_int_equal(rb_slope_compare(c.laid->leg[0].uncertainty,
					  (rb_slope){ { 1 }, { 1000 } }),
			 0);
	assert_int_equal(c.findings.of_code[RB_CODE_LAID_FLAT_WITHIN], 1);
	assert_int_equal(c.findings.of_code[RB_CODE_LEG_FLAT], 1);
	job_end(&c.job);
}

/* At a step the leg that comes in ends on the upper invert. */
static void steps_are_no_fall_of_the_leg(void **state)
{
	struct check c = laid_of("outlet,last\nslope,1%\npoint,chainage,invert,step\n"
				 "A,0,95.00,\nB,50,,0.50\nC,100,,\n",
				 BOOK "A,0,,,9.00,,invert\nB,50,,,10.00,,invert\n"
				      "C,100,,,10.50,,invert\n");

	(void)state;
	assert_int_equal(c.laid->leg[0].fall.nm, FT(0, 5000).nm);
	assert_int_equal(c.laid->shot[1].deviation.nm, 0);
	assert_int_equal(c.laid->ponds, 0);
	job_end(&c.job);
}

#define STEPPED                                                                          \
	"grade tolerance,1/4 in\noutlet,last\nslope,1%\npoint,chainage,invert,step\n"    \
	"A,0,95.00,\nB,50,,0.50\nC,100,,\n" /* B: in 94.50, out 94.00; C 93.50 */

/* Which shots there are of a line with a step at B, and what follows for the legs. */
static void both_pipes_of_a_step_are_shot(void **state)
{
	/* clang-format off */
	static const struct { const char *rows; uint32_t shots, legs; int64_t fall[2]; int told, out, uphill; } cases[] = {
		{ "B in,,,,9.50,,invert\nB,50,,,10.00,,invert\n", 4, 2, { 5000, 5000 }, 0, 0, 0 },
		/* comes in 0.30 ft high, and so the leg to it 0.20 ft flatter than the plan's */
		{ "B IN,50,,,9.20,,invert\nB out,,,,10.00,,invert\n", 4, 2, { 2000, 5000 }, 0, 1, 0 },
		{ "B in,50,,,8.90,,invert\nB,50,,,10.00,,invert\n", 4, 2, { -1000, 5000 }, 0, 1, 1 },
		/* one of them alone: the step is the plan's, and so it is told */
		{ "B,50,,,10.00,,invert\n", 3, 2, { 5000, 5000 }, 1, 0, 0 },
		{ "B in,50,,,9.50,,invert\n", 3, 2, { 5000, 5000 }, 1, 0, 0 },
		{ "", 2, 1, { 10000, 0 }, 1, 0, 0 },
		/* the last shot of each */
		{ "B in,50,,,9.10,,invert\nB,50,,,10.00,,invert\nB in,50,,,9.50,,invert\n", 4, 2, { 5000, 5000 }, 0, 0, 0 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[400];
		struct check c;

		snprintf(book, sizeof book,
			 BOOK "A,0,,,9.00,,invert\n%sC,100,,,10.50,,invert\n",
			 cases[i].rows);
		c = laid_of(STEPPED, book);
		assert_non_null(c.laid);
		if (c.laid->shots != cases[i].shots || c.laid->legs != cases[i].legs ||
		    c.laid->leg[0].fall.nm != FT(0, cases[i].fall[0]).nm ||
		    (cases[i].legs > 1 &&
		     c.laid->leg[1].fall.nm != FT(0, cases[i].fall[1]).nm) ||
		    (int)c.findings.of_code[RB_CODE_STEP_NOT_SHOT] != cases[i].told ||
		    (int)c.findings.of_code[RB_CODE_LAID_OUT] != cases[i].out ||
		    (int)c.findings.of_code[RB_CODE_LEG_UPHILL] != cases[i].uphill) {
			print_error("case %zu\n", i);
			job_print(&c.findings);
			wrong++;
		}
		job_end(&c.job);
	}
	assert_int_equal(wrong, 0);
}

/* The pipe comes in lower than it goes out: water stands in it. */
static void a_step_that_goes_up_is_a_pond(void **state)
{
	struct check c =
		laid_of(STEPPED, BOOK "A,0,,,9.00,,invert\nB in,,,,10.10,,invert\n"
				      "B,50,,,10.00,,invert\n"
				      "C,100,,,10.50,,invert\n");

	(void)state;
	assert_non_null(c.laid);
	assert_int_equal(c.laid->ponds, 1);
	assert_int_equal(c.laid->pond[0].depth.nm, FT(0, 1000).nm);
	assert_string_equal(c.laid->shot[c.laid->pond[0].deepest].name, "B in");
	assert_string_equal(c.laid->shot[c.laid->pond[0].to].name, "B");
	job_end(&c.job);
}

/* What was shot beside the pipe, and what of the line nobody shot, is told. */
static void what_is_not_judged_is_told(void **state)
{
	/* clang-format off */
	static const struct { const char *rows; int elsewhere, parts; } cases[] = {
		{ "A,0,,,9.00,,invert\nB,50,,,9.50,,invert\nC,100,,,10.00,,invert\n", 0, 0 },
		{ "A,0,,,9.00,,invert\nB,50,,,3.50,,rim\nC,100,,,3.00,,ground\n", 1, 1 },
		{ "B,50,,,9.50,,invert\n", 0, 2 },
		{ "A,0,,,9.00,,invert\nC,100,,,10.00,,invert\nshed,,,,2.00,,ground\n", 1, 0 },
	};
	/* clang-format on */
	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[300];
		struct check c;

		snprintf(book, sizeof book, BOOK "%s", cases[i].rows);
		c = laid_of(LINE, book);
		assert_non_null(c.laid);
		assert_int_equal(c.findings.of_code[RB_CODE_NOT_ON_PIPE],
				 cases[i].elsewhere);
		assert_int_equal(c.findings.of_code[RB_CODE_LAID_IN_PART],
				 cases[i].parts);
		job_end(&c.job);
	}
}

/* Brought back and shot again: the later shot stands. */
static void the_later_shot_stands(void **state)
{
	struct check c = laid_of("grade tolerance,1/4 in\n" LINE,
				 BOOK "A,0,,,9.00,,invert\nB,50,,,9.40,,invert\n"
				      "C,100,,,10.00,,invert\nB,50,,,9.50,,invert\n");

	(void)state;
	assert_int_equal(c.laid->shots, 3);
	assert_int_equal(c.laid->shot[1].deviation.nm, 0);
	assert_int_equal(c.findings.of_code[RB_CODE_LAID_OUT], 0);
	assert_int_equal(c.findings.of_code[RB_CODE_SHOT_AGAIN], 1);
	job_end(&c.job);
}

/* On its top after its invert: that place was shot again too. */
static void the_later_surface_stands(void **state)
{
	struct check c =
		laid_of(PIPE LINE, BOOK "A,0,,,9.00,,invert\nB,50,,,9.40,,invert\n"
					"C,100,,,10.00,,invert\n"
					"B,50,,,9' 1.737 in,,top of pipe\n");

	(void)state;
	assert_int_equal(c.laid->shots, 3);
	assert_int_equal(c.laid->shot[1].rod_on, RB_ON_TOP_OF_PIPE);
	assert_int_equal(job_finding(&c.findings, RB_CODE_SHOT_AGAIN)->place.line, 4);
	job_end(&c.job);
}

/* A turning point on the pipe keeps the elevation on which the levels hang. */
static void a_turning_point_reached_again_replaces_nothing(void **state)
{
	struct check c = laid_of(LINE, BOOK "A,0,,,9.00,,invert\nB,50,,,,9.50,invert\n"
					    "B,50,,5.00,,,invert\nC,100,,,5.50,,invert\n"
					    "TP,,,,2.00,\nTP,,,3.00,,\n"
					    "B,50,,,,6.02,invert\nB,50,,5.00,,,invert\n"
					    "C,100,,,5.50,,invert\n");

	(void)state;
	assert_int_equal(c.laid->shots, 3);
	assert_int_equal(c.laid->shot[1].invert.nm, FT(94, 5000).nm);
	assert_int_equal(c.findings.of_code[RB_CODE_SHOT_AGAIN], 1); /* of C alone */
	job_end(&c.job);
}

static void a_shot_in_two_places_is_refused(void **state)
{
	struct check c =
		laid_of(LINE, BOOK "A,50,,,9.00,,invert\nC,100,,,10.00,,invert\n");

	(void)state;
	assert_null(c.laid);
	assert_int_equal(c.findings.of_code[RB_CODE_PLACE_DISAGREES], 1);
	job_end(&c.job);
}

/* The cell that is wrong is marked, on whichever row of a turning point it stands. */
static void the_cell_of_either_row_is_marked(void **state)
{
	/* clang-format off */
	static const struct { const char *rows; enum rb_code code; uint32_t line; } cases[] = {
		{ "B,25,,,,9.00,invert\nB,,,4.00,,,\n",    RB_CODE_PLACE_DISAGREES, 3 },
		{ "B,,,,,9.00,invert\nB,25,,4.00,,,\n",    RB_CODE_PLACE_DISAGREES, 4 },
		{ "B,25,,,,9.00,invert\nB,75,,4.00,,,\n",  RB_CODE_PLACE_DISAGREES, 3 },
		{ "J,120,,,,9.00,invert\nJ,,,4.00,,,\n",   RB_CODE_SHOT_OFF_THE_LINE, 3 },
		{ "J,,,,,9.00,invert\nJ,120,,4.00,,,\n",   RB_CODE_SHOT_OFF_THE_LINE, 4 },
		{ "J,,,,,9.00,invert\nJ,,,4.00,,,\n",      RB_CODE_SHOT_OFF_THE_LINE, 0 },
		{ "B,,,,,9.00,top of pipe\nB,,,4.00,,,\n", RB_CODE_PIPE_NEEDED, 3 },
		{ "B,,,,,9.00,\nB,,,4.00,,,top of pipe\n", RB_CODE_PIPE_NEEDED, 4 },
		{ "B,,,,,9.00,\nB,,,4.00,,,\n",            RB_CODE_LAID_WITHOUT_ROD_ON, 3 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[400];
		struct check c;
		const struct rb_finding *found;

		snprintf(book, sizeof book, BOOK "%sA,,,,9.00,,invert\n", cases[i].rows);
		c = laid_of(LINE, book);
		found = job_finding(&c.findings, cases[i].code);
		if ((found ? found->place.line : 0) != cases[i].line) {
			print_error("row %zu: line %u\n", i,
				    found ? found->place.line : 0);
			wrong++;
		}
		job_end(&c.job);
	}
	assert_int_equal(wrong, 0);
}

static void a_book_without_pipe_is_refused(void **state)
{
	struct check c = laid_of(LINE, BOOK "A,0,,,9.00,,ground\n");

	(void)state;
	assert_null(c.laid);
	assert_true(job_found(&c.findings, RB_CODE_NO_LAID_SHOTS));
	job_end(&c.job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_rod_is_turned_into_an_invert),
		cmocka_unit_test(every_shot_says_where_the_rod_stood),
		cmocka_unit_test(one_key_says_it_for_all),
		cmocka_unit_test(a_top_needs_outside_and_wall),
		cmocka_unit_test(deviation_is_judged_where_a_tolerance_is_given),
		cmocka_unit_test(joints_are_shots_too),
		cmocka_unit_test(a_belly_is_found),
		cmocka_unit_test(a_pond_reaches_through_a_manhole),
		cmocka_unit_test(the_exact_deviation_decides),
		cmocka_unit_test(ponds_by_walking_up),
		cmocka_unit_test(flat_within_the_reading_is_a_warning),
		cmocka_unit_test(steps_are_no_fall_of_the_leg),
		cmocka_unit_test(both_pipes_of_a_step_are_shot),
		cmocka_unit_test(a_step_that_goes_up_is_a_pond),
		cmocka_unit_test(what_is_not_judged_is_told),
		cmocka_unit_test(the_later_shot_stands),
		cmocka_unit_test(the_later_surface_stands),
		cmocka_unit_test(a_turning_point_reached_again_replaces_nothing),
		cmocka_unit_test(a_shot_in_two_places_is_refused),
		cmocka_unit_test(the_cell_of_either_row_is_marked),
		cmocka_unit_test(a_book_without_pipe_is_refused),
	};

	return cmocka_run_group_tests_name("laid", tests, NULL, NULL);
}
