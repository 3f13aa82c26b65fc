/* SPDX-License-Identifier: MIT */
/* Ground, hubs, covers and boards. */
#include "job.h"

#include "drain/cut_sheet.h"

#define PLAN                                                                             \
	"pipe,4 in sch 40\nbedding,4 in\ncover,2\noutlet,last\nslope,1%\n"               \
	"point,chainage,invert\nA,0+00,95.00\nB,0+50,\nC,1+00,\n"
#define BOOK "point,chainage,known elevation,backsight,intermediate,foresight,rod on\n"

struct sheet {
	struct job job;
	struct rb_findings findings; /* of the book */
	struct rb_cut_sheet *sheet;
};

static struct sheet sheet_of(const char *plan, const char *book, rb_length interval)
{
	struct sheet s = { .job = job_of(plan, interval) };
	struct rb_spots *ground = NULL;

	rb_findings_init(&s.findings, s.job.arena, "ground.csv");
	if (book)
		ground = job_book(s.job.arena, &s.findings, book);
	if (s.job.inverts && (ground || !book))
		s.sheet = rb_cut_sheet(s.job.arena, &s.job.findings, &s.findings,
				       s.job.inverts, ground, NONE);
	return s;
}

/* BM at 100.00, HI 104.00. */
static void cuts_and_covers(void **state)
{
	struct sheet s = sheet_of(PLAN,
				  BOOK "BM,,100.00,4.00,,,\n"
				       "A,0+00,,,4.50,,ground\n"
				       "B hub,0+50,,,3.90,,hub\n"
				       "ground,0+50,,,4.10,,ground\n"
				       "C,,,,6.60,,\n",
				  NONE);
	const struct rb_cut *cut;

	(void)state;
	job_print(&s.findings);
	assert_non_null(s.sheet);
	cut = s.sheet->cut;
	assert_int_equal(cut[0].ground.nm, FT(99, 5000).nm);
	assert_int_equal(cut[0].cut.nm, FT(4, 5000).nm);
	assert_int_equal(cut[0].cut_to_trench.nm, FT(4, 5000).nm + 4237 * RB_INCH / 1000);
	assert_int_equal(cut[0].cover.nm, FT(4, 5000).nm - 4263 * RB_INCH / 1000);
	assert_false(rb_length_given(cut[0].hub));
	assert_int_equal(cut[1].ground.nm, FT(99, 9000).nm); /* by chainage */
	assert_int_equal(cut[1].hub.nm, FT(100, 1000).nm);
	assert_int_equal(cut[1].hub_cut.nm, FT(5, 6000).nm);
	assert_int_equal(cut[1].hub_cut_to_trench.nm,
			 FT(5, 6000).nm + 4237 * RB_INCH / 1000);
	assert_int_equal(cut[2].ground.nm, FT(97, 4000).nm); /* by name, rod on unsaid */
	assert_int_equal(s.sheet->board.nm, 6 * RB_FOOT);    /* 5.6 is the highest */
	assert_int_equal(cut[1].board.nm, FT(0, 4000).nm);
	assert_false(rb_length_given(cut[0].board));
	assert_string_equal(s.sheet->deepest.where, "B");
	assert_int_equal(s.sheet->deepest.value.nm,
			 FT(5, 4000).nm + 4237 * RB_INCH / 1000);
	assert_false(s.sheet->at_least);
	assert_string_equal(s.sheet->least_cover.where, "C");
	assert_int_equal(s.job.findings.of_code[RB_CODE_COVER_SHORT], 0);
	job_end(&s.job);
}

static void ground_between_shots_is_a_straight_line(void **state)
{
	struct sheet s = sheet_of(PLAN,
				  BOOK "BM,,100.00,4.00,,,\nG1,0+10,,,4.00,,ground\n"
				       "G2,0+70,,,7.00,,ground\n",
				  FT(10, 0));
	int wrong = 0;

	(void)state;
	assert_non_null(s.sheet);
	for (uint32_t i = 0; i < s.job.inverts->stations; i++) {
		int64_t at = s.job.inverts->station[i].chainage.nm / RB_FOOT;
		const struct rb_cut *cut = &s.sheet->cut[i];
		enum rb_ground_how how = at == 10 || at == 70 ? RB_GROUND_SHOT
					 : at > 10 && at < 70 ? RB_GROUND_BETWEEN
							      : RB_GROUND_UNKNOWN;

		wrong += cut->how != how || rb_length_given(cut->ground) != !!how ||
			 (how &&
			  cut->ground.nm != FT(100, 0).nm - (at - 10) * RB_FOOT / 20);
	}
	assert_int_equal(wrong, 0);
	job_end(&s.job);
}

