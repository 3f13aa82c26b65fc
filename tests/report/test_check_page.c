/* SPDX-License-Identifier: MIT */
/* What the page says of a book worked by hand, where one column holds several notations.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/checked.h"
#include "report/text.h"

static struct capture capture;

static const char *page_of(const char *text)
{
	struct reduced_book b;
	struct rb_checked_book book;
	struct rb_checked checked = { .book = &book, .books = 1, .decimals = -1 };

	reduce_text(&b, "t.csv", text, false);
	assert_non_null(b.reduction.adjusted);
	book = (struct rb_checked_book){
		rb_hand_check(b.arena, &b.findings, rb_reduction_reduced(&b.reduction)),
		&b.findings,
		b.reduction.style,
	};
	assert_non_null(book.check);
	checked.arena = b.arena;
	capture_init(&capture);
	assert_true(rb_page_write_text(&capture.sink, rb_checked_page(&checked),
				       (struct rb_text_style){ 200, false }));
	rb_arena_free(b.arena);
	return captured(&capture);
}

#define INCHES(elevation)                                                                \
	"unit,ft-in\npoint,bm,bs,hi,is,fs,elevation\n"                                   \
	"BM-1,100,4'-3 1/2\",104'-3 1/2\",,,\nSLAB,,,,5'-1\",," elevation                \
	"\nBM-2,,,,,4'-9\",99'-6 1/2\"\n"
#define METRES(elevation)                                                                \
	"point,bm,bs,hi,is,fs,elevation,bs dist,fs dist\n"                               \
	"BM-1,100,4.27,31.7815 m,,,,30 m,\nA,,,,4.00,," elevation                        \
	",,\nB,,,,,4.10,30.532 m,,30 m\nsum,,4.27,,,4.10,,30 m,30 m\n"

/* Each is right to the last place in which it is written: 99 ft 2 1/2 in are 99.2083 ft,
 * and 100.27 ft are 30.5623 m. */
static const struct {
	const char *what, *book, *verdict;
} cases[] = {
	{ "parts of an inch", INCHES("99'-2 1/2\""), "FOLLOWS: 3 cells" },
	{ "decimals of a foot", INCHES("99.21 ft"), "FOLLOWS: 3 cells" },
	{ "wrong decimals of a foot", INCHES("99.22 ft"), "WRONG: 1 cell of 3" },
	{ "decimals of an inch", INCHES("99'-2.5\""), "FOLLOWS: 3 cells" },
	{ "wrong decimals of an inch", INCHES("99'-2.7\""), "WRONG: 1 cell of 3" },
	{ "metres among feet and inches", INCHES("30.2387 m"), "FOLLOWS: 3 cells" },
	{ "wrong metres", INCHES("30.3387 m"), "WRONG: 1 cell of 3" },
	{ "nothing but metres", METRES("30.562 m"), "FOLLOWS: 7 cells" },
	{ "nothing but wrong metres", METRES("30.552 m"), "WRONG: 1 cell of 7" },
};

static void each_notation_has_its_own_last_place(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const char *page = page_of(cases[i].book);

		if (strstr(page, cases[i].verdict))
			continue;
		print_error("%s: no \"%s\" in\n%s", cases[i].what, cases[i].verdict,
			    page);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* Sight lengths are shown as finely as they are written. */
static void sight_lengths_keep_their_places(void **state)
{
	static const char book[] = "point,bm,bs,hi,is,fs,elevation,bs dist,fs dist\n"
				   "A,100,4.00,104.00,,,,30.125,\n"
				   "B,,,,,4.10,99.90,,30.125\n"
				   "sum,,4.00,,,4.10,,30.126,30.125\n";

	(void)state;
	assert_non_null(strstr(page_of(book), "30.126"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_notation_has_its_own_last_place),
		cmocka_unit_test(sight_lengths_keep_their_places),
	};

	return cmocka_run_group_tests_name("check page", tests, NULL, NULL);
}
