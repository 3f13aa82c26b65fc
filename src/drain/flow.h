/* SPDX-License-Identifier: MIT */
/*
 * flow.h - velocity and discharge in a round pipe, by Manning's formula.
 *
 *   V = (1.486 / n) R^(2/3) S^(1/2)   in feet and seconds;  Q = A V
 *
 * Information beside a slope, never a verdict.  n belongs to every figure: the same drain
 * is 44 % faster at 0.009 than at 0.013.  This is the one room that uses floating point;
 * what it hands out is whole numbers.
 *
 * Source: value from memory (1.486, hydraulics textbooks); checked against National
 * Standard Plumbing Code 2009, Appendix K.
 */
#ifndef RB_DRAIN_FLOW_H
#define RB_DRAIN_FLOW_H

#include "rodbook/slope.h"

/* Roughness n in ten-thousandths. */
#define RB_ROUGHNESS_USUAL 130 /* 0.013: usual in design, joints and slime included */

/* The scour velocity of 2 ft/s (National Standard Plumbing Code 2009, Appendix K). */
#define RB_SCOUR_VELOCITY (2 * RB_FOOT)

struct rb_conduit {
	rb_length inside; /* diameter, > 0 */
	rb_slope slope;   /* steeper than level */
	int roughness;    /* n in ten-thousandths, > 0 */
};

struct rb_flow {
	rb_length velocity; /* in a second */
	int64_t discharge;  /* cubic millimetres in a second; 63 090 are a US gallon a
			       minute */
};

/* Flow at a depth of water, 0 to the diameter (beyond: full). */
struct rb_flow rb_flow_at(const struct rb_conduit *conduit, rb_length depth);

/* Flowing full, and half full: the velocity is the same. */
struct rb_flow rb_flow_full(const struct rb_conduit *conduit);
struct rb_flow rb_flow_half(const struct rb_conduit *conduit);

enum rb_depths {
	RB_ONE_DEPTH,
	RB_TWO_DEPTHS, /* it also runs so much a little below full: the lower one is given
			*/
	RB_SURCHARGED  /* more than the pipe carries: 1.0757 times its discharge when full
			*/
};

/* The depth at which a discharge runs; set to the diameter where it is surcharged. */
enum rb_depths rb_flow_depth(const struct rb_conduit *conduit, int64_t discharge,
			     rb_length *depth);

/* The slope at which the full pipe runs at a velocity: fall over a run of 1 000 000 mm.
 */
rb_slope rb_flow_slope(rb_length inside, int roughness, rb_length velocity);

/* Part-full over full, in ten-thousandths, at a depth in thousandths of the diameter. */
struct rb_part_full {
	int area, radius, velocity, discharge;
};

struct rb_part_full rb_part_full(int depth);

#endif
