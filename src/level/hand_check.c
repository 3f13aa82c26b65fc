/* SPDX-License-Identifier: MIT */
/* hand_check.c - the walk through a hand-reduced book, from cell to cell. */
#include "level/hand_check.h"

#include "level/hand_walk.h"
#include "level/kind.h"

/* clang-format off */
static const char *const step_names[RB_HAND_STEPS] = {
	[RB_STEP_HEIGHT]       = "height of instrument",
	[RB_STEP_INTERMEDIATE] = "elevation by an intermediate sight",
	[RB_STEP_FORESIGHT]    = "elevation by a foresight",
	[RB_STEP_REPEATED]     = "value written again",
	[RB_STEP_SUM]          = "sum",
	[RB_STEP_DIFFERENCE]   = "difference of the sums",
	[RB_STEP_MISCLOSURE]   = "misclosure",
};
/* clang-format on */

const char *rb_hand_step_name(enum rb_hand_step step)
{
	return step_names[step];
}

uint32_t rb_hand_count(const struct rb_hand_check *check, enum rb_hand_state state)
{
	uint32_t count = 0;

	for (int step = 0; step < RB_HAND_STEPS; step++)
		count += check->count[step][state];
	return count;
}

/* -- one cell -- */

static void say_wrong(const struct rb_hand_walk *w, const struct rb_hand_cell *cell)
{
	const char *likely = rb_hand_cause_name(cell->cause);
	enum rb_unit unit = rb_hand_unit(cell->column, w->book->unit);
	const struct rb_argument argument[RB_ARGUMENTS] = {
		rb_rod_reading(cell->written, unit),
		rb_rod_reading(cell->follows, unit),
		likely ? rb_text(likely) : rb_nothing(),
		rb_nothing(),
	};

	rb_findings_add4(w->findings, RB_CODE_HAND_VALUE,
			 rb_book_place(w->book, cell->row, cell->column), argument);
}

/* What goes on from a cell that is right: the other way of reckoning stays alive for as
 * long as it agrees with what is written. */
static struct rb_carried go_on(const struct rb_hand_due *due, rb_length written,
			       rb_length step, bool own)
{
	bool other = rb_hand_same(written, due->follows.other, step);

	return (struct rb_carried){ .own = written,
				    .other = other ? due->follows.other : written,
				    .tainted = own && due->follows.tainted };
}

/* What should have been written: to the last place of the column, as on paper. */
static rb_length as_written(rb_length value, rb_length step)
{
	return rb_length_of(rb_length_share(value, 1, step.nm).nm * step.nm);
}

/* Judge what is written: the cell's state, and what the note keeper goes on with. */
static struct rb_carried judge_written(struct rb_hand_walk *w,
				       const struct rb_hand_due *due,
				       struct rb_hand_cell *cell)
{
	rb_length step = rb_hand_step_of(w, due->column, cell->written);
	bool own = rb_hand_same(cell->written, due->follows.own, step);
	bool truth = rb_hand_same(cell->written, due->truth, step);

	if (own || truth || rb_hand_same(cell->written, due->follows.other, step)) {
		struct rb_carried next = go_on(due, cell->written, step, own && !truth);

		cell->state = next.tainted ? RB_HAND_CARRIED : RB_HAND_RIGHT;
		return next;
	}
	cell->state = RB_HAND_WRONG;
	rb_hand_find_cause(w, cell);
	say_wrong(w, cell);
	return (struct rb_carried){ .own = cell->written,
				    .other = as_written(due->follows.own, step),
				    .tainted = true };
}

struct rb_carried rb_hand_judge(struct rb_hand_walk *w, const struct rb_hand_due *due)
{
	struct rb_hand_cell *cell = &w->out->cell[w->out->cells];
	struct rb_carried next = due->follows;

	*cell = (struct rb_hand_cell){
		.row = due->row,
		.column = due->column,
		.step = due->step,
		.state = RB_HAND_EMPTY,
		.written = rb_book_value(w->book, due->column, due->row),
		.follows = due->follows.own,
		.base = due->base,
		.reading = due->reading,
		.base_unwritten = due->base_unwritten,
		.cause_row = RB_NO_ROW,
	};
	if (rb_length_given(cell->written))
		next = judge_written(w, due, cell);
	else if (!due->wanted)
		return next;
	else
		next.unwritten = true;
	w->out->cells++;
	w->out->count[cell->step][cell->state]++;
	return next;
}

/* -- sights -- */

static bool has_column(const struct rb_hand_walk *w, enum rb_column column)
{
	return w->book->cell_of[column] >= 0;
}

static bool is_written(const struct rb_hand_walk *w, enum rb_column column, uint32_t row)
{
	return rb_length_given(rb_book_value(w->book, column, row));
}

/* A turning point of two rows whose elevation stands on the second alone. */
static bool stands_below(const struct rb_hand_walk *w, uint32_t at)
{
	const struct rb_shot *shot = &w->reduced->shot[at];

	return shot->booked != RB_BOOKED_NOWHERE && shot->backsight_row != RB_NO_ROW &&
	       shot->backsight_row != shot->row &&
	       !rb_length_given(rb_shot_known(w->reduced, at)) &&
	       !is_written(w, RB_ELEVATION, shot->row) &&
	       is_written(w, RB_ELEVATION, shot->backsight_row);
}

