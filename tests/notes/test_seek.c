/* SPDX-License-Identifier: MIT */
/* Numbers sought in sorted lists. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "notes/seek.h"

struct item {
	uint8_t other;
	uint32_t number;
};

static void finds_the_first_not_below(void **state)
{
	static const struct item list[] = { { 9, 2 }, { 8, 5 }, { 7, 5 }, { 6, 9 } };
	static const struct {
		uint32_t key, at;
	} cases[] = { { 0, 0 }, { 2, 0 }, { 3, 1 },  { 5, 1 },
		      { 6, 3 }, { 9, 3 }, { 10, 4 }, { UINT32_MAX, 4 } };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		uint32_t at = rb_seek(list, 4, sizeof *list,
				      offsetof(struct item, number), cases[i].key);

		if (at == cases[i].at)
			continue;
		print_error("%u: %u\n", cases[i].key, at);
		wrong++;
	}
	assert_int_equal(wrong, 0);
	assert_int_equal(rb_seek(NULL, 0, sizeof *list, 0, 5), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(finds_the_first_not_below),
	};

	return cmocka_run_group_tests_name("seek", tests, NULL, NULL);
}
