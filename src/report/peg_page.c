/* SPDX-License-Identifier: MIT */
/* peg_page.c - the test, the error, the limits, and what it does to a book. */
#include "report/peg.h"

#include "report/legs_table.h"
#include "report/phrase.h"
#include "report/section_words.h"
#include "report/shown.h"
#include "report/steps.h"
#include "report/titles.h"

/* A page on its way. */
struct writer {
	const struct rb_peg_report *r;
	const struct rb_two_peg *peg;
	struct rb_page *page;
	struct rb_phrase phrase;
	struct rb_style
		finer; /* two places more than the readings: for what is worked out */
};

static void say(struct writer *w, const char *text)
{
	rb_phrase_text(&w->phrase, text);
}

static void add(struct writer *w, enum rb_block_kind kind)
{
	rb_page_add(w->page, kind, w->phrase.text, NULL);
	rb_phrase_clear(&w->phrase);
}

static enum rb_align aligned(struct rb_style style)
{
	return style.unit == RB_FEET_INCHES ? RB_ON_INCHES : RB_ON_POINT;
}

static struct rb_style run_style(struct rb_style style)
{
	style = rb_runs_style(style.unit);
	style.marked = true;
	return style;
}

static void put_title(struct writer *w)
{
	struct rb_phrase aside;

	rb_phrase_init(&aside, w->r->arena);
	rb_title_aside(&aside, w->peg->file, w->r->style.unit);
	say(w, "Two-peg test");
	if (*w->peg->date)
		say(w, ", ");
	rb_phrase_words(&w->phrase, w->peg->date);
	rb_page_add(w->page, RB_TITLE, w->phrase.text, aside.text);
	w->page->out_of_memory |= aside.out_of_memory;
	rb_phrase_clear(&w->phrase);
	if (!*w->peg->instrument)
		return;
	say(w, "instrument ");
	rb_phrase_words(&w->phrase, w->peg->instrument);
	add(w, RB_PARAGRAPH);
}

/* -- what was read -- */

enum { SETUP, A, B, A_LESS_B, DISTANCE_A, DISTANCE_B, READ_COLUMNS };

static void put_readings(struct writer *w)
{
	enum rb_align align = aligned(w->r->style);
	const struct rb_table_column column[READ_COLUMNS] = {
		[SETUP] = { "setup", RB_LEFT, RB_SPILLS },
		[A] = { "a", align, RB_KEEPS },
		[B] = { "b", align, RB_KEEPS },
		[A_LESS_B] = { "a - b", align, RB_KEEPS },
		[DISTANCE_A] = { "distance a", RB_ON_POINT, RB_KEEPS },
		[DISTANCE_B] = { "distance b", RB_ON_POINT, RB_KEEPS },
	};
	struct rb_table *table = rb_page_table(w->page, NULL, column, READ_COLUMNS);

	for (int i = 0; table && i < 2; i++) {
		const struct rb_peg_setup *s = &w->peg->setup[i];
		char text[READ_COLUMNS][RB_LENGTH_TEXT];

		rb_length_format(text[A], s->a, w->r->style);
		rb_length_format(text[B], s->b, w->r->style);
		rb_length_format(text[A_LESS_B], rb_length_sub(s->a, s->b), w->r->style);
		rb_length_format(text[DISTANCE_A], s->distance_a, run_style(w->r->style));
		rb_length_format(text[DISTANCE_B], s->distance_b, run_style(w->r->style));
		rb_table_add(table, RB_ROW,
			     (const char *[]){ s->name, text[A], text[B], text[A_LESS_B],
					       text[DISTANCE_A], text[DISTANCE_B] });
	}
}

/* -- the error -- */

/* "0.0050 ft per 100 ft", of a rise over the test's run. */
static void put_per_hundred(struct writer *w, rb_length rise)
{
	enum rb_unit unit = w->r->style.unit;
	rb_length hundred = rb_two_peg_hundred(unit);

	rb_phrase_marked(&w->phrase, rb_length_share(hundred, rise.nm, w->peg->run.nm),
			 w->finer);
	say(w, rb_unit_of_runs(unit) == RB_METRES ? " per 100 m" : " per 100 ft");
}

static void put_error(struct writer *w)
{
	int64_t rise = w->peg->rise.nm;

	if (rise == 0) {
		say(w, "The line of sight is level, as far as these readings show");
	} else {
		say(w, "The line of sight ");
		say(w, rise > 0 ? "RISES" : "FALLS");
		say(w, " away from the level by ");
		put_per_hundred(w, w->peg->rise);
	}
	say(w, ".");
	add(w, RB_VERDICT);
}

static void put_uncertainty(struct writer *w)
{
	say(w,
	    "Rounding alone, half the last place in each of the four readings, can make ");
	put_per_hundred(w, w->peg->unsure);
	say(w,
	    rb_length_absolute(w->peg->rise).nm <= w->peg->unsure.nm
		    ? ", and the error is not more than that: read finer, or take the pegs "
		      "further apart, before the level is touched."
		    : " of the error, one way or the other.");
	add(w, RB_PARAGRAPH);
}

static void put_corrected(struct writer *w)
{
	const struct rb_two_peg *peg = w->peg;

	say(w, "With a level line of sight the second setup reads ");
	rb_phrase_length(&w->phrase, peg->corrected_a, w->finer);
	say(w, " on a and ");
	rb_phrase_length(&w->phrase, peg->corrected_b, w->finer);
	say(w, " on b.");
	add(w, RB_PARAGRAPH);
}

/* What goes into a book: it is told there with every reduction, and never applied. */
static void put_key(struct writer *w)
{
	say(w, "For the keys of a book: collimation,");
	say(w, w->peg->rise.nm < 0 ? "-" : "+");
	put_per_hundred(w, w->peg->rise);
	add(w, RB_PARAGRAPH);
}