static bool carries_on(const struct rb_hand_walk *w, uint32_t at)
{
	enum rb_kind kind = (enum rb_kind)w->reduced->shot[at].kind;

	return kind == RB_TURNING_POINT || kind == RB_END ||
	       rb_shot_closes(w->reduced, at);
}

static void judge_sight(struct rb_hand_walk *w, uint32_t at)
{
	const struct rb_shot *shot = &w->reduced->shot[at];
	const struct rb_carried *height = &w->height[shot->setup];
	rb_length reading = rb_shot_reading(w->reduced, at);
	const struct rb_hand_due due = {
		.row = stands_below(w, at) ? shot->backsight_row : shot->row,
		.column = RB_ELEVATION,
		.step = shot->booked == RB_BOOKED_FORESIGHT ? RB_STEP_FORESIGHT
							    : RB_STEP_INTERMEDIATE,
		.base = height->own,
		.reading = reading,
		.base_unwritten = height->unwritten,
		.follows = { .own = rb_length_sub(height->own, reading),
			     .other = rb_length_sub(height->other, reading),
			     .tainted = height->tainted },
		.truth = shot->elevation,
		.wanted = has_column(w, RB_ELEVATION),
	};

	w->setup = shot->setup;
	w->shot = at;
	w->elevation[at] = rb_hand_judge(w, &due);
	if (!carries_on(w, at))
		return;
	w->since.turning = rb_length_add(w->since.turning, reading);
	w->all.turning = rb_length_add(w->all.turning, reading);
	w->last = w->elevation[at].own;
	if (rb_shot_closes(w->reduced, at))
		w->closed = at;
}

/* -- backsights -- */

/* In a book without a column for it, the elevation on the first row is the known one. */
static bool is_benchmark_cell(const struct rb_hand_walk *w, uint32_t setup)
{
	return setup == 0 && !has_column(w, RB_KNOWN_ELEVATION);
}

/* The elevation that may be written again on the row of a backsight. */
static struct rb_carried judge_again(struct rb_hand_walk *w, uint32_t setup,
				     struct rb_carried base)
{
	const struct rb_setup *opened = &w->reduced->setup[setup];
	const struct rb_shot *shot = &w->reduced->shot[opened->shot];
	bool known = opened->via == RB_NO_SHOT;
	struct rb_hand_due due = {
		.row = shot->backsight_row,
		.column = RB_ELEVATION,
		.step = RB_STEP_REPEATED,
		.base = base.own,
		.reading = rb_length_none(),
		.follows = base,
		.truth = known ? base.own : w->reduced->shot[opened->via].elevation,
	};
	struct rb_carried next;

	if (shot->row == shot->backsight_row ? shot->booked != RB_BOOKED_NOWHERE
					     : stands_below(w, opened->shot))
		return base; /* that cell is the sight's */
	if (is_benchmark_cell(w, setup))
		return base;
	if (known && shot->booked != RB_BOOKED_NOWHERE)
		due.follows.other = w->elevation[opened->shot].own;
	next = rb_hand_judge(w, &due);
	return known && !next.tainted ? base : next;
}

/* The first row from the backsight's on, before the next, that has a height of
 * instrument; the backsight's own where none has. */
static uint32_t row_of_height(const struct rb_hand_walk *w, uint32_t setup)
{
	const struct rb_reduced *reduced = w->reduced;
	uint32_t first = reduced->shot[reduced->setup[setup].shot].backsight_row;
	uint32_t end = w->book->rows;

	if (setup + 1 < reduced->setups)
		end = reduced->shot[reduced->setup[setup + 1].shot].backsight_row;
	for (uint32_t row = first; row < end; row++)
		if (is_written(w, RB_HEIGHT_OF_INSTRUMENT, row) &&
		    !(w->book->written[row] & RB_WRITTEN_BY_KEEPER))
			return row;
	return first;
}

/* Returns the row on which the height of instrument stands. */
static uint32_t judge_height(struct rb_hand_walk *w, uint32_t setup)
{
	const struct rb_setup *opened = &w->reduced->setup[setup];
	uint32_t row = w->reduced->shot[opened->shot].backsight_row;
	rb_length reading = rb_book_sight(w->book, RB_BACKSIGHT, row);
	rb_length known = rb_book_known(w->book, w->book->row[row].point);
	struct rb_carried base = { .own = known, .other = known };
	struct rb_hand_due due = {
		.row = row_of_height(w, setup),
		.column = RB_HEIGHT_OF_INSTRUMENT,
		.step = RB_STEP_HEIGHT,
		.reading = reading,
		.truth = opened->height_of_instrument,
		.wanted = has_column(w, RB_HEIGHT_OF_INSTRUMENT),
	};

	if (opened->via != RB_NO_SHOT)
		base = w->elevation[opened->via];
	w->setup = setup;
	w->shot = opened->shot;
	base = judge_again(w, setup, base);
	if (w->reduced->shot[opened->shot].booked == RB_BOOKED_NOWHERE)
		w->elevation[opened->shot] = base;
	if (setup == 0)
		w->first = base.own;
	due.base = base.own;
	due.base_unwritten = base.unwritten;
	due.follows = (struct rb_carried){ .own = rb_length_add(base.own, reading),
					   .other = rb_length_add(base.other, reading),
					   .tainted = base.tainted };
	w->height[setup] = rb_hand_judge(w, &due);
	return due.row;
}

