/* SPDX-License-Identifier: MIT */
/* hand_pen.c - slips in how a number was read or written: inches, fractions, digits. */
#include "level/hand_suspicion.h"
#include "level/slips.h"

static rb_length off(const struct rb_suspicion *s)
{
	return rb_length_absolute(rb_length_sub(s->cell->written, s->cell->follows));
}

static bool in_feet(const struct rb_suspicion *s)
{
	enum rb_unit unit = s->walk->book->unit;

	return unit == RB_FEET || unit == RB_FEET_INCHES;
}

/* Is the column written in feet and inches, or in inches? */
static bool in_inches(const struct rb_suspicion *s)
{
	return rb_length_given(s->walk->fraction[s->cell->column]);
}

/* -- inches and decimals -- */

static int64_t whole_inches(rb_length a)
{
	return rb_length_absolute(a).nm % RB_FOOT / RB_INCH;
}

/* Ten inches carried as a foot: 3" + 11" = 14" written 1'-4"; borrowed as a foot. */
bool rb_pen_base_ten(struct rb_suspicion *s)
{
	int64_t base = whole_inches(s->cell->base),
		reading = whole_inches(s->cell->reading);
	int64_t wrong = s->cell->written.nm - s->cell->follows.nm;
	bool adds = (s->sign > 0) == (s->cell->reading.nm >= 0);

	if (!in_inches(s))
		return false;
	return adds ? base + reading >= 9 &&
			       rb_hand_same(rb_length_of(wrong),
					    rb_length_of(2 * RB_INCH), s->step)
		    : base <= reading && rb_hand_same(rb_length_of(-wrong),
						      rb_length_of(2 * RB_INCH), s->step);
}

/* Decimals of a foot taken for inches: 5.29 as 5'-2.9"; 5.11 as 5'-11". */
static bool in_decimals(const struct rb_suspicion *s, rb_length value,
			bool (*comes_out)(const struct rb_suspicion *s, rb_length value))
{
	int64_t size = rb_length_absolute(value).nm, part = size % RB_FOOT;
	int64_t sign = value.nm < 0 ? -1 : 1, feet = size - part;
	int64_t hundredths = part / (RB_FOOT / 100);

	return comes_out(s, rb_length_of(sign * (feet + part * 10 / 12))) ||
	       (hundredths <= 11 &&
		comes_out(s, rb_length_of(sign * (feet + hundredths * RB_INCH))));
}

/* Whole inches taken for decimals of a foot: 5'-6" as 5.6; 5'-11" as 5.11. */
static bool in_feet_and_inches(const struct rb_suspicion *s, rb_length value,
			       bool (*comes_out)(const struct rb_suspicion *s,
						 rb_length value))
{
	int64_t size = rb_length_absolute(value).nm, part = size % RB_FOOT;
	int64_t sign = value.nm < 0 ? -1 : 1, feet = size - part, inches = part / RB_INCH;

	return part % RB_INCH == 0 &&
	       (comes_out(s, rb_length_of(sign * (feet + inches * (RB_FOOT / 10)))) ||
		comes_out(s, rb_length_of(sign * (feet + inches * (RB_FOOT / 100)))));
}

/* Where the reading of a cell is booked. */
static enum rb_column column_of_reading(const struct rb_suspicion *s)
{
	if (s->cell->step == RB_STEP_HEIGHT)
		return RB_BACKSIGHT;
	return s->cell->step == RB_STEP_FORESIGHT ? RB_FORESIGHT : RB_INTERMEDIATE;
}

static uint32_t row_of_reading(const struct rb_suspicion *s)
{
	const struct rb_shot *shot = &s->walk->reduced->shot[s->walk->shot];

	return s->cell->step == RB_STEP_HEIGHT ? shot->backsight_row : shot->row;
}

bool rb_pen_as_decimals(struct rb_suspicion *s)
{
	unsigned bit = RB_WRITTEN_IN_INCHES((unsigned)column_of_reading(s));

	if (!in_feet(s))
		return false;
	if (s->walk->book->written[row_of_reading(s)] & bit)
		return in_feet_and_inches(s, s->cell->reading, rb_with_reading);
	return in_decimals(s, s->cell->reading, rb_with_reading) ||
	       (in_inches(s) && (in_feet_and_inches(s, s->cell->base, rb_with_base) ||
				 in_decimals(s, s->cell->follows, rb_suspect_written)));
}

static rb_length without_fraction(rb_length a)
{
	return rb_length_of(a.nm - a.nm % RB_INCH);
}

bool rb_pen_fraction_dropped(struct rb_suspicion *s)
{
	const struct rb_hand_cell *cell = s->cell;

	if (!in_inches(s))
		return false;
	if (rb_suspect_written(s, without_fraction(cell->follows)))
		return true;
	return rb_length_given(cell->reading) &&
	       (rb_with_reading(s, without_fraction(cell->reading)) ||
		rb_with_base(s, without_fraction(cell->base)) ||
		rb_suspect_written(s, rb_suspect_from(s, without_fraction(cell->base),
						      without_fraction(cell->reading))));
}

/* -- the pen -- */

