/* SPDX-License-Identifier: MIT */
/* The reduced book as CSV: it reads back as a book, and reduces to the same elevations.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "report/reduced_csv.h"

static struct capture capture;

static void write_csv(struct reduced_book *b)
{
	capture_init(&capture);
	if (b->reduction.adjusted)
		rb_reduced_write_csv(&capture.sink, b->arena, &b->reduction);
	captured(&capture);
}

#define HEADER                                                                            \
	"point,chainage,backsight,height_of_instrument,intermediate,foresight,elevation," \
	"correction,adjusted,remarks,known_elevation,unit\n"

static void writes_rows(void **state)
{
	struct reduced_book b;

	(void)state;
	reduce_text(&b, "larch.csv", larch, false);
	write_csv(&b);
	assert_string_equal(capture.text, HEADER
			    "BM-1,,4.27,104.27,,,100,0,100,,100,ft\n"
			    "TP-1,,5.11,103.35,,6.03,98.24,0.0033,98.2433,,,ft\n"
			    "MH-1,,,,6.48,,96.87,0.0067,96.8767,\"rim, south side\",,ft\n"
			    "TP-2,,4.9,104.73,,3.52,99.83,0.0067,99.8367,,,ft\n"
			    "BM-1,,,,,4.74,99.99,0.01,100,,100,ft\n");
	rb_arena_free(b.arena);
}

/* `+10` behind 0+50 is another point than before it, and stays so. */
static void writes_a_station_with_its_hundreds(void **state)
{
	struct reduced_book b;

	(void)state;
	reduce_text(&b, "s.csv",
		    "point,chainage,bm,bs,is\nA,,100,4.00,\n+10,,,,5.00\n"
		    "0+50,,,,6.00\n+10,,,,7.00\nMH 4,,,,8.00\nmh 4,,,,8.00\n",
		    false);
	write_csv(&b);
	assert_string_equal(capture.text, HEADER "A,,4,104,,,100,,,,100,ft\n"
						 "'+10,,,,5,,99,,,,,ft\n"
						 "0+50,50,,,6,,98,,,,,ft\n"
						 "0+10,10,,,7,,97,,,,,ft\n"
						 "MH 4,,,,8,,96,,,,,ft\n"
						 "mh 4,,,,8,,96,,,,,ft\n");
	rb_arena_free(b.arena);
}

/* 45780 among millimetres would be taken for a date. */
static void marks_what_looks_like_a_date(void **state)
{
	struct reduced_book b;

	(void)state;
	reduce_text(&b, "d.csv",
		    "unit,mm\nrod,60 m\npoint,bs,fs,bm\nA,45780 mm,,45780\nB,,39999,\n",
		    false);
	write_csv(&b);
	assert_string_equal(capture.text,
			    HEADER "A,,45780 mm,91560,,,45780,,,,45780 mm,mm\n"
				   "B,,,,,39999,51561,,,,,mm\n");
	rb_arena_free(b.arena);
}

static void writes_feet_inches_when_asked(void **state)
{
	struct reduced_book b;

	(void)state;
	reduce_text(&b, "t.csv",
		    "unit,ft-in\npoint,bs,fs,bm\nA,4'-3 1/2\",,100'-0\"\nA,,1.3 m,\n",
		    false);
	b.reduction.unit_asked = true;
	write_csv(&b);
	assert_string_equal(capture.text, HEADER
			    "A,,\"4'-3 1/2\"\"\",\"104'-3 1/2\"\"\",,,\"100'-0\"\"\",,,,"
			    "\"100'-0\"\"\",ft-in\n"
			    "A,,,,,1.3 m,\"100'-0 5/16\"\"\",,,,\"100'-0\"\"\",ft-in\n");
	rb_arena_free(b.arena);
}

/* More places would be finer than a nanometre. */
static void writes_no_more_decimals_than_read_back(void **state)
{
	struct reduced_book b;

	(void)state;
	reduce_text(&b, "t.csv", "point,bs,fs,bm\nA,1.3 m,,100\nA,,1.3 m,\n", false);
	b.reduction.decimals = 9;
	write_csv(&b);
	assert_string_equal(capture.text, HEADER "A,,1.3 m,104.26509,,,100,,,,100,ft\n"
						 "A,,,,,1.3 m,100,,,,100,ft\n");
	rb_arena_free(b.arena);
}

