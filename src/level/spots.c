/* SPDX-License-Identifier: MIT */
/* spots.c - which elevation of a shot is used, and what the place is called. */
#include "level/spots.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "level/places.h"
#include "level/shot_again.h"

static int64_t power_of_ten(int exponent)
{
	int64_t power = 1;

	while (exponent-- > 0)
		power *= 10;
	return power;
}

static bool is_finer(rb_length a, rb_length b)
{
	return !rb_length_given(b) || rb_length_compare(a, b) < 0;
}

rb_length rb_book_step(const struct rb_book *book)
{
	static const enum rb_column sight[] = { RB_BACKSIGHT, RB_INTERMEDIATE,
						RB_FORESIGHT };
	rb_length decimal = rb_length_none(), fraction = rb_length_none();

	for (size_t i = 0; i < sizeof sight / sizeof *sight; i++) {
		const struct rb_places *places = &book->places[sight[i]];
		rb_length step;

		if (!book->value[sight[i]])
			continue;
		step = places->decimals < 0
			       ? rb_length_none()
			       : rb_decimal_step(book->unit, places->decimals);
		if (rb_length_given(step) && is_finer(step, decimal))
			decimal = step;
		if (places->denominator < 1)
			continue;
		step = rb_fraction_step(places->denominator);
		if (is_finer(step, fraction))
			fraction = step;
	}
	return rb_length_given(fraction) && is_finer(decimal, fraction) ? fraction
									: decimal;
}

/* A number of ten-thousandths, without the zeros that say nothing. */
static void trim(char *text)
{
	size_t end = strlen(text);

	while (text[end - 1] == '0')
		end--;
	text[text[end - 1] == '.' ? end - 1 : end] = '\0';
}

void rb_chainage_format(char buf[static RB_LENGTH_TEXT], rb_length chainage,
			enum rb_unit unit, int plus)
{
	rb_length step = rb_decimal_step(rb_unit_of_runs(unit), 4);
	int64_t parts = rb_length_share(rb_length_of(1), chainage.nm, step.nm).nm;
	int64_t hundred = power_of_ten(plus + 4);

	if (plus)
		snprintf(buf, RB_LENGTH_TEXT, "%" PRId64 "+%0*" PRId64 ".%04" PRId64,
			 parts / hundred, plus, parts % hundred / 10000, parts % 10000);
	else
		snprintf(buf, RB_LENGTH_TEXT, "%" PRId64 ".%04" PRId64, parts / 10000,
			 parts % 10000);
	trim(buf);
}

int rb_chainage_plus(int plus, enum rb_unit written, enum rb_unit shown)
{
	if (!plus || rb_unit_of_runs(written) == rb_unit_of_runs(shown))
		return plus;
	return rb_unit_of_runs(shown) == RB_FEET ? 2 : 0;
}

static const char *name_of(struct rb_arena *arena, const struct rb_book *book,
			   const struct rb_spot *spot)
{
	char text[RB_LENGTH_TEXT];

	if (spot->point != RB_NO_POINT || !rb_length_given(spot->chainage))
		return rb_book_typed(book, spot->row);
	rb_chainage_format(text, spot->chainage, book->unit, book->chainage_plus);
	return rb_arena_text(arena, text, strlen(text));
}

/* The spot of a shot; false: no memory for its name. */
static bool spot_of(struct rb_arena *arena, const struct rb_adjusted *adjusted,
		    uint32_t number, struct rb_spot *spot)
{
	const struct rb_reduced *reduced = adjusted->sections->reduced;
	const struct rb_book *book = reduced->book;
	const struct rb_shot *shot = &reduced->shot[number];
	rb_length better = rb_shot_adjusted(adjusted, number);

	spot->row = shot->row;
	spot->point = book->row[shot->row].point;
	spot->chainage_row = rb_shot_row(reduced, RB_CHAINAGE, number);
	spot->rod_on_row = rb_shot_row(reduced, RB_ROD_ON, number);
	spot->chainage = rb_shot_value(reduced, RB_CHAINAGE, number);
	spot->adjusted = rb_length_given(better);
	spot->elevation = spot->adjusted ? better : shot->elevation;
	spot->rod_on = rb_shot_rod_on(reduced, number);
	spot->kind = (enum rb_kind)shot->kind;
	spot->again = RB_NO_SPOT;
	spot->name = name_of(arena, book, spot);
	return spot->name;
}

/* A tape let down from a rim ends on the invert. */
static void add_below(const struct rb_adjusted *adjusted, uint32_t number,
		      struct rb_spots *spots)
{
	rb_length below = rb_shot_below(adjusted, number);
	struct rb_spot *rim = &spots->spot[spots->count - 1];

	if (rim->rod_on != RB_ON_RIM || !rb_length_given(below))
		return;
	spots->spot[spots->count] = *rim;
	spots->spot[spots->count].rod_on = RB_ON_INVERT;
	spots->spot[spots->count++].elevation = below;
}

static bool beyond(const struct rb_sections *sections)
{
	for (uint32_t i = 0; i < sections->sections; i++)
		if (sections->section[i].verdict == RB_BEYOND)
			return true;
	return false;
}

struct rb_spots *rb_spots(struct rb_arena *arena, struct rb_findings *findings,
			  const struct rb_adjusted *adjusted)
{
	const struct rb_reduced *reduced = adjusted->sections->reduced;
	struct rb_spots *spots = rb_arena_take_clear(arena, 1, sizeof *spots);

	if (spots)
		spots->spot = rb_arena_take(arena, 2 * (size_t)reduced->shots + 1,
					    sizeof *spots->spot);
	if (!spots || !spots->spot)
		return rb_findings_no_memory(findings), NULL;
	spots->book = reduced->book;
	spots->sections = adjusted->sections;
	spots->beyond = beyond(adjusted->sections);
	spots->step = rb_book_step(reduced->book);
	for (uint32_t i = 0; i < reduced->shots; i++) {
		if (!spot_of(arena, adjusted, i, &spots->spot[spots->count++]))
			return rb_findings_no_memory(findings), NULL;
		add_below(adjusted, i, spots);
	}
	for (uint32_t i = 0; i < spots->count; i++)
		spots->adjusted += spots->spot[i].adjusted;
	if (!rb_find_shots_again(spots, rb_arena_allocator(arena)))
		return rb_findings_no_memory(findings), NULL;
	return spots;
}
