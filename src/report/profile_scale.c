/* SPDX-License-Identifier: MIT */
/* profile_scale.c - strips, steps of 1, 2 or 5, and one scale for all. */
#include "report/profile_scale.h"

#define INTERVALS         6 /* steps that the highest strip has at most, before rounding */
#define EXAGGERATION_MOST 1000

/* -- strips -- */

/* Widen a strip to hold an elevation. */
static void hold(struct rb_profile_strip *strip, rb_length elevation)
{
	if (!rb_length_given(strip->low) || elevation.nm < strip->low.nm)
		strip->low = elevation;
	if (!rb_length_given(strip->high) || elevation.nm > strip->high.nm)
		strip->high = elevation;
}

/* Hold what stands in a strip; returns the first item that may reach into the next. */
static const struct rb_profile_item *hold_items(struct rb_profile_strip *strip)
{
	const struct rb_profile_item *first = strip->item;
	bool leading = true;

	for (const struct rb_profile_item *i = strip->item; i; i = i->next) {
		struct rb_profile_spot from = i->from, to = i->to;

		if (from.along.nm > strip->right.nm)
			break;
		leading = leading && to.along.nm < strip->right.nm;
		if (leading)
			first = i->next;
		if (to.along.nm < strip->left.nm)
			continue;
		rb_profile_clip(&from, &to, strip->left, strip->right);
		hold(strip, from.elevation);
		hold(strip, to.elevation);
	}
	return first;
}

/* As few strips as there can be, and none of them nearly empty. */
static size_t share_evenly(size_t places, size_t side)
{
	size_t gaps = places > 1 ? places - 1 : 1;
	size_t strips = (gaps + side - 2) / (side - 1);

	return (gaps + strips - 1) / strips + 1;
}

/* A strip begins where the one before ended. */
static void cut(struct rb_profile_scale *scale, const struct rb_profile *profile,
		size_t side)
{
	const struct rb_profile_place *place = profile->first_place;
	const struct rb_profile_item *item = profile->first;

	do {
		struct rb_profile_strip *strip = &scale->strip[scale->strips++];

		*strip = (struct rb_profile_strip){ .place = place,
						    .places = 1,
						    .item = item,
						    .left = place->along,
						    .low = rb_length_none(),
						    .high = rb_length_none() };
		for (; strip->places < side && place->next; place = place->next)
			strip->places++;
		strip->right = place->along;
		item = hold_items(strip);
	} while (place->next);
}

/* -- steps -- */

/* Feet and inches on the foot's own way down; after that 1, 2 and 5 feet. */
static const int64_t inch_steps[] = { RB_INCH / 8, RB_INCH / 4, RB_INCH / 2, RB_INCH,
				      2 * RB_INCH, 3 * RB_INCH, 6 * RB_INCH };

static int64_t next_of_125(int64_t first, int64_t at)
{
	int64_t power = first;

	while (power * 10 <= at)
		power *= 10;
	return at < 2 * power ? 2 * power : at < 5 * power ? 5 * power : 10 * power;
}

static int64_t first_step(enum rb_unit unit)
{
	static const int64_t first[] = {
		[RB_FEET] = RB_FOOT / 100,        [RB_INCHES] = RB_INCH / 10,
		[RB_FEET_INCHES] = RB_FOOT,       [RB_METRES] = RB_METRE / 1000,
		[RB_MILLIMETRES] = RB_MILLIMETRE,
	};

	return first[unit];
}

static rb_length step_for(int64_t range, enum rb_unit unit)
{
	int64_t first = first_step(unit), step = first;

	if (unit == RB_FEET_INCHES)
		for (size_t i = 0; i < sizeof inch_steps / sizeof *inch_steps; i++)
			if (range / inch_steps[i] < INTERVALS)
				return rb_length_of(inch_steps[i]);
	while (range / step >= INTERVALS)
		step = next_of_125(first, step);
	return rb_length_of(step);
}

/* Down to a whole step. */
static int64_t floor_to(int64_t a, int64_t step)
{
	return a - (a % step + step) % step;
}

/* -- the scale -- */

static rb_length widest(const struct rb_profile_scale *scale)
{
	rb_length most = { 0 };

	for (size_t i = 0; i < scale->strips; i++) {
		rb_length run =
			rb_length_sub(scale->strip[i].right, scale->strip[i].left);

		if (run.nm > most.nm)
			most = run;
	}
	return most;
}

