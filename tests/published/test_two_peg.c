/* SPDX-License-Identifier: MIT */
/*
 * Two-peg tests that were published with their answers.
 *
 * First: exam problem with solution, unipeppa.com (a second copy on answerhappy.com):
 * pegs 50 m apart, the second setup 5 m beyond B.  Printed: error 0.030 m in 50 m, line
 * of sight low, correct reading on A 1.645. Second: problem 7098647 on transtutors.com:
 * pegs 40 m apart, the second setup 10 m beyond the second peg.  The printed answer
 * begins "0.001": per metre; the corrected readings 1.506 and 1.462 are worked out from
 * it here (both setups then differ by 0.044).
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "level/two_peg.h"

#define MM(millimetres) (RB_MILLIMETRE * (millimetres))

/* clang-format off */
static const struct published {
	const char *text;
	int64_t rise, run; /* as printed */
	int64_t a, b;      /* corrected */
} published[] = {
	{ "unit,m\nsetup,a,b,distance a,distance b\n"
	  "midway,1.283,0.860,25,25\n5 m beyond B,1.612,1.219,55,5\n",
	  MM(-30), 50 * RB_METRE, MM(1645), MM(1222) },
	{ "unit,m\nsetup,a,b,distance a,distance b\n"
	  "midway,1.476,1.432,20,20\n10 m beyond B,1.556,1.472,50,10\n",
	  MM(1), RB_METRE, MM(1506), MM(1462) },
};
/* clang-format on */

static void agree(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof published / sizeof *published; i++) {
		const struct published *p = &published[i];
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_findings findings;
		const struct rb_two_peg *peg;

		rb_findings_init(&findings, arena, "published.csv");
		peg = rb_two_peg_read(arena, &findings, p->text, strlen(p->text));
		if (!peg || rb_two_peg_over(peg, rb_length_of(p->run)).nm != p->rise ||
		    peg->corrected_a.nm != p->a || peg->corrected_b.nm != p->b) {
			print_error("problem %zu\n", i + 1);
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(agree) };

	return cmocka_run_group_tests_name("published two-peg tests", tests, NULL, NULL);
}
