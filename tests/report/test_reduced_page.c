/* SPDX-License-Identifier: MIT */
/* The reduced book on the terminal: what stands where, and every verdict. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>

#include "capture.h"
#include "report/reduced_page.h"
#include "report/text.h"

#define CHUNK 4 /* no two takings share a block: each may fail */
#include "notes/arena.c"

static struct capture capture;
static const struct rb_text_style plain = { RB_TEXT_COLUMNS, false };

static const char *page_of(const char *file, const char *book, bool anyway)
{
	struct reduced_book b;
	struct rb_page *page = NULL;

	reduce_text(&b, file, book, anyway);
	if (b.reduction.adjusted)
		page = rb_reduced_page(b.arena, &b.reduction);
	capture_init(&capture);
	if (page)
		rb_page_write_text(&capture.sink, page, plain);
	rb_arena_free(b.arena);
	return captured(&capture);
}

static void shows_a_book_that_closes(void **state)
{
	(void)state;
	assert_string_equal(
		page_of("books/larch.csv", larch, false),
		"Larch Street drain, 17 March 2026                larch.csv, decimal feet\n"
		"point     BS      HI    IS     FS  elevation  adjusted\n"
		"-----------------------------------------------------------------------\n"
		"BM-1    4.27  104.27                100.00    100.000   known\n"
		"TP-1    5.11  103.35         6.03    98.24     98.243\n"
		"MH-1                  6.48           96.87     96.877   rim, south side\n"
		"TP-2    4.90  104.73         3.52    99.83     99.837\n"
		"BM-1                         4.74    99.99    100.000   known 100.00\n"
		"-----------------------------------------------------------------------\n"
		"sums   14.28                14.29\n"
		"Arithmetic: 14.28 - 14.29 = -0.01 = 99.99 - 100.00. The sums agree; that\n"
		"proves the sums, not the survey. Rise and fall, sight by sight, say the\n"
		"same: 3.12 - 3.13 = -0.01.\n"
		"CLOSES on BM-1: 0.01 ft low, 0.02 ft allowed, 3 setups, each raised\n"
		"0.0033 ft.\n");
}

static void aligns_feet_and_inches(void **state)
{
	(void)state;
	assert_string_equal(
		page_of("-",
			"unit,ft-in\ntolerance,\"1/4\"\"\"\ncrew,JR\n"
			"point,bs,is,fs,bm,dip,rod on,remarks\n"
			"BM 7,4'-9 1/4\",,,100'-0\",,,\n"
			"CO 1,,5'-3 1/2\",,,\"2'-7\"\"\",rim,wye\n"
			"BM 7,,,4'-9 3/8\",,,,\n",
			false),
		"Level notes                                  standard input, feet and inches\n"
		"crew JR\n"
		"\n"
		"point         BS           HI         IS         FS    elevation    adjusted\n"
		"----------------------------------------------------------------------------\n"
		"BM 7   4'-9 1/4\"  104'-9 1/4\"                            100'-0\"     100'-0\"\n"
		"    known\n"
		"CO 1                           5'-3 1/2\"              99'-5 3/4\"  99'-5 7/8\"\n"
		"    below 96'-10 7/8\"; on rim; wye\n"
		"BM 7                                      4'-9 3/8\"  99'-11 7/8\"     100'-0\"\n"
		"    known 100'-0\"\n"
		"----------------------------------------------------------------------------\n"
		"sums   4'-9 1/4\"                          4'-9 3/8\"\n"
		"Arithmetic: 4'-9 1/4\" - 4'-9 3/8\" = -0'-0 1/8\" = 99'-11 7/8\" - 100'-0\". The\n"
		"sums agree; that proves the sums, not the survey. Rise and fall, sight by\n"
		"sight, say the same: 0'-6 1/8\" - 0'-6 1/4\" = -0'-0 1/8\".\n"
		"CLOSES on BM 7: 0'-0 1/8\" low, 0'-0 1/4\" allowed, 1 setup, raised 0'-0 1/8\".\n");
}

/* Each book, and words that its page must hold, line ends read as blanks; NULL ends the
 * list. */
#define SIGHTS "point,bs,fs,bs dist,fs dist,bm\n"

