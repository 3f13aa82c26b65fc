/* SPDX-License-Identifier: MIT */
/* The single slips that would explain a misclosure: each kind planted, and found. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "level/suspects.h"

#define LENGTH_OF(array) (sizeof(array) / sizeof *(array))
#define BOOK_ROWS        8
#define NOT_LISTED       (-1)
#define FT(hundredths)   (INT64_C(3048000) * (hundredths))
#define IN(eighths)      (RB_INCH / 8 * (eighths))
#define MM(millimetres)  (RB_MILLIMETRE * (millimetres))

/* clang-format off */
/* Books of our own that close, or nearly; a case changes one row, or several. */
enum { FEET, UPHILL, INCHES, METRES };

static const char *const books[][BOOK_ROWS] = {
	[FEET] = { /* a loop, 0.01 ft low */
		"tolerance,0.02 ft\npoint,known elevation,bs,is,fs\n",
		"BM-1,100.00,4.27,,\n",
		"TP-1,,5.11,,6.03\n",
		"MH-1,,,7.48,\n",
		"TP-2,,5.50,,3.52\n",
		"BM-1,,,,5.34\n" },
	[UPHILL] = {
		"tolerance,0.02 ft\npoint,known elevation,bs,is,fs\n",
		"BM-1,100.00,9.11,,\n",
		"TP-1,,8.40,,1.02\n",
		"MH-1,,,9.48,\n",
		"TP-2,,10.25,,2.11\n",
		"BM-2,121.63,,,3.00\n" },
	[INCHES] = {
		"unit,ft-in\ntolerance,1/4 in\npoint,known elevation,bs,is,fs\n",
		"BM-1,100',4'-3 1/2\",,\n",
		"TP-1,,5'-1 1/4\",,6'-0 1/8\"\n",
		"BM-1,,,,3'-4 5/8\"\n" },
	[METRES] = {
		"unit,m\ntolerance,5 mm\npoint,known elevation,bs,is,fs\n",
		"BM-1,100.000,1.624,,\n",
		"TP-1,,1.977,,0.318\n",
		"BM-2,102.542,,,0.741\n" },
};

