/* SPDX-License-Identifier: MIT */
/* test_cell.c - a refused cell becomes a finding of its own kind, with what was meant. */
#include "notes.h"

#include "measure/reading.h"
#include "notes/sheet.h"

/* clang-format off */
static const struct cell_case {
	const char *text;
	enum rb_unit unit;
	const char *code; /* NULL: it is read, or it is empty */
} cell_cases[] = {
	{ "5.29",            RB_FEET,        NULL },
	{ "",                RB_FEET,        NULL },
	{ "no wall",         RB_FEET,        "not-a-reading" },
	{ "5'-13\"",         RB_FEET,        "inches-over-eleven" },
	{ "5'-3 9/8\"",      RB_FEET,        "fraction-over-one" },
	{ "5'-3 1/0\"",      RB_FEET,        "zero-denominator" },
	{ "5 1/3",           RB_FEET,        "rounded-fraction" },
	{ "5.3.2",           RB_FEET,        "two-points" },
	{ "5,32",            RB_FEET,        "comma-decimal" },
	{ "5.3O",            RB_FEET,        "letter-for-digit" },
	{ "5-Mar",           RB_FEET,        "date-cell" },
	{ "2026-05-03",      RB_FEET,        "date-cell" },
	{ "05/03/26",        RB_FEET,        "date-cell" },
	{ "5:03:00 AM",      RB_FEET,        "time-cell" },
	{ "45780",           RB_FEET,        "date-serial" },
	{ "5 29",            RB_FEET,        "spaced-digits" },
	{ "1.00E+05",        RB_FEET,        "exponent" },
	{ "0x1F",            RB_FEET,        "hexadecimal" },
	{ "nan",             RB_FEET,        "not-a-number" },
	{ "#NAME?",          RB_FEET,        "sheet-error" },
	{ "5\u00E2\u20AC\u2122-3\u00E2\u20AC\u0153", RB_FEET, "mangled-characters" },
	{ "5.10",            RB_FEET_INCHES, "no-unit-mark" },
	{ "-8",              RB_FEET_INCHES, "no-unit-mark" },
	{ "5-3",             RB_FEET,        "dash-form" },
	{ "5 1/2",           RB_FEET,        "no-inch-mark" },
	{ "5.2911",          RB_FEET,        NULL },
	{ "5.2911111111",    RB_FEET,        "too-fine" },
	{ "1624",            RB_FEET,        "lost-point" },
	{ "-(0.42)",         RB_FEET,        "two-signs" },
	{ "5'-3\"",          RB_FEET_INCHES, NULL },
	{ "5-3",             RB_FEET_INCHES, NULL },
};
/* clang-format on */

static void each_refusal_has_its_code(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cell_cases / sizeof *cell_cases; i++) {
		const struct cell_case *c = &cell_cases[i];
		const struct rb_reading_rules rules = { c->unit, RB_OF_ROD, false,
							rb_length_of(25 * RB_FOOT) };
		const struct rb_cell cell = { c->text, strlen(c->text) };
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_findings findings;
		struct rb_reading reading;

		rb_findings_init(&findings, arena, "book.csv");
		reading = rb_sheet_length(&findings, cell,
					  rb_at(9, 2, "TP-2", "backsight"), &rules);
		wrong += differs(c->text,
				 findings.count ? rb_code_name(findings.item[0]->code)
						: "",
				 c->code ? c->code : "");
		if (rb_length_given(reading.value) != (!c->code && *c->text)) {
			print_error("\"%s\": value\n", c->text);
			wrong++;
		}
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* The finding keeps the cell's text, the place and the likely readings for itself. */
static void what_the_finding_keeps(void **state)
{
	const struct rb_reading_rules rules = { RB_FEET, RB_OF_ROD, false,
						rb_length_none() };
	char text[] = "5-Mar", point[] = "TP-2";
	const struct rb_cell cell = { text, strlen(text) };
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	const struct rb_finding *f;

	(void)state;
	rb_findings_init(&findings, arena, "book.csv");
	rb_sheet_length(&findings, cell, rb_at(9, 2, point, "backsight"), &rules);
	memset(text, 'x', sizeof text - 1); /* a record's cells are good until the next */
	memset(point, 'x', sizeof point - 1);
	f = findings.item[0];
	assert_int_equal(f->place.line, 9);
	assert_int_equal(f->place.cell, 2);
	assert_string_equal(f->place.point, "TP-2");
	assert_string_equal(f->place.heading, "backsight");
	assert_string_equal(f->argument[0].text, "5-Mar");
	assert_int_equal(f->argument[1].kind, RB_READING);
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_refusal_has_its_code),
		cmocka_unit_test(what_the_finding_keeps),
	};

	return cmocka_run_group_tests_name("cell", tests, NULL, NULL);
}
