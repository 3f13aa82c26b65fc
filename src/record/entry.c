/* SPDX-License-Identifier: MIT */
/* Places of a reduced book as lines of the record. */
#include "record/entry.h"

#include <string.h>

#include "level/chain.h"
#include "notes/seek.h"
#include "report/phrase.h"
#include "report/section_words.h"
#include "report/shown.h"

#define DECIMALS 6 /* more than anyone writes behind a foot */

static bool is_metric(enum rb_unit unit)
{
	return unit == RB_METRES || unit == RB_MILLIMETRES;
}

enum rb_unit rb_known_unit(const struct rb_book *book,
			   const struct rb_benchmark *benchmark)
{
	rb_length known = benchmark->elevation;

	if (book->written[benchmark->row] & RB_WRITTEN_IN_INCHES(RB_KNOWN_ELEVATION))
		return RB_FEET_INCHES;
	if (!is_metric(book->unit) && known.nm % RB_SIXTYFOURTH != 0 &&
	    rb_shown_decimals(known, book->unit, DECIMALS) < 0)
		return RB_METRES;
	return book->unit;
}

/* "BM-1 to BM-2" of each section; NULL without memory. */
static const char **name_sections(struct rb_arena *arena, const struct rb_reduction *r)
{
	const struct rb_sections *s = rb_reduction_sections(r);
	const char **name =
		rb_arena_take_clear(arena, (size_t)s->sections + 1, sizeof *name);
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, arena);
	for (uint32_t i = 0; name && i < s->sections; i++) {
		rb_phrase_clear(&phrase);
		rb_section_name(&phrase, r, &s->section[i]);
		if (phrase.out_of_memory)
			return NULL;
		name[i] = rb_arena_text(arena, phrase.text, phrase.used);
		if (!name[i])
			return NULL;
	}
	return name;
}

/* The section that an elevation comes from: the one that ends there, else that of the
 * setup from which the place was seen; of the first place of a chain, that of the setup
 * it opens. */
static uint32_t section_of(const struct rb_reduction *r, uint32_t number)
{
	const struct rb_reduced *reduced = rb_reduction_reduced(r);
	const struct rb_sections *sections = rb_reduction_sections(r);
	const struct rb_shot *shot = &reduced->shot[number];
	const struct rb_section *ending;

	if (shot->booked == RB_BOOKED_NOWHERE) {
		uint32_t opens = rb_shot_opens(shot);

		number = reduced->setup[opens].via;
		if (number == RB_NO_SHOT)
			return sections->of_setup[opens];
	}
	ending = rb_section_ending(sections, number);
	return ending ? (uint32_t)(ending - sections->section)
		      : sections->of_setup[reduced->shot[number].setup];
}

/* One remark, or both of the two rows of a turning point; NULL without memory. */
static const char *remarks_of(struct rb_arena *arena, const struct rb_place_rows *rows)
{
	size_t first = strlen(rows->remark), second = strlen(rows->other_remark);
	char *both;

	if (!second)
		return rows->remark;
	if (!first)
		return rows->other_remark;
	both = rb_arena_take(arena, first + second + 3, 1);
	if (!both)
		return NULL;
	memcpy(both, rows->remark, first);
	memcpy(both + first, "; ", 2);
	memcpy(both + first + 2, rows->other_remark, second + 1);
	return both;
}

/* Which unit a point's known elevation was written in; benchmarks are sorted by point. */
static enum rb_unit written_unit(const struct rb_book *book, uint32_t point)
{
	uint32_t at = rb_seek(book->benchmark, book->benchmarks, sizeof *book->benchmark,
			      offsetof(struct rb_benchmark, point), point);

	return at < book->benchmarks && book->benchmark[at].point == point
		       ? rb_known_unit(book, &book->benchmark[at])
		       : book->unit;
}

static bool make(struct rb_arena *arena, const struct rb_reduction *r, uint32_t number,
		 const char *const *section, struct rb_entry *out)
{
	const struct rb_book *book = rb_reduction_book(r);
	const struct rb_shot *shot = &rb_reduction_reduced(r)->shot[number];
	struct rb_place_rows rows = rb_reduction_rows(r, number);
	uint32_t of = section_of(r, number);

	out->point = rb_book_typed(book, shot->row);
	out->elevation = shot->elevation;
	out->adjusted = rb_shot_adjusted(r->adjusted, number);
	out->known = rb_reduction_known(r, number);
	out->below = rb_shot_below(r->adjusted, number);
	out->written = written_unit(book, book->row[shot->row].point);
	out->kind = (enum rb_kind)shot->kind;
	out->rod_on = rows.rod_on;
	out->line = rb_book_line(book, shot->row);
	out->section = of == RB_NO_SECTION ? "" : section[of];
	out->verdict = of == RB_NO_SECTION
			       ? RB_OPEN
			       : rb_reduction_sections(r)->section[of].verdict;
	out->remarks = remarks_of(arena, &rows);
	return out->remarks != NULL;
}

bool rb_entries_of(struct rb_arena *arena, const struct rb_reduction *reduction,
		   uint32_t book, struct rb_entry *entry)
{
	const char *const *section = name_sections(arena, reduction);

	for (uint32_t i = 0; section && i < rb_reduction_reduced(reduction)->shots; i++) {
		if (!make(arena, reduction, i, section, &entry[i]))
			return false;
		entry[i].book = book;
	}
	return section != NULL;
}
