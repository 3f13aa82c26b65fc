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

rb_length rb_ground_at(const struct rb_ground *ground, rb_length chainage, bool *is_shot)
{
	const struct rb_ground_point *after, *before;
	uint32_t next;
	rb_length rise;

	*is_shot = false;
	if (!ground->points)
		return rb_length_none();
	next = lower_bound(ground, chainage);
	after = ground->point + next;
	*is_shot = next < ground->points && after->chainage.nm == chainage.nm;
	if (*is_shot)
		return after->elevation;
	if (next == 0 || next == ground->points)
		return rb_length_none();
	before = after - 1;
	rise = rb_length_share(rb_length_sub(after->elevation, before->elevation),
			       rb_length_sub(chainage, before->chainage).nm,
			       rb_length_sub(after->chainage, before->chainage).nm);
	return rb_length_add(before->elevation, rise);
}
