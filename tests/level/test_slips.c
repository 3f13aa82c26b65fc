/* SPDX-License-Identifier: MIT */
/* test_slips.c - what a number may have been, as it was written: each kind of slip. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "level/slips.h"
#include "quoted.h"

#define COUNT(table) (sizeof(table) / sizeof *(table))
#define HUNDREDTH    (RB_FOOT / 100)

/* clang-format off */
static const struct {
	const char *unit, *cell; /* a backsight; the rod has 13 ft */
	enum rb_slip slip;
	int64_t step;            /* in which the values are counted */
	const char *maybe;       /* in the order in which they are offered */
} cases[] = {
	/* 4.72 and 2.47; 40.27 is beyond the rod */
	{ "ft", "4.27", RB_SLIP_EXCHANGED,  HUNDREDTH, "472 247" },
	{ "ft", "0.42", RB_SLIP_EXCHANGED,  HUNDREDTH, "24 402" },
	{ "ft", "1.05", RB_SLIP_EXCHANGED,  HUNDREDTH, "150 15 1005" },
	/* 7 as 1 or 2, 2 as 7, 4 as 9 */
	{ "ft", "4.27", RB_SLIP_LOOK_ALIKE, HUNDREDTH, "421 422 477 927" },
	{ "ft", "0.42", RB_SLIP_LOOK_ALIKE, HUNDREDTH, "47 92 642 842" },
	{ "ft", "4.27", RB_SLIP_FOOT,       HUNDREDTH, "527 327" },
	{ "ft", "4.27", RB_SLIP_TENTH,      HUNDREDTH, "437 417" },
	{ "ft", "0.27", RB_SLIP_FOOT,       HUNDREDTH, "127" }, /* not below nothing */
	{ "ft", "12.27", RB_SLIP_FOOT,      HUNDREDTH, "1127" }, /* nor over the rod */
	{ "ft", "12.00", RB_SLIP_FOOT,      HUNDREDTH, "1300 1100" }, /* its end is on it */
	{ "ft", "4.27", RB_SLIP_SIGN,       HUNDREDTH, "-427" },
	{ "ft", "-4.27", RB_SLIP_SIGN,      HUNDREDTH, "427" },
	{ "ft", "-4.27", RB_SLIP_EXCHANGED, HUNDREDTH, "-472 -247" },
	{ "ft", "4.27", RB_SLIP_FRACTION,   HUNDREDTH, "" },
	/* 5.6 for 5'-6"; 5.1 for 5'-1" or 5'-10"; 5.11 for 5'-11" */
	{ "ft", "5.6",  RB_SLIP_INCHES,     RB_INCH, "66" },
	{ "ft", "5.1",  RB_SLIP_INCHES,     RB_INCH, "61 70" },
	{ "ft", "5.11", RB_SLIP_INCHES,     RB_INCH, "71" },
	{ "ft", "5.12", RB_SLIP_INCHES,     RB_INCH, "" },
	{ "ft", "5.00", RB_SLIP_INCHES,     RB_INCH, "" },

	{ "m", "1.613", RB_SLIP_EXCHANGED,  RB_MILLIMETRE, "1631 1163" }, /* 6.113 is over */
	{ "m", "1.613", RB_SLIP_FOOT,       RB_MILLIMETRE, "2613 613 1713 1513" },
	{ "m", "1.613", RB_SLIP_TENTH,      RB_MILLIMETRE, "1623 1603" },
	{ "mm", "1613", RB_SLIP_EXCHANGED,  RB_MILLIMETRE, "1631 1163" },

	/* figures of feet and of inches, and both exchanged; 30" and 40' are none */
	{ "ft-in", "4'-3 1/2\"", RB_SLIP_EXCHANGED,  RB_INCH / 2, "81" },
	{ "ft-in", "4'-1 1/2\"", RB_SLIP_EXCHANGED,  RB_INCH / 2, "117 33" }, /* 01 for 10 */
	{ "ft-in", "12'-5\"",    RB_SLIP_EXCHANGED,  RB_INCH, "" }, /* no 5'-12" */
	{ "ft-in", "11'-5\"",    RB_SLIP_EXCHANGED,  RB_INCH, "71" },
	{ "ft-in", "4'-3 1/2\"", RB_SLIP_LOOK_ALIKE, RB_INCH / 2, "223 107 113" },
	{ "ft-in", "4'-3 1/2\"", RB_SLIP_FOOT,       RB_INCH / 2, "127 79" },
	{ "ft-in", "4'-3 1/2\"", RB_SLIP_TENTH,      RB_INCH / 2, "105 101" },
	{ "ft-in", "5'-6\"",     RB_SLIP_INCHES,     HUNDREDTH, "560" },
	{ "ft-in", "5'-10\"",    RB_SLIP_INCHES,     HUNDREDTH, "510" },
	{ "ft-in", "5'-9\"",     RB_SLIP_INCHES,     HUNDREDTH, "590" },
	{ "ft-in", "5'-9 1/2\"", RB_SLIP_INCHES,     HUNDREDTH, "" },
	{ "ft-in", "5'-0\"",     RB_SLIP_INCHES,     HUNDREDTH, "" },
	/* out by a half, a quarter, an eighth, within the inch; or any that was dropped */
	{ "ft-in", "4'-3 1/2\"", RB_SLIP_FRACTION,   RB_INCH / 8, "408 414 410 413 411" },
	{ "ft-in", "4'-3 1/8\"", RB_SLIP_FRACTION,   RB_INCH / 8, "413 411 410 408" },
	{ "ft-in", "4'-3\"",     RB_SLIP_FRACTION,   RB_INCH / 8, "409 410 411 412 413 414 415" },
	{ "ft-in", "4'-3 1/16\"", RB_SLIP_FRACTION, RB_INCH / 16, "825 821 819 818 816" },
	/* written in decimals of a foot it has no fraction to lose */
	{ "ft-in", "4.27 ft",    RB_SLIP_FRACTION,   RB_INCH / 8, "" },
	{ "ft-in", "4.27 ft",    RB_SLIP_EXCHANGED,  HUNDREDTH, "472 247" },

	{ "in", "51 1/2",  RB_SLIP_EXCHANGED,  RB_INCH / 2, "31" },
	{ "in", "51 1/2",  RB_SLIP_FRACTION,   RB_INCH / 8, "408 414 410 413 411" },
	{ "in", "51 1/2",  RB_SLIP_FOOT,       RB_INCH / 2, "127 79" },
	{ "in", "5 1/2",   RB_SLIP_LOOK_ALIKE, RB_INCH / 2, "7 13" }, /* 3 or 6, no 65 */
	{ "in", "51.25",   RB_SLIP_EXCHANGED,  RB_INCH / 100, "5152 5215 1525" },
	{ "in", "51.25",   RB_SLIP_FRACTION,   RB_INCH / 8, "414 412 408 411 409" },

	/* another unit than the book's */
	{ "ft", "1.613 m", RB_SLIP_EXCHANGED,  RB_MILLIMETRE, "1631 1163" },
	{ "ft", "2 m",     RB_SLIP_EXCHANGED,  RB_MILLIMETRE, "" },
	{ "ft", "4'-3 1/2\"", RB_SLIP_EXCHANGED, RB_INCH / 2, "81" },
};

