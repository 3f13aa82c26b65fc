/* SPDX-License-Identifier: MIT */
/* shot_again.c - the last shot of a place counts. */
#include "level/shot_again.h"

#include <stdlib.h>

#include "notes/names.h"

/* A spot, and what tells its place from others. */
struct entry {
	struct rb_spot *spot;
	uint32_t point; /* RB_NO_POINT: its chainage alone names it */
	uint32_t number;
};

/* By place; of one place in the order observed, but shots without a chainage first. */
static int by_place(const void *left, const void *right)
{
	const struct entry *a = left, *b = right;
	bool given = rb_length_given(a->spot->chainage);
	int order = (a->point > b->point) - (a->point < b->point);

	if (!order)
		order = (int)a->spot->rod_on - (int)b->spot->rod_on;
	if (!order)
		order = (int)given - (int)rb_length_given(b->spot->chainage);
	if (!order && given)
		order = rb_length_compare(a->spot->chainage, b->spot->chainage);
	return order ? order : (a->number > b->number) - (a->number < b->number);
}

/* Names of ground and surfaces stand at many places. */
static uint32_t point_of(const struct rb_book *book, const struct rb_spot *spot)
{
	if (spot->point == RB_NO_POINT ||
	    rb_name_is_ground(rb_book_point(book, spot->point)))
		return RB_NO_POINT;
	return spot->point;
}

static bool may_be_shot_again(const struct rb_book *book, const struct rb_spot *spot)
{
	if (spot->kind == RB_BENCHMARK)
		return false;
	if (point_of(book, spot) == RB_NO_POINT)
		return rb_length_given(spot->chainage);
	return !book->is_known[spot->point];
}

/* Of `count` entries that are one place: the last that is no turning point counts. */
static void settle(struct entry *entry, uint32_t count)
{
	const struct entry *last = NULL;

	for (uint32_t i = 0; i < count; i++)
		if (entry[i].spot->kind != RB_TURNING_POINT &&
		    (!last || entry[i].number > last->number))
			last = &entry[i];
	for (uint32_t i = 0; last && i < count; i++)
		if (entry[i].number < last->number)
			entry[i].spot->again = last->number;
}

static bool is_one_surface(const struct entry *a, const struct entry *b)
{
	return a->point == b->point && a->spot->rod_on == b->spot->rod_on;
}

/* Shots of one surface of a point (or of no point): one place, where one chainage at most
 * is written; else one at each. */
static void settle_surface(struct entry *entry, uint32_t count)
{
	rb_length whole = entry[count - 1].spot->chainage;
	uint32_t bare = 0, end;

	while (bare < count && !rb_length_given(entry[bare].spot->chainage))
		bare++;
	if (bare == count || entry[bare].spot->chainage.nm == whole.nm) {
		for (uint32_t i = 0; i < bare; i++)
			entry[i].spot->chainage = whole;
		settle(entry, count);
		return;
	}
	settle(entry, bare);
	for (uint32_t start = bare; start < count; start = end) {
		end = start + 1;
		while (end < count &&
		       entry[end].spot->chainage.nm == entry[start].spot->chainage.nm)
			end++;
		settle(entry + start, end - start);
	}
}

bool rb_find_shots_again(struct rb_spots *spots, const struct rb_allocator *allocator)
{
	struct rb_arena *scratch = rb_arena_new(allocator);
	struct entry *entry =
		scratch ? rb_arena_take(scratch, (size_t)spots->count + 1, sizeof *entry)
			: NULL;
	uint32_t count = 0, end;

	for (uint32_t i = 0; entry && i < spots->count; i++)
		if (may_be_shot_again(spots->book, &spots->spot[i]))
			entry[count++] = (struct entry){
				&spots->spot[i], point_of(spots->book, &spots->spot[i]), i
			};
	if (count)
		qsort(entry, count, sizeof *entry, by_place);
	for (uint32_t start = 0; start < count; start = end) {
		end = start + 1;
		while (end < count && is_one_surface(&entry[start], &entry[end]))
			end++;
		settle_surface(entry + start, end - start);
	}
	rb_arena_free(scratch);
	return entry != NULL;
}

bool rb_was_shot_again(struct rb_findings *findings, const struct rb_spots *spots,
		       const struct rb_spot *spot)
{
	if (spot->again == RB_NO_SPOT)
		return false;
	rb_findings_add(findings, RB_CODE_SHOT_AGAIN,
			rb_book_row_place(spots->book, spot->row),
			rb_line(rb_book_line(spots->book, spots->spot[spot->again].row)),
			rb_nothing());
	return true;
}
