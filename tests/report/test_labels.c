/* SPDX-License-Identifier: MIT */
/* Labels: in their place where it is free, elsewhere where it is not, never overlapping.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "level/random.h"
#include "report/labels.h"
#include "report/profile_band.h"

#define ROOM 64

static const struct rb_box sheet = { 0, 0, 400, 200 };

/* clang-format off */
static const struct {
	enum rb_side side;
	struct rb_box box; /* of "TP-1" at 200, 100, 5 pixels off */
} sides[] = {
	{ RB_SIDE_ABOVE, { 184, 79, 216, 95 } },
	{ RB_SIDE_BELOW, { 184, 105, 216, 121 } },
	{ RB_SIDE_LEFT,  { 163, 92, 195, 108 } },
	{ RB_SIDE_RIGHT, { 205, 92, 237, 108 } },
};
/* clang-format on */

static void stands_where_it_should(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_labels labels;
	int wrong = 0;

	(void)state;
	assert_true(rb_labels_init(&labels, arena, ROOM, ROOM));
	for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
		const struct rb_label label = { { 200, 100 }, 5, sides[i].side, "TP-1" };
		struct rb_placed placed;

		rb_labels_begin(&labels, sheet);
		assert_true(rb_labels_place(&labels, &label, &placed));
		if (placed.box.left == sides[i].box.left &&
		    placed.box.top == sides[i].box.top &&
		    placed.box.right == sides[i].box.right &&
		    placed.box.bottom == sides[i].box.bottom && !placed.led)
			continue;
		print_error("side %zu: %d %d %d %d\n", i, placed.box.left, placed.box.top,
			    placed.box.right, placed.box.bottom);
		wrong++;
	}
	assert_int_equal(wrong, 0);
	rb_arena_free(arena);
}

/* There is room for one box and one line: of more nothing is noted, or placed. */
static void takes_no_more_than_there_is_room_for(void **state)
{
	const struct rb_label label = { { 200, 100 }, 5, RB_SIDE_ABOVE, "TP-1" };
	const struct rb_pixel from = { 0, 0 }, to = { 400, 200 };
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_labels labels;
	struct rb_placed placed;

	(void)state;
	assert_true(rb_labels_init(&labels, arena, 1, 1));
	rb_labels_begin(&labels, sheet);
	rb_labels_line(&labels, from, to);
	rb_labels_line(&labels, to, from);
	assert_int_equal(labels.lines, 1);
	assert_int_equal(labels.line[0][0].x, from.x);
	assert_true(rb_labels_place(&labels, &label, &placed));
	assert_false(rb_labels_place(&labels, &label, &placed));
	rb_labels_take(&labels, sheet);
	assert_int_equal(labels.boxes, 1);
	rb_arena_free(arena);
}

static void gives_way_and_is_led_to(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_label label = { { 200, 100 }, 5, RB_SIDE_ABOVE, "TP-1" };
	struct rb_labels labels;
	struct rb_placed placed;

	(void)state;
	assert_true(rb_labels_init(&labels, arena, ROOM, ROOM));
	rb_labels_begin(&labels, sheet);
	rb_labels_take(&labels, (struct rb_box){ 0, 60, 400, 140 });
	assert_true(rb_labels_place(&labels, &label, &placed));
	assert_true(placed.led);
	assert_true(placed.box.bottom <= 60 || placed.box.top >= 140);
	rb_arena_free(arena);
}

/* A line under its best place is reason enough to stand on the other side. */
static void avoids_lines(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_label label = { { 200, 100 }, 5, RB_SIDE_RIGHT, "TP-1" };
	struct rb_labels labels;
	struct rb_placed placed;

	(void)state;
	assert_true(rb_labels_init(&labels, arena, ROOM, ROOM));
	rb_labels_begin(&labels, sheet);
	rb_labels_line(&labels, (struct rb_pixel){ 220, 0 },
		       (struct rb_pixel){ 221, 200 });
	assert_true(rb_labels_place(&labels, &label, &placed));
	assert_true(placed.box.right < 220);
	rb_arena_free(arena);
}

static void is_left_out_where_there_is_no_place(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_label label = { { 200, 100 }, 5, RB_SIDE_ABOVE, "TP-1" };
	struct rb_labels labels;
	struct rb_placed placed;

	(void)state;
	assert_true(rb_labels_init(&labels, arena, ROOM, ROOM));
	rb_labels_begin(&labels, sheet);
	rb_labels_take(&labels, sheet);
	assert_false(rb_labels_place(&labels, &label, &placed));
	rb_labels_begin(&labels, (struct rb_box){ 0, 0, 20, 200 });
	assert_false(rb_labels_place(&labels, &label, &placed));
	rb_arena_free(arena);
}

/* From 0 up to but not including `below`. */
static int some(struct rb_random *random, int below)
{
	return (int)rb_random_between(random, 0, below - 1);
}

static int any_overlap(const struct rb_labels *labels)
{
	for (size_t i = 0; i < labels->boxes; i++)
		for (size_t j = 0; j < i; j++)
			if (rb_box_overlaps(labels->box[i], labels->box[j]))
				return 1;
	return 0;
}

static bool is_within(struct rb_box box)
{
	return box.left >= sheet.left && box.right <= sheet.right &&
	       box.top >= sheet.top && box.bottom <= sheet.bottom;
}

/* Many labels at random places: more than fit, so that the last are left out. */
static void never_overlaps(void **state)
{
	static const char *const texts[] = { "A", "TP-1", "BS 4'-3 1/2\"",
					     "DOES NOT CLOSE: 0.17 ft high" };
	struct rb_random random = rb_random_start(1, 0);
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_labels labels;
	int wrong = 0, out = 0;

	(void)state;
	assert_true(rb_labels_init(&labels, arena, ROOM, ROOM));
	for (int run = 0; run < 300; run++) {
		rb_labels_begin(&labels, sheet);
		for (int i = 0; i < ROOM; i++) {
			const struct rb_label label = {
				{ some(&random, 400), some(&random, 200) },
				5,
				(enum rb_side)some(&random, 4),
				texts[some(&random, 4)],
			};
			struct rb_placed placed;

			if (!rb_labels_place(&labels, &label, &placed))
				out++;
			else
				wrong += !is_within(placed.box);
		}
		wrong += any_overlap(&labels);
	}
	assert_int_equal(wrong, 0);
	assert_true(out > 0);
	rb_arena_free(arena);
}

/* Columns that fit side by side keep their order, their width and the edges. */
static void spreads_columns(void **state)
{
	struct rb_random random = rb_random_start(2, 0);
	int wrong = 0;

	(void)state;
	for (int run = 0; run < 1000; run++) {
		size_t count = 1 + (size_t)some(&random, 10);
		int middle[10], width = 60, left = 90, right = 90 + 10 * width, at = 0;

		for (size_t i = 0; i < count; i++) {
			at += some(&random, 120);
			middle[i] = at > right ? right : at;
		}
		rb_band_spread(middle, count, width, left, right);
		for (size_t i = 0; i < count; i++)
			wrong += middle[i] - width / 2 < left ||
				 middle[i] + width / 2 > right ||
				 (i && middle[i] - middle[i - 1] < width);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(stands_where_it_should),
		cmocka_unit_test(takes_no_more_than_there_is_room_for),
		cmocka_unit_test(gives_way_and_is_led_to),
		cmocka_unit_test(avoids_lines),
		cmocka_unit_test(is_left_out_where_there_is_no_place),
		cmocka_unit_test(never_overlaps),
		cmocka_unit_test(spreads_columns),
	};

	return cmocka_run_group_tests_name("labels", tests, NULL, NULL);
}
