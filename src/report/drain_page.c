/* SPDX-License-Identifier: MIT */
/* drain_page.c - the parts of a drain in their order, and what they share. */
#include "report/drain_page.h"

#include <string.h>

#include "drain/pipe.h"
#include "report/caution_words.h"
#include "report/drain_parts.h"
#include "report/elevations_words.h"
#include "report/section_words.h"
#include "report/shown.h"
#include "report/slope_words.h"
#include "report/titles.h"

/* -- shared -- */

void rb_drain_add(struct rb_drain_maker *m, enum rb_block_kind kind)
{
	if (m->phrase.used)
		rb_page_add(m->page, kind, m->phrase.text, NULL);
	rb_phrase_clear(&m->phrase);
}

void rb_drain_say_both(struct rb_drain_maker *m, rb_length a)
{
	struct rb_style style;

	a = rb_length_absolute(a);
	style = rb_shown_style(a, m->decimal);
	rb_phrase_marked(&m->phrase, a, style);
	if (style.decimals > m->decimal.decimals)
		return;
	rb_phrase_text(&m->phrase, " (");
	rb_phrase_length(&m->phrase, a, m->inches);
	rb_phrase_text(&m->phrase, ")");
}

void rb_drain_chainage(const struct rb_drain_maker *m, char text[static RB_LENGTH_TEXT],
		       rb_length chainage)
{
	enum rb_unit unit = m->r->style.unit;

	rb_chainage_format(text, chainage, unit,
			   rb_chainage_plus(m->r->plan->plus, m->r->plan->unit, unit));
}

bool rb_drain_names(const struct rb_drain_maker *m)
{
	char text[RB_LENGTH_TEXT];

	for (uint32_t i = 0; i < m->r->inverts->stations; i++) {
		const struct rb_station *station = &m->r->inverts->station[i];

		rb_drain_chainage(m, text, station->chainage);
		if (strcmp(text, station->name) != 0)
			return true;
	}
	return false;
}

void rb_drain_cell(char text[static RB_LENGTH_TEXT], rb_length a, struct rb_style style)
{
	if (rb_length_given(a))
		rb_length_format(text, a, style);
	else
		memcpy(text, "-", 2);
}

const char *rb_drain_caption(struct rb_drain_maker *m, const char *words,
			     const struct rb_spots *spots)
{
	const char *caption;

	rb_phrase_clear(&m->phrase);
	rb_phrase_text(&m->phrase, words);
	if (rb_drain_is_beyond(spots))
		rb_phrase_text(&m->phrase,
			       " - FROM A BOOK THAT DOES NOT CLOSE (--use-anyway)");
	caption = rb_arena_text(m->phrase.arena, m->phrase.text, m->phrase.used);
	rb_phrase_clear(&m->phrase);
	m->page->out_of_memory |= !caption;
	return caption;
}

struct rb_table *rb_drain_table(struct rb_drain_maker *m, const char *caption,
				const struct rb_table_column *column, size_t columns)
{
	struct rb_table *table = rb_page_table(m->page, caption, column, columns);

	m->page->out_of_memory |= !table;
	return table;
}

enum rb_align rb_drain_align(const struct rb_drain_maker *m)
{
	return m->r->style.unit == RB_FEET_INCHES ? RB_ON_INCHES : RB_ON_POINT;
}

/* -- what stands first -- */

static void add_title(struct rb_drain_maker *m)
{
	const struct rb_drain_result *r = m->r;
	struct rb_phrase aside;

	rb_phrase_init(&aside, m->phrase.arena);
	if (r->has_plan) {
		rb_title_aside(&aside, r->plan->file, r->style.unit);
	} else {
		rb_phrase_text(&aside, "no plan, ");
		rb_phrase_text(&aside, rb_title_unit(r->style.unit));
	}
	rb_phrase_text(&m->phrase, "Drain");
	rb_phrase_text(&m->phrase, *r->plan->drain ? ": " : "");
	rb_phrase_words(&m->phrase, r->plan->drain);
	rb_page_add(m->page, RB_TITLE, m->phrase.text, aside.text);
	m->page->out_of_memory |= aside.out_of_memory;
	rb_phrase_clear(&m->phrase);
}

