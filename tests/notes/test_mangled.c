/* SPDX-License-Identifier: MIT */
/* test_mangled.c - names that were changed on the way, and those that only look so. */
#include "notes.h"

#include "notes/mangled.h"

/* clang-format off */
static const struct name_case {
	const char *name;
	enum rb_mangled mangled;
	const char *meant;
} name_cases[] = {
	{ "1.00E+05",         RB_MANGLED_BY_SHEET, "" },
	{ "1,00E+05",         RB_MANGLED_BY_SHEET, "" },
	{ "2.00E-01",         RB_MANGLED_BY_SHEET, "" },
	{ "2,00e-01",         RB_MANGLED_BY_SHEET, "" },
	{ "1E+05",            RB_MANGLED_BY_SHEET, "" },
	{ "1.5E+100",         RB_MANGLED_BY_SHEET, "" },
	{ "#NAME?",           RB_MANGLED_BY_SHEET, "" },
	{ "#DIV/0!",          RB_MANGLED_BY_SHEET, "" },
	{ "####",             RB_MANGLED_BY_SHEET, "" },
	{ "2-Sep",            RB_MANGLED_BY_SHEET, "" },
	{ "2026-05-03",       RB_MANGLED_BY_SHEET, "" },
	{ "09/02/26",         RB_MANGLED_BY_SHEET, "" },
	{ "05:03:00",         RB_MANGLED_BY_SHEET, "" },
	{ "Caf\u00C3\u00A9",  RB_MANGLED_LETTERS,  "Caf\u00E9" },
	{ "Stra\u00C3\u0178e", RB_MANGLED_LETTERS, "Stra\u00DFe" },
	{ "TP\u00E2\u20AC\u201C1", RB_MANGLED_LETTERS, "TP\u20131" },
	{ "Caf\u00C3\u0192\u00C2\u00A9", RB_MANGLED_LETTERS, "Caf\u00C3\u00A9" }, /* twice */
	{ "Caf\u00E9",        RB_NOT_MANGLED, "" },
	{ "\u00C2\u00E9ton",  RB_NOT_MANGLED, "" }, /* no UTF-8 as bytes */
	{ "\u03A3 FS",        RB_NOT_MANGLED, "" },
	{ "1E5",              RB_NOT_MANGLED, "" },
	{ "3E-2",             RB_NOT_MANGLED, "" },
	{ "MH 3E-02",         RB_NOT_MANGLED, "" },
	{ "E5",               RB_NOT_MANGLED, "" },
	{ "5-3",              RB_NOT_MANGLED, "" },
	{ "1.5",              RB_NOT_MANGLED, "" },
	{ "SEP-2",            RB_NOT_MANGLED, "" },
	{ "#1",               RB_NOT_MANGLED, "" },
	{ "",                 RB_NOT_MANGLED, "" },
};
/* clang-format on */

static void names(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof name_cases / sizeof *name_cases; i++) {
		const struct name_case *c = &name_cases[i];
		char meant[RB_MANGLED_NAME] = "?";
		enum rb_mangled mangled =
			rb_name_mangled(c->name, strlen(c->name), meant);

		wrong += differs(c->name, meant, c->meant);
		if (mangled == c->mangled)
			continue;
		print_error("'%s': got %d, wanted %d\n", c->name, (int)mangled,
			    (int)c->mangled);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* Whatever its length, it is taken, and what was meant always fits. */
static void lengths(void **state)
{
	char name[600] = "", meant[RB_MANGLED_NAME];

	(void)state;
	for (size_t length = 0; length + 4 < sizeof name; length += 4) {
		enum rb_mangled wanted = !length || length >= RB_MANGLED_NAME
						 ? RB_NOT_MANGLED
						 : RB_MANGLED_LETTERS;

		assert_int_equal(rb_name_mangled(name, length, meant), wanted);
		memcpy(name + length, "\u00C3\u00A9", 5);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(names),
		cmocka_unit_test(lengths),
	};

	return cmocka_run_group_tests_name("mangled", tests, NULL, NULL);
}
