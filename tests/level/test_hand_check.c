/* SPDX-License-Identifier: MIT */
/* Books reduced by hand: what is wrong is marked, once, with its likely cause. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "level/hand_check.h"

#define COUNT(table) (sizeof(table) / sizeof *(table))
#define BOOK_ROWS    12
#define TEXT         4096

/* clang-format off */
/* Hand-reduced books of our own in which every cell is right; a case changes a line. */
enum { FEET, INCHES, DECIMAL_ROD, METRES, TWO_ROWS, ON };

static const char *const books[][BOOK_ROWS] = {
	[FEET] = { /* lines 2 to 8 */
		"point,known elevation,bs,hi,is,fs,elevation\n",
		"BM-1,100.00,4.27,104.27,,,\n",
		"TP-1,,5.11,103.35,,6.03,98.24\n",
		"MH-1,,,,7.48,,95.87\n",
		"TP-2,,4.90,104.73,,3.52,99.83\n",
		"BM-1,,,,,4.74,99.99\n",
		"sum,,14.28,,,14.29,-0.01\n",
		"misclosure,,,,,,-0.01\n" },
	[INCHES] = { /* lines 3 to 8 */
		"unit,ft-in\n",
		"point,known elevation,bs,hi,is,fs,elevation\n",
		"BM-1,100,4'-3 1/2\",104'-3 1/2\",,,\n",
		"SLAB,,,,-2'-7 1/8\",,106'-10 5/8\"\n",
		"MH-1,,,,7'-5 3/4\",,96'-9 3/4\"\n",
		"TP-1,,5'-11 3/8\",104'-2 5/8\",,6'-0 1/4\",98'-3 1/4\"\n",
		"BM-2,,,,,4'-9\",99'-5 5/8\"\n" },
	[DECIMAL_ROD] = { /* elevations in feet and inches, lines 2 to 4 */
		"point,known elevation,bs,hi,fs,elevation\n",
		"BM-1,100.00,4.25,104'-3\",,\n",
		"TP-1,,5.50,103'-5 1/2\",6.29,97'-11 1/2\"\n",
		"BM-2,,,,5.11,98'-4 1/8\"\n" },
	[METRES] = { /* values rounded coarser than the readings, lines 3 to 6 */
		"unit,m\n",
		"point,known elevation,bs,hi,fs,elevation\n",
		"BM-1,30.480,1.3014,31.78,,30.48\n",
		"TP-1,,1.5573,31.50,1.8382,29.94\n",
		"TP-2,,1.4944,31.92,1.0734,30.43\n",
		"BM-1,,,,1.4436,30.48\n" },
	[TWO_ROWS] = { /* turning points of two rows, heights on rows of their own; 2 to 9 */
		"point,known elevation,bs,hi,fs,elevation\n",
		"BM-1,100.00,4.27,,,100.00\n",
		",,,104.27,,\n",
		"TP-1,,,104.27,6.03,98.24\n",
		"TP-1,,5.11,,,98.24\n",
		"TP-2,,,103.35,3.52,\n",
		"TP-2,,4.90,,,99.83\n",
		"BM-2,,,104.73,4.74,99.99\n" },
	[ON] = { /* on over a known point that did not close exactly; 2 to 5 */
		"point,known elevation,bs,hi,fs,elevation\n",
		"BM-1,100.00,4.27,104.27,,\n",
		"BM-2,98.30,5.11,103.41,6.03,98.24\n",
		"TP-1,,4.90,104.79,3.52,99.89\n",
		"BM-3,100.10,,,4.74,100.05\n" },
};

#define HI RB_HEIGHT_OF_INSTRUMENT
#define EL RB_ELEVATION

