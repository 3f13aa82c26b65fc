/* SPDX-License-Identifier: MIT */
/*
 * test_hand_places.c - to which place a hand-reduced value is judged: the most decimals
 * of its column, in inches the finest fraction in it or in the readings
 * (docs/formats.md).
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "level/hand_walk.h"
#include "quoted.h"

#define COUNT(table)   (sizeof(table) / sizeof *(table))
#define FT(hundredths) (RB_FOOT / 100 * (hundredths))
#define IN(tenths)     (RB_INCH / 10 * (tenths))
#define EL             RB_ELEVATION
#define BD             RB_BACKSIGHT_DISTANCE

/* clang-format off */
static const struct {
	const char *what;
	const char *unit, *backsight, *distance; /* of the one sight */
	const char *elevations[3];               /* as they stand in their column */
	enum rb_column column;
	int64_t value, step;
} cases[] = {
	{ "the most decimals", "ft", "4.27", "", { "98.2", "98.24", "98" }, EL,
	  FT(9820), RB_FOOT / 100 },
	{ "nothing has the same place", "ft", "4.27", "", { "0.00", "98.24" }, EL,
	  0, RB_FOOT / 100 },
	{ "whole feet", "ft", "4.27", "", { "98", "97" }, EL, FT(9800), RB_FOOT },
	{ "millimetres", "m", "1.613", "", { "98.2", "98.241" }, EL,
	  98241 * RB_MILLIMETRE, RB_MILLIMETRE },

	{ "whole inches", "ft-in", "4'-3\"", "", { "98'-2\"", "97'-11\"" }, EL,
	  IN(11780), RB_INCH },
	{ "the finest in the column", "ft-in", "4'-3\"", "",
	  { "98'-2\"", "97'-11 3/8\"", "98'-1 1/2\"" }, EL, IN(11780), RB_INCH / 8 },
	{ "finer in the readings", "ft-in", "4'-3 3/16\"", "", { "98'-2\"", "98'-1 1/2\"" }, EL,
	  IN(11780), RB_INCH / 16 },
	{ "coarser in the readings", "ft-in", "4'-3 1/2\"", "", { "98'-2 5/32\"" }, EL,
	  IN(11780), RB_INCH / 32 },
	{ "a sixty-fourth", "ft-in", "4'-3\"", "", { "98'-2 1/64\"", "98'-2\"" }, EL,
	  IN(11780), RB_INCH / 64 },
	{ "a sixty-fourth in the readings", "ft-in", "4'-3 1/64\"", "", { "98'-2\"" }, EL,
	  IN(11780), RB_INCH / 64 },
	{ "in a book of feet", "ft", "4.25", "", { "98'-2\"", "97'-11 1/2\"" }, EL,
	  IN(11780), RB_INCH / 2 },
	{ "and the readings of one", "ft", "4'-3 1/4\"", "", { "98'-2\"" }, EL,
	  IN(11780), RB_INCH / 4 },

	{ "decimals of an inch that are eighths", "ft-in", "4'-3\"", "",
	  { "98' 3.625 in", "98' 2 in" }, EL, IN(11780), RB_INCH / 8 },
	{ "tenths of an inch", "ft-in", "4'-3\"", "", { "98' 3.4 in", "98' 2 in" }, EL,
	  IN(11780), RB_INCH / 10 },
	{ "tenths, and readings in sixteenths", "ft-in", "4'-3 1/16\"", "",
	  { "98' 3.4 in", "98' 2 in" }, EL, IN(11780), RB_INCH / 10 },
	{ "four decimals of an inch", "ft-in", "4'-3\"", "", { "98' 3.3333 in" }, EL,
	  11793333 * (RB_INCH / 10000), RB_INCH / 10000 },
	{ "more came out of a formula: a mark of the rod", "ft-in", "4'-3\"", "",
	  { "98' 3.33333 in" }, EL, 117933333 * (RB_INCH / 100000), RB_INCH / 8 },
	{ "tenths of an inch in a book of feet", "ft", "4.25", "", { "98' 3.5 in" }, EL,
	  IN(11795), RB_INCH / 10 },

	{ "feet and inches among feet", "ft-in", "4'-3\"", "", { "98.24 ft", "97'-11 1/2\"" }, EL,
	  IN(11755), RB_INCH / 2 },
	{ "feet among feet and inches", "ft-in", "4'-3\"", "", { "98.24 ft", "97'-11 1/2\"" }, EL,
	  FT(9824), RB_FOOT / 100 },
	{ "tenths of an inch among feet", "ft-in", "4'-3\"", "", { "98.24 ft", "98' 3.4 in" }, EL,
	  IN(11794), RB_INCH / 10 },
	{ "metres among eighths", "ft-in", "4'-3\"", "", { "30.001 m", "97'-11 1/8\"" }, EL,
	  30001 * RB_MILLIMETRE, RB_INCH / 8 },

	{ "bare inches", "in", "51.5", "", { "1178", "1179.25" }, EL, IN(11780), RB_INCH / 100 },
	{ "inches with a fraction", "in", "51.5", "", { "1178 1/2", "1179.25" }, EL,
	  IN(11785), RB_INCH / 100 },

	{ "sight lengths", "ft", "4.27", "105.5", { "98.24" }, BD, FT(10550), RB_FOOT / 10 },
	{ "sight lengths of another unit do not tell", "mm", "1613", "30.5 ft", { "98240" }, BD,
	  FT(3050), RB_METRE / 100 },
	{ "nor do those in inches", "ft-in", "4'-3\"", "105'-6\"", { "98'-2\"" }, BD,
	  FT(10550), RB_FOOT / 100 },
	{ "elevations of another unit: a mark of the rod", "ft-in", "4'-3\"", "", { "30.1 m" },
	  EL, 30100 * RB_MILLIMETRE, RB_INCH / 8 },
};
/* clang-format on */

