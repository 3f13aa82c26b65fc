/* SPDX-License-Identifier: MIT */
/* test_dig_result.c - what a person in a ditch is told. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "report/dig_result.h"

#define EIGHTHS                                                                          \
	{                                                                                \
		RB_FEET_INCHES, 0, 8, true                                               \
	}
#define MM                                                                               \
	{                                                                                \
		RB_MILLIMETRES, 0, 8, false                                              \
	}
#define IN RB_INCH

/* clang-format off */
static const struct {
	int64_t wanted, read; /* nanometres */
	bool digging, on_pipe;
	struct rb_style words;
	const char *said;
} cases[] = {
	{ 90 * IN, 90 * IN - IN * 5 / 4, true,  false, EIGHTHS, "dig 1 1/4 in" },
	{ 90 * IN, 90 * IN + IN / 2,     true,  false, EIGHTHS,
	  "over-dug by 1/2 in: bring back with compacted bedding" },
	{ 90 * IN, 90 * IN,              true,  false, EIGHTHS, "on grade (within 1/8 in)" },
	{ 90 * IN, 90 * IN - IN / 8,     true,  false, EIGHTHS, "on grade (within 1/8 in)" },
	{ 90 * IN, 90 * IN + IN / 8,     true,  false, EIGHTHS, "on grade (within 1/8 in)" },
	{ 90 * IN, 90 * IN - IN / 8 - 1, true,  false, EIGHTHS, "dig 1/8 in" },
	{ 90 * IN, 78 * IN,              true,  false, EIGHTHS, "dig 1 ft 0 in" },
	{ 90 * IN, 60 * IN + IN / 4,     true,  false, EIGHTHS, "dig 2 ft 5 3/4 in" },
	{ 90 * IN, 91 * IN,              false, false, EIGHTHS, "fill 1 in" },
	{ 90 * IN, 91 * IN,              false, true,  EIGHTHS, "raise the pipe 1 in" },
	{ 90 * IN, 88 * IN,              false, true,  EIGHTHS, "lower the pipe 2 in" },
	/* W2 and W3: NAVEDTRA 14081 Equipment Operator Basic, ch. 15 */
	{ 12 * RB_FOOT + RB_FOOT / 2, 12 * RB_FOOT + RB_FOOT / 5, true, false,
	  { RB_FEET, 1, 8, false }, "dig 0.3 ft" },
	{ 5 * RB_FOOT, 5 * RB_FOOT + RB_FOOT / 2, false, false,
	  { RB_FEET, 1, 8, false }, "fill 0.5 ft" },
	{ 2 * RB_METRE, 2 * RB_METRE - 32 * RB_MILLIMETRE, true, false, MM, "dig 32 mm" },
	{ -2 * RB_FOOT, -3 * RB_FOOT,    true,  false, EIGHTHS, "dig 1 ft 0 in" },
};
/* clang-format on */

static void says(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_phrase phrase;
	int wrong = 0;

	(void)state;
	rb_phrase_init(&phrase, arena);
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rb_dig_result result = {
			.within = { RB_INCH / 8 },
			.on_pipe = cases[i].on_pipe,
			.words = cases[i].words,
		};

		result.dig = rb_dig(rb_exact_of((rb_length){ cases[i].wanted }),
				    (rb_length){ cases[i].read }, result.within,
				    cases[i].digging);
		rb_phrase_clear(&phrase);
		rb_dig_words(&phrase, &result);
		if (!strcmp(phrase.text, cases[i].said))
			continue;
		print_error("row %zu: got \"%s\", wanted \"%s\"\n", i, phrase.text,
			    cases[i].said);
		wrong++;
	}
	rb_arena_free(arena);
	assert_int_equal(wrong, 0);
}

/* What is more than nothing never reads as nothing. */
static void a_small_amount_is_said(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_dig_result result = { .words = EIGHTHS };
	struct rb_phrase phrase;

	(void)state;
	rb_phrase_init(&phrase, arena);
	result.dig = rb_dig(rb_exact_of((rb_length){ IN }), (rb_length){ IN - IN / 32 },
			    (rb_length){ 0 }, true);
	rb_dig_words(&phrase, &result);
	assert_string_equal(phrase.text, "dig 1/32 in");
	rb_phrase_clear(&phrase);
	result.dig = rb_dig(rb_exact_of((rb_length){ IN }), (rb_length){ IN - 1 },
			    (rb_length){ 0 }, true);
	rb_dig_words(&phrase, &result);
	assert_string_equal(phrase.text, "dig less than 1/64 in");
	rb_phrase_clear(&phrase);
	result.words = (struct rb_style)MM;
	result.dig = rb_dig(rb_exact_of((rb_length){ RB_METRE }),
			    (rb_length){ RB_METRE - RB_MILLIMETRE / 50 },
			    (rb_length){ 0 }, true);
	rb_dig_words(&phrase, &result);
	assert_string_equal(phrase.text, "dig 0.02 mm");
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(says),
		cmocka_unit_test(a_small_amount_is_said),
	};

	return cmocka_run_group_tests_name("dig result", tests, NULL, NULL);
}
