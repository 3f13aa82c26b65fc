/* SPDX-License-Identifier: MIT */
/* flow.c - Manning's formula; the one file with floating point besides degrees. */
#include "drain/flow.h"

#include <math.h>

#define PI           3.14159265358979323846
#define MANNING_FOOT 1.486 /* feet and seconds; metric: 1.0 */

/* A cubic foot in cubic millimetres. */
#define CUBIC_FOOT (304.8 * 304.8 * 304.8)

/* The deepest at which discharge still grows: 0.93818 of the diameter (computed). */
#define DEPTH_OF_MOST 0.93818

static double feet(rb_length a)
{
	return (double)a.nm / (double)RB_FOOT;
}

static int64_t whole(double x)
{
	return (int64_t)llround(x);
}

static double velocity_full(const struct rb_conduit *c)
{
	double radius = feet(c->inside) / 4;
	double slope = (double)c->slope.fall.nm / (double)c->slope.run.nm;

	return slope <= 0 ? 0
			  : MANNING_FOOT * 10000 / c->roughness * pow(radius, 2.0 / 3) *
				    sqrt(slope);
}

static double area_full(const struct rb_conduit *c)
{
	return PI * feet(c->inside) * feet(c->inside) / 4;
}

/* Part full over full, n the same at every depth; y is depth over diameter. */
struct ratios {
	double area, radius, velocity;
};

static struct ratios ratios_at(double y)
{
	double theta = 2 * acos(1 - 2 * y);
	struct ratios r = { 1, 1, 1 };

	if (y <= 0)
		return (struct ratios){ 0, 0, 0 };
	if (y >= 1)
		return r;
	r.area = (theta - sin(theta)) / (2 * PI);
	r.radius = 1 - sin(theta) / theta;
	r.velocity = pow(r.radius, 2.0 / 3);
	return r;
}

static struct rb_flow flow_at(const struct rb_conduit *c, double y)
{
	struct ratios r = ratios_at(y);
	double velocity = velocity_full(c) * r.velocity;

	return (struct rb_flow){
		rb_length_of(whole(velocity * (double)RB_FOOT)),
		whole(velocity * area_full(c) * r.area * CUBIC_FOOT),
	};
}

struct rb_flow rb_flow_at(const struct rb_conduit *conduit, rb_length depth)
{
	return flow_at(conduit, (double)depth.nm / (double)conduit->inside.nm);
}

struct rb_flow rb_flow_full(const struct rb_conduit *conduit)
{
	return flow_at(conduit, 1);
}

struct rb_flow rb_flow_half(const struct rb_conduit *conduit)
{
	return flow_at(conduit, 0.5);
}

/* The depth below that of most discharge at which the ratio to full is `wanted`: halved
 * until nothing is left to halve, since discharge only grows up to there. */
static double depth_of(double wanted)
{
	double low = 0, high = DEPTH_OF_MOST;

	for (int i = 0; i < 60; i++) {
		double y = (low + high) / 2;
		struct ratios r = ratios_at(y);

		if (r.area * r.velocity < wanted)
			low = y;
		else
			high = y;
	}
	return high;
}

enum rb_depths rb_flow_depth(const struct rb_conduit *conduit, int64_t discharge,
			     rb_length *depth)
{
	double full = velocity_full(conduit) * area_full(conduit) * CUBIC_FOOT;
	double wanted = full > 0 ? (double)discharge / full : 2;
	struct ratios most = ratios_at(DEPTH_OF_MOST);

	*depth = conduit->inside;
	if (wanted > most.area * most.velocity)
		return RB_SURCHARGED;
	depth->nm = whole(depth_of(wanted) * (double)conduit->inside.nm);
	return wanted >= 1 ? RB_TWO_DEPTHS : RB_ONE_DEPTH;
}

rb_slope rb_flow_slope(rb_length inside, int roughness, rb_length velocity)
{
	const rb_length run = { INT64_C(1000000) * RB_MILLIMETRE };
	double root = feet(velocity) * roughness / 10000 /
		      (MANNING_FOOT * pow(feet(inside) / 4, 2.0 / 3));

	return (rb_slope){ rb_length_of(whole(root * root * (double)run.nm)), run };
}

struct rb_part_full rb_part_full(int depth)
{
	struct ratios r = ratios_at(depth / 1000.0);

	return (struct rb_part_full){
		(int)whole(r.area * 10000),
		(int)whole(r.radius * 10000),
		(int)whole(r.velocity * 10000),
		(int)whole(r.area * r.velocity * 10000),
	};
}