static rb_length highest(const struct rb_profile_scale *scale)
{
	rb_length most = { 0 };

	for (size_t i = 0; i < scale->strips; i++) {
		rb_length range =
			rb_length_sub(scale->strip[i].high, scale->strip[i].low);

		if (range.nm > most.nm)
			most = range;
	}
	return most;
}

/* Mark whole steps: each strip reaches from one to another. */
static void mark_steps(struct rb_profile_scale *scale, enum rb_unit unit)
{
	int64_t step;

	scale->step = step_for(highest(scale).nm, unit);
	step = scale->step.nm;
	for (size_t i = 0; i < scale->strips; i++) {
		struct rb_profile_strip *strip = &scale->strip[i];

		strip->low.nm = floor_to(strip->low.nm, step);
		strip->high.nm = floor_to(strip->high.nm + step - 1, step);
		if (strip->high.nm == strip->low.nm)
			strip->high.nm += step;
	}
}

/* The greatest 1, 2, 5, 10 ... times that the height allows; 0: even one is too much. */
static int exaggerate(const struct rb_profile_scale *scale, int height)
{
	rb_length tall = highest(scale);
	int64_t most = 0;

	for (int64_t times = 1; times <= EXAGGERATION_MOST; times = next_of_125(1, times))
		if (rb_length_share(tall, scale->pixels_long * times, scale->run.nm).nm <=
		    height)
			most = times;
	return (int)most;
}

static void fit_to_scale(struct rb_profile_scale *scale, int width, int height)
{
	rb_length tall = highest(scale);

	scale->pixels_long = width;
	scale->exaggeration = exaggerate(scale, height);
	if (!scale->exaggeration) { /* a steep one is drawn narrower */
		scale->exaggeration = 1;
		scale->pixels_long = height;
		scale->run = tall;
	}
	scale->pixels_tall = scale->pixels_long * scale->exaggeration;
	scale->tall = scale->run;
}

/* A quarter of the width, down to a 1, 2 or 5. */
static rb_length bar_for(const struct rb_profile_scale *scale, enum rb_unit unit,
			 int width)
{
	int64_t first = unit == RB_METRES ? RB_METRE / 10 : RB_FOOT / 10;
	int64_t most = rb_length_share(scale->run, width, 4 * scale->pixels_long).nm;
	int64_t bar = first;

	if (most < first)
		return rb_length_none();
	while (next_of_125(first, bar) <= most)
		bar = next_of_125(first, bar);
	return rb_length_of(bar);
}

bool rb_profile_fit(struct rb_profile_scale *scale, const struct rb_profile *profile,
		    int width, size_t side, int height)
{
	*scale = (struct rb_profile_scale){ .bar = rb_length_none() };
	side = profile->strip < side ? profile->strip : side;
	side = share_evenly(profile->places, side < 2 ? 2 : side);
	scale->strip = rb_arena_take(profile->arena, profile->places / (side - 1) + 2,
				     sizeof *scale->strip);
	if (!scale->strip)
		return false;
	if (!profile->first_place)
		return true;
	cut(scale, profile, side);
	for (size_t i = 0; i < scale->strips; i++)
		if (!rb_length_given(scale->strip[i].low))
			scale->strip[i].low = scale->strip[i].high = rb_length_of(0);
	mark_steps(scale, profile->style.unit);
	scale->run = widest(scale);
	scale->pixels_long = width;
	scale->pixels_tall = height;
	scale->tall = highest(scale);
	if (profile->to_scale && scale->run.nm)
		fit_to_scale(scale, width, height);
	if (!scale->run.nm)
		scale->run = rb_length_of(1);
	if (scale->exaggeration)
		scale->bar = bar_for(scale, profile->unit_along, width);
	return true;
}

int rb_profile_right(const struct rb_profile_scale *scale,
		     const struct rb_profile_strip *strip, rb_length along)
{
	return (int)rb_length_share(rb_length_sub(along, strip->left), scale->pixels_long,
				    scale->run.nm)
		.nm;
}

int rb_profile_up(const struct rb_profile_scale *scale,
		  const struct rb_profile_strip *strip, rb_length elevation)
{
	return (int)rb_length_share(rb_length_sub(elevation, strip->low),
				    scale->pixels_tall, scale->tall.nm)
		.nm;
}