static const struct planted {
	int book, line; /* which of the book's lines is replaced */
	const char *text;
	enum rb_slip slip;
	enum rb_column column;
	int64_t maybe;
	int rank;       /* it stands among so many; 0: anywhere */
} planted[] = {
	{ FEET,   1, "BM-1,100.00,2.47,,\n",  RB_SLIP_EXCHANGED,  RB_BACKSIGHT, FT(427), 5 },
	{ FEET,   4, "TP-2,,5.50,,3.25\n",    RB_SLIP_EXCHANGED,  RB_FORESIGHT, FT(352), 5 },
	{ FEET,   2, "TP-1,,5.11,,7.03\n",    RB_SLIP_FOOT,       RB_FORESIGHT, FT(603), 5 },
	{ FEET,   2, "TP-1,,5.21,,6.03\n",    RB_SLIP_TENTH,      RB_BACKSIGHT, FT(511), 0 },
	{ FEET,   4, "TP-2,,5.6,,3.52\n",     RB_SLIP_INCHES,     RB_BACKSIGHT, FT(550), 5 },
	{ FEET,   4, "TP-2,,5.1,,3.85\n",     RB_SLIP_INCHES,     RB_BACKSIGHT, IN(560), 0 },
	{ FEET,   4, "TP-2,,5.11,,3.94\n",    RB_SLIP_INCHES,     RB_BACKSIGHT, IN(568), 0 },
	{ FEET,   4, "TP-2,,5.62,,3.52\n",    RB_SLIP_INCHES,     RB_BACKSIGHT, IN(528),
	  NOT_LISTED }, /* hundredths are no inches */
	{ INCHES, 2, "TP-1,,5'-6\",,6'-6 1/8\"\n",
	  RB_SLIP_INCHES, RB_BACKSIGHT, FT(560), 0 },
	{ INCHES, 2, "TP-1,,5'-10\",,6'-0 1/8\"\n",
	  RB_SLIP_INCHES, RB_BACKSIGHT, FT(510), 0 },
	{ FEET,   4, "TP-2,,-5.50,,3.52\n",   RB_SLIP_SIGN,       RB_BACKSIGHT, FT(550), 5 },
	{ FEET,   2, "TP-1,,6.03,,5.11\n",    RB_SLIP_COLUMNS,    RB_BACKSIGHT, FT(511), 5 },
	{ FEET,   4, "TP-2,,5.50,,5.52\n",    RB_SLIP_LOOK_ALIKE, RB_FORESIGHT, FT(352), 5 },
	{ FEET,   4, "TP-2,,,3.25,\nTP-2,,5.50,,\n",
	  RB_SLIP_EXCHANGED, RB_INTERMEDIATE, FT(352), 5 },
	{ UPHILL, 5, "BM-2,126.13,,,3.00\n",  RB_SLIP_BENCHMARK,  RB_KNOWN_ELEVATION,
	  FT(12163), 5 },
	{ UPHILL, 1, "BM-1,101.00,9.11,,\n",  RB_SLIP_BENCHMARK,  RB_KNOWN_ELEVATION,
	  FT(10000), 0 },
	{ INCHES, 1, "BM-1,100',4'-3\",,\n",  RB_SLIP_FRACTION,   RB_BACKSIGHT, IN(412), 5 },
	{ INCHES, 2, "TP-1,,5'-1 3/4\",,6'-0 1/8\"\n",
	  RB_SLIP_FRACTION, RB_BACKSIGHT, IN(490), 5 },
	{ INCHES, 2, "TP-1,,5'-1 1/4\",,5'-0 1/8\"\n",
	  RB_SLIP_FOOT, RB_FORESIGHT, IN(577), 5 },
	{ INCHES, 3, "BM-1,,,,3'-5 5/8\"\n",  RB_SLIP_TENTH,      RB_FORESIGHT, IN(325), 5 },
	{ INCHES, 3, "BM-1,,,,3'-9 5/8\"\n",  RB_SLIP_LOOK_ALIKE, RB_FORESIGHT, IN(325), 5 },
	{ INCHES, 1, "BM-1,100',3'-4 1/2\",,\n",
	  RB_SLIP_EXCHANGED, RB_BACKSIGHT, IN(412), 5 },
	{ METRES, 1, "BM-1,100.000,1.642,,\n", RB_SLIP_EXCHANGED, RB_BACKSIGHT, MM(1624), 5 },
	{ METRES, 2, "TP-1,,2.977,,0.318\n",  RB_SLIP_FOOT,       RB_BACKSIGHT, MM(1977), 5 },
	{ METRES, 2, "TP-1,,1.977,,0.418\n",  RB_SLIP_FOOT,       RB_FORESIGHT, MM(318), 0 },
	{ METRES, 3, "BM-2,102.542,,,0.751\n", RB_SLIP_TENTH,     RB_FORESIGHT, MM(741), 5 },
	{ METRES, 3, "BM-2,102.542,,,0.147\n", RB_SLIP_EXCHANGED, RB_FORESIGHT,
	  MM(741), NOT_LISTED }, /* not neighbours */
};
/* clang-format on */

struct hunted {
	struct rb_arena *arena;
	struct rb_findings findings;
	const struct rb_sections *sections;
	const struct rb_suspects *suspects;
};

static void compose(char *text, size_t room, int book, int line, const char *instead)
{
	size_t used = 0;

	text[0] = '\0';
	for (int i = 0; i < BOOK_ROWS && books[book][i]; i++) {
		const char *row = instead && i == line ? instead : books[book][i];

		used += (size_t)snprintf(text + used, room - used, "%s", row);
	}
}

