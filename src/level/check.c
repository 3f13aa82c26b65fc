/* SPDX-License-Identifier: MIT */
/* Checks: rules 6 and 7 of docs/formats.md. */
#include "level/check.h"

#include <stdlib.h>

#include "level/again.h"
#include "level/kind.h"

struct found {
	struct rb_check check;
	uint32_t section;
};

struct finder {
	const struct rb_reduced *reduced;
	struct found *found; /* NULL while they are only counted */
	uint32_t count;
	const uint32_t
		*nearest; /* by setup: the section to which a check there belongs */
};

/* By setup: its section, or that of the nearest setup before it on its chain.  There is
 * one wherever something was sighted: the first that goes on to an end marks the root. */
static void find_nearest(const struct rb_sections *sections, uint32_t *nearest)
{
	const struct rb_reduced *reduced = sections->reduced;

	for (uint32_t i = 0; i < reduced->setups; i++) {
		uint32_t via = reduced->setup[i].via;

		nearest[i] = sections->of_setup[i];
		if (nearest[i] == RB_NO_SECTION && via != RB_NO_SHOT)
			nearest[i] = nearest[reduced->shot[via].setup];
	}
}

static void add(struct finder *f, uint32_t shot, uint32_t against, rb_length elevation)
{
	const struct rb_shot *s = &f->reduced->shot[shot];

	if (f->found)
		f->found[f->count] = (struct found){
			{ shot, against, rb_length_sub(s->elevation, elevation) },
			f->nearest[s->setup],
		};
	f->count++;
}

static void on_again(void *self, uint32_t shot, uint32_t earlier)
{
	struct finder *f = self;

	add(f, shot, earlier, f->reduced->shot[earlier].elevation);
}

static bool find_all(struct finder *f, const struct rb_allocator *allocator)
{
	f->count = 0;
	for (uint32_t i = 0; i < f->reduced->shots; i++) {
		rb_length known;

		if (f->reduced->shot[i].booked != RB_BOOKED_INTERMEDIATE)
			continue;
		known = rb_shot_known(f->reduced, i);
		if (rb_length_given(known))
			add(f, i, RB_NO_SHOT, known);
	}
	return rb_each_again(f->reduced, allocator, on_again, f);
}

static int by_section(const void *a, const void *b)
{
	const struct found *x = a, *y = b;

	if (x->section != y->section)
		return x->section < y->section ? -1 : 1;
	return (x->check.shot > y->check.shot) - (x->check.shot < y->check.shot);
}

/* Is the difference within what its section allows?  True where that cannot be told. */
static bool is_within(const struct rb_sections *sections,
		      const struct rb_section *section, rb_length difference)
{
	const struct rb_tolerance *t = &sections->tolerance;

	if (!t->given ||
	    (rb_tolerance_needs_length(t) && !rb_length_given(section->length)))
		return true;
	return rb_tolerance_holds(t, difference, section->length, section->setups);
}

static void judge(const struct rb_sections *sections, const struct rb_section *section,
		  const struct rb_check *check, struct rb_findings *findings)
{
	const struct rb_reduced *reduced = sections->reduced;
	const struct rb_shot *shot = &reduced->shot[check->shot];
	enum rb_column column =
		shot->booked == RB_BOOKED_FORESIGHT ? RB_FORESIGHT : RB_INTERMEDIATE;
	struct rb_place place = rb_book_place(reduced->book, shot->row, column);
	struct rb_argument difference =
		rb_measure(check->difference, reduced->book->unit);

	if (is_within(sections, section, check->difference))
		return;
	if (check->against == RB_NO_SHOT)
		rb_findings_add(findings, RB_CODE_KNOWN_DIFFERS, place, difference,
				rb_nothing());
	else
		rb_findings_add(findings, RB_CODE_REACHED_AGAIN, place, difference,
				rb_line(rb_book_line(reduced->book,
						     reduced->shot[check->against].row)));
}

static void hand_out(struct rb_sections *sections, const struct found *found,
		     struct rb_findings *findings)
{
	for (uint32_t i = 0; i < sections->checks; i++) {
		struct rb_section *section = &sections->section[found[i].section];

		sections->check[i] = found[i].check;
		if (!section->checks++)
			section->first_check = i;
		judge(sections, section, &sections->check[i], findings);
	}
}

static bool find(struct rb_sections *sections, struct rb_arena *arena,
		 struct rb_findings *findings, struct rb_arena *scratch)
{
	const struct rb_allocator *allocator = rb_arena_allocator(arena);
	struct finder f = { .reduced = sections->reduced };
	uint32_t *nearest;

	if (!find_all(&f, allocator))
		return false;
	if (!f.count)
		return true;
	nearest = rb_arena_take(scratch, (size_t)f.reduced->setups + 1, sizeof *nearest);
	if (!nearest)
		return false;
	find_nearest(sections, nearest);
	f.nearest = nearest;
	f.found = rb_arena_take(scratch, (size_t)f.count + 1, sizeof *f.found);
	sections->check =
		rb_arena_take(arena, (size_t)f.count + 1, sizeof *sections->check);
	if (!f.found || !sections->check || !find_all(&f, allocator))
		return false;
	sections->checks = f.count;
	qsort(f.found, f.count, sizeof *f.found, by_section);
	hand_out(sections, f.found, findings);
	return true;
}

bool rb_checks_find(struct rb_sections *sections, struct rb_arena *arena,
		    struct rb_findings *findings)
{
	struct rb_arena *scratch;
	bool found;

	if (!sections->reduced->any_check && !sections->reduced->any_again)
		return true; /* as in most books */
	scratch = rb_arena_new(rb_arena_allocator(arena));
	found = scratch && find(sections, arena, findings, scratch);
	rb_arena_free(scratch);
	return found;
}
