/* SPDX-License-Identifier: MIT */
/*
 * Chains of setups, followed back from their ends: rules 5 and 8 of docs/formats.md.
 *
 * Every walk stops at the first setup that was walked before, so all of them together
 * take no more steps than there are setups.
 */
#include "level/chain.h"

#include <stdlib.h>

#include "level/kind.h"
#include "notes/seek.h"

#define WALKED (RB_NO_SECTION - 1) /* on the way: belongs to a chain already */

struct finder {
	const struct rb_reduced *reduced;
	uint32_t *of_setup;
	uint32_t *end; /* shots */
	uint32_t ends;
	bool shared;
	bool spurs; /* setups were walked that lead to no closing: open ends or spurs */
};

static bool has_sights(const struct rb_reduced *reduced, uint32_t setup)
{
	for (uint32_t i = rb_first_sight(reduced, setup);
	     i < rb_end_of_sights(reduced, setup); i++)
		if (reduced->shot[i].booked != RB_BOOKED_NOWHERE)
			return true;
	return false;
}

/* Mark a chain, back from a setup to its root or to the first setup marked before; that
 * setup, or RB_NO_SETUP at the root.  `*hung` is the setup of the chain that hangs on it.
 */
static uint32_t mark(struct finder *f, uint32_t setup, uint32_t section, uint32_t *hung)
{
	*hung = RB_NO_SETUP;
	while (f->of_setup[setup] == RB_NO_SECTION) {
		uint32_t via = f->reduced->setup[setup].via;

		f->of_setup[setup] = section;
		*hung = setup;
		if (via == RB_NO_SHOT)
			return RB_NO_SETUP;
		setup = f->reduced->shot[via].setup;
	}
	return setup;
}

static void find_closings(struct finder *f)
{
	uint32_t hung;

	for (uint32_t i = 0; i < f->reduced->shots; i++) {
		if (!rb_shot_closes(f->reduced, i))
			continue;
		f->end[f->ends++] = i;
		if (mark(f, f->reduced->shot[i].setup, f->ends - 1, &hung) != RB_NO_SETUP)
			f->shared = true;
	}
}

/* The sight with which a chain ends that reaches nothing known: the last foresight of its
 * last setup.  From a setup without one only side shots were taken, so the chain ends
 * with the sight on which that setup stands; and where there is none either, with the
 * last sight. */
static uint32_t last_sight(const struct rb_reduced *reduced, uint32_t setup)
{
	uint32_t last = RB_NO_SHOT, last_foresight = RB_NO_SHOT;

	for (uint32_t i = rb_first_sight(reduced, setup);
	     i < rb_end_of_sights(reduced, setup); i++) {
		if (reduced->shot[i].booked != RB_BOOKED_NOWHERE)
			last = i;
		if (reduced->shot[i].booked == RB_BOOKED_FORESIGHT)
			last_foresight = i;
	}
	if (last_foresight != RB_NO_SHOT)
		return last_foresight;
	return reduced->setup[setup].via != RB_NO_SHOT ? reduced->setup[setup].via : last;
}

/* Does the run go on from a sight taken behind the one that closed a section, with the
 * next setup?  Then it is no spur but the next section; one that hangs there later is. */
static bool goes_on_behind_closing(const struct rb_reduced *reduced, uint32_t setup,
				   uint32_t hung)
{
	if (hung != setup + 1)
		return false;
	for (uint32_t i = rb_first_sight(reduced, setup); i < reduced->setup[hung].via;
	     i++)
		if (rb_shot_closes(reduced, i))
			return true;
	return false;
}

/* Chains that reach no known point, the last first: where two part, the later is the line
 * and the earlier a spur.  A setup on which a later one hangs is marked by then. */
static void find_open_ends(struct finder *f)
{
	for (uint32_t i = f->reduced->setups; i-- > 0;) {
		uint32_t hung, met;

		if (f->of_setup[i] != RB_NO_SECTION || !has_sights(f->reduced, i))
			continue;
		f->spurs = true;
		met = mark(f, i, WALKED, &hung);
		if (met != RB_NO_SETUP && !goes_on_behind_closing(f->reduced, met, hung))
			continue;
		f->shared |= met != RB_NO_SETUP;
		f->end[f->ends++] = last_sight(f->reduced, i);
	}
}

static int by_number(const void *a, const void *b)
{
	uint32_t x = *(const uint32_t *)a, y = *(const uint32_t *)b;

	return (x > y) - (x < y);
}

static void unmark_all(struct finder *f)
{
	for (uint32_t i = 0; i < f->reduced->setups; i++)
		f->of_setup[i] = RB_NO_SECTION;
}

/* Give every setup its section: the first that closes, before any that stays open. */
static void settle(struct finder *f, struct rb_sections *sections)
{
	uint32_t hung;

	unmark_all(f);
	for (int open = 0; open < 2; open++)
		for (uint32_t i = 0; i < sections->sections; i++)
			if (rb_shot_closes(f->reduced, sections->section[i].end) != open)
				mark(f, sections->section[i].last, i, &hung);
}

static bool take_sections(struct finder *f, struct rb_sections *sections,
			  struct rb_arena *arena)
{
	qsort(f->end, f->ends, sizeof *f->end, by_number);
	sections->sections = f->ends;
	sections->section = rb_arena_take_clear(arena, (size_t)f->ends + 1,
						sizeof *sections->section);
	if (!sections->section)
		return false;
	for (uint32_t i = 0; i < f->ends; i++) {
		sections->section[i].end = f->end[i];
		sections->section[i].last = f->reduced->shot[f->end[i]].setup;
	}
	if (f->spurs) /* else the marks are the sections' already */
		settle(f, sections);
	return true;
}

bool rb_chains_find(struct rb_sections *sections, struct rb_arena *arena, bool *shared)
{
	struct finder f = { .reduced = sections->reduced };
	struct rb_arena *scratch = rb_arena_new(rb_arena_allocator(arena));
	bool found = false;

	if (!scratch)
		return false;
	sections->of_setup = rb_arena_take(arena, (size_t)f.reduced->setups + 1,
					   sizeof *sections->of_setup);
	f.of_setup = sections->of_setup;
	f.end = rb_arena_take(scratch, (size_t)f.reduced->shots + f.reduced->setups + 1,
			      sizeof *f.end);
	if (f.of_setup && f.end) {
		unmark_all(&f);
		find_closings(&f);
		find_open_ends(&f);
		*shared = f.shared;
		found = take_sections(&f, sections, arena);
	}
	rb_arena_free(scratch);
	return found;
}

const struct rb_section *rb_section_ending(const struct rb_sections *sections,
					   uint32_t shot)
{
	uint32_t at =
		rb_seek(sections->section, sections->sections, sizeof *sections->section,
			offsetof(struct rb_section, end), shot);

	return at < sections->sections && sections->section[at].end == shot
		       ? &sections->section[at]
		       : NULL;
}
