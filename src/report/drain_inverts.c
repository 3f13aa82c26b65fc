/* SPDX-License-Identifier: MIT */
/* drain_inverts.c - the inverts, station by station, and the grade rods to them. */
#include "level/places.h"
#include "report/drain_parts.h"
#include "report/section_words.h"

#define COUNT(table) (sizeof(table) / sizeof *(table))

/* -- inverts -- */

enum { POINT, CHAINAGE, INVERT_IN, INVERT, TOP, TRENCH, REMARKS, COLUMNS };

struct inverts_table {
	struct rb_table *table;
	bool has[COLUMNS];
};

static bool any_step(const struct rb_drain_result *r)
{
	for (uint32_t i = 0; i < r->inverts->stations; i++) {
		const struct rb_station *station = &r->inverts->station[i];

		if (rb_exact_compare(station->in, station->out))
			return true;
	}
	return false;
}

static bool any_remark(const struct rb_drain_result *r)
{
	for (uint32_t i = 0; i < r->plan->rows; i++)
		if (*r->plan->row[i].remarks)
			return true;
	return false;
}

static bool start_inverts(struct rb_drain_maker *m, struct inverts_table *t)
{
	static const char *const headings[COLUMNS] = {
		"point",        "chainage",       "invert\nin", "invert",
		"top of\npipe", "trench\nbottom", "",
	};
	struct rb_table_column column[COLUMNS];
	size_t columns = 0;

	for (int i = 0; i < COLUMNS; i++)
		t->has[i] = true;
	t->has[CHAINAGE] = rb_drain_names(m);
	t->has[INVERT_IN] = any_step(m->r);
	t->has[REMARKS] = any_remark(m->r);
	for (int i = 0; i < COLUMNS; i++) {
		bool words = i == POINT || i == REMARKS;

		if (t->has[i])
			column[columns++] = (struct rb_table_column){
				headings[i],
				words           ? RB_LEFT
				: i == CHAINAGE ? RB_RIGHT
						: rb_drain_align(m),
				words ? RB_SPILLS : RB_KEEPS,
			};
	}
	t->table = rb_drain_table(m, "Inverts, from the upper end to the outlet", column,
				  columns);
	return t->table;
}

static void add_station(struct rb_drain_maker *m, const struct inverts_table *t,
			uint32_t i)
{
	const struct rb_drain_result *r = m->r;
	const struct rb_cut *cut = &r->sheet->cut[i];
	const struct rb_plan_row *row = rb_drain_row(r, i);
	const rb_length number[] = { rb_drain_invert_in(r, i), cut->invert,
				     cut->top_of_pipe, cut->trench_bottom };
	char text[COLUMNS][RB_LENGTH_TEXT];
	const char *all[COLUMNS], *cell[COLUMNS];
	size_t cells = 0;

	rb_drain_chainage(m, text[CHAINAGE], r->inverts->station[i].chainage);
	for (size_t n = 0; n < COUNT(number); n++)
		rb_drain_cell(text[INVERT_IN + n], number[n], r->style);
	for (int c = 0; c < COLUMNS; c++)
		all[c] = text[c];
	all[POINT] = r->inverts->station[i].name;
	all[REMARKS] = row ? row->remarks : "";
	for (int c = 0; c < COLUMNS; c++)
		if (t->has[c])
			cell[cells++] = all[c];
	rb_table_add(t->table, RB_ROW, cell);
}

/* What the plan does not say is a dash, and one line says which key to add. */
static void add_missing(struct rb_drain_maker *m)
{
	if (!m->r->has_plan) {
		rb_phrase_text(&m->phrase,
			       "Top of pipe and trench bottom are not known without a "
			       "plan that says the pipe and the bedding (rodbook new "
			       "plan).");
		rb_drain_add(m, RB_PARAGRAPH);
		return;
	}
	for (enum rb_surface s = RB_TOP_OF_PIPE; s < RB_SURFACES; s++) {
		const char *key = rb_surface_key(m->r->plan, s);

		if (!key)
			continue;
		rb_phrase_text(&m->phrase, m->phrase.used ? " The " : "The ");
		rb_phrase_text(&m->phrase, rb_surface_name(s));
		rb_phrase_text(&m->phrase, " is not known: add to the plan ");
		rb_phrase_text(&m->phrase, key);
		rb_phrase_text(&m->phrase, ".");
	}
	rb_drain_add(m, RB_PARAGRAPH);
}

void rb_drain_inverts_part(struct rb_drain_maker *m)
{
	struct inverts_table t;

	if (!start_inverts(m, &t))
		return;
	for (uint32_t i = 0; i < m->r->inverts->stations; i++)
		add_station(m, &t, i);
	m->page->out_of_memory |= t.table->out_of_memory;
	add_missing(m);
}