static const struct planted {
	int book, row;        /* which of the book's texts is replaced */
	const char *text;
	int line;             /* of the one wrong cell; 0: nothing is wrong */
	enum rb_column column;
	enum rb_hand_cause cause;
} planted[] = {
	{ FEET, 2, "TP-1,,5.11,115.41,,6.03,110.30\n", 3, EL, RB_CAUSE_ADDED },
	{ FEET, 3, "MH-1,,,,7.48,,110.83\n", 4, EL, RB_CAUSE_ADDED },
	{ FEET, 2, "TP-1,,5.11,93.13,,6.03,98.24\n", 3, HI, RB_CAUSE_SUBTRACTED },
	{ FEET, 3, "MH-1,,,,7.48,,96.79\n", 4, EL, RB_CAUSE_WRONG_HEIGHT },
	{ FEET, 4, "TP-2,,4.90,104.73,,3.52,101.21\n", 5, EL, RB_CAUSE_WRONG_HEIGHT },
	{ FEET, 2, "TP-1,,5.11,104.27,,6.03,98.24\n", 3, HI, RB_CAUSE_HEIGHT_KEPT },
	{ FEET, 4, "TP-2,,4.90,100.77,,3.52,99.83\n", 5, HI, RB_CAUSE_FROM_INTERMEDIATE },
	{ FEET, 4, "TP-2,,4.90,103.14,,3.52,99.83\n", 5, HI, RB_CAUSE_FROM_OTHER },
	{ FEET, 4, "TP-2,,4.90,104.73,,3.52,99.38\n", 5, EL, RB_CAUSE_EXCHANGED },
	{ FEET, 4, "TP-2,,4.90,104.73,,3.52,100.10\n", 5, EL, RB_CAUSE_EXCHANGED }, /* 3.25 */
	{ FEET, 3, "MH-1,,,,7.48,,98.24\n", 4, EL, RB_CAUSE_COPIED },
	{ FEET, 3, "MH-1,,,,7.48,,95.9\n", 4, EL, RB_CAUSE_ROUNDED },
	{ FEET, 3, "MH-1,,,,7.48,,96.87\n", 4, EL, RB_CAUSE_CARRY },
	{ FEET, 3, "MH-1,,,,7.48,,91.52\n", 4, EL, RB_CAUSE_UNKNOWN },
	{ FEET, 5, "BM-1,,,,,4.74,100.00\n", 6, EL, RB_CAUSE_KNOWN_WRITTEN },
	{ FEET, 6, "sum,,9.38,,,14.29,-0.01\n", 7, RB_BACKSIGHT, RB_CAUSE_LEFT_OUT },
	{ FEET, 6, "sum,,14.28,,,19.03,-0.01\n", 7, RB_FORESIGHT, RB_CAUSE_TWICE },
	{ FEET, 6, "total,,14.28,7.84,,14.29,\n", 7, HI, RB_CAUSE_UNKNOWN },
	{ FEET, 6, "total,,14.28,,7.84,14.29,\n", 7, RB_INTERMEDIATE, RB_CAUSE_EXCHANGED },
	{ FEET, 6, "Page 1 total,,14.28,,,14.92,\n", 7, RB_FORESIGHT, RB_CAUSE_EXCHANGED },
	{ FEET, 6, "sum (BS),,14.28,,,,\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 7, "Diff.,,-0.01,,,,\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 7, "BS - FS diff,,,,,0.01,\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 7, "difference,,,,,,-0.10\n", 8, EL, RB_CAUSE_EXCHANGED },
	{ FEET, 7, "error of closure,,,,,,-0.10\n", 8, EL, RB_CAUSE_EXCHANGED },
	{ FEET, 7, "allowable error,,,,,,0.02\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 7, "closure,,,,,,-0.10\n", 8, EL, RB_CAUSE_EXCHANGED },
	/* a slip of the pen, a slip that was carried on, and either way to write a closure */
	{ FEET, 2, "TP-1,,5.11,103.35,,6.03,98.42\n", 3, EL, RB_CAUSE_EXCHANGED },
	{ FEET, 2, "TP-1,,5.11,103.53,,6.03,98.42\n", 3, EL, RB_CAUSE_EXCHANGED },
	{ FEET, 7, "misclosure,,,,,,0.01\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 7, "misclosure,,,,,,0.01 low\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 1, "BM-1,100.00,4.27,104.27,,,100.00\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 1, "BM-1,100.00,4.27,104.27,,,101.00\n", 2, EL, RB_CAUSE_BENCHMARK },
	{ FEET, 1, "BM-1,100.00,4.27,104.27,,,100.35\n", 2, EL, RB_CAUSE_BENCHMARK },
	{ FEET, 1, "BM-1,100.00,4.27,105.27,,,\n", 2, HI, RB_CAUSE_BENCHMARK },
	{ FEET, 1, "BM-1,100.00,4.27,134.27,,,\n", 2, HI, RB_CAUSE_BENCHMARK },
	{ FEET, 1, "BM-1,100.00,4.27,135.61,,,\n", 2, HI, RB_CAUSE_UNKNOWN },
	{ FEET, 2, "TP-1,,5.11,104.35,,6.03,98.24\n", 3, HI, RB_CAUSE_UNKNOWN },
	{ FEET, 4, "TP-2,,4.90,103.73,,3.52,99.83\n", 5, HI, RB_CAUSE_CARRY },
	{ FEET, 2, "TP-1,,5.11,103.45,,6.03,98.24\n", 3, HI, RB_CAUSE_UNKNOWN },
	{ FEET, 6, "sum,,14.28,,7.48,21.77,-0.01\n", 7, RB_FORESIGHT,
	  RB_CAUSE_WITH_INTERMEDIATES },
	{ FEET, 3, "MH-1,,,,7.48,,\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 1, "BM-1,100.00,4.27,,,,\n", 0, 0, RB_CAUSE_UNKNOWN },
	{ FEET, 3, "MH-1,,,,7.48,,95.70\n", 4, EL, RB_CAUSE_UNKNOWN }, /* 2 in, of no inches */

	{ INCHES, 3, "SLAB,,,,-2'-7 1/8\",,101'-8 3/8\"\n", 4, EL, RB_CAUSE_INVERTED },
	{ INCHES, 4, "MH-1,,,,7'-5 3/4\",,96'-7 3/4\"\n", 5, EL, RB_CAUSE_BASE_TEN },
	{ INCHES, 5, "TP-1,,5'-11 3/8\",104'-4 5/8\",,6'-0 1/4\",98'-3 1/4\"\n",
	  6, HI, RB_CAUSE_BASE_TEN },
	{ INCHES, 4, "MH-1,,,,7'-5 3/4\",,96'-9\"\n", 5, EL, RB_CAUSE_FRACTION },
	{ INCHES, 5, "TP-1,,5'-11 3/8\",104'-2 1/4\",,6'-0 1/4\",98'-3 1/4\"\n",
	  6, HI, RB_CAUSE_FRACTION },
	{ INCHES, 6, "BM-2,,,,,4'-9\",99'-3 7/8\"\n", 7, EL, RB_CAUSE_DECIMALS }, /* 4.9 */
	{ INCHES, 6, "BM-2,,,,,4'-9\",100'-1 1/2\"\n", 7, EL, RB_CAUSE_DECIMALS }, /* 4.09 */
	{ INCHES, 6, "BM-2,,,,,4'-9\",99'-4 5/8\"\n", 7, EL, RB_CAUSE_CARRY },
	{ INCHES, 6, "BM-2,,,,,4'-9\",98'-5 5/8\"\n", 7, EL, RB_CAUSE_CARRY },

	{ DECIMAL_ROD, 2, "TP-1,,5.50,103'-5 1/2\",6.29,97'-10 5/8\"\n",
	  3, EL, RB_CAUSE_UNKNOWN },
	{ DECIMAL_ROD, 2, "TP-1,,5.50,103'-5 1/2\",6.29,98'-0 1/8\"\n",
	  3, EL, RB_CAUSE_DECIMALS }, /* 6.29 as 6'-2.9" */
	{ DECIMAL_ROD, 3, "BM-2,,,,5.11,97'-6 1/2\"\n", 4, EL, RB_CAUSE_DECIMALS },

	{ METRES, 3, "TP-1,,1.5573,31.50,1.8382,29.95\n", 4, EL, RB_CAUSE_ROUNDED },
	{ METRES, 3, "TP-1,,1.5573,31.50,1.8382,29.93\n", 4, EL, RB_CAUSE_CARRY },

	{ TWO_ROWS, 4, "TP-1,,5.11,,,98.42\n", 5, EL, RB_CAUSE_EXCHANGED },
	{ TWO_ROWS, 6, "TP-2,,4.90,,,98.93\n", 7, EL, RB_CAUSE_EXCHANGED },
	{ TWO_ROWS, 3, "TP-1,,,102.47,6.03,98.24\n", 4, HI, RB_CAUSE_EXCHANGED },
	{ TWO_ROWS, 3, "TP-1,,,104.67,6.03,98.24\n", 4, HI, RB_CAUSE_MISCOPIED },
	{ TWO_ROWS, 7, "BM-2,,,107.43,4.74,99.99\n", 8, HI, RB_CAUSE_EXCHANGED },

	{ ON, 2, "BM-2,98.30,5.11,103.35,6.03,98.24\n", 3, HI, RB_CAUSE_NOT_FROM_KNOWN },
	{ ON, 4, "BM-3,100.10,,,4.74,100.10\n", 5, EL, RB_CAUSE_KNOWN_WRITTEN },
};
/* clang-format on */

struct checked {
	struct rb_arena *arena;
	struct rb_findings findings;
	const struct rb_book *book;
	const struct rb_hand_check *check;
};

static void check_text(struct checked *c, const char *text,
		       const struct rb_allocator *allocator)
{
	const struct rb_reduced *reduced;

	*c = (struct checked){ .arena = rb_arena_new(allocator) };
	if (!c->arena)
		return;
	rb_findings_init(&c->findings, c->arena, "hand.csv");
	c->book = rb_book_read(c->arena, &c->findings, text, strlen(text));
	reduced = c->book ? rb_reduce(c->arena, &c->findings, c->book) : NULL;
	if (reduced)
		c->check = rb_hand_check(c->arena, &c->findings, reduced);
}

static void compose(char text[static TEXT], int book, int row, const char *instead)
{
	size_t used = 0;

	text[0] = '\0';
	for (int i = 0; i < BOOK_ROWS && books[book][i]; i++)
		used += (size_t)snprintf(text + used, TEXT - used, "%s",
					 instead && i == row ? instead : books[book][i]);
}

static const struct rb_hand_cell *first_wrong(const struct rb_hand_check *check)
{
	for (uint32_t i = 0; i < check->cells; i++)
		if (check->cell[i].state == RB_HAND_WRONG)
			return &check->cell[i];
	return NULL;
}

static void right_books_pass(void **state)
{
	int wrong = 0;

	(void)state;
	for (int book = 0; book < (int)COUNT(books); book++) {
		char text[TEXT];
		struct checked c;
		uint32_t cells;

		compose(text, book, 0, NULL);
		check_text(&c, text, NULL);
		assert_non_null(c.check);
		cells = rb_hand_count(c.check, RB_HAND_RIGHT);
		if (cells != c.check->cells || !cells ||
		    c.findings.of_severity[RB_FAILED]) {
			print_error("book %d: %u of %u right\n", book, cells,
				    c.check->cells);
			wrong++;
		}
		rb_arena_free(c.arena);
	}
	assert_int_equal(wrong, 0);
}

/* Is just what was planted marked? */
static bool is_marked(const struct checked *c, const struct planted *p)
{
	const struct rb_hand_cell *cell = first_wrong(c->check);
	uint32_t marks = rb_hand_count(c->check, RB_HAND_WRONG);

	if (!p->line)
		return !marks && !c->findings.of_severity[RB_FAILED];
	return marks == 1 && c->findings.of_severity[RB_FAILED] == 1 &&
	       rb_book_line(c->book, cell->row) == (uint32_t)p->line &&
	       cell->column == p->column && cell->cause == p->cause;
}

static void slips_are_marked_once(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(planted); i++) {
		const struct planted *p = &planted[i];
		char text[TEXT];
		struct checked c;

		compose(text, p->book, p->row, p->text);
		check_text(&c, text, NULL);
		assert_non_null(c.check);
		if (!is_marked(&c, p)) {
			const struct rb_hand_cell *cell = first_wrong(c.check);

			print_error("row %zu, %.*s: %u marks, line %u, %s\n", i,
				    (int)strcspn(p->text, "\n"), p->text,
				    rb_hand_count(c.check, RB_HAND_WRONG),
				    cell ? rb_book_line(c.book, cell->row) : 0,
				    cell && cell->cause ? rb_hand_cause_name(cell->cause)
							: "no cause");
			wrong++;
		}
		rb_arena_free(c.arena);
	}
	assert_int_equal(wrong, 0);
}

/* A slip that was carried on: what hangs on it is wrong only because of it. */
static void carried_cells_are_told_apart(void **state)
{
	static const char text[] = "point,known elevation,bs,hi,is,fs,elevation\n"
				   "BM-1,100.00,4.27,104.27,,,\n"
				   "TP-1,,5.11,103.53,,6.03,98.42\n" /* 98.24 */
				   "MH-1,,,,7.48,,96.05\n"
				   "TP-2,,4.90,104.91,,3.52,\n"
				   "BM-1,,,,,4.74,100.17\n"
				   "misclosure,,,,,,0.17\n";
	struct checked c;

	(void)state;
	check_text(&c, text, NULL);
	assert_non_null(c.check);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_WRONG), 1);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_CARRIED), 5);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_EMPTY), 1);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_RIGHT), 1);
	assert_int_equal(c.check->count[RB_STEP_FORESIGHT][RB_HAND_WRONG], 1);
	assert_int_equal(c.check->count[RB_STEP_MISCLOSURE][RB_HAND_CARRIED], 1);
	rb_arena_free(c.arena);
}