static void hunt(struct hunted *h, const char *text, const struct rb_allocator *allocator)
{
	const struct rb_book *book = NULL;
	const struct rb_reduced *reduced = NULL;
	struct rb_judging judging;

	*h = (struct hunted){ .arena = rb_arena_new(allocator) };
	if (!h->arena)
		return;
	rb_findings_init(&h->findings, h->arena, "test.csv");
	book = rb_book_read(h->arena, &h->findings, text, strlen(text));
	if (!book)
		return;
	reduced = rb_reduce(h->arena, &h->findings, book);
	if (!reduced)
		return;
	judging = rb_judging_of(book);
	h->sections = rb_sections(h->arena, &h->findings, reduced, &judging);
	if (h->sections)
		h->suspects = rb_suspects(h->arena, &h->findings, h->sections);
}

static void hunt_book(struct hunted *h, int book, int line, const char *instead)
{
	char text[1024];

	compose(text, sizeof text, book, line, instead);
	hunt(h, text, NULL);
	assert_non_null(h->suspects);
}

/* Its place in the list, from 1; 0 if it is not there. */
static int rank_of(const struct rb_suspects *suspects, enum rb_slip slip, uint32_t row,
		   enum rb_column column, int64_t maybe)
{
	for (uint32_t i = 0; i < suspects->count; i++) {
		const struct rb_suspect *s = &suspects->item[i];

		if (s->slip == slip && s->row == row && s->column == column &&
		    s->maybe.nm == maybe)
			return (int)i + 1;
	}
	return 0;
}

static bool stands_as_wanted(int rank, int wanted)
{
	if (wanted == NOT_LISTED)
		return rank == 0;
	return rank > 0 && (wanted == 0 || rank <= wanted);
}

static void planted_slips_are_found(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < LENGTH_OF(planted); i++) {
		const struct planted *p = &planted[i];
		struct hunted h;
		int rank;

		hunt_book(&h, p->book, p->line, p->text);
		rank = rank_of(h.suspects, p->slip, (uint32_t)p->line - 1, p->column,
			       p->maybe);
		if (!stands_as_wanted(rank, p->rank)) {
			print_error("row %zu, %s: rank %d of %u\n", i,
				    rb_slip_name(p->slip, RB_FEET), rank,
				    h.suspects->count);
			wrong++;
		}
		rb_arena_free(h.arena);
	}
	assert_int_equal(wrong, 0);
}

/* Nothing is listed that leaves the section beyond its tolerance, and what would remain
 * is what the book gives when the suspect is put right. */
static void each_suspect_closes_the_section(void **state)
{
	struct hunted h;
	const struct rb_section *s;

	(void)state;
	hunt_book(&h, FEET, 1, "BM-1,100.00,2.47,,\n");
	s = &h.sections->section[0];
	assert_int_equal(s->misclosure.nm, FT(-181));
	assert_true(h.suspects->count > 1);
	for (uint32_t i = 0; i < h.suspects->count; i++) {
		const struct rb_suspect *suspect = &h.suspects->item[i];
		int effect = suspect->column == RB_FORESIGHT ? -1 : 1;
		int twice = suspect->slip == RB_SLIP_COLUMNS ? 2 : 1;

		assert_true(rb_tolerance_holds(&h.sections->tolerance, suspect->left,
					       s->length, s->setups));
		assert_int_not_equal(suspect->row, 2); /* MH-1 carries nothing on */
		assert_int_equal(suspect->left.nm,
				 s->misclosure.nm + twice * effect *
							    (suspect->maybe.nm -
							     suspect->reading.nm));
	}
	rb_arena_free(h.arena);
}

static void a_section_that_closes_has_no_suspects(void **state)
{
	(void)state;
	for (int book = 0; book < (int)LENGTH_OF(books); book++) {
		struct hunted h;

		hunt_book(&h, book, 0, NULL);
		assert_int_equal(h.suspects->count, 0);
		rb_arena_free(h.arena);
	}
}

