/* SPDX-License-Identifier: MIT */
/* section_words.c - sums, verdict and balance of a section, in words. */
#include "report/section_words.h"

#include "report/shown.h"

void rb_phrase_marked(struct rb_phrase *phrase, rb_length a, struct rb_style style)
{
	style.marked = true;
	rb_phrase_length(phrase, rb_length_absolute(a), style);
}

void rb_phrase_off(struct rb_phrase *phrase, rb_length a, struct rb_style style)
{
	char text[RB_LENGTH_TEXT], nothing[RB_LENGTH_TEXT];

	if (!a.nm) {
		rb_phrase_text(phrase, "exactly");
		return;
	}
	style.marked = true;
	rb_shown_pair(text, nothing, rb_length_absolute(a), rb_length_of(0), style);
	rb_phrase_text(phrase, text);
	rb_phrase_text(phrase, a.nm < 0 ? " low" : " high");
}

/* The name of a shot's point; its line where it has none. */
static void name_place(struct rb_phrase *phrase, const struct rb_reduction *r,
		       uint32_t shot)
{
	uint32_t row = rb_reduction_reduced(r)->shot[shot].row;
	const char *name = rb_book_typed(rb_reduction_book(r), row);

	rb_phrase_words(phrase, name);
	if (*name)
		return;
	rb_phrase_text(phrase, "line ");
	rb_phrase_number(phrase, rb_reduction_line(r, row));
}

void rb_section_name(struct rb_phrase *phrase, const struct rb_reduction *r,
		     const struct rb_section *section)
{
	rb_phrase_words(phrase, rb_book_point(rb_reduction_book(r), section->from));
	rb_phrase_text(phrase, " to ");
	name_place(phrase, r, section->end);
}

/* Where there are several sections, each verdict says whose it is. */
static void name_if_several(struct rb_phrase *phrase, const struct rb_reduction *r,
			    const struct rb_section *section)
{
	if (rb_reduction_sections(r)->sections < 2)
		return;
	rb_section_name(phrase, r, section);
	rb_phrase_text(phrase, ": ");
}

/* -- arithmetic -- */

static void difference(struct rb_phrase *phrase, rb_length a, rb_length b,
		       struct rb_style style)
{
	rb_phrase_length(phrase, a, style);
	rb_phrase_text(phrase, b.nm < 0 ? " - (" : " - ");
	rb_phrase_length(phrase, b, style);
	rb_phrase_text(phrase, b.nm < 0 ? ")" : "");
}

/* Places enough to say the sums exactly, where a book mixes notations. */
static struct rb_style exact_style(const struct rb_section *s, struct rb_style style)
{
	const rb_length all[] = { s->sum_backsight, s->sum_foresight, s->start,
				  s->finish,        s->sum_rise,      s->sum_fall };

	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		int decimals = rb_shown_decimals(all[i], style.unit, 6);
		int fraction = rb_shown_fraction(all[i]);

		if (decimals < 0 || decimals > style.decimals)
			style.decimals = decimals < 0 ? 6 : decimals;
		if (!fraction || fraction > style.fraction)
			style.fraction = 64;
	}
	return style;
}

/* Of a section whose sums there are. */
static void both_ways(struct rb_phrase *phrase, const struct rb_section *s,
		      struct rb_style style)
{
	rb_length sums = rb_length_sub(s->sum_backsight, s->sum_foresight);
	rb_length steps = rb_length_sub(s->sum_rise, s->sum_fall);
	rb_length moved = rb_length_sub(s->finish, s->start);
	bool agree = sums.nm == moved.nm && steps.nm == moved.nm;

	difference(phrase, s->sum_backsight, s->sum_foresight, style);
	rb_phrase_text(phrase, " = ");
	rb_phrase_length(phrase, sums, style);
	rb_phrase_text(phrase, agree ? " = " : "; ");
	difference(phrase, s->finish, s->start, style);
	rb_phrase_text(phrase,
		       agree ? ". The sums agree; that proves the sums, not the "
			       "survey. Rise and fall, sight by sight, say the same: "
			     : ". THE SUMS DO NOT AGREE. Rise and fall: ");
	difference(phrase, s->sum_rise, s->sum_fall, style);
	rb_phrase_text(phrase, " = ");
	rb_phrase_length(phrase, steps, style);
	rb_phrase_text(phrase, ".");
}

void rb_section_arithmetic(struct rb_phrase *phrase, const struct rb_reduction *r,
			   const struct rb_section *s)
{
	rb_phrase_text(phrase, "Arithmetic: ");
	if (s->no_foresight)
		rb_phrase_text(phrase, "no foresight, nothing to sum.");
	else
		both_ways(phrase, s, exact_style(s, r->style));
}

/* -- verdict -- */

