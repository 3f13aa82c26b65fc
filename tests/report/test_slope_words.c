/* SPDX-License-Identifier: MIT */
/* test_slope_words.c - slopes, sizes and rules in words; verdicts on legs. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "report/legs_table.h"
#include "report/slope_words.h"

static rb_slope slope(const char *text)
{
	rb_slope s = { { 0 }, { 0 } };

	assert_int_equal(rb_slope_parse(text, strlen(text), &s), RB_SLOPE_READ);
	return s;
}

static struct rb_phrase new_phrase(void)
{
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, rb_arena_new(NULL));
	assert_false(phrase.out_of_memory);
	return phrase;
}

static void slopes_in_words(void **state)
{
	static const struct {
		const char *written, *said, *all;
	} cases[] = {
		{ "1/4 in/ft", "1/4 in/ft", "1/4 in/ft = 2.08 % = 1:48 = 1.19 deg" },
		{ "2%", "0.240 in/ft (2.00 %)",
		  "0.240 in/ft = 2.00 % = 1:50 = 1.15 deg" },
		{ "1:60.6", "0.198 in/ft (1.65 %)",
		  "0.198 in/ft = 1.65 % = 1:60.6 = 0.95 deg" },
		{ "-1/4 in/ft", "-1/4 in/ft",
		  "-1/4 in/ft = -2.08 % = -1:48 = -1.19 deg" },
	};
	struct rb_phrase phrase = new_phrase();
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		rb_phrase_clear(&phrase);
		rb_phrase_slope(&phrase, slope(cases[i].written));
		if (strcmp(phrase.text, cases[i].said)) {
			print_error("row %zu: got \"%s\"\n", i, phrase.text);
			wrong++;
		}
		rb_phrase_clear(&phrase);
		rb_phrase_slope_all(&phrase, slope(cases[i].written));
		if (strcmp(phrase.text, cases[i].all)) {
			print_error("row %zu: got \"%s\"\n", i, phrase.text);
			wrong++;
		}
	}
	rb_arena_free(phrase.arena);
	assert_int_equal(wrong, 0);
}

/* Held against another, a slope is shown as finely as it takes to tell them apart. */
static void slopes_beside_another(void **state)
{
	static const struct {
		const char *written, *other, *said;
	} cases[] = {
		{ "2.06 in per 16.5 ft", "1/8 in/ft", "0.1248 in/ft (1.040 %)" },
		{ "1.00001%", "1%", "0.120001 in/ft (1.00001 %)" },
		{ "1%", "1%", "0.120 in/ft (1.00 %)" },
		{ "1%", "2%", "0.120 in/ft (1.00 %)" },
		{ "1/8 in/ft", "1.04%", "1/8 in/ft" },
	};
	struct rb_phrase phrase = new_phrase();
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		rb_phrase_clear(&phrase);
		rb_phrase_slope_beside(&phrase, slope(cases[i].written),
				       slope(cases[i].other));
		if (strcmp(phrase.text, cases[i].said)) {
			print_error("row %zu: got \"%s\"\n", i, phrase.text);
			wrong++;
		}
	}
	assert_int_equal(wrong, 0);
	rb_arena_free(phrase.arena);
}

static void sizes_in_words(void **state)
{
	static const struct {
		int64_t nm;
		const char *said;
	} cases[] = {
		{ 4 * RB_INCH, "4 in" },           { 5 * RB_INCH / 2, "2 1/2 in" },
		{ 3 * RB_INCH / 4, "3/4 in" },     { 12 * RB_INCH, "12 in" },
		{ 100 * RB_MILLIMETRE, "100 mm" },
	};
	struct rb_phrase phrase = new_phrase();
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		rb_phrase_clear(&phrase);
		rb_phrase_size(&phrase, (rb_length){ cases[i].nm });
		if (!strcmp(phrase.text, cases[i].said))
			continue;
		print_error("row %zu: got \"%s\"\n", i, phrase.text);
		wrong++;
	}
	rb_arena_free(phrase.arena);
	assert_int_equal(wrong, 0);
}

static struct rb_leg leg(const char *written, const char *minimum)
{
	struct rb_leg l = { .from = "A", .to = "B", .slope = slope(written) };

	if (minimum)
		l.minimum = slope(minimum);
	l.length = l.slope.run;
	l.fall = l.slope.fall;
	rb_leg_judge(&l);
	return l;
}

static void verdicts(void **state)
{
	static const struct {
		const char *first, *second, *minimum, *said;
	} cases[] = {
		{ "1/4 in/ft", "1/2 in/ft", "1/4 in/ft",
		  "NOT FLATTER THAN 1/4 in/ft: all 2 legs." },
		{ "1:50", "1:40", "1:50", "NOT FLATTER THAN 1:50: all 2 legs." },
		{ "1:50", "1:40", "1/4 in/ft",
		  "FLATTER THAN 1/4 in/ft: 1 of 2 legs, A to B with 0.240 in/ft "
		  "(2.00 %)." },
		{ "1/8 in/ft", "-1/8 in/ft", "1/4 in/ft",
		  "UPHILL: 1 of 2 legs, A to B with -1/8 in/ft. FLATTER THAN 1/4 in/ft: "
		  "1 of 2 legs, A to B with 1/8 in/ft." },
		{ "0 in/ft", "1 in/ft", "1/4 in/ft", "LEVEL: 1 of 2 legs, A to B." },
		{ "1 in/ft", "1 in/ft", NULL,
		  "NOT JUDGED: no minimum slope is given; all 2 legs fall." },
	};
	struct rb_phrase phrase = new_phrase();
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct rb_leg legs[] = { leg(cases[i].first, cases[i].minimum),
					       leg(cases[i].second, cases[i].minimum) };

		rb_phrase_clear(&phrase);
		rb_legs_verdict(&phrase, legs, 2,
				cases[i].minimum ? cases[i].minimum : "", "leg");
		if (!strcmp(phrase.text, cases[i].said))
			continue;
		print_error("row %zu: got \"%s\"\n", i, phrase.text);
		wrong++;
	}
	rb_arena_free(phrase.arena);
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(slopes_in_words),
		cmocka_unit_test(slopes_beside_another),
		cmocka_unit_test(sizes_in_words),
		cmocka_unit_test(verdicts),
	};

	return cmocka_run_group_tests_name("slope words", tests, NULL, NULL);
}
