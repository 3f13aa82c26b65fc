/* SPDX-License-Identifier: MIT */
/* Where to look: each place once, in the places that the slip needs. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/reduced_page.h"
#include "report/text.h"

static struct capture capture;

static const char *page_of(const char *book, int fraction)
{
	struct reduced_book b;

	reduce_text(&b, "t.csv", book, false);
	assert_non_null(b.reduction.adjusted);
	if (fraction)
		b.reduction.style.fraction = fraction;
	capture_init(&capture);
	assert_true(rb_page_write_text(&capture.sink,
				       rb_reduced_page(b.arena, &b.reduction),
				       (struct rb_text_style){ 200, false }));
	rb_arena_free(b.arena);
	return captured(&capture);
}

static size_t count_of(const char *text, const char *word)
{
	size_t count = 0;

	for (text = strstr(text, word); text; text = strstr(text + 1, word))
		count++;
	return count;
}

/* 5 for 6 is a foot, and it is a digit that looks like the other: 106.00 either way. */
static void an_elevation_is_listed_once(void **state)
{
	const char *page = page_of("tolerance,0.02\npoint,bm,bs,fs\nA,100.00,9.00,\n"
				   "B,105.00,,3.00\n",
				   0);

	(void)state;
	assert_int_equal(count_of(page, "105.00   106.00  exactly  the elevation itself"),
			 1);
	assert_int_equal(count_of(page, "the elevation itself"), 2); /* and 99.00 for A */
}

/* A reading of a sixteenth is not shown as the eighth that the table is in. */
static void a_reading_is_shown_exactly(void **state)
{
	const char *page = page_of("unit,ft-in\ntolerance,\"1/8\"\"\"\npoint,bm,bs,fs\n"
				   "A,100'-0\",4'-3 1/16\",\nA,,,5'-3 1/16\"\n",
				   8);

	(void)state;
	assert_non_null(strstr(page, "4'-3 1/16\""));
	assert_non_null(strstr(page, "5'-3 1/16\""));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(an_elevation_is_listed_once),
		cmocka_unit_test(a_reading_is_shown_exactly),
	};

	return cmocka_run_group_tests_name("suspects page", tests, NULL, NULL);
}