/* A height of instrument written again further down. */
static void judge_height_again(struct rb_hand_walk *w, uint32_t row)
{
	const struct rb_carried *height = &w->height[w->setup];
	const struct rb_hand_due due = {
		.row = row,
		.column = RB_HEIGHT_OF_INSTRUMENT,
		.step = RB_STEP_REPEATED,
		.base = height->own,
		.reading = rb_length_none(),
		.follows = *height,
		.truth = w->reduced->setup[w->setup].height_of_instrument,
	};

	w->shot = RB_NO_SHOT;
	rb_hand_judge(w, &due);
}

/* -- rows -- */

static void add_row(struct rb_hand_walk *w, uint32_t row)
{
	for (int column = RB_BACKSIGHT; column <= RB_ELEVATION; column++) {
		rb_length value = rb_book_value(w->book, (enum rb_column)column, row);

		if (!rb_length_given(value))
			continue;
		w->since.column[column] = rb_length_add(w->since.column[column], value);
		w->all.column[column] = rb_length_add(w->all.column[column], value);
	}
}

/* How far the walk has come. */
struct reached {
	uint32_t shot, setup; /* the next of each */
	uint32_t height_row;  /* where the standing height of instrument is written */
};

static void walk_row(struct rb_hand_walk *w, struct reached *at, uint32_t row)
{
	const struct rb_reduced *reduced = w->reduced;
	bool opens = at->setup < reduced->setups &&
		     reduced->shot[reduced->setup[at->setup].shot].backsight_row == row;

	if (w->summed) {
		w->since = (struct rb_hand_totals){ .turning = rb_length_of(0) };
		w->sums_from = row;
		w->summed = false;
	}
	for (; at->shot < reduced->shots && reduced->shot[at->shot].row == row;
	     at->shot++)
		if (reduced->shot[at->shot].booked != RB_BOOKED_NOWHERE)
			judge_sight(w, at->shot);
	if (opens)
		at->height_row = judge_height(w, at->setup++);
	else if (at->setup && row != at->height_row &&
		 is_written(w, RB_HEIGHT_OF_INSTRUMENT, row)) {
		w->setup = at->setup - 1;
		judge_height_again(w, row);
	}
	add_row(w, row);
}

static void walk_rows(struct rb_hand_walk *w)
{
	struct reached at = { 0, 0, RB_NO_ROW };

	for (uint32_t row = 0; row < w->book->rows; row++) {
		if (w->book->written[row] & RB_WRITTEN_BY_KEEPER) {
			w->setup = RB_NO_SETUP;
			w->shot = RB_NO_SHOT;
			rb_hand_judge_sums(w, row);
		} else {
			walk_row(w, &at, row);
		}
	}
}

/* A cell for each number in a row, at most. */
static bool take_arrays(struct rb_hand_walk *w, struct rb_arena *arena)
{
	const struct rb_reduced *reduced = w->reduced;
	size_t cells = 2 * (size_t)w->book->rows + 1;

	for (uint32_t row = 0; row < w->book->rows; row++)
		if (w->book->written[row] & RB_WRITTEN_BY_KEEPER)
			cells += RB_ELEVATION;
	w->out = rb_arena_take_clear(arena, 1, sizeof *w->out);
	w->elevation =
		rb_arena_take(arena, (size_t)reduced->shots + 1, sizeof *w->elevation);
	w->height = rb_arena_take(arena, (size_t)reduced->setups + 1, sizeof *w->height);
	if (!w->out || !w->elevation || !w->height)
		return rb_findings_no_memory(w->findings);
	w->out->reduced = reduced;
	w->out->cell = rb_arena_take(arena, cells, sizeof *w->out->cell);
	return w->out->cell || rb_findings_no_memory(w->findings);
}

struct rb_hand_check *rb_hand_check(struct rb_arena *arena, struct rb_findings *findings,
				    const struct rb_reduced *reduced)
{
	struct rb_hand_walk w = { .findings = findings,
				  .reduced = reduced,
				  .book = reduced->book,
				  .closed = RB_NO_SHOT };

	if (!has_column(&w, RB_HEIGHT_OF_INSTRUMENT) && !has_column(&w, RB_ELEVATION)) {
		rb_findings_add(findings, RB_CODE_NO_HAND_VALUES, rb_in_file(),
				rb_nothing(), rb_nothing());
		return NULL;
	}
	if (!take_arrays(&w, arena))
		return NULL;
	rb_hand_find_steps(&w);
	walk_rows(&w);
	return rb_findings_allow_result(findings) ? w.out : NULL;
}
