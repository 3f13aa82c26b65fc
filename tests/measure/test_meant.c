/* SPDX-License-Identifier: MIT */
/* test_meant.c - candidates for what a refused reading was meant to be, in their order.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "measure/meant.h"
#include "written.h"

#define ROD       RB_OF_ROD
#define ELEVATION RB_OF_ELEVATION

/* clang-format off */
static const struct pair_case {
	int64_t first, second;
	enum rb_unit unit;
	int64_t maybe[RB_MAYBE]; /* 0: no more */
} pairs[] = {
	{ 5,  3,  FI, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ 5,  3,  FT, { FEET_64(5, 192), FEET_64(3, 320), HUNDREDTHS(530) } },
	{ 5,  12, FT, { FEET_64(12, 320), HUNDREDTHS(512) } }, /* 12 inches are none */
	{ 5,  11, FT, { FEET_64(5, 704), FEET_64(11, 320), HUNDREDTHS(511) } },
	{ 24, 31, FT, { HUNDREDTHS(2431) } },
	{ 5,  9,  M,  { MILLI(5900), MILLI(9500) } },
	{ 5,  10, M,  { MILLI(5100), MILLI(10500) } },
	{ 10, 5,  M,  { MILLI(10500), MILLI(5100) } },
	{ 99, 100, M, { MILLI(100990) } },               /* .100 is no day of a month */
	{ 9999, 5, M, { MILLI(9999500) } },
	{ 10000, 5, M, { 0 } },
	{ 9999, 5, FT, { FEET_64(9999, 320), 99995 * (RB_FOOT / 10) } },
	{ 10000, 5, FT, { FEET_64(10000, 320) } },
	{ 5,  3,  MM, { 0 } },
	{ 3,  8,  IN, { 24 * RB_SIXTYFOURTH, FEET_64(3, 512), FEET_64(8, 192) } },
	{ 8,  3,  IN, { 24 * RB_SIXTYFOURTH, FEET_64(8, 192), FEET_64(3, 512) } },
	{ 3,  8,  FI, { FEET_64(3, 512), FEET_64(8, 192), 24 * RB_SIXTYFOURTH } },
	{ 8,  3,  FI, { FEET_64(8, 192), FEET_64(3, 512), 24 * RB_SIXTYFOURTH } },
	{ 13, 16, FI, { 52 * RB_SIXTYFOURTH } },
	{ 16, 13, FI, { 52 * RB_SIXTYFOURTH } },
	{ 16, 16, FI, { 0 } },
	{ 32808, 1, FI, { FEET_64(32808, 64), } },
	{ 32809, 1, FI, { 0 } },                         /* beyond all lengths */
};

static const struct spaced_case {
	const char *before, *behind;
	enum rb_unit unit;
	enum rb_reading_kind kind;
	int64_t maybe[RB_MAYBE];
} spaced[] = {
	{ "5",    "29",    FT, ROD,       { HUNDREDTHS(529) } },
	{ "5",    "3",     FT, ROD,       { HUNDREDTHS(530), FEET_64(5, 192) } },
	{ "5",    "3",     FI, ROD,       { FEET_64(5, 192), HUNDREDTHS(530) } },
	{ "1",    "624",   M,  ROD,       { MILLI(1624) } },
	{ "1",    "6",     M,  ROD,       { MILLI(1600) } },
	{ "1",    "234",   M,  ELEVATION, { MILLI(1234000), MILLI(1234) } },
	{ "1",    "234.5", M,  ELEVATION, { MILLI(1234500) } },
	{ "1",    "23.5",  M,  ELEVATION, { 0 } },
	{ "1",    "234.5", M,  ROD,       { 0 } },
	{ "1",    "2345",  M,  ELEVATION, { 1234500000 } },
	{ "0000000000000001", "62", M, ROD, { MILLI(1620) } },    /* 18 figures */
	{ "0000000000000001", "624", M, ROD, { 0 } },
	{ "00000000000001", "234.5", M, ELEVATION, { MILLI(1234500) } },
	{ "000000000000001", "234.5", M, ELEVATION, { 0 } },
};

static const struct bare_case {
	const char *text;
	enum rb_reading_kind kind;
	bool negative;
	int64_t maybe[RB_MAYBE];
} bares[] = {
	{ "8",     ROD,       false, { 8 * RB_FOOT, 8 * RB_INCH } },
	{ "8",     ROD,       true,  { 0 } },
	{ "8.",    ROD,       false, { 8 * RB_FOOT, 8 * RB_INCH } },
	{ "5.2",   ROD,       false, { FEET_64(5, 128), HUNDREDTHS(520) } },
	{ "5.1",   ROD,       false, { FEET_64(5, 64), HUNDREDTHS(510), FEET_64(5, 640) } },
	{ "5.1",   ROD,       true,  { FEET_64(5, 64), HUNDREDTHS(510), FEET_64(5, 640) } },
	{ "5.01",  ROD,       false, { FEET_64(5, 64), HUNDREDTHS(501) } },
	{ "5.11",  ROD,       false, { FEET_64(5, 704), HUNDREDTHS(511) } },
	{ "5.12",  ROD,       false, { HUNDREDTHS(512) } },
	{ "5.011", ROD,       false, { 5011 * (RB_FOOT / 1000) } },
	{ "98.1",  ELEVATION, false, { HUNDREDTHS(9810) } },
};