/* A shot that carries a station's name needs no chainage of its own. */
static void a_named_shot_stands_on_the_line(void **state)
{
	struct sheet s = sheet_of(PLAN,
				  BOOK "BM,,100.00,4.00,,,\nA,,,,4.00,,ground\n"
				       "C,,,,6.00,,ground\n",
				  NONE);

	(void)state;
	assert_non_null(s.sheet);
	assert_int_equal(s.sheet->cut[1].how, RB_GROUND_BETWEEN);
	assert_int_equal(s.sheet->cut[1].ground.nm, FT(99, 0).nm);
	assert_string_equal(s.sheet->deepest.where, "A"); /* 5 ft, as at C: 4 ft */
	job_end(&s.job);
}

/* The first row of a book may be ground, too; of places as deep the first is named. */
static void a_benchmark_on_the_ground(void **state)
{
	struct sheet s = sheet_of(PLAN,
				  BOOK "A,0+00,100.00,4.00,,,ground\n"
				       "B,0+50,,,4.50,,ground\nC,1+00,,,5.00,,ground\n",
				  NONE);

	(void)state;
	assert_non_null(s.sheet);
	assert_int_equal(s.sheet->cut[0].ground.nm, FT(100, 0).nm);
	assert_string_equal(s.sheet->deepest.where, "A");
	assert_int_equal(s.sheet->deepest.value.nm, 5 * RB_FOOT + 4237 * RB_INCH / 1000);
	job_end(&s.job);
}

/* A bank between two stations is the deepest place, and names its shot. */
static void the_deepest_may_lie_between(void **state)
{
	struct sheet s =
		sheet_of(PLAN,
			 BOOK "BM,,100.00,4.00,,,\nA,0+00,,,4.00,,ground\n"
			      "bank,0+30,,,1.00,,ground\nC,1+00,,,4.00,,ground\n",
			 NONE);

	(void)state;
	assert_string_equal(s.sheet->deepest.where, "bank");
	assert_int_equal(s.sheet->deepest.value.nm,
			 FT(8, 3000).nm + 4237 * RB_INCH / 1000);
	assert_int_equal(s.sheet->deepest.chainage.nm, 30 * RB_FOOT);
	job_end(&s.job);
}

static void too_little_cover_fails(void **state)
{
	struct sheet s =
		sheet_of(PLAN,
			 BOOK "BM,,100.00,4.00,,,\nA,0+00,,,4.00,,ground\n"
			      "B,0+50,,,7.20,,ground\nditch,0+70,,,7.50,,ground\n"
			      "C,1+00,,,4.00,,ground\n",
			 NONE);
	const struct rb_finding *f = job_finding(&s.job.findings, RB_CODE_COVER_SHORT);

	(void)state;
	assert_int_equal(s.job.findings.of_code[RB_CODE_COVER_SHORT], 2);
	assert_string_equal(f->argument[2].text, "B");
	assert_int_equal(f->place.line, 0); /* of the line, not of a row */
	assert_string_equal(f->place.point, "B");
	assert_int_equal(f->argument[1].length.nm, 2 * RB_FOOT);
	assert_string_equal(s.sheet->least_cover.where, "ditch");
	job_end(&s.job);
}

