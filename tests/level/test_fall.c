/* SPDX-License-Identifier: MIT */
/* Legs of a book: along the chainage, between two points, judged exactly. */
#include "../drain/job.h"

#include "level/fall.h"

#define HEAD "point,chainage,known elevation,backsight,intermediate,foresight,rod on\n"
#define BM   "BM,,100.00,4.00,,,\n" /* HI 104.00 */

struct run {
	struct job job;
	struct rb_fall *fall;
};

static struct run fall_of(const char *book, struct rb_fall_options options)
{
	struct run run = { .job = job_new() };
	struct rb_spots *spots = job_book(run.job.arena, &run.job.findings, book);

	if (spots)
		run.fall = rb_fall(run.job.arena, &run.job.findings, spots, &options);
	return run;
}

static struct rb_fall_options along(rb_slope minimum)
{
	return (struct rb_fall_options){ .length = rb_length_none(), .minimum = minimum };
}

static struct rb_fall_options between(const char *from, const char *to, rb_length length)
{
	return (struct rb_fall_options){ .from = from, .to = to, .length = length };
}

static const rb_slope nothing = { { 0 }, { 0 } };
static const rb_slope quarter = { { RB_INCH / 4 }, { RB_FOOT } };
static const rb_slope fiftieth = { { 1 }, { 50 } };

/* Rows in any order; legs in order of chainage, toward the lower end. */
static void along_the_chainage(void **state)
{
	struct run run =
		fall_of(HEAD BM "C,1+00,,,,7.00,\nA,0+00,,,5.00,,\nB,0+50,,,6.50,,\n",
			along(nothing));
	const struct rb_fall *fall = run.fall;

	(void)state;
	job_print(&run.job.findings);
	assert_non_null(fall);
	assert_int_equal(fall->legs, 2);
	assert_string_equal(fall->leg[0].from, "A");
	assert_string_equal(fall->leg[0].to, "B");
	assert_int_equal(fall->leg[0].fall.nm, FT(1, 5000).nm);
	assert_int_equal(fall->leg[0].length.nm, 50 * RB_FOOT);
	assert_int_equal(fall->leg[1].fall.nm, FT(0, 5000).nm);
	assert_int_equal(fall->leg[0].verdict, RB_LEG_NOT_JUDGED);
	assert_string_equal(fall->run[0].total.from, "A");
	assert_string_equal(fall->run[0].total.to, "C");
	assert_int_equal(fall->run[0].total.fall.nm, 2 * RB_FOOT);
	assert_int_equal(fall->run[0].total.length.nm, 100 * RB_FOOT);
	/* One place of 0.01 ft over the run: half of it at either end. */
	assert_int_equal(
		rb_slope_compare(fall->leg[0].uncertainty, (rb_slope){ { 1 }, { 5000 } }),
		0);
	job_end(&run.job);
}

static void the_outlet_may_be_said(void **state)
{
	const char *book = HEAD BM "A,0+00,,,7.00,,\nB,0+50,,,6.50,,\nC,1+00,,,5.00,,\n";
	struct rb_fall_options options = along(nothing);
	struct run run = fall_of(book, options);

	(void)state;
	assert_string_equal(run.fall->leg[0].from, "C"); /* the lower end is A */
	assert_int_equal(run.fall->leg[0].fall.nm, FT(1, 5000).nm);
	assert_string_equal(run.fall->leg[0].to, "B");
	assert_string_equal(run.fall->leg[1].from, "B");
	assert_string_equal(run.fall->leg[1].to, "A");
	job_end(&run.job);
	options.outlet = RB_TO_LAST;
	run = fall_of(book, options);
	assert_string_equal(run.fall->leg[0].from, "A");
	assert_int_equal(run.fall->leg[0].verdict, RB_LEG_UPHILL);
	assert_int_equal(run.fall->run[0].total.fall.nm, -2 * RB_FOOT);
	assert_int_equal(run.job.findings.of_severity[RB_FAILED],
			 0); /* ground may rise */
	job_end(&run.job);
	options.outlet = RB_TO_FIRST;
	run = fall_of(book, options);
	assert_string_equal(run.fall->leg[0].from, "C");
	job_end(&run.job);
	/* Where neither end is lower it runs as the chainage does. */
	run = fall_of(HEAD BM "A,0+00,,,5.00,,\nB,0+50,,,6.50,,\nC,1+00,,,5.00,,\n",
		      along(nothing));
	assert_string_equal(run.fall->leg[0].from, "A");
	job_end(&run.job);
}

