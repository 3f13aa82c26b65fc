/* SPDX-License-Identifier: MIT */
/* Every line's arithmetic, written out. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/reduced_steps.h"
#include "report/text.h"

static struct capture capture;

static const char *steps_of(const char *book)
{
	struct reduced_book b;
	struct rb_page *page;

	reduce_text(&b, "t.csv", book, false);
	page = rb_page_new(b.arena);
	capture_init(&capture);
	if (b.reduction.adjusted)
		rb_reduced_steps(page, &b.reduction);
	rb_page_write_text(&capture.sink, page, (struct rb_text_style){ 80, false });
	rb_arena_free(b.arena);
	return captured(&capture);
}

static void writes_each_line_out(void **state)
{
	(void)state;
	assert_string_equal(steps_of(larch),
			    "Step by step\n"
			    "line 5, BM-1\n"
			    "  known elevation = 100.00\n"
			    "  HI = 100.00 + 4.27 = 104.27\n"
			    "line 6, TP-1\n"
			    "  elevation = 104.27 - 6.03 = 98.24\n"
			    "  correction = 0.01 x 1 / 3 = 0.0033 (rounded)\n"
			    "  adjusted = 98.24 + 0.0033 = 98.2433 (rounded)\n"
			    "  HI = 98.24 + 5.11 = 103.35\n"
			    "line 7, MH-1\n"
			    "  elevation = 103.35 - 6.48 = 96.87\n"
			    "  correction = 0.01 x 2 / 3 = 0.0067 (rounded)\n"
			    "  adjusted = 96.87 + 0.0067 = 96.8767 (rounded)\n"
			    "line 8, TP-2\n"
			    "  elevation = 103.35 - 3.52 = 99.83\n"
			    "  correction = 0.01 x 2 / 3 = 0.0067 (rounded)\n"
			    "  adjusted = 99.83 + 0.0067 = 99.8367 (rounded)\n"
			    "  HI = 99.83 + 4.90 = 104.73\n"
			    "line 9, BM-1\n"
			    "  elevation = 104.73 - 4.74 = 99.99\n"
			    "  correction = 100.00 - 99.99 = 0.01\n"
			    "  adjusted = 99.99 + 0.0100 = 100.0000\n"
			    "section BM-1 to BM-1\n"
			    "  sum of backsights = 4.27 + 5.11 + 4.90 = 14.28\n"
			    "  sum of foresights = 6.03 + 3.52 + 4.74 = 14.29\n"
			    "  their difference = 14.28 - 14.29 = -0.01\n"
			    "  last - first elevation = 99.99 - 100.00 = -0.01\n"
			    "  misclosure = 99.99 - 100.00 = -0.01\n");
}

/* Parts that the steps of a book hold. */
static const struct part_case {
	const char *name, *book;
	const char *parts[5];
} part_cases[] = {
	/* clang-format off */
	{ "by distance",
	  "tolerance,0.05\nadjust,distance\npoint,bs,fs,bs dist,fs dist,bm\n"
	  "A,4.27,,50,,100\nB,3.00,4.00,60,50\nA,,3.28,,100\n",
	  { "correction = 0.01 x 100.00 ft / 260.00 ft = 0.0038 (rounded)", NULL } },
	{ "by distance, in quarters",
	  "tolerance,0.05\nadjust,distance\npoint,bs,fs,bs dist,fs dist,bm\n"
	  "A,5.13,,30.25,,100\nB,4.27,5.16,40.75,35.50\nA,,4.27,,40.25\n",
	  { "correction = 0.03 x 65.75 ft / 146.75 ft = 0.0134 (rounded)", NULL } },
	{ "by distance, in metres",
	  "tolerance,0.05\nadjust,distance\npoint,bs,fs,bs dist,fs dist,bm\n"
	  "A,4.27,,5.1 m,,100\nB,3.00,4.00,9.3 m,5.2 m\nA,,3.28,,9.1 m\n",
	  { "correction = 0.01 x 33.7927 ft (rounded) / 94.1601 ft (rounded) = 0.0036\n", NULL } },
	{ "a spur, and a tape let down",
	  "tolerance,0.05\npoint,bs,fs,bm,dip\nA,4.27,,100,\nB,3.00,4.00,,\nX,,5.00,,2.5\n"
	  "B,3.00,,,\nA,,3.29,,\n",
	  { "below = ", "correction = that of the point on which the setup stands", NULL } },
	{ "inches in a book of decimal feet",
	  "point,bs,fs,bm\nA,5'-3 1/2\",,100\nA,,5.29,\n",
	  { "  5'-3 1/2\" = 5.29167 (rounded)", "  HI = 100.000 + 5.29167 = 105.29167 (rounded)",
	    "  sum of backsights = 5.29167 (rounded)\n", NULL } },
	{ "carry and borrow",
	  "unit,ft-in\npoint,bs,fs,bm\nA,4'-9\",,100'-8 1/2\"\nA,,4'-9 1/2\",\n",
	  { "  HI = 100'-8 1/2\" + 4'-9\" = 105'-5 1/2\"\n      100'-8 1/2\" + 4'-9\" = 104'-17 1/2\", "
	    "17 1/2\" is 1'-5 1/2\": 105'-5 1/2\"\n",
	    "      5 1/2\" is less than 9 1/2\", so borrow 1 ft = 12\": 104'-17 1/2\"\n", NULL } },
	/* clang-format on */
};

static void holds_the_parts(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof part_cases / sizeof *part_cases; i++) {
		const char *steps = steps_of(part_cases[i].book);

		for (size_t p = 0; part_cases[i].parts[p]; p++) {
			if (strstr(steps, part_cases[i].parts[p]))
				continue;
			print_error("%s: no %s in\n%s\n", part_cases[i].name,
				    part_cases[i].parts[p], steps);
			wrong++;
		}
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writes_each_line_out),
		cmocka_unit_test(holds_the_parts),
	};

	return cmocka_run_group_tests_name("reduced_steps", tests, NULL, NULL);
}
