/* SPDX-License-Identifier: MIT */
/* Sums along chains of setups. */
#include "level/totals.h"

#include "level/kind.h"

static const struct rb_totals nothing = { { 0 }, { 0 }, { 0 }, { 0 }, { 0 }, { 0 } };

static rb_length both(rb_length a, rb_length b)
{
	return rb_length_given(a) && rb_length_given(b) ? rb_length_add(a, b)
							: rb_length_none();
}

/* Sums are added to in place: a long chain has one such addition for each setup. */
static void add(struct rb_totals *t, const struct rb_totals *more)
{
	t->backsight = rb_length_add(t->backsight, more->backsight);
	t->foresight = rb_length_add(t->foresight, more->foresight);
	t->rise = rb_length_add(t->rise, more->rise);
	t->fall = rb_length_add(t->fall, more->fall);
	t->backsight_length = both(t->backsight_length, more->backsight_length);
	t->foresight_length = both(t->foresight_length, more->foresight_length);
}

enum way { FORTH = 1, BACK = -1 };

/* One reading to the next, or the same step taken back: lower on the rod is higher on the
 * ground. */
static void step(struct rb_totals *t, rb_length from, rb_length to, enum way way)
{
	rb_length up = rb_length_sub(from, to);

	if (up.nm > 0)
		t->rise.nm += way * up.nm;
	else
		t->fall.nm -= way * up.nm;
}

static uint32_t row_of_backsight(const struct rb_reduced *reduced, uint32_t setup)
{
	return reduced->shot[reduced->setup[setup].shot].backsight_row;
}

static rb_length backsight_of(const struct rb_reduced *reduced, uint32_t setup)
{
	return rb_book_sight(reduced->book, RB_BACKSIGHT,
			     row_of_backsight(reduced, setup));
}

/* Add rise and fall over the sights of a setup in the order booked, but one that is left
 * out; the last reading. */
static rb_length add_sights(struct rb_totals *t, const struct rb_reduced *reduced,
			    uint32_t setup, uint32_t left_out)
{
	rb_length last = backsight_of(reduced, setup);

	for (uint32_t i = rb_first_sight(reduced, setup);
	     i < rb_end_of_sights(reduced, setup); i++) {
		rb_length reading;

		if (i == left_out || reduced->shot[i].booked == RB_BOOKED_NOWHERE)
			continue;
		reading = rb_shot_reading(reduced, i);
		step(t, last, reading, FORTH);
		last = reading;
	}
	return last;
}

/* The reading of the nearest sight of the setup on one side of a shot; none if it is the
 * last on that side. */
static rb_length neighbour(const struct rb_reduced *reduced, uint32_t setup,
			   uint32_t shot, bool after)
{
	uint32_t first = rb_first_sight(reduced, setup),
		 end = rb_end_of_sights(reduced, setup);

	for (uint32_t i = after ? shot + 1 : shot - 1; i >= first && i < end;
	     i += after ? 1U : UINT32_MAX)
		if (reduced->shot[i].booked != RB_BOOKED_NOWHERE)
			return rb_shot_reading(reduced, i);
	return after ? rb_length_none() : backsight_of(reduced, setup);
}

static rb_length last_reading(const struct rb_reduced *reduced, uint32_t setup)
{
	uint32_t i = rb_end_of_sights(reduced, setup);

	while (--i >= rb_first_sight(reduced, setup))
		if (reduced->shot[i].booked != RB_BOOKED_NOWHERE)
			return rb_shot_reading(reduced, i);
	return backsight_of(reduced, setup);
}

/* Add rise and fall of a setup that turns on `shot`, wherever it was booked: the turning
 * sight comes last. */
static void add_rise_and_fall(struct rb_totals *t, const struct rb_chains *chains,
			      uint32_t setup, uint32_t shot)
{
	const struct rb_reduced *reduced = chains->reduced;
	rb_length reading = rb_shot_reading(reduced, shot), before, after;

	if (!chains->within) {
		step(t, add_sights(t, reduced, setup, shot), reading, FORTH);
		return;
	}
	add(t, &chains->within[setup]);
	after = neighbour(reduced, setup, shot, true);
	if (!rb_length_given(after))
		return;
	before = neighbour(reduced, setup, shot, false);
	step(t, before, reading, BACK);
	step(t, reading, after, BACK);
	step(t, before, after, FORTH);
	step(t, last_reading(reduced, setup), reading, FORTH);
}

/* Add what a setup has that turns on (or ends with) `shot`. */
static void add_setup(struct rb_totals *t, const struct rb_chains *chains, uint32_t shot)
{
	const struct rb_reduced *reduced = chains->reduced;

	add_rise_and_fall(t, chains, reduced->shot[shot].setup, shot);
	t->foresight = rb_length_add(t->foresight, rb_shot_reading(reduced, shot));
	t->foresight_length = both(t->foresight_length,
				   rb_book_value(reduced->book, RB_FORESIGHT_DISTANCE,
						 reduced->shot[shot].row));
}

static void add_backsight(struct rb_totals *t, const struct rb_reduced *reduced,
			  uint32_t setup)
{
	t->backsight = rb_length_add(t->backsight, backsight_of(reduced, setup));
	t->backsight_length = both(t->backsight_length,
				   rb_book_value(reduced->book, RB_BACKSIGHT_DISTANCE,
						 row_of_backsight(reduced, setup)));
}

bool rb_chains_init(struct rb_chains *chains, struct rb_arena *arena,
		    const struct rb_reduced *reduced, bool shared)
{
	*chains = (struct rb_chains){ .reduced = reduced };
	if (!shared)
		return true;
	chains->before = rb_arena_take(arena, reduced->setups, sizeof *chains->before);
	chains->within = rb_arena_take(arena, reduced->setups, sizeof *chains->within);
	if (!chains->before || !chains->within)
		return false;
	for (uint32_t i = 0; i < reduced->setups; i++) {
		uint32_t via = reduced->setup[i].via;

		chains->within[i] = chains->before[i] = nothing;
		add_sights(&chains->within[i], reduced, i, RB_NO_SHOT);
		if (via != RB_NO_SHOT) {
			chains->before[i] = chains->before[reduced->shot[via].setup];
			add_setup(&chains->before[i], chains, via);
		}
		add_backsight(&chains->before[i], reduced, i);
	}
	return true;
}

struct rb_totals rb_chain_totals(const struct rb_chains *chains, uint32_t end)
{
	const struct rb_reduced *reduced = chains->reduced;
	struct rb_totals t = nothing;
	uint32_t setup = reduced->shot[end].setup;

	add_setup(&t, chains, end);
	if (chains->before) {
		add(&t, &chains->before[setup]);
		return t;
	}
	for (;;) {
		uint32_t via = reduced->setup[setup].via;

		add_backsight(&t, reduced, setup);
		if (via == RB_NO_SHOT)
			return t;
		add_setup(&t, chains, via);
		setup = reduced->shot[via].setup;
	}
}