/* The cover at B is a seventh of a nanometre less than 2 ft. */
/* Over a step the pipe that comes in has less over it, at B 1.50 ft less 4.263 in. */
static void the_pipe_that_comes_in_has_its_cover(void **state)
{
	static const char *const covers[] = { "1.1", "1.2" }; /* it has 1.14475 ft */

	(void)state;
	for (int i = 0; i < 2; i++) {
		char plan[300];
		struct sheet s;

		snprintf(
			plan, sizeof plan,
			"pipe,4 in sch 40\ncover,%s\noutlet,last\nslope,1%%\n"
			"point,chainage,invert,step\nA,0+00,95.00,\nB,0+50,,0.50\nC,1+00,,\n",
			covers[i]);
		s = sheet_of(plan, BOOK "BM,,100.00,4.00,,,\nB,0+50,,,8.00,,ground\n",
			     NONE);
		assert_non_null(s.sheet);
		assert_int_equal(s.sheet->cut[1].cover.nm,
				 2 * RB_FOOT - 4263 * RB_INCH / 1000);
		assert_int_equal(s.sheet->cut[1].cover_in.nm,
				 3 * RB_FOOT / 2 - 4263 * RB_INCH / 1000);
		assert_int_equal(s.sheet->least_cover.value.nm,
				 s.sheet->cut[1].cover_in.nm);
		assert_int_equal(s.sheet->cut[1].is_short, i);
		assert_int_equal(s.job.findings.of_code[RB_CODE_COVER_SHORT], i);
		assert_false(rb_length_given(s.sheet->cut[0].cover_in));
		job_end(&s.job);
	}
}

static void the_exact_cover_decides(void **state)
{
	struct sheet s = sheet_of(
		"pipe,4 in sch 40\nbedding,4 in\ncover,2\noutlet,last\n"
		"slope,1 in 7\npoint,chainage,invert\nA,0,100.00\nB,20,\n",
		"unit,m\n" BOOK "BM,,30.5,1.0,,,\nB,,,,1.172976943,,ground\n", NONE);

	(void)state;
	assert_non_null(s.sheet);
	assert_int_equal(s.sheet->cut[1].cover.nm, 2 * RB_FOOT);
	assert_true(s.sheet->cut[1].is_short);
	assert_int_equal(s.job.findings.of_code[RB_CODE_COVER_SHORT], 1);
	job_end(&s.job);
}

/* Ground falls from shot to shot: half a nanometre on the way goes up, not down. */
static void ground_between_shots_is_rounded_once(void **state)
{
	struct sheet s = sheet_of(PLAN,
				  "unit,m\n" BOOK "BM,,30.5,1.0,,,\n"
				  "A,,,,1.000000000,,ground\nC,,,,1.000000001,,ground\n",
				  NONE);

	(void)state;
	assert_non_null(s.sheet);
	assert_int_equal(s.sheet->cut[1].how, RB_GROUND_BETWEEN);
	assert_int_equal(s.sheet->cut[1].ground.nm, INT64_C(30500000000));
	job_end(&s.job);
}

/* Exactly what is asked is enough, and what is found too little is told as it is. */
static void just_enough_cover_passes(void **state)
{
	static const char plan[] = "pipe outside,1 ft\npipe wall,1/2 in\ncover,2\n"
				   "outlet,last\nslope,1%\npoint,chainage,invert\n"
				   "A,0+00,95.00\nB,0+50,\n";
	/* clang-format off */
	static const struct { const char *ground; int64_t told; /* 0: nothing is */ } cases[] = {
		{ "97'-11 1/2\"", 0 }, { "97'-11 15/32\"", 2 * RB_FOOT - 2 * RB_SIXTYFOURTH },
	};
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[300];
		struct sheet s;
		const struct rb_finding *f;

		snprintf(book, sizeof book, BOOK "A,0+00,\"%s\"\",0,,,ground\n",
			 cases[i].ground);
		s = sheet_of(plan, book, NONE);
		assert_non_null(s.sheet);
		f = job_finding(&s.job.findings, RB_CODE_COVER_SHORT);
		assert_int_equal(f != NULL, cases[i].told != 0);
		if (f)
			assert_int_equal(f->argument[0].length.nm, cases[i].told);
		job_end(&s.job);
	}
}

/* The only shot stands between two stations. */
static void a_bank_alone_is_the_deepest(void **state)
{
	struct sheet s = sheet_of(
		PLAN, BOOK "BM,,100.00,4.00,,,\nbank,0+30,,,1.00,,ground\n", NONE);

	(void)state;
	assert_non_null(s.sheet);
	assert_string_equal(s.sheet->deepest.where, "bank");
	assert_string_equal(s.sheet->least_cover.where, "bank");
	job_end(&s.job);
}

