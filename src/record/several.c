/* SPDX-License-Identifier: MIT */
/* The same point in several books. */
#include "record/several.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "notes/names.h"

/* A sighting under its folded name, in the order found. */
struct item {
	struct rb_sighting sighting;
	const char *name;
	uint32_t order;
};

struct finder {
	const struct rb_ledger *ledger;
	struct rb_arena *scratch;
	struct item *item;
	uint32_t items;
	struct rb_several *several;
};

/* -- gathering ------------------------------------------------------------------- */

static bool add(struct finder *f, const struct rb_sighting *sighting)
{
	size_t length = strlen(sighting->point);
	char *name = rb_arena_take(f->scratch, length + 1, 1);

	if (!name)
		return false;
	rb_name_fold(name, sighting->point, length);
	f->item[f->items] = (struct item){ *sighting, name, f->items };
	f->items++;
	return true;
}

/* A book's benchmarks, those too on which nothing was sighted. */
static bool add_benchmarks(struct finder *f, uint32_t number)
{
	const struct rb_book *book =
		rb_reduction_book(&f->ledger->book[number].reduction);

	for (uint32_t i = 0; i < book->benchmarks; i++) {
		const struct rb_benchmark *b = &book->benchmark[i];
		const struct rb_sighting sighting = {
			.point = rb_book_point(book, b->point),
			.elevation = b->elevation,
			.known = true,
			.written = rb_known_unit(book, b),
			.book = number,
			.place = rb_book_place(book, b->row, b->column),
		};

		if (!add(f, &sighting))
			return false;
	}
	return true;
}

/* What levels are carried over has a name for the day, and ground lies elsewhere. */
static bool is_compared(const struct rb_entry *entry)
{
	return *entry->point && entry->kind != RB_TURNING_POINT &&
	       !rb_name_is_ground(entry->point);
}

static bool add_entry(struct finder *f, const struct rb_entry *entry)
{
	bool known = rb_length_given(entry->known);
	const struct rb_sighting sighting = {
		.point = entry->point,
		.elevation = known ? entry->known : rb_entry_best(entry),
		.known = known,
		.written = entry->written,
		.rod_on = known ? RB_ON_UNSAID : entry->rod_on,
		.book = entry->book,
		.place = rb_at(entry->line, RB_WHOLE_ROW, entry->point, NULL),
	};

	if (!is_compared(entry) || !rb_length_given(sighting.elevation))
		return true;
	return add(f, &sighting);
}

static bool add_book(struct finder *f, uint32_t number)
{
	const struct rb_recorded_book *book = &f->ledger->book[number];

	if (!add_benchmarks(f, number))
		return false;
	for (uint32_t i = 0; i < book->entries; i++) {
		const struct rb_entry *entry = &f->ledger->entry[book->first + i];

		if (!rb_length_given(entry->known) && !add_entry(f, entry))
			return false;
	}
	return true;
}

static uint32_t count_most(const struct rb_ledger *ledger)
{
	uint32_t most = ledger->entries;

	for (uint32_t i = ledger->old_books; i < ledger->books; i++)
		most += rb_reduction_book(&ledger->book[i].reduction)->benchmarks;
	return most;
}

static bool gather(struct finder *f)
{
	const struct rb_ledger *ledger = f->ledger;

	f->item = rb_arena_take(f->scratch, (size_t)count_most(ledger) + 1,
				sizeof *f->item);
	if (!f->item)
		return false;
	for (uint32_t i = 0; i < ledger->old_entries; i++)
		if (!rb_entry_book(ledger, &ledger->entry[i])->replaced &&
		    !add_entry(f, &ledger->entry[i]))
			return false;
	for (uint32_t i = ledger->old_books; i < ledger->books; i++)
		if (!ledger->book[i].replaced && !add_book(f, i))
			return false;
	return true;
}

static int by_name(const void *a, const void *b)
{
	const struct item *x = a, *y = b;
	int order = strcmp(x->name, y->name);

	return order ? order : (x->order > y->order) - (x->order < y->order);
}

/* -- comparing ------------------------------------------------------------------- */

/* Half a place as one writes it in the unit: 0.01 ft, 0.01 in, 1/16 in, 1 mm. */
static const int64_t half_place[] = {
	[RB_FEET] = RB_FOOT / 200,
	[RB_INCHES] = RB_INCH / 200,
	[RB_FEET_INCHES] = RB_INCH / 32,
	[RB_METRES] = RB_MILLIMETRE / 2,
	[RB_MILLIMETRES] = RB_MILLIMETRE / 2,
};

static bool agree(const struct rb_sighting *a, const struct rb_sighting *b)
{
	int64_t apart = rb_length_absolute(rb_length_sub(a->elevation, b->elevation)).nm;
	int64_t x = half_place[a->written], y = half_place[b->written];

	if (a->written == b->written)
		return !apart;
	return apart <= (x > y ? x : y);
}

