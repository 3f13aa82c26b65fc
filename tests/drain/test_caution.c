/* SPDX-License-Identifier: MIT */
/* Cautions come where the numbers trigger them, with a citation, and never say safe. */
#include "job.h"

#include <ctype.h>

#include "drain/caution.h"

#define BOOK                                                                             \
	"point,chainage,known elevation,backsight,intermediate,rod on\nBM,,100.00,4.00,,\n"
#define PLAN "pipe,4 in sch 40\nbedding,none\noutlet,last\nslope,1:100\n"

struct scene {
	struct job job;
	struct rb_findings findings;
	struct rb_cautions *cautions;
};

static struct scene scene_of(const char *plan, const char *book, const char *jurisdiction,
			     rb_length hi)
{
	struct scene s = { .job = job_of(plan, NONE) };
	const struct rb_jurisdiction *j = *jurisdiction
						  ? rb_jurisdiction_find(jurisdiction)
						  : rb_jurisdiction_unset();
	struct rb_cut_sheet *sheet;
	struct rb_grade_rods *rods = NULL;

	rb_findings_init(&s.findings, s.job.arena, "ground.csv");
	sheet = rb_cut_sheet(s.job.arena, &s.findings, &s.findings, s.job.inverts,
			     book ? job_book(s.job.arena, &s.findings, book) : NULL,
			     NONE);
	if (rb_length_given(hi))
		rods = rb_grade_rods(s.job.arena, &s.findings, s.job.inverts, hi);
	assert_non_null(j);
	s.cautions = rb_cautions(s.job.arena, &s.findings, j, sheet, rods);
	return s;
}

static size_t count(const struct rb_cautions *cautions, enum rb_caution_kind kind)
{
	size_t n = 0;

	for (uint32_t i = 0; i < cautions->count; i++)
		n += cautions->item[i].kind == kind;
	return n;
}

