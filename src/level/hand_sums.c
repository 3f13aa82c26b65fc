/* SPDX-License-Identifier: MIT */
/* hand_sums.c - the note keeper's sums and misclosure. */
#include "level/hand_walk.h"
#include "level/kind.h"
#include "notes/keeper.h"

#define MOST_MEANT 8

/* What a number in a row of sums may rightly be, the likeliest first. */
struct meant {
	rb_length value[MOST_MEANT];
	int count;
	rb_length truth; /* by the readings alone */
	bool tainted;    /* something wrong before it is in it */
};

static void mean(struct meant *m, rb_length value)
{
	if (!m->count)
		m->truth = value;
	m->value[m->count++] = value;
}

static bool is_reading_column(enum rb_column column)
{
	return column == RB_BACKSIGHT || column == RB_INTERMEDIATE ||
	       column == RB_FORESIGHT || column == RB_BACKSIGHT_DISTANCE ||
	       column == RB_FORESIGHT_DISTANCE;
}

/* The sum of a column since the sums before, or from the top; of the foresights also
 * those alone that carry the levels on, because only they come out as last - first. */
static void mean_sum(struct meant *m, const struct rb_hand_walk *w, enum rb_column column)
{
	mean(m, w->since.column[column]);
	mean(m, w->all.column[column]);
	if (column != RB_FORESIGHT)
		return;
	mean(m, w->since.turning);
	mean(m, w->all.turning);
}

/* The note keeper's own sum on this row; where none is written, the right one. */
static rb_length own_sum(const struct rb_hand_walk *w, enum rb_column column,
			 uint32_t row, rb_length otherwise)
{
	rb_length written = rb_book_value(w->book, column, row);

	return rb_length_given(written) ? written : otherwise;
}

/* Under a column of results stands the difference of the sums, or last - first; some sum
 * the elevations too, all of them or all but the first. */
static void mean_difference(struct meant *m, const struct rb_hand_walk *w,
			    enum rb_column column, uint32_t row)
{
	rb_length back = own_sum(w, RB_BACKSIGHT, row, w->since.column[RB_BACKSIGHT]);
	rb_length fore = own_sum(w, RB_FORESIGHT, row, w->since.turning);

	mean(m, rb_length_sub(back, fore));
	mean(m, rb_length_sub(w->since.column[RB_BACKSIGHT], w->since.turning));
	mean(m, rb_length_sub(w->all.column[RB_BACKSIGHT], w->all.turning));
	mean(m, rb_length_sub(w->last, w->first));
	mean(m, w->since.column[column]);
	mean(m, w->all.column[column]);
	mean(m, rb_length_sub(w->all.column[column], w->first));
}

/* In a row of its own the difference stands under any column: of all foresights, or of
 * those alone that carry the levels on. */
static void mean_own_difference(struct meant *m, const struct rb_hand_walk *w)
{
	const struct rb_hand_totals *const totals[] = { &w->since, &w->all };

	for (int i = 0; i < 2; i++) {
		rb_length back = totals[i]->column[RB_BACKSIGHT];

		mean(m, rb_length_sub(back, totals[i]->turning));
		mean(m, rb_length_sub(back, totals[i]->column[RB_FORESIGHT]));
	}
	mean(m, rb_length_sub(w->last, w->first));
}

static void mean_misclosure(struct meant *m, const struct rb_hand_walk *w)
{
	const struct rb_carried *closed = &w->elevation[w->closed];
	rb_length known = rb_shot_known(w->reduced, w->closed);

	mean(m, rb_length_sub(closed->own, known));
	mean(m, rb_length_sub(closed->other, known));
	m->truth = rb_length_sub(w->reduced->shot[w->closed].elevation, known);
	m->tainted = closed->tainted;
}

/* Of either sign: foresights are taken off, and a difference is told both ways. */
static bool is_same(rb_length written, rb_length meant, rb_length last_place)
{
	return rb_hand_same(rb_length_absolute(written), rb_length_absolute(meant),
			    last_place);
}

/* Take the meaning that agrees with what is written, or else the first. */
static void judge(struct rb_hand_walk *w, uint32_t row, enum rb_column column,
		  enum rb_hand_step step, const struct meant *m)
{
	rb_length written = rb_book_value(w->book, column, row);
	rb_length last_place = rb_hand_step_of(w, column, written);
	struct rb_hand_due due = {
		.row = row,
		.column = column,
		.step = step,
		.base = rb_length_none(),
		.reading = rb_length_none(),
		.follows = { .own = m->value[0],
			     .other = m->value[0],
			     .tainted = m->tainted },
		.truth = m->truth,
	};

	for (int i = 0; i < m->count; i++)
		if (is_same(written, m->value[i], last_place))
			due.follows.own = due.follows.other = written;
	if (is_same(written, m->truth, last_place))
		due.truth = written;
	rb_hand_judge(w, &due);
}

static bool is_along_the_ground(enum rb_column column)
{
	return column == RB_BACKSIGHT_DISTANCE || column == RB_FORESIGHT_DISTANCE ||
	       column == RB_CHAINAGE || column == RB_MEASURE_DOWN;
}

static void judge_sum(struct rb_hand_walk *w, uint32_t row, enum rb_column column)
{
	struct meant m = { .count = 0 };

	if (is_reading_column(column))
		mean_sum(&m, w, column);
	else if (column == RB_HEIGHT_OF_INSTRUMENT || column == RB_ELEVATION)
		mean_difference(&m, w, column, row);
	w->summed = true;
	if (m.count)
		judge(w, row, column, RB_STEP_SUM, &m);
}

static void judge_difference(struct rb_hand_walk *w, uint32_t row, enum rb_column column)
{
	struct meant m = { .count = 0 };

	if (is_along_the_ground(column))
		return;
	mean_own_difference(&m, w);
	judge(w, row, column, RB_STEP_DIFFERENCE, &m);
}

static void judge_misclosure(struct rb_hand_walk *w, uint32_t row, enum rb_column column)
{
	struct meant m = { .count = 0 };

	if (w->closed == RB_NO_SHOT || is_along_the_ground(column))
		return;
	mean_misclosure(&m, w);
	judge(w, row, column, RB_STEP_MISCLOSURE, &m);
}

void rb_hand_judge_sums(struct rb_hand_walk *w, uint32_t row)
{
	static void (*const judges[])(struct rb_hand_walk *, uint32_t, enum rb_column) = {
		[RB_KEEPERS_SUM] = judge_sum,
		[RB_KEEPERS_DIFFERENCE] = judge_difference,
		[RB_KEEPERS_MISCLOSURE] = judge_misclosure,
		[RB_KEEPERS_OTHER] = NULL,
	};
	enum rb_keeper keeper = rb_keeper_of(rb_book_typed(w->book, row));

	if (!judges[keeper])
		return;
	for (int i = RB_BACKSIGHT; i <= RB_ELEVATION; i++)
		if (rb_length_given(rb_book_value(w->book, (enum rb_column)i, row)))
			judges[keeper](w, row, (enum rb_column)i);
}
