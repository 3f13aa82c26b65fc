/* SPDX-License-Identifier: MIT */
/* match.c - shots to stations, by name and by chainage. */
#include "drain/match.h"

#include <stdlib.h>
#include <string.h>

#include "notes/names.h"

struct entry {
	const char *folded;
	uint32_t station;
};

struct index {
	const struct rb_inverts *inverts;
	const char **folded; /* by station */
	struct entry *entry; /* by folded name, then by station */
	uint32_t entries;
};

static int by_name(const void *left, const void *right)
{
	const struct entry *a = left, *b = right;
	int order = strcmp(a->folded, b->folded);

	return order ? order : (a->station > b->station) - (a->station < b->station);
}

static char *fold(struct rb_arena *arena, const char *name)
{
	size_t length = strlen(name);
	char *folded = rb_arena_take(arena, length + 1, 1);

	if (folded)
		folded[rb_name_fold(folded, name, length)] = '\0';
	return folded;
}

static bool make_index(struct rb_arena *arena, struct index *index)
{
	uint32_t stations = index->inverts->stations;

	index->entry = rb_arena_take(arena, stations, sizeof *index->entry);
	index->folded = rb_arena_take(arena, stations, sizeof *index->folded);
	if (!index->entry || !index->folded)
		return false;
	for (uint32_t i = 0; i < stations; i++) {
		index->folded[i] = fold(arena, index->inverts->station[i].name);
		if (!index->folded[i])
			return false;
		if (*index->folded[i])
			index->entry[index->entries++] =
				(struct entry){ index->folded[i], i };
	}
	if (index->entries)
		qsort(index->entry, index->entries, sizeof *index->entry, by_name);
	return true;
}

/* The first entry that is not before a name. */
static uint32_t lower_bound(const struct index *index, const char *folded)
{
	uint32_t low = 0, high = index->entries;

	while (low < high) {
		uint32_t middle = low + (high - low) / 2;

		if (strcmp(index->entry[middle].folded, folded) < 0)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

static uint32_t station_at(const struct index *index, rb_length chainage)
{
	const struct rb_station *station = NULL;

	if (rb_length_given(chainage))
		station = rb_inverts_station_at(index->inverts, chainage);
	return station ? (uint32_t)(station - index->inverts->station) : RB_NO_STATION;
}

/* Of stations of one name the one at the chainage; else the first. */
static uint32_t station_named(const struct index *index, const char *folded,
			      rb_length chainage)
{
	uint32_t at = station_at(index, chainage), first;

	if (at != RB_NO_STATION && !strcmp(index->folded[at], folded))
		return at;
	first = lower_bound(index, folded);
	if (first < index->entries && !strcmp(index->entry[first].folded, folded))
		return index->entry[first].station;
	return RB_NO_STATION;
}

/* -- the two ends of the pipe at a step -- */

/* Where the last word of a name begins, with the blank before it; NULL: it is the first.
 */
static char *last_word(const char *name)
{
	return strrchr(name, ' ');
}

/* "mh-1 in" and "mh-1 out", where MH-1 has a step. */
static uint32_t station_of_end(const struct index *index, char *folded,
			       rb_length chainage)
{
	char *end = last_word(folded);
	uint32_t station;

	if (!end || (strcmp(end, " in") != 0 && strcmp(end, " out") != 0))
		return RB_NO_STATION;
	*end = '\0';
	station = station_named(index, folded, chainage);
	if (station == RB_NO_STATION ||
	    !rb_station_step(&index->inverts->station[station]).nm)
		return RB_NO_STATION;
	return station;
}

static bool ends_with_in(const char *name)
{
	const char *end = last_word(name);

	return end && (end[1] | 0x20) == 'i' && (end[2] | 0x20) == 'n' && !end[3];
}

bool rb_match_comes_in(const struct rb_station *station, const char *name)
{
	return ends_with_in(name) && rb_station_step(station).nm &&
	       !ends_with_in(station->name);
}

/* -- one shot -- */

static void say_disagrees(struct rb_findings *findings, const struct index *index,
			  const struct rb_spots *spots, const struct rb_spot *spot,
			  uint32_t named)
{
	const struct rb_station *station = &index->inverts->station[named];
	enum rb_unit unit = rb_unit_of_runs(spots->book->unit);

	rb_findings_add4(findings, RB_CODE_PLACE_DISAGREES,
			 rb_book_place(spots->book, spot->chainage_row, RB_CHAINAGE),
			 (struct rb_argument[RB_ARGUMENTS]){
				 rb_text(spot->name),
				 rb_measure(spot->chainage, unit),
				 rb_measure(station->chainage, unit),
			 });
}

static bool match_one(struct rb_arena *arena, struct rb_findings *findings,
		      const struct index *index, const struct rb_spots *spots,
		      const struct rb_spot *spot, uint32_t *station)
{
	char *folded = fold(arena, spot->name);

	if (!folded)
		return rb_findings_no_memory(findings);
	*station = station_named(index, folded, spot->chainage);
	if (*station == RB_NO_STATION)
		*station = station_of_end(index, folded, spot->chainage);
	if (*station == RB_NO_STATION)
		*station = station_at(index, spot->chainage);
	else if (rb_length_given(spot->chainage) &&
		 index->inverts->station[*station].chainage.nm != spot->chainage.nm)
		say_disagrees(findings, index, spots, spot, *station);
	return true;
}

uint32_t *rb_match(struct rb_arena *arena, struct rb_findings *findings,
		   const struct rb_inverts *inverts, const struct rb_spots *spots,
		   bool (*is_wanted)(const struct rb_spot *spot))
{
	struct index index = { .inverts = inverts };
	uint32_t *station =
		rb_arena_take(arena, (size_t)spots->count + 1, sizeof *station);

	if (!station || !make_index(arena, &index))
		return rb_findings_no_memory(findings), NULL;
	for (uint32_t i = 0; i < spots->count; i++) {
		station[i] = RB_NO_STATION;
		if (is_wanted(&spots->spot[i]) &&
		    !match_one(arena, findings, &index, spots, &spots->spot[i],
			       &station[i]))
			return NULL;
	}
	return rb_findings_allow_result(findings) ? station : NULL;
}