/* An empty sheet is no failure, a book without the columns is no sheet. */
static void empty_sheets(void **state)
{
	struct checked c;

	(void)state;
	check_text(&c,
		   "point,known elevation,bs,hi,fs,elevation\n"
		   "BM-1,100.00,4.27,,,\nTP-1,,5.11,,6.03,\nBM-1,,,,3.35,\n",
		   NULL);
	assert_non_null(c.check);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_EMPTY), 4);
	assert_int_equal(c.findings.of_severity[RB_FAILED], 0);
	rb_arena_free(c.arena);
	check_text(&c, "point,known elevation,bs,fs\nBM-1,100.00,4.27,\nBM-1,,,4.27\n",
		   NULL);
	assert_null(c.check);
	assert_int_equal(c.findings.of_code[RB_CODE_NO_HAND_VALUES], 1);
	rb_arena_free(c.arena);
}

/* What stands before the first backsight is no height of any setup. */
static void a_height_too_early(void **state)
{
	struct checked c;

	(void)state;
	check_text(&c,
		   "point,known elevation,bs,hi,fs,elevation\n"
		   "BM-1,100.00,,104.27,,\nBM-1,,4.27,,,\nTP,,,,4.00,100.27\n",
		   NULL);
	assert_non_null(c.check);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_RIGHT), 1);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_WRONG), 0);
	rb_arena_free(c.arena);
}

