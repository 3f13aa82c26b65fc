/* SPDX-License-Identifier: MIT */
/* test_arena.c - one owner for all memory, and what it takes from the allocator. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

#include "rodbook/arena.h"

static size_t taken, given_back, largest;

static void *count_resize(void *old, size_t size)
{
	taken += !old;
	largest = size > largest ? size : largest;
	return realloc(old, size);
}

static void count_release(void *old)
{
	given_back++;
	free(old);
}

static const struct rb_allocator counting = { count_resize, count_release };

static int start_counting(void **state)
{
	(void)state;
	taken = given_back = largest = 0;
	return 0;
}

static void gives_back_all_that_it_took(void **state)
{
	struct rb_arena *arena = rb_arena_new(&counting);

	(void)state;
	for (size_t size = 1; size < 200000; size = 3 * size + 1)
		for (int i = 0; i < 20; i++)
			assert_non_null(rb_arena_take(arena, 1, size));
	assert_true(taken > 20);
	assert_int_equal(given_back, 0);
	rb_arena_free(arena);
	assert_int_equal(given_back, taken);
}

static void freeing_nothing_is_fine(void **state)
{
	(void)state;
	rb_arena_free(NULL);
}

static void keeps_its_allocator(void **state)
{
	struct rb_arena *arena = rb_arena_new(&counting);

	(void)state;
	assert_ptr_equal(rb_arena_allocator(arena)->resize, count_resize);
	assert_ptr_equal(rb_arena_allocator(arena)->release, count_release);
	rb_arena_free(arena);
}

/* Whatever is asked for, what comes is aligned and belongs to nobody else. */
static void objects_are_aligned_and_apart(void **state)
{
	enum { OBJECTS = 400 };
	struct rb_arena *arena = rb_arena_new(NULL);
	unsigned char *object[OBJECTS];
	size_t size[OBJECTS];

	(void)state;
	for (size_t i = 0; i < OBJECTS; i++) {
		size[i] = 1 + i * 37 % 700 + (i % 50 == 0 ? 20000 : 0);
		object[i] = rb_arena_take(arena, size[i], 1);
		assert_non_null(object[i]);
		assert_int_equal((uintptr_t)object[i] % _Alignof(max_align_t), 0);
		memset(object[i], (int)(i % 251), size[i]);
	}
	for (size_t i = 0; i < OBJECTS; i++)
		for (size_t j = 0; j < size[i]; j++)
			assert_int_equal(object[i][j], i % 251);
	rb_arena_free(arena);
}

static void small_objects_share_a_block(void **state)
{
	struct rb_arena *arena = rb_arena_new(&counting);

	(void)state;
	for (int i = 0; i < 1000; i++)
		assert_non_null(rb_arena_take(arena, 1, 32));
	assert_true(taken <= 3);
	rb_arena_free(arena);
}

static void a_large_object_is_a_block_of_its_own(void **state)
{
	struct rb_arena *arena = rb_arena_new(&counting);
	size_t before;

	(void)state;
	assert_non_null(rb_arena_take(arena, 1, 16));
	before = taken;
	assert_non_null(rb_arena_take(arena, 1000, 1000));
	assert_in_range(largest, 1000000, 1000100);
	assert_int_equal(taken, before + 1);
	assert_non_null(rb_arena_take(arena, 1, 16));
	assert_int_equal(taken, before + 1); /* the block begun before goes on */
	rb_arena_free(arena);
}

static void cleared_objects_are_zero(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	static const unsigned char zero[4000];
	unsigned char *object;

	(void)state;
	memset(rb_arena_take(arena, 1, 8000), 0xA5, 8000);
	object = rb_arena_take_clear(arena, 1000, 4);
	assert_memory_equal(object, zero, sizeof zero);
	rb_arena_free(arena);
}

/* A product that does not fit is refused, not wrapped round. */
static void too_much_is_refused(void **state)
{
	struct rb_arena *arena = rb_arena_new(&counting);
	const size_t before = taken;

	(void)state;
	assert_null(rb_arena_take(arena, SIZE_MAX, 1));
	assert_null(rb_arena_take(arena, SIZE_MAX / 2, 4));
	assert_null(rb_arena_take(arena, SIZE_MAX / 16 + 1, 16));
	assert_null(rb_arena_take_clear(arena, SIZE_MAX / 4, 8));
	assert_int_equal(taken, before);
	rb_arena_free(arena);
}

static void a_text_is_copied_with_its_end(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	char bytes[] = "TP-1 spike";
	char *text = rb_arena_text(arena, bytes, 4);

	(void)state;
	bytes[0] = 'X';
	assert_string_equal(text, "TP-1");
	assert_string_equal(rb_arena_text(arena, bytes, 0), "");
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup(gives_back_all_that_it_took, start_counting),
		cmocka_unit_test(freeing_nothing_is_fine),
		cmocka_unit_test_setup(keeps_its_allocator, start_counting),
		cmocka_unit_test(objects_are_aligned_and_apart),
		cmocka_unit_test_setup(small_objects_share_a_block, start_counting),
		cmocka_unit_test_setup(a_large_object_is_a_block_of_its_own,
				       start_counting),
		cmocka_unit_test(cleared_objects_are_zero),
		cmocka_unit_test_setup(too_much_is_refused, start_counting),
		cmocka_unit_test(a_text_is_copied_with_its_end),
	};

	return cmocka_run_group_tests_name("arena", tests, NULL, NULL);
}