/* clang-format off */
static const struct verdict_case {
	const char *what, *rod_on;
	int drop;         /* hundredths of a foot over 50 ft */
	rb_slope minimum;
	enum rb_leg_verdict verdict;
	bool fails, within;
} verdict_cases[] = {
	{ "1:50 passes 1:50",           "",       100, { { 1 }, { 50 } }, RB_LEG_OK,   false, false },
	{ "1:50 fails 1/4 in/ft",       "",       100, { { 1 }, { 48 } }, RB_LEG_FLAT, true,  false },
	{ "flat by less than a place",  "",        99, { { 1 }, { 50 } }, RB_LEG_FLAT, true,  true },
	{ "a place flatter",            "",        98, { { 1 }, { 50 } }, RB_LEG_FLAT, true,  false },
	{ "level ground, nothing asked", "",        0, { { 0 }, { 0 } },  RB_LEG_LEVEL, false, true },
	{ "level ground, asked",        "",         0, { { 1 }, { 50 } }, RB_LEG_LEVEL, true, false },
	{ "level pipe, nothing asked",  "invert",   0, { { 0 }, { 0 } },  RB_LEG_LEVEL, true, true },
	{ "uphill by a place: level at best", "invert", -1, { { 0 }, { 0 } }, RB_LEG_UPHILL, true, false },
	{ "pipe uphill",                "top of pipe", -5, { { 0 }, { 0 } }, RB_LEG_UPHILL, true, false },
	{ "pipe falls, nothing asked",  "invert",   5, { { 0 }, { 0 } },  RB_LEG_NOT_JUDGED, false, false },
};
/* clang-format on */

static void verdicts(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof verdict_cases / sizeof *verdict_cases; i++) {
		const struct verdict_case *c = &verdict_cases[i];
		struct rb_fall_options options = along(c->minimum);
		char book[300];
		struct run run;

		options.outlet = RB_TO_LAST;
		snprintf(book, sizeof book,
			 HEAD BM "A,0,,,5.00,,%s\nB,50,,,%d.%02d,,%s\n", c->rod_on,
			 (500 + c->drop) / 100, (500 + c->drop) % 100, c->rod_on);
		run = fall_of(book, options);
		if (!run.fall || run.fall->leg[0].verdict != c->verdict ||
		    run.fall->leg[0].within_reading != c->within ||
		    (run.job.findings.of_severity[RB_FAILED] == 1) != c->fails) {
			print_error("%s\n", c->what);
			job_print(&run.job.findings);
			wrong++;
		}
		job_end(&run.job);
	}
	assert_int_equal(wrong, 0);
}

/* What was asked for is told where something was, beside what there is. */
static void the_minimum_is_told(void **state)
{
	const char *book = HEAD BM "A,0,,,5.00,,invert\nB,50,,,5.00,,invert\n";
	struct run run = fall_of(book, along(fiftieth));

	(void)state;
	assert_int_equal(
		job_finding(&run.job.findings, RB_CODE_LEG_LEVEL)->argument[3].kind,
		RB_SLOPE);
	job_end(&run.job);
	run = fall_of(book, along(nothing));
	assert_int_equal(
		job_finding(&run.job.findings, RB_CODE_LEG_LEVEL)->argument[3].kind,
		RB_NOTHING);
	job_end(&run.job);
}

