/* SPDX-License-Identifier: MIT */
/* fall.c - legs along a book's chainage or between two of its points. */
#include "level/fall.h"

#include <stdlib.h>
#include <string.h>

#include "level/shot_again.h"
#include "notes/names.h"
#include "notes/sheet.h"

bool rb_rod_on_pipe(enum rb_rod_on place)
{
	return place == RB_ON_INVERT || place == RB_ON_TOP_OF_PIPE ||
	       place == RB_ON_INSIDE_TOP;
}

/* What the stages below work on. */
struct work {
	struct rb_arena *arena;
	struct rb_findings *findings;
	const struct rb_spots *spots;
	const struct rb_fall_options *options;
	const struct rb_spot *
		*order; /* those with a chainage, by place, chainage and row */
	uint32_t count;
	struct rb_fall *fall;
};

static struct rb_leg leg_between(const struct work *w, const struct rb_spot *upstream,
				 const struct rb_spot *downstream, rb_length length)
{
	struct rb_leg leg = {
		.from = upstream->name,
		.to = downstream->name,
		.upper = upstream->elevation,
		.lower = downstream->elevation,
		.length = length,
		.fall = rb_length_sub(upstream->elevation, downstream->elevation),
		.minimum = w->options->minimum,
	};

	leg.slope = (rb_slope){ leg.fall, length };
	if (rb_length_given(w->spots->step))
		leg.uncertainty = (rb_slope){ w->spots->step, length };
	rb_leg_judge(&leg);
	return leg;
}

static void report(const struct work *w, const struct rb_leg *leg,
		   const struct rb_spot *upstream)
{
	if (rb_slope_given(leg->minimum) || rb_rod_on_pipe(upstream->rod_on))
		rb_leg_report(w->findings, leg,
			      rb_book_row_place(w->spots->book, upstream->row));
}

/* Pipes first, then the ground that was said and unsaid, in the order of the words. */
static int rank(enum rb_rod_on place)
{
	return rb_rod_on_pipe(place) ? (int)place - RB_ON_PLACES : (int)place;
}

static int by_place_and_chainage(const void *left, const void *right)
{
	const struct rb_spot *a = *(const struct rb_spot *const *)left;
	const struct rb_spot *b = *(const struct rb_spot *const *)right;
	int order = rank(a->rod_on) - rank(b->rod_on);

	if (!order)
		order = rb_length_compare(a->chainage, b->chainage);
	return order ? order : (a->row > b->row) - (a->row < b->row);
}

/* Two places at one chainage have no slope between them: of a point that is reached again
 * and of two points the first is used. */
static bool is_at_same_place(const struct work *w, const struct rb_spot *a,
			     const struct rb_spot *b)
{
	if (a->rod_on != b->rod_on || rb_length_compare(a->chainage, b->chainage))
		return false;
	if (a->point != b->point)
		rb_findings_add(w->findings, RB_CODE_SPOTS_AT_ONE_CHAINAGE,
				rb_book_row_place(w->spots->book, b->row),
				rb_text(a->name), rb_nothing());
	return true;
}

static bool sort_spots(struct work *w)
{
	uint32_t kept = 0;

	w->order = rb_arena_take(w->arena, (size_t)w->spots->count + 1, sizeof *w->order);
	if (!w->order)
		return rb_findings_no_memory(w->findings);
	for (uint32_t i = 0; i < w->spots->count; i++)
		if (rb_length_given(w->spots->spot[i].chainage) &&
		    !rb_was_shot_again(w->findings, w->spots, &w->spots->spot[i]))
			w->order[w->count++] = &w->spots->spot[i];
	qsort(w->order, w->count, sizeof *w->order, by_place_and_chainage);
	for (uint32_t i = 0; i < w->count; i++)
		if (!kept || !is_at_same_place(w, w->order[kept - 1], w->order[i]))
			w->order[kept++] = w->order[i];
	w->count = kept;
	return true;
}

/* Does the run flow toward its first chainage? */
static bool flows_back(const struct work *w, const struct rb_spot *first,
		       const struct rb_spot *last)
{
	if (w->options->outlet != RB_TO_LOWER_END)
		return w->options->outlet == RB_TO_FIRST;
	return rb_length_compare(first->elevation, last->elevation) < 0;
}

/* The legs of `count` places of one kind, from order[start] on. */
static void add_run(struct work *w, uint32_t start, uint32_t count)
{
	const struct rb_spot **spot = w->order + start;
	bool back = flows_back(w, spot[0], spot[count - 1]);
	struct rb_run *run = &w->fall->run[w->fall->runs++];

	run->rod_on = spot[0]->rod_on;
	run->first = w->fall->legs;
	run->legs = count - 1;
	for (uint32_t i = 0; i + 1 < count; i++) {
		const struct rb_spot *from = back ? spot[count - 1 - i] : spot[i];
		const struct rb_spot *to = back ? spot[count - 2 - i] : spot[i + 1];
		struct rb_leg *leg = &w->fall->leg[w->fall->legs++];

		*leg = leg_between(
			w, from, to,
			rb_length_absolute(rb_length_sub(to->chainage, from->chainage)));
		report(w, leg, from);
	}
	run->total = leg_between(
		w, back ? spot[count - 1] : spot[0], back ? spot[0] : spot[count - 1],
		rb_length_sub(spot[count - 1]->chainage, spot[0]->chainage));
}

