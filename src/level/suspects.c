/* SPDX-License-Identifier: MIT */
/* The single slips that would explain a misclosure, best first. */
#include "level/suspects.h"

#include <stdlib.h>
#include <string.h>

#include "level/rod.h"
#include "level/section_walk.h"
#include "level/slips.h"

/* Of one kind in one section: beyond this a list names no place to look any more. */
#define OF_A_KIND 4000

/* Points for how near the misclosure that is left comes to nothing: an exact fit counts
 * as much as two or three places in the table of kinds below. */
#define FIT 20

/*
 * How likely each kind is to be the reason, once it fits.  What fits by chance is worth
 * little, so kinds that say much (two digits, two columns) stand before those that any
 * reading could have (a tenth, a fraction).  Judgement of our own, no source.
 */
static const struct kind {
	const char *name, *metric; /* NULL: in a metric book the same */
	int points;
} kinds[RB_SLIPS] = {
	/* clang-format off */
	[RB_SLIP_EXCHANGED]  = { "digits exchanged", NULL, 80 },
	[RB_SLIP_FOOT]       = { "a whole foot", "a whole metre or decimetre", 75 },
	[RB_SLIP_TENTH]      = { "a tenth", "a centimetre", 65 },
	[RB_SLIP_INCHES]     = { "inches as decimal feet", NULL, 75 },
	[RB_SLIP_SIGN]       = { "sign", NULL, 70 },
	[RB_SLIP_COLUMNS]    = { "backsight and foresight exchanged", NULL, 90 },
	[RB_SLIP_LOOK_ALIKE] = { "look-alike digit", NULL, 60 },
	[RB_SLIP_FRACTION]   = { "fraction dropped", NULL, 60 },
	[RB_SLIP_ROD]        = { "rod not fully extended", NULL, 0 },
	[RB_SLIP_BENCHMARK]  = { "known elevation", NULL, 65 },
	/* clang-format on */
};

/* One constant for all high sights fits nearly any misclosure; the more sights it has to
 * fit, the more it says. */
#define ROD_POINTS_A_SIGHT 15
#define ROD_SIGHTS_COUNTED 4

/* What a rod that is drawn out may lack to its full length: judgement, no source. */
#define MOST_LACKING (RB_FOOT * 3 / 2)

struct ranked {
	struct rb_suspect suspect;
	int points;
};

struct hunt {
	struct rb_arena *arena;
	const struct rb_sections *all;
	const struct rb_reduced *reduced;
	const struct rb_book *book;
	const struct rb_section *section;
	struct ranked *item;
	uint32_t count, room;
	uint32_t of_kind[RB_SLIPS]; /* in this section */
	uint32_t of_reading;        /* the first item of the reading at hand */
	bool no_memory;
};

const char *rb_slip_name(enum rb_slip slip, enum rb_unit unit)
{
	bool metric = rb_unit_of_runs(unit) == RB_METRES;

	return metric && kinds[slip].metric ? kinds[slip].metric : kinds[slip].name;
}

static bool make_room(struct hunt *h)
{
	uint32_t room = h->room ? 2 * h->room : 64;
	struct ranked *item;

	if (h->count < h->room)
		return true;
	item = rb_arena_take(h->arena, room, sizeof *item);
	if (!item) {
		h->no_memory = true;
		return false;
	}
	if (h->count)
		memcpy(item, h->item, h->count * sizeof *item);
	h->item = item;
	h->room = room;
	return true;
}

static int fit_points(const struct hunt *h, rb_length left)
{
	int64_t allowed = h->section->allowed.nm;

	if (allowed <= 0)
		return FIT;
	return (int)(FIT - FIT * rb_length_absolute(left).nm / (allowed + 1));
}

static void add(struct hunt *h, struct rb_suspect suspect, int points)
{
	if (h->of_kind[suspect.slip] >= OF_A_KIND || !make_room(h))
		return;
	h->of_kind[suspect.slip]++;
	suspect.section = (uint32_t)(h->section - h->all->section);
	h->item[h->count++] =
		(struct ranked){ suspect, points + fit_points(h, suspect.left) };
}

/* The root of a tolerance is costly: what is far off never gets there. */
static bool closes_with(const struct hunt *h, rb_length left)
{
	const struct rb_section *s = h->section;

	return rb_length_absolute(left).nm <= s->allowed.nm + 1 &&
	       rb_tolerance_holds(&h->all->tolerance, left, s->length, s->setups);
}

static bool listed_already(const struct hunt *h, const struct rb_suspect *suspect)
{
	for (uint32_t i = h->of_reading; i < h->count; i++)
		if (h->item[i].suspect.slip == suspect->slip &&
		    h->item[i].suspect.maybe.nm == suspect->maybe.nm)
			return true;
	return false;
}

