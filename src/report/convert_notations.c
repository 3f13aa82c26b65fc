/* SPDX-License-Identifier: MIT */
/* convert_notations.c - from feet and inches to decimals, and back, and to metres. */
#include <stdlib.h>

#include "measure/wide.h"
#include "report/convert_steps.h"
#include "report/ratio_words.h"

#define MOST_DECIMALS 6

struct teller {
	struct rb_phrase *phrase;
	const struct rb_conversion *c;
};

static void text(struct teller *t, const char *words)
{
	rb_phrase_text(t->phrase, words);
}

static void line(struct teller *t)
{
	text(t, t->phrase->used ? "\n  " : "  ");
}

static struct rb_ratio no_sign(struct rb_ratio a)
{
	a.num = llabs(a.num);
	return a;
}

/* 5 x 12 in + 3 1/2 in = 63 1/2 in, or the other way round where inches were written. */
static void all_inches(struct teller *t, struct rb_ratio a)
{
	bool from_inches =
		rb_conversion_is_one(t->c) && t->c->reading.notation == RB_AS_INCHES;

	line(t);
	if (from_inches) {
		rb_say_any_inches(t->phrase, a);
		text(t, " = ");
	}
	rb_phrase_number(t->phrase, a.num / RB_FOOT);
	text(t, " x 12 in + ");
	rb_say_any_inches(t->phrase, rb_ratio_of_length(a.num % RB_FOOT));
	text(t, from_inches ? ": " : " = ");
	if (from_inches)
		rb_say_feet_inches(t->phrase, a);
	else
		rb_say_any_inches(t->phrase, a);
}

/* 5'-3 1/2": 3 1/2 in / 12 = 0.291667 ft; and all of it in inches. */
static void inches_to_decimals(struct teller *t, struct rb_ratio a)
{
	int64_t feet = a.num / RB_FOOT;
	struct rb_ratio rest = rb_ratio_of_length(a.num - feet * RB_FOOT);
	bool exact;

	if (feet)
		all_inches(t, a);
	if (feet && !rest.num)
		return;
	line(t);
	rb_say_any_inches(t->phrase, rest);
	text(t, " / 12 = ");
	exact = rb_say_number(t->phrase, rest, RB_FEET);
	rb_phrase_rounded(t->phrase, true, exact);
	if (!feet)
		return;
	line(t);
	rb_phrase_number(t->phrase, feet);
	text(t, " ft + ");
	rb_say_number(t->phrase, rest, RB_FEET);
	text(t, " = ");
	rb_phrase_rounded(t->phrase, exact, rb_say_number(t->phrase, a, RB_FEET));
}

static const char *part_name(int fraction)
{
	switch (fraction) {
	case 8:
		return "eighths";
	case 16:
		return "sixteenths";
	case 32:
		return "32nds";
	default:
		return "64ths";
	}
}

/* So many times a length.  False: its parts are too small for that, and it goes by
 * nanometres. */
static bool times(struct rb_ratio *product, struct rb_ratio a, int factor)
{
	bool fits = a.num <= INT64_MAX / factor;

	*product = fits ? a : rb_ratio_of_length(rb_wide_divide(a.num, a.den));
	product->num *= factor;
	return fits;
}

/* 0.48 in x 16 = 7.68 sixteenths: the nearest is 8, 1/2 in */
static void parts_of_inch(struct teller *t, struct rb_ratio part)
{
	int fraction = t->c->style.fraction;
	struct rb_ratio parts;
	char buf[RB_RATIO_TEXT];
	int64_t nearest = rb_wide_divide(rb_wide_mul(part.num, fraction),
					 rb_wide_mul(part.den, RB_INCH));
	bool exact, parts_exact;

	line(t);
	exact = rb_say_number(t->phrase, part, RB_INCHES);
	text(t, " x ");
	rb_phrase_number(t->phrase, fraction);
	text(t, " = ");
	parts_exact = times(&parts, part, fraction);
	parts_exact &= rb_ratio_write(buf, parts, RB_INCHES, MOST_DECIMALS, 0);
	text(t, buf);
	text(t, " ");
	text(t, part_name(fraction));
	rb_phrase_rounded(t->phrase, exact, parts_exact);
	text(t, ": the nearest mark is ");
	rb_phrase_number(t->phrase, nearest);
	text(t, ", ");
	rb_say_inches(t->phrase, rb_ratio_of_length(nearest * (RB_INCH / fraction)));
}