/* Only like is compared with like: the tops of a pipe with the tops, and pipes first. */
static void each_surface_is_a_run_of_its_own(void **state)
{
	struct run run = fall_of(HEAD BM "A,0,,,4.10,,ground\nA,0,,,8.60,,top of pipe\n"
					 "B,50,,,4.00,,ground\nB,50,,,9.60,,top of pipe\n"
					 "C,90,,,3.00,,floor\n",
				 along(fiftieth));

	(void)state;
	assert_int_equal(run.fall->runs, 2);
	assert_int_equal(run.fall->run[0].rod_on, RB_ON_TOP_OF_PIPE);
	assert_int_equal(run.fall->leg[0].fall.nm, RB_FOOT);
	assert_int_equal(run.fall->leg[0].verdict, RB_LEG_OK);
	assert_int_equal(run.fall->run[1].rod_on, RB_ON_GROUND);
	assert_int_equal(run.fall->run[0].first, 0);
	assert_int_equal(run.fall->run[0].legs, 1);
	assert_int_equal(run.fall->run[1].first, 1);
	assert_int_equal(run.fall->run[1].legs, 1);
	job_end(&run.job);
}

static void between_two_points(void **state)
{
	const char *book =
		HEAD BM "House,,,,5.00,,\nMain,,,,6.00,,\nX,10,,,5.00,,\nY,60,,,5.50,,\n";
	struct run run = fall_of(book, between("house", "MAIN ", FT(48, 0)));

	(void)state;
	assert_non_null(run.fall);
	assert_int_equal(rb_slope_compare(run.fall->leg[0].slope, quarter), 0);
	assert_string_equal(run.fall->leg[0].from, "House");
	job_end(&run.job);
	run = fall_of(book, between("Main", "House", FT(48, 0)));
	assert_int_equal(run.fall->leg[0].verdict, RB_LEG_UPHILL);
	job_end(&run.job);
	run = fall_of(book, between("X", "Y", NONE)); /* by their chainage */
	assert_int_equal(run.fall->leg[0].length.nm, 50 * RB_FOOT);
	job_end(&run.job);
	run = fall_of(book, between("BM", "House", FT(10, 0)));
	assert_int_equal(run.fall->leg[0].fall.nm, RB_FOOT); /* 100.00 to 99.00 */
	job_end(&run.job);
}

/* Of two points of a name the one on which the rod stood as on the other end. */
static void like_is_sought_for_like(void **state)
{
	struct run run = fall_of(HEAD BM "House,,,,5.00,,invert\nMain,,,,3.00,,ground\n"
					 "Main,,,,6.00,,invert\nMain,,,,6.50,,invert\n",
				 between("House", "Main", FT(48, 0)));

	(void)state;
	assert_non_null(run.fall);
	assert_int_equal(run.fall->leg[0].fall.nm, RB_FOOT * 3 / 2); /* the last shot */
	assert_int_equal(run.fall->run[0].first, 0);
	assert_int_equal(run.fall->run[0].legs, 1);
	assert_int_equal(run.job.findings.of_code[RB_CODE_ROD_ON_DIFFERS], 0);
	job_end(&run.job);
	run = fall_of(HEAD BM "House,,,,5.00,,invert\nMain,,,,3.00,,ground\n"
			      "Main,,,,6.00,,hub\n",
		      between("House", "Main", FT(48, 0)));
	assert_int_equal(run.fall->leg[0].fall.nm, -2 * RB_FOOT); /* the first of them */
	assert_int_equal(run.job.findings.of_code[RB_CODE_ROD_ON_DIFFERS], 1);
	job_end(&run.job);
}

static void a_point_of_nearly_that_name_is_offered(void **state)
{
	/* clang-format off */
	static const struct { const char *asked, *offered; /* NULL: none */ } cases[] = {
		{ "Hose",   "House" },
		{ "Hoze",   NULL },     /* short, and two letters apart */
		{ "Houzze", "House" },
		{ "Main5",  "Mainx" },  /* the nearest */
		{ "Mainy",  "Mainx" },  /* the first of two as near */
		{ "Mainyz", "Mainyy" }, /* nearer than Mainx, which stands before it */
		{ "Hauze",  "House" },  /* of five letters two may be wrong */
		{ "BN",     "BM" },
		{ "elsewhere", NULL },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct run run = fall_of(HEAD BM "House,,,,5.00,,\nMainx,,,,6.00,,\n"
						 "Mainyy,,,,6.00,,\n",
					 between(cases[i].asked, "House", FT(48, 0)));
		const struct rb_argument *a =
			&job_finding(&run.job.findings, RB_CODE_NO_SUCH_POINT)
				 ->argument[1];
		const char *offered = a->kind == RB_TEXT ? a->text : NULL;

		if (run.fall || !offered != !cases[i].offered ||
		    (offered && strcmp(offered, cases[i].offered))) {
			print_error("%s: %s\n", cases[i].asked,
				    offered ? offered : "nothing");
			wrong++;
		}
		job_end(&run.job);
	}
	assert_int_equal(wrong, 0);
}