static void say_part(struct rb_drain_maker *m, const char *words, rb_length a)
{
	char text[RB_LENGTH_TEXT];

	if (!rb_length_given(a))
		return;
	rb_shown(text, a,
		 rb_unit_of_runs(m->r->style.unit) == RB_METRES ? RB_MILLIMETRES
								: RB_INCHES);
	rb_phrase_text(&m->phrase, words);
	rb_phrase_text(&m->phrase, text);
}

static void add_pipe(struct rb_drain_maker *m)
{
	const struct rb_plan *plan = m->r->plan;
	const struct rb_pipe *pipe = &plan->pipe;

	if (rb_length_given(pipe->size)) {
		rb_phrase_text(&m->phrase, "Pipe ");
		rb_phrase_size(&m->phrase, pipe->size);
		if (pipe->kind) {
			rb_phrase_text(&m->phrase, " ");
			rb_phrase_text(&m->phrase, pipe->kind->name);
			rb_phrase_text(&m->phrase,
				       pipe->measured ? "; as measured" : " (");
			rb_phrase_text(&m->phrase,
				       pipe->measured ? "" : pipe->kind->source);
			rb_phrase_text(&m->phrase, pipe->measured ? "" : ")");
		}
	} else if (pipe->measured) {
		rb_phrase_text(&m->phrase, "Pipe as measured");
	}
	say_part(m, ": outside ", pipe->outside);
	say_part(m, ", wall ", pipe->wall);
	say_part(m, ", top to invert ", rb_pipe_top(pipe));
	if (m->phrase.used)
		rb_phrase_text(&m->phrase, ". ");
	say_part(m, "Bedding ", plan->bedding);
	if (rb_length_given(plan->bedding))
		rb_phrase_text(&m->phrase, ". ");
	if (*plan->datum) {
		rb_phrase_text(&m->phrase, "Datum: ");
		rb_phrase_words(&m->phrase, plan->datum);
		rb_phrase_text(&m->phrase, ". ");
	}
	rb_phrase_text(&m->phrase, "Lengths are horizontal.");
	rb_drain_add(m, RB_PARAGRAPH);
}

/* -- what stands last -- */

static void add_cautions(struct rb_drain_maker *m)
{
	const struct rb_cautions *cautions = m->r->cautions;

	for (uint32_t i = 0; i < cautions->count; i++) {
		const char *rule = rb_caution_rule(&cautions->item[i]);

		rb_caution_words(&m->phrase, &cautions->item[i], m->decimal);
		rb_page_add(m->page, RB_CAUTION, m->phrase.text, *rule ? rule : NULL);
		rb_phrase_clear(&m->phrase);
	}
}

void rb_drain_verdicts(struct rb_drain_maker *m)
{
	rb_drain_hi_verdict(m);
	rb_drain_fall_verdicts(m);
	rb_drain_cover_verdict(m);
	rb_drain_laid_verdicts(m);
}

bool rb_drain_maker_init(struct rb_drain_maker *m, struct rb_arena *arena,
			 const struct rb_drain_result *r)
{
	*m = (struct rb_drain_maker){ .r = r, .page = rb_page_new(arena) };
	rb_phrase_init(&m->phrase, arena);
	m->decimal = rb_drain_decimal_style(r);
	m->inches = (struct rb_style){ RB_FEET_INCHES, 0, r->fraction, false };
	return m->page && !m->phrase.out_of_memory;
}

struct rb_page *rb_drain_page(struct rb_arena *arena, const struct rb_drain_result *r,
			      bool steps)
{
	struct rb_drain_maker m;

	if (!rb_drain_maker_init(&m, arena, r))
		return NULL;
	add_title(&m);
	add_pipe(&m);
	rb_drain_fall_part(&m);
	rb_drain_inverts_part(&m);
	rb_drain_rods_part(&m);
	rb_drain_cuts_part(&m);
	rb_drain_laid_part(&m);
	if (steps)
		rb_drain_steps_part(&m);
	add_cautions(&m);
	rb_drain_verdicts(&m);
	return m.page->out_of_memory || m.phrase.out_of_memory ? NULL : m.page;
}
