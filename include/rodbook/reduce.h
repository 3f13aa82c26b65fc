/* SPDX-License-Identifier: MIT */
/*
 * reduce.h - from level notes to elevations, sections and adjusted elevations.
 *
 * Three stages, each a function from what came before to something new: rb_reduce()
 * carries elevations through the setups, rb_sections() finds what closes and judges it,
 * rb_adjust() spreads the misclosures.  Nothing before is changed, so raw and adjusted
 * values stand side by side.  Elevations are exact; a correction is rounded once, to the
 * nanometre.
 *
 *   height of instrument = elevation + backsight
 *   elevation            = height of instrument - foresight (or intermediate sight)
 *
 * Source: FM 3-34.331 Topographic Surveying, ch. 7; NAVEDTRA 14069 Engineering Aid,
 * ch. 14.
 */
#ifndef RODBOOK_REDUCE_H
#define RODBOOK_REDUCE_H

#include "rodbook/book.h"

/* What a point is in the run of the levels. */
enum rb_kind {
	RB_BENCHMARK,     /* of known elevation: a section starts or ends here */
	RB_TURNING_POINT, /* the next setup hangs on it */
	RB_SIDE_POINT,    /* an intermediate sight: nothing hangs on it */
	RB_CHECK, /* an intermediate sight onto a point that has an elevation already */
	RB_END    /* last foresight of an open section */
};

/* The column under which the sight onto the point is booked. */
enum rb_booked { RB_BOOKED_NOWHERE, RB_BOOKED_INTERMEDIATE, RB_BOOKED_FORESIGHT };

#define RB_NO_SETUP UINT32_MAX
#define RB_NO_SHOT  UINT32_MAX

/* A place where the rod stood, seen from one setup, or backsighted, or both. */
struct rb_shot {
	rb_length elevation; /* raw: height of instrument - sight; of a place that was
			      * only backsighted, the elevation it had before */
	uint32_t row; /* of the sight onto it; of the backsight where there is none */
	uint32_t backsight_row; /* RB_NO_ROW: none was taken on it */
	uint32_t setup;         /* the setup standing before the backsight, from which the
				 * sight was taken; the backsight opens setup + 1.  Before the
				 * first setup: RB_NO_SETUP, so that + 1 is 0 */
	uint8_t kind;           /* enum rb_kind */
	uint8_t booked;         /* enum rb_booked */
};

/* An instrument position. */
struct rb_setup {
	rb_length height_of_instrument;
	uint32_t shot; /* the shot that carries its backsight */
	uint32_t via;  /* the shot that gave the backsighted point its elevation;
			* RB_NO_SHOT: a known elevation, a chain begins here */
	uint32_t
		depth; /* setups from the beginning of its chain to it, itself included */
	uint32_t root; /* the setup with which its chain begins */
};

struct rb_reduced {
	const struct rb_book *book;
	struct rb_shot *shot;
	uint32_t shots;
	struct rb_setup *setup;
	uint32_t setups;
	bool any_again; /* some point without a known elevation was sighted twice */
	bool any_check; /* some known point was sighted in between */
};

/* Carry elevations through the book.  NULL after an error. */
struct rb_reduced *rb_reduce(struct rb_arena *arena, struct rb_findings *findings,
			     const struct rb_book *book);

/* A sight onto a point that already had an elevation. */
struct rb_check {
	uint32_t shot;
	uint32_t against;     /* the earlier shot; RB_NO_SHOT: the known elevation */
	rb_length difference; /* this elevation minus that one */
};

enum rb_verdict {
	RB_NOT_JUDGED, /* closed, but no tolerance was given */
	RB_CLOSES,
	RB_BEYOND, /* closed, beyond the tolerance */
	RB_OPEN    /* reaches no known elevation */
};

/* A chain of setups from a known point to the next known point. */
struct rb_section {
	uint32_t from, to;    /* points */
	uint32_t first, last; /* setups: the first and the last of the chain */
	uint32_t end;         /* the shot that ends it */
	uint32_t setups;
	rb_length start, finish; /* elevations: known at the start, raw at the end */
	rb_length sum_backsight, sum_foresight; /* over the chain's turning points */
	bool no_foresight;            /* nothing was sighted: there is no sum to check */
	rb_length sum_rise, sum_fall; /* sight to sight, the intermediate ones included */
	rb_length backsight_length, foresight_length; /* sums of sight lengths; none if a
						       * length is missing */
	rb_length length;                             /* their sum, or none */
	rb_length misclosure;                         /* finish - known; none when open */
	rb_length allowed; /* by the tolerance, for display; none without one */
	enum rb_verdict verdict;
	bool adjusted;
	uint32_t first_check, checks; /* in rb_sections.check */
};

