/* SPDX-License-Identifier: MIT */
/* test_names.c - which cells name the same point, and which nearly do. */
#include "notes.h"

#include <stdlib.h>

#include "notes/names.h"

/* clang-format off */
static const struct fold_case {
	const char *text, *folded;
} fold_cases[] = {
	{ "",                  "" },
	{ "TP-1",              "tp-1" },
	{ "  BM   Red ",       "bm red" },
	{ "BM\tRed\nnail",     "bm red nail" },
	{ "TP\u20131",         "tp-1" }, /* en dash */
	{ "TP\u20111",         "tp-1" }, /* no-break hyphen */
	{ "TP\u20101",         "tp-1" },
	{ "TP\u20121",         "tp-1" },
	{ "TP\u20141",         "tp-1" },
	{ "TP\u20151",         "tp-1" },
	{ "TP\u22121",         "tp-1" }, /* minus */
	{ "BM\u00A01",         "bm 1" },
	{ "BM\u20091",         "bm 1" },
	{ "BM\u202F\u00A0 1",  "bm 1" },
	{ "\u00A0BM 1\u00A0",  "bm 1" },
	{ "\u00C9GOUT",        "\u00E9gout" },  /* Latin-1 capitals too */
	{ "\u00DC\u00D8\u00DE", "\u00FC\u00F8\u00FE" },
	{ "2\u00D72",          "2\u00D72" },    /* but not the times sign */
	{ "\u00DF",            "\u00DF" },
	{ "\u0416",            "\u0416" },      /* other letters stay */
	{ "0+50",              "0+50" },
};

static const struct near_case {
	const char *a, *b;
	bool nearly;
} near_cases[] = {
	{ "TP1",     "TP-1",      true },
	{ "TP 1",    "tp-1",      true },
	{ "T.P. 1",  "TP1",       true },
	{ "MH-1",    "(MH 1)",    true },
	{ "BM-1",    "BM-1",      true },
	{ "0+50",    "050",       true },
	{ "TP-1",    "TP-2",      false },
	{ "TP-1",    "TP-11",     false },
	{ "TP-11",   "TP-1",      false },
	{ "MH A",    "MH B",      false },
	{ "BM-1",    "BM-1 nail", false },
	{ "",        "",          false },
	{ "--",      "-",         false },
	{ "-",       "TP",        false },
};

static const struct ground_case {
	const char *name;
	bool ground;
} ground_cases[] = {
	{ "ground", true },        { "CL", true },          { "c/l", true },
	{ "Spot", true },          { " GROUND ", true },    { "(edge of lawn)", true },
	{ "[a]", true },           { "(a name of more than thirty-two letters in brackets)", true },
	{ "TP-1", false },         { "ground 1", true },   { "MH-1", false },
	{ "a name of more than thirty-two letters, no brackets", false },
	{ "GL", true },            { "G.L.", false },       { "spot 1", true },
	{ "Spot 12", true },       { "CL 0+50", true },     { "gr-3", false },
	{ "ground level", true },  { "OG", true },          { "floor drain 1", false },
	{ "spot A", false },       { "GL-BM", false },      { "G1", false },          { "spot #4", true },      { "", false },
};
/* clang-format on */

static void folds(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof fold_cases / sizeof *fold_cases; i++) {
		const struct fold_case *c = &fold_cases[i];
		char out[64];
		size_t length = rb_name_fold(out, c->text, strlen(c->text));

		wrong += differs(c->text, out, c->folded);
		wrong += length != strlen(c->folded);
	}
	assert_int_equal(wrong, 0);
}

static void nearly_the_same(void **state)
{
	char long_name[300];
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof near_cases / sizeof *near_cases; i++) {
		const struct near_case *c = &near_cases[i];

		if (rb_names_nearly_same(c->a, c->b) == c->nearly &&
		    rb_names_nearly_same(c->b, c->a) == c->nearly)
			continue;
		print_error("\"%s\", \"%s\"\n", c->a, c->b);
		wrong++;
	}
	assert_int_equal(wrong, 0);
	memset(long_name, 'a', sizeof long_name - 1);
	long_name[sizeof long_name - 1] = '\0';
	assert_false(rb_names_nearly_same(long_name, long_name)); /* not looked at */
}

