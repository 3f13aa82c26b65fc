/* SPDX-License-Identifier: MIT */
/* test_book_keys.c - the keys of a book, and what they may say. */
#include "notes.h"

#define HEAD                      "point,known elevation,backsight,intermediate,foresight\n"
#define FT(feet, ten_thousandths) ((feet)*RB_FOOT + (ten_thousandths) * (RB_FOOT / 10000))

static void every_key(void **state)
{
	struct notes notes =
		notes_of("project,Larch St\ndate,2026-03-17\ncrew,Ann\n"
			 "student,Bo\ninstrument,No. 3\nrod,13\nweather,fog\n"
			 "datum,city\nunit,ft\ntolerance,0.02 ft\n"
			 "adjust,distance\ncollimation,+0.004 ft per 100 ft\n"
			 "sight limit,200\nbalance limit,50 ft\ndecimals,3\n"
			 "rod on,Top of  Pipe\n" HEAD "BM,100,4.27,,\n");
	const struct rb_book *book = notes.book;
	const struct rb_book_keys *key;

	(void)state;
	assert_non_null(book);
	key = &book->key;
	assert_string_equal(book->file, "book.csv");
	assert_string_equal(key->project, "Larch St");
	assert_string_equal(key->date, "2026-03-17");
	assert_string_equal(key->crew, "Ann");
	assert_string_equal(key->student, "Bo");
	assert_string_equal(key->instrument, "No. 3");
	assert_string_equal(key->weather, "fog");
	assert_string_equal(key->datum, "city");
	assert_true(key->rod_given);
	assert_int_equal(key->rod.nm, FT(13, 0));
	assert_int_equal(book->unit, RB_FEET);
	assert_true(key->tolerance.given);
	assert_int_equal(key->tolerance.coefficient.nm, FT(0, 200));
	assert_int_equal(key->tolerance_place.line, 10);
	assert_int_equal(key->tolerance_place.cell, 1);
	assert_int_equal(key->adjust, RB_BY_DISTANCE);
	assert_int_equal(key->adjust_place.line, 11);
	assert_int_equal(key->collimation.nm, FT(0, 40));
	assert_int_equal(key->collimation_run.nm, FT(100, 0));
	assert_int_equal(key->sight_limit.nm, FT(200, 0));
	assert_int_equal(key->balance_limit.nm, FT(50, 0));
	assert_int_equal(key->decimals, 3);
	assert_int_equal(key->rod_on, RB_ON_TOP_OF_PIPE);
	assert_int_equal(book->rod_on[0], RB_ON_UNSAID); /* by the row itself */
	notes_end(&notes);
}

static void no_keys_at_all(void **state)
{
	struct notes notes = notes_of(HEAD "BM,100,4.27,,\n");
	const struct rb_book_keys *key = &notes.book->key;

	(void)state;
	assert_string_equal(key->project, "");
	assert_string_equal(key->datum, "");
	assert_false(key->rod_given);
	assert_int_equal(key->rod.nm, FT(25, 0));
	assert_int_equal(notes.book->unit, RB_FEET);
	assert_false(key->tolerance.given);
	assert_int_equal(key->tolerance_place.line, 0);
	assert_int_equal(key->adjust, RB_BY_SETUPS);
	assert_int_equal(key->adjust_place.line, 0);
	assert_false(rb_length_given(key->collimation));
	assert_false(rb_length_given(key->sight_limit));
	assert_false(rb_length_given(key->balance_limit));
	assert_int_equal(key->decimals, -1);
	assert_int_equal(key->rod_on, RB_ON_UNSAID);
	notes_end(&notes);
}

/* clang-format off */
static const struct unit_case {
	const char *written;
	enum rb_unit unit;
} unit_cases[] = {
	{ "ft", RB_FEET },          { "Feet", RB_FEET },         { "decimal feet", RB_FEET },
	{ "in", RB_INCHES },        { "inches", RB_INCHES },     { "ft-in", RB_FEET_INCHES },
	{ "feet and inches", RB_FEET_INCHES },                   { "m", RB_METRES },
	{ "metres", RB_METRES },    { "meters", RB_METRES },     { "mm", RB_MILLIMETRES },
	{ "millimetres", RB_MILLIMETRES },
};

/* In metric books the rod is in metres, whatever the readings are in. */
static const struct limit_case {
	const char *unit, *rod;
	int64_t nm;
} limit_cases[] = {
	{ "ft",    "13",     FT(13, 0) },
	{ "in",    "13",     FT(13, 0) },
	{ "ft-in", "13",     FT(13, 0) },
	{ "ft-in", "13'-6\"", FT(13, 5000) },
	{ "m",     "5",      5 * RB_METRE },
	{ "mm",    "5",      5 * RB_METRE },
	{ "mm",    "4000 mm", 4 * RB_METRE },
	{ "m",     "16 ft",  FT(16, 0) },
};

static const struct key_case {
	const char *key, *findings;
} key_cases[] = {
	{ "unit,cubits",               "bad-unit@1:1" },
	{ "tolerance,some",            "bad-tolerance@1:1" },
	{ "adjust,by hand",            "bad-key@1:1" },
	{ "adjust: SETUPS",            "" },
	{ "adjust,None",               "" },
	{ "collimation,0.004",         "bad-key@1:1" },
	{ "collimation,0.004 per 100", "" },
	{ "collimation,-0.004/100",    "" },
	{ "collimation,0.004 per 0",   "bad-key@1:1" },
	{ "decimals,two",              "bad-key@1:1" },
	{ "decimals,7",                "bad-key@1:1" },
	{ "decimals,0",                "" },
	{ "rod on,lawn chair",         "bad-rod-on@1:1" },
	{ "rod,long",                  "not-a-reading@1:1" },
	{ "sight limit,5-Mar",         "date-cell@1:1" },
	{ "balance limit,-3",          "negative@1:1" },
};
/* clang-format on */

static void units(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof unit_cases / sizeof *unit_cases; i++) {
		char csv[ROOM] = "";
		struct notes notes;

		add_text(csv, "unit,%s\n" HEAD "BM,1 m,1 m,,\n", unit_cases[i].written);
		notes = notes_of(csv);
		if (!notes.book || notes.book->unit != unit_cases[i].unit) {
			print_error("%s\n", unit_cases[i].written);
			wrong++;
		}
		notes_end(&notes);
	}
	assert_int_equal(wrong, 0);
}

static void lengths_of_keys(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof limit_cases / sizeof *limit_cases; i++) {
		const struct limit_case *c = &limit_cases[i];
		char csv[ROOM] = "";
		struct notes notes;

		add_text(csv, "unit,%s\nrod,%s\n" HEAD "BM,1 m,1 m,,\n", c->unit, c->rod);
		notes = notes_of(csv);
		if (!notes.book || notes.book->key.rod.nm != c->nm) {
			print_error("%s, %s\n", c->unit, c->rod);
			wrong++;
		}
		notes_end(&notes);
	}
	assert_int_equal(wrong, 0);
}

static void values_of_keys(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof key_cases / sizeof *key_cases; i++) {
		char csv[ROOM] = "", found[ROOM];

		add_text(csv, "%s\n" HEAD "BM,100.00,4.27,,\n", key_cases[i].key);
		wrong += differs(key_cases[i].key, codes_of(csv, found),
				 key_cases[i].findings);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_key),      cmocka_unit_test(no_keys_at_all),
		cmocka_unit_test(units),          cmocka_unit_test(lengths_of_keys),
		cmocka_unit_test(values_of_keys),
	};

	return cmocka_run_group_tests_name("keys of a book", tests, NULL, NULL);
}