static void a_fill_is_negative(void **state)
{
	struct sheet s =
		sheet_of(PLAN, BOOK "BM,,100.00,4.00,,,\nA,0+00,,,9.50,,ground\n", NONE);

	(void)state;
	assert_int_equal(s.sheet->cut[0].cut.nm, -FT(0, 5000).nm);
	assert_int_equal(s.sheet->board.nm, RB_FOOT);
	job_end(&s.job);
}

static void name_and_chainage_must_agree(void **state)
{
	/* clang-format off */
	static const struct { const char *row; bool is_error; } cases[] = {
		{ "B,0+50,,,4.00,,ground\n", false },
		{ "b ,0+50,,,4.00,,ground\n", false }, /* case and blanks are no difference */
		{ "B,0+60,,,4.00,,ground\n", true },
		{ "B,1+00,,,4.00,,ground\n", true },
		{ "other,1+00,,,4.00,,ground\n", false },
		{ "B,0+60,,,4.00,,rim\n", false },     /* no ground shot: not asked */
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[300];
		struct sheet s;

		snprintf(book, sizeof book, BOOK "BM,,100.00,4.00,,,\n%s", cases[i].row);
		s = sheet_of(PLAN, book, NONE);
		if (job_found(&s.findings, RB_CODE_PLACE_DISAGREES) !=
			    cases[i].is_error ||
		    !s.sheet != cases[i].is_error) {
			print_error("row %zu\n", i);
			job_print(&s.findings);
			wrong++;
		}
		job_end(&s.job);
	}
	assert_int_equal(wrong, 0);
}

static void a_benchmark_is_not_ground(void **state)
{
	struct sheet s = sheet_of(PLAN,
				  BOOK "BM,0+20,100.00,4.00,,,\nA,0+00,,,4.50,,\n"
				       "C,1+00,,,4.50,,\n",
				  FT(20, 0));

	(void)state;
	assert_int_equal(s.sheet->cut[1].how, RB_GROUND_BETWEEN);
	assert_int_equal(s.sheet->cut[1].ground.nm, FT(99, 5000).nm);
	job_end(&s.job);
}

static void what_is_missing_is_said_once(void **state)
{
	struct sheet s =
		sheet_of("outlet,last\nslope,1%\npoint,chainage,invert\n"
			 "A,0,95.00\nB,50,\n",
			 BOOK "BM,,100.00,4.00,,,\nA,0+00,,,4.50,,ground\n", NONE);

	(void)state;
	assert_int_equal(s.job.findings.of_code[RB_CODE_KEYS_MISSING], 2);
	assert_false(rb_length_given(s.sheet->cut[0].top_of_pipe));
	assert_false(rb_length_given(s.sheet->cut[0].trench_bottom));
	assert_false(rb_length_given(s.sheet->cut[0].cover));
	assert_int_equal(s.sheet->deepest.value.nm, FT(4, 5000).nm); /* to the invert */
	assert_true(s.sheet->at_least);
	job_end(&s.job);
}

static void no_ground_book_still_gives_the_pipe(void **state)
{
	struct sheet s = sheet_of(PLAN, NULL, NONE);

	(void)state;
	assert_int_equal(s.sheet->cut[2].invert.nm, FT(94, 0).nm);
	assert_false(rb_length_given(s.sheet->cut[2].ground));
	assert_false(rb_length_given(s.sheet->board));
	assert_false(rb_length_given(s.sheet->deepest.value));
	job_end(&s.job);
}

static void metric_boards_stand_on_half_metres(void **state)
{
	struct sheet s =
		sheet_of("unit,m\noutlet,last\nslope,1%\npoint,chainage,invert\n"
			 "A,0,29.000\nB,15,\n",
			 "unit,m\n" BOOK "BM,,30.000,1.000,,,\nA,0,,,0.800,,hub\n"
			 "B,15,,,0.850,,hub\n",
			 NONE);

	(void)state;
	assert_int_equal(s.sheet->board.nm, 3 * RB_METRE / 2); /* above 1.300 */
	assert_int_equal(s.sheet->cut[0].board.nm, 3 * RB_METRE / 10);
	job_end(&s.job);
}