/* A name as long as a remark is a name too, but no other. */
static void long_names_are_no_trouble(void **state)
{
	for (int length = 250; length < 262; length++) {
		char book[800] = HEAD BM, name[300];
		struct run run;

		memset(name, 'n', sizeof name);
		name[length] = '\0';
		snprintf(book + strlen(book), sizeof book - strlen(book),
			 "%s,,,,3.00,,\nHouse,,,,5.00,,\nMain,,,,6.00,,\n", name);
		run = fall_of(book, between("House", "Main", FT(48, 0)));
		assert_non_null(run.fall);
		assert_int_equal(run.fall->leg[0].fall.nm, RB_FOOT);
		job_end(&run.job);
		run = fall_of(book, between(name, "Main", FT(48, 0)));
		assert_true(length < 256 ? run.fall->leg[0].fall.nm == 3 * RB_FOOT
					 : !run.fall);
		job_end(&run.job);
	}
	(void)state;
}

static void what_cannot_be_worked_out_is_an_error(void **state)
{
	const char *book = HEAD BM "House,,,,5.00,,\nMain,,,,6.00,,invert\n";
	struct run run = fall_of(book, between("Hose", "Main", FT(48, 0)));

	(void)state;
	assert_null(run.fall);
	assert_string_equal(
		job_finding(&run.job.findings, RB_CODE_NO_SUCH_POINT)->argument[1].text,
		"House");
	job_end(&run.job);
	run = fall_of(book, between("House", "Main", NONE));
	assert_true(job_found(&run.job.findings, RB_CODE_NO_LENGTH));
	assert_true(job_found(&run.job.findings, RB_CODE_ROD_ON_DIFFERS));
	job_end(&run.job);
	run = fall_of(book, between("House", "BM", FT(0, 0)));
	assert_null(run.fall);
	assert_true(job_found(&run.job.findings, RB_CODE_ZERO_LENGTH));
	job_end(&run.job);
	run = fall_of(book, along(nothing));
	assert_null(run.fall);
	assert_true(job_found(&run.job.findings, RB_CODE_NO_LEGS));
	job_end(&run.job);
	run = fall_of(HEAD BM "X,10,,,5.00,,\nHouse,,,,6.00,,\n",
		      between("X", "House", NONE)); /* one chainage is no length */
	assert_null(run.fall);
	assert_true(job_found(&run.job.findings, RB_CODE_NO_LENGTH));
	job_end(&run.job);
	run = fall_of(HEAD BM "X,10,,,5.00,,\nY,10,,,6.00,,\n",
		      between("X", "Y", NONE)); /* and twice the same is none to go */
	assert_null(run.fall);
	assert_true(job_found(&run.job.findings, RB_CODE_ZERO_LENGTH));
	assert_false(job_found(&run.job.findings, RB_CODE_NO_LENGTH));
	job_end(&run.job);
	run = fall_of(HEAD BM "X,10,,,5.00,,\n", between("X", "X", NONE));
	assert_null(run.fall);
	assert_true(job_found(&run.job.findings, RB_CODE_ZERO_LENGTH));
	job_end(&run.job);
}