/* Fresh memory is full of sixty-fourths of an inch; nothing may be taken from there. */
static void *resize_to_sixtyfourths(void *old, size_t size)
{
	const int64_t part = RB_SIXTYFOURTH;
	char *block = old ? NULL : malloc(size);

	for (size_t at = 0; block && at + sizeof part <= size; at += sizeof part)
		memcpy(block + at, &part, sizeof part);
	return old ? realloc(old, size) : block;
}

static const struct rb_book *book_of(struct rb_arena *arena, struct rb_findings *findings,
				     size_t i)
{
	char text[600], cell[40], distance[40];
	size_t used = (size_t)snprintf(
		text, sizeof text,
		"unit,%s\npoint,known elevation,bs,bs distance,fs,elevation\n"
		"BM,100 ft,%s,%s,,\n",
		cases[i].unit, quoted(cell, cases[i].backsight),
		quoted(distance, cases[i].distance));

	for (size_t k = 0; k < COUNT(cases[i].elevations) && cases[i].elevations[k]; k++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "P-%zu,,,,5 ft,%s\n", k,
					 quoted(cell, cases[i].elevations[k]));
	return rb_book_read(arena, findings, text, used);
}

static int64_t step_in(const struct rb_book *book, size_t i)
{
	struct rb_hand_walk walk = { .book = book };

	rb_hand_find_steps(&walk);
	return rb_hand_step_of(&walk, cases[i].column, rb_length_of(cases[i].value)).nm;
}

static void values_are_judged_to_their_place(void **state)
{
	static const struct rb_allocator allocator = { resize_to_sixtyfourths, free };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		struct rb_arena *arena = rb_arena_new(&allocator);
		struct rb_findings findings;
		const struct rb_book *book;

		rb_findings_init(&findings, arena, "hand.csv");
		book = book_of(arena, &findings, i);
		if (!book || step_in(book, i) != cases[i].step) {
			print_error("%s: %lld nm, not %lld nm\n", cases[i].what,
				    book ? (long long)step_in(book, i) : -1LL,
				    (long long)cases[i].step);
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(values_are_judged_to_their_place),
	};

	return cmocka_run_group_tests_name("hand_places", tests, NULL, NULL);
}
