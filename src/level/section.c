/* SPDX-License-Identifier: MIT */
/*
 * Sections: sums, misclosure and verdict.
 *
 * misclosure = computed - known, as in NAVEDTRA 14069 ch. 14 ("error of closure"); sum of
 * backsights - sum of foresights = last - first elevation, which proves the arithmetic
 * and not the survey (NAVEDTRA 14071 ch. 7).
 */
#include <stdio.h>

#include "level/chain.h"
#include "level/check.h"
#include "level/kind.h"
#include "level/totals.h"

struct rb_judging rb_judging_of(const struct rb_book *book)
{
	return (struct rb_judging){ book->key.tolerance, book->key.adjust, false };
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

static bool has_length(const struct rb_section *s)
{
	return rb_length_given(s->length) && s->length.nm > 0;
}

static void judge(struct rb_section *s, const struct rb_judging *judging)
{
	const struct rb_tolerance *t = &judging->tolerance;
	bool able = t->given && (!rb_tolerance_needs_length(t) || has_length(s));

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

/* ---- sight lengths that are asked for and missing ---- */

struct missing {
	const struct rb_book *book;
	char text[160];
	size_t used;
	int64_t rows;
	uint32_t last_line;
};

#define LISTED 12

static void miss(struct missing *m, uint32_t row, enum rb_column column)
{
	uint32_t line = rb_book_line(m->book, row);

	if (rb_length_given(rb_book_value(m->book, column, row)) || line == m->last_line)
		return;
	m->last_line = line;
	if (m->rows++ < LISTED)
		m->used += (size_t)snprintf(m->text + m->used, sizeof m->text - m->used,
					    "%s%lu", m->used ? ", " : "",
					    (unsigned long)line);
	else if (m->rows == LISTED + 1)
		snprintf(m->text + m->used, sizeof m->text - m->used, " and others");
}

static void miss_setup(struct missing *m, const struct rb_reduced *reduced,
		       uint32_t setup)
{
	const struct rb_setup *s = &reduced->setup[setup];

	if (s->via != RB_NO_SHOT)
		miss(m, reduced->shot[s->via].row, RB_FORESIGHT_DISTANCE);
	miss(m, reduced->shot[s->shot].backsight_row, RB_BACKSIGHT_DISTANCE);
}

static bool closes(const struct rb_section *s)
{
	return rb_length_given(s->misclosure);
}

/* The rows without a sight length, in closed sections; one finding. */
static void say_missing(const struct rb_sections *sections, struct rb_findings *findings,
			bool by_tolerance)
{
	const struct rb_reduced *reduced = sections->reduced;
	const struct rb_book_keys *key = &reduced->book->key;
	struct missing m = { .book = reduced->book };
	uint32_t next = 0;

	for (uint32_t i = 0; i < reduced->setups; i++) {
		uint32_t of = sections->of_setup[i];

		if (of != RB_NO_SECTION && closes(&sections->section[of]))
			miss_setup(&m, reduced, i);
		for (; next < sections->sections && sections->section[next].last <= i;
		     next++)
			if (closes(&sections->section[next]))
				miss(&m, reduced->shot[sections->section[next].end].row,
				     RB_FORESIGHT_DISTANCE);
	}
	rb_findings_add(
		findings, RB_CODE_LENGTHS_MISSING,
		by_tolerance ? rb_at(key->tolerance_line, key->tolerance_cell, NULL, NULL)
			     : rb_at(key->adjust_line, key->adjust_cell, NULL, NULL),
		rb_number(m.rows),
		rb_text(m.rows ? rb_findings_text(findings, m.text, sizeof m.text - 1)
			       : "every sight length is 0"));
}

/* False where lengths are needed and some closed section has not all of them. */
static bool check_lengths(const struct rb_sections *sections,
			  struct rb_findings *findings)
{
	bool by_tolerance = sections->tolerance.given &&
			    rb_tolerance_needs_length(&sections->tolerance);

	if (!by_tolerance &&
	    !(sections->tolerance.given && sections->adjust == RB_BY_DISTANCE))
		return true;
	for (uint32_t i = 0; i < sections->sections; i++) {
		const struct rb_section *s = &sections->section[i];

		if (!closes(s) || has_length(s))
			continue;
		say_missing(sections, findings, by_tolerance);
		return false;
	}
	return true;
}

/* ---- findings ---- */

static void say_verdict(const struct rb_sections *sections, const struct rb_section *s,
			struct rb_findings *findings)
{
	const struct rb_reduced *reduced = sections->reduced;
	const struct rb_book *book = reduced->book;
	const struct rb_shot *end = &reduced->shot[s->end];
	const struct rb_argument beyond[RB_ARGUMENTS] = {
		rb_measure(s->misclosure, book->unit),
		rb_measure(s->allowed, book->unit),
		rb_text(rb_book_point(book, s->from)),
		rb_text(rb_book_point(book, s->to)),
	};

	if (s->verdict == RB_BEYOND)
		rb_findings_add4(findings, RB_CODE_DOES_NOT_CLOSE,
				 rb_book_place(book, end->row, RB_FORESIGHT), beyond);
	if (s->verdict == RB_OPEN)
		rb_findings_add(findings, RB_CODE_OPEN_SECTION,
				rb_book_row_place(book, end->row), beyond[2],
				rb_text(rb_book_typed(book, end->row)));
}

static void say_balance(const struct rb_sections *sections, const struct rb_section *s,
			struct rb_findings *findings)
{
	const struct rb_book *book = sections->reduced->book;
	rb_length limit = book->key.balance_limit, apart;
	enum rb_unit unit = rb_unit_of_runs(book->unit);

	if (!rb_length_given(limit) || !rb_length_given(s->length))
		return;
	apart = rb_length_sub(s->backsight_length, s->foresight_length);
	if (rb_length_compare(rb_length_absolute(apart), limit) > 0)
		rb_findings_add4(findings, RB_CODE_UNBALANCED, rb_in_file(),
				 (struct rb_argument[RB_ARGUMENTS]){
					 rb_measure(apart, unit), rb_measure(limit, unit),
					 rb_text(rb_book_point(book, s->from)),
					 rb_text(rb_book_point(book, s->to)) });
}

static void say_sight_limit(const struct rb_book *book, struct rb_findings *findings)
{
	enum rb_unit unit = rb_unit_of_runs(book->unit);

	for (uint32_t row = 0; rb_length_given(book->key.sight_limit) && row < book->rows;
	     row++)
		for (int c = RB_BACKSIGHT_DISTANCE; c <= RB_FORESIGHT_DISTANCE; c++) {
			rb_length length = rb_book_value(book, (enum rb_column)c, row);

			if (rb_length_given(length) &&
			    rb_length_compare(length, book->key.sight_limit) > 0)
				rb_findings_add(
					findings, RB_CODE_SIGHT_LIMIT,
					rb_book_place(book, row, (enum rb_column)c),
					rb_measure(length, unit),
					rb_measure(book->key.sight_limit, unit));
		}
}

static void say_all(const struct rb_sections *sections, struct rb_findings *findings)
{
	bool closed = false;

	say_sight_limit(sections->reduced->book, findings);
	for (uint32_t i = 0; i < sections->sections; i++) {
		say_verdict(sections, &sections->section[i], findings);
		say_balance(sections, &sections->section[i], findings);
		closed |= closes(&sections->section[i]);
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
	if (!check_lengths(sections, findings))
		return NULL;
	say_all(sections, findings);
	if (rb_checks_find(sections, arena, findings))
		return sections;
	rb_findings_no_memory(findings);
	return NULL;
}