/* How fine a fraction may have been dropped: as the finest in the book, an eighth at
 * least. */
static const struct {
	const char *foresight;
	int offered;
} fractions[] = {
	{ "5'-0\"", 7 },      { "5'-0 1/2\"", 7 },   { "5'-0 1/8\"", 7 },
	{ "5'-0 1/16\"", 15 }, { "5'-0 1/32\"", 31 }, { "5'-0 1/64\"", 63 },
};
/* clang-format on */

struct list {
	enum rb_slip slip;
	int64_t step;
	char text[600];
	int count;
};

static void list(void *context, const struct rb_written *written, enum rb_slip slip,
		 rb_length maybe)
{
	struct list *l = context;
	size_t used = strlen(l->text);

	(void)written;
	if (slip != l->slip)
		return;
	l->count++;
	assert_int_equal(maybe.nm % l->step, 0);
	snprintf(l->text + used, sizeof l->text - used, "%s%" PRId64, used ? " " : "",
		 maybe.nm / l->step);
}

static void list_slips(struct list *l, const char *unit, const char *backsight,
		       const char *foresight)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	struct rb_written written = { .column = RB_BACKSIGHT, .effect = 1 };
	const struct rb_book *book;
	char text[300], back[40], fore[40];
	int length = snprintf(text, sizeof text,
			      "unit,%s\nrod,13 ft\npoint,known elevation,bs,fs\n"
			      "BM,100 ft,%s,\nE,,,%s\n",
			      unit, quoted(back, backsight), quoted(fore, foresight));

	rb_findings_init(&findings, arena, "book.csv");
	book = rb_book_read(arena, &findings, text, (size_t)length);
	assert_non_null(book);
	written.value = rb_book_value(book, RB_BACKSIGHT, 0);
	rb_written_read(&written, book);
	rb_slips_each(&written, list, l);
	rb_arena_free(arena);
}

static void each_kind_offers_its_own(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		struct list l = { .slip = cases[i].slip, .step = cases[i].step };

		list_slips(&l, cases[i].unit, cases[i].cell, "5 ft");
		if (strcmp(l.text, cases[i].maybe) != 0) {
			print_error("%s %s, %s: %s\n", cases[i].cell, cases[i].unit,
				    rb_slip_name(cases[i].slip, RB_FEET), l.text);
			wrong++;
		}
	}
	assert_int_equal(wrong, 0);
}

static void as_fine_as_the_book(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(fractions); i++) {
		struct list l = { .slip = RB_SLIP_FRACTION, .step = RB_SIXTYFOURTH };

		list_slips(&l, "ft-in", "4'-3\"", fractions[i].foresight);
		assert_int_equal(l.count, fractions[i].offered);
	}
}

/* Elevations may be of any height, but no figure stands in front of those written. */
static void an_elevation_is_no_reading(void **state)
{
	static const char text[] = "point,known elevation,bs\nBM,4.27,5.00\n";
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	struct rb_written written = { .column = RB_KNOWN_ELEVATION,
				      .value = { 427 * HUNDREDTH },
				      .effect = 1 };
	struct list alike = { .slip = RB_SLIP_LOOK_ALIKE, .step = HUNDREDTH };
	struct list exchanged = { .slip = RB_SLIP_EXCHANGED, .step = HUNDREDTH };
	struct list sign = { .slip = RB_SLIP_SIGN, .step = HUNDREDTH };
	const struct rb_book *book;

	(void)state;
	rb_findings_init(&findings, arena, "book.csv");
	book = rb_book_read(arena, &findings, text, sizeof text - 1);
	assert_non_null(book);
	rb_written_read(&written, book);
	rb_slips_each(&written, list, &alike);
	rb_slips_each(&written, list, &exchanged);
	rb_slips_each(&written, list, &sign);
	assert_string_equal(alike.text, "421 422 477 927");
	assert_string_equal(exchanged.text, "472 247 4027");
	assert_string_equal(sign.text, "");
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_kind_offers_its_own),
		cmocka_unit_test(as_fine_as_the_book),
		cmocka_unit_test(an_elevation_is_no_reading),
	};

	return cmocka_run_group_tests_name("slips", tests, NULL, NULL);
}