/* 5.29 ft: 0.29 ft x 12 = 3.48 in, and the part of an inch. */
static void decimals_to_inches(struct teller *t, struct rb_ratio a)
{
	const struct rb_style tape = { RB_FEET_INCHES, 0, t->c->style.fraction, true };
	int64_t feet = a.num / a.den / RB_FOOT;
	struct rb_ratio rest = { a.num - feet * RB_FOOT * a.den, a.den, true };
	int64_t whole = rest.num / rest.den / RB_INCH;
	char mark[RB_LENGTH_TEXT];
	bool exact;

	if (feet) {
		line(t);
		exact = rb_say_number(t->phrase, a, RB_FEET);
		text(t, " = ");
		rb_phrase_number(t->phrase, feet);
		text(t, " ft + ");
		rb_phrase_rounded(t->phrase, exact,
				  rb_say_number(t->phrase, rest, RB_FEET));
	}
	line(t);
	exact = rb_say_number(t->phrase, rest, RB_FEET);
	text(t, " x 12 = ");
	rb_phrase_rounded(t->phrase, exact, rb_say_number(t->phrase, rest, RB_INCHES));
	rest.num -= whole * RB_INCH * rest.den;
	text(t, ": ");
	rb_phrase_number(t->phrase, whole);
	text(t, " in and ");
	rb_say_number(t->phrase, rest, RB_INCHES);
	if (rest.num)
		parts_of_inch(t, rest);
	rb_length_format(mark, rb_length_absolute(rb_conversion_mark(t->c)), tape);
	line(t);
	text(t, "together ");
	text(t, mark);
}

/* To or from metres: an inch is 25.4 mm, a foot 0.3048 m. */
static void metric(struct teller *t, struct rb_ratio a, bool from_metric)
{
	bool exact;

	line(t);
	exact = rb_say_number(t->phrase, a, from_metric ? RB_METRES : RB_INCHES);
	text(t, from_metric ? " / 0.3048 = " : " x 0.0254 = ");
	rb_phrase_rounded(t->phrase, exact,
			  rb_say_number(t->phrase, a, from_metric ? RB_FEET : RB_METRES));
}

static bool is_metric(const struct teller *t)
{
	enum rb_unit unit =
		rb_conversion_is_one(t->c) ? t->c->reading.unit : t->c->style.unit;

	return unit == RB_METRES || unit == RB_MILLIMETRES;
}

static void tell(struct teller *t)
{
	struct rb_ratio a = no_sign(t->c->worked.ratio);
	bool written_in_inches =
		rb_conversion_is_one(t->c) && t->c->reading.notation != RB_AS_DECIMAL;

	text(t, rb_conversion_is_one(t->c)
			? "from one notation to the other"
			: "the answer, from one notation to the other");
	if (t->c->worked.ratio.num < 0) {
		line(t);
		text(t,
		     "below zero: worked without the minus, which comes back at the end");
	}
	if (is_metric(t))
		metric(t, a, true);
	if (rb_ratio_is_sixtyfourths(a) &&
	    (written_in_inches || !rb_conversion_is_one(t->c)))
		inches_to_decimals(t, a);
	else
		decimals_to_inches(t, a);
	if (!is_metric(t))
		metric(t, a, false);
}

void rb_conversion_tell_notations(struct rb_phrase *phrase, const struct rb_conversion *c)
{
	struct teller t = { phrase, c };

	tell(&t);
}
