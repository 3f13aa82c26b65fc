/* SPDX-License-Identifier: MIT */
/*
 * test_practice_check.c - practice and check agree.
 *
 * Each loop is written as CSV and read back as a student's book would be: a key passes, a
 * planted slip is found at its line and nothing else is marked, and a sheet has nothing
 * filled in.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "report/practice_sheet.h"

#define SEEDS 1000
#define BOOK  65536

static const enum rb_unit units[] = { RB_FEET, RB_INCHES, RB_FEET_INCHES, RB_METRES,
				      RB_MILLIMETRES };

struct text {
	char bytes[BOOK];
	size_t used;
};

static bool take(void *self, const char *bytes, size_t length)
{
	struct text *text = self;

	if (length > BOOK - text->used)
		return false;
	memcpy(text->bytes + text->used, bytes, length);
	text->used += length;
	return true;
}

/* A loop, taken through CSV to what `check` says of it. */
struct marked {
	const struct rb_practice_book *book;
	struct rb_findings findings;
	const struct rb_hand_check *check;
};

static struct text text;
static struct rb_sink sink;

static struct marked mark(struct rb_arena *arena,
			  const struct rb_practice_options *options, bool answers)
{
	const struct rb_problem *problem = rb_practice(arena, options, 1);
	const struct rb_practice_sheet sheet = { arena, options, &problem, 1, answers };
	struct marked m = { .book = problem->book };
	const struct rb_book *book;
	const struct rb_reduced *reduced;

	text.used = 0;
	rb_sink_init(&sink, take, &text);
	assert_true(rb_practice_write_csv(&sink, &sheet));
	assert_true(rb_sink_flush(&sink));
	rb_findings_init(&m.findings, arena, "sheet.csv");
	book = rb_book_read(arena, &m.findings, text.bytes, text.used);
	reduced = book ? rb_reduce(arena, &m.findings, book) : NULL;
	m.check = reduced ? rb_hand_check(arena, &m.findings, reduced) : NULL;
	return m;
}

static struct rb_practice_options options_of(uint64_t seed, bool plant)
{
	return (struct rb_practice_options){
		.kind = RB_PRACTICE_LOOP,
		.seed = seed,
		.unit = units[seed % 5],
		.fraction = 8 << seed / 5 % 4,
		.inverted = seed % 3 == 0,
		.plant = plant,
	};
}

static void complain(const char *what, uint64_t seed, const struct marked *m)
{
	print_error("seed %llu: %s\n", (unsigned long long)seed, what);
	for (size_t i = 0; i < m->findings.count; i++)
		print_error("  line %u: %s\n", m->findings.item[i]->place.line,
			    rb_code_name(m->findings.item[i]->code));
	print_error("%.*s\n", (int)text.used, text.bytes);
}

/* A key passes, and nobody warns of anything; an inverted rod is noted. */
static void a_key_passes(void **state)
{
	int wrong = 0;

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS && wrong < 3; seed++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		const struct rb_practice_options options = options_of(seed, false);
		struct marked m = mark(arena, &options, true);

		if (!m.check || m.findings.of_severity[RB_FAILED] ||
		    m.findings.of_severity[RB_WARNING] ||
		    rb_hand_count(m.check, RB_HAND_EMPTY) ||
		    rb_hand_count(m.check, RB_HAND_RIGHT) != m.check->cells) {
			complain("the key does not pass", seed, &m);
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* The cause that is told for the wrong cell. */
static enum rb_hand_cause cause_of(const struct marked *m)
{
	for (uint32_t i = 0; m->check && i < m->check->cells; i++)
		if (m->check->cell[i].state == RB_HAND_WRONG)
			return m->check->cell[i].cause;
	return RB_CAUSE_UNKNOWN;
}

/* The only wrong cell of a check. */
static bool is_found(const struct marked *m)
{
	for (uint32_t i = 0; i < m->check->cells; i++) {
		const struct rb_hand_cell *cell = &m->check->cell[i];
		bool here = cell->row == m->book->slip_row &&
			    cell->column == m->book->slip_column;

		if ((cell->state == RB_HAND_WRONG) != here)
			return false;
	}
	return rb_hand_count(m->check, RB_HAND_WRONG) == 1;
}

static const struct rb_finding *failure_of(const struct marked *m)
{
	for (size_t i = 0; i < m->findings.count; i++)
		if (m->findings.item[i]->code == RB_CODE_HAND_VALUE)
			return m->findings.item[i];
	return NULL;
}

/* Two slips may give the same number: then either may be told as the likely one. */
static void a_slip_is_found(void **state)
{
	int wrong = 0, named = 0;

	(void)state;
	for (uint64_t seed = 0; seed < SEEDS && wrong < 3; seed++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		const struct rb_practice_options options = options_of(seed, true);
		struct marked m = mark(arena, &options, false);
		const struct rb_finding *failure = failure_of(&m);

		named += cause_of(&m) == m.book->slip;
		if (!m.check || !is_found(&m) || !failure ||
		    m.findings.of_severity[RB_FAILED] != 1 ||
		    failure->place.line != rb_practice_line(m.book->slip_row)) {
			complain("the slip is not found", seed, &m);
			print_error("  planted in row %u, column %d, slip %d\n",
				    m.book->slip_row, m.book->slip_column, m.book->slip);
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
	assert_in_range(named, SEEDS * 97 / 100, SEEDS);
}

/* A sheet is a book of which nothing is worked out yet. */
static void a_sheet_is_empty(void **state)
{
	int wrong = 0;

	(void)state;
	for (uint64_t seed = 0; seed < 100 && wrong < 3; seed++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		const struct rb_practice_options options = options_of(seed, false);
		struct marked m = mark(arena, &options, false);

		if (!m.check || m.findings.of_severity[RB_FAILED] ||
		    rb_hand_count(m.check, RB_HAND_EMPTY) != m.check->cells) {
			complain("the sheet is no empty book", seed, &m);
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_key_passes),
		cmocka_unit_test(a_slip_is_found),
		cmocka_unit_test(a_sheet_is_empty),
	};

	return cmocka_run_group_tests_name("practice and check", tests, NULL, NULL);
}
