/* SPDX-License-Identifier: MIT */
/* practice_book.c - a loop over made-up ground, booked and worked out by hand. */
#include "level/practice_book.h"

#include <stdio.h>

#define LEAST_SETUPS  2
#define MOST_SETUPS   5
#define SIDES_A_SETUP 2

/* In feet: the ground about the benchmark, the line of sight over it, an inverted rod. */
#define GROUND      3
#define SIGHT_LEAST 1
#define SIGHT_MOST  6
#define UPSIDE_DOWN 6

/* By unit: what is allowed on closing.  A scenario of our own. */
static const int64_t allowed[] = {
	[RB_FEET] = RB_FOOT / 50,
	[RB_INCHES] = RB_INCH / 4,
	[RB_FEET_INCHES] = RB_INCH / 4,
	[RB_METRES] = 5 * RB_MILLIMETRE,
	[RB_MILLIMETRES] = 5 * RB_MILLIMETRE,
};

static const char *const upright[] = {
	"cleanout", "floor at the stack", "ground at the corner",
	"rim",      "bend, invert",       "trench bottom",
};

/* A loop on its way. */
struct maker {
	const struct rb_practice_options *options;
	struct rb_random *random;
	struct rb_practice_book *book;
	int64_t step;
	int setups, sides; /* sides: intermediate sights so far */
	rb_length height;  /* of the standing setup */
};

static int64_t between(struct maker *m, int64_t low, int64_t high)
{
	return rb_random_between(m->random, low, high);
}

/* A length of whole steps between so many feet. */
static rb_length feet(struct maker *m, int64_t low, int64_t high)
{
	return rb_length_of(
		m->step * between(m, low * RB_FOOT / m->step, high * RB_FOOT / m->step));
}

static struct rb_practice_row *new_row(struct maker *m)
{
	struct rb_practice_row *row = &m->book->row[m->book->rows++];

	*row = (struct rb_practice_row){
		.remark = "",
		.known = rb_length_none(),
		.backsight = rb_length_none(),
		.intermediate = rb_length_none(),
		.foresight = rb_length_none(),
		.height = rb_length_none(),
		.elevation = rb_length_none(),
	};
	return row;
}

/* A backsight whose last places are no inches and no tenths, so that nobody asks whether
 * 5.11 is 5 ft 11 in. */
static bool is_plain(const struct maker *m, rb_length reading)
{
	int64_t hundredths = reading.nm % RB_FOOT / (RB_FOOT / 100);

	return m->options->unit != RB_FEET || (hundredths > 11 && hundredths % 10 != 0);
}

/* Set up over the higher of the two points, and read back. */
static void set_up(struct maker *m, struct rb_practice_row *row, rb_length elevation,
		   rb_length next)
{
	rb_length higher = rb_length_compare(elevation, next) > 0 ? elevation : next;

	do {
		m->height = rb_length_add(higher, feet(m, SIGHT_LEAST, SIGHT_MOST));
		row->backsight = rb_length_sub(m->height, elevation);
	} while (!is_plain(m, row->backsight) ||
		 (rb_length_given(row->foresight) &&
		  row->backsight.nm == row->foresight.nm));
	row->height = m->height;
}

static void add_side(struct maker *m, bool inverted)
{
	struct rb_practice_row *row = new_row(m);
	int64_t last = sizeof upright / sizeof *upright - 1;

	snprintf(row->point, sizeof row->point, "P-%d", ++m->sides);
	if (inverted) {
		row->remark = "inside top, inverted rod";
		row->intermediate = rb_length_negate(feet(m, SIGHT_LEAST, UPSIDE_DOWN));
	} else {
		row->remark = upright[between(m, 0, last)];
		row->intermediate = feet(m, SIGHT_LEAST, INT64_C(2) * SIGHT_MOST);
	}
	row->elevation = rb_length_sub(m->height, row->intermediate);
}

/* The elevation of the next turning point; the last is the benchmark again, as far off as
 * careful work leaves it. */
static rb_length next_ground(struct maker *m, int setup, rb_length benchmark)
{
	if (setup + 1 < m->setups)
		return rb_length_add(benchmark, feet(m, -GROUND, GROUND));
	m->book->misclosure = rb_length_of(m->step * between(m, -2, 2));
	return rb_length_add(benchmark, m->book->misclosure);
}

static void fill(struct maker *m)
{
	struct rb_practice_row *row = new_row(m);
	rb_length benchmark = feet(m, 95, 105), elevation = benchmark;

	snprintf(row->point, sizeof row->point, "BM-1");
	row->known = benchmark;
	row->remark = "benchmark";
	for (int setup = 0; setup < m->setups; setup++) {
		rb_length next = next_ground(m, setup, benchmark);
		int64_t sides = between(m, 0, SIDES_A_SETUP);

		set_up(m, row, elevation, next);
		if (setup == 0 && m->options->inverted)
			add_side(m, true);
		while (sides-- > 0)
			add_side(m, false);
		row = new_row(m);
		if (setup + 1 < m->setups)
			snprintf(row->point, sizeof row->point, "TP-%d", setup + 1);
		else
			snprintf(row->point, sizeof row->point, "BM-1");
		row->foresight = rb_length_sub(m->height, next);
		row->elevation = elevation = next;
	}
}

struct rb_practice_book *rb_practice_book(struct rb_arena *arena,
					  const struct rb_practice_options *options,
					  struct rb_random *random)
{
	struct rb_practice_book *book = rb_arena_take_clear(arena, 1, sizeof *book);
	struct maker m = { options,         random, book, rb_practice_step(options),
			   options->setups, 0,      { 0 } };

	if (!m.setups)
		m.setups = (int)rb_random_between(random, LEAST_SETUPS, MOST_SETUPS);
	if (book)
		book->row =
			rb_arena_take(arena, (size_t)m.setups * (1 + SIDES_A_SETUP) + 2,
				      sizeof *book->row);
	if (!book || !book->row)
		return NULL;
	book->unit = options->unit;
	book->tolerance = rb_length_of(allowed[options->unit]);
	fill(&m);
	return book;
}
