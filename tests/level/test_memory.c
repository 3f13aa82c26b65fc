/* SPDX-License-Identifier: MIT */
/* Running out of memory anywhere in the work on a book is said.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../memory.h"
#include "level/fall.h"
#include "level/hand_check.h"
#include "level/peg_effect.h"
#include "level/practice_book.h"
#include "level/suspects.h"

/* A spur, a check, a point reached again, an open end, a rim with a measure down. */
static const char levels[] =
	"tolerance,0.01 ft\nsight limit,100\nbalance limit,10\n"
	"point,known elevation,bs,is,fs,bs dist,fs dist,chainage,dip,rod on,hi,elevation\n"
	"BM-1,100.00,4.27,,,120,,,,,104.27,\n"
	"MH-1,,,7.48,,,,0+10,3.00,rim,,96.79\n"
	"TP-1,,5.11,,6.03,50,90,,,,103.35,98.24\n"
	"SP-1,,4.00,,5.00,40,40,0+20,,invert,102.35,98.35\n"
	"SP-2,,,5.00,,,30,0+50,,invert,,97.35\n"
	"TP-2,,4.90,,3.52,40,40,,,,104.73,99.83\n"
	"BM-2,99.60,,,4.74,,60,,,,,99.99\n"
	"BM-2,,5.00,,,30,,,,,104.60,\n"
	"END,,,,5.00,,,,,,,99.60\n"
	"sum,,27.28,,24.29,,,,,,,\n";

/* A spur, a known point with words behind it, and a rod that lacks a piece. */
static const char rod[] = "tolerance,0.02 ft\npoint,known elevation,bs,is,fs\n"
			  "BM 1,100.00,9.31,,\nTP-1,,8.77,,2.15\nTP-2,,9.62,,1.98\n"
			  "TP-3,,8.15,,2.44\nTP-4,,8.00,,2.00\nTP-5,,9.00,,2.00\n"
			  "BM 2,139.98,,,2.00\nBM 1 brass cap,,,5.00,\n"
			  "TP-2,,4.00,,\nA b,,,5.00,\nC \"d,,,5.00,\n";

static const char peg[] = "setup,a,b,distance a,distance b\n"
			  "midway,4.52,5.17,100,100\nnear a,4.80,5.44,10,210\n";

/* One section without lengths of its sights. */
static const char bare[] = "sight limit,100\npoint,known elevation,bs,fs\n"
			   "BM-1,100.00,4.27,\nTP-1,,5.11,6.03\nBM-1,,,3.35\n";

/* A point reached again, and nothing else to check. */
static const char again[] = "point,known elevation,bs,is,fs\n"
			    "BM-1,100.00,4.27,,\nA,,,5.00,\nA,,,5.01,\nBM-1,,,,4.27\n";

/* Two sections that share their beginning. */
static const char shared[] = "point,known elevation,bs,fs\n"
			     "A,100,4,\nT,,5,3\nB,102,,4.01\nT,,5,\nC,103,,3.02\n";

static bool work_on(struct rb_arena *arena, struct rb_findings *findings,
		    const struct rb_sections *sections, const char *csv)
{
	const struct rb_fall_options options = { .length = rb_length_none() };
	struct rb_adjusted *adjusted = rb_adjust(arena, findings, sections);
	struct rb_spots *spots = adjusted ? rb_spots(arena, findings, adjusted) : NULL;
	struct rb_two_peg *two_peg =
		spots ? rb_two_peg_read(arena, findings, peg, sizeof peg - 1) : NULL;

	if (!two_peg || !rb_peg_effect(arena, findings, two_peg, sections) ||
	    !rb_suspects(arena, findings, sections))
		return false;
	return csv != levels || (rb_fall(arena, findings, spots, &options) &&
				 rb_hand_check(arena, findings, sections->reduced));
}

static bool reduces(struct rb_arena *arena, const void *with)
{
	const char *csv = with;
	struct rb_findings findings;
	struct rb_book *book;
	struct rb_reduced *reduced;
	struct rb_sections *sections = NULL;
	struct rb_judging judging;
	bool done;

	rb_findings_init(&findings, arena, "book.csv");
	book = rb_book_read(arena, &findings, csv, strlen(csv));
	reduced = book ? rb_reduce(arena, &findings, book) : NULL;
	if (reduced) {
		judging = rb_judging_of(book);
		sections = rb_sections(arena, &findings, reduced, &judging);
	}
	done = sections && ((csv != levels && csv != rod) ||
			    work_on(arena, &findings, sections, csv));
	/* What is lost of the findings makes the result no worse, but it is told. */
	assert_true(done || findings.out_of_memory);
	return done && !findings.out_of_memory;
}

static bool makes_problems(struct rb_arena *arena, const void *with)
{
	const struct rb_practice_options *options = with;

	for (int number = 1; number <= 3; number++)
		if (!rb_practice(arena, options, number))
			return false;
	return true;
}

static void every_allocation_may_fail(void **state)
{
	int failures;

	(void)state;
	assert_true(memory_fails(reduces, levels, &failures));
	assert_true(failures > 100);
	assert_true(memory_fails(reduces, rod, &failures));
	assert_true(failures > 60);
	assert_true(memory_fails(reduces, bare, &failures));
	assert_true(failures > 30);
	assert_true(memory_fails(reduces, again, &failures));
	assert_true(failures > 30);
	assert_true(memory_fails(reduces, shared, &failures));
	assert_true(failures > 30);
}

static void no_problem_is_made_by_half(void **state)
{
	static const enum rb_practice_kind kinds[] = { RB_PRACTICE_CONVERT,
						       RB_PRACTICE_LOOP,
						       RB_PRACTICE_FALL };
	int failures;

	(void)state;
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
		const struct rb_practice_options options = {
			.kind = kinds[i], .unit = RB_FEET, .fraction = 16, .seed = 7
		};

		assert_true(memory_fails(makes_problems, &options, &failures));
		assert_true(failures >= 3);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_allocation_may_fail),
		cmocka_unit_test(no_problem_is_made_by_half),
	};

	return cmocka_run_group_tests_name("memory", tests, NULL, NULL);
}
