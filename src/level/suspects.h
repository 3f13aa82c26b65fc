/* SPDX-License-Identifier: MIT */
/*
 * suspects.h - the single slips that would explain a misclosure.
 *
 * For a section that misses its tolerance: each plausible slip of each of its readings
 * whose effect brings the section within the tolerance, best first.  A list of places to
 * look, nothing more: two slips together, or one of another kind, are not in it.
 */
#ifndef RB_LEVEL_SUSPECTS_H
#define RB_LEVEL_SUSPECTS_H

#include "rodbook/reduce.h"

enum rb_slip {
	RB_SLIP_EXCHANGED,  /* two neighbouring digits exchanged */
	RB_SLIP_FOOT,       /* a whole foot (metre, decimetre) too many or too few */
	RB_SLIP_TENTH,      /* a tenth of a foot (a centimetre) */
	RB_SLIP_INCHES,     /* inches written as decimal feet: 5'-6" as 5.6 */
	RB_SLIP_SIGN,       /* the sign, an inverted rod */
	RB_SLIP_COLUMNS,    /* backsight and foresight of a turning point exchanged */
	RB_SLIP_LOOK_ALIKE, /* a digit misread as one that looks like it */
	RB_SLIP_FRACTION,   /* a fraction of an inch dropped */
	RB_SLIP_ROD,        /* the rod not fully extended on every high reading */
	RB_SLIP_BENCHMARK,  /* the known elevation itself */
	RB_SLIPS
};

struct rb_suspect {
	uint32_t section;
	enum rb_slip slip;
	uint32_t row;          /* of the book; RB_NO_ROW for RB_SLIP_ROD */
	enum rb_column column; /* where the reading is booked */
	rb_length reading;     /* as written; none for RB_SLIP_ROD */
	rb_length maybe;       /* what it may have been; none for RB_SLIP_ROD */
	rb_length left;        /* the misclosure that would remain */
	const uint32_t *rows;  /* RB_SLIP_ROD: the rows with high readings */
	uint32_t row_count;
};

struct rb_suspects {
	struct rb_suspect *item; /* by section, then best first */
	uint32_t count;
};

/* Find the suspects of every section that misses its tolerance.  Near-linear in the rows:
 * where thousands of sections share their setups, the later ones are left out.  An empty
 * list where there is none; NULL if memory ran out. */
struct rb_suspects *rb_suspects(struct rb_arena *arena, struct rb_findings *findings,
				const struct rb_sections *sections);

/* "digits exchanged", "a whole foot", ...: the word for a slip, in a book of a unit. */
const char *rb_slip_name(enum rb_slip slip, enum rb_unit unit);

#endif
