/* SPDX-License-Identifier: MIT */
/* Running out of memory anywhere in a job is said, and nothing is lost or half-made. */
#include "job.h"

#include "../memory.h"

#include "drain/caution.h"
#include "drain/fall_budget.h"
#include "drain/laid.h"
#include "level/fall.h"

static const char plan[] =
	"drain,D\npipe,4 in sch 40\nbedding,4 in\nrules,r\noutlet,last\nslope,2%\n"
	"point,chainage,invert,step,footing bottom,footing away\n"
	"A,0+00,95,,95.5,0.2\nB,0+50,,0.1,,\nC,1+00,,,,\n";
static const char rules[] = "rule,R\nsize up to,minimum slope\n3 in,1:48\n,1:96\n";
static const char limits[] = "jurisdiction,J\nlocate,L\ndepth,rule,asks for\n4,R,A\n";
static const char book[] =
	"point,chainage,known elevation,backsight,intermediate,foresight,rod on\n"
	"BM,,100.00,4.00,,,\nA,0+00,,,4.10,,ground\nC,1+00,,,4.90,,ground\nB,0+50,,,3.90,,hub\n"
	"A,0+00,,,9.00,,invert\nB,0+50,,,10.10,,invert\nC,1+00,,,11.10,,invert\n"
	"shed,,,,2.00,,ground\n";

/* All stages in order; true if all of them gave a result. */
static bool run(struct rb_arena *arena, struct rb_findings *findings)
{
	struct rb_plan *p = rb_plan_read(arena, findings, plan, sizeof plan - 1);
	struct rb_rules *r =
		p ? rb_rules_read(arena, findings, rules, sizeof rules - 1) : NULL;
	struct rb_inverts *i = r ? rb_inverts(arena, findings, p, FT(10, 0)) : NULL;
	struct rb_spots *s = i ? job_book(arena, findings, book) : NULL;
	struct rb_fall_options options = { .length = NONE };
	struct rb_minimum minimum;

	/* A text that was lost is told, too. */
	if (s && !findings->out_of_memory) {
		assert_string_equal(p->drain, "D");
		assert_string_equal(p->row[0].name, "A");
		assert_string_equal(r->name, "R");
	}
	if (!s ||
	    !rb_minimum_by_rules(findings, r, p->pipe.size, rb_in_file(), &minimum) ||
	    !rb_budget(arena, findings, i, &minimum) ||
	    !rb_fall(arena, findings, s, &options))
		return false;
	struct rb_cut_sheet *sheet = rb_cut_sheet(arena, findings, findings, i, s, NONE);
	struct rb_grade_rods *rods =
		sheet ? rb_grade_rods(arena, findings, i, FT(104, 0)) : NULL;

	return rods && rb_laid(arena, findings, findings, i, s, &minimum) &&
	       rb_cautions(arena, findings, rb_jurisdiction_unset(), sheet, rods);
}

static bool works_out(struct rb_arena *arena, const void *with)
{
	struct rb_findings findings;
	bool done;

	(void)with;
	rb_findings_init(&findings, arena, "plan.csv");
	done = run(arena, &findings);
	assert_int_not_equal(done, findings.out_of_memory);
	return done;
}

static bool reads_limits(struct rb_arena *arena, const void *with)
{
	struct rb_findings findings;
	const struct rb_jurisdiction *j;

	(void)with;
	rb_findings_init(&findings, arena, "limits.csv");
	j = rb_jurisdiction_read(arena, &findings, limits, sizeof limits - 1);
	assert_int_not_equal(j != NULL, findings.out_of_memory);
	if (j) {
		assert_string_equal(j->name, "J");
		assert_string_equal(j->limit[0].asks, "A");
	}
	return j;
}

static bool lays_straight(struct rb_arena *arena, const void *with)
{
	struct rb_findings findings;
	const struct rb_plan *p;

	(void)with;
	rb_findings_init(&findings, arena, NULL);
	p = rb_plan_straight(arena, &findings, RB_FEET, FT(96, 0),
			     (rb_slope){ { 1 }, { 48 } }, FT(42, 0), RB_OUTLET_LAST);
	assert_int_not_equal(p != NULL, findings.out_of_memory);
	return p;
}

static void every_allocation_may_fail(void **state)
{
	int failures;

	(void)state;
	assert_true(memory_fails(works_out, NULL, &failures));
	assert_true(failures > 100);
	assert_true(memory_fails(reads_limits, NULL, &failures));
	assert_true(failures > 5);
	assert_true(memory_fails(lays_straight, NULL, &failures));
	assert_true(failures > 3);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(every_allocation_may_fail) };

	return cmocka_run_group_tests_name("memory", tests, NULL, NULL);
}
