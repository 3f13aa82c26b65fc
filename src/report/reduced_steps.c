/* SPDX-License-Identifier: MIT */
/* reduced_steps.c - what was added to what, and taken from what. */
#include "report/reduced_steps.h"

#include "report/legs_table.h"
#include "report/phrase.h"
#include "report/reduced_table.h"
#include "report/section_words.h"
#include "report/steps.h"

#define INDENT  2
#define WORKING 6  /* of the lines that carry and borrow */
#define TERMS   12 /* of a sum that is written out */

struct teller {
	const struct rb_reduction *r;
	const struct rb_reduced *reduced;
	struct rb_phrase *phrase;
	struct rb_style style, finer;
	rb_length *so_far; /* by setup: its section's length up to its end; or NULL */
};

static void text(struct teller *t, const char *words)
{
	rb_phrase_text(t->phrase, words);
}

static void begin(struct teller *t, const char *what)
{
	text(t, "\n  ");
	text(t, what);
	text(t, " = ");
}

static void number_in(struct teller *t, rb_length a, struct rb_style style)
{
	if (!rb_steps_number(t->phrase, a, style))
		text(t, " (rounded)");
}

static void number(struct teller *t, rb_length a)
{
	number_in(t, a, t->style);
}

/* A number that came of a share: one place more, and false where that rounds it. */
static bool finer(struct teller *t, rb_length a)
{
	char shown[RB_LENGTH_TEXT];
	bool exact = rb_length_format(shown, a, t->finer);

	text(t, shown);
	return exact;
}

static void say_rounded(struct teller *t, bool exact)
{
	text(t, exact ? "" : " (rounded)");
}

/* -- sights -- */

/* A reading in feet and inches is turned into decimals before it is used. */
static void tell_conversion(struct teller *t, uint32_t row, enum rb_column column,
			    rb_length reading)
{
	const struct rb_book *book = t->reduced->book;
	const struct rb_style inches = { RB_FEET_INCHES, 0, 64, true };

	if (t->style.unit == RB_FEET_INCHES ||
	    !(book->written[row] & RB_WRITTEN_IN_INCHES(column)) ||
	    reading.nm % RB_SIXTYFOURTH)
		return;
	text(t, "\n  ");
	rb_phrase_length(t->phrase, reading, inches);
	text(t, " = ");
	number(t, reading);
}

static void tell_sight(struct teller *t, uint32_t shot)
{
	const struct rb_shot *s = &t->reduced->shot[shot];
	rb_length reading = rb_shot_reading(t->reduced, shot);

	if (s->booked == RB_BOOKED_NOWHERE)
		return;
	tell_conversion(t, s->row,
			s->booked == RB_BOOKED_FORESIGHT ? RB_FORESIGHT : RB_INTERMEDIATE,
			reading);
	begin(t, "elevation");
	rb_steps_subtract(t->phrase, t->reduced->setup[s->setup].height_of_instrument,
			  reading, t->style, WORKING);
}

static void tell_backsight(struct teller *t, uint32_t shot)
{
	rb_length backsight = rb_reduction_backsight(t->r, shot);
	rb_length instrument = rb_reduction_instrument(t->r, shot);
	rb_length from;

	if (!rb_length_given(backsight))
		return;
	from = rb_length_sub(instrument, backsight);
	if (rb_length_given(rb_reduction_known(t->r, shot))) {
		begin(t, "known elevation");
		number(t, from);
	}
	tell_conversion(t, t->reduced->shot[shot].backsight_row, RB_BACKSIGHT, backsight);
	begin(t, "HI");
	rb_steps_add(t->phrase, from, backsight, t->style, WORKING);
}

/* -- corrections -- */

static void tell_share(struct teller *t, uint32_t setup)
{
	const struct rb_sections *sections = rb_reduction_sections(t->r);
	const struct rb_section *s = &sections->section[sections->of_setup[setup]];
	struct rb_style runs = rb_runs_style(t->style.unit);

	runs.marked = true;
	number(t, rb_length_negate(s->misclosure));
	if (sections->adjust == RB_BY_DISTANCE && t->so_far) {
		text(t, " x ");
		number_in(t, t->so_far[setup], runs);
		text(t, " / ");
		number_in(t, s->length, runs);
	} else {
		text(t, " x ");
		rb_phrase_number(t->phrase, t->reduced->setup[setup].depth);
		text(t, " / ");
		rb_phrase_number(t->phrase, s->setups);
	}
	text(t, " = ");
}

