/* SPDX-License-Identifier: MIT */
/*
 * hand_check.h - a book that was reduced by hand, checked cell by cell.
 *
 * What a cell should hold is worked out from the note keeper's own values before it, so
 * that one slip is marked once and not at every line after it.  A cell is right when it
 * agrees to half the last place of its column; it is right too when it agrees with what
 * would stand there without an earlier slip or an earlier rounding, so that a slip of the
 * pen in a cell from which nobody went on is marked in that cell alone.  Readings are
 * taken as they stand: a wrong one shows in the closure, never here.
 *
 * Where hand values are looked for:
 *
 *   height of instrument  on the row of the backsight; or, where that is empty, on the
 *                         first row after it that has one; further ones are repetitions
 *   elevation             on the row of the sight: height of instrument - sight, also on
 *                         a known point, so that its misclosure can be seen.  A turning
 *                         point of two rows may have it on either, or on both
 *   known elevation       may be repeated on the row of a backsight; the height of
 *                         instrument goes on from the known elevation
 *   sum, total            under readings or sight lengths: their sum since the sums
 *                         before, or from the top
 *   difference            of the sums, under any column and of either sign
 *   misclosure, closure   the note keeper's elevation less the known one, of either sign
 *
 * Which names such rows have is told in notes/keeper.h.
 */
#ifndef RB_LEVEL_HAND_CHECK_H
#define RB_LEVEL_HAND_CHECK_H

#include "rodbook/reduce.h"

/* What the note keeper did in a cell. */
enum rb_hand_step {
	RB_STEP_HEIGHT,       /* elevation + backsight */
	RB_STEP_INTERMEDIATE, /* height of instrument - intermediate sight */
	RB_STEP_FORESIGHT,    /* height of instrument - foresight */
	RB_STEP_REPEATED,     /* a value of an earlier cell, written again */
	RB_STEP_SUM,
	RB_STEP_DIFFERENCE,
	RB_STEP_MISCLOSURE,
	RB_HAND_STEPS
};

enum rb_hand_state {
	RB_HAND_RIGHT,
	RB_HAND_WRONG,
	RB_HAND_CARRIED, /* follows from what stands before it, and is wrong only because
			  * that is */
	RB_HAND_EMPTY,   /* not filled in */
	RB_HAND_STATES
};

/* What was probably done in a wrong cell, in the order in which it is looked for. */
enum rb_hand_cause {
	RB_CAUSE_UNKNOWN,
	RB_CAUSE_INVERTED,
	RB_CAUSE_ADDED,
	RB_CAUSE_SUBTRACTED,
	RB_CAUSE_KNOWN_WRITTEN,
	RB_CAUSE_NOT_FROM_KNOWN,
	RB_CAUSE_WRONG_HEIGHT,
	RB_CAUSE_HEIGHT_KEPT,
	RB_CAUSE_FROM_INTERMEDIATE,
	RB_CAUSE_FROM_OTHER,
	RB_CAUSE_LEFT_OUT,
	RB_CAUSE_TWICE,
	RB_CAUSE_WITH_INTERMEDIATES,
	RB_CAUSE_BASE_TEN,
	RB_CAUSE_DECIMALS,
	RB_CAUSE_FRACTION,
	RB_CAUSE_EXCHANGED,
	RB_CAUSE_COPIED,
	RB_CAUSE_ROUNDED,
	RB_CAUSE_CARRY,
	RB_CAUSE_BENCHMARK,
	RB_CAUSE_MISCOPIED,
	RB_HAND_CAUSES
};

struct rb_hand_cell {
	uint32_t row;
	enum rb_column column;
	enum rb_hand_step step;
	enum rb_hand_state state;
	rb_length written; /* none: not filled in */
	rb_length follows; /* what comes out of the note keeper's values before it */
	rb_length base, reading; /* follows = base + reading, or base - reading; reading
				  * is none where the step is no such thing */
	bool base_unwritten;     /* base belongs in a cell that is not filled in */
	enum rb_hand_cause cause;
	uint32_t cause_row; /* the row of the value that was used instead; or RB_NO_ROW */
};

struct rb_hand_check {
	const struct rb_reduced *reduced;
	struct rb_hand_cell *cell; /* in the order in which they are worked out */
	uint32_t cells;
	uint32_t count[RB_HAND_STEPS][RB_HAND_STATES];
};

/*
 * Check a book.  Findings: no column of hand values (an error), and one failed check for
 * each wrong cell.  NULL after an error.
 */
struct rb_hand_check *rb_hand_check(struct rb_arena *arena, struct rb_findings *findings,
				    const struct rb_reduced *reduced);

/* How many cells are in a state, over all steps. */
uint32_t rb_hand_count(const struct rb_hand_check *check, enum rb_hand_state state);

/* "height of instrument", "sum", ...: what was done, in words. */
const char *rb_hand_step_name(enum rb_hand_step step);

/* "foresight added instead of subtracted", ...; NULL for RB_CAUSE_UNKNOWN. */
const char *rb_hand_cause_name(enum rb_hand_cause cause);

/* Does a column hold lengths along the ground? */
static inline bool rb_hand_is_run(enum rb_column column)
{
	return column == RB_BACKSIGHT_DISTANCE || column == RB_FORESIGHT_DISTANCE;
}

/* The unit of a column, where the readings have this one. */
static inline enum rb_unit rb_hand_unit(enum rb_column column, enum rb_unit unit)
{
	return rb_hand_is_run(column) ? rb_unit_of_runs(unit) : unit;
}

#endif