/* clang-format off */
static const struct words_case {
	const char *name, *book;
	bool anyway;
	const char *words[7];
} words_cases[] = {
	{ "beyond, by so little that more places are needed",
	  "tolerance,5 mm sqrt(setups)\nunit,mm\npoint,bs,fs,bm\nA,1000,,10 m\nB,1000,1000,\n"
	  "C,1000,1000,\nA,,1009,\n", false,
	  { "DOES NOT CLOSE on A: 9 mm low, 8.66 mm allowed, 3 setups, not adjusted: look for "
	    "the mistake first.", "Where to look: single slips", "a centimetre: lines 4, 5, 6, 7",
	    "This is a list of places to look, and no more", NULL } },
	{ "adjusted all the same",
	  "tolerance,0.02\npoint,bs,fs,bm\nA,4.27,,100\nB,5.11,6.30,\nA,,3.05,\n", true,
	  { "DOES NOT CLOSE on A: 0.03 ft high, 0.02 ft allowed, 2 setups, each lowered 0.015 ft, "
	    "ADJUSTED ALL THE SAME (--adjust-anyway).", " adjusted ", NULL } },
	{ "closes and is not adjusted",
	  "tolerance,0.02\nadjust,none\npoint,bs,fs,bm\nA,4.27,,100\nA,,4.28,\n", false,
	  { "CLOSES on A: 0.01 ft low, 0.02 ft allowed, 1 setup, not adjusted (adjust: none).",
	    NULL } },
	{ "no tolerance", "point,bs,fs,bm\nA,4.27,,100\nA,,4.28,\n", false,
	  { "NOT JUDGED: no tolerance given; on A: 0.01 ft low, 1 setup, not adjusted.", NULL } },
	{ "exactly", "tolerance,0.02\npoint,bs,fs,bm\nA,4.27,,100\nA,,4.27,\n", false,
	  { "CLOSES on A: exactly, 0.02 ft allowed, 1 setup, nothing to adjust.", NULL } },
	{ "open without a foresight", "point,bs,is,bm\nA,4.27,,100\nB,,4.27,\n", false,
	  { "Arithmetic: no foresight, nothing to sum.",
	    "OPEN: unchecked. The levels from A to B reach no known elevation; 1 setup, not "
	    "adjusted.", NULL } },
	{ "by distance, and out of balance",
	  "tolerance,0.05\nadjust,distance\ncollimation,+0.004 ft per 100 ft\n" SIGHTS
	  "A,4.27,,50,,100\nB,3.00,4.00,60,50,\nA,,3.28,,100,\n", false,
	  { "Sights: back 110.0 ft, ahead 150.0 ft, 40.0 ft longer ahead. With the collimation of "
	    "the book that puts the end 0.0016 ft low; it is reported, not applied.",
	    "CLOSES on A: 0.01 ft low, 0.05 ft allowed, 2 setups over 260 ft, raised by the length "
	    "of the sights.", NULL } },
	{ "two sections, a check, an extended rod",
	  "tolerance,0.02\npoint,bs,is,fs,bm\nA,8.27,,,100\nB,,3.30,,105\nC,5.00,,6.00,102.27\n"
	  "D,,,4.00,\n", false,
	  { "known 105.00; check: 0.03 ft low", "A to C: CLOSES on C: exactly",
	    "OPEN: unchecked. The levels from C to D",
	    "CAUTION: readings over 7 ft are taken on an extended rod (line 3): before it goes up, "
	    "look up for overhead lines", "29 CFR 1926.416(a)(1)", "A to C Arithmetic: 8.27 - 6.00",
	    NULL } },
	{ "one line for a kind that fits everywhere",
	  "tolerance,0.02\npoint,bs,fs,bm\nA,4.27,,100\nB,5.11,6.31,\nC,4.21,5.13,\n"
	  "D,4.44,3.33,\nA,,4.26,\n", false,
	  { "DOES NOT CLOSE on A: 1.00 ft low, 0.02 ft allowed, 4 setups, not adjusted",
	    "a whole foot: lines 3, 4, 5, 6, 7", NULL } },
	{ "a backsight and nothing more", "point,bs,fs,bm\nA,4.27,,100\n", false,
	  { "OPEN: unchecked. No sight was taken after the backsight, so there is a height of "
	    "instrument and no elevation.", NULL } },
	{ "stations as typed, of thousands in metres",
	  "unit,m\npoint,chainage,bs,is,bm\nA,0+000,1.27,,100\nB,0+050,,1.500,\nC,1+250.5,,1.6,\n",
	  false, { " 0+000 ", " 0+050 ", " 1+250.5 ", NULL } },
	{ "of hundreds in metres, and a station that is a name",
	  "unit,m\npoint,bs,is,bm\nA,1.27,,100\n0+50,,1.500,\n+75,,1.500,\n", false,
	  { "0+50 0+50 ", "+75 0+75 ", NULL } },
	{ "bare",
	  "point,chainage,bs,is,bm\nA,0,4.27,,100\nB,50,,4.11,\n", false,
	  { "B 50 ", NULL } },
	{ "meant to close on an intermediate sight",
	  "tolerance,0.02\npoint,bs,is,fs,bm\nA,4.27,,,100\nB,5.11,,6.03,\nC,,3.00,,100.34\n",
	  false,
	  { "OPEN: unchecked. The levels from A to B are not closed: the sight on C (line 5) is "
	    "booked as an intermediate sight and comes out 0.01 ft high; booked as a foresight it "
	    "closes them. 1 setup, not adjusted.", NULL } },
	{ "the same, without a difference",
	  "point,bs,is,bm\nA,4.27,,100\nA,,4.27,\n", false,
	  { "the sight on A (line 3) is booked as an intermediate sight and agrees; booked", NULL } },
	{ "a spur that moves with the point on which it stands",
	  "tolerance,0.02\npoint,bs,is,fs,bm\nA,4.27,,,100\nB,5.11,,6.03,\nA,,,3.36,\n"
	  "B,4.00,,,\nC,,3.21,,\n,,3.33,,\n", false,
	  { "CLOSES on A: 0.01 ft low", "From B a spur, unchecked: C, line 8. Nothing closes it; "
	    "its adjusted elevations carry the correction of B.", NULL } },
	{ "a spur on what is not adjusted",
	  "point,bs,is,fs,bm\nA,4.27,,,100\nB,5.11,,6.03,\nA,,,3.36,\nB,4.00,,,\nC,,3.21,,\n",
	  false,
	  { "NOT JUDGED", "From B a spur, unchecked: C. Nothing closes it.", NULL } },
	{ "control characters in a remark",
	  "point,bs,fs,bm,remarks\nA,4.27,,100,\x1b[31mred\nA,,4.27,,\"two\nlines\"\n", false,
	  { "\\x1b[31mred", "two lines", NULL } },
};
/* clang-format on */

