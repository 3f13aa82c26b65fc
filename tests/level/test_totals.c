/* SPDX-License-Identifier: MIT */
/* test_totals.c - sums along chains, shared or not. */
#include "levels.h"

#include "level/totals.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "intermediate sights count in rise and fall",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,2,\n"
	  "R,,,7,\n"
	  "A,,,,4\n",
	  "A>A 1 setups 4.00 4.00 up 5.00 down 5.00 off 0.00 not judged\n", false },
	{ "the turning sight is taken last, wherever it is booked",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,,6\n"
	  "S,,,2,\n"
	  "T,,3,,\n"
	  "A,,,,1\n",
	  "A>A 2 setups 7.00 7.00 up 4.00 down 4.00 off 0.00 not judged\n", false },
	{ "shared beginnings",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,,6\n"
	  "S,,,2,\n"
	  "B,98,,,6\n"
	  "R,,,1,\n"
	  "T,,3,,\n"
	  "B,,,,3\n"
	  "U,,,,2\n"
	  "U,,5,,\n"
	  "A,,,,4\n",
	  "A>B 1 setups 4.00 6.00 up 5.00 down 7.00 off 0.00 closes, adjusted\n"
	  "A>B 2 setups 7.00 9.00 up 8.00 down 10.00 off 0.00 closes, adjusted\n"
	  "A>A 3 setups 12.00 12.00 up 9.00 down 9.00 off 0.00 closes, adjusted\n", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_sections), 0);
}

/* ---- random chains ---- */

static unsigned next_random(uint64_t *seed)
{
	*seed = *seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
	return (unsigned)(*seed >> 33);
}

/* A book whose setups hang on any point sighted before, with a foresight first and then
 * intermediate sights. */
static void write_random(struct lines *csv, uint64_t *seed)
{
	unsigned setups = 2 + next_random(seed) % 6, points = 0;

	say(csv, "point,known elevation,bs,is,fs,bs dist,fs dist\nBM,100,,,,,\n");
	for (unsigned i = 0; i < setups; i++) {
		unsigned on = points ? next_random(seed) % (points + 1) : 0;
		unsigned sights = 1 + next_random(seed) % 4;

		if (on)
			say(csv, "P%u,,%u.%02u,,,%u,\n", on, next_random(seed) % 9,
			    next_random(seed) % 100, next_random(seed) % 90);
		else
			say(csv, "BM,,%u.%02u,,,%u,\n", next_random(seed) % 9,
			    next_random(seed) % 100, next_random(seed) % 90);
		for (unsigned j = 0; j < sights; j++)
			say(csv, j ? "P%u,,,%u.%02u,,,%u\n" : "P%u,,,,%u.%02u,,%u\n",
			    ++points, next_random(seed) % 9, next_random(seed) % 100,
			    next_random(seed) % 90);
	}
}

static void add_step(struct rb_totals *t, int64_t from, int64_t to)
{
	if (from > to)
		t->rise.nm += from - to;
	else
		t->fall.nm += to - from;
}

/* One setup by its meaning: its backsight, its other sights in the order booked, then the
 * one with which the chain goes on. */
static void add_setup(struct rb_totals *t, const struct rb_reduced *r, uint32_t shot)
{
	uint32_t setup = r->shot[shot].setup;
	uint32_t row = r->shot[r->setup[setup].shot].backsight_row;
	int64_t reading = rb_book_sight(r->book, RB_BACKSIGHT, row).nm;

	t->backsight.nm += reading;
	t->backsight_length.nm += rb_book_value(r->book, RB_BACKSIGHT_DISTANCE, row).nm;
	for (uint32_t i = 0; i < r->shots; i++) {
		if (i == shot || r->shot[i].setup != setup ||
		    r->shot[i].booked == RB_BOOKED_NOWHERE)
			continue;
		add_step(t, reading, rb_shot_reading(r, i).nm);
		reading = rb_shot_reading(r, i).nm;
	}
	add_step(t, reading, rb_shot_reading(r, shot).nm);
	t->foresight.nm += rb_shot_reading(r, shot).nm;
	t->foresight_length.nm +=
		rb_book_value(r->book, RB_FORESIGHT_DISTANCE, r->shot[shot].row).nm;
}

static bool same_totals(struct rb_totals a, struct rb_totals b)
{
	return a.backsight.nm == b.backsight.nm && a.foresight.nm == b.foresight.nm &&
	       a.rise.nm == b.rise.nm && a.fall.nm == b.fall.nm &&
	       a.backsight_length.nm == b.backsight_length.nm &&
	       a.foresight_length.nm == b.foresight_length.nm;
}

/* The chain that ends with each sight: summed by a walk, by sums up to every setup, and
 * plainly. */
static int wrong_chains(const struct levels *l, int *chains)
{
	const struct rb_reduced *r = l->reduced;
	struct rb_chains walked, shared;
	int wrong = 0;

	assert_true(rb_chains_init(&walked, l->arena, r, false));
	assert_true(rb_chains_init(&shared, l->arena, r, true));
	assert_null(walked.before);
	assert_non_null(shared.before);
	for (uint32_t end = 0; end < r->shots; end++) {
		struct rb_totals plain = { { 0 }, { 0 }, { 0 }, { 0 }, { 0 }, { 0 } };

		if (r->shot[end].booked == RB_BOOKED_NOWHERE)
			continue;
		for (uint32_t at = end; at != RB_NO_SHOT;
		     at = r->setup[r->shot[at].setup].via)
			add_setup(&plain, r, at);
		wrong += !same_totals(rb_chain_totals(&walked, end), plain);
		wrong += !same_totals(rb_chain_totals(&shared, end), plain);
		++*chains;
	}
	return wrong;
}

static void both_ways_are_a_plain_walk(void **state)
{
	uint64_t seed = 20260317;
	int wrong = 0, chains = 0;

	(void)state;
	for (int i = 0; i < 400; i++) {
		struct lines csv = { .used = 0 };
		struct levels l;
		int here;

		write_random(&csv, &seed);
		l = levels_of(csv.text, false);
		assert_non_null(l.reduced);
		here = wrong_chains(&l, &chains);
		if (here)
			print_error("book %d:\n%s\n", i, csv.text);
		wrong += here;
		rb_arena_free(l.arena);
	}
	assert_int_equal(wrong, 0);
	assert_true(chains > 2000);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(both_ways_are_a_plain_walk),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
