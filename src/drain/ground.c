/* SPDX-License-Identifier: MIT */
/* ground.c - ground between shots. */
#include "drain/ground.h"

#include <stdlib.h>

bool rb_is_ground(const struct rb_spot *spot)
{
	return spot->rod_on == RB_ON_GROUND ||
	       (spot->rod_on == RB_ON_UNSAID && spot->kind != RB_BENCHMARK);
}

static int by_chainage(const void *left, const void *right)
{
	const struct rb_ground_point *a = left, *b = right;
	int order = rb_length_compare(a->chainage, b->chainage);

	return order ? order : (a->row > b->row) - (a->row < b->row);
}

void rb_ground_sort(struct rb_ground *ground)
{
	if (ground->points)
		qsort(ground->point, ground->points, sizeof *ground->point, by_chainage);
}

/* The first point that is not before a chainage. */
static uint32_t lower_bound(const struct rb_ground *ground, rb_length chainage)
{
	uint32_t low = 0, high = ground->points;

	while (low < high) {
		uint32_t middle = low + (high - low) / 2;

		if (rb_length_compare(ground->point[middle].chainage, chainage) < 0)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

/* On the straight line between two points. */
static struct rb_exact between(const struct rb_ground_point *before,
			       const struct rb_ground_point *after, rb_length chainage)
{
	rb_slope slope = { rb_length_sub(before->elevation, after->elevation),
			   rb_length_sub(after->chainage, before->chainage) };

	return rb_exact_sub(
		rb_exact_of(before->elevation),
		rb_exact_fall(slope, rb_length_sub(chainage, before->chainage)));
}

bool rb_ground_at(const struct rb_ground *ground, rb_length chainage, bool *is_shot,
		  struct rb_exact *elevation)
{
	const struct rb_ground_point *after;
	uint32_t next;

	*is_shot = false;
	if (!ground->points)
		return false;
	next = lower_bound(ground, chainage);
	after = ground->point + next;
	*is_shot = next < ground->points && after->chainage.nm == chainage.nm;
	if (!*is_shot && (next == 0 || next == ground->points))
		return false;
	*elevation = *is_shot ? rb_exact_of(after->elevation)
			      : between(after - 1, after, chainage);
	return true;
}
