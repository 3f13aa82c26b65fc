/* SPDX-License-Identifier: MIT */
/*
 * stations.h - stations between those of the plan.
 *
 * A station is added where a whole multiple of the interval falls between two stations of
 * the plan; it lies on the grade between them, and nothing else changes.
 */
#ifndef RB_DRAIN_STATIONS_H
#define RB_DRAIN_STATIONS_H

#include "drain/inverts.h"

/* More than a person would stake; a slip in the interval. */
#define RB_STATIONS_MOST 100000

/* Add the stations; findings: the interval is not above 0, or far too short.  False after
 * an error. */
bool rb_stations_add(struct rb_arena *arena, struct rb_findings *findings,
		     struct rb_inverts *inverts, rb_length interval);

#endif
