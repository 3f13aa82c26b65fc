/* SPDX-License-Identifier: MIT */
/* slope.c - exact slopes: read, compared, carried over a length. */
#include "rodbook/slope.h"

#include <string.h>

#include "measure/mark.h"
#include "measure/reading.h"
#include "measure/wide.h"

int rb_slope_compare(rb_slope a, rb_slope b)
{
	return rb_wide_compare(rb_wide_mul(a.fall.nm, b.run.nm),
			       rb_wide_mul(b.fall.nm, a.run.nm));
}

rb_length rb_slope_over(rb_slope s, rb_length length)
{
	return rb_length_share(length, s.fall.nm, s.run.nm);
}

/* A part of the marked text, without blanks around it. */
struct part {
	const char *text;
	size_t length;
};

static struct part cut(const char *from, const char *to)
{
	while (from < to && *from == ' ')
		from++;
	while (from < to && to[-1] == ' ')
		to--;
	return (struct part){ from, (size_t)(to - from) };
}

static bool only(struct part p, const char *characters)
{
	for (size_t i = 0; i < p.length; i++)
		if (!strchr(characters, p.text[i]))
			return false;
	return true;
}

/* A number without a unit; read as metres, so that it is exact to nine places. */
static bool number(struct part p, rb_length *out)
{
	const struct rb_reading_rules rules = {
		RB_METRES, RB_OF_TAPE, false, { RB_NOT_GIVEN_NM }
	};
	struct rb_reading r;

	if (!only(p, "0123456789."))
		return false;
	r = rb_reading_parse(p.text, p.length, &rules);
	*out = r.value;
	return r.refusal == RB_READ;
}

/* A length that carries its own mark. */
static bool marked(struct part p, rb_length *out)
{
	const struct rb_reading_rules rules = {
		RB_FEET, RB_OF_TAPE, false, { RB_NOT_GIVEN_NM }
	};
	struct rb_reading r;

	if (!p.length || only(p, "0123456789. /-"))
		return false;
	r = rb_reading_parse(p.text, p.length, &rules);
	*out = r.value;
	return r.refusal == RB_READ;
}

/* What a fall is taken over: a length, or a unit alone ("in/ft": per one foot). */
static bool length_of_run(struct part p, rb_length *out)
{
	char one[RB_MARKED + 3] = "1 ";

	if (p.length == 0 || p.length >= sizeof one - 2)
		return false;
	if (strchr("0123456789.", p.text[0]))
		return marked(p, out);
	memcpy(one + 2, p.text, p.length);
	return marked((struct part){ one, p.length + 2 }, out);
}

/* So many of a unit; the number is left out for one. */
struct quantity {
	rb_length number; /* as of metres */
	rb_length unit;
};

static bool quantity(struct part p, struct quantity *out)
{
	const char *end = p.text + p.length, *unit = p.text;

	while (unit < end && strchr("0123456789.", *unit))
		unit++;
	out->number = rb_length_of(RB_METRE);
	if (unit > p.text &&
	    !number((struct part){ p.text, (size_t)(unit - p.text) }, &out->number))
		return false;
	for (const char *c = unit; c < end; c++)
		if (strchr("0123456789", *c))
			return false;
	return length_of_run(cut(unit, end), &out->unit);
}

/* Steeper than this is no slope, and what it makes of a length might not be held. */
#define STEEPEST 1000

static enum rb_slope_refusal ratio(rb_length fall, rb_length run, rb_slope *out)
{
	if (run.nm <= 0)
		return RB_SLOPE_ZERO_RUN;
	if (fall.nm / STEEPEST > run.nm)
		return RB_SLOPE_NONSENSE;
	*out = (rb_slope){ fall, run };
	return RB_SLOPE_READ;
}

/* 2 %; nothing stands behind the sign. */
static enum rb_slope_refusal percent(struct part left, struct part right, rb_slope *out)
{
	rb_length fall;

	if (right.length > 0 || !number(left, &fall))
		return RB_SLOPE_NONSENSE;
	return ratio(fall, rb_length_of(100 * RB_METRE), out);
}

