/* SPDX-License-Identifier: MIT */
/* fall_page.c - a table a run, the rule, and a verdict a run. */
#include "report/fall_page.h"

#include "report/elevations_words.h"
#include "report/leg_steps.h"
#include "report/legs_table.h"
#include "report/slope_words.h"
#include "report/titles.h"

struct maker {
	const struct rb_fall_result *r;
	struct rb_page *page;
	struct rb_phrase phrase;
};

/* Add what the phrase says as a block, and begin anew. */
static void add(struct maker *m, enum rb_block_kind kind)
{
	if (m->phrase.used)
		rb_page_add(m->page, kind, m->phrase.text, NULL);
	rb_phrase_clear(&m->phrase);
}

static void add_title(struct maker *m)
{
	const struct rb_book *book = m->r->spots->book;
	struct rb_phrase aside;

	rb_phrase_init(&aside, m->phrase.arena);
	rb_title_aside(&aside, book->file, m->r->style.unit);
	rb_phrase_text(&m->phrase, "Fall: ");
	rb_phrase_words(&m->phrase,
			*book->key.project ? book->key.project : "level notes");
	if (*book->key.date)
		rb_phrase_text(&m->phrase, ", ");
	rb_phrase_words(&m->phrase, book->key.date);
	rb_page_add(m->page, RB_TITLE, m->phrase.text, aside.text);
	m->page->out_of_memory |= aside.out_of_memory;
	rb_phrase_clear(&m->phrase);
}

static void say_run(struct rb_phrase *phrase, const struct rb_run *run)
{
	if (run->rod_on == RB_ON_UNSAID) {
		rb_phrase_text(phrase, "where the rod stood is not said");
		return;
	}
	rb_phrase_text(phrase, "rod on ");
	rb_phrase_text(phrase, rb_rod_on_name(run->rod_on));
}

/* Ground that rises or falls is no drain, unless a minimum is asked of it. */
static bool is_judged(const struct maker *m, const struct rb_run *run)
{
	return rb_slope_given(m->r->minimum.slope) || rb_rod_on_pipe(run->rod_on);
}

static void add_run(struct maker *m, const struct rb_run *run)
{
	struct rb_legs legs = {
		.leg = &m->r->fall->leg[run->first],
		.count = run->legs,
		.total = run->legs > 1 ? &run->total : NULL,
		.style = m->r->style,
		.judged = is_judged(m, run),
	};

	rb_phrase_text(&m->phrase, "Downstream, ");
	say_run(&m->phrase, run);
	legs.caption = rb_arena_text(m->phrase.arena, m->phrase.text, m->phrase.used);
	m->page->out_of_memory |= !legs.caption;
	rb_phrase_clear(&m->phrase);
	rb_legs_table(m->page, &legs);
}

static void add_verdict(struct maker *m, const struct rb_run *run)
{
	struct rb_phrase asked;

	rb_phrase_init(&asked, m->phrase.arena);
	if (rb_slope_given(m->r->minimum.slope))
		rb_phrase_minimum(&asked, &m->r->minimum);
	if (m->r->fall->runs > 1) {
		say_run(&m->phrase, run);
		rb_phrase_text(&m->phrase, ": ");
	}
	if (is_judged(m, run))
		rb_legs_verdict(&m->phrase, &m->r->fall->leg[run->first], run->legs,
				asked.text, "leg");
	else
		rb_phrase_text(&m->phrase, "NOT JUDGED: no minimum slope is given.");
	m->page->out_of_memory |= asked.out_of_memory;
	if (!asked.out_of_memory)
		add(m, RB_VERDICT);
}

static void add_steps(struct maker *m)
{
	const struct rb_fall *fall = m->r->fall;

	rb_page_add(m->page, RB_HEADING, "Step by step", NULL);
	for (uint32_t i = 0; i < fall->legs; i++)
		rb_leg_steps(&m->phrase, &fall->leg[i], m->r->style);
	add(m, RB_LINES);
}

static void add_notes(struct maker *m)
{
	rb_elevations_words(&m->phrase, m->r->spots);
	if (rb_length_given(m->r->spots->step))
		rb_phrase_text(&m->phrase,
			       " The +/- beside a slope is what the last place of the "
			       "rod's readings leaves uncertain over so short a length, "
			       "half a place at each end.");
	add(m, RB_PARAGRAPH);
	if (rb_slope_given(m->r->minimum.slope))
		rb_phrase_minimum_source(&m->phrase, &m->r->minimum, m->r->size);
	add(m, RB_PARAGRAPH);
}

struct rb_page *rb_fall_page(struct rb_arena *arena, const struct rb_fall_result *r,
			     bool steps)
{
	struct maker m = { .r = r, .page = rb_page_new(arena) };

	rb_phrase_init(&m.phrase, arena);
	if (!m.page || m.phrase.out_of_memory)
		return NULL;
	add_title(&m);
	for (uint32_t i = 0; i < r->fall->runs; i++)
		add_run(&m, &r->fall->run[i]);
	add_notes(&m);
	if (steps)
		add_steps(&m);
	for (uint32_t i = 0; i < r->fall->runs; i++)
		add_verdict(&m, &r->fall->run[i]);
	return m.page->out_of_memory || m.phrase.out_of_memory ? NULL : m.page;
}
