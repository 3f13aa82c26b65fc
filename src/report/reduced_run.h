/* SPDX-License-Identifier: MIT */
/*
 * reduced_run.h - how far along the run the places and the instruments of a book stand.
 *
 * Where every backsight and every foresight that carries the levels on has its length,
 * the run is theirs, end to end; intermediate sights are then spread between.  Otherwise
 * places stand in even steps.  Neither ever goes back.
 */
#ifndef RB_REPORT_REDUCED_RUN_H
#define RB_REPORT_REDUCED_RUN_H

#include "rodbook/reduce.h"

struct rb_run_places {
	rb_length *along;      /* by shot */
	rb_length *instrument; /* by setup */
	bool to_scale;
};

/* Lay the places out; false if there is no memory. */
bool rb_run_places_init(struct rb_run_places *run, struct rb_arena *arena,
			const struct rb_reduced *reduced);

#endif