static void tell_adjusted(struct teller *t, rb_length elevation, rb_length correction)
{
	bool exact;

	begin(t, "adjusted");
	number(t, elevation);
	text(t, correction.nm < 0 ? " - " : " + ");
	exact = finer(t, rb_length_absolute(correction));
	text(t, " = ");
	exact &= finer(t, rb_length_add(elevation, correction));
	say_rounded(t, exact);
}

static void tell_correction(struct teller *t, uint32_t shot)
{
	const struct rb_shot *s = &t->reduced->shot[shot];
	rb_length correction = rb_shot_correction(t->r->adjusted, shot);
	bool lands = s->booked == RB_BOOKED_FORESIGHT &&
		     rb_length_given(rb_reduction_known(t->r, shot));
	const uint32_t *of_setup = rb_reduction_sections(t->r)->of_setup;

	if (!rb_length_given(correction) || s->booked == RB_BOOKED_NOWHERE)
		return;
	begin(t, "correction");
	if (lands) {
		rb_steps_subtract(t->phrase, rb_reduction_known(t->r, shot), s->elevation,
				  t->style, WORKING);
	} else if (of_setup[s->setup] == RB_NO_SECTION) {
		text(t, "that of the point on which the setup stands = ");
		say_rounded(t, finer(t, correction));
	} else {
		tell_share(t, s->setup);
		say_rounded(t, finer(t, correction));
	}
	tell_adjusted(t, s->elevation, correction);
}

static void tell_below(struct teller *t, uint32_t shot)
{
	rb_length below = rb_shot_below(t->r->adjusted, shot);
	rb_length adjusted = rb_shot_adjusted(t->r->adjusted, shot);
	rb_length from =
		rb_length_given(adjusted) ? adjusted : t->reduced->shot[shot].elevation;
	bool exact;

	if (!rb_length_given(below))
		return;
	begin(t, "below");
	exact = finer(t, from);
	text(t, " - ");
	number(t, rb_length_sub(from, below));
	text(t, " = ");
	exact &= finer(t, below);
	say_rounded(t, exact);
}

static void tell_shot(struct teller *t, uint32_t shot)
{
	const struct rb_book *book = t->reduced->book;
	uint32_t row = t->reduced->shot[shot].row;

	text(t, shot ? "\n" : "");
	text(t, "line ");
	rb_phrase_number(t->phrase, rb_reduction_line(t->r, row));
	text(t, *rb_book_typed(book, row) ? ", " : "");
	rb_phrase_words(t->phrase, rb_book_typed(book, row));
	tell_sight(t, shot);
	tell_correction(t, shot);
	tell_below(t, shot);
	tell_backsight(t, shot);
}

/* -- sums -- */

/* The shots on which a chain turns, its end last; at most TERMS of them. */
static uint32_t turning_shots(const struct teller *t, const struct rb_section *s,
			      uint32_t shot[static TERMS])
{
	uint32_t at = s->setups, turning = s->end;

	if (s->setups > TERMS)
		return 0;
	while (at > 0 && turning != RB_NO_SHOT) {
		shot[--at] = turning;
		turning = t->reduced->setup[t->reduced->shot[turning].setup].via;
	}
	return s->setups;
}

static void tell_sum(struct teller *t, const struct rb_section *s, bool back)
{
	uint32_t turning[TERMS] = { 0 }, terms = turning_shots(t, s, turning);
	bool exact = true;

	begin(t, back ? "sum of backsights" : "sum of foresights");
	for (uint32_t i = 0; terms > 1 && i < terms; i++) {
		uint32_t setup = t->reduced->shot[turning[i]].setup;
		rb_length term =
			back ? rb_reduction_backsight(t->r, t->reduced->setup[setup].shot)
			     : rb_shot_reading(t->reduced, turning[i]);

		text(t, i ? " + " : "");
		exact &= rb_steps_number(t->phrase, term, t->style);
	}
	text(t, terms > 1 ? " = " : "");
	exact &= rb_steps_number(t->phrase, back ? s->sum_backsight : s->sum_foresight,
				 t->style);
	say_rounded(t, exact);
}