/* Ground that was filled and shot again, and a hub that was knocked and set anew. */
static void the_last_shot_counts(void **state)
{
	struct sheet s = sheet_of(PLAN,
				  BOOK "BM,,100.00,4.00,,,\nA,0,,,4.00,,ground\n"
				       "A,0,,,5.00,,hub\nA,0,,,3.50,,ground\n"
				       "A,0,,,5.10,,hub\n",
				  NONE);

	(void)state;
	assert_non_null(s.sheet);
	assert_int_equal(s.sheet->cut[0].ground.nm, FT(100, 5000).nm);
	assert_int_equal(s.sheet->cut[0].hub.nm, FT(98, 9000).nm);
	assert_int_equal(s.findings.of_code[RB_CODE_SHOT_AGAIN], 2);
	job_end(&s.job);
}

/* Bedding alone: the trench goes at least as far below the invert. */
static void bedding_deepens_a_trench(void **state)
{
	struct sheet s =
		sheet_of("bedding,6 in\noutlet,last\nslope,1%\n"
			 "point,chainage,invert\nA,0+00,95.00\nB,0+50,\n",
			 BOOK "BM,,100.00,4.00,,,\nA,0+00,,,4.00,,ground\n", NONE);

	(void)state;
	assert_non_null(s.sheet);
	assert_true(s.sheet->at_least);
	assert_int_equal(s.sheet->deepest.value.nm, FT(5, 5000).nm);
	job_end(&s.job);
}

/* Ground without a place, and a hub beside all stations. */
static void a_shot_at_no_place_is_told(void **state)
{
	/* clang-format off */
	static const struct { const char *rows; int told; const char *of; } cases[] = {
		{ "A,0,,,4.00,,ground\nQ,20,,,4.00,,ground\nB,,,,4.00,,hub\n", 0, "" },
		{ "AA,,,,4.00,,ground\n", 1, "ground" },
		{ "AA,,,,4.00,,\nBB,,,,4.00,,\n", 1, "ground" },
		{ "Q,20,,,4.00,,hub\n", 1, "hub" },
		{ "TP,,,,4.00,,\nTP,,,4.00,,,\nA,0,,,4.00,,ground\n", 0, "" },
		{ "AA,,,,4.00,,rim\n", 0, "" },
	};
	/* clang-format on */
	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char book[300];
		struct sheet s;

		snprintf(book, sizeof book, BOOK "BM,,100.00,4.00,,,\n%s", cases[i].rows);
		s = sheet_of(PLAN, book, NONE);
		assert_non_null(s.sheet);
		assert_int_equal(s.findings.of_code[RB_CODE_NOWHERE_ON_LINE],
				 cases[i].told);
		if (cases[i].told)
			assert_string_equal(
				job_finding(&s.findings, RB_CODE_NOWHERE_ON_LINE)
					->argument[0]
					.text,
				cases[i].of);
		job_end(&s.job);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cuts_and_covers),
		cmocka_unit_test(bedding_deepens_a_trench),
		cmocka_unit_test(ground_between_shots_is_a_straight_line),
		cmocka_unit_test(a_named_shot_stands_on_the_line),
		cmocka_unit_test(a_benchmark_on_the_ground),
		cmocka_unit_test(the_deepest_may_lie_between),
		cmocka_unit_test(too_little_cover_fails),
		cmocka_unit_test(the_pipe_that_comes_in_has_its_cover),
		cmocka_unit_test(the_exact_cover_decides),
		cmocka_unit_test(ground_between_shots_is_rounded_once),
		cmocka_unit_test(just_enough_cover_passes),
		cmocka_unit_test(a_bank_alone_is_the_deepest),
		cmocka_unit_test(a_fill_is_negative),
		cmocka_unit_test(name_and_chainage_must_agree),
		cmocka_unit_test(a_benchmark_is_not_ground),
		cmocka_unit_test(what_is_missing_is_said_once),
		cmocka_unit_test(no_ground_book_still_gives_the_pipe),
		cmocka_unit_test(metric_boards_stand_on_half_metres),
		cmocka_unit_test(the_last_shot_counts),
		cmocka_unit_test(a_shot_at_no_place_is_told),
	};

	return cmocka_run_group_tests_name("cut sheet", tests, NULL, NULL);
}
