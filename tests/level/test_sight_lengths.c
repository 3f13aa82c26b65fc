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
	{ "adjust,distance\n", 3, RB_CODE_LENGTHS_MISSING, "4, 5" },
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

#define COLUMNS "point,known elevation,bs,is,fs,bs dist,fs dist\n"

/* clang-format off */
static const struct suffice_case {
	const char *text;
	const char *finding; /* "": the lengths suffice */
} suffice[] = {
	/* the first setup counts, and so does a section that stays open */
	{ "tolerance,12 mm sqrt(km)\n" COLUMNS
	  "BM,100.00,4.00,,,,\nT,,4.00,,4.00,30,30\nBM,,4.00,,4.00,,30\n"
	  "U,,4.00,,4.00,,\nE,,,,4.00,,\n", "lengths-missing 3, 5, 6, 7" },
	{ "tolerance,12 mm sqrt(km)\n" COLUMNS
	  "BM,100.00,4.00,,,30,\nE,,,,4.00,,\n", "lengths-missing 4" },
	{ "adjust,distance\n" COLUMNS
	  "BM,100.00,4.00,,,,\nE,,,,4.00,,30\n", "lengths-missing 3" },
	{ "tolerance,12 mm sqrt(km)\n" COLUMNS
	  "BM,100.00,4.00,,,30,\nE,,,,4.00,,30\n", "" },
	/* a setup that is off the chain has no part in the length */
	{ "tolerance,12 mm sqrt(km)\n" COLUMNS
	  "BM,100.00,4.00,,,30,\nT,,4.00,,4.00,30,30\nS,,,,4.00,,\nBM,,,,4.00,,30\n"
	  "S,,4.00,,,,\nX,,,,4.00,,\n", "" },
	/* nor has an intermediate sight, even where there is no other */
	{ "tolerance,12 mm sqrt(km)\n" COLUMNS
	  "BM,100.00,4.00,,,30,\nS,,,4.00,,,\n", "" },
	{ "tolerance,12 mm sqrt(km)\n" COLUMNS
	  "BM,100.00,4.00,,,0,\nBM,,,,4.00,,0\n", "lengths-zero BM BM" },
	{ "adjust,distance\n" COLUMNS
	  "BM,100.00,4.00,,,0,\nE,,,,4.00,,0\n", "lengths-zero BM E" },
	{ "adjust,distance\n" COLUMNS
	  "BM,100.00,4.00,,,0,\nS,,,4.00,,,0\n", "lengths-zero BM S" },
	/* all that is wrong is said at once */
	{ "tolerance,12 mm sqrt(km)\n" COLUMNS
	  "BM,100.00,4.00,,,0,\nBM,,4.00,,4.00,30,0\nE,,,,4.00,,\n",
	  "lengths-missing 5 lengths-zero BM BM" },
	{ "tolerance,0.02 ft\nadjust,setups\n" COLUMNS
	  "BM,100.00,4.00,,,,\nBM,,,,4.00,,\n", "" },
};
/* clang-format on */

/* The errors, each with its texts. */
static void say_errors(struct lines *out, const struct levels *l)
{
	for (size_t i = 0; i < l->findings.count; i++) {
		const struct rb_finding *f = l->findings.item[i];

		if (rb_code_severity(f->code) != RB_ERROR)
			continue;
		say(out, "%s%s", out->used ? " " : "", rb_code_name(f->code));
		for (int a = 0; a < RB_ARGUMENTS; a++)
			if (f->argument[a].kind == RB_TEXT)
				say(out, " %s", f->argument[a].text);
	}
}

static void every_section_needs_them(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof suffice / sizeof *suffice; i++) {
		struct levels l = levels_of(suffice[i].text, false);
		struct lines got = { .used = 0 };

		say_errors(&got, &l);
		if (strcmp(got.text, suffice[i].finding) != 0 ||
		    (l.sections == NULL) != (*suffice[i].finding != '\0')) {
			print_error("row %zu: %s\n", i, got.text);
			wrong++;
		}
		rb_arena_free(l.arena);
	}
	assert_int_equal(wrong, 0);
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
		cmocka_unit_test(every_section_needs_them),
		cmocka_unit_test(each_sight_is_held_against_the_limit),
		cmocka_unit_test(balance_is_judged_either_way),
		cmocka_unit_test(the_limit_is_named),
	};

	return cmocka_run_group_tests_name("sight lengths", tests, NULL, NULL);
}
