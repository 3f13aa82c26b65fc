/* SPDX-License-Identifier: MIT */
/*
 * Sections: sums, misclosure and verdict.
 *
 * misclosure = computed - known, as in NAVEDTRA 14069 ch. 14 ("error of closure"); sum of
 * backsights - sum of foresights = last - first elevation, which proves the arithmetic
 * and not the survey (NAVEDTRA 14071 ch. 7).
 */
#include "level/chain.h"
#include "level/check.h"
#include "level/kind.h"
#include "level/sight_lengths.h"
#include "level/spur.h"
#include "level/totals.h"

struct rb_judging rb_judging_of(const struct rb_book *book)
{
	return (struct rb_judging){ .tolerance = book->key.tolerance,
				    .adjust = book->key.adjust,
				    .tolerance_place = book->key.tolerance_place,
				    .adjust_place = book->key.adjust_place };
}

static uint32_t point_of(const struct rb_reduced *reduced, uint32_t shot)
{
	return reduced->book->row[reduced->shot[shot].row].point;
}

static void fill(struct rb_section *s, const struct rb_reduced *reduced,
		 const struct rb_chains *chains)
{
	const struct rb_setup *last = &reduced->setup[s->last];
	struct rb_totals t = rb_chain_totals(chains, s->end);

	s->first = last->root;
	s->from = point_of(reduced, reduced->setup[s->first].shot);
	s->no_foresight = reduced->shot[s->end].booked != RB_BOOKED_FORESIGHT &&
			  reduced->shot[s->end].kind != RB_TURNING_POINT;
	s->to = s->no_foresight ? RB_NO_POINT : point_of(reduced, s->end);
	s->setups = last->depth;
	s->start = rb_book_known(reduced->book, s->from);
	s->finish = reduced->shot[s->end].elevation;
	s->sum_backsight = t.backsight;
	s->sum_foresight = s->no_foresight ? rb_length_none() : t.foresight;
	s->sum_rise = t.rise;
	s->sum_fall = t.fall;
	s->backsight_length = t.backsight_length;
	s->foresight_length = t.foresight_length;
	s->length = rb_length_none();
	if (rb_length_given(t.backsight_length) && rb_length_given(t.foresight_length))
		s->length = rb_length_add(t.backsight_length, t.foresight_length);
	s->misclosure = rb_length_none();
	if (rb_shot_closes(reduced, s->end))
		s->misclosure = rb_length_sub(s->finish, rb_shot_known(reduced, s->end));
}

static void judge(struct rb_section *s, const struct rb_judging *judging)
{
	const struct rb_tolerance *t = &judging->tolerance;
	bool able =
		t->given && (!rb_tolerance_needs_length(t) || rb_section_has_length(s));

	s->allowed =
		able ? rb_tolerance_allowed(t, s->length, s->setups) : rb_length_none();
	if (!rb_length_given(s->misclosure))
		s->verdict = RB_OPEN;
	else if (!able)
		s->verdict = RB_NOT_JUDGED;
	else
		s->verdict = rb_tolerance_holds(t, s->misclosure, s->length, s->setups)
				     ? RB_CLOSES
				     : RB_BEYOND;
	s->adjusted = judging->adjust != RB_NOT_ADJUSTED &&
		      (s->verdict == RB_CLOSES ||
		       (s->verdict == RB_BEYOND && judging->adjust_anyway));
}

/* ---- findings ---- */

const struct rb_check *rb_section_nearly_closed(const struct rb_sections *sections,
						const struct rb_section *section)
{
	if (section->verdict != RB_OPEN)
		return NULL;
	for (uint32_t i = section->checks; i-- > 0;) {
		const struct rb_check *check = &sections->check[section->first_check + i];

		if (check->against == RB_NO_SHOT)
			return check;
	}
	return NULL;
}

static void say_verdict(const struct rb_sections *sections, const struct rb_section *s,
			struct rb_findings *findings)
{
	const struct rb_reduced *reduced = sections->reduced;
	const struct rb_book *book = reduced->book;
	const struct rb_shot *end = &reduced->shot[s->end];
	const struct rb_check *check = rb_section_nearly_closed(sections, s);
	const struct rb_argument beyond[RB_ARGUMENTS] = {
		rb_measure(s->misclosure, book->unit),
		rb_measure(s->allowed, book->unit),
		rb_text(rb_book_point(book, s->from)),
		rb_text(rb_book_point(book, s->to)),
	};

	const struct rb_argument open[RB_ARGUMENTS] = {
		beyond[2],
		rb_text(rb_book_typed(book, end->row)),
		check ? rb_text(rb_book_typed(book, reduced->shot[check->shot].row))
		      : rb_nothing(),
		check ? rb_measure(check->difference, book->unit) : rb_nothing(),
	};

	if (s->verdict == RB_BEYOND)
		rb_findings_add4(findings, RB_CODE_DOES_NOT_CLOSE,
				 rb_book_place(book, end->row, RB_FORESIGHT), beyond);
	if (s->verdict == RB_OPEN)
		rb_findings_add4(findings, RB_CODE_OPEN_SECTION,
				 rb_book_row_place(book, end->row), open);
}

static void say_verdicts(const struct rb_sections *sections, struct rb_findings *findings)
{
	bool closed = false;

	for (uint32_t i = 0; i < sections->sections; i++) {
		say_verdict(sections, &sections->section[i], findings);
		closed |= rb_length_given(sections->section[i].misclosure);
	}
	if (closed && !sections->tolerance.given)
		rb_findings_add(findings, RB_CODE_NO_TOLERANCE, rb_in_file(),
				rb_nothing(), rb_nothing());
}

static bool sum_all(struct rb_sections *sections, struct rb_arena *arena,
		    const struct rb_judging *judging)
{
	struct rb_arena *scratch = rb_arena_new(rb_arena_allocator(arena));
	struct rb_chains chains;
	bool shared = false;
	bool able = scratch && rb_chains_find(sections, arena, &shared) &&
		    rb_chains_init(&chains, scratch, sections->reduced, shared);

	for (uint32_t i = 0; able && i < sections->sections; i++) {
		fill(&sections->section[i], sections->reduced, &chains);
		judge(&sections->section[i], judging);
	}
	rb_arena_free(scratch);
	return able;
}

struct rb_sections *rb_sections(struct rb_arena *arena, struct rb_findings *findings,
				const struct rb_reduced *reduced,
				const struct rb_judging *judging)
{
	struct rb_sections *sections = rb_arena_take_clear(arena, 1, sizeof *sections);

	if (!sections) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	sections->reduced = reduced;
	sections->tolerance = judging->tolerance;
	sections->adjust = judging->adjust;
	if (!sum_all(sections, arena, judging)) {
		rb_findings_no_memory(findings);
		return NULL;
	}
	if (!rb_sight_lengths_suffice(sections, judging, findings))
		return NULL;
	if (rb_checks_find(sections, arena, findings) &&
	    rb_sight_lengths_judge(sections, findings) &&
	    rb_spurs_find(sections, arena, findings)) {
		say_verdicts(sections, findings);
		return sections;
	}
	rb_findings_no_memory(findings);
	return NULL;
}