/* -- grade rods -- */

static void say_hi(struct rb_drain_maker *m)
{
	const struct rb_drain_result *r = m->r;
	const struct rb_sighted_benchmark *benchmark = r->benchmark;

	rb_phrase_text(&m->phrase,
		       "Grade rods to the pipe and the trench bottom; HI today ");
	rb_phrase_length(&m->phrase, r->rods->hi, r->style);
	if (!rb_length_given(benchmark[0].elevation))
		return;
	rb_phrase_text(&m->phrase, " = ");
	rb_phrase_length(&m->phrase, benchmark[0].elevation, r->style);
	rb_phrase_text(&m->phrase, " + ");
	rb_phrase_length(&m->phrase, benchmark[0].backsight, r->style);
}

static void add_second_benchmark(struct rb_drain_maker *m)
{
	const struct rb_drain_result *r = m->r;

	if (!r->today.checked) {
		rb_phrase_text(
			&m->phrase,
			"The HI is not checked: sight a second benchmark (a second "
			"--benchmark and --backsight).");
		rb_drain_add(m, RB_PARAGRAPH);
		return;
	}
	rb_phrase_text(&m->phrase, "The second benchmark gives the HI ");
	if (r->today.difference.nm) {
		rb_drain_say_both(m, r->today.difference);
		rb_phrase_text(&m->phrase,
			       r->today.difference.nm > 0 ? " higher." : " lower.");
	} else {
		rb_phrase_text(&m->phrase, "exactly the same.");
	}
	rb_drain_add(m, RB_PARAGRAPH);
}

#define ROD_CELLS (2 + 2 * RB_SURFACES)

/* "the invert, the top of pipe are beyond the rod of 13 ft" */
static void say_out_of_reach(struct rb_drain_maker *m, const struct rb_grade_rod *rod,
			     enum rb_reach_of_rod reach)
{
	bool above = reach == RB_GRADE_ABOVE_SIGHT;
	int found = 0;

	for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++) {
		if (!rb_length_given(rod[s].reading) || rod[s].reach != reach)
			continue;
		rb_phrase_text(&m->phrase, found++ ? ", " : m->phrase.used ? "; " : "");
		rb_phrase_text(&m->phrase, rb_surface_name(s));
		rb_phrase_text(&m->phrase, above ? " above the line of sight by " : "");
		if (above)
			rb_drain_say_both(m, rod[s].reading);
	}
	if (!found || above)
		return;
	rb_phrase_text(&m->phrase, ": beyond the rod of ");
	rb_phrase_shown(&m->phrase, m->r->plan->rod, rb_unit_of_runs(m->decimal.unit));
}

/* The rods to one pipe at a station: to what comes in, or to what goes out. */
static void add_pipe(struct rb_drain_maker *m, struct rb_table *table,
		     const struct rb_station *station, const char *name,
		     const struct rb_grade_rod *rods, bool names)
{
	char text[ROD_CELLS][RB_LENGTH_TEXT];
	const char *cell[ROD_CELLS];
	size_t cells = 0;

	rb_drain_chainage(m, text[1], station->chainage);
	cell[cells++] = name;
	if (names)
		cell[cells++] = text[1];
	for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++) {
		const struct rb_grade_rod *rod = &rods[s];
		bool above = rod->reach == RB_GRADE_ABOVE_SIGHT;
		char(*pair)[RB_LENGTH_TEXT] = &text[2 + 2 * s];

		rb_drain_cell(pair[0], rod->reading, m->decimal);
		rb_drain_cell(pair[1], rod->reading, m->inches);
		cell[cells++] = above ? "above" : pair[0];
		cell[cells++] = above ? "" : pair[1];
	}
	rb_table_add(table, RB_ROW, cell);
	say_out_of_reach(m, rods, RB_GRADE_ABOVE_SIGHT);
	say_out_of_reach(m, rods, RB_BEYOND_ROD);
	if (m->phrase.used)
		rb_table_note(table, m->phrase.text);
	rb_phrase_clear(&m->phrase);
}

/* "MH-1 in" stands before "MH-1" where the pipe comes in over a step. */
static void add_rods(struct rb_drain_maker *m, struct rb_table *table, uint32_t i,
		     bool names)
{
	const struct rb_station *station = &m->r->inverts->station[i];
	const char *in;

	if (rb_length_given(m->r->rods->rod_in[i][RB_INVERT].reading)) {
		rb_phrase_words(&m->phrase, station->name);
		rb_phrase_text(&m->phrase, " in");
		in = rb_arena_text(m->phrase.arena, m->phrase.text, m->phrase.used);
		m->page->out_of_memory |= !in;
		rb_phrase_clear(&m->phrase);
		add_pipe(m, table, station, in, m->r->rods->rod_in[i], names);
	}
	add_pipe(m, table, station, station->name, m->r->rods->rod[i], names);
}

