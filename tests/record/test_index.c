/* SPDX-License-Identifier: MIT */
/* Numbers under texts, many of them. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "record/index.h"

#define MANY 5000

static void finds_what_was_set(void **state)
{
	struct rb_index index = { .arena = rb_arena_new(NULL) };
	int wrong = 0;

	(void)state;
	assert_int_equal(rb_index_find(&index, "0"), RB_NOT_IN_INDEX);
	for (uint32_t i = 0; i < MANY; i++) {
		char text[16];
		int length = snprintf(text, sizeof text, "%u", i);
		const char *kept = rb_arena_text(index.arena, text, (size_t)length);

		assert_true(rb_index_set(&index, kept, i));
	}
	for (uint32_t i = 0; i < MANY; i++) {
		char text[16];

		snprintf(text, sizeof text, "%u", i);
		wrong += rb_index_find(&index, text) != i;
	}
	assert_int_equal(wrong, 0);
	assert_int_equal(rb_index_find(&index, "5000"), RB_NOT_IN_INDEX);
	rb_arena_free(index.arena);
}

static void the_last_one_stands(void **state)
{
	struct rb_index index = { .arena = rb_arena_new(NULL) };

	(void)state;
	assert_true(rb_index_set(&index, "larch.csv", 3));
	assert_true(rb_index_set(&index, "larch.csv", 7));
	assert_int_equal(rb_index_find(&index, "larch.csv"), 7);
	assert_int_equal(index.used, 1);
	rb_arena_free(index.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(finds_what_was_set),
		cmocka_unit_test(the_last_one_stands),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
