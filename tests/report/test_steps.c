/* SPDX-License-Identifier: MIT */
/* Carry and borrow, as one would do it by hand. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "measure/reading.h"
#include "report/steps.h"

/* clang-format off */
static const struct step_case {
	const char *a;
	char sign;
	const char *b, *steps;
} step_cases[] = {
	{ "100'-0\"", '+', "4'-9\"", "100'-0\" + 4'-9\" = 104'-9\"" },
	{ "4'-9\"", '+', "3'-8 1/2\"",
	  "4'-9\" + 3'-8 1/2\" = 8'-5 1/2\"\n"
	  "  4'-9\" + 3'-8 1/2\" = 7'-17 1/2\", 17 1/2\" is 1'-5 1/2\": 8'-5 1/2\"" },
	{ "4'-9 3/4\"", '+', "3'-8 1/2\"",
	  "4'-9 3/4\" + 3'-8 1/2\" = 8'-6 1/4\"\n"
	  "  1/2 is 2/4\n"
	  "  4'-9 3/4\" + 3'-8 2/4\" = 7'-17 5/4\", 5/4 is 1 1/4: 7'-18 1/4\", "
	  "18 1/4\" is 1'-6 1/4\": 8'-6 1/4\"" },
	{ "1'-1 1/4\"", '+', "2'-2 1/4\"",
	  "1'-1 1/4\" + 2'-2 1/4\" = 3'-3 1/2\"\n"
	  "  1'-1 1/4\" + 2'-2 1/4\" = 3'-3 2/4\", 2/4 is 1/2: 3'-3 1/2\"" },
	{ "1'-11 1/2\"", '+', "0'-0 1/2\"",
	  "1'-11 1/2\" + 0'-0 1/2\" = 2'-0\"\n"
	  "  1'-11 1/2\" + 0'-0 1/2\" = 1'-11 2/2\", 2/2 is 1: 1'-12\", "
	  "12\" is 1'-0\": 2'-0\"" },
	{ "8 1/2\"", '+', "6 1/4\"",
	  "0'-8 1/2\" + 0'-6 1/4\" = 1'-2 3/4\"\n"
	  "  1/2 is 2/4\n"
	  "  8 2/4\" + 6 1/4\" = 14 3/4\" = 1'-2 3/4\"" },
	{ "8\"", '+', "6\"",
	  "0'-8\" + 0'-6\" = 1'-2\"\n"
	  "  8\" + 6\" = 14\" = 1'-2\"" },
	{ "8 3/4\"", '+', "6 3/4\"",
	  "0'-8 3/4\" + 0'-6 3/4\" = 1'-3 1/2\"\n"
	  "  8 3/4\" + 6 3/4\" = 14 6/4\" = 15 1/2\" = 1'-3 1/2\"" },
	{ "3/4\"", '+', "1/4\"",
	  "0'-0 3/4\" + 0'-0 1/4\" = 0'-1\"\n"
	  "  3/4\" + 1/4\" = 4/4\" = 1\"" },
	{ "104'-3 1/2\"", '-', "96'-9\"",
	  "104'-3 1/2\" - 96'-9\" = 7'-6 1/2\"\n"
	  "  3 1/2\" is less than 9\", so borrow 1 ft = 12\": 103'-15 1/2\"\n"
	  "  103'-15 1/2\" - 96'-9\" = 7'-6 1/2\"" },
	{ "104'-9\"", '-', "5'-3\"", "104'-9\" - 5'-3\" = 99'-6\"" },
	{ "104'-9 1/4\"", '-', "5'-3 1/2\"",
	  "104'-9 1/4\" - 5'-3 1/2\" = 99'-5 3/4\"\n"
	  "  1/2 is 2/4\n"
	  "  1/4 is less than 2/4, so borrow 1\" = 4/4: 104'-8 5/4\"\n"
	  "  104'-8 5/4\" - 5'-3 2/4\" = 99'-5 3/4\"" },
	{ "100'-0\"", '-', "99'-11 7/8\"",
	  "100'-0\" - 99'-11 7/8\" = 0'-0 1/8\"\n"
	  "  there is no fraction to take from: 7/8 needs one, so borrow 1 ft = 12\", and of "
	  "it 1\" = 8/8: 99'-11 8/8\"\n"
	  "  99'-11 8/8\" - 99'-11 7/8\" = 0'-0 1/8\"" },
	{ "5'-0\"", '-', "6'-3\"",
	  "5'-0\" - 6'-3\" = -1'-3\"\n"
	  "  the number taken away is the greater: take the other from it, and put a minus "
	  "before what is left" },
	{ "5'-0\"", '+', "-1'-3\"",
	  "5'-0\" + (-1'-3\") = 3'-9\"\n"
	  "  0\" is less than 3\", so borrow 1 ft = 12\": 4'-12\"\n"
	  "  4'-12\" - 1'-3\" = 3'-9\"" },
	{ "104.27 ft", '-', "6.03 ft", "104'-3 15/64\" - 6'-0 23/64\" = 98'-2 7/8\" (rounded)" },
};