/* 4/8 is written to eighths: 0.1 in is more than half of one, and less than half of 1/2.
 */
static void halves_written_as_eighths(void **state)
{
	static const struct {
		const char *half;
		uint32_t wrong;
	} cases[] = { { "4/8", 1 }, { "1/2", 0 } };
	struct checked c;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		char text[TEXT];

		snprintf(text, sizeof text,
			 "point,known elevation,bs,hi,fs,elevation\n"
			 "BM-1,100.00,4.25,104'-3\",,\n"
			 "TP-1,,,,6.30,97'-11 %s\"\n", /* 97'-11.4" */
			 cases[i].half);
		check_text(&c, text, NULL);
		assert_non_null(c.check);
		assert_int_equal(rb_hand_count(c.check, RB_HAND_WRONG), cases[i].wrong);
		rb_arena_free(c.arena);
	}
}

/* An elevation column alone is enough: its first value is then the benchmark's, and the
 * heights of instrument are worked out between. */
static void without_heights_of_instrument(void **state)
{
	struct checked c;
	const struct rb_hand_cell *cell;

	(void)state;
	check_text(&c,
		   "point,bs,fs,rl\nBM-1,4.27,,100.00\nTP-1,5.11,6.03,98.24\n"
		   "TP-2,4.90,3.52,98.93\nBM-1,,4.74,99.09\nsums,14.28,14.29,\n",
		   NULL);
	assert_non_null(c.check);
	cell = first_wrong(c.check);
	assert_non_null(cell);
	assert_int_equal(rb_hand_count(c.check, RB_HAND_WRONG), 1);
	assert_int_equal(rb_book_line(c.book, cell->row), 4);
	assert_int_equal(cell->follows.nm, 9983 * (RB_FOOT / 100));
	assert_int_equal(cell->cause, RB_CAUSE_EXCHANGED);
	assert_int_equal(c.check->cells, 5);
	rb_arena_free(c.arena);
}