static void try_slip(void *context, const struct rb_written *written, enum rb_slip slip,
		     rb_length maybe)
{
	struct hunt *h = context;
	int64_t change = written->effect * (maybe.nm - written->value.nm);
	struct rb_suspect suspect = { .slip = written->elevation ? RB_SLIP_BENCHMARK
								 : slip,
				      .row = written->row,
				      .column = written->column,
				      .reading = written->value,
				      .maybe = maybe,
				      .left = { h->section->misclosure.nm + change } };

	if (closes_with(h, suspect.left) && !listed_already(h, &suspect))
		add(h, suspect, kinds[suspect.slip].points);
}

static void hunt_number(struct hunt *h, uint32_t row, enum rb_column column,
			rb_length value, int effect)
{
	struct rb_written written = {
		.row = row, .column = column, .value = value, .effect = effect
	};

	h->of_reading = h->count;
	rb_written_read(&written, h->book);
	rb_slips_each(&written, try_slip, h);
}

static void hunt_reading(struct hunt *h, uint32_t row, enum rb_column column, int effect)
{
	hunt_number(h, row, column, rb_book_value(h->book, column, row), effect);
}

/* The column of the sight onto a shot. */
static enum rb_column booked_column(const struct rb_shot *shot)
{
	return shot->booked == RB_BOOKED_INTERMEDIATE ? RB_INTERMEDIATE : RB_FORESIGHT;
}

/* Exchanged, a turning point's sights enter with each other's value: misclosure plus
 * foresight - backsight for the one, and the same again for the other. */
static void hunt_columns(struct hunt *h, uint32_t row, const struct rb_shot *via)
{
	rb_length backsight = rb_book_value(h->book, RB_BACKSIGHT, row);
	rb_length foresight = rb_book_value(h->book, booked_column(via), via->row);
	rb_length left = { h->section->misclosure.nm +
			   2 * (foresight.nm - backsight.nm) };
	struct rb_suspect suspect = { .slip = RB_SLIP_COLUMNS,
				      .row = row,
				      .column = RB_BACKSIGHT,
				      .reading = backsight,
				      .maybe = foresight,
				      .left = left };

	if (closes_with(h, left))
		add(h, suspect, kinds[RB_SLIP_COLUMNS].points);
}

static void hunt_readings(struct hunt *h)
{
	struct rb_section_walk w = rb_section_walk(h->reduced, h->section);
	uint32_t next_backsight;

	do {
		hunt_reading(h, w.sight->row, booked_column(w.sight), -1);
		hunt_reading(h, w.backsight_row, RB_BACKSIGHT, +1);
		next_backsight = w.backsight_row;
		if (!rb_walk_back(&w))
			return;
		hunt_columns(h, next_backsight, w.sight);
	} while (!h->no_memory);
}

static int by_point(const void *point, const void *benchmark)
{
	uint32_t wanted = *(const uint32_t *)point;
	uint32_t at = ((const struct rb_benchmark *)benchmark)->point;

	return (wanted > at) - (wanted < at);
}

static void hunt_benchmark(struct hunt *h, uint32_t point, int effect)
{
	const struct rb_benchmark *b = bsearch(&point, h->book->benchmark,
					       h->book->benchmarks, sizeof *b, by_point);

	if (b)
		hunt_number(h, b->row, b->column, b->elevation, effect);
}

/* A loop closes on the elevation from which it started, right or wrong. */
static void hunt_benchmarks(struct hunt *h)
{
	if (h->section->from == h->section->to)
		return;
	hunt_benchmark(h, h->section->from, +1);
	hunt_benchmark(h, h->section->to, -1);
}

struct high_sights {
	uint32_t *row; /* NULL while they are only counted */
	uint32_t count;
	int64_t net; /* what one unit too many on each of them adds to the misclosure */
};

static void count_high(struct high_sights *high, const struct hunt *h, uint32_t row,
		       enum rb_column column, int effect)
{
	rb_length reading = rb_book_value(h->book, column, row);

	if (rb_length_absolute(reading).nm <= RB_CLOSED_ROD)
		return;
	high->net += reading.nm < 0 ? -effect : effect;
	if (high->row && high->count && high->row[high->count - 1] == row)
		return;
	if (high->row)
		high->row[high->count] = row;
	high->count++;
}

static void find_high(struct high_sights *high, const struct hunt *h)
{
	struct rb_section_walk w = rb_section_walk(h->reduced, h->section);

	high->count = 0;
	high->net = 0;
	do {
		count_high(high, h, w.sight->row, booked_column(w.sight), -1);
		count_high(high, h, w.backsight_row, RB_BACKSIGHT, +1);
	} while (rb_walk_back(&w));
}