static void tell_section(struct teller *t, const struct rb_section *s)
{
	text(t, "\nsection ");
	rb_section_name(t->phrase, t->r, s);
	if (s->no_foresight)
		return;
	tell_sum(t, s, true);
	tell_sum(t, s, false);
	begin(t, "their difference");
	rb_steps_subtract(t->phrase, s->sum_backsight, s->sum_foresight, t->style,
			  WORKING);
	begin(t, "last - first elevation");
	rb_steps_subtract(t->phrase, s->finish, s->start, t->style, WORKING);
	if (!rb_length_given(s->misclosure))
		return;
	begin(t, "misclosure");
	rb_steps_subtract(t->phrase, s->finish, rb_length_sub(s->finish, s->misclosure),
			  t->style, WORKING);
}

/* -- lengths so far, for an adjustment by length -- */

static rb_length sight_length(const struct rb_reduced *reduced, enum rb_column column,
			      uint32_t row)
{
	rb_length length = rb_book_value(reduced->book, column, row);

	return rb_length_given(length) ? length : rb_length_of(0);
}

/* Back along a chain: what is left of the section's length is the length so far. */
static void measure_chain(struct teller *t, const struct rb_section *s,
			  uint32_t number_of)
{
	const uint32_t *of_setup = rb_reduction_sections(t->r)->of_setup;
	rb_length left = s->length;
	uint32_t setup = s->last, turning = s->end;

	while (of_setup[setup] == number_of) {
		uint32_t row =
			t->reduced->shot[t->reduced->setup[setup].shot].backsight_row;

		t->so_far[setup] = left;
		left = rb_length_sub(
			left, sight_length(t->reduced, RB_BACKSIGHT_DISTANCE, row));
		left = rb_length_sub(left, sight_length(t->reduced, RB_FORESIGHT_DISTANCE,
							t->reduced->shot[turning].row));
		turning = t->reduced->setup[setup].via;
		if (turning == RB_NO_SHOT)
			return;
		setup = t->reduced->shot[turning].setup;
	}
}

static bool measure_chains(struct teller *t, struct rb_arena *arena)
{
	const struct rb_sections *sections = rb_reduction_sections(t->r);

	if (sections->adjust != RB_BY_DISTANCE)
		return true;
	t->so_far = rb_arena_take_clear(arena, (size_t)t->reduced->setups + 1,
					sizeof *t->so_far);
	for (uint32_t i = 0; t->so_far && i < sections->sections; i++)
		if (sections->section[i].adjusted)
			measure_chain(t, &sections->section[i], i);
	return t->so_far != NULL;
}

/* Two places more than a reading has or is shown with, so that a share can be seen. */
static struct rb_style finer_style(const struct rb_reduction *r)
{
	const struct rb_book *book = rb_reduction_book(r);
	struct rb_style style = r->style;

	for (int column = RB_KNOWN_ELEVATION; column <= RB_FORESIGHT; column++)
		if (style.unit == book->unit &&
		    style.decimals < book->places[column].decimals)
			style.decimals = book->places[column].decimals;
	style.decimals = style.decimals < 7 ? style.decimals + 2 : 9;
	style.fraction = 64;
	return style;
}

void rb_reduced_steps(struct rb_page *page, const struct rb_reduction *r)
{
	struct rb_phrase phrase;
	struct teller t = { .r = r,
			    .reduced = rb_reduction_reduced(r),
			    .phrase = &phrase,
			    .style = r->style,
			    .finer = finer_style(r) };
	const struct rb_sections *sections = rb_reduction_sections(r);

	rb_phrase_init(&phrase, page->arena);
	if (!measure_chains(&t, page->arena) || phrase.out_of_memory) {
		page->out_of_memory = true;
		return;
	}
	for (uint32_t i = 0; i < t.reduced->shots; i++)
		tell_shot(&t, i);
	for (uint32_t i = 0; i < sections->sections; i++)
		tell_section(&t, &sections->section[i]);
	rb_page_add(page, RB_HEADING, "Step by step", NULL);
	rb_page_add(page, RB_LINES, phrase.text, NULL);
	page->out_of_memory |= phrase.out_of_memory;
}