/* 1:48 and 1 in 50 */
static enum rb_slope_refusal one_in(struct part left, struct part right, rb_slope *out)
{
	rb_length fall, run;

	if (!number(left, &fall) || !number(right, &run))
		return RB_SLOPE_NONSENSE;
	if (run.nm && rb_length_compare(fall, run) > 0)
		return RB_SLOPE_REVERSED;
	return ratio(fall, run, out);
}

/* 0.0208 ft/ft: two numbers of one unit are a ratio as they stand, however many places
 * there are; as a length, six places of a foot would be taken for a 64th of an inch. */
static enum rb_slope_refusal number_per_number(struct part left, struct part right,
					       rb_slope *out)
{
	struct quantity fall, run;

	if (left.length == 0 || !strchr("0123456789.", left.text[0]) ||
	    !quantity(left, &fall) || !quantity(right, &run) ||
	    rb_length_compare(fall.unit, run.unit) != 0)
		return RB_SLOPE_NONSENSE;
	return ratio(fall.number, run.number, out);
}

/* 1/4 in per ft, 20 mm/m, 2 in per 8 ft, 1.5" in 16' */
static enum rb_slope_refusal length_per_length(struct part left, struct part right,
					       rb_slope *out)
{
	enum rb_slope_refusal refusal = number_per_number(left, right, out);
	rb_length fall, run;

	if (refusal != RB_SLOPE_NONSENSE)
		return refusal;
	if (!marked(left, &fall) || !length_of_run(right, &run))
		return RB_SLOPE_NONSENSE;
	return ratio(fall, run, out);
}

/* The words and marks that part a fall from its run, in the order tried. */
static const struct {
	const char *mark;
	enum rb_slope_refusal (*read)(struct part left, struct part right, rb_slope *out);
} separators[] = {
	{ "%", percent },
	{ "percent", percent },
	{ ":", one_in },
	{ " per ", length_per_length },
	{ " in ", one_in },
	{ " in ", length_per_length },
	{ "/", length_per_length },
};

/* The last place of a mark in the text, or NULL: a fraction's slash comes before that of
 * "1/4 in/ft". */
static const char *last_of(struct part all, const char *mark)
{
	size_t n = strlen(mark);

	for (size_t i = all.length; i-- > 0;)
		if (i + n <= all.length && !memcmp(all.text + i, mark, n))
			return all.text + i;
	return NULL;
}

static enum rb_slope_refusal read_parts(struct part all, rb_slope *out)
{
	enum rb_slope_refusal refusal = RB_SLOPE_NONSENSE;

	if (only(all, "0123456789. /"))
		return RB_SLOPE_BARE;
	for (size_t i = 0; i < sizeof separators / sizeof *separators; i++) {
		const char *mark = separators[i].mark, *at = last_of(all, mark);

		if (!at)
			continue;
		refusal = separators[i].read(
			cut(all.text, at), cut(at + strlen(mark), all.text + all.length),
			out);
		if (refusal != RB_SLOPE_NONSENSE)
			return refusal;
	}
	return refusal;
}

enum rb_slope_refusal rb_slope_parse(const char *text, size_t length, rb_slope *out)
{
	struct rb_marked m;
	struct part all;
	enum rb_slope_refusal refusal;
	bool backfall;
	rb_slope slope;

	if (!rb_mark(text, length, &m))
		return RB_SLOPE_NONSENSE;
	all = cut(m.text, m.text + m.length);
	backfall = all.length > 1 && all.text[0] == '-';
	if (backfall)
		all = cut(all.text + 1, all.text + all.length);
	if (!all.length)
		return RB_SLOPE_EMPTY;
	refusal = read_parts(all, &slope);
	if (refusal != RB_SLOPE_READ)
		return refusal;
	if (slope.fall.nm < 0)
		return RB_SLOPE_NONSENSE; /* two signs */
	if (backfall)
		slope.fall = rb_length_negate(slope.fall);
	*out = slope;
	return RB_SLOPE_READ;
}