/* -- limits -- */

static void put_limits(struct writer *w)
{
	static const struct rb_table_column column[] = {
		{ "published limit", RB_LEFT, RB_KEEPS },
		{ "this level", RB_LEFT, RB_KEEPS },
		{ "where", RB_LEFT, RB_SPILLS },
	};
	struct rb_table *table = rb_page_table(w->page, NULL, column, 3);

	for (size_t i = 0; table && i < RB_PEG_LIMITS; i++) {
		const struct rb_peg_limit *limit = rb_peg_limit(i);

		rb_table_add(table, RB_ROW,
			     (const char *[]){ limit->words,
					       rb_two_peg_exceeds(w->peg, limit)
						       ? "over it"
						       : "not over it",
					       limit->source });
	}
	rb_page_add(
		w->page, RB_PARAGRAPH,
		"The limits are those of others, for work of other kinds. Sights of equal "
		"length cancel the error; in sights that differ it goes into the elevations.",
		NULL);
}

/* -- what it does to a book -- */

static void put_section_name(struct writer *w, const struct rb_section *section)
{
	const struct rb_reduced *reduced = w->r->effect->sections->reduced;

	rb_phrase_words(&w->phrase, rb_book_point(reduced->book, section->from));
	say(w, " to ");
	rb_phrase_words(&w->phrase,
			rb_book_typed(reduced->book, reduced->shot[section->end].row));
}

static void put_section(struct writer *w, struct rb_table *table, uint32_t i)
{
	const struct rb_peg_effect *effect = w->r->effect;
	const struct rb_section *section = &effect->sections->section[i];
	struct rb_style style = w->r->book_style, runs = run_style(w->r->book_style);
	char back[RB_LENGTH_TEXT], fore[RB_LENGTH_TEXT], difference[RB_LENGTH_TEXT];
	char lift[RB_LENGTH_TEXT], misclosure[RB_LENGTH_TEXT];

	style.decimals += 2;
	put_section_name(w, section);
	rb_length_format(back, section->backsight_length, runs);
	rb_length_format(fore, section->foresight_length, runs);
	rb_length_format(difference, effect->difference[i], runs);
	rb_length_format(lift, effect->lift[i], rb_shown_style(effect->lift[i], style));
	rb_length_format(misclosure, section->misclosure,
			 rb_shown_style(section->misclosure, style));
	rb_table_add(table, RB_ROW,
		     (const char *[]){ w->phrase.text, back, fore, difference, lift,
				       misclosure });
	rb_phrase_clear(&w->phrase);
	if (!rb_length_given(effect->difference[i]))
		rb_table_note(table, "sight lengths are missing: it cannot be said");
}

static void put_worst(struct writer *w)
{
	const struct rb_peg_effect *effect = w->r->effect;
	const struct rb_reduced *reduced = effect->sections->reduced;
	struct rb_style style = w->r->book_style;
	const char *name;

	if (effect->worst == RB_NO_SHOT || !effect->worst_lift.nm)
		return;
	style.decimals += 2;
	name = rb_book_typed(reduced->book, reduced->shot[effect->worst].row);
	say(w, "The point that is out the most, before any adjustment: ");
	rb_phrase_words(&w->phrase, name);
	say(w, *name ? ", line " : "line ");
	rb_phrase_number(&w->phrase,
			 rb_book_line(reduced->book, reduced->shot[effect->worst].row));
	say(w, ", ");
	rb_phrase_off(&w->phrase, effect->worst_lift, style);
	say(w, " by the level alone.");
	add(w, RB_PARAGRAPH);
}

static void put_effect(struct writer *w)
{
	const struct rb_sections *sections = w->r->effect->sections;
	enum rb_align align = aligned(w->r->book_style);
	const struct rb_table_column column[] = {
		{ "section", RB_LEFT, RB_SPILLS },
		{ "backsights", RB_ON_POINT, RB_KEEPS },
		{ "foresights", RB_ON_POINT, RB_KEEPS },
		{ "difference", RB_ON_POINT, RB_KEEPS },
		{ "too high by", align, RB_KEEPS },
		{ "misclosure", align, RB_KEEPS },
	};
	struct rb_table *table;

	say(w, "On ");
	rb_phrase_words(&w->phrase, rb_title_file(sections->reduced->book->file));
	say(w,
	    ": the end of each section came out too high (with a minus: too low) by the "
	    "error times backsight lengths less foresight lengths.");
	add(w, RB_PARAGRAPH);
	table = rb_page_table(w->page, NULL, column, 6);
	for (uint32_t i = 0; table && i < sections->sections; i++)
		put_section(w, table, i);
	put_worst(w);
}

struct rb_page *rb_peg_page(const struct rb_peg_report *report)
{
	struct writer w = { .r = report, .peg = report->peg, .finer = report->style };

	w.page = rb_page_new(report->arena);
	rb_phrase_init(&w.phrase, report->arena);
	if (!w.page || w.phrase.out_of_memory)
		return NULL;
	w.finer.decimals += w.finer.unit == RB_MILLIMETRES ? 1 : 2;
	w.finer.fraction = 64;
	if (w.finer.unit == RB_FEET_INCHES)
		w.finer = (struct rb_style){ RB_FEET, 4, 64, true };
	put_title(&w);
	put_readings(&w);
	put_uncertainty(&w);
	put_corrected(&w);
	put_key(&w);
	put_limits(&w);
	if (report->effect)
		put_effect(&w);
	put_error(&w);
	return w.page->out_of_memory || w.phrase.out_of_memory ? NULL : w.page;
}