static const struct point_case {
	const char *text;
	enum rb_unit unit;
	int64_t maybe[RB_MAYBE];
} points[] = { /* of a rod of 25 ft */
	{ "1624",    M,  { MILLI(1624) } },
	{ "7620",    M,  { MILLI(7620) } },  /* 25 ft exactly */
	{ "7621",    M,  { MILLI(762) + 100000 } },
	{ "532",     FT, { HUNDREDTHS(532) } },
	{ "2500",    FT, { HUNDREDTHS(2500), HUNDREDTHS(250) } },
	{ "1624",    FT, { HUNDREDTHS(1624), 1624 * (RB_FOOT / 1000) } },
	{ "1624",    FI, { HUNDREDTHS(1624), 1624 * (RB_FOOT / 1000) } },
	{ "2501",    FT, { 2501 * (RB_FOOT / 1000) } },
	{ "3001",    IN, { 3001 * (RB_INCH / 100) } },
	{ "635",     IN, { WANTED } },
	{ "76200",   MM, { MILLI(7620) } },
	{ "76201",   MM, { 0 } },            /* no rod shows hundredths of a millimetre */
	{ "53.2",    FT, { HUNDREDTHS(532) } },
	{ "70000000", M, { MILLI(7000) } },
	{ "99999999999999", M, { 0 } },      /* more places than a rod shows */
	{ "12345",   M,  { 1234500000 } },   /* 12.345 is over the rod */
	{ "95",      FT, { HUNDREDTHS(950), HUNDREDTHS(95) } },
	{ "95",      FI, { HUNDREDTHS(950), HUNDREDTHS(95) } },
	{ "10",      FT, { HUNDREDTHS(100), HUNDREDTHS(10) } },
	{ "100",     FT, { HUNDREDTHS(100), HUNDREDTHS(1000) } },
	{ "532000",  FT, { HUNDREDTHS(532) } },
	{ "1234510", FT, { 0 } },            /* 12.3451: no rod shows four places of a foot */
};

static const struct unmarked_case {
	int64_t whole, above, below;
	enum rb_unit unit;
	int64_t maybe[RB_MAYBE];
} unmarked[] = {
	{ 5, 1, 2, FT, { 352 * RB_SIXTYFOURTH, 66 * RB_INCH, FEET_64(5, 32) } },
	{ 5, 1, 2, FI, { 352 * RB_SIXTYFOURTH, 66 * RB_INCH, FEET_64(5, 32) } },
	{ 5, 1, 2, M,  { 352 * RB_SIXTYFOURTH } },
	{ 0, 1, 2, FI, { 32 * RB_SIXTYFOURTH, 6 * RB_INCH } },
	{ 5, 3, 2, FT, { 0 } },
	{ 5, 1, 3, FT, { 0 } },
	{ 32808, 1, 2, FI, { 65617 * (RB_INCH / 2), FEET_64(32808, 32) } },
	{ 32809, 1, 2, FI, { 0 } },
};

static const struct rounded_case {
	const char *text;
	int64_t unit_nm, nm, before;
} rounded[] = {
	{ "5.2912345",  RB_FOOT,            52912 * (RB_FOOT / 10000), 0 },
	{ "1.61328125001", RB_METRE,        1613300000, 0 },
	{ "63.291667",  RB_INCH,            63292 * (RB_INCH / 1000), 0 },
	{ "161.3281250", 10 * RB_MILLIMETRE, MILLI(1613), 0 },
	{ "1613.281255", RB_MILLIMETRE,     16133 * RB_MILLIMETRE / 10, 0 },
	{ "3.3333333",  RB_INCH,            FEET_THOUSANDTHS(5, 3333), 5 * RB_FOOT },
};
/* clang-format on */

static struct rb_number number_of(const char *text)
{
	const struct rb_reading_rules rules = { FT, RB_OF_ROD, false, rb_length_none() };
	struct rb_number n;

	rb_number_scan(&text, &rules, &n);
	return n;
}

static int wrong_maybes(const char *what, size_t row, const struct rb_reading *got,
			const int64_t maybe[RB_MAYBE])
{
	int count = 0;
	bool right;

	while (count < RB_MAYBE && maybe[count] != 0)
		count++;
	right = got->maybes == count;
	for (int i = 0; i < count && right; i++)
		right = got->maybe[i].nm == maybe[i];
	if (right)
		return 0;
	print_error("%s %zu: %d candidates: %lld %lld %lld\n", what, row, got->maybes,
		    (long long)got->maybe[0].nm, (long long)got->maybe[1].nm,
		    (long long)got->maybe[2].nm);
	return 1;
}

