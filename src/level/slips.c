/* SPDX-License-Identifier: MIT */
/* What a written number may have been, one slip away. */
#include "level/slips.h"

/* clang-format off */
/* A book's unit: what a bare number counts, and the most decimals whose digits are looked
 * at (what is finer came from a formula, not from a pencil). */
static const struct scale {
	enum rb_measure_system system;
	int64_t one;
	int decimals;
} scales[] = {
	[RB_FEET]        = { RB_SYSTEM_FEET,   RB_FOOT,       5 },
	[RB_INCHES]      = { RB_SYSTEM_INCHES, RB_INCH,       4 },
	[RB_FEET_INCHES] = { RB_SYSTEM_FEET,   RB_FOOT,       5 },
	[RB_METRES]      = { RB_SYSTEM_METRIC, RB_METRE,      5 },
	[RB_MILLIMETRES] = { RB_SYSTEM_METRIC, RB_MILLIMETRE, 2 },
};

/* The marks next to each other on a rod that are taken for one another. */
static const struct marks {
	enum rb_measure_system system;
	enum rb_slip slip;
	int64_t step;
} marks[] = {
	{ RB_SYSTEM_FEET,   RB_SLIP_FOOT,  RB_FOOT },
	{ RB_SYSTEM_FEET,   RB_SLIP_TENTH, RB_FOOT / 10 },
	{ RB_SYSTEM_INCHES, RB_SLIP_FOOT,  RB_FOOT },
	{ RB_SYSTEM_INCHES, RB_SLIP_TENTH, RB_INCH },
	{ RB_SYSTEM_METRIC, RB_SLIP_FOOT,  RB_METRE },
	{ RB_SYSTEM_METRIC, RB_SLIP_FOOT,  RB_METRE / 10 },
	{ RB_SYSTEM_METRIC, RB_SLIP_TENTH, RB_METRE / 100 },
};

static const int8_t look_alikes[][2] = {
	{ 0, 6 }, { 0, 8 }, { 1, 7 }, { 2, 7 }, { 3, 5 },
	{ 3, 8 }, { 4, 9 }, { 5, 6 }, { 6, 8 },
};
/* clang-format on */

#define LENGTH_OF(array) (sizeof(array) / sizeof *(array))

int64_t rb_rod_step(enum rb_unit unit)
{
	if (scales[unit].system == RB_SYSTEM_METRIC)
		return RB_MILLIMETRE;
	return unit == RB_FEET ? RB_FOOT / 100 : RB_INCH / 8;
}

static int64_t size_of(const struct rb_written *w)
{
	return rb_length_absolute(w->value).nm;
}

/* -- reading the cell as it was written -- */

static bool read_decimals(struct rb_written *w, const struct scale *scale, int places)
{
	int64_t one = scale->one;
	int decimals = 0;

	while (decimals < scale->decimals &&
	       (decimals < places || size_of(w) % one != 0)) {
		one /= 10;
		decimals++;
	}
	if (size_of(w) % one != 0)
		return false;
	w->system = scale->system;
	w->figures[0] =
		(struct rb_figures){ size_of(w) / one, one, INT64_MAX, decimals + 1 };
	w->figure_count = 1;
	return true;
}

static bool read_parts(struct rb_written *w, enum rb_unit unit)
{
	int64_t inches = size_of(w) / RB_INCH;

	if (size_of(w) % RB_SIXTYFOURTH != 0)
		return false;
	w->system = RB_SYSTEM_INCHES;
	w->in_parts = true;
	if (unit == RB_INCHES) {
		w->figures[0] = (struct rb_figures){ inches, RB_INCH, INT64_MAX, 1 };
		w->figure_count = 1;
		return true;
	}
	w->figures[0] = (struct rb_figures){ inches / 12, RB_FOOT, INT64_MAX, 1 };
	w->figures[1] = (struct rb_figures){ inches % 12, RB_INCH, 12, 1 };
	w->figure_count = 2;
	return true;
}

static int finest_fraction(const struct rb_book *book)
{
	static const enum rb_column sights[] = { RB_BACKSIGHT, RB_INTERMEDIATE,
						 RB_FORESIGHT };
	int finest = 8;

	for (size_t i = 0; i < LENGTH_OF(sights); i++)
		if (book->places[sights[i]].denominator > finest)
			finest = book->places[sights[i]].denominator;
	return finest < 16 ? 8 : finest < 32 ? 16 : finest < 64 ? 32 : 64;
}

void rb_written_read(struct rb_written *w, const struct rb_book *book)
{
	const struct scale *scale = &scales[book->unit];
	bool inches = (book->written[w->row] & RB_WRITTEN_IN_INCHES(w->column)) != 0;
	int decimals = book->places[w->column].decimals;

	w->elevation = w->column == RB_KNOWN_ELEVATION || w->column == RB_ELEVATION;
	w->system = scale->system;
	w->denominator = finest_fraction(book);
	w->rod = book->key.rod;
	if ((inches || book->unit == RB_FEET_INCHES) && read_parts(w, book->unit)) {
		if (book->unit == RB_INCHES && decimals > 0) /* 51.25: four digits */
			read_decimals(w, scale, decimals);
		return;
	}
	if (read_decimals(w, scale, decimals))
		return;
	/* A reading in another unit than the book's: metres, or 64ths from a formula. */
	if (!read_decimals(w, &scales[RB_METRES], 0))
		read_parts(w, book->unit);
}

/* -- the slips -- */

struct maker {
	const struct rb_written *w;
	rb_slip_taker *take;
	void *context;
};