static struct rb_table *start_rods(struct rb_drain_maker *m, bool names)
{
	static const char *const headings[RB_SURFACES] = { "invert", "top", "trench" };
	struct rb_table_column column[ROD_CELLS];
	size_t columns = 0;
	const char *caption;

	say_hi(m);
	caption = rb_arena_text(m->phrase.arena, m->phrase.text, m->phrase.used);
	m->page->out_of_memory |= !caption;
	rb_phrase_clear(&m->phrase);
	column[columns++] = (struct rb_table_column){ "point", RB_LEFT, RB_SPILLS };
	if (names)
		column[columns++] =
			(struct rb_table_column){ "chainage", RB_RIGHT, RB_KEEPS };
	for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++) {
		column[columns++] =
			(struct rb_table_column){ headings[s], RB_ON_POINT, RB_KEEPS };
		column[columns++] =
			(struct rb_table_column){ "ft-in", RB_ON_INCHES, RB_KEEPS };
	}
	return rb_drain_table(m, caption, column, columns);
}

/* To what is shown of it, and still in reach: the lowest up, the highest down. */
static rb_length inward(rb_length a, struct rb_style style, bool up)
{
	int64_t step = rb_decimal_step(style.unit, style.decimals).nm;
	int64_t whole = a.nm / step - (a.nm % step < 0);

	return rb_length_of((whole + (up && whole * step != a.nm)) * step);
}

/* Where something is out of reach: the heights of instrument that serve the whole line.
 */
static void add_reach(struct rb_drain_maker *m)
{
	const struct rb_grade_rods *rods = m->r->rods;
	rb_length lowest = inward(rods->lowest_hi, m->decimal, true);
	rb_length highest = inward(rods->highest_hi, m->decimal, false);
	bool out = rb_length_compare(rods->hi, rods->lowest_hi) < 0 ||
		   rb_length_compare(rods->hi, rods->highest_hi) > 0;

	if (!out)
		return;
	if (rb_length_compare(lowest, highest) > 0) {
		rb_phrase_text(&m->phrase,
			       "No single HI reaches every station: the rod is too short "
			       "for the whole line. Set up more than once.");
	} else {
		rb_phrase_text(&m->phrase, "Every station is in reach from an HI of ");
		rb_phrase_length(&m->phrase, lowest, m->decimal);
		rb_phrase_text(&m->phrase, " to ");
		rb_phrase_length(&m->phrase, highest, m->decimal);
		rb_phrase_text(&m->phrase, ".");
	}
	if (rb_length_compare(rods->hi, rods->lowest_hi) < 0)
		rb_phrase_text(
			&m->phrase,
			" What lies above the line of sight can also be set with "
			"the rod turned over, its foot up: the reading is then the "
			"height above the line of sight.");
	rb_drain_add(m, RB_PARAGRAPH);
}

/* Where it was checked; the grade rods hang on it. */
void rb_drain_hi_verdict(struct rb_drain_maker *m)
{
	const struct rb_todays_hi *today = &m->r->today;
	rb_length allowed = rb_hi_allowed(m->r->plan);

	if (!m->r->rods || !today->checked)
		return;
	if (rb_length_compare(rb_length_absolute(today->difference), allowed) > 0) {
		rb_phrase_text(&m->phrase, "HI DIFFERS: the second benchmark gives it ");
		rb_drain_say_both(m, today->difference);
		rb_phrase_text(&m->phrase, today->difference.nm > 0 ? " higher, and "
								    : " lower, and ");
		rb_drain_say_both(m, allowed);
		rb_phrase_text(&m->phrase, " is allowed.");
	} else {
		rb_phrase_text(&m->phrase, "HI CHECKED: the second benchmark within ");
		rb_drain_say_both(m, allowed);
		rb_phrase_text(&m->phrase, ".");
	}
	rb_drain_add(m, RB_VERDICT);
}

void rb_drain_rods_part(struct rb_drain_maker *m)
{
	bool names = rb_drain_names(m);
	struct rb_table *table;

	if (!m->r->rods) {
		rb_phrase_text(&m->phrase,
			       "No grade rods: give today's HI (--hi, or --benchmark and "
			       "--backsight).");
		rb_drain_add(m, RB_PARAGRAPH);
		return;
	}
	table = start_rods(m, names);
	if (!table)
		return;
	table->own_sheet = true;
	for (uint32_t i = 0; i < m->r->inverts->stations; i++)
		add_rods(m, table, i, names);
	m->page->out_of_memory |= table->out_of_memory;
	add_second_benchmark(m);
	add_reach(m);
}