/* A length that is asked for goes before the chainages, with a word where they differ. */
static void a_length_that_differs_is_told(void **state)
{
	const struct {
		rb_length length;
		int64_t counts;
		bool told;
	} cases[] = {
		{ FT(12, 0), 12 * RB_FOOT, true },
		{ FT(10, 0), 10 * RB_FOOT, false },
		{ NONE, 10 * RB_FOOT, false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct run run = fall_of(HEAD BM "X,10,,,5.00,,\nY,20,,,6.00,,\n",
					 between("X", "Y", cases[i].length));

		assert_non_null(run.fall);
		assert_int_equal(run.fall->leg[0].length.nm, cases[i].counts);
		assert_int_equal(job_found(&run.job.findings, RB_CODE_LENGTH_DIFFERS),
				 cases[i].told);
		job_end(&run.job);
	}
}

/* The benchmark is a place like others where it has a chainage. */
static void a_run_may_begin_at_the_benchmark(void **state)
{
	struct run run =
		fall_of(HEAD "BM,0,100.00,4.00,,,\nA,50,,,5.00,,\n", along(nothing));

	(void)state;
	assert_non_null(run.fall);
	assert_int_equal(run.fall->legs, 1);
	assert_string_equal(run.fall->leg[0].from, "BM");
	assert_int_equal(run.fall->leg[0].fall.nm, RB_FOOT);
	job_end(&run.job);
}

static void two_points_at_one_chainage(void **state)
{
	struct run run = fall_of(HEAD BM "A,0,,,5.00,,\nB,50,,,6.00,,\nleft,50,,,5.20,,\n"
					 "C,90,,,7.00,,\n",
				 along(nothing));

	(void)state;
	assert_int_equal(run.fall->legs, 2);
	assert_string_equal(run.fall->leg[1].from, "B");
	assert_int_equal(run.job.findings.of_code[RB_CODE_SPOTS_AT_ONE_CHAINAGE], 1);
	job_end(&run.job);
}

/* A rim with a tape let down to the invert: the fall is that of the inverts. */
static void rims_with_a_dip_are_inverts(void **state)
{
	struct run run = fall_of("point,chainage,known elevation,backsight,intermediate,"
				 "measure down,rod on\nBM,,100.00,4.00,,,\n"
				 "MH-1,0,,,5.00,6.00,rim\nMH-2,100,,,4.00,8.00,rim\n",
				 along(nothing));

	(void)state;
	assert_int_equal(run.fall->run[0].rod_on, RB_ON_INVERT);
	assert_int_equal(run.fall->leg[0].fall.nm, RB_FOOT); /* 93.00 to 92.00 */
	assert_string_equal(run.fall->leg[0].from, "MH-1");
	job_end(&run.job);
}

static void nameless_points_go_by_their_chainage(void **state)
{
	struct run run =
		fall_of(HEAD BM ",0+00,,,5.00,,\n,0+12.5,,,5.50,,\n", along(nothing));

	(void)state;
	assert_string_equal(run.fall->leg[0].from, "0+00");
	assert_string_equal(run.fall->leg[0].to, "0+12.5");
	job_end(&run.job);
}

/* Adjusted elevations where the section was adjusted. */
static void adjusted_elevations_are_used(void **state)
{
	struct run run = fall_of(
		"tolerance,0.05 ft\n"
		"point,chainage,known elevation,backsight,intermediate,foresight\n"
		"BM,,100.00,4.00,,\nA,0,,,5.00,\nTP,,,4.00,,4.00\nB,50,,,6.00,\n"
		"BM,,,,,3.96\n",
		along(nothing));

	(void)state;
	job_print(&run.job.findings);
	/* 0.04 high: A 99.00 - 0.02, B 98.00 - 0.04 */
	assert_int_equal(run.fall->leg[0].fall.nm, FT(1, 200).nm);
	job_end(&run.job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(along_the_chainage),
		cmocka_unit_test(the_outlet_may_be_said),
		cmocka_unit_test(verdicts),
		cmocka_unit_test(the_minimum_is_told),
		cmocka_unit_test(each_surface_is_a_run_of_its_own),
		cmocka_unit_test(between_two_points),
		cmocka_unit_test(like_is_sought_for_like),
		cmocka_unit_test(a_point_of_nearly_that_name_is_offered),
		cmocka_unit_test(long_names_are_no_trouble),
		cmocka_unit_test(what_cannot_be_worked_out_is_an_error),
		cmocka_unit_test(a_length_that_differs_is_told),
		cmocka_unit_test(a_run_may_begin_at_the_benchmark),
		cmocka_unit_test(two_points_at_one_chainage),
		cmocka_unit_test(rims_with_a_dip_are_inverts),
		cmocka_unit_test(nameless_points_go_by_their_chainage),
		cmocka_unit_test(adjusted_elevations_are_used),
	};

	return cmocka_run_group_tests_name("fall", tests, NULL, NULL);
}
