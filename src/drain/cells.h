/* SPDX-License-Identifier: MIT */
/*
 * cells.h - the cells of a plan or a rules file as values.
 *
 * A cell is empty, or it holds the value asked for, or there is a finding: a reader that
 * asks here never looks at text again.  A lone dash says that nothing stands there.
 */
#ifndef RB_DRAIN_CELLS_H
#define RB_DRAIN_CELLS_H

#include "measure/reading.h"
#include "notes/sheet.h"

struct rb_cells {
	struct rb_arena *arena;
	struct rb_findings *findings;
	enum rb_unit unit;
	bool decimal_comma;
	char hundred[16]; /* what was last written before a plus; "" at first */
};

/* The text of a cell, in the arena; "" where it is empty or there is no memory (which is
 * noted). */
const char *rb_cells_text(struct rb_cells *cells, struct rb_cell cell);

/* The cell that a key's value would be. */
struct rb_cell rb_key_cell(const struct rb_key_value *value);

/* A reading of that kind; its value is none where the cell is empty or refused. */
struct rb_reading rb_cells_reading(struct rb_cells *cells, struct rb_cell cell,
				   struct rb_place place, enum rb_reading_kind kind);

/* Its value alone. */
rb_length rb_cells_length(struct rb_cells *cells, struct rb_cell cell,
			  struct rb_place place, enum rb_reading_kind kind);

/* A slope; not given where the cell is empty or refused. */
rb_slope rb_cells_slope(struct rb_cells *cells, struct rb_cell cell,
			struct rb_place place);

/*
 * A chainage; `+10` takes the hundreds last written.  *plus is the number of digits
 * behind the plus, 0 where there is none.
 */
rb_length rb_cells_chainage(struct rb_cells *cells, struct rb_cell cell,
			    struct rb_place place, int *plus);

#endif
