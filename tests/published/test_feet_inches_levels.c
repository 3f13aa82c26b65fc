/* SPDX-License-Identifier: MIT */
/*
 * test_feet_inches_levels.c - differences of level read in feet and inches.
 *
 * The instruction manual of a builder's level, section 5.5, p. 9: two points, and the
 * underside of a beam with the rod upside down (read).  Modern Carpentry, "Building
 * Layout", fig. 6-17 in the 2008 ed., and Carpenters and Builders Math, Plans and
 * Specifications, fig. 6-1 (read).
 */
#include "run_book.h"

/* clang-format off */
static const struct {
	const char *what;
	const char *from, *to; /* readings; the first on a benchmark of 100 ft */
	const char *higher;    /* in inches: the second point above the first */
} differences[] = {
	{ "manual: 69 in at A, 40 in at B",      "69 in",         "40 in",          "29\"" },
	{ "manual: C below the line of sight, beam D above it",
						 "4 ft 6-1/2 in", "-7'-9 3/8\"",    "147.875\"" },
	{ "the same, the rod marked by a word",  "4 ft 6-1/2 in", "inv 7'-9 3/8\"", "147.875\"" },
	{ "Modern Carpentry",                    "5 ft 2 in",     "5 ft 9 in",      "-7\"" },
	{ "Carpenters and Builders Math, first", "6 ft 0 in",     "5 ft",           "12\"" },
	{ "the same, second point",              "6 ft 0 in",     "3 ft",           "36\"" },
};
/* clang-format on */

static rb_length difference(const char *from, const char *to)
{
	char csv[512], quoted[2][64];
	const char *texts[] = { from, to };
	struct run run;
	rb_length found;

	for (int i = 0; i < 2; i++) { /* an inch mark is doubled inside quotes */
		size_t used = 0;

		for (const char *s = texts[i]; *s; s++) {
			if (*s == '"')
				quoted[i][used++] = '"';
			quoted[i][used++] = *s;
		}
		quoted[i][used] = '\0';
	}
	snprintf(csv, sizeof csv,
		 "unit,ft-in\npoint,known elevation,bs,fs\nA,100,\"%s\",\nB,,,\"%s\"\n",
		 quoted[0], quoted[1]);
	run = run_text(csv, false);
	assert_non_null(run.adjusted);
	assert_int_equal(run.reduced->shots, 2);
	found = rb_length_sub(run.reduced->shot[1].elevation,
			      run.reduced->shot[0].elevation);
	run_end(&run);
	return found;
}

static void differences_of_level(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof differences / sizeof *differences; i++)
		wrong += wrong_length(differences[i].what,
				      difference(differences[i].from, differences[i].to),
				      differences[i].higher, RB_INCHES, true);
	assert_int_equal(wrong, 0);
}

/* D is 12 ft 3-7/8 in higher than C: 12.3229 ft (computed here). */
static void beam_in_feet(void **state)
{
	rb_length beam = difference("4 ft 6-1/2 in", "-7'-9 3/8\"");
	char text[RB_LENGTH_TEXT];

	(void)state;
	assert_true(rb_length_format(text, beam,
				     (struct rb_style){ RB_FEET_INCHES, 0, 16, 0 }));
	assert_string_equal(text, "12'-3 7/8\"");
	assert_int_equal(wrong_length("beam", beam, "12.3229", RB_FEET, false), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(differences_of_level),
		cmocka_unit_test(beam_in_feet),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
