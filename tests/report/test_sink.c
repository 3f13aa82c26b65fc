/* SPDX-License-Identifier: MIT */
/* Blocks, numbers, and a taker that fails. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"

static struct capture capture;

static void writes_numbers(void **state)
{
	static const struct {
		int64_t number;
		const char *text;
	} cases[] = {
		{ 0, "0" },
		{ -1, "-1" },
		{ INT64_MAX, "9223372036854775807" },
		{ INT64_MIN, "-9223372036854775808" },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		capture_init(&capture);
		rb_sink_number(&capture.sink, cases[i].number);
		if (!strcmp(captured(&capture), cases[i].text))
			continue;
		print_error("row %zu: got %s, want %s\n", i, capture.text, cases[i].text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* A text longer than a block arrives whole and in order. */
static void keeps_order_over_blocks(void **state)
{
	(void)state;
	capture_init(&capture);
	rb_sink_pad(&capture.sink, 'a', RB_SINK_BLOCK - 1);
	rb_sink_text(&capture.sink, "bcd");
	rb_sink_pad(&capture.sink, 'e', RB_SINK_BLOCK);
	rb_sink_char(&capture.sink, 'f');
	captured(&capture);
	assert_int_equal(capture.used, 2 * RB_SINK_BLOCK + 3);
	assert_memory_equal(capture.text + RB_SINK_BLOCK - 2, "abcde", 5);
	assert_int_equal(capture.text[capture.used - 1], 'f');
}

static int calls;

static bool refuse(void *self, const char *bytes, size_t length)
{
	(void)self;
	(void)bytes;
	(void)length;
	calls++;
	return false;
}

static void stops_after_a_failure(void **state)
{
	static struct rb_sink sink;

	(void)state;
	calls = 0;
	rb_sink_init(&sink, refuse, NULL);
	rb_sink_pad(&sink, 'x', 3 * RB_SINK_BLOCK + 5);
	assert_false(rb_sink_flush(&sink));
	assert_int_equal(calls, 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writes_numbers),
		cmocka_unit_test(keeps_order_over_blocks),
		cmocka_unit_test(stops_after_a_failure),
	};

	return cmocka_run_group_tests_name("sink", tests, NULL, NULL);
}