static bool take_room(struct work *w, uint32_t legs, uint32_t runs)
{
	w->fall = rb_arena_take_clear(w->arena, 1, sizeof *w->fall);
	if (!w->fall) {
		rb_findings_no_memory(w->findings);
		return false;
	}
	w->fall->leg = rb_arena_take(w->arena, (size_t)legs + 1, sizeof *w->fall->leg);
	w->fall->run = rb_arena_take(w->arena, runs, sizeof *w->fall->run);
	return (w->fall->leg && w->fall->run) || rb_findings_no_memory(w->findings);
}

static struct rb_fall *along_chainage(struct work *w)
{
	uint32_t end;

	if (!sort_spots(w) || !take_room(w, w->count, RB_ON_PLACES))
		return NULL;
	for (uint32_t start = 0; start < w->count; start = end) {
		end = start + 1;
		while (end < w->count && w->order[end]->rod_on == w->order[start]->rod_on)
			end++;
		if (end - start > 1)
			add_run(w, start, end - start);
	}
	if (w->fall->legs)
		return w->fall;
	rb_findings_add(w->findings, RB_CODE_NO_LEGS, rb_in_file(), rb_nothing(),
			rb_nothing());
	return NULL;
}

#define NAME 256

static bool same_name(const char *name, size_t length, const char *folded)
{
	char text[NAME];

	if (length + 1 > NAME)
		return false;
	text[rb_name_fold(text, name, length)] = '\0';
	return !strcmp(text, folded);
}

static const char *nearest_name(const struct rb_spots *spots, const char *name)
{
	size_t length = strlen(name);
	const char *best = NULL;
	int least = length > 4 ? 2 : 1;

	for (uint32_t i = 0; i < spots->count; i++) {
		const char *other = spots->spot[i].name;
		int apart = rb_letters_apart(name, length, other, strlen(other), least);

		if (apart > least)
			continue;
		best = other;
		least = apart - 1;
	}
	return best;
}

/* The last shot of the place of a spot; those before it are noted. */
static const struct rb_spot *last_shot(const struct work *w, uint32_t spot)
{
	const struct rb_spots *spots = w->spots;
	uint32_t last =
		spots->spot[spot].again == RB_NO_SPOT ? spot : spots->spot[spot].again;

	for (uint32_t i = 0; i < last; i++)
		if (spots->spot[i].again == last)
			rb_was_shot_again(w->findings, spots, &spots->spot[i]);
	return &spots->spot[last];
}

/* The first spot of that name, one like `other` if there is one, as it was shot last. */
static const struct rb_spot *find(const struct work *w, const char *name,
				  const struct rb_spot *other)
{
	uint32_t found = RB_NO_SPOT;
	const char *nearest;
	char folded[NAME] = "";

	if (strlen(name) < NAME)
		folded[rb_name_fold(folded, name, strlen(name))] = '\0';
	for (uint32_t i = 0; i < w->spots->count; i++) {
		const struct rb_spot *spot = &w->spots->spot[i];

		if (!same_name(spot->name, strlen(spot->name), folded))
			continue;
		if (!other || spot->rod_on == other->rod_on)
			return last_shot(w, i);
		found = found == RB_NO_SPOT ? i : found;
	}
	if (found != RB_NO_SPOT)
		return last_shot(w, found);
	nearest = nearest_name(w->spots, name);
	rb_findings_add(w->findings, RB_CODE_NO_SUCH_POINT, rb_in_file(), rb_text(name),
			nearest ? rb_text(nearest) : rb_nothing());
	return NULL;
}

/* The length asked for goes before that of the chainages, and not without a word. */
static rb_length length_between(const struct work *w, const struct rb_spot *from,
				const struct rb_spot *to)
{
	enum rb_unit unit = rb_unit_of_runs(w->spots->book->unit);
	rb_length asked = w->options->length, apart = rb_length_none();

	if (rb_length_given(from->chainage) && rb_length_given(to->chainage))
		apart = rb_length_absolute(rb_length_sub(to->chainage, from->chainage));
	if (!rb_length_given(asked))
		return apart;
	if (rb_length_given(apart) && apart.nm != asked.nm)
		rb_findings_add(w->findings, RB_CODE_LENGTH_DIFFERS, rb_in_file(),
				rb_measure(asked, unit), rb_measure(apart, unit));
	return asked;
}

static struct rb_fall *between_points(struct work *w)
{
	const struct rb_spot *from = find(w, w->options->from, NULL);
	const struct rb_spot *to = find(w, w->options->to, from);
	rb_length length;
	bool given;

	if (!from || !to || !take_room(w, 1, 1))
		return NULL;
	if (from->rod_on != to->rod_on)
		rb_findings_add(w->findings, RB_CODE_ROD_ON_DIFFERS, rb_in_file(),
				rb_text(from->name), rb_text(to->name));
	length = length_between(w, from, to);
	given = rb_length_given(length);
	if (!given || length.nm <= 0) {
		rb_findings_add(w->findings,
				given ? RB_CODE_ZERO_LENGTH : RB_CODE_NO_LENGTH,
				rb_in_file(), rb_text(from->name), rb_text(to->name));
		return NULL;
	}
	w->fall->leg[w->fall->legs++] = leg_between(w, from, to, length);
	w->fall->run[w->fall->runs++] =
		(struct rb_run){ from->rod_on, 0, 1, w->fall->leg[0] };
	report(w, w->fall->leg, from);
	return w->fall;
}

struct rb_fall *rb_fall(struct rb_arena *arena, struct rb_findings *findings,
			const struct rb_spots *spots,
			const struct rb_fall_options *options)
{
	struct work w = { arena, findings, spots, options, NULL, 0, NULL };

	return options->from && options->to ? between_points(&w) : along_chainage(&w);
}
