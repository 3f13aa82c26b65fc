/* SPDX-License-Identifier: MIT */
/* Which shot belongs to which station: by name, then by chainage, and where they
 * disagree. */
#include "job.h"

#include "drain/match.h"

#define STATION(title, place, comes_in)                                                  \
	{                                                                                \
		.name = (title), .chainage = { place }, .run = { place },                \
		.in = { comes_in, 0, 1 },                                                \
		.out = { 0,                                                              \
			 0,                                                              \
			 1 }                                                             \
	}

/* Names in no order; two stations of one name, and one without; the last two have a step.
 */
static struct rb_station stations[] = {
	STATION("MH 4", 0, 0), STATION("tee", 10, 0),  STATION("Bend", 20, 0),
	STATION("", 30, 0),    STATION("tee", 40, 0),  STATION("MH 1", 50, 0),
	STATION("wye", 60, 0), STATION("MH 7", 70, 1), STATION("all in", 80, 1),
};

static bool is_wanted(const struct rb_spot *spot)
{
	return spot->rod_on != RB_ON_RIM;
}

/* clang-format off */
static const struct match_case {
	const char *name;
	int64_t chainage; /* -1: not written */
	enum rb_rod_on rod_on;
	uint32_t station;
	bool disagrees;
} cases[] = {
	{ "MH 4",   0,  RB_ON_UNSAID, 0, false },
	{ "mh  4",  -1, RB_ON_UNSAID, 0, false },
	{ "MH 1",   50, RB_ON_UNSAID, 5, false },
	{ "bend",   -1, RB_ON_UNSAID, 2, false },
	{ "WYE",    60, RB_ON_UNSAID, 6, false },
	{ "tee",    10, RB_ON_UNSAID, 1, false },
	{ "tee",    40, RB_ON_UNSAID, 4, false }, /* the one at its chainage */
	{ "tee",    -1, RB_ON_UNSAID, 1, false }, /* the first of the name */
	{ "tee",    20, RB_ON_UNSAID, 1, true },
	{ "Bend",   10, RB_ON_UNSAID, 2, true },
	{ "Bend",   10, RB_ON_RIM,    RB_NO_STATION, false }, /* not asked */
	{ "",       30, RB_ON_UNSAID, 3, false },
	{ "",       -1, RB_ON_UNSAID, RB_NO_STATION, false },
	{ "shot",   60, RB_ON_UNSAID, 6, false },
	{ "shot",   55, RB_ON_UNSAID, RB_NO_STATION, false },
	{ "shot",   -1, RB_ON_UNSAID, RB_NO_STATION, false },
	{ "mh 7  IN", -1, RB_ON_UNSAID, 7, false }, /* at a step, each pipe */
	{ "MH 7 out", 70, RB_ON_UNSAID, 7, false },
	{ "MH 7 in",  60, RB_ON_UNSAID, 7, true },
	{ "MH 7 top", -1, RB_ON_UNSAID, RB_NO_STATION, false },
	{ "MH 1 in",  -1, RB_ON_UNSAID, RB_NO_STATION, false }, /* no step, no other pipe */
	{ "in",       -1, RB_ON_UNSAID, RB_NO_STATION, false },
	{ "aaa",    -1, RB_ON_UNSAID, RB_NO_STATION, false }, /* before and behind all names */
	{ "zzz",    -1, RB_ON_UNSAID, RB_NO_STATION, false },
};
/* clang-format on */

/* One spot of a book, so that there is a row to point at. */
static void match_one(const struct match_case *c, uint32_t *station, size_t *disagree)
{
	static const char book[] = "point,known elevation,backsight\nBM,100.00,4.00\n";
	struct job job = job_new();
	const struct rb_inverts inverts = { .station = stations,
					    .stations =
						    sizeof stations / sizeof *stations };
	struct rb_spot spot = { .name = c->name,
				.chainage = c->chainage < 0 ? rb_length_none()
							    : rb_length_of(c->chainage),
				.rod_on = c->rod_on };
	const struct rb_spots spots = {
		.book = rb_book_read(job.arena, &job.findings, book, sizeof book - 1),
		.spot = &spot,
		.count = 1,
	};
	uint32_t *found = rb_match(job.arena, &job.findings, &inverts, &spots, is_wanted);

	*disagree = job.findings.of_code[RB_CODE_PLACE_DISAGREES];
	*station = found ? *found : RB_NO_STATION;
	assert_int_equal(!found, *disagree > 0);
	job_end(&job);
}

static void by_name_then_by_chainage(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		uint32_t station;
		size_t disagree;

		match_one(&cases[i], &station, &disagree);
		if (disagree == cases[i].disagrees &&
		    (disagree || station == cases[i].station))
			continue;
		print_error("row %zu, \"%s\": station %u, %zu disagree\n", i,
			    cases[i].name, station, disagree);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void at_a_step_the_name_tells_the_pipe(void **state)
{
	(void)state;
	assert_true(rb_match_comes_in(&stations[7], "MH 7 in"));
	assert_true(rb_match_comes_in(&stations[7], "pipe IN"));
	assert_false(rb_match_comes_in(&stations[7], "MH 7"));
	assert_false(rb_match_comes_in(&stations[7], "MH 7 out"));
	assert_false(rb_match_comes_in(&stations[7], "in"));
	assert_false(rb_match_comes_in(&stations[7], "MH 7 inn"));
	assert_false(rb_match_comes_in(&stations[7], "MH 7 hn"));
	assert_false(
		rb_match_comes_in(&stations[8], "all in")); /* the name of the place */
	assert_false(rb_match_comes_in(&stations[5], "MH 1 in")); /* which has no step */
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(by_name_then_by_chainage),
		cmocka_unit_test(at_a_step_the_name_tells_the_pipe),
	};

	return cmocka_run_group_tests_name("match", tests, NULL, NULL);
}