/* Wrapping is no concern here. */
static const char *on_one_line(const char *page)
{
	static char line[CAPTURE];
	size_t used = 0;

	for (const char *c = page; *c && used + 1 < sizeof line; c++)
		if (!(*c == '\n' || *c == ' ') || !used || line[used - 1] != ' ')
			line[used++] = *c == '\n' ? ' ' : *c;
	line[used] = '\0';
	return line;
}

static void says_what_it_must(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof words_cases / sizeof *words_cases; i++) {
		const struct words_case *c = &words_cases[i];
		const char *page = on_one_line(page_of("t.csv", c->book, c->anyway));

		for (size_t w = 0; c->words[w]; w++) {
			if (strstr(page, c->words[w]))
				continue;
			print_error("%s: no \"%s\" in\n%s\n", c->name, c->words[w], page);
			wrong++;
		}
	}
	assert_int_equal(wrong, 0);
}

/* Allocations are refused from the n-th on. */
static int allocations_left;

static void *scarce(void *old, size_t size)
{
	return allocations_left-- > 0 ? realloc(old, size) : NULL;
}

/* A page without memory is no page; with enough of it, it is the same page. */
static void survives_running_out_of_memory(void **state)
{
	const struct rb_allocator allocator = { scarce, free };
	struct reduced_book b;
	struct rb_page *page = NULL;
	bool written = false;

	(void)state;
	reduce_text(&b, "larch.csv", larch, false);
	for (int allowed = 0; !written; allowed++) {
		struct rb_arena *arena;

		allocations_left = allowed;
		arena = rb_arena_new(&allocator);
		page = arena ? rb_reduced_page(arena, &b.reduction) : NULL;
		capture_init(&capture);
		written = page && rb_page_write_text(&capture.sink, page, plain);
		allocations_left = 1;
		rb_arena_free(arena);
	}
	assert_non_null(strstr(captured(&capture), "CLOSES on BM-1"));
	rb_arena_free(b.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(shows_a_book_that_closes),
		cmocka_unit_test(aligns_feet_and_inches),
		cmocka_unit_test(says_what_it_must),
		cmocka_unit_test(survives_running_out_of_memory),
	};

	return cmocka_run_group_tests_name("reduced_page", tests, NULL, NULL);
}