static void count_of_setups(struct rb_phrase *phrase, const struct rb_section *s,
			    enum rb_unit unit)
{
	rb_phrase_number(phrase, s->setups);
	rb_phrase_text(phrase, s->setups == 1 ? " setup" : " setups");
	if (!rb_length_given(s->length) || !s->length.nm)
		return;
	rb_phrase_text(phrase, " over ");
	rb_phrase_marked(
		phrase, s->length,
		(struct rb_style){ .unit = rb_unit_of_runs(unit), .decimals = 0 });
}

/* A share of a misclosure needs two places more than a reading. */
static struct rb_style share_style(struct rb_style style)
{
	if (style.unit == RB_FEET_INCHES)
		return (struct rb_style){ .unit = RB_INCHES, .decimals = 3 };
	style.decimals = style.decimals < 8 ? style.decimals + 2 : 9;
	return style;
}

/* As many places as it needs, from those of a reading up to those of a share. */
static void put_share(struct rb_phrase *phrase, rb_length share, struct rb_style style)
{
	struct rb_style finer = share_style(style);
	int needed = rb_shown_decimals(share, finer.unit, finer.decimals);
	int least = style.unit == RB_FEET_INCHES ? 0 : style.decimals;

	if (needed >= 0)
		finer.decimals = needed > least ? needed : least;
	if (style.unit == RB_FEET_INCHES && rb_shown_fraction(share))
		finer = (struct rb_style){ .unit = RB_FEET_INCHES, .fraction = 64 };
	rb_phrase_marked(phrase, share, rb_shown_style(share, finer));
}

static void say_adjusted(struct rb_phrase *phrase, const struct rb_reduction *r,
			 const struct rb_section *s)
{
	bool low = s->misclosure.nm < 0;

	if (!s->misclosure.nm) {
		rb_phrase_text(phrase, ", nothing to adjust");
		return;
	}
	if (rb_reduction_sections(r)->adjust == RB_BY_DISTANCE) {
		rb_phrase_text(phrase, low ? ", raised" : ", lowered");
		rb_phrase_text(phrase, " by the length of the sights");
		return;
	}
	rb_phrase_text(phrase, s->setups > 1 ? ", each" : ",");
	rb_phrase_text(phrase, low ? " raised " : " lowered ");
	put_share(phrase, rb_length_share(s->misclosure, 1, s->setups), r->style);
}

static void say_adjustment(struct rb_phrase *phrase, const struct rb_reduction *r,
			   const struct rb_section *s)
{
	if (s->adjusted) {
		say_adjusted(phrase, r, s);
		if (s->verdict == RB_BEYOND)
			rb_phrase_text(phrase,
				       ", ADJUSTED ALL THE SAME (--adjust-anyway)");
		return;
	}
	rb_phrase_text(phrase, ", not adjusted");
	if (s->verdict == RB_CLOSES)
		rb_phrase_text(phrase, " (adjust: none)");
	else if (s->verdict == RB_BEYOND)
		rb_phrase_text(phrase, ": look for the mistake first");
}

/* 0.05 ft low, 0.02 ft allowed: with places enough to see which is more. */
static void say_misclosure(struct rb_phrase *phrase, const struct rb_section *s,
			   struct rb_style style)
{
	char off[RB_LENGTH_TEXT], allowed[RB_LENGTH_TEXT];

	style.marked = true;
	if (!rb_length_given(s->allowed) || !s->misclosure.nm) {
		rb_phrase_off(phrase, s->misclosure, style);
	} else {
		rb_shown_pair(off, allowed, rb_length_absolute(s->misclosure), s->allowed,
			      style);
		rb_phrase_text(phrase, off);
		rb_phrase_text(phrase, s->misclosure.nm < 0 ? " low" : " high");
	}
	rb_phrase_text(phrase, ", ");
	if (!rb_length_given(s->allowed))
		return;
	rb_shown_pair(allowed, off, s->allowed, rb_length_absolute(s->misclosure), style);
	rb_phrase_text(phrase, allowed);
	rb_phrase_text(phrase, " allowed, ");
}

/* A known point was reached, but the sight onto it is booked so that it closes nothing.
 */
static void say_nearly_closed(struct rb_phrase *phrase, const struct rb_reduction *r,
			      const struct rb_check *check)
{
	uint32_t row = rb_reduction_reduced(r)->shot[check->shot].row;

	rb_phrase_text(phrase, " are not closed: the sight on ");
	name_place(phrase, r, check->shot);
	rb_phrase_text(phrase, " (line ");
	rb_phrase_number(phrase, rb_reduction_line(r, row));
	rb_phrase_text(phrase, ") is booked as an intermediate sight and ");
	rb_phrase_text(phrase, check->difference.nm ? "comes out " : "agrees");
	if (check->difference.nm)
		rb_phrase_off(phrase, check->difference, r->style);
	rb_phrase_text(phrase, "; booked as a foresight it closes them. ");
}

