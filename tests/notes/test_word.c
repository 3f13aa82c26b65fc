/* SPDX-License-Identifier: MIT */
/* test_word.c - words of names and headings. */
#include "notes.h"

#include "notes/names.h"
#include "notes/word.h"

/* clang-format off */
static const struct words_case {
	const char *text, *words; /* parted by a bar */
} words_cases[] = {
	{ "",                  "" },
	{ " - ",               "-" },
	{ "Page 1 total",      "page|1|total" },
	{ "Sub\u2013Total:",   "sub|total" },
	{ "B.S. (ft)",         "b.s|ft" },
	{ "F/S",               "f/s" },
	{ "a/b/c",             "a/b|c" },
	{ "sum_bs#12",         "sum|bs|12" },
	{ "(+)",               "+" },
	{ "BS (+)",            "bs|+" },
	{ "BS - FS",           "bs|-|fs" },
	{ "Back-sight",        "back|sight" },
	{ "\u03A3BS \u2211",   "\u03A3|bs|\u2211" },
	{ "1+50",              "1|50" },
	{ "Caf\u00C9 no.3",    "caf\u00E9|no|3" },
};

static const struct is_case {
	const char *word, *pattern;
	bool is;
} is_cases[] = {
	{ "b.s", "bs", true },    { "bs", "bs", true },    { "bs", "b", false },
	{ "b", "bs", false },     { "backsights", "backs*", true }, { "back", "backs*", false },
	{ "backs", "backs*", true }, { "f/s", "fs", true }, { "foreman", "fore", false },
	{ "+", "+", true },       { "-", "+", false },
};
/* clang-format on */

static void words(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof words_cases / sizeof *words_cases; i++) {
		char folded[ROOM], found[ROOM] = "";
		const char *text = folded;
		struct rb_word word;

		rb_name_fold(folded, words_cases[i].text, strlen(words_cases[i].text));
		while (rb_word_next(&text, &word))
			add_text(found, "%s%.*s", *found ? "|" : "", (int)word.length,
				 word.text);
		wrong += differs(words_cases[i].text, found, words_cases[i].words);
	}
	assert_int_equal(wrong, 0);
}

static void patterns(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof is_cases / sizeof *is_cases; i++) {
		const struct is_case *c = &is_cases[i];
		struct rb_word word = { c->word, strlen(c->word) };

		if (rb_word_is(word, c->pattern) == c->is)
			continue;
		print_error("'%s' and '%s'\n", c->word, c->pattern);
		wrong++;
	}
	assert_int_equal(wrong, 0);
	assert_true(rb_word_is_figures((struct rb_word){ "12", 2 }));
	assert_false(rb_word_is_figures((struct rb_word){ "bs", 2 }));
	assert_true(rb_word_is_sum_sign((struct rb_word){ RB_SIGMA, 2 }));
	assert_false(rb_word_is_sum_sign((struct rb_word){ "sum", 3 }));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(words),
		cmocka_unit_test(patterns),
	};

	return cmocka_run_group_tests_name("word", tests, NULL, NULL);
}
