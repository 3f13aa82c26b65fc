/* SPDX-License-Identifier: MIT */
/* Which shot of a place counts, when it was shot more than once. */
#include "../drain/job.h"

#include "level/fall.h"
#include "level/shot_again.h"

#define HEAD "point,known elevation,backsight,intermediate,foresight,chainage,rod on\n"
#define BM   "BM,100.00,4.00,,,,\n" /* line 2 */

/* clang-format off */
static const struct {
	const char *what, *rows; /* from line 3 on */
	const char *again;       /* "3>5": line 3 does not count, line 5 does */
} cases[] = {
	{ "once", "A,,,9.00,,0,invert\nB,,,9.50,,50,invert\n", "" },
	{ "twice", "A,,,9.00,,0,invert\nB,,,9.50,,50,invert\nA,,,9.10,,0,invert\n", "3>5" },
	{ "three times", "A,,,9.00,,,invert\nA,,,9.10,,,invert\nA,,,9.20,,,invert\n", "3>5 4>5" },
	{ "on another surface", "A,,,9.00,,0,invert\nA,,,8.60,,0,top of pipe\n", "" },
	{ "on two surfaces", "A,,,9.00,,,invert\nA,,,8.60,,,top of pipe\n"
	                     "A,,,9.10,,,invert\nA,,,8.70,,,top of pipe\n", "3>5 4>6" },
	{ "as written otherwise", "MH 1,,,9.00,,,invert\nmh  1,,,9.10,,,invert\n", "3>4" },
	{ "the second without its chainage", "A,,,9.00,,0,invert\nA,,,9.10,,,invert\n", "3>4" },
	{ "the first without its chainage", "A,,,9.00,,,invert\nA,,,9.10,,0,invert\n", "3>4" },
	{ "one name at two places", "JOINT,,,9.00,,10,invert\nJOINT,,,9.20,,20,invert\n", "" },
	{ "one name at two places, one again", "JOINT,,,9.00,,10,invert\nJOINT,,,9.20,,20,invert\n"
	                                       "JOINT,,,9.05,,10,invert\n", "3>5" },
	{ "one name at two places and one of them unsaid",
	  "JOINT,,,9.00,,10,invert\nJOINT,,,9.20,,20,invert\nJOINT,,,9.05,,,invert\n", "" },
	{ "no name", ",,,9.00,,10,invert\n,,,9.05,,10,invert\n,,,9.05,,20,invert\n", "3>4" },
	{ "ground at many places", "ground,,,5.00,,0,\nground,,,5.10,,10,\nground,,,5.20,,0,\n", "3>5" },
	{ "ground anywhere", "ground,,,5.00,,,\nground,,,5.10,,,\n", "" },
	{ "a known point", "BM,,,4.00,,0,invert\nBM,,,,4.00,0,invert\n", "" },
	{ "a turning point reached again", "TP,,,,5.00,0,invert\nTP,,5.00,,,0,invert\nB,,,5.00,,,\n"
	                                   "TP,,,,5.00,0,invert\nTP,,5.00,,,0,invert\n", "" },
	{ "a turning point whose backsight stands further down",
	  "TP,,,,5.00,0,invert\nB,,,5.00,,9,invert\nTP,,5.00,,,0,invert\nC,,,5.00,,20,invert\n", "" },
	{ "lifted after it was turned on",
	  "TP,,,,5.00,0,invert\nTP,,5.00,,,0,invert\nTP,,,5.10,,0,invert\n", "3>5" },
	{ "the end of an open section", "A,,,9.00,,0,invert\nA,,,,9.10,0,invert\n", "3>4" },
};
/* clang-format on */

static void say_again(char text[static 64], const struct rb_spots *spots)
{
	size_t used = 0;

	*text = '\0';
	for (uint32_t i = 0; i < spots->count; i++) {
		const struct rb_spot *spot = &spots->spot[i];

		if (spot->again != RB_NO_SPOT)
			used += (size_t)snprintf(
				text + used, 64 - used, "%s%u>%u", used ? " " : "",
				rb_book_line(spots->book, spot->row),
				rb_book_line(spots->book, spots->spot[spot->again].row));
	}
}

static void the_last_shot_counts(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		char book[1000], again[64] = "no book";
		struct rb_spots *spots;

		snprintf(book, sizeof book, HEAD BM "%s", cases[i].rows);
		spots = job_book(job.arena, &job.findings, book);
		if (spots)
			say_again(again, spots);
		if (strcmp(again, cases[i].again) != 0) {
			print_error("%s: got \"%s\", wanted \"%s\"\n", cases[i].what,
				    again, cases[i].again);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* The rim is shot once more with its tape: the invert at the end of the tape too. */
static void what_hangs_below_goes_with_it(void **state)
{
	struct job job = job_new();
	struct rb_spots *spots = job_book(
		job.arena, &job.findings,
		"point,known elevation,backsight,intermediate,measure down,rod on\n"
		"BM,100.00,4.00,,,\nMH,,,3.00,5.00,rim\nMH,,,3.00,5.10,rim\n");

	(void)state;
	assert_non_null(spots);
	assert_int_equal(spots->count, 5);
	assert_int_equal(spots->spot[1].again, 3);
	assert_int_equal(spots->spot[2].again, 4);
	job_end(&job);
}

/* What a shot has no chainage for, the one before it may have. */
static void a_chainage_is_written_once(void **state)
{
	struct job job = job_new();
	struct rb_spots *spots =
		job_book(job.arena, &job.findings,
			 HEAD BM "A,,,9.00,,12,invert\nA,,,9.10,,,invert\n");

	(void)state;
	assert_non_null(spots);
	assert_int_equal(spots->spot[2].chainage.nm, 12 * RB_FOOT);
	job_end(&job);
}

static void a_fall_takes_the_last_shot_and_says_so(void **state)
{
	static const char book[] =
		HEAD BM "A,,,9.00,,0,invert\nB,,,9.20,,50,invert\nB,,,10.00,,50,invert\n"
			"RIM,,,5.00,,,rim\nRIM,,,5.01,,,rim\n";
	/* clang-format off */
	static const struct { const char *from, *to; } ways[] = { { NULL, NULL }, { "A", "B" } };
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
		struct job job = job_new();
		const struct rb_fall_options options = { .from = ways[i].from,
							 .to = ways[i].to,
							 .length = NONE };
		struct rb_spots *spots = job_book(job.arena, &job.findings, book);
		struct rb_fall *fall = rb_fall(job.arena, &job.findings, spots, &options);
		const struct rb_finding *f =
			job_finding(&job.findings, RB_CODE_SHOT_AGAIN);

		assert_non_null(fall);
		assert_int_equal(fall->leg[0].fall.nm, RB_FOOT);
		assert_int_equal(job.findings.of_code[RB_CODE_SHOT_AGAIN], 1);
		assert_int_equal(f->place.line, 4);
		assert_int_equal(f->argument[0].count, 5);
		job_end(&job);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_last_shot_counts),
		cmocka_unit_test(what_hangs_below_goes_with_it),
		cmocka_unit_test(a_chainage_is_written_once),
		cmocka_unit_test(a_fall_takes_the_last_shot_and_says_so),
	};

	return cmocka_run_group_tests_name("shot again", tests, NULL, NULL);
}
