/* SPDX-License-Identifier: MIT */
/* practice.c - the problems that need no book, and which problem comes next. */
#include "level/practice.h"

#include "level/practice_book.h"

/* By unit: one in the last place that a rod shows, and how that is written. */
static const struct {
	int64_t step; /* 0: a part of an inch */
	int decimals;
} places[] = {
	[RB_FEET] = { RB_FOOT / 100, 2 },
	[RB_INCHES] = { 0, 0 },
	[RB_FEET_INCHES] = { 0, 0 },
	[RB_METRES] = { RB_MILLIMETRE, 3 },
	[RB_MILLIMETRES] = { RB_MILLIMETRE, 0 },
};

int64_t rb_practice_step(const struct rb_practice_options *options)
{
	int64_t step = places[options->unit].step;

	return step ? step : RB_INCH / options->fraction;
}

/* An eighth of an inch is exact in three decimals, a sixteenth in four. */
static int decimals_of_inches(int fraction)
{
	int decimals = 0;

	for (; fraction > 1; fraction /= 2)
		decimals++;
	return decimals;
}

struct rb_style rb_practice_style(const struct rb_practice_options *options)
{
	int decimals = options->unit == RB_INCHES ? decimals_of_inches(options->fraction)
						  : places[options->unit].decimals;

	return (struct rb_style){ options->unit, decimals, options->fraction, false };
}

static bool is_metric(enum rb_unit unit)
{
	return unit == RB_METRES || unit == RB_MILLIMETRES;
}

/* A length of whole steps between so many feet. */
static rb_length steps(struct rb_random *r, int64_t step, int64_t from_feet,
		       int64_t to_feet)
{
	return rb_length_of(step * rb_random_between(r, from_feet * RB_FOOT / step + 1,
						     to_feet * RB_FOOT / step));
}

#define MARK(options) (RB_INCH / (options)->fraction)

/* -- conversions -- */

static const enum rb_task conversions[] = {
	RB_TASK_TO_INCHES, RB_TASK_TO_INCHES,   RB_TASK_TO_INCHES, RB_TASK_TO_FEET,
	RB_TASK_TO_FEET,   RB_TASK_TO_FEET,     RB_TASK_ADD,       RB_TASK_SUBTRACT,
	RB_TASK_SUBTRACT,  RB_TASK_FROM_METRES, RB_TASK_TO_METRES, RB_TASK_DIVIDE,
};

static void make_conversion(struct rb_problem *p, const struct rb_practice_options *o,
			    struct rb_random *r)
{
	int64_t last = sizeof conversions / sizeof *conversions - 1;

	p->task = conversions[rb_random_between(r, 0, last)];
	switch (p->task) {
	case RB_TASK_TO_INCHES:
		p->a = steps(r, RB_FOOT / 100, 0, 13);
		break;
	case RB_TASK_FROM_METRES:
		p->a = steps(r, RB_MILLIMETRE, 0, 13);
		break;
	case RB_TASK_ADD:
		p->a = steps(r, MARK(o), 90, 110);
		p->b = steps(r, MARK(o), 0, 13);
		break;
	case RB_TASK_SUBTRACT:
		p->a = steps(r, MARK(o), 95, 110);
		p->b = steps(r, MARK(o), 0, 13);
		break;
	case RB_TASK_DIVIDE:
		p->a = steps(r, MARK(o), 4, 30);
		p->factor = rb_random_between(r, 2, 8);
		break;
	default:
		p->a = steps(r, MARK(o), 0, 13);
	}
}

/* -- fall and grade rods -- */

static const enum rb_task falls[] = {
	RB_TASK_FALL,  RB_TASK_FALL,      RB_TASK_LOWER_INVERT, RB_TASK_LOWER_INVERT,
	RB_TASK_SLOPE, RB_TASK_GRADE_ROD, RB_TASK_GRADE_ROD,    RB_TASK_DIG,
};

/* Slopes as they are asked for on drains: parts of an inch a foot, and 1 in so many. */
static const int sixteenths[] = { 1, 2, 2, 3, 4, 4, 6, 8 };
static const int one_in[] = { 200, 100, 80, 60, 50, 40 };

static rb_slope pick_slope(enum rb_unit unit, struct rb_random *r)
{
	int64_t n;

	if (is_metric(unit)) {
		n = one_in[rb_random_between(r, 0, sizeof one_in / sizeof *one_in - 1)];
		return (rb_slope){ { RB_METRE }, { n * RB_METRE } };
	}
	n = sixteenths[rb_random_between(r, 0,
					 sizeof sixteenths / sizeof *sixteenths - 1)];
	return (rb_slope){ { n * (RB_INCH / 16) }, { RB_FOOT } };
}

static rb_length pick_run(enum rb_unit unit, struct rb_random *r)
{
	if (is_metric(unit))
		return rb_length_of(RB_METRE / 2 * rb_random_between(r, 6, 80));
	return rb_length_of(RB_FOOT * rb_random_between(r, 8, 120));
}

/* A length as it would be written: in whole steps. */
static rb_length in_steps(rb_length a, int64_t step)
{
	return rb_length_of(a.nm / step * step);
}

static void make_fall(struct rb_problem *p, const struct rb_practice_options *o,
		      struct rb_random *r)
{
	int64_t step = rb_practice_step(o);
	rb_length fall;

	p->task = falls[rb_random_between(r, 0, sizeof falls / sizeof *falls - 1)];
	p->slope = pick_slope(o->unit, r);
	p->run = pick_run(o->unit, r);
	fall = rb_slope_over(p->slope, p->run);
	p->a = steps(r, step, 92, 106);
	switch (p->task) {
	case RB_TASK_SLOPE: /* a little off the round slope, as a job is */
		p->b = rb_length_sub(p->a, in_steps(fall, step));
		p->b.nm += step * rb_random_between(r, -2, 0);
		break;
	case RB_TASK_GRADE_ROD:
		p->b = rb_length_sub(p->a, steps(r, step, 1, 12));
		break;
	case RB_TASK_DIG:
		p->a = steps(r, step, 3, 12);
		p->b = rb_length_add(p->a,
				     rb_length_of(step * rb_random_between(r, -25, 25)));
		break;
	default:
		break;
	}
}

/* -- which problem -- */

struct rb_problem *rb_practice(struct rb_arena *arena,
			       const struct rb_practice_options *options, int number)
{
	struct rb_problem *p = rb_arena_take_clear(arena, 1, sizeof *p);
	struct rb_random random =
		rb_random_start(options->seed, (uint64_t)number * 4 + options->kind);

	if (!p)
		return NULL;
	p->number = number;
	p->unit = options->unit;
	switch (options->kind) {
	case RB_PRACTICE_CONVERT:
		make_conversion(p, options, &random);
		return p;
	case RB_PRACTICE_FALL:
		make_fall(p, options, &random);
		return p;
	case RB_PRACTICE_LOOP:
		break;
	}
	p->task = RB_TASK_REDUCE;
	p->book = rb_practice_book(arena, options, &random);
	if (p->book && options->plant)
		rb_practice_plant(p->book, options, &random);
	return p->book ? p : NULL;
}
