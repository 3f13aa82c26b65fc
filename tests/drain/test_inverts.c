/* SPDX-License-Identifier: MIT */
/* Inverts by every form of the plan, and what must not change them. */
#include "job.h"

#include <inttypes.h>

#include "drain/fall_budget.h"

#define HEAD "point,chainage,invert,invert in,slope,step\n"

/* clang-format off */
static const struct form_case {
	const char *what, *text;
	const char *name;
	int64_t nm;    /* the invert out of that station */
	int64_t in_nm; /* what comes in */
} form_cases[] = {
	{ "slopes, outlet last", "outlet,last\n" HEAD
	  "A,0,100.00,,1/8 in/ft,\nB,20,-,,1/4 in/ft,\nC,50,-,,-,\n",
	  "B", 30416500000, 30416500000 },                       /* 99.7917 */
	{ "the same at the outlet", "outlet,last\n" HEAD
	  "A,0,100.00,,1/8 in/ft,\nB,20,-,,1/4 in/ft,\nC,50,-,,-,\n",
	  "C", 30226000000, 30226000000 },                       /* 99.1667 */
	{ "opposite order, outlet first", "outlet,first\n" HEAD
	  "C,50,-,,-,\nB,20,-,,1/4 in/ft,\nA,0,100.00,,1/8 in/ft,\n",
	  "C", 30226000000, 30226000000 },
	{ "carried upstream", "outlet,last\n" HEAD
	  "A,0,,,1/8 in/ft,\nB,20,,,1/4 in/ft,\nC,50,90,,,\n",
	  "A", 27686000000, 27686000000 },                       /* 90 + 7.5 in + 2.5 in */
	{ "carried both ways", "outlet,last\n" HEAD
	  "A,0,,,1%,\nB,50,95,,2%,\nC,100,,,,\n",
	  "A", 29108400000, 29108400000 },                       /* 95.5 */
	{ "one slope for all", "outlet,last\nslope,1:50\n" HEAD
	  "A,0,100,,,\nB,20,,,,\nC,50,,,,\n",
	  "C", 30175200000, 30175200000 },                       /* 99 */
	{ "two inverts, uniform", HEAD
	  "A,0,100,,,\nB,20,,,,\nC,50,99,,,\n",
	  "B", 30358080000, 30358080000 },                       /* 99.6 */
	{ "outlet found by the inverts", HEAD
	  "A,0,99,,,\nB,20,,,,\nC,50,100,,,\n",
	  "B", 30297120000, 30297120000 },                       /* 99.4 */
	{ "a step between two inverts", HEAD
	  "A,0,100,,,\nB,20,,,,0.5\nC,50,99,,,\n",
	  "B", 30266640000, 30419040000 },                       /* 100 - .2 = 99.8; 99.3 */
	{ "a step at the outlet", HEAD
	  "A,0,100,,,\nB,20,,,,\nC,50,99,,,0.5\n",
	  "B", 30419040000, 30419040000 },                       /* 99.8 */
	{ "a step carried down", "outlet,last\nslope,1%\n" HEAD
	  "A,0,100,,,\nB,50,,,,0.1\nC,100,,,,\n",
	  "B", 30297120000, 30327600000 },                       /* 99.5 in, 99.4 out */
	{ "a step carried up", "outlet,last\nslope,1%\n" HEAD
	  "A,0,,,,\nB,50,,,,0.1\nC,100,98.9,,,\n",
	  "A", 30480000000, 30480000000 },
	{ "invert in fixes the upper one", "outlet,last\nslope,1%\n" HEAD
	  "A,0,,,,\nB,50,,99.5,,0.1\nC,100,,,,\n",
	  "C", 30144720000, 30144720000 },                       /* 99.4 - .5 */
	{ "invert and invert in are a step", "outlet,last\nslope,1%\n" HEAD
	  "A,0,,,,\nB,50,99.4,99.5,,\nC,100,,,,\n",
	  "A", 30480000000, 30480000000 },
	{ "metres", "unit,m\nslope,1:80\noutlet,last\n" HEAD
	  "A,0,31.250,,,\nB,38,,,,\n",
	  "B", 30775000000, 30775000000 },
	{ "backfall where it is said", "outlet,last\n" HEAD
	  "A,0,99,,,\nB,50,,,,\nC,100,100,,,\n",
	  "B", 30327600000, 30327600000 },                       /* 99.5 */
};
/* clang-format on */

