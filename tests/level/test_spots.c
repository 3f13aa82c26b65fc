/* SPDX-License-Identifier: MIT */
/* Chainages in figures, and how finely a book was written. */
#include "../drain/job.h"

static void chainages_in_figures(void **state)
{
	/* clang-format off */
	static const struct { int64_t nm; enum rb_unit unit; int plus; const char *text; } cases[] = {
		{ 0,                   RB_FEET,        0, "0" },
		{ 50 * RB_FOOT,        RB_FEET_INCHES, 0, "50" },
		{ 25 * RB_FOOT / 2,    RB_FEET,        0, "12.5" },
		{ 50 * RB_FOOT,        RB_FEET,        2, "0+50" },
		{ 1005 * RB_FOOT / 10, RB_FEET,        2, "1+00.5" },
		{ 1320 * RB_FOOT,      RB_INCHES,      2, "13+20" },
		{ 7 * RB_METRE,        RB_METRES,      3, "0+007" },
		{ 1250 * RB_METRE,     RB_MILLIMETRES, 3, "1+250" },
		{ 15 * RB_METRE + 200 * RB_MILLIMETRE, RB_METRES, 0, "15.2" },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char text[RB_LENGTH_TEXT];

		rb_chainage_format(text, (rb_length){ cases[i].nm }, cases[i].unit,
				   cases[i].plus);
		if (!strcmp(text, cases[i].text))
			continue;
		print_error("row %zu: %s\n", i, text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* As typed where the unit along the ground stays; else as the other unit's lines go. */
static void digits_behind_the_plus(void **state)
{
	(void)state;
	assert_int_equal(rb_chainage_plus(0, RB_FEET, RB_FEET), 0);
	assert_int_equal(rb_chainage_plus(2, RB_FEET, RB_FEET_INCHES), 2);
	assert_int_equal(rb_chainage_plus(2, RB_METRES, RB_METRES), 2);
	assert_int_equal(rb_chainage_plus(3, RB_METRES, RB_MILLIMETRES), 3);
	assert_int_equal(rb_chainage_plus(3, RB_METRES, RB_FEET), 2);
	assert_int_equal(rb_chainage_plus(2, RB_FEET, RB_METRES), 0);
	assert_int_equal(rb_chainage_plus(0, RB_METRES, RB_FEET), 0);
}

/* The finest place of any sight: a sheet drops zeros, so one reading of 5.3 says nothing.
 */
static void steps_of_a_book(void **state)
{
	/* clang-format off */
	static const struct { const char *unit, *a, *b; int64_t nm; } cases[] = {
		{ "ft",    "4.27",        "5.3",         RB_FOOT / 100 },
		{ "ft",    "4.275",       "5.31",        RB_FOOT / 1000 },
		{ "ft-in", "4'-3 1/8\"",  "5'-3 1/2\"",  RB_INCH / 8 },
		{ "ft-in", "4'-3\"",      "5'-3 1/4\"",  RB_INCH / 4 },
		{ "ft-in", "4'-3 4/8\"",  "5'-3 1/4\"",  RB_INCH / 8 }, /* read to eighths */
		{ "ft-in", "4'-3\"",      "5'-3\"",      RB_INCH },
		{ "m",     "1.302",       "1.5",         RB_MILLIMETRE },
		{ "ft",    "4",           "5",           RB_FOOT },
		{ "ft",    "4.27",        "5'-3 1/16\"", RB_FOOT / 100 }, /* mixed: the coarser */
		{ "ft",    "4.275",       "5'-3 1/2\"",  RB_INCH / 2 },
		{ "ft-in", "4'-3.5\"",    "5'-3.25\"",   RB_INCH / 100 }, /* inches in decimals */
		{ "ft",    "4.275",       "5' 3.5 in",   RB_INCH / 10 },
		{ "ft",    "4.27",        "5' 3.5 in",   RB_FOOT / 100 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		struct rb_spots *spots;
		char book[200];

		snprintf(book, sizeof book,
			 "unit,%s\npoint,known elevation,backsight,intermediate\n"
			 "BM,%s,%s,\nA,,,%s\n",
			 cases[i].unit, strcmp(cases[i].unit, "m") ? "100 ft" : "30",
			 cases[i].a, cases[i].b);
		spots = job_book(job.arena, &job.findings, book);
		if (!spots || spots->step.nm != cases[i].nm) {
			print_error("row %zu: %lld\n", i,
				    spots ? (long long)spots->step.nm : 0);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

static void says_whether_the_book_closes(void **state)
{
	const char *book =
		"tolerance,0.01 ft\npoint,known elevation,backsight,foresight\n"
		"BM,100.00,4.00,\nTP,,4.00,4.00\nBM,,,3.90\n";
	struct job job = job_new();
	struct rb_spots *spots = job_book(job.arena, &job.findings, book);

	(void)state;
	assert_non_null(spots);
	assert_true(spots->beyond);
	assert_int_equal(spots->adjusted, 0);
	job_end(&job);
	job = job_new();
	spots = job_book(job.arena, &job.findings,
			 "tolerance,0.01 ft\npoint,known elevation,backsight,foresight\n"
			 "BM,100.00,4.00,\nTP,,4.00,4.00\nBM,,,3.99\n");
	assert_non_null(spots);
	assert_false(spots->beyond);
	assert_int_equal(spots->adjusted, 3); /* with the benchmark, by nothing */
	job_end(&job);
	job = job_new();
	spots = job_book(job.arena, &job.findings,
			 "tolerance,0.01 ft\npoint,known elevation,backsight,foresight\n"
			 "BM,100.00,4.00,\nBM,,4.00,3.99\nBM,,,3.90\n");
	assert_non_null(spots);
	assert_true(spots->beyond); /* the second of them */
	job_end(&job);
}

/* A rim with a tape let down is two spots, and both are adjusted or both raw. */
static void inverts_below_rims_are_counted(void **state)
{
	static const char book[] = "tolerance,0.01 ft\n"
				   "point,known elevation,bs,is,fs,rod on,dip\n"
				   "BM,100.00,5.00,,,,\nMH,,,4.00,,rim,6.00\n"
				   "BM,,,,%s,,\n";
	char text[sizeof book + 8];

	(void)state;
	for (int closes = 0; closes < 2; closes++) {
		struct job job = job_new();
		const struct rb_spots *spots;

		snprintf(text, sizeof text, book, closes ? "5.01" : "5.02");
		spots = job_book(job.arena, &job.findings, text);
		assert_non_null(spots);
		assert_int_equal(spots->count, 4);
		assert_int_equal(spots->adjusted, closes ? 4 : 0);
		job_end(&job);
	}
}

/* What the two rows of a turning point say of it, each cell by itself: the foresight's
 * row, else the backsight's, and of the rod at last the key. */
static void two_rows_of_a_turning_point(void **state)
{
	/* clang-format off */
	static const struct {
		const char *key, *first, *second; /* chainage, rod on */
		int feet; /* -1: none */
		enum rb_rod_on rod_on;
	} cases[] = {
		{ "invert", "25,",       ",",         25, RB_ON_INVERT },
		{ "invert", ",",         "25,",       25, RB_ON_INVERT },
		{ "",       ",",         "25,",       25, RB_ON_UNSAID },
		{ "",       ",hub",      "25,",       25, RB_ON_HUB },
		{ "invert", ",hub",      "25,",       25, RB_ON_HUB },
		{ "",       "25,",       ",hub",      25, RB_ON_HUB },
		{ "invert", "25,",       ",hub",      25, RB_ON_HUB },
		{ "invert", ",",         "25,hub",    25, RB_ON_HUB },
		{ "invert", "25,ground", "30,hub",    25, RB_ON_GROUND },
		{ "invert", ",hub",      ",",         -1, RB_ON_HUB },
		{ "invert", ",",         ",",         -1, RB_ON_INVERT },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_new();
		const struct rb_spots *spots;
		char book[300];

		snprintf(book, sizeof book,
			 "rod on,%s\npoint,known elevation,bs,fs,chainage,rod on\n"
			 "BM,100,5.00,,,\nTP,,,7.00,%s\nTP,,7.50,,%s\nBM,,,5.50,,\n",
			 cases[i].key, cases[i].first, cases[i].second);
		spots = job_book(job.arena, &job.findings, book);
		assert_non_null(spots);
		assert_int_equal(spots->count, 3);
		if (spots->spot[1].rod_on != cases[i].rod_on ||
		    spots->spot[1].chainage.nm !=
			    (cases[i].feet < 0 ? NONE : FT(cases[i].feet, 0)).nm) {
			print_error("row %zu: %lld nm, on %s\n", i,
				    (long long)spots->spot[1].chainage.nm,
				    rb_rod_on_name(spots->spot[1].rod_on));
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(chainages_in_figures),
		cmocka_unit_test(digits_behind_the_plus),
		cmocka_unit_test(steps_of_a_book),
		cmocka_unit_test(says_whether_the_book_closes),
		cmocka_unit_test(inverts_below_rims_are_counted),
		cmocka_unit_test(two_rows_of_a_turning_point),
	};

	return cmocka_run_group_tests_name("spots", tests, NULL, NULL);
}
