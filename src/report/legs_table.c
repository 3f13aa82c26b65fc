/* SPDX-License-Identifier: MIT */
/* legs_table.c - legs in rows, and what is said of all of them. */
#include "report/legs_table.h"

#include <string.h>

#include "report/slope_words.h"

enum {
	FROM,
	TO,
	LENGTH,
	FALL,
	PER_FOOT,
	PERCENT,
	ONE_IN,
	DEGREES,
	UNCERTAINTY,
	VELOCITY,
	VERDICT,
	COLUMNS
};

static const struct rb_table_column columns[COLUMNS] = {
	[FROM] = { "from", RB_LEFT, RB_SPILLS },
	[TO] = { "to", RB_LEFT, RB_SPILLS },
	[LENGTH] = { "length", RB_ON_POINT, RB_KEEPS },
	[FALL] = { "fall", RB_ON_POINT, RB_KEEPS },
	[PER_FOOT] = { "in/ft", RB_RIGHT, RB_KEEPS },
	[PERCENT] = { "%", RB_ON_POINT, RB_KEEPS },
	[ONE_IN] = { "1 in", RB_ON_POINT, RB_KEEPS },
	[DEGREES] = { "degrees", RB_ON_POINT, RB_KEEPS },
	[UNCERTAINTY] = { "+/- in/ft", RB_ON_POINT, RB_KEEPS },
	[VELOCITY] = { "full, n 0.013", RB_ON_POINT, RB_KEEPS },
	[VERDICT] = { "", RB_LEFT, RB_KEEPS },
};

struct maker {
	const struct rb_legs *legs;
	struct rb_table *table;
	bool has[COLUMNS];
	char text[COLUMNS][RB_LENGTH_TEXT];
};

struct rb_style rb_runs_style(enum rb_unit unit)
{
	return (struct rb_style){ rb_unit_of_runs(unit), 2, 1, false };
}

static bool any_uncertainty(const struct rb_legs *legs)
{
	for (uint32_t i = 0; i < legs->count; i++)
		if (rb_slope_given(legs->leg[i].uncertainty))
			return true;
	return false;
}

static const char *velocity_heading(enum rb_unit unit)
{
	return rb_unit_of_runs(unit) == RB_METRES ? "m/s full\nn 0.013"
						  : "ft/s full\nn 0.013";
}

#define SHORT_NAME 9 /* columns that both names have beside all numbers */

static bool any_long_name(const struct rb_legs *legs)
{
	for (uint32_t i = 0; i < legs->count; i++)
		if (strlen(legs->leg[i].from) > SHORT_NAME ||
		    strlen(legs->leg[i].to) > SHORT_NAME)
			return true;
	return false;
}

static bool start(struct maker *m, struct rb_page *page)
{
	struct rb_table_column column[COLUMNS];
	size_t count = 0;

	for (int i = 0; i < COLUMNS; i++) {
		m->has[i] = true;
		if (i == UNCERTAINTY)
			m->has[i] = any_uncertainty(m->legs);
		if (i == VELOCITY)
			m->has[i] = m->legs->velocity;
		if (!m->has[i])
			continue;
		column[count] = columns[i];
		if (!any_long_name(m->legs))
			column[count].room = RB_KEEPS;
		if (i == VELOCITY)
			column[count].heading = velocity_heading(m->legs->style.unit);
		if (i == FALL && m->legs->style.unit == RB_FEET_INCHES)
			column[count].align = RB_ON_INCHES;
		count++;
	}
	m->table = rb_page_table(page, m->legs->caption, column, count);
	return m->table;
}

/* The fraction of an inch a foot where one says it, else decimals; without the unit. */
static void set_per_foot(char text[static RB_LENGTH_TEXT], rb_slope slope)
{
	rb_slope_format(text, slope, RB_PER_FOOT, 3);
	text[strcspn(text, "i")] = '\0';
	if (*text)
		text[strlen(text) - 1] = '\0'; /* the blank before the unit */
}

static void set_slopes(struct maker *m, const struct rb_leg *leg)
{
	set_per_foot(m->text[PER_FOOT], leg->slope);
	rb_slope_number(m->text[PERCENT], leg->slope, RB_PERCENT, 2);
	rb_slope_number(m->text[ONE_IN], leg->slope, RB_ONE_IN, 1);
	rb_slope_number(m->text[DEGREES], leg->slope, RB_DEGREES, 2);
	if (rb_slope_given(leg->uncertainty))
		rb_slope_number(m->text[UNCERTAINTY], leg->uncertainty, RB_PER_FOOT, 4);
}

static const char *verdict_of(const struct rb_legs *legs, const struct rb_leg *leg)
{
	static const char *const words[RB_LEG_VERDICTS] = {
		[RB_LEG_NOT_JUDGED] = "",   [RB_LEG_OK] = "ok",
		[RB_LEG_FLAT] = "FLAT",     [RB_LEG_LEVEL] = "LEVEL",
		[RB_LEG_UPHILL] = "UPHILL",
	};

	if (legs->judged || leg->verdict == RB_LEG_NOT_JUDGED)
		return words[leg->verdict];
	return rb_leg_verdict_name(leg->verdict);
}

