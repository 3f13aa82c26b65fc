/* SPDX-License-Identifier: MIT */
/*
 * test_properties.c - what holds for every book.
 *
 * Thousands of random runs of levels, each written down in several ways: columns in
 * another order, another separator, another encoding, turning points on one row or on
 * two.  None of it may change a number.  And in each the three sums agree.
 */
#include "levels.h"

#include <stdlib.h>

#define RUNS   2000
#define SETUPS 12

/* SplitMix64 (Steele, Lea and Flood 2014, as published by S. Vigna): the same numbers
 * everywhere. */
static uint64_t draw(uint64_t *seed)
{
	uint64_t z = (*seed += UINT64_C(0x9E3779B97F4A7C15));

	z = (z ^ z >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
	z = (z ^ z >> 27) * UINT64_C(0x94D049BB133111EB);
	return z ^ z >> 31;
}

static int pick(uint64_t *seed, int count)
{
	return (int)(draw(seed) % (uint64_t)count);
}

/* Cells of a row: point, known, backsight, intermediate, foresight; in hundredths of a
 * foot, 0: empty. */
struct row {
	char point[16];
	int cell[4];
};

struct run {
	struct row row[SETUPS * 4 + 2];
	int rows;
};

enum { KNOWN, BACK, MIDDLE, FORE };

static struct row *add(struct run *run, const char *name, int number)
{
	struct row *row = &run->row[run->rows++];

	memset(row, 0, sizeof *row);
	snprintf(row->point, sizeof row->point, "%s-%d", name, number);
	return row;
}

static struct run random_run(uint64_t *seed)
{
	struct run run = { .rows = 0 };
	struct row *row = add(&run, "BM", 1);
	int setups = 1 + pick(seed, SETUPS);

	row->cell[KNOWN] = 10000;
	row->cell[BACK] = 1 + pick(seed, 1300);
	for (int i = 0; i < setups; i++) {
		for (int side = pick(seed, 3); side > 0; side--)
			add(&run, "S", run.rows)->cell[MIDDLE] = pick(seed, 2600) - 1300;
		row = add(&run, i + 1 < setups ? "TP" : "BM", i + 1 < setups ? i : 1);
		row->cell[FORE] = 1 + pick(seed, 1300);
		if (i + 1 < setups)
			row->cell[BACK] = 1 + pick(seed, 1300);
	}
	return run;
}

/* How a run is written down. */
struct way {
	char separator;
	const char *line_end, *mark; /* mark: a byte order mark, or "" */
	int first;                   /* the columns are turned by so many */
	bool two_rows;               /* a turning point's backsight on a row of its own */
};

static const struct way plain = { ',', "\n", "", 0, false };

static struct way random_way(uint64_t *seed)
{
	static const char *const ends[] = { "\n", "\r\n", "\r" };

	return (struct way){ ",;\t"[pick(seed, 3)], ends[pick(seed, 3)],
			     pick(seed, 2) ? "\xEF\xBB\xBF" : "", pick(seed, 5),
			     pick(seed, 2) != 0 };
}

static void put_cell(struct lines *out, const struct row *row, int column, char point)
{
	int v;

	if (column == 0) {
		say(out, "%s", row->point);
		return;
	}
	v = row->cell[column - 1];
	if (v)
		say(out, "%s%d%c%02d", v < 0 ? "-" : "", abs(v) / 100, point,
		    abs(v) % 100);
}

static void put_row(struct lines *out, const struct row *row, const struct way *way)
{
	for (int i = 0; i < 5; i++) {
		if (i)
			say(out, "%c", way->separator);
		put_cell(out, row, (i + way->first) % 5,
			 way->separator == ';' ? ',' : '.');
	}
	say(out, "%s", way->line_end);
}

static void write_run(struct lines *out, const struct run *run, const struct way *way)
{
	static const char *const headings[] = { "Point", "BM", "B.S.", "I.S.", "F.S." };

	out->used = 0;
	say(out, "%stolerance%c100 ft%s", way->mark, way->separator, way->line_end);
	for (int i = 0; i < 5; i++)
		say(out, "%s%c", headings[(i + way->first) % 5],
		    i < 4 ? way->separator : ' ');
	say(out, "%s", way->line_end);
	for (int i = 0; i < run->rows; i++) {
		struct row row = run->row[i], back = row;

		if (way->two_rows && row.cell[BACK] && row.cell[FORE]) {
			row.cell[BACK] = 0;
			put_row(out, &row, way);
			back.cell[FORE] = 0;
			put_row(out, &back, way);
		} else {
			put_row(out, &row, way);
		}
	}
}

static int differs(const struct levels *a, const struct levels *b)
{
	if (!a->adjusted || !b->adjusted || a->reduced->shots != b->reduced->shots)
		return 1;
	for (uint32_t i = 0; i < a->reduced->shots; i++) {
		const struct rb_shot *x = &a->reduced->shot[i], *y = &b->reduced->shot[i];

		if (x->elevation.nm != y->elevation.nm || x->kind != y->kind ||
		    rb_shot_adjusted(a->adjusted, i).nm !=
			    rb_shot_adjusted(b->adjusted, i).nm ||
		    strcmp(rb_book_typed(a->book, x->row),
			   rb_book_typed(b->book, y->row)) != 0)
			return 1;
	}
	return 0;
}

/* Rises less falls, backsights less foresights, last less first; and the end lands on the
 * known elevation. */
static int sums_disagree(const struct levels *l)
{
	int wrong = !l->adjusted;

	for (uint32_t i = 0; !wrong && i < l->sections->sections; i++) {
		const struct rb_section *s = &l->sections->section[i];
		int64_t gained = s->finish.nm - s->start.nm;

		wrong |= s->sum_backsight.nm - s->sum_foresight.nm != gained;
		wrong |= s->sum_rise.nm - s->sum_fall.nm != gained;
		wrong |= s->sum_rise.nm < 0 || s->sum_fall.nm < 0;
		wrong |= rb_shot_adjusted(l->adjusted, s->end).nm != 100 * RB_FOOT;
	}
	return wrong;
}

static void writing_changes_nothing(void **state)
{
	uint64_t seed = 20260317;
	int wrong = 0;

	(void)state;
	for (int i = 0; i < RUNS && wrong < 5; i++) {
		struct run run = random_run(&seed);
		struct way way = random_way(&seed);
		struct lines text = { .used = 0 };
		struct levels a, b;

		write_run(&text, &run, &plain);
		a = levels_of(text.text, false);
		write_run(&text, &run, &way);
		b = levels_of(text.text, false);
		if (differs(&a, &b) || sums_disagree(&a) || sums_disagree(&b)) {
			print_error("run %d:\n%s\n", i, text.text);
			wrong++;
		}
		rb_arena_free(a.arena);
		rb_arena_free(b.arena);
	}
	assert_int_equal(wrong, 0);
}

/* ---- every allocation may fail ---- */

static int allowed;

static void *failing_resize(void *old, size_t size)
{
	return allowed-- > 0 ? realloc(old, size) : NULL;
}

static bool reduces(const char *csv)
{
	const struct rb_allocator failing = { failing_resize, free };
	struct rb_arena *arena = rb_arena_new(&failing);
	struct rb_findings findings;
	struct rb_judging judging;
	struct rb_book *book;
	struct rb_reduced *reduced;
	struct rb_sections *sections;
	bool done;

	if (!arena)
		return false;
	rb_findings_init(&findings, arena, "book.csv");
	book = rb_book_read(arena, &findings, csv, strlen(csv));
	reduced = book ? rb_reduce(arena, &findings, book) : NULL;
	if (book)
		judging = rb_judging_of(book);
	sections = reduced ? rb_sections(arena, &findings, reduced, &judging) : NULL;
	done = sections && rb_adjust(arena, &findings, sections);
	assert_int_equal(done, !findings.out_of_memory);
	rb_arena_free(arena);
	return done;
}

/* Fail the first allocation, then the second, and so on until nothing fails. */
static void survives_running_out_of_memory(void **state)
{
	uint64_t seed = 7;
	struct run run = random_run(&seed);
	struct lines text = { .used = 0 };
	int failures = 0;

	(void)state;
	write_run(&text, &run, &plain);
	for (;; failures++) {
		allowed = failures;
		if (reduces(text.text))
			break;
	}
	assert_true(failures > 10);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writing_changes_nothing),
		cmocka_unit_test(survives_running_out_of_memory),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