/* -- random books -- */

/* A sheet as a student fills it in, in whole steps of its last place. */
struct sheet {
	uint64_t seed;
	enum rb_unit unit;
	int64_t step;   /* of readings */
	int64_t coarse; /* of what is worked out, in steps */
	bool two_rows;
	int cells;    /* hand values written so far */
	int slip_at;  /* which of them gets the slip; -1: none */
	bool carried; /* the slip is carried on, not of the pen alone */
	int64_t slip;
	int line, slip_line;
	char text[TEXT * 4];
	size_t used;
};

static int64_t draw(struct sheet *s, int64_t low, int64_t high)
{
	s->seed = s->seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
	return low + (int64_t)((s->seed >> 33) % (uint64_t)(high - low + 1));
}

static void put(struct sheet *s, const char *text)
{
	s->used +=
		(size_t)snprintf(s->text + s->used, sizeof s->text - s->used, "%s", text);
	assert_true(s->used < sizeof s->text);
	for (; *text; text++)
		s->line += *text == '\n';
}

static void put_value(struct sheet *s, int64_t steps, bool coarse)
{
	static const int decimals[] = { [RB_FEET] = 3,
					[RB_INCHES] = 2,
					[RB_FEET_INCHES] = 0,
					[RB_METRES] = 4,
					[RB_MILLIMETRES] = 1 };
	const struct rb_style style = { s->unit, decimals[s->unit] - coarse, 16, false };
	char text[RB_LENGTH_TEXT];

	assert_true(rb_length_format(text, rb_length_of(steps * s->step), style));
	put(s, text);
	put(s, ",");
}

