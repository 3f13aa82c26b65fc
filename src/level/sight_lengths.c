/* SPDX-License-Identifier: MIT */
/* sight_lengths.c - lengths of sights against limits, and those that are missing. */
#include "level/sight_lengths.h"

#include <stdio.h>
#include <string.h>

/* ---- sight lengths that are asked for and missing ---- */

/* Rows are marked first and listed then, so that each stands once and in its order. */
struct missing {
	const struct rb_reduced *reduced;
	bool *row; /* by row of the book */
	int64_t rows;
	char text[160];
};

static void miss(struct missing *m, uint32_t row, enum rb_column column)
{
	if (rb_length_given(rb_book_value(m->reduced->book, column, row)) || m->row[row])
		return;
	m->row[row] = true;
	m->rows++;
}

static void miss_setup(struct missing *m, uint32_t setup)
{
	const struct rb_setup *s = &m->reduced->setup[setup];

	if (s->via != RB_NO_SHOT)
		miss(m, m->reduced->shot[s->via].row, RB_FORESIGHT_DISTANCE);
	miss(m, m->reduced->shot[s->shot].backsight_row, RB_BACKSIGHT_DISTANCE);
}

#define LISTED 12

static void list_lines(struct missing *m)
{
	size_t used = 0;
	int64_t listed = 0;

	for (uint32_t row = 0; row < m->reduced->book->rows && listed <= LISTED; row++) {
		if (!m->row[row])
			continue;
		if (listed++ == LISTED)
			snprintf(m->text + used, sizeof m->text - used, " and others");
		else
			used += (size_t)snprintf(
				m->text + used, sizeof m->text - used, "%s%lu",
				used ? ", " : "",
				(unsigned long)rb_book_line(m->reduced->book, row));
	}
}

/* The rows on which a sight that carries the levels has no length: of the sections, or
 * also of the setups off their chains.  False: memory ran out. */
static bool find_missing(struct missing *m, const struct rb_sections *sections,
			 struct rb_findings *findings, bool spurs_too)
{
	const struct rb_reduced *reduced = sections->reduced;

	*m = (struct missing){ .reduced = reduced };
	m->row = rb_arena_take_clear(findings->arena, reduced->book->rows, 1);
	if (!m->row)
		return rb_findings_no_memory(findings);
	for (uint32_t i = 0; i < reduced->setups; i++)
		if (spurs_too || sections->of_setup[i] != RB_NO_SECTION)
			miss_setup(m, i);
	for (uint32_t i = 0; i < sections->sections; i++)
		if (!sections->section[i].no_foresight)
			miss(m, reduced->shot[sections->section[i].end].row,
			     RB_FORESIGHT_DISTANCE);
	list_lines(m);
	return true;
}

/* One finding for all of them. */
static void say_missing(const struct rb_sections *sections, struct rb_findings *findings,
			struct rb_place place)
{
	struct missing m;

	if (find_missing(&m, sections, findings, false) && m.rows)
		rb_findings_add(
			findings, RB_CODE_LENGTHS_MISSING, place, rb_number(m.rows),
			rb_text(rb_findings_text(findings, m.text, strlen(m.text))));
}

/* Sections of which all sight lengths are given, and are 0. */
static void say_zero(const struct rb_sections *sections, struct rb_findings *findings,
		     struct rb_place place)
{
	const struct rb_book *book = sections->reduced->book;

	for (uint32_t i = 0; i < sections->sections; i++) {
		const struct rb_section *s = &sections->section[i];

		if (rb_length_given(s->length) && s->length.nm == 0)
			rb_findings_add(
				findings, RB_CODE_LENGTHS_ZERO, place,
				rb_text(rb_book_point(book, s->from)),
				rb_text(rb_book_typed(
					book, sections->reduced->shot[s->end].row)));
	}
}

bool rb_sight_lengths_suffice(const struct rb_sections *sections,
			      const struct rb_judging *judging,
			      struct rb_findings *findings)
{
	bool by_tolerance = judging->tolerance.given &&
			    rb_tolerance_needs_length(&judging->tolerance);
	size_t errors = findings->of_severity[RB_ERROR];
	struct rb_place place =
		by_tolerance ? judging->tolerance_place : judging->adjust_place;

	if (!by_tolerance && judging->adjust != RB_BY_DISTANCE)
		return true;
	say_missing(sections, findings, place);
	say_zero(sections, findings, place);
	return !findings->out_of_memory && findings->of_severity[RB_ERROR] == errors;
}

/* ---- the limits of the book ---- */

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
			rb_length length = rb_book_sight(book, (enum rb_column)c, row);

			if (rb_length_given(length) &&
			    rb_length_compare(length, book->key.sight_limit) > 0)
				rb_findings_add(
					findings, RB_CODE_SIGHT_LIMIT,
					rb_book_place(book, row, (enum rb_column)c),
					rb_measure(length, unit),
					rb_measure(book->key.sight_limit, unit));
		}
}

/* A limit that is given and cannot be held against a sight without a length. */
static bool say_unjudged(const struct rb_sections *sections, struct rb_findings *findings)
{
	const struct rb_book_keys *key = &sections->reduced->book->key;
	bool sight = rb_length_given(key->sight_limit);
	bool balance = rb_length_given(key->balance_limit);
	struct missing m;
	const char *lines;

	if (!sight && !balance)
		return true;
	if (!find_missing(&m, sections, findings, true) || !m.rows)
		return m.row != NULL;
	lines = rb_arena_text(findings->arena, m.text, strlen(m.text));
	if (!lines)
		return rb_findings_no_memory(findings);
	rb_findings_add4(
		findings, RB_CODE_LIMIT_NOT_JUDGED,
		sight ? key->sight_limit_place : key->balance_limit_place,
		(struct rb_argument[RB_ARGUMENTS]){
			rb_text(sight && balance ? "sight limit and balance limit"
				: sight          ? "sight limit"
						 : "balance limit"),
			rb_number(m.rows), rb_text(lines) });
	return true;
}

bool rb_sight_lengths_judge(const struct rb_sections *sections,
			    struct rb_findings *findings)
{
	say_sight_limit(sections->reduced->book, findings);
	for (uint32_t at = 0; at < sections->sections; at++)
		say_balance(sections, &sections->section[at], findings);
	return say_unjudged(sections, findings);
}