/* The pipe stands at 30.000 and its trench 6 mm below. */
static void depths_by_jurisdiction(void **state)
{
	/* clang-format off */
	static const struct { const char *jurisdiction; int64_t millimetres; size_t limits; } cases[] = {
		{ "",               1199, 0 }, { "",               1200, 1 },
		{ "us osha",        1219, 0 }, { "us osha",        1220, 1 },
		{ "US  OSHA",       1523, 1 }, { "us osha",        1524, 2 },
		{ "us osha",        6096, 3 },
		{ "alberta",        1499, 0 }, { "alberta",        1500, 2 },
		{ "bc",             1200, 1 }, { "bc",             6000, 2 },
		{ "ontario",        1199, 0 }, { "ontario",        1200, 1 },
		{ "canada federal", 1399, 0 }, { "Canada Federal", 1400, 1 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		int64_t ground = 30000 + cases[i].millimetres - 6;
		char book[200];
		struct scene s;

		snprintf(
			book, sizeof book,
			"unit,m\npoint,chainage,known elevation,backsight,intermediate,rod on\n"
			"BM,,36,1,,\nA,0,,,%d.%03d,ground\n",
			(int)(37000 - ground) / 1000, (int)(37000 - ground) % 1000);
		s = scene_of(
			"unit,m\npipe outside,110 mm\npipe wall,6 mm\nbedding,none\n"
			"outlet,last\nslope,1%\npoint,chainage,invert\nA,0,30\nB,10,\n",
			book, cases[i].jurisdiction, NONE);
		if (count(s.cautions, RB_CAUTION_DEPTH) != cases[i].limits) {
			print_error("row %zu, %s: %zu\n", i, cases[i].jurisdiction,
				    count(s.cautions, RB_CAUTION_DEPTH));
			job_print(&s.findings);
			wrong++;
		}
		wrong += count(s.cautions, RB_CAUTION_LOCATE) != 1;
		job_end(&s.job);
	}
	assert_int_equal(wrong, 0);
}

static void no_ground_no_depth(void **state)
{
	struct scene s = scene_of(PLAN "point,chainage,invert\nA,0,95\nB,50,\n", NULL,
				  "us osha", NONE);

	(void)state;
	assert_int_equal(s.cautions->count, 1);
	assert_int_equal(s.cautions->item[0].kind, RB_CAUTION_LOCATE);
	assert_string_equal(s.cautions->item[0].rule, "29 CFR 1926.651(b)(1)-(4)");
	job_end(&s.job);
}

/* The trench must stay as far away as it goes below the footing: the 45 degree line. */
static void the_line_below_a_footing(void **state)
{
	/* clang-format off */
	static const struct { const char *away; bool is_caution; } cases[] = {
		{ "2'-0 1/4\"", false }, /* the bottom is 0.237 in below 95, 2 ft below 97 */
		{ "2'-0\"", true },
		{ "9", false },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char plan[300];
		struct scene s;

		snprintf(plan, sizeof plan,
			 PLAN "point,chainage,invert,footing bottom,footing away\n"
			      "A,0,95,97,%s\nB,50,,,\n",
			 cases[i].away);
		s = scene_of(plan, NULL, "", NONE);
		if ((count(s.cautions, RB_CAUTION_FOOTING) == 1) != cases[i].is_caution) {
			print_error("row %zu\n", i);
			wrong++;
		}
		job_end(&s.job);
	}
	assert_int_equal(wrong, 0);
}

/* Without bedding the trench goes at least to the outside bottom; without a wall, to the
 * invert.  Half a footing says nothing. */
static void what_is_known_of_the_trench(void **state)
{
	/* clang-format off */
	static const struct { const char *keys, *footing; int64_t below; /* 0: none */ } cases[] = {
		{ "pipe,4 in sch 40\n", "97,2",     2 * RB_FOOT + 237 * RB_INCH / 1000 },
		{ "pipe,4 in sch 40\n", "97,2.02",  0 },
		{ "",                   "97,2",     0 },
		{ "",                   "97,1.99",  2 * RB_FOOT },
		{ "pipe,4 in sch 40\nbedding,6 in\n", "97,2.5", 2 * RB_FOOT + 6237 * RB_INCH / 1000 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char plan[300];
		struct scene s;
		const struct rb_caution *last;
		bool is_caution;

		snprintf(plan, sizeof plan,
			 "%soutlet,last\nslope,1%%\n"
			 "point,chainage,invert,footing bottom,footing away\n"
			 "A,0,95,%s\nB,50,,,\n",
			 cases[i].keys, cases[i].footing);
		s = scene_of(plan, NULL, "", NONE);
		last = &s.cautions->item[s.cautions->count - 1];
		is_caution = last->kind == RB_CAUTION_FOOTING;
		if (is_caution != (cases[i].below != 0) ||
		    (is_caution && last->value.nm != cases[i].below)) {
			print_error("row %zu: %lld\n", i, (long long)last->value.nm);
			wrong++;
		}
		job_end(&s.job);
	}
	assert_int_equal(wrong, 0);
}

/* The longest of all grade rods, and the first station of those that have it. */
static void the_longest_rod_is_named(void **state)
{
	/* clang-format off */
	static const struct { const char *rows, *where; } cases[] = {
		{ "A,0,95\nB,50,95.5\nC,100,96\n", "A" },
		{ "A,0,96\nB,50,95\nC,100,95.5\n", "B" },
		{ "A,0,95\nB,50,95\nC,100,95\n",   "A" },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char plan[300];
		struct scene s;
		const struct rb_caution *last;

		snprintf(plan, sizeof plan,
			 "pipe,4 in sch 40\nbedding,none\noutlet,last\n"
			 "point,chainage,invert\n%s",
			 cases[i].rows);
		s = scene_of(plan, NULL, "", FT(103, 0));
		last = &s.cautions->item[s.cautions->count - 1];
		if (last->kind != RB_CAUTION_ROD || strcmp(last->where, cases[i].where) ||
		    last->value.nm != 8 * RB_FOOT + 237 * RB_INCH / 1000) {
			print_error("row %zu: %s, %lld\n", i, last->where,
				    (long long)last->value.nm);
			wrong++;
		}
		job_end(&s.job);
	}
	assert_int_equal(wrong, 0);
}

static void an_extended_rod(void **state)
{
	const char *plan = PLAN "point,chainage,invert\nA,0,95\nB,50,\n";
	struct scene s = scene_of(plan, NULL, "", FT(101, 0)); /* 6.5 + .237 in */

	(void)state;
	assert_int_equal(count(s.cautions, RB_CAUTION_ROD), 0);
	job_end(&s.job);
	s = scene_of(plan, NULL, "", FT(102, 0));
	assert_int_equal(count(s.cautions, RB_CAUTION_ROD), 1);
	assert_string_equal(s.cautions->item[1].where, "B");
	job_end(&s.job);
}

/* A limit that the exact depth or rod does not reach by less than a nanometre is not
 * reached, and one that it passes by less is passed. */
static void the_exact_number_triggers(void **state)
{
	/* 1:7 of 10 m is 1.428 571 428 4/7 m: the invert at B is 28.571 428 571 3/7 m. */
	const char *plan = "unit,m\noutlet,last\nslope,1:7\n"
			   "point,chainage,invert\nA,0,30\nB,10,\n";
	const char *book =
		"unit,m\npoint,chainage,known elevation,backsight,intermediate,"
		"rod on\nBM,,36,1,,\nB,10,,,7.2285714%s,ground\n";
	char text[200];
	struct scene s;

	(void)state;
	snprintf(text, sizeof text, book, "29"); /* 1.2 m less 3/7 nm */
	s = scene_of(plan, text, "", NONE);
	assert_int_equal(count(s.cautions, RB_CAUTION_DEPTH), 0);
	job_end(&s.job);
	snprintf(text, sizeof text, book, "28"); /* and 4/7 nm more than it */
	s = scene_of(plan, text, "", NONE);
	assert_int_equal(count(s.cautions, RB_CAUTION_DEPTH), 1);
	job_end(&s.job);
	s = scene_of("outlet,last\nslope,1:7\npoint,chainage,invert\nA,0,0\nB,1,\n", NULL,
		     "", (rb_length){ 7 * RB_FOOT - 43542857 });
	assert_int_equal(count(s.cautions, RB_CAUTION_ROD), 1);
	job_end(&s.job);
}

static bool says(const char *text, const char *word)
{
	size_t length = strlen(word);

	for (; *text; text++) {
		size_t i = 0;

		while (i < length && tolower((unsigned char)text[i]) == word[i])
			i++;
		if (i == length)
			return true;
	}
	return false;
}

static void nothing_says_safe(void **state)
{
	size_t count_of;
	const struct rb_jurisdiction *j = rb_jurisdictions(&count_of);

	(void)state;
	for (size_t i = 0; i < count_of; i++)
		for (size_t k = 0; k < j[i].limits; k++) {
			assert_true(*j[i].limit[k].rule && *j[i].limit[k].asks);
			assert_false(says(j[i].limit[k].asks, "safe"));
			assert_true(!k ||
				    j[i].limit[k].depth.nm >= j[i].limit[k - 1].depth.nm);
		}
}

/* What stands in where none is set is the least of the table. */
static void the_least_stands_in(void **state)
{
	size_t count_of;
	const struct rb_jurisdiction *j = rb_jurisdictions(&count_of);
	int64_t least = RB_LENGTH_MAX;

	(void)state;
	for (size_t i = 0; i < count_of; i++)
		if (j[i].limit[0].depth.nm < least)
			least = j[i].limit[0].depth.nm;
	assert_int_equal(rb_jurisdiction_unset()->limit[0].depth.nm, least);
	assert_null(rb_jurisdiction_find("atlantis"));
	assert_null(rb_jurisdiction_find(""));
}

static void a_file_of_the_users(void **state)
{
	struct job job = job_new();
	const char *text =
		"jurisdiction,Our yard\nlocate,Yard rule 2\n"
		"depth,rule,asks for\n1.5 m,Yard rule 9,shoring\n3 ft,Yard rule 8,a ladder\n";
	const struct rb_jurisdiction *j =
		rb_jurisdiction_read(job.arena, &job.findings, text, strlen(text));

	(void)state;
	job_print(&job.findings);
	assert_non_null(j);
	assert_string_equal(j->name, "Our yard");
	assert_int_equal(j->limits, 2);
	assert_string_equal(j->limit[0].rule, "Yard rule 8");
	assert_int_equal(j->limit[1].depth.nm, 3 * RB_METRE / 2);
	text = "depth,rule\n,Yard rule 9\n";
	assert_null(rb_jurisdiction_read(job.arena, &job.findings, text, strlen(text)));
	assert_true(job_found(&job.findings, RB_CODE_LIMIT_WITHOUT_DEPTH));
	job_end(&job);
}

/* The trench goes 3/7 of a nanometre further below than it is away. */
static void the_exact_line_below_a_footing(void **state)
{
	struct scene s = scene_of("outlet,last\nslope,1 in 7\n"
				  "point,chainage,invert,footing bottom,footing away\n"
				  "A,0,100.00,,\nB,10,,30.2 m,0.155428571 m\n",
				  NULL, "", NONE);

	(void)state;
	assert_int_equal(count(s.cautions, RB_CAUTION_FOOTING), 1);
	job_end(&s.job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(depths_by_jurisdiction),
		cmocka_unit_test(no_ground_no_depth),
		cmocka_unit_test(the_line_below_a_footing),
		cmocka_unit_test(what_is_known_of_the_trench),
		cmocka_unit_test(the_longest_rod_is_named),
		cmocka_unit_test(the_exact_line_below_a_footing),
		cmocka_unit_test(an_extended_rod),
		cmocka_unit_test(the_exact_number_triggers),
		cmocka_unit_test(nothing_says_safe),
		cmocka_unit_test(the_least_stands_in),
		cmocka_unit_test(a_file_of_the_users),
	};

	return cmocka_run_group_tests_name("caution", tests, NULL, NULL);
}