static void pairs_of_a_date(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
		const struct rb_reading_rules rules = { pairs[i].unit, RB_OF_ROD, false,
							rb_length_none() };
		struct rb_reading r = { .maybes = 0 };

		rb_meant_pair(&r, &rules, pairs[i].first, pairs[i].second);
		wrong += wrong_maybes("pair", i, &r, pairs[i].maybe);
	}
	assert_int_equal(wrong, 0);
}

static void figures_apart(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof spaced / sizeof *spaced; i++) {
		const struct rb_reading_rules rules = { spaced[i].unit, spaced[i].kind,
							false, rb_length_none() };
		struct rb_number before = number_of(spaced[i].before);
		struct rb_number behind = number_of(spaced[i].behind);
		struct rb_reading r = { .maybes = 0 };

		rb_meant_spaced(&r, &rules, &before, &behind);
		wrong += wrong_maybes("spaced", i, &r, spaced[i].maybe);
	}
	assert_int_equal(wrong, 0);
}

static void bare_numbers(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof bares / sizeof *bares; i++) {
		const struct rb_reading_rules rules = { FI, bares[i].kind, false,
							rb_length_none() };
		struct rb_number n = number_of(bares[i].text);
		struct rb_reading r = { .maybes = 0 };

		rb_meant_bare(&r, &rules, &n, bares[i].negative);
		wrong += wrong_maybes("bare", i, &r, bares[i].maybe);
	}
	assert_int_equal(wrong, 0);
}

static void lost_points(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof points / sizeof *points; i++) {
		const struct rb_reading_rules rules = { points[i].unit, RB_OF_ROD, false,
							rb_length_of(25 * RB_FOOT) };
		struct rb_number n = number_of(points[i].text);
		struct rb_reading r = { .maybes = 0 };

		rb_meant_point(&r, &rules, points[i].unit, &n);
		wrong += wrong_maybes("point", i, &r, points[i].maybe);
	}
	assert_int_equal(wrong, 0);
}

static void fractions_without_a_mark(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof unmarked / sizeof *unmarked; i++) {
		const struct unmarked_case *c = &unmarked[i];
		const struct rb_reading_rules rules = { c->unit, RB_OF_ROD, false,
							rb_length_none() };
		struct rb_reading r = { .maybes = 0 };

		rb_meant_unmarked(&r, &rules, c->whole,
				  (struct rb_fraction){ c->above, c->below });
		wrong += wrong_maybes("unmarked", i, &r, c->maybe);
	}
	assert_int_equal(wrong, 0);
}

static void places_of_a_rod(void **state)
{
	const struct rb_reading_rules rules = { FT, RB_OF_ROD, false, rb_length_none() };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof rounded / sizeof *rounded; i++) {
		struct rb_number n = number_of(rounded[i].text);
		struct rb_reading r = { .maybes = 0 };
		const int64_t maybe[RB_MAYBE] = { rounded[i].nm };

		rb_meant_rounded(&r, &rules, rounded[i].unit_nm, &n, rounded[i].before);
		wrong += wrong_maybes("rounded", i, &r, maybe);
	}
	assert_int_equal(wrong, 0);
}

/* Not twice, not over the limit, not beyond all lengths, and no more than there is room.
 */
static void candidates_are_kept_few(void **state)
{
	struct rb_reading_rules rules = { FT, RB_OF_ROD, false, { 1000 } };
	struct rb_reading r = { .maybes = 0 };

	(void)state;
	rb_meant(&r, &rules, 1001);
	rb_meant(&r, &rules, -1001);
	assert_int_equal(r.maybes, 0);
	rb_meant(&r, &rules, 1000);
	rb_meant(&r, &rules, 1000);
	rb_meant(&r, &rules, -1000);
	rb_meant(&r, &rules, -1000);
	assert_int_equal(r.maybes, 2);
	rules.limit = rb_length_none();
	rb_meant(&r, &rules, RB_LENGTH_MAX + 1);
	rb_meant(&r, &rules, -RB_LENGTH_MAX - 1);
	assert_int_equal(r.maybes, 2);
	rb_meant(&r, &rules, RB_LENGTH_MAX);
	rb_meant(&r, &rules, 5);
	assert_int_equal(r.maybes, RB_MAYBE);
	assert_int_equal(r.maybe[0].nm, 1000);
	assert_int_equal(r.maybe[1].nm, -1000);
	assert_int_equal(r.maybe[2].nm, RB_LENGTH_MAX);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(pairs_of_a_date),
		cmocka_unit_test(figures_apart),
		cmocka_unit_test(bare_numbers),
		cmocka_unit_test(lost_points),
		cmocka_unit_test(fractions_without_a_mark),
		cmocka_unit_test(places_of_a_rod),
		cmocka_unit_test(candidates_are_kept_few),
	};

	return cmocka_run_group_tests_name("meant", tests, NULL, NULL);
}