static const struct {
	const char *a;
	char sign;
	const char *b, *steps;
} decimal_cases[] = {
	{ "100", '+', "4.27", "100.00 + 4.27 = 104.27" },
	{ "104.27", '-', "-0.5", "104.27 - (-0.50) = 104.77" },
	{ "104.27", '-', "5.2917", "104.27 - 5.2917 = 98.9783" },
	{ "104.27", '-', "5'-3 1/2\"", "104.27 - 5.2917 = 98.9783 (rounded)" },
};
/* clang-format on */

static rb_length read(const char *text, enum rb_unit unit)
{
	const struct rb_reading_rules rules = { unit, RB_OF_ELEVATION, false,
						rb_length_none() };

	return rb_reading_parse(text, strlen(text), &rules).value;
}

static int compare(struct rb_arena *arena, const char *a, char sign, const char *b,
		   const char *want, struct rb_style style)
{
	struct rb_phrase phrase;
	rb_length first = read(a, style.unit), second = read(b, style.unit);

	rb_phrase_init(&phrase, arena);
	if (sign == '+')
		rb_steps_add(&phrase, first, second, style, 2);
	else
		rb_steps_subtract(&phrase, first, second, style, 2);
	if (!strcmp(phrase.text, want))
		return 0;
	print_error("%s %c %s: got\n%s\nwant\n%s\n", a, sign, b, phrase.text, want);
	return 1;
}

static void carries_and_borrows(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_style style = { RB_FEET_INCHES, 2, 16, false };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof step_cases / sizeof *step_cases; i++)
		wrong += compare(arena, step_cases[i].a, step_cases[i].sign,
				 step_cases[i].b, step_cases[i].steps, style);
	rb_arena_free(arena);
	assert_int_equal(wrong, 0);
}

static void writes_decimals_in_one_line(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_style style = { RB_FEET, 2, 16, false };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof decimal_cases / sizeof *decimal_cases; i++)
		wrong += compare(arena, decimal_cases[i].a, decimal_cases[i].sign,
				 decimal_cases[i].b, decimal_cases[i].steps, style);
	rb_arena_free(arena);
	assert_int_equal(wrong, 0);
}

/* The last number of the working is the result of the first line. */
static void working_ends_with_the_result(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_style style = { RB_FEET_INCHES, 2, 16, false };
	struct rb_phrase phrase;
	char result[RB_LENGTH_TEXT];
	int wrong = 0;

	(void)state;
	rb_phrase_init(&phrase, arena);
	for (int64_t i = 1; i < 3000; i += 7) {
		rb_length a = rb_length_of((i * 5 + 2000) * RB_SIXTYFOURTH);
		rb_length b = rb_length_of((i * i % 1999 + 1) * RB_SIXTYFOURTH);
		size_t length;

		rb_phrase_clear(&phrase);
		rb_steps_subtract(&phrase, a, b, style, 2);
		rb_length_format(result, rb_length_sub(a, b),
				 (struct rb_style){ RB_FEET_INCHES, 0, 64, false });
		length = strlen(result);
		wrong += phrase.used < length ||
			 strcmp(phrase.text + phrase.used - length, result) != 0;
		rb_phrase_clear(&phrase);
		rb_steps_add(&phrase, a, b, style, 2);
		rb_length_format(result, rb_length_add(a, b),
				 (struct rb_style){ RB_FEET_INCHES, 0, 64, false });
		length = strlen(result);
		wrong += phrase.used < length ||
			 strcmp(phrase.text + phrase.used - length, result) != 0;
	}
	rb_arena_free(arena);
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(carries_and_borrows),
		cmocka_unit_test(writes_decimals_in_one_line),
		cmocka_unit_test(working_ends_with_the_result),
	};

	return cmocka_run_group_tests_name("steps", tests, NULL, NULL);
}