/* A loop closes on its own benchmark, whatever the elevation of that. */
static void a_loop_does_not_suspect_its_benchmark(void **state)
{
	struct hunted h;

	(void)state;
	hunt_book(&h, FEET, 2, "TP-1,,5.11,,7.03\n");
	for (uint32_t i = 0; i < h.suspects->count; i++)
		assert_int_not_equal(h.suspects->item[i].slip, RB_SLIP_BENCHMARK);
	rb_arena_free(h.arena);
}

/* 0.25 ft short on each of the three sights above 7 ft; none is booked as an elevation.
 */
static void a_rod_not_extended_is_found(void **state)
{
	static const char text[] = "tolerance,0.02 ft\npoint,known elevation,bs,is,fs\n"
				   "BM-1,100.00,9.36,,\n"
				   "TP-1,,8.65,,1.02\n"
				   "MH-1,,,9.48,\n"
				   "TP-2,,10.50,,2.11\n"
				   "BM-2,121.63,,,3.00\n";
	static const uint32_t rows[] = { 0, 1, 3 };
	const struct rb_suspect *found = NULL;
	struct hunted h;
	uint32_t rank = 0;

	(void)state;
	hunt(&h, text, NULL);
	assert_non_null(h.suspects);
	for (uint32_t i = 0; i < h.suspects->count && !found; i++)
		if (h.suspects->item[rank++].slip == RB_SLIP_ROD)
			found = &h.suspects->item[i];
	assert_non_null(found);
	assert_in_range(rank, 1, 5);
	assert_int_equal(found->left.nm, 0);
	assert_int_equal(found->row, RB_NO_ROW);
	assert_false(rb_length_given(found->maybe));
	assert_int_equal(found->row_count, LENGTH_OF(rows));
	assert_memory_equal(found->rows, rows, sizeof rows);
	rb_arena_free(h.arena);
}

/* The reading cannot be more than the rod shows, nor less than nothing. */
static void impossible_readings_are_not_offered(void **state)
{
	struct hunted h;

	(void)state;
	hunt_book(&h, FEET, 4, "TP-2,,0.40,,3.52\n");
	for (uint32_t i = 0; i < h.suspects->count; i++) {
		const struct rb_suspect *s = &h.suspects->item[i];

		if (s->slip != RB_SLIP_SIGN)
			assert_true(s->maybe.nm >= 0);
		assert_true(rb_length_absolute(s->maybe).nm <= 25 * RB_FOOT);
	}
	rb_arena_free(h.arena);
}

/* The same list everywhere: best first, ties in the order of the rows. */
static void ties_stand_in_row_order(void **state)
{
	struct hunted h;
	uint32_t last = 0, feet = 0;

	(void)state;
	hunt_book(&h, METRES, 2, "TP-1,,2.977,,0.318\n");
	for (uint32_t i = 0; i < h.suspects->count; i++) {
		if (h.suspects->item[i].slip != RB_SLIP_FOOT)
			continue;
		assert_true(h.suspects->item[i].row >= last);
		last = h.suspects->item[i].row;
		feet++;
	}
	assert_true(feet > 1);
	rb_arena_free(h.arena);
}

static int allocations_left; /* a test's own: the allocator has no context */

static void *failing_resize(void *old, size_t size)
{
	if (allocations_left-- <= 0)
		return NULL;
	return realloc(old, size);
}

static uint32_t of_kind(const struct rb_suspects *suspects, enum rb_slip slip)
{
	uint32_t count = 0;

	for (uint32_t i = 0; i < suspects->count; i++)
		count += suspects->item[i].slip == slip;
	return count;
}