/* A worked-out value, rounded as the sheet's are, with the slip where it is its turn;
 * returns what the student goes on with. */
static int64_t put_worked(struct sheet *s, int64_t value)
{
	int64_t half = value < 0 ? -s->coarse / 2 : s->coarse / 2;
	int64_t shown = (value + half) / s->coarse * s->coarse;

	if (s->cells++ == s->slip_at) {
		s->slip_line = s->line;
		put_value(s, shown + s->slip, s->coarse > 1);
		return s->carried ? shown + s->slip : shown;
	}
	put_value(s, shown, s->coarse > 1);
	return shown;
}

/* Rows of one setup behind its backsight; returns the elevation that is carried on. */
static int64_t put_sights(struct sheet *s, int setup, int64_t height, bool last)
{
	char name[32];
	int64_t reading;

	for (int64_t i = draw(s, 0, 2); i > 0; i--) {
		reading = draw(s, 100, 4000);
		put(s, ",,,,");
		put_value(s, reading, false);
		put(s, ",");
		put_worked(s, height - reading);
		put(s, "\n");
	}
	reading = draw(s, 100, 4000);
	snprintf(name, sizeof name, last ? "END" : "TP-%d", setup);
	put(s, name);
	put(s, ",,");
	if (!last && !s->two_rows)
		return reading; /* its backsight comes first in the row */
	put(s, ",,,");
	put_value(s, reading, false);
	reading = put_worked(s, height - reading);
	put(s, "\n");
	return reading;
}

/* Backsight and height of instrument of a setup; sighted: the reading onto the point that
 * stands in the same row, from `height`; or 0. */
static int64_t put_backsight(struct sheet *s, int64_t *height, int64_t elevation,
			     int64_t sighted)
{
	int64_t reading = draw(s, 100, 4000), carried = elevation;
	size_t middle;
	char tail[128];

	put_value(s, reading, false);
	if (sighted) { /* the elevation is worked out before the height, and stands behind
			*/
		middle = s->used;
		put(s, ",");
		put_value(s, sighted, false);
		carried = put_worked(s, *height - sighted);
		snprintf(tail, sizeof tail, "%s", s->text + middle);
		s->used = middle;
		*height = put_worked(s, carried + reading);
		put(s, tail);
	} else {
		*height = put_worked(s, elevation + reading);
		put(s, ",,,");
	}
	put(s, "\n");
	return *height;
}

static const struct {
	enum rb_unit unit;
	const char *key;
	int64_t step;
	int64_t start; /* in steps */
} sheets[] = {
	{ RB_FEET, "unit,ft\n", RB_FOOT / 1000, 100000 },
	{ RB_FEET_INCHES, "unit,ft-in\n", RB_INCH / 16, 19200 },
	{ RB_INCHES, "unit,in\n", RB_INCH / 100, 120000 },
	{ RB_METRES, "unit,m\n", RB_MILLIMETRE / 10, 304800 },
	{ RB_MILLIMETRES, "unit,mm\n", RB_MILLIMETRE / 10, 304800 },
};