/* A setup off the chain, with those that hang on it: nothing closes what is seen there.
 */
struct rb_spur {
	uint32_t setup;         /* its first */
	uint32_t first, sights; /* in rb_sections.spur_shot */
	uint32_t closing;       /* the closing foresight before which the sight is booked
				 * on which the spur hangs: behind it, the run would go
				 * on.  RB_NO_SHOT: the order has no part in it */
};

struct rb_sections {
	const struct rb_reduced *reduced;
	struct rb_tolerance tolerance;
	enum rb_adjust adjust;
	struct rb_section *section;
	uint32_t sections;
	uint32_t *of_setup;     /* by setup: the section whose correction it takes, or
				 * RB_NO_SECTION */
	struct rb_check *check; /* sorted by section */
	uint32_t checks;
	struct rb_spur *spur; /* in the order of their first setups */
	uint32_t spurs;
	uint32_t *spur_shot; /* the sights of the spurs, one spur after another */
};

#define RB_NO_SECTION UINT32_MAX

/* How to judge and adjust, and where the book says so (line 0: it does not, or it was
 * overridden); rb_judging_of() gives what the book says. */
struct rb_judging {
	struct rb_tolerance tolerance;
	enum rb_adjust adjust;
	struct rb_place tolerance_place, adjust_place;
	bool adjust_anyway; /* also a section that misses its tolerance */
};

struct rb_judging rb_judging_of(const struct rb_book *book);

/* Find the sections, sum and judge them.  NULL after an error. */
struct rb_sections *rb_sections(struct rb_arena *arena, struct rb_findings *findings,
				const struct rb_reduced *reduced,
				const struct rb_judging *judging);

struct rb_adjusted {
	const struct rb_sections *sections;
	rb_length *correction; /* by setup; none where its elevations are not adjusted */
};

/*
 * Spread each misclosure: setup k of n takes minus misclosure * k / n, or by distance its
 * length so far over the section's.  NULL if memory ran out.
 */
struct rb_adjusted *rb_adjust(struct rb_arena *arena, struct rb_findings *findings,
			      const struct rb_sections *sections);

/* The correction of a shot and its adjusted elevation; none where it is not adjusted. */
rb_length rb_shot_correction(const struct rb_adjusted *adjusted, uint32_t shot);
rb_length rb_shot_adjusted(const struct rb_adjusted *adjusted, uint32_t shot);

/* The elevation at the end of a measure down from the shot, or none: from the adjusted
 * elevation where there is one, else from the raw one. */
rb_length rb_shot_below(const struct rb_adjusted *adjusted, uint32_t shot);

/* Of an open section, the last check on a known elevation: a sight that booked as a
 * foresight would have closed it; NULL where there is none. */
const struct rb_check *rb_section_nearly_closed(const struct rb_sections *sections,
						const struct rb_section *section);

/* The setup that the shot's backsight opens, or RB_NO_SETUP. */
static inline uint32_t rb_shot_opens(const struct rb_shot *shot)
{
	return shot->backsight_row == RB_NO_ROW ? RB_NO_SETUP : shot->setup + 1;
}

/* The rod reading of the sight onto the shot, or none. */
static inline rb_length rb_shot_reading(const struct rb_reduced *reduced, uint32_t shot)
{
	const struct rb_shot *s = &reduced->shot[shot];

	/* the row of one that was booked nowhere holds neither */
	return rb_book_sight(reduced->book,
			     s->booked == RB_BOOKED_FORESIGHT ? RB_FORESIGHT
							      : RB_INTERMEDIATE,
			     s->row);
}

/* The row on which something is booked of the shot in a column (a length or RB_ROD_ON):
 * its own; where that cell is empty, its backsight's; its own where both are. */
uint32_t rb_shot_row(const struct rb_reduced *reduced, enum rb_column column,
		     uint32_t shot);

/* The length that is booked there, or none. */
rb_length rb_shot_value(const struct rb_reduced *reduced, enum rb_column column,
			uint32_t shot);

/* Where the rod stood: as is booked there, else as the key of the book says. */
enum rb_rod_on rb_shot_rod_on(const struct rb_reduced *reduced, uint32_t shot);

/* "benchmark", "turning point", "intermediate", "check", "end". */
const char *rb_kind_name(enum rb_kind kind);

#endif