/* size is on the side of zero on which the number was written. */
static void offer(const struct maker *m, enum rb_slip slip, int64_t size)
{
	const struct rb_written *w = m->w;
	int64_t least = w->elevation ? -RB_LENGTH_MAX : 0;
	int64_t most = w->elevation ? RB_LENGTH_MAX : w->rod.nm;

	if (size >= least && size <= most && size != size_of(w))
		m->take(m->context, w, slip,
			rb_length_of(w->value.nm < 0 ? -size : size));
}

static void offer_figures(const struct maker *m, const struct rb_figures *f,
			  enum rb_slip slip, int64_t number)
{
	if (number < f->below)
		offer(m, slip, size_of(m->w) + (number - f->number) * f->one);
}

static bool is_written_digit(const struct rb_figures *f, int64_t place, int position)
{
	return position < f->least_digits || f->number >= place;
}

/* With a zero in front, as 1.05 may have been 10.05. */
static void exchange_digits(const struct maker *m, const struct rb_figures *f)
{
	int64_t place = 1;

	for (int i = 0; is_written_digit(f, place, i); i++, place *= 10) {
		int64_t low = f->number / place % 10, high = f->number / place / 10 % 10;

		offer_figures(m, f, RB_SLIP_EXCHANGED,
			      f->number + 9 * place * (low - high));
	}
}

static void misread_digits(const struct maker *m, const struct rb_figures *f)
{
	int64_t place = 1;

	for (int i = 0; is_written_digit(f, place, i); i++, place *= 10) {
		int64_t digit = f->number / place % 10;

		for (size_t k = 0; k < LENGTH_OF(look_alikes); k++) {
			const int8_t *pair = look_alikes[k];
			int64_t other = pair[0] + pair[1] - digit;

			if (digit == pair[0] || digit == pair[1])
				offer_figures(m, f, RB_SLIP_LOOK_ALIKE,
					      f->number + place * (other - digit));
		}
	}
}

/* 5'-3" for 3'-5". */
static void exchange_feet_and_inches(const struct maker *m)
{
	int64_t feet = m->w->figures[0].number, inches = m->w->figures[1].number;

	if (m->w->figure_count == 2 && feet < 12)
		offer(m, RB_SLIP_EXCHANGED,
		      size_of(m->w) + (inches - feet) * (RB_FOOT - RB_INCH));
}

static void take_wrong_mark(const struct maker *m)
{
	for (size_t i = 0; i < LENGTH_OF(marks); i++) {
		if (marks[i].system != m->w->system)
			continue;
		offer(m, marks[i].slip, size_of(m->w) + marks[i].step);
		offer(m, marks[i].slip, size_of(m->w) - marks[i].step);
	}
}

/* 5.6 for 5'-6"; 5.1 may have been 5.10, for 5'-10"; 5.11 for 5'-11". */
static void inches_as_decimals(const struct maker *m)
{
	int64_t part = size_of(m->w) % RB_FOOT, feet = size_of(m->w) - part;
	int64_t tenths = part / (RB_FOOT / 10);

	if (part == RB_FOOT / 100 * 11)
		offer(m, RB_SLIP_INCHES, feet + 11 * RB_INCH);
	if (part == 0 || part % (RB_FOOT / 10) != 0)
		return;
	offer(m, RB_SLIP_INCHES, feet + tenths * RB_INCH);
	if (tenths == 1)
		offer(m, RB_SLIP_INCHES, feet + 10 * RB_INCH);
}

/* The reverse: 5'-6" for 5.6, 5'-10" for 5.10. */
static void decimals_as_inches(const struct maker *m)
{
	int64_t part = size_of(m->w) % RB_FOOT, feet = size_of(m->w) - part;
	int64_t inches = part / RB_INCH;

	if (part != 0 && part % RB_INCH == 0)
		offer(m, RB_SLIP_INCHES,
		      feet + inches * (RB_FOOT / (inches < 10 ? 10 : 100)));
}

/* Where no fraction was written, any may have been dropped; one that was written may be
 * out by a half, a quarter or an eighth (a sixteenth, in a book of sixteenths). */
static void lose_fraction(const struct maker *m)
{
	int64_t size = size_of(m->w), inch = size - size % RB_INCH;
	int64_t finest = RB_INCH / m->w->denominator;

	if (size == inch) {
		for (int64_t part = finest; part < RB_INCH; part += finest)
			offer(m, RB_SLIP_FRACTION, inch + part);
		return;
	}
	for (int64_t part = RB_INCH / 2; part >= finest && part >= RB_INCH / 16;
	     part /= 2) {
		if (size + part < inch + RB_INCH)
			offer(m, RB_SLIP_FRACTION, size + part);
		if (size - part >= inch)
			offer(m, RB_SLIP_FRACTION, size - part);
	}
}

static void change_sign(const struct maker *m)
{
	if (m->w->value.nm != 0 && !m->w->elevation)
		m->take(m->context, m->w, RB_SLIP_SIGN, rb_length_negate(m->w->value));
}

void rb_slips_each(const struct rb_written *written, rb_slip_taker *take, void *context)
{
	const struct maker m = { written, take, context };

	for (int i = 0; i < written->figure_count; i++) {
		exchange_digits(&m, &written->figures[i]);
		misread_digits(&m, &written->figures[i]);
	}
	take_wrong_mark(&m);
	change_sign(&m);
	if (written->in_parts) {
		exchange_feet_and_inches(&m);
		decimals_as_inches(&m);
		lose_fraction(&m);
	} else if (written->system == RB_SYSTEM_FEET) {
		inches_as_decimals(&m);
	}
}