static void fill_sheet(struct sheet *s, uint64_t seed, int slip_at, bool carried)
{
	size_t kind = (size_t)(seed % COUNT(sheets));
	int64_t setups, elevation, height = 0;

	*s = (struct sheet){
		.seed = seed, .slip_at = slip_at, .carried = carried, .line = 1
	};
	for (int i = 0; i < 8; i++)
		draw(s, 0, 1); /* small seeds begin alike */
	s->unit = sheets[kind].unit;
	s->step = sheets[kind].step;
	s->coarse = s->unit != RB_FEET_INCHES && draw(s, 0, 2) == 0 ? 10 : 1;
	s->two_rows = draw(s, 0, 1);
	s->slip = (draw(s, 0, 1) ? 1 : -1) * draw(s, 2, 300) * s->coarse;
	setups = draw(s, 1, 6);
	elevation = sheets[kind].start;
	put(s, sheets[kind].key);
	put(s, "point,known elevation,bs,hi,is,fs,elevation\nBM,");
	put_value(s, elevation, false);
	put_backsight(s, &height, elevation, 0);
	for (int i = 1; i < (int)setups; i++) {
		int64_t next = put_sights(s, i, height, false);
		char name[32];

		snprintf(name, sizeof name, "TP-%d,,", i);
		if (s->two_rows)
			put(s, name);
		put_backsight(s, &height, next, s->two_rows ? 0 : next);
	}
	put_sights(s, (int)setups, height, true);
}

static bool sheet_is_marked(const struct sheet *s, uint64_t seed)
{
	struct checked c;
	uint32_t marks = 0, line = 0, wanted = s->slip_at < 0 ? 0 : 1;

	check_text(&c, s->text, NULL);
	assert_non_null(c.check);
	marks = rb_hand_count(c.check, RB_HAND_WRONG);
	if (marks)
		line = rb_book_line(c.book, first_wrong(c.check)->row);
	if (marks != wanted || (wanted && line != (uint32_t)s->slip_line))
		print_error(
			"seed %llu: %u marks, the first on line %u, slip on line %d\n%s",
			(unsigned long long)seed, marks, line, s->slip_line, s->text);
	rb_arena_free(c.arena);
	return marks == wanted && (!wanted || line == (uint32_t)s->slip_line);
}

static void random_sheets(void **state)
{
	static struct sheet s; /* long texts */
	int wrong = 0;

	(void)state;
	for (uint64_t seed = 1; seed <= 1000 && wrong < 3; seed++) {
		int cells;

		fill_sheet(&s, seed, -1, false);
		cells = s.cells;
		wrong += !sheet_is_marked(&s, seed);
		fill_sheet(&s, seed, (int)(seed * 7 % (uint64_t)cells), seed / 5 % 2);
		wrong += !sheet_is_marked(&s, seed);
	}
	assert_int_equal(wrong, 0);
}

/* -- memory -- */

static int allowed;

static void *grudging(void *old, size_t size)
{
	return allowed-- > 0 ? realloc(old, size) : NULL;
}

static void memory_may_run_out(void **state)
{
	const struct rb_allocator allocator = { grudging, free };
	char text[TEXT];
	bool done = false;

	(void)state;
	compose(text, FEET, 2, "TP-1,,5.11,103.53,,6.03,98.42\n");
	for (int limit = 0; !done && limit < 500; limit++) {
		struct checked c;

		allowed = limit;
		check_text(&c, text, &allocator);
		done = c.check != NULL;
		if (c.arena)
			assert_true(done != c.findings.out_of_memory);
		rb_arena_free(c.arena);
	}
	assert_true(done);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(right_books_pass),
		cmocka_unit_test(slips_are_marked_once),
		cmocka_unit_test(carried_cells_are_told_apart),
		cmocka_unit_test(empty_sheets),
		cmocka_unit_test(a_height_too_early),
		cmocka_unit_test(without_heights_of_instrument),
		cmocka_unit_test(halves_written_as_eighths),
		cmocka_unit_test(random_sheets),
		cmocka_unit_test(memory_may_run_out),
	};

	return cmocka_run_group_tests_name("hand_check", tests, NULL, NULL);
}