static void add(struct maker *m, const struct rb_leg *leg, rb_length velocity,
		enum rb_row_kind kind)
{
	struct rb_style runs = rb_runs_style(m->legs->style.unit);
	const char *cell[COLUMNS];
	size_t count = 0;

	memset(m->text, 0, sizeof m->text);
	rb_length_format(m->text[LENGTH], leg->length, runs);
	rb_length_format(m->text[FALL], leg->fall, m->legs->style);
	set_slopes(m, leg);
	rb_length_format(m->text[VELOCITY], velocity, runs);
	for (int i = 0; i < COLUMNS; i++) {
		if (!m->has[i])
			continue;
		cell[count++] = i == FROM      ? leg->from
				: i == TO      ? leg->to
				: i == VERDICT ? verdict_of(m->legs, leg)
					       : m->text[i];
	}
	rb_table_add(m->table, kind, cell);
	if (m->legs->judged && leg->within_reading)
		rb_table_note(m->table,
			      "by no more than the rod can tell over that length");
}

void rb_legs_table(struct rb_page *page, const struct rb_legs *legs)
{
	struct maker m = { .legs = legs };

	if (!start(&m, page)) {
		page->out_of_memory = true;
		return;
	}
	for (uint32_t i = 0; i < legs->count; i++)
		add(&m, &legs->leg[i],
		    legs->velocity ? legs->velocity[i] : rb_length_none(), RB_ROW);
	if (legs->total)
		add(&m, legs->total, rb_length_none(), RB_ROW_SUMS);
	page->out_of_memory |= m.table->out_of_memory;
}

/* -- verdict -- */

uint32_t rb_legs_count(const struct rb_leg *leg, uint32_t count,
		       enum rb_leg_verdict verdict, uint32_t *first)
{
	uint32_t found = 0;

	for (uint32_t i = 0; i < count; i++) {
		if (leg[i].verdict != verdict)
			continue;
		if (!found++)
			*first = i;
	}
	return found;
}

static void say_legs(struct rb_phrase *phrase, uint32_t count, const char *what)
{
	rb_phrase_number(phrase, count);
	rb_phrase_text(phrase, " ");
	rb_phrase_text(phrase, what);
	rb_phrase_text(phrase, count == 1 ? "" : "s");
}

static void say_all_hold(struct rb_phrase *phrase, uint32_t count, const char *asked,
			 const char *what)
{
	rb_phrase_text(phrase, *asked ? "NOT FLATTER THAN " : "NOT JUDGED: ");
	rb_phrase_text(phrase, *asked ? asked : "no minimum slope is given");
	rb_phrase_text(phrase, *asked ? ": " : "; ");
	if (count > 1)
		rb_phrase_text(phrase, "all ");
	say_legs(phrase, count, what);
	if (!*asked)
		rb_phrase_text(phrase, count > 1 ? " fall" : " falls");
	rb_phrase_text(phrase, ".");
}

static void say_fault(struct rb_phrase *phrase, const struct rb_leg *leg, uint32_t count,
		      const char *what, enum rb_leg_verdict verdict)
{
	uint32_t first = 0, found = rb_legs_count(leg, count, verdict, &first);

	if (count > 1) {
		rb_phrase_number(phrase, found);
		rb_phrase_text(phrase, " of ");
		say_legs(phrase, count, what);
		rb_phrase_text(phrase, found > 1 ? ", the first " : ", ");
	}
	rb_phrase_words(phrase, leg[first].from);
	rb_phrase_text(phrase, " to ");
	rb_phrase_words(phrase, leg[first].to);
	if (verdict != RB_LEG_LEVEL) {
		rb_phrase_text(phrase, " with ");
		rb_phrase_slope_beside(phrase, leg[first].slope, leg[first].minimum);
	}
	rb_phrase_text(phrase, ".");
}

void rb_legs_verdict(struct rb_phrase *phrase, const struct rb_leg *leg, uint32_t count,
		     const char *asked, const char *what)
{
	static const struct {
		enum rb_leg_verdict verdict;
		const char *words;
	} faults[] = {
		{ RB_LEG_UPHILL, "UPHILL: " },
		{ RB_LEG_LEVEL, "LEVEL: " },
		{ RB_LEG_FLAT, "FLATTER THAN " },
	};
	bool any = false;
	uint32_t first;

	for (size_t i = 0; i < sizeof faults / sizeof *faults; i++) {
		if (!rb_legs_count(leg, count, faults[i].verdict, &first))
			continue;
		rb_phrase_text(phrase, any ? " " : "");
		rb_phrase_text(phrase, faults[i].words);
		if (faults[i].verdict == RB_LEG_FLAT) {
			rb_phrase_text(phrase, asked);
			rb_phrase_text(phrase, ": ");
		}
		say_fault(phrase, leg, count, what, faults[i].verdict);
		any = true;
	}
	if (!any)
		say_all_hold(phrase, count, asked, what);
}