/* Fail the first allocation, then the second, and so on until nothing fails. */
static void survives_running_out_of_memory(void **state)
{
	static const struct rb_allocator failing = { failing_resize, free };
	static char text[400000];
	size_t used = 0;
	struct hunted h = { 0 };

	(void)state;
	used += (size_t)snprintf(text, sizeof text,
				 "tolerance,0.02 ft\npoint,known elevation,bs,fs\n"
				 "BM-1,100,5.00,\n");
	for (int i = 0; i < 5000; i++)
		used += (size_t)snprintf(text + used, sizeof text - used,
					 "TP-%d,,5.00,5.00\n", i);
	snprintf(text + used, sizeof text - used, "BM-1,,,6.00\n");
	for (int allowed = 0; !h.suspects; allowed++) {
		allocations_left = allowed;
		hunt(&h, text, &failing);
		if (h.arena && !h.suspects)
			assert_true(h.findings.out_of_memory);
		if (h.suspects)
			assert_int_equal(of_kind(h.suspects, RB_SLIP_FOOT), 4000);
		rb_arena_free(h.arena);
	}
}

/* Nothing at all is allowed: what would close exactly is still found. */
static void where_nothing_is_allowed(void **state)
{
	struct hunted h;

	(void)state;
	hunt(&h,
	     "tolerance,0 ft\npoint,known elevation,bs,fs\n"
	     "A,100.00,4.12,\nT,,5.24,3.12\nA,,,5.24\n",
	     NULL);
	assert_non_null(h.suspects);
	assert_int_equal(h.sections->section[0].misclosure.nm, RB_FOOT);
	assert_true(h.suspects->count > 2);
	for (uint32_t i = 0; i < h.suspects->count; i++)
		assert_int_equal(h.suspects->item[i].left.nm, 0);
	rb_arena_free(h.arena);
}

/* A row with two high readings is one row of the list, and a rod upside down lacks the
 * other way. */
static void high_readings_are_listed_by_row(void **state)
{
	/* clang-format off */
	static const struct { const char *rows, *listed; } cases[] = {
		{ "BM-1,100.00,9.31,,\nTP-1,,8.77,,2.15\nTP-2,,9.62,,8.98\nBM-2,115.45,,,1.02\n",
		  "1 2 3 " },
		{ "BM-1,100.00,9.31,,\nTP-1,,8.77,,2.15\nTP-2,,1.62,,-8.98\nBM-2,125.11,,,1.24\n",
		  "1 2 3 " },
	};
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct hunted h;
		char text[500], listed[100] = "";
		const struct rb_suspect *rod = NULL;

		snprintf(text, sizeof text,
			 "tolerance,0.02 ft\npoint,known elevation,bs,is,fs\n%s",
			 cases[i].rows);
		hunt(&h, text, NULL);
		assert_non_null(h.suspects);
		for (uint32_t k = 0; k < h.suspects->count; k++)
			if (h.suspects->item[k].slip == RB_SLIP_ROD)
				rod = &h.suspects->item[k];
		if (!rod)
			print_error("row %zu: off by %lld nm\n", i,
				    (long long)h.sections->section[0].misclosure.nm);
		assert_non_null(rod);
		for (uint32_t k = 0; k < rod->row_count; k++)
			snprintf(listed + strlen(listed), sizeof listed - strlen(listed),
				 "%u ", rod->rows[k] + 1);
		assert_string_equal(listed, cases[i].listed);
		rb_arena_free(h.arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(planted_slips_are_found),
		cmocka_unit_test(each_suspect_closes_the_section),
		cmocka_unit_test(a_section_that_closes_has_no_suspects),
		cmocka_unit_test(a_loop_does_not_suspect_its_benchmark),
		cmocka_unit_test(a_rod_not_extended_is_found),
		cmocka_unit_test(impossible_readings_are_not_offered),
		cmocka_unit_test(ties_stand_in_row_order),
		cmocka_unit_test(survives_running_out_of_memory),
		cmocka_unit_test(where_nothing_is_allowed),
		cmocka_unit_test(high_readings_are_listed_by_row),
	};

	return cmocka_run_group_tests_name("suspects", tests, NULL, NULL);
}
