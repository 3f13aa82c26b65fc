/* SPDX-License-Identifier: MIT */
/* test_any_unit.c - a plan means the same whatever the unit of its file. */
#include "job.h"

#include <inttypes.h>

#include "drain/cut_sheet.h"
#include "drain/grade_rods.h"

#define TEXT 1200

static uint64_t next(uint64_t *seed, uint64_t below)
{
	*seed = *seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
	return (*seed >> 33) % below;
}

/* Every number carries its own mark, so that the unit of the file says nothing. */
static void write_plan(char text[static TEXT], const char *unit, uint64_t seed)
{
	uint64_t invert = next(&seed, 10000), length = 500 + next(&seed, 20000);
	uint64_t slope = 1 + next(&seed, 40), footing = next(&seed, 900);

	snprintf(text, TEXT,
		 "unit,%s\npipe,4 in sch 40\nbedding,\"3 1/2\"\"\"\ncover,450 mm\n"
		 "outlet,last\nslope,%" PRIu64 "/64 in/ft\n"
		 "point,chainage,invert,step,footing bottom,footing away\n"
		 "A,0 ft,,,90.%03" PRIu64 " m,1.25 m\nB,%" PRIu64 ".%02" PRIu64
		 " ft,8%" PRIu64 ".%02" PRIu64 " ft,\"1 3/8\"\"\",,\nC,95.5 m,,,,\n",
		 unit, slope, footing, length / 100, length % 100, invert / 1000,
		 invert % 100);
}

static bool same(rb_length a, rb_length b)
{
	return a.nm == b.nm;
}

static bool same_station(const struct job *a, const struct job *b, uint32_t i)
{
	const rb_length hi = { 40 * RB_METRE };
	struct rb_cut_sheet *s =
		rb_cut_sheet(a->arena, (struct rb_findings *)&a->findings, NULL,
			     a->inverts, NULL, NONE);
	struct rb_cut_sheet *t =
		rb_cut_sheet(b->arena, (struct rb_findings *)&b->findings, NULL,
			     b->inverts, NULL, NONE);
	struct rb_grade_rods *r = rb_grade_rods(
		a->arena, (struct rb_findings *)&a->findings, a->inverts, hi);
	struct rb_grade_rods *q = rb_grade_rods(
		b->arena, (struct rb_findings *)&b->findings, b->inverts, hi);

	return !rb_exact_compare(a->inverts->station[i].out,
				 b->inverts->station[i].out) &&
	       !rb_exact_compare(a->inverts->station[i].in, b->inverts->station[i].in) &&
	       same(s->cut[i].top_of_pipe, t->cut[i].top_of_pipe) &&
	       same(s->cut[i].trench_bottom, t->cut[i].trench_bottom) &&
	       same(r->rod[i][RB_TRENCH_BOTTOM].reading,
		    q->rod[i][RB_TRENCH_BOTTOM].reading) &&
	       same(a->plan->row[i].footing_bottom, b->plan->row[i].footing_bottom);
}

static void the_unit_of_the_file_changes_nothing(void **state)
{
	static const char *const units[] = { "in", "ft-in", "m", "mm" };
	char text[TEXT];
	int wrong = 0;

	(void)state;
	for (uint64_t seed = 0; seed < 100; seed++)
		for (size_t u = 0; u < sizeof units / sizeof *units; u++) {
			struct job feet, other;

			write_plan(text, "ft", seed);
			feet = job_of(text, NONE);
			write_plan(text, units[u], seed);
			other = job_of(text, NONE);
			for (uint32_t i = 0; i < 3; i++) {
				if (feet.inverts && other.inverts &&
				    same_station(&feet, &other, i))
					continue;
				print_error("%s", text);
				job_print(&other.findings);
				wrong++;
			}
			job_end(&feet);
			job_end(&other);
		}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_unit_of_the_file_changes_nothing),
	};

	return cmocka_run_group_tests_name("any unit", tests, NULL, NULL);
}
