/* SPDX-License-Identifier: MIT */
/*
 * drain_profile.h - a drain as a picture.
 *
 * To scale along the line, from the upstream end on the left to the outlet: ground
 * dashed, invert solid, trench bottom, stations with their inverts and cuts underneath,
 * length and slope at each leg, the pipe as laid.  A leg that fails is heavy and dotted,
 * and says in a word what is wrong with it.
 */
#ifndef RB_REPORT_DRAIN_PROFILE_H
#define RB_REPORT_DRAIN_PROFILE_H

#include "report/drain_result.h"
#include "report/profile.h"

/* Make the picture, in the arena; NULL if there is no memory. */
struct rb_profile *rb_drain_profile(struct rb_arena *arena,
				    const struct rb_drain_result *r);

#endif