static void every_form(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof form_cases / sizeof *form_cases; i++) {
		const struct form_case *c = &form_cases[i];
		struct job job = job_of(c->text, NONE);
		const struct rb_station *s = job_station(&job, c->name);
		int64_t out = s ? rb_exact_round(s->out).nm : 0;
		int64_t in = s ? rb_exact_round(s->in).nm : 0;

		if (out != c->nm || in != c->in_nm) {
			print_error("%s: %s out %" PRId64 ", in %" PRId64 "\n", c->what,
				    c->name, out, in);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* A slope beside two fixed inverts is a check; what the inverts may be rounded by is let
 * pass: half a place each over the whole span. */
static void written_slopes_are_checks(void **state)
{
	/* clang-format off */
	static const struct { const char *text; size_t warnings; } cases[] = {
		{ HEAD "A,0,100.00,,1/4 in/ft,\nB,48,99.00,,,\n", 0 },
		{ HEAD "A,0,100.00,,1/8 in/ft,\nB,48,99.00,,,\n", 1 },
		{ HEAD "A,0,100.00,,1/4 in/ft,\nB,48,99.01,,,\n", 0 },  /* one place off */
		{ HEAD "A,0,100.00,,1/4 in/ft,\nB,48,99.011,,,\n", 1 }, /* eleven of another */
		{ HEAD "A,0,100.00,,2%,\nB,48,99.00,,,\n", 1 },         /* 0.96 ft */
		{ "slope,1/8 in/ft\n" HEAD "A,0,100.00,,,\nB,48,99.00,,,\n", 1 },
		{ "slope,1/8 in/ft\n" HEAD "A,0,100.00,,,\nB,20,,,,\nC,48,99.00,,,\n", 1 },
		{ HEAD "A,0,100.00,,1%,\nB,50,,,2%,\nC,100,98.50,,,\n", 2 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_of(cases[i].text, NONE);

		if (!job.inverts ||
		    job.findings.of_code[RB_CODE_SLOPE_DISAGREES] != cases[i].warnings) {
			print_error("row %zu: %zu warnings\n", i,
				    job.findings.of_code[RB_CODE_SLOPE_DISAGREES]);
			job_print(&job.findings);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* The warning stands where the slope was written: in its row, or at the key. */
static void the_written_slope_is_marked(void **state)
{
	/* clang-format off */
	static const struct { const char *text; uint32_t line; int32_t cell; } cases[] = {
		{ "slope,1/8 in/ft\n" HEAD "A,0,100.00,,,\nB,48,99.00,,,\n", 1, 1 },
		{ "slope,1/4 in/ft\n" HEAD "A,0,100.00,,1/8 in/ft,\nB,48,99.00,,,\n", 3, 4 },
	};
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_of(cases[i].text, NONE);
		const struct rb_finding *f =
			job_finding(&job.findings, RB_CODE_SLOPE_DISAGREES);

		assert_non_null(f);
		assert_int_equal(f->place.line, cases[i].line);
		assert_int_equal(f->place.cell, cases[i].cell);
		job_end(&job);
	}
}

/* Every station knows the pipe that leaves it; the outlet the one that comes. */
static void stations_know_their_reach(void **state)
{
	struct job job =
		job_of("outlet,last\nslope,1%\n" HEAD "A,0,100,,,\nB,25,,,,\nC,50,,,,\n",
		       FT(10, 0));
	static const uint32_t reach[] = { 0, 0, 0, 1, 1, 1, 1 };

	(void)state;
	assert_non_null(job.inverts);
	assert_int_equal(job.inverts->stations, sizeof reach / sizeof *reach);
	for (uint32_t i = 0; i < job.inverts->stations; i++)
		assert_int_equal(job.inverts->station[i].reach, reach[i]);
	assert_int_equal(job.inverts->reach[0].to, 3);
	assert_int_equal(job.inverts->reach[1].from, 3);
	job_end(&job);
}

/* Of a line that is listed against the flow, too. */
static void invert_on_a_line_that_falls_to_its_zero(void **state)
{
	struct job job = job_of("outlet,first\nslope,1%\n" HEAD
				"C,10,98.9,,,\nB,60,,,,0.1\nA,110,,,,\n",
				NONE);
	/* clang-format off */
	static const struct { int64_t at, ten_thousandths; } cases[] = {
		{ 10, 989000 }, { 35, 991500 }, { 60, 994000 }, { 61, 995100 }, { 110, 1000000 },
	};
	/* clang-format on */
	struct rb_exact at;

	(void)state;
	assert_non_null(job.inverts);
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		assert_non_null(rb_inverts_at(job.inverts, FT(cases[i].at, 0), &at));
		assert_int_equal(rb_exact_round(at).nm,
				 FT(0, cases[i].ten_thousandths).nm);
	}
	assert_null(rb_inverts_at(job.inverts, FT(9, 9999), &at));
	assert_null(rb_inverts_at(job.inverts, FT(110, 1), &at));
	job_end(&job);
}

static void stations_are_named_as_the_plan_does(void **state)
{
	/* clang-format off */
	static const struct { const char *text; int64_t interval; const char *names; } cases[] = {
		{ "slope,1%\noutlet,last\npoint,chainage,invert\nA,0+05,100\nB,0+40,\n", 10 * RB_FOOT,
		  "A 0+10 0+20 0+30 B " },
		{ "slope,1%\noutlet,last\npoint,chainage,invert\nA,5,100\nB,40,\n", 10 * RB_FOOT,
		  "A 10 20 30 B " },
		{ "slope,1%\noutlet,last\npoint,chainage,invert\nA,0+00,100\nB,0+20,\nC,0+25,\n", 10 * RB_FOOT,
		  "A 0+10 B C " },
		{ "slope,1%\noutlet,first\npoint,chainage,invert\nA,0+00,100\nB,1+25,\n", 50 * RB_FOOT,
		  "B 1+00 0+50 A " },
		{ "unit,m\nslope,1%\noutlet,last\npoint,chainage,invert\nA,0+000,30\nB,0+030,\n", 15 * RB_METRE / 2,
		  "A 0+007.5 0+015 0+022.5 B " },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct job job = job_of(cases[i].text, (rb_length){ cases[i].interval });
		char names[200] = "";

		for (uint32_t k = 0; job.inverts && k < job.inverts->stations; k++)
			snprintf(names + strlen(names), sizeof names - strlen(names),
				 "%s ", job.inverts->station[k].name);
		if (strcmp(names, cases[i].names)) {
			print_error("row %zu: %s\n", i, names);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

static void absurd_intervals_are_refused(void **state)
{
	const char *text =
		"slope,1%\noutlet,last\npoint,chainage,invert\nA,0,100\nB,5000,\n";
	const int64_t intervals[] = { 0, -RB_FOOT, 1, RB_FOOT / 100 };

	(void)state;
	for (size_t i = 0; i < sizeof intervals / sizeof *intervals; i++) {
		struct job job = job_of(text, (rb_length){ intervals[i] });

		assert_null(job.inverts);
		assert_true(job_found(&job.findings, RB_CODE_INTERVAL_SHORT));
		job_end(&job);
	}
}

static void invert_at_a_chainage(void **state)
{
	struct job job = job_of("outlet,last\nslope,1%\n" HEAD
				"A,10,100,,,\nB,60,,,,0.1\nC,110,,,,\n",
				NONE);
	struct rb_exact at;

	(void)state;
	assert_non_null(job.inverts);
	assert_non_null(rb_inverts_at(job.inverts, FT(35, 0), &at));
	assert_int_equal(rb_exact_round(at).nm, FT(99, 7500).nm);
	assert_non_null(rb_inverts_at(job.inverts, FT(60, 0), &at)); /* out, not in */
	assert_int_equal(rb_exact_round(at).nm, FT(99, 4000).nm);
	assert_non_null(rb_inverts_at(job.inverts, FT(10, 0), &at));
	assert_non_null(rb_inverts_at(job.inverts, FT(110, 0), &at));
	assert_int_equal(rb_exact_round(at).nm, FT(98, 9000).nm);
	assert_null(rb_inverts_at(job.inverts, FT(9, 9999), &at));
	assert_null(rb_inverts_at(job.inverts, FT(110, 1), &at));
	assert_null(rb_inverts_station_at(job.inverts, FT(35, 0)));
	assert_string_equal(rb_inverts_station_at(job.inverts, FT(60, 0))->name, "B");
	job_end(&job);
}

/* -- properties, over plans made from a seed -- */

static uint64_t next(uint64_t *seed, uint64_t below)
{
	*seed = *seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
	return (*seed >> 33) % below;
}

#define ROWS 12
#define TEXT 2000

static const char *const slopes[] = { "1/4 in/ft", "1/8 in/ft", "2%",
				      "1:60.6",    "1 in 48",   "2.18%",
				      "20 mm/m",   "1:80",      "3/16 in/ft" };

struct random_plan {
	uint32_t rows;
	char row[ROWS][80], turned[ROWS][80];
};

/* One invert somewhere, slopes, some steps; rows as they read downstream. */
static struct random_plan make(uint64_t seed)
{
	struct random_plan p = { .rows = (uint32_t)(2 + next(&seed, ROWS - 2)) };
	uint64_t at = 0, fixed = next(&seed, p.rows);

	for (uint32_t i = 0; i < p.rows; i++) {
		bool last = i == p.rows - 1, step = i && next(&seed, 3) == 0;

		snprintf(p.row[i], sizeof p.row[i],
			 "P%" PRIu32 ",%" PRIu64 ".%02" PRIu64 ",%s,,%s,%s\n", i,
			 at / 100, at % 100, i == fixed ? "97.315" : "",
			 last ? "" : slopes[next(&seed, 9)], step ? "1 in" : "");
		at += 100 + next(&seed, 6000);
	}
	return p;
}

static void append(char text[static TEXT], const char *more)
{
	snprintf(text + strlen(text), TEXT - strlen(text), "%s", more);
}

static void join(char text[static TEXT], const struct random_plan *p, bool turned)
{
	snprintf(text, TEXT, "outlet,%s\n" HEAD, turned ? "first" : "last");
	for (uint32_t i = 0; i < p->rows; i++)
		append(text, p->row[turned ? p->rows - 1 - i : i]);
}

static bool same_inverts(const struct job *a, const struct job *b)
{
	for (uint32_t i = 0; a->inverts && i < a->inverts->stations; i++) {
		const struct rb_station *s = &a->inverts->station[i];
		const struct rb_station *t = b->inverts ? job_station(b, s->name) : NULL;

		if (!t || rb_exact_compare(s->out, t->out) ||
		    rb_exact_compare(s->in, t->in))
			return false;
	}
	return a->inverts;
}

/* Upstream and downstream listings agree, and stations in between change no invert. */
static void listings_and_stations_change_nothing(void **state)
{
	int wrong = 0;

	(void)state;
	for (uint64_t seed = 0; seed < 500; seed++) {
		struct random_plan p = make(seed);
		char text[TEXT], turned[TEXT];
		struct job down, up, more;

		join(text, &p, false);
		join(turned, &p, true);
		down = job_of(text, NONE);
		up = job_of(turned, NONE);
		more = job_of(text, FT(7, 0));
		if (!same_inverts(&down, &up) || !same_inverts(&down, &more)) {
			print_error("seed %" PRIu64 ":\n%s", seed, text);
			wrong++;
		}
		job_end(&down);
		job_end(&up);
		job_end(&more);
	}
	assert_int_equal(wrong, 0);
}

/* Every added station lies on the straight line between its neighbours of the plan. */
static void added_stations_lie_on_the_grade(void **state)
{
	struct job job = job_of(
		"outlet,last\nslope,1:60.6\n" HEAD "A,0,100,,,\nB,303,,,,\n", FT(1, 0));
	int wrong = 0;

	(void)state;
	assert_non_null(job.inverts);
	for (uint32_t i = 0; i < job.inverts->stations; i++) {
		rb_length fall = rb_length_share((rb_length){ 5 * RB_FOOT }, i, 303);
		rb_length got = rb_exact_round(job.inverts->station[i].out);

		/* The fall is rounded here, the invert there: both to the nearest. */
		if (rb_length_sub(FT(100, 0), fall).nm - got.nm > 1 ||
		    got.nm - rb_length_sub(FT(100, 0), fall).nm > 1)
			wrong++;
	}
	assert_int_equal(wrong, 0);
	assert_int_equal(job_invert(&job, "B").nm, 95 * RB_FOOT);
	job_end(&job);
}

/* A plan at exactly the minimum passes, however odd its lengths, and one nanometre less
 * does not. */
static void exactly_the_minimum_passes(void **state)
{
	int wrong = 0;

	(void)state;
	for (uint64_t seed = 0; seed < 900; seed++) {
		const char *slope = slopes[seed % 9];
		uint64_t s = seed, length = 100 + next(&s, 30000);
		char text[TEXT];
		struct rb_minimum minimum = { .slope = { { 0 }, { 0 } } };
		struct rb_budget *budget;
		struct job job;

		snprintf(text, sizeof text,
			 "outlet,last\nslope,%s\nminimum slope,%s\n" HEAD
			 "A,0,,,,\nB,%" PRIu64 ".%02" PRIu64 ",,,,0.1\nC,%" PRIu64
			 ".37,88.12,,,\n",
			 slope, slope, length / 100, length % 100, length / 100 + 61);
		job = job_of(text, NONE);
		minimum.slope = job.plan->minimum;
		budget = rb_budget(job.arena, &job.findings, job.inverts, &minimum);
		if (budget->is_short || rb_exact_sign(budget->spare) != 0 ||
		    budget->leg[0].verdict != RB_LEG_OK ||
		    budget->leg[1].verdict != RB_LEG_OK || job.findings.count) {
			print_error("%s", text);
			job_print(&job.findings);
			wrong++;
		}
		minimum.slope.fall.nm = minimum.slope.fall.nm * 1000000 + 1;
		minimum.slope.run.nm *= 1000000;
		budget = rb_budget(job.arena, &job.findings, job.inverts, &minimum);
		if (!budget->is_short || budget->leg[0].verdict != RB_LEG_FLAT)
			wrong++;
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

/* Fourteen slopes that share no factor: still worked out, and right to the nanometre. */
static void odd_slopes_survive(void **state)
{
	char text[TEXT] = "outlet,last\n" HEAD "P0,0,100,,1:53.1,\n";
	struct job job;

	(void)state;
	for (int i = 1; i < 14; i++)
		snprintf(text + strlen(text), sizeof text - strlen(text),
			 "P%d,%d.13,,,1:%d.%d,\n", i, 10 * i, 53 + 2 * i, i % 9 + 1);
	append(text, "P14,150,,,,\n");
	job = job_of(text, NONE);
	job_print(&job.findings);
	assert_non_null(job.inverts);
	assert_in_range(job_invert(&job, "P14").nm, 97 * RB_FOOT, 99 * RB_FOOT);
	job_end(&job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_form),
		cmocka_unit_test(written_slopes_are_checks),
		cmocka_unit_test(the_written_slope_is_marked),
		cmocka_unit_test(stations_know_their_reach),
		cmocka_unit_test(invert_on_a_line_that_falls_to_its_zero),
		cmocka_unit_test(stations_are_named_as_the_plan_does),
		cmocka_unit_test(absurd_intervals_are_refused),
		cmocka_unit_test(invert_at_a_chainage),
		cmocka_unit_test(listings_and_stations_change_nothing),
		cmocka_unit_test(added_stations_lie_on_the_grade),
		cmocka_unit_test(exactly_the_minimum_passes),
		cmocka_unit_test(odd_slopes_survive),
	};

	return cmocka_run_group_tests_name("inverts", tests, NULL, NULL);
}