/* What a number would have to be, its digits in order, for the cell to follow. */
struct digits {
	struct rb_suspicion *s;
	bool of_reading, found;
};

static void try_digits(void *self, const struct rb_written *written, enum rb_slip slip,
		       rb_length maybe)
{
	struct digits *d = self;

	if (slip != RB_SLIP_EXCHANGED || d->found)
		return;
	if (rb_length_absolute(rb_length_sub(maybe, written->value)).nm < d->s->step.nm)
		return; /* finer than the cell shows */
	d->found = d->of_reading ? rb_with_reading(d->s, maybe)
				 : rb_hand_same(maybe, d->s->cell->follows, d->s->step);
}

static bool digits_exchanged(struct rb_suspicion *s, uint32_t row, enum rb_column column,
			     rb_length value, bool of_reading)
{
	struct rb_written written = {
		.row = row, .column = column, .value = value, .effect = 1
	};
	struct digits d = { s, of_reading, false };

	rb_written_read(&written, s->walk->book);
	written.elevation = !of_reading;
	rb_slips_each(&written, try_digits, &d);
	return d.found;
}

bool rb_pen_exchanged(struct rb_suspicion *s)
{
	const struct rb_hand_cell *cell = s->cell;

	if (digits_exchanged(s, cell->row, cell->column, cell->written, false))
		return true;
	return rb_length_given(cell->reading) &&
	       digits_exchanged(s, row_of_reading(s), column_of_reading(s), cell->reading,
				true);
}

bool rb_pen_copied(struct rb_suspicion *s)
{
	const struct rb_book *book = s->walk->book;

	for (uint32_t row = s->cell->row, far = 0; row-- > 0 && far < RB_FAR_BACK;
	     far++) {
		rb_length above = rb_book_value(book, s->cell->column, row);

		s->row = row;
		if (rb_length_given(above))
			return above.nm == s->cell->written.nm;
	}
	return false;
}

/* Written to a coarser place than the column's, or cut off instead of rounded. */
bool rb_pen_rounded(struct rb_suspicion *s)
{
	int times = in_inches(s) ? 2 : 10;

	if (off(s).nm < s->step.nm)
		return true;
	for (int64_t coarse = s->step.nm * times;
	     coarse <= s->step.nm * 100 && coarse <= RB_FOOT; coarse *= times)
		if (s->cell->written.nm % coarse == 0 &&
		    rb_hand_same(s->cell->written, s->cell->follows,
				 rb_length_of(coarse)))
			return true;
	return false;
}

/* Is something carried into this place, or borrowed from it, on the way from base and
 * reading to what follows?  Of sums, and where there is no such way, that is not known.
 */
static bool crosses(const struct rb_suspicion *s, int64_t place)
{
	const struct rb_hand_cell *cell = s->cell;
	int64_t base, reading;

	if (!rb_length_given(cell->reading) || cell->base.nm < 0)
		return true;
	base = cell->base.nm % place;
	reading = rb_length_absolute(cell->reading).nm % place;
	return (s->sign > 0) == (cell->reading.nm >= 0) ? base + reading >= place
							: base < reading;
}

static bool is_out_by(const struct rb_suspicion *s, int64_t place)
{
	return rb_hand_same(off(s), rb_length_of(place), s->step);
}

/* Who borrows a foot may well be out by an inch. */
static bool inches_carry_lost(const struct rb_suspicion *s)
{
	return (is_out_by(s, RB_INCH) && (crosses(s, RB_INCH) || crosses(s, RB_FOOT))) ||
	       (is_out_by(s, RB_FOOT) && crosses(s, RB_FOOT)) ||
	       (is_out_by(s, 10 * RB_FOOT) && crosses(s, 10 * RB_FOOT));
}

bool rb_pen_carry_lost(struct rb_suspicion *s)
{
	if (in_inches(s))
		return inches_carry_lost(s);
	for (int64_t place = s->step.nm; place <= 1000 * RB_FOOT; place *= 10)
		if (is_out_by(s, place) && crosses(s, place))
			return true;
	return false;
}

/* Two lengths whose decimals are the same but for one digit; in inches, whose feet are.
 */
static bool one_digit_apart(const struct rb_suspicion *s, rb_length a, rb_length b)
{
	int64_t apart = rb_length_absolute(rb_length_sub(a, b)).nm;
	int64_t least = in_inches(s) ? RB_FOOT : s->step.nm;

	for (int64_t place = least; place <= 1000 * RB_FOOT; place *= 10)
		if (apart % place == 0 && apart / place <= 9 &&
		    a.nm / (10 * place) == b.nm / (10 * place))
			return apart != 0;
	return false;
}

bool rb_pen_benchmark(struct rb_suspicion *s)
{
	const struct rb_hand_cell *cell = s->cell;

	if (s->walk->setup == RB_NO_SETUP ||
	    s->walk->reduced->setup[s->walk->setup].via != RB_NO_SHOT)
		return false;
	if (cell->step == RB_STEP_REPEATED)
		return cell->column == RB_ELEVATION;
	return one_digit_apart(s, cell->base,
			       rb_length_sub(cell->written, cell->reading));
}