static bool name_other_datums(struct finder *f, const char *a, const char *b, bool *other)
{
	char *x, *y;

	*other = false;
	if (!*a || !*b)
		return true;
	x = rb_arena_take(f->scratch, strlen(a) + 1, 1);
	y = rb_arena_take(f->scratch, strlen(b) + 1, 1);
	if (!x || !y)
		return false;
	rb_name_fold(x, a, strlen(a));
	rb_name_fold(y, b, strlen(b));
	*other = strcmp(x, y) != 0;
	return true;
}

/* "larch.csv of 17 March 2026"; NULL without memory. */
static const char *name_book(struct rb_arena *arena, const struct rb_recorded_book *book)
{
	size_t room = strlen(book->name) + strlen(book->date) + 8;
	char *text = rb_arena_take(arena, room, 1);

	if (text)
		snprintf(text, room, "%s%s%s", book->name, *book->date ? " of " : "",
			 book->date);
	return text;
}

static bool say_differs(const struct rb_ledger *ledger, const struct rb_pair *pair)
{
	const struct rb_recorded_book *there = &ledger->book[pair->earlier.book];
	const char *name = name_book(ledger->arena, there);
	const struct rb_argument argument[RB_ARGUMENTS] = {
		rb_measure(pair->later.elevation, pair->later.written),
		rb_measure(pair->earlier.elevation, pair->earlier.written),
		rb_text(name),
		pair->other_datum ? rb_text(there->datum) : rb_nothing(),
	};

	if (name)
		rb_findings_add4(ledger->book[pair->later.book].findings,
				 RB_CODE_BENCHMARK_DIFFERS, pair->later.place, argument);
	return name != NULL;
}

static bool add_pair(struct finder *f, const struct rb_sighting *earlier,
		     const struct rb_sighting *later)
{
	struct rb_several *several = f->several;
	struct rb_pair pair = { .earlier = *earlier, .later = *later };
	bool both_known = earlier->known && later->known;

	if (!name_other_datums(f, f->ledger->book[earlier->book].datum,
			       f->ledger->book[later->book].datum, &pair.other_datum))
		return false;
	pair.agrees = !both_known || agree(earlier, later);
	if (!pair.agrees && !say_differs(f->ledger, &pair))
		return false;
	several->benchmarks += both_known;
	several->differing += !pair.agrees;
	several->pair[several->pairs++] = pair;
	return true;
}

/* The sightings of one point so far: the first of each kind. */
struct group {
	const struct item *known, *first;
	const struct item *on[RB_ON_PLACES]; /* the first with the rod there */
	uint32_t last_book[RB_ON_PLACES +
			   1]; /* seen with the rod there; known ones last */
};

static const struct item *earlier_of(const struct item *a, const struct item *b)
{
	if (!a || !b)
		return a ? a : b;
	return a->order < b->order ? a : b;
}

/* What a sighting is held against: a place with the rod on the same, or on nothing said.
 */
static const struct item *reference(const struct group *g, const struct rb_sighting *s)
{
	if (s->known && g->known)
		return g->known;
	if (s->rod_on == RB_ON_UNSAID)
		return g->first;
	return earlier_of(g->on[s->rod_on], g->on[RB_ON_UNSAID]);
}

static bool take(struct finder *f, struct group *g, const struct item *item)
{
	const struct rb_sighting *s = &item->sighting;
	uint32_t *last = &g->last_book[s->known ? RB_ON_PLACES : s->rod_on];
	const struct item *other = reference(g, s);

	if (*last == s->book)
		return true; /* the first time in a book stands for it */
	*last = s->book;
	g->first = earlier_of(g->first, item);
	g->on[s->rod_on] = earlier_of(g->on[s->rod_on], item);
	if (s->known)
		g->known = earlier_of(g->known, item);
	if (!other || other->sighting.book == s->book || !f->ledger->book[s->book].is_new)
		return true;
	return add_pair(f, &other->sighting, s);
}

static void begin(struct group *g)
{
	*g = (struct group){ .known = NULL };
	for (size_t i = 0; i < sizeof g->last_book / sizeof *g->last_book; i++)
		g->last_book[i] = RB_NO_BOOK;
}

static bool compare(struct finder *f)
{
	struct group group;

	f->several->pair = rb_arena_take(f->ledger->arena, (size_t)f->items + 1,
					 sizeof *f->several->pair);
	if (!f->several->pair)
		return false;
	qsort(f->item, f->items, sizeof *f->item, by_name);
	for (uint32_t i = 0; i < f->items; i++) {
		if (!i || strcmp(f->item[i].name, f->item[i - 1].name) != 0)
			begin(&group);
		if (!take(f, &group, &f->item[i]))
			return false;
	}
	return true;
}

struct rb_several *rb_several(const struct rb_ledger *ledger)
{
	struct finder f = {
		.ledger = ledger,
		.scratch = rb_arena_new(rb_arena_allocator(ledger->arena)),
		.several = rb_arena_take_clear(ledger->arena, 1, sizeof *f.several),
	};
	bool done = f.scratch && f.several && gather(&f) && compare(&f);

	rb_arena_free(f.scratch);
	return done ? f.several : NULL;
}
