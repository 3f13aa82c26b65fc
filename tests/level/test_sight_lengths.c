/* SPDX-License-Identifier: MIT */
/* What needs the lengths of sights says which are missing, the first of them by line. */
#include "levels.h"

static const char *missing_of(const struct levels *l, enum rb_code code)
{
	for (size_t i = 0; i < l->findings.count; i++)
		for (int a = 0; a < RB_ARGUMENTS; a++)
			if (l->findings.item[i]->code == code &&
			    l->findings.item[i]->argument[a].kind == RB_TEXT &&
			    strpbrk(l->findings.item[i]->argument[a].text, "0123456789"))
				return l->findings.item[i]->argument[a].text;
	return "nothing";
}

static void write_run(struct lines *out, const char *keys, int setups)
{
	say(out, "%spoint,known elevation,bs,fs,bs dist,fs dist\nBM,100.00,4.00,,30,\n",
	    keys);
	for (int i = 1; i < setups; i++)
		say(out, "T-%d,,4.00,4.00,,\n", i);
	say(out, "BM,,,4.00,,30\n");
}

/* clang-format off */
static const struct missing_case {
	const char *keys;
	int setups;
	enum rb_code code;
	const char *lines;
} cases[] = {
	{ "sight limit,100\n", 3, RB_CODE_LIMIT_NOT_JUDGED, "4, 5" },
	{ "balance limit,10\n", 2, RB_CODE_LIMIT_NOT_JUDGED, "4" },
	{ "sight limit,100\n", 13, RB_CODE_LIMIT_NOT_JUDGED,
	  "4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15" },
	{ "sight limit,100\n", 14, RB_CODE_LIMIT_NOT_JUDGED,
	  "4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15 and others" },
	{ "sight limit,100\n", 40, RB_CODE_LIMIT_NOT_JUDGED,
	  "4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15 and others" },
	{ "tolerance,12 mm sqrt(km)\n", 3, RB_CODE_LENGTHS_MISSING, "4, 5" },
	{ "tolerance,0.02 ft\nadjust,distance\n", 3, RB_CODE_LENGTHS_MISSING, "5, 6" },
};
/* clang-format on */

static void lines_without_lengths_are_named(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct lines text = { .used = 0 };
		struct levels l;
		const char *got;

		write_run(&text, cases[i].keys, cases[i].setups);
		l = levels_of(text.text, false);
		got = missing_of(&l, cases[i].code);
		if (strcmp(got, cases[i].lines) != 0) {
			struct lines found = { .used = 0 };

			say_findings(&found, &l);
			print_error("row %zu: %s\n%s", i, got, found.text);
			wrong++;
		}
		rb_arena_free(l.arena);
	}
	assert_int_equal(wrong, 0);
}

/* The first setup counts, and a section that stays open has no misclosure to judge. */
static void only_what_closes_needs_them(void **state)
{
	struct levels l = levels_of("tolerance,12 mm sqrt(km)\n"
				    "point,known elevation,bs,fs,bs dist,fs dist\n"
				    "BM,100.00,4.00,,,\n"
				    "T,,4.00,4.00,30,30\n"
				    "BM,,4.00,4.00,,30\n"
				    "U,,4.00,4.00,,\n"
				    "E,,,4.00,,\n",
				    false);

	(void)state;
	assert_string_equal(missing_of(&l, RB_CODE_LENGTHS_MISSING), "3");
	rb_arena_free(l.arena);
}

/* Both ways: 100 ft is not over 100, whether it was looked back or on. */
static void each_sight_is_held_against_the_limit(void **state)
{
	struct levels l = levels_of("sight limit,100\n"
				    "point,known elevation,bs,fs,bs dist,fs dist\n"
				    "BM,100.00,4.00,,100,\n"
				    "T,,4.00,4.00,100.5,101\n"
				    "BM,,,4.00,,100\n",
				    false);
	struct lines out = { .used = 0 };

	(void)state;
	say_findings(&out, &l);
	assert_int_equal(l.findings.of_code[RB_CODE_SIGHT_LIMIT], 2);
	assert_non_null(strstr(out.text, "4 sight-limit\n4 sight-limit\n"));
	rb_arena_free(l.arena);
}

/* By how much the backsights of a section are longer, or the foresights. */
static void balance_is_judged_either_way(void **state)
{
	static const struct {
		const char *back, *fore;
		bool told;
	} balances[] = { { "60", "50", false },
			 { "50", "60", false },
			 { "61", "50", true },
			 { "50", "61", true } };

	(void)state;
	for (size_t i = 0; i < sizeof balances / sizeof *balances; i++) {
		char text[300];
		struct levels l;

		snprintf(text, sizeof text,
			 "balance limit,10\npoint,known elevation,bs,fs,bs dist,fs dist\n"
			 "BM,100.00,4.00,,%s,\nBM,,,4.00,,%s\n",
			 balances[i].back, balances[i].fore);
		l = levels_of(text, false);
		assert_int_equal(l.findings.of_code[RB_CODE_UNBALANCED],
				 balances[i].told);
		rb_arena_free(l.arena);
	}
}

/* Which limit could not be judged is said, or that both could not. */
static void the_limit_is_named(void **state)
{
	static const struct {
		const char *keys, *name;
	} limits[] = {
		{ "sight limit,100\n", "sight limit" },
		{ "balance limit,10\n", "balance limit" },
		{ "sight limit,100\nbalance limit,10\n",
		  "sight limit and balance limit" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof limits / sizeof *limits; i++) {
		struct lines text = { .used = 0 };
		struct levels l;
		const char *name = "";

		write_run(&text, limits[i].keys, 3);
		l = levels_of(text.text, false);
		for (size_t k = 0; k < l.findings.count; k++)
			if (l.findings.item[k]->code == RB_CODE_LIMIT_NOT_JUDGED)
				name = l.findings.item[k]->argument[0].text;
		assert_string_equal(name, limits[i].name);
		rb_arena_free(l.arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(lines_without_lengths_are_named),
		cmocka_unit_test(only_what_closes_needs_them),
		cmocka_unit_test(each_sight_is_held_against_the_limit),
		cmocka_unit_test(balance_is_judged_either_way),
		cmocka_unit_test(the_limit_is_named),
	};

	return cmocka_run_group_tests_name("sight lengths", tests, NULL, NULL);
}
