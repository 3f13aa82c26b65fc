/* SPDX-License-Identifier: MIT */
/* stations.c - stations at whole multiples of an interval, and points between them. */
#include "drain/stations.h"

#include <string.h>

#include "level/spots.h"

/* -- points of the line -- */

static bool is_within(const struct rb_inverts *inverts, const struct rb_reach *reach,
		      rb_length chainage)
{
	rb_length from = inverts->station[reach->from].chainage;
	rb_length to = inverts->station[reach->to].chainage;

	if (rb_length_compare(from, to) > 0)
		return rb_length_compare(chainage, from) <= 0 &&
		       rb_length_compare(chainage, to) >= 0;
	return rb_length_compare(chainage, from) >= 0 &&
	       rb_length_compare(chainage, to) <= 0;
}

/* A point of a reach; at its lower end the invert in. */
static struct rb_exact on_grade(const struct rb_inverts *inverts,
				const struct rb_reach *reach, rb_length chainage)
{
	const struct rb_station *from = &inverts->station[reach->from];
	rb_length along = rb_length_absolute(rb_length_sub(chainage, from->chainage));

	return rb_exact_sub(from->out, rb_exact_fall(reach->slope, along));
}

static rb_length run_to(const struct rb_inverts *inverts, rb_length chainage)
{
	return rb_length_absolute(rb_length_sub(chainage, inverts->station[0].chainage));
}

/* Reaches stand by the distance of their beginning.  The last reach that has the chainage
 * is the one that leaves a station standing there. */
const struct rb_reach *rb_inverts_at(const struct rb_inverts *inverts, rb_length chainage,
				     struct rb_exact *invert)
{
	rb_length run = run_to(inverts, chainage);
	uint32_t low = 0, high = inverts->reaches;
	const struct rb_reach *reach;
	const struct rb_station *to;

	while (high - low > 1) {
		uint32_t middle = low + (high - low) / 2;
		uint32_t from = inverts->reach[middle].from;

		if (rb_length_compare(inverts->station[from].run, run) <= 0)
			low = middle;
		else
			high = middle;
	}
	reach = &inverts->reach[low];
	if (!high || !is_within(inverts, reach, chainage))
		return NULL;
	to = &inverts->station[reach->to];
	*invert = rb_length_compare(to->chainage, chainage)
			  ? on_grade(inverts, reach, chainage)
			  : to->out;
	return reach;
}

/* Stations stand by their distance from the upstream end. */
rb_length rb_station_step(const struct rb_station *station)
{
	return rb_exact_round(rb_exact_sub(station->in, station->out));
}

const struct rb_station *rb_inverts_station_at(const struct rb_inverts *inverts,
					       rb_length chainage)
{
	const struct rb_station *station = inverts->station;
	uint32_t low = 0, high = inverts->stations;
	rb_length run = run_to(inverts, chainage);

	while (low < high) {
		uint32_t middle = low + (high - low) / 2;

		if (rb_length_compare(station[middle].run, run) < 0)
			low = middle + 1;
		else
			high = middle;
	}
	if (low < inverts->stations && station[low].chainage.nm == chainage.nm)
		return &station[low];
	return NULL;
}

/* -- adding -- */

/* The whole multiples of the interval strictly between two chainages. */
struct multiples {
	int64_t first, last, step; /* along the flow; none where count is 0 */
	int64_t count;
};

static struct multiples between(rb_length from, rb_length to, rb_length interval)
{
	int64_t low = from.nm < to.nm ? from.nm : to.nm;
	int64_t high = from.nm < to.nm ? to.nm : from.nm;
	int64_t least = low / interval.nm + 1, most = (high - 1) / interval.nm;
	bool forward = from.nm < to.nm;

	if (high == 0 || most < least)
		return (struct multiples){ 0, 0, 0, 0 };
	return (struct multiples){ forward ? least : most, forward ? most : least,
				   forward ? 1 : -1, most - least + 1 };
}

static struct multiples of_reach(const struct rb_inverts *inverts,
				 const struct rb_reach *reach, rb_length interval)
{
	return between(inverts->station[reach->from].chainage,
		       inverts->station[reach->to].chainage, interval);
}

static int64_t count_all(const struct rb_inverts *inverts, rb_length interval)
{
	int64_t count = 0;

	for (uint32_t i = 0; i < inverts->reaches; i++)
		count += of_reach(inverts, &inverts->reach[i], interval).count;
	return count;
}

static const char *name_of(struct rb_arena *arena, const struct rb_plan *plan,
			   rb_length chainage)
{
	char text[RB_LENGTH_TEXT];

	rb_chainage_format(text, chainage, plan->unit, plan->plus);
	return rb_arena_text(arena, text, strlen(text));
}

static bool add_one(struct rb_arena *arena, const struct rb_inverts *inverts,
		    uint32_t number, rb_length chainage, struct rb_station *station)
{
	const struct rb_reach *reach = &inverts->reach[number];
	struct rb_exact invert = on_grade(inverts, reach, chainage);

	*station = (struct rb_station){
		.name = name_of(arena, inverts->plan, chainage),
		.row = RB_NO_PLAN_ROW,
		.reach = number,
		.chainage = chainage,
		.run = run_to(inverts, chainage),
		.in = invert,
		.out = invert,
	};
	return station->name;
}

/* Fill `all` with the plan's stations and those between; the place of each of the plan's
 * goes into `moved`. */
static bool merge(struct rb_arena *arena, const struct rb_inverts *inverts,
		  rb_length interval, struct rb_station *all, uint32_t *moved)
{
	uint32_t used = 0;

	for (uint32_t i = 0; i < inverts->stations; i++) {
		struct multiples m = { 0, 0, 0, 0 };

		moved[i] = used;
		all[used++] = inverts->station[i];
		if (i < inverts->reaches)
			m = of_reach(inverts, &inverts->reach[i], interval);
		for (int64_t k = 0; k < m.count; k++) {
			int64_t multiple = (m.first + k * m.step) * interval.nm;

			if (!add_one(arena, inverts, i, rb_length_of(multiple),
				     &all[used++]))
				return false;
		}
	}
	return true;
}

bool rb_stations_add(struct rb_arena *arena, struct rb_findings *findings,
		     struct rb_inverts *inverts, rb_length interval)
{
	int64_t more =
		interval.nm > 0 ? count_all(inverts, interval) : RB_STATIONS_MOST + 1;
	struct rb_station *all;
	uint32_t *moved;

	if (more > RB_STATIONS_MOST) {
		rb_findings_add(
			findings, RB_CODE_INTERVAL_SHORT, rb_in_file(),
			rb_measure(interval, rb_unit_of_runs(inverts->plan->unit)),
			rb_nothing());
		return false;
	}
	all = rb_arena_take(arena, inverts->stations + (size_t)more, sizeof *all);
	moved = rb_arena_take(arena, inverts->stations, sizeof *moved);
	if (!all || !moved || !merge(arena, inverts, interval, all, moved))
		return rb_findings_no_memory(findings);
	for (uint32_t i = 0; i < inverts->reaches; i++) {
		inverts->reach[i].from = moved[inverts->reach[i].from];
		inverts->reach[i].to = moved[inverts->reach[i].to];
	}
	inverts->station = all;
	inverts->stations += (uint32_t)more;
	return true;
}