/* The rows were found from the last to the first. */
static void turn_round(uint32_t *row, uint32_t count)
{
	for (uint32_t i = 0; i < count / 2; i++) {
		uint32_t other = row[i];

		row[i] = row[count - 1 - i];
		row[count - 1 - i] = other;
	}
}

/*
 * A rod that is not drawn out reads too much by what it lacks, on every high sight: the
 * constant is what shares the misclosure out among them, in steps of the rod's marks.
 */
static void hunt_rod(struct hunt *h)
{
	struct high_sights high = { 0 };
	rb_length misclosure = h->section->misclosure;
	int64_t sights, step = rb_rod_step(h->book->unit), steps, lacking;

	find_high(&high, h);
	if (high.net == 0 || (high.net < 0) != (misclosure.nm < 0))
		return;
	sights = high.net < 0 ? -high.net : high.net;
	steps = (rb_length_absolute(misclosure).nm + sights * step / 2) / (sights * step);
	lacking = steps * step;
	misclosure.nm -= high.net * lacking;
	if (lacking == 0 || lacking > MOST_LACKING || !closes_with(h, misclosure))
		return;
	high.row = rb_arena_take(h->arena, high.count, sizeof *high.row);
	if (!high.row) {
		h->no_memory = true;
		return;
	}
	find_high(&high, h);
	turn_round(high.row, high.count);
	if (sights > ROD_SIGHTS_COUNTED)
		sights = ROD_SIGHTS_COUNTED;
	add(h,
	    (struct rb_suspect){ .slip = RB_SLIP_ROD,
				 .row = RB_NO_ROW,
				 .column = RB_POINT,
				 .reading = rb_length_none(),
				 .maybe = rb_length_none(),
				 .left = misclosure,
				 .rows = high.row,
				 .row_count = high.count },
	    ROD_POINTS_A_SIGHT * (int)sights);
}

static int compare_numbers(int64_t a, int64_t b)
{
	return (a > b) - (a < b);
}

/* Best first, and nothing left to chance: the order is the same everywhere. */
static int best_first(const void *a, const void *b)
{
	const struct ranked *left = a, *right = b;
	const struct rb_suspect *x = &left->suspect, *y = &right->suspect;
	const int order[] = {
		compare_numbers(x->section, y->section),
		compare_numbers(right->points, left->points),
		rb_length_compare(rb_length_absolute(x->left),
				  rb_length_absolute(y->left)),
		compare_numbers(kinds[y->slip].points, kinds[x->slip].points),
		compare_numbers(x->slip, y->slip),
		compare_numbers(x->row, y->row),
		compare_numbers(x->column, y->column),
	};

	for (size_t i = 0; i < sizeof order / sizeof *order; i++)
		if (order[i])
			return order[i];
	return rb_length_compare(x->maybe, y->maybe);
}

static void hunt_section(struct hunt *h, const struct rb_section *section)
{
	h->section = section;
	memset(h->of_kind, 0, sizeof h->of_kind);
	hunt_readings(h);
	hunt_benchmarks(h);
	hunt_rod(h);
}

static struct rb_suspects *ranked_list(struct hunt *h)
{
	struct rb_suspects *list = rb_arena_take_clear(h->arena, 1, sizeof *list);

	if (!list)
		return NULL;
	list->item = rb_arena_take(h->arena, (size_t)h->count + 1, sizeof *list->item);
	if (!list->item)
		return NULL;
	if (h->count)
		qsort(h->item, h->count, sizeof *h->item, best_first);
	for (list->count = 0; list->count < h->count; list->count++)
		list->item[list->count] = h->item[list->count].suspect;
	return list;
}

/* Sections that share their beginning could be walked again and again, until the time
 * grew with the square of the book.  So many times the book is walked in all; the
 * sections that come after that have no list. */
#define TIMES_WALKED  8
#define ALWAYS_WALKED 10000

struct rb_suspects *rb_suspects(struct rb_arena *arena, struct rb_findings *findings,
				const struct rb_sections *sections)
{
	struct hunt h = { .arena = arena, .all = sections, .reduced = sections->reduced };
	struct rb_suspects *list = NULL;
	uint64_t left = (uint64_t)TIMES_WALKED * h.reduced->setups + ALWAYS_WALKED;

	h.book = h.reduced->book;
	for (uint32_t i = 0; i < sections->sections && !h.no_memory; i++) {
		const struct rb_section *section = &sections->section[i];

		if (section->verdict != RB_BEYOND || section->setups > left)
			continue;
		left -= section->setups;
		hunt_section(&h, section);
	}
	if (!h.no_memory)
		list = ranked_list(&h);
	if (!list)
		rb_findings_no_memory(findings);
	return list;
}