static void ground_and_surfaces(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof ground_cases / sizeof *ground_cases; i++) {
		if (rb_name_is_ground(ground_cases[i].name) == ground_cases[i].ground)
			continue;
		print_error("\"%s\"\n", ground_cases[i].name);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* A table of names and the text that they stand in. */
struct table {
	struct rb_names names;
	char *text;
	size_t used;
};

static struct table table_new(uint32_t most, size_t bytes)
{
	struct table t = { .text = malloc(bytes), .used = 1 };

	assert_non_null(t.text);
	t.text[0] = '\0';
	t.names = (struct rb_names){ .arena = rb_arena_new(NULL), .text = t.text };
	t.names.name = rb_arena_take(t.names.arena, most, sizeof *t.names.name);
	return t;
}

static void table_end(struct table *t)
{
	rb_arena_free(t->names.arena);
	free(t->text);
}

static uint32_t number_of(struct table *t, const char *name)
{
	uint32_t number;

	assert_true(rb_names_find(&t->names, name, strlen(name), &number));
	if (number != RB_NO_POINT)
		return number;
	memcpy(t->text + t->used, name, strlen(name) + 1);
	rb_names_enter(&t->names, (uint32_t)t->used, &number);
	t->used += strlen(name) + 1;
	return number;
}

static void numbers_in_the_order_of_appearance(void **state)
{
	static const struct {
		const char *name;
		uint32_t number;
	} said[] = {
		{ "BM-1", 0 },      { "TP-1", 1 },      { "bm-1", 0 },    { "TP1", 2 },
		{ "TP\u20131", 1 }, { "TP-2", 3 },      { "  tp-2 ", 3 }, { "MH 1", 4 },
		{ "MH  1", 4 },     { "MH\u00A01", 4 }, { "MH1", 5 },     { "tp1", 2 },
	};
	struct table t = table_new(20, 1000);

	(void)state;
	for (size_t i = 0; i < sizeof said / sizeof *said; i++)
		assert_int_equal(number_of(&t, said[i].name), said[i].number);
	assert_int_equal(t.names.count, 6);
	assert_string_equal(t.text + t.names.name[4], "MH 1");
	table_end(&t);
}

/* TP1 after TP-1 is told, with the one that was there first; TP-2 is not. */
static void near_names_are_told(void **state)
{
	const bool known[10] = { true };
	struct table t = table_new(20, 1000);

	(void)state;
	number_of(&t, "BM-1"); /* known */
	number_of(&t, "TP-1");
	number_of(&t, "TP-2");
	number_of(&t, "TP1");        /* 3, near to 1 */
	number_of(&t, "BM-1 nail");  /* 4, the known name with words behind it */
	number_of(&t, "TP-1 spike"); /* 5, but TP-1 is not known */
	number_of(&t, "BM-11 nail");
	assert_true(rb_names_compare(&t.names, known));
	assert_int_equal(t.names.nears, 2);
	assert_int_equal(t.names.near[0].name, 3);
	assert_int_equal(t.names.near[0].other, 1);
	assert_int_equal(t.names.near[1].name, 4);
	assert_int_equal(t.names.near[1].other, 0);
	table_end(&t);
}

/* A whole book of names behind a known one is told by its first names. */
static void so_many_near_names_and_no_more(void **state)
{
	const bool known[RB_NEAR_NAMES + 10] = { true };
	struct table t = table_new(RB_NEAR_NAMES + 10, 4000);
	char name[32];

	(void)state;
	number_of(&t, "BM-1");
	for (int i = 0; i < RB_NEAR_NAMES + 5; i++) {
		snprintf(name, sizeof name, "BM-1 %d", i);
		number_of(&t, name);
	}
	assert_true(rb_names_compare(&t.names, known));
	assert_int_equal(t.names.nears, RB_NEAR_NAMES);
	assert_int_equal(t.names.near[RB_NEAR_NAMES - 1].name, RB_NEAR_NAMES);
	table_end(&t);
}

/* Known names of several words, and ones written after the longer name. */
static void known_names_with_words(void **state)
{
	bool known[10] = { false };
	struct table t = table_new(20, 1000);

	(void)state;
	number_of(&t, "bm  red NAIL in post");
	number_of(&t, "BM Red");
	number_of(&t, "BM Blue x");
	known[1] = true;
	assert_true(rb_names_compare(&t.names, known));
	assert_int_equal(t.names.nears, 1);
	assert_int_equal(t.names.near[0].name, 0);
	assert_int_equal(t.names.near[0].other, 1);
	table_end(&t);
}

/*
 * Names that have all the same letters and digits would stand in one place of the table:
 * ten thousand of them must not take ten thousand times ten thousand looks.
 */
static void many_names_of_the_same_letters(void **state)
{
	enum { NAMES = 60000, LONGEST = 40 };
	struct table t = table_new(NAMES, NAMES * LONGEST);
	char name[LONGEST];

	(void)state;
	for (int round = 0; round < 2; round++)
		for (uint32_t i = 0; i < NAMES; i++) {
			size_t used = 0;

			for (int bit = 0; bit < 16; bit++) {
				name[used++] = 'a';
				if (i >> bit & 1)
					name[used++] = '-';
			}
			name[used] = '\0';
			assert_int_equal(number_of(&t, name), i);
		}
	assert_int_equal(t.names.count, NAMES);
	assert_int_equal(t.names.nears, RB_NEAR_NAMES);
	table_end(&t);
}

static void a_name_of_any_length(void **state)
{
	enum { LENGTH = 70000 };
	struct table t = table_new(8, 4 * LENGTH);
	char *name = malloc(LENGTH + 1);

	(void)state;
	assert_non_null(name);
	memset(name, 'a', LENGTH);
	name[LENGTH] = '\0';
	assert_int_equal(number_of(&t, "short"), 0);
	assert_int_equal(number_of(&t, name), 1);
	name[LENGTH - 2] = 'A';
	assert_int_equal(number_of(&t, name), 1);
	name[LENGTH - 2] = 'b';
	assert_int_equal(number_of(&t, name), 2);
	free(name);
	table_end(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(folds),
		cmocka_unit_test(nearly_the_same),
		cmocka_unit_test(ground_and_surfaces),
		cmocka_unit_test(numbers_in_the_order_of_appearance),
		cmocka_unit_test(near_names_are_told),
		cmocka_unit_test(so_many_near_names_and_no_more),
		cmocka_unit_test(known_names_with_words),
		cmocka_unit_test(many_names_of_the_same_letters),
		cmocka_unit_test(a_name_of_any_length),
	};

	return cmocka_run_group_tests_name("names", tests, NULL, NULL);
}