static void say_open(struct rb_phrase *phrase, const struct rb_reduction *r,
		     const struct rb_section *s)
{
	const struct rb_check *check =
		rb_section_nearly_closed(rb_reduction_sections(r), s);

	rb_phrase_text(phrase, "OPEN: unchecked. The levels from ");
	rb_section_name(phrase, r, s);
	if (check)
		say_nearly_closed(phrase, r, check);
	else
		rb_phrase_text(phrase, " reach no known elevation; ");
	count_of_setups(phrase, s, r->style.unit);
	rb_phrase_text(phrase, ", not adjusted.");
}

void rb_section_verdict(struct rb_phrase *phrase, const struct rb_reduction *r,
			const struct rb_section *s)
{
	if (s->verdict == RB_OPEN) {
		say_open(phrase, r, s);
		return;
	}
	name_if_several(phrase, r, s);
	if (s->verdict == RB_NOT_JUDGED)
		rb_phrase_text(phrase, "NOT JUDGED: no tolerance given; on ");
	else
		rb_phrase_text(phrase, s->verdict == RB_CLOSES ? "CLOSES on "
							       : "DOES NOT CLOSE on ");
	rb_phrase_words(phrase, rb_book_point(rb_reduction_book(r), s->to));
	rb_phrase_text(phrase, ": ");
	say_misclosure(phrase, s, r->style);
	count_of_setups(phrase, s, r->style.unit);
	say_adjustment(phrase, r, s);
	rb_phrase_text(phrase, ".");
}

/* -- spurs -- */

#define LISTED 24

static void list_sights(struct rb_phrase *phrase, const struct rb_reduction *r,
			const struct rb_spur *spur)
{
	const uint32_t *shot = rb_reduction_sections(r)->spur_shot + spur->first;
	uint32_t listed = spur->sights > LISTED ? LISTED : spur->sights;

	for (uint32_t i = 0; i < listed; i++) {
		rb_phrase_text(phrase, i ? ", " : "");
		name_place(phrase, r, shot[i]);
	}
	if (listed == spur->sights)
		return;
	rb_phrase_text(phrase, " and ");
	rb_phrase_number(phrase, spur->sights - listed);
	rb_phrase_text(phrase, " more");
}

void rb_spur_words(struct rb_phrase *phrase, const struct rb_reduction *r,
		   const struct rb_spur *spur)
{
	uint32_t stands_on = rb_reduction_reduced(r)->setup[spur->setup].shot;

	rb_phrase_text(phrase, "From ");
	name_place(phrase, r, stands_on);
	rb_phrase_text(phrase, " a spur, unchecked: ");
	list_sights(phrase, r, spur);
	rb_phrase_text(phrase, ". Nothing closes it");
	if (rb_length_given(r->adjusted->correction[spur->setup])) {
		rb_phrase_text(phrase,
			       "; its adjusted elevations carry the correction of ");
		name_place(phrase, r, stands_on);
	}
	rb_phrase_text(phrase, ".");
}

/* -- balance -- */

static void say_collimation(struct rb_phrase *phrase, const struct rb_reduction *r,
			    rb_length longer)
{
	const struct rb_book_keys *key = &rb_reduction_book(r)->key;
	struct rb_style style = share_style(r->style);
	rb_length effect;

	if (!rb_length_given(key->collimation))
		return;
	/* A line of sight that rises reads high: more on the longer side. */
	effect = rb_length_share(key->collimation, longer.nm, key->collimation_run.nm);
	rb_phrase_text(phrase, " With the collimation of the book that puts the end ");
	if (effect.nm)
		rb_phrase_off(phrase, effect, style);
	else
		rb_phrase_text(phrase, "neither high nor low");
	rb_phrase_text(phrase, "; it is reported, not applied.");
}

void rb_section_balance(struct rb_phrase *phrase, const struct rb_reduction *r,
			const struct rb_section *s)
{
	struct rb_style runs = { .unit = rb_unit_of_runs(r->style.unit), .decimals = 1 };
	bool asked = rb_length_given(rb_reduction_book(r)->key.collimation);
	rb_length longer;

	if (!rb_length_given(s->length) && !asked)
		return;
	rb_phrase_text(phrase, "Sights: ");
	if (!rb_length_given(s->length)) {
		rb_phrase_text(phrase,
			       "some have no length, so what the collimation of the "
			       "book does cannot be told.");
		return;
	}
	longer = rb_length_sub(s->backsight_length, s->foresight_length);
	rb_phrase_text(phrase, "back ");
	rb_phrase_marked(phrase, s->backsight_length, runs);
	rb_phrase_text(phrase, ", ahead ");
	rb_phrase_marked(phrase, s->foresight_length, runs);
	rb_phrase_text(phrase, longer.nm ? ", " : ", balanced.");
	if (longer.nm) {
		rb_phrase_marked(phrase, longer, runs);
		rb_phrase_text(phrase,
			       longer.nm > 0 ? " longer back." : " longer ahead.");
	}
	say_collimation(phrase, r, longer);
}
