/* SPDX-License-Identifier: MIT */
/* Spurs: rule 8 of docs/formats.md. */
#include "level/spur.h"

#include <string.h>

#include "level/chain.h"
#include "level/kind.h"

struct finder {
	struct rb_sections *sections;
	const struct rb_reduced *reduced;
	uint32_t *number; /* by setup: its spur, or RB_NO_SECTION */
};

static uint32_t setup_before(const struct rb_reduced *reduced, uint32_t setup)
{
	uint32_t via = reduced->setup[setup].via;

	return via == RB_NO_SHOT ? RB_NO_SETUP : reduced->shot[via].setup;
}

/* Side shots taken from the end of an open section are no spur: they end it. */
static bool is_off_the_chain(const struct rb_sections *sections, uint32_t setup)
{
	uint32_t via = sections->reduced->setup[setup].via;
	const struct rb_section *before;

	if (sections->of_setup[setup] != RB_NO_SECTION || via == RB_NO_SHOT)
		return false;
	before = rb_section_ending(sections, via);
	return !before || before->verdict != RB_OPEN;
}

/* A foresight of the setup on which the spur hangs that closes a section behind the one
 * on which it hangs.  Only for the setup that follows does that order matter: one that
 * hangs there later is a spur whatever the order. */
static uint32_t closing_behind(const struct rb_reduced *reduced, uint32_t setup)
{
	uint32_t via = reduced->setup[setup].via, before = reduced->shot[via].setup;

	for (uint32_t i = via + 1;
	     setup == before + 1 && i < rb_end_of_sights(reduced, before); i++)
		if (rb_shot_closes(reduced, i))
			return i;
	return RB_NO_SHOT;
}

/* Number the spurs, and count the sights of each. */
static void number_spurs(struct finder *f)
{
	struct rb_sections *sections = f->sections;

	for (uint32_t i = 0; i < f->reduced->setups; i++) {
		uint32_t before = setup_before(f->reduced, i);

		f->number[i] = RB_NO_SECTION;
		if (!is_off_the_chain(sections, i))
			continue;
		f->number[i] = f->number[before];
		if (f->number[i] != RB_NO_SECTION)
			continue;
		f->number[i] = sections->spurs;
		sections->spur[sections->spurs++] =
			(struct rb_spur){ .setup = i,
					  .closing = closing_behind(f->reduced, i) };
	}
	for (uint32_t i = 0; i < f->reduced->shots; i++) {
		const struct rb_shot *s = &f->reduced->shot[i];

		if (s->booked != RB_BOOKED_NOWHERE &&
		    f->number[s->setup] != RB_NO_SECTION)
			sections->spur[f->number[s->setup]].sights++;
	}
}

static void hand_out_sights(struct finder *f)
{
	struct rb_sections *sections = f->sections;
	uint32_t used = 0;

	for (uint32_t i = 0; i < sections->spurs; i++) {
		sections->spur[i].first = used;
		used += sections->spur[i].sights;
		sections->spur[i].sights = 0;
	}
	for (uint32_t i = 0; i < f->reduced->shots; i++) {
		const struct rb_shot *s = &f->reduced->shot[i];
		struct rb_spur *spur;

		if (s->booked == RB_BOOKED_NOWHERE ||
		    f->number[s->setup] == RB_NO_SECTION)
			continue;
		spur = &sections->spur[f->number[s->setup]];
		sections->spur_shot[spur->first + spur->sights++] = i;
	}
}

/* A setup from which nothing was sighted, like the last of a day, is no spur. */
static void drop_empty(struct rb_sections *sections)
{
	uint32_t kept = 0;

	for (uint32_t i = 0; i < sections->spurs; i++)
		if (sections->spur[i].sights)
			sections->spur[kept++] = sections->spur[i];
	sections->spurs = kept;
}

#define LISTED 12

/* The names of the first points of a spur, after commas; NULL: no memory. */
static const char *names_of(const struct rb_sections *sections,
			    const struct rb_spur *spur, struct rb_arena *arena)
{
	static const char others[] = " and others";
	const struct rb_book *book = sections->reduced->book;
	const char *name[LISTED];
	size_t names = 0, length = sizeof others, used = 0;
	char *list;

	for (uint32_t i = 0; i < spur->sights && names < LISTED; i++) {
		uint32_t shot = sections->spur_shot[spur->first + i];

		name[names] = rb_book_typed(book, sections->reduced->shot[shot].row);
		if (!*name[names])
			name[names] = "a point without a name";
		length += strlen(name[names++]) + 2;
	}
	list = rb_arena_take(arena, length, 1);
	for (size_t i = 0; list && i < names; i++) {
		size_t size = strlen(name[i]);

		memcpy(list + used, ", ", 2);
		used += i ? 2 : 0;
		memcpy(list + used, name[i], size + 1);
		used += size;
	}
	if (list && spur->sights > names)
		memcpy(list + used, others, sizeof others);
	return list;
}

static bool note(const struct rb_sections *sections, const struct rb_spur *spur,
		 struct rb_findings *findings)
{
	const struct rb_reduced *reduced = sections->reduced;
	const struct rb_book *book = reduced->book;
	const struct rb_setup *setup = &reduced->setup[spur->setup];
	uint32_t row = reduced->shot[setup->shot].backsight_row;
	bool kept = findings->of_code[RB_CODE_SPUR] < RB_FINDINGS_OF_A_KIND;
	const char *names = kept ? names_of(sections, spur, findings->arena) : "";
	struct rb_argument argument[RB_ARGUMENTS] = {
		rb_text(rb_book_typed(book, row)),
		rb_text(names),
	};

	if (!names)
		return false;
	if (spur->closing != RB_NO_SHOT) {
		argument[2] = rb_line(rb_book_line(book, reduced->shot[setup->via].row));
		argument[3] =
			rb_text(rb_book_typed(book, reduced->shot[spur->closing].row));
	}
	rb_findings_add4(findings, RB_CODE_SPUR, rb_book_place(book, row, RB_BACKSIGHT),
			 argument);
	return true;
}

static bool find(struct rb_sections *sections, struct rb_arena *arena, uint32_t off,
		 struct rb_arena *scratch)
{
	struct finder f = { sections, sections->reduced, NULL };

	sections->spur = rb_arena_take(arena, off, sizeof *sections->spur);
	sections->spur_shot = rb_arena_take(arena, (size_t)f.reduced->shots + 1,
					    sizeof *sections->spur_shot);
	f.number = rb_arena_take(scratch, f.reduced->setups, sizeof *f.number);
	if (!sections->spur || !sections->spur_shot || !f.number)
		return false;
	number_spurs(&f);
	hand_out_sights(&f);
	drop_empty(sections);
	return true;
}

bool rb_spurs_find(struct rb_sections *sections, struct rb_arena *arena,
		   struct rb_findings *findings)
{
	struct rb_arena *scratch;
	uint32_t off = 0;
	bool found;

	for (uint32_t i = 0; i < sections->reduced->setups; i++)
		off += is_off_the_chain(sections, i);
	if (!off) /* as in most books */
		return true;
	scratch = rb_arena_new(rb_arena_allocator(arena));
	found = scratch && find(sections, arena, off, scratch);
	rb_arena_free(scratch);
	for (uint32_t i = 0; found && i < sections->spurs; i++)
		found = note(sections, &sections->spur[i], findings);
	return found;
}
