/* SPDX-License-Identifier: MIT */
/*
 * match.h - which shot of a book belongs to which station of a line.
 *
 * A shot belongs to the station of its name; failing that, to the one at its chainage.  A
 * name of one station at the chainage of another place is an error: one of them is wrong.
 *
 * At a station with a step the pipe has two ends: "MH-1 in" is the one that comes in to
 * MH-1, "MH-1 out" and "MH-1" the one that goes out.
 */
#ifndef RB_DRAIN_MATCH_H
#define RB_DRAIN_MATCH_H

#include "drain/inverts.h"
#include "level/spots.h"

#define RB_NO_STATION UINT32_MAX

/* The station of each spot, or RB_NO_STATION; by spot.  Only spots that `is_wanted` are
 * matched.  Findings: names and chainages that disagree.  NULL after an error. */
uint32_t *rb_match(struct rb_arena *arena, struct rb_findings *findings,
		   const struct rb_inverts *inverts, const struct rb_spots *spots,
		   bool (*is_wanted)(const struct rb_spot *spot));

/* Is a shot of this name, which belongs to the station, on the pipe that comes in? */
bool rb_match_comes_in(const struct rb_station *station, const char *name);

#endif