/* Books of every unit, with readings that are exact in none of the others. */
/* clang-format off */
static const char *const books[] = {
	larch,
	"point,bs,is,fs,bm,ch,remarks\n=BM,4.27,,,100.00,,\n+10,,6.48,,,0+50,-x\n"
	"'q,,,5'-3 1/2\",,15.2 m,@y\n'q,3.335,,,,,'=z\nEnd,,,1.613 m,,,\n",
	"unit,ft-in\npoint,bs,is,fs,bm\nA,4'-9 3/64\",,,100'-0 1/64\"\nB,,5'-11 63/64\",,\n"
	"C,1.613 m,,6.03 ft,\nA,,,(0'-2\"),\n",
	"unit,m\npoint,bs,is,fs,bm,ch,dip\nA,1.613,,,156.170,10,\nB,,1.2345,,,20 ft,0.5\n"
	"C,1.402,,5'-3 1/2\",,,\nA,,,inv 1.25,,,\n",
	"unit,mm\npoint,bs,is,fs,bm,fs dist\nA,1613,,,10 m,\nB,,1234.5,,,12\nC,1402,,1250,,\n"
	"A,,,1765,,\n",
	"unit,in\npoint,bs,is,fs,bm\nA,63 1/2\",,,1200\nB,,63.25,,\nC,12 3/16\",,100,\nA,,,1.5 m,\n",
	"point,bs,is,fs,bm\nBM-2,,,,101.5\nBM-1,4.27,,,100.00\nS,,,3,\nT,,,2.99,\nT,2,,,\n"
	"U,,1,,\nBM-2,,,3,\nV,,,2,\nBM-1,5,,,\nS,,,4,\n,,2,,\n",
};
/* clang-format on */

static int differences(const struct reduced_book *a, const struct reduced_book *b)
{
	const struct rb_reduced *x, *y;
	int wrong = 0;

	if (!a->reduction.adjusted || !b->reduction.adjusted)
		return 1;
	x = rb_reduction_reduced(&a->reduction);
	y = rb_reduction_reduced(&b->reduction);
	if (x->shots != y->shots || x->setups != y->setups)
		return 1;
	for (uint32_t i = 0; i < x->shots; i++) {
		const char *name = rb_book_typed(x->book, x->shot[i].row);
		const char *other = rb_book_typed(y->book, y->shot[i].row);

		wrong += x->shot[i].elevation.nm != y->shot[i].elevation.nm ||
			 x->shot[i].kind != y->shot[i].kind || strcmp(name, other) != 0;
	}
	for (uint32_t i = 0; i < x->setups; i++)
		wrong += x->setup[i].height_of_instrument.nm !=
			 y->setup[i].height_of_instrument.nm;
	return wrong;
}

static int round_trip(const char *text, enum rb_unit unit)
{
	static char csv[CAPTURE];
	struct reduced_book before, after;
	int wrong;

	reduce_text(&before, "t.csv", text, false);
	if (before.reduction.adjusted) {
		before.reduction.style.unit = unit;
		before.reduction.unit_asked = true;
	}
	write_csv(&before);
	memcpy(csv, capture.text, capture.used + 1);
	reduce_text(&after, "t.csv", csv, false);
	wrong = differences(&before, &after);
	rb_arena_free(after.arena);
	rb_arena_free(before.arena);
	return wrong;
}

static void reads_back_as_the_same_book(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof books / sizeof *books; i++)
		for (int unit = RB_FEET; unit <= RB_MILLIMETRES; unit++) {
			if (!round_trip(books[i], (enum rb_unit)unit))
				continue;
			print_error("book %zu in %s: not the same:\n%s\n", i,
				    rb_unit_name((enum rb_unit)unit), capture.text);
			wrong++;
		}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writes_rows),
		cmocka_unit_test(writes_a_station_with_its_hundreds),
		cmocka_unit_test(marks_what_looks_like_a_date),
		cmocka_unit_test(writes_feet_inches_when_asked),
		cmocka_unit_test(writes_no_more_decimals_than_read_back),
		cmocka_unit_test(reads_back_as_the_same_book),
	};

	return cmocka_run_group_tests_name("reduced_csv", tests, NULL, NULL);
}
