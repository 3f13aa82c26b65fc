/* SPDX-License-Identifier: MIT */
/*
 * test_ghilani_wolf_5.c - problems on differential levelling.
 *
 * C. D. Ghilani and P. R. Wolf, Elementary Surveying, 14th ed., ch. 5.  The readings are
 * read; all that comes out of them is computed here, as the problems print no solution.
 */
#include "run_book.h"

/* clang-format off */
/* A line from BM Hydrant to BM Rock, in feet, with balanced sights: each setup -0.01. */
static const struct printed_row line[] = {
	{ "Hydrant", "5869.31", "2.68",  "", "",     "5871.99", NULL,    "5869.31", "5869.31" },
	{ "TP1",     "",        "10.83", "", "5.59", "5877.23", "-2.91", "5866.40", "5866.39" },
	{ "BM1",     "",        "10.61", "", "6.46", "5881.38", "+4.37", "5870.77", "5870.75" },
	{ "BM2",     "",        "7.57",  "", "8.91", "5880.04", "+1.70", "5872.47", "5872.44" },
	{ "TP2",     "",        "9.01",  "", "5.14", "5883.91", "+2.43", "5874.90", "5874.86" },
	{ "Rock",    "5880.03", "",      "", "3.83", NULL,      "+5.18", "5880.08", "5880.03" },
};

/* Problem 5.12: a loop of 1500 m, in metres.  The copy seen lists the readings without
 * columns; the first five as backsights and the last five as foresights is an inference,
 * the only way in which the loop closes. */
static const struct printed_row loop[] = {
	{ "BM7", "852.045", "4.388", "", "",      "856.433", NULL,     "852.045", "852.045" },
	{ "TP1", "",        "6.907", "", "4.538", "858.802", "-0.150", "851.895", "851.893" },
	{ "BM8", "",        "4.680", "", "8.800", "854.682", "-1.893", "850.002", "849.998" },
	{ "TP2", "",        "3.730", "", "5.978", "852.434", "-1.298", "848.704", "848.698" },
	{ "TP3", "",        "8.464", "", "5.245", "855.653", "-1.515", "847.189", "847.181" },
	{ "BM7", "",        "",      "", "3.598", NULL,      "+4.866", "852.055", "852.045" },
};

/* The order of the loop: it misses by 10 mm.  Coefficients of third order, second order
 * class II and class I (FGCC 1984: value from memory). */
static const struct {
	const char *tolerance, *allowed;
	enum rb_verdict verdict;
} orders[] = {
	{ "12 mm sqrt(km)", "0.01470", RB_CLOSES },
	{ "8 mm sqrt(km)",  "0.00980", RB_BEYOND }, /* by 0.2 mm */
	{ "6 mm sqrt(km)",  "0.00735", RB_BEYOND },
};

/* Problem 5.37: what may be missed, in millimetres. */
static const struct {
	const char *tolerance;
	int64_t kilometres;
	const char *allowed;
} limits[] = {
	{ "12 mm sqrt(km)", 20, "53.67" }, /* third-order loop */
	{ "6 mm sqrt(km)",  10, "18.97" }, /* second-order class I section */
	{ "4 mm sqrt(km)",  30, "21.91" }, /* first-order class I loop */
};
/* clang-format on */

static void hydrant_to_rock(void **state)
{
	const struct printed_page page = {
		.keys = "tolerance,0.02 ft sqrt(setups)\nrod,13\n",
		.row = line,
		.rows = sizeof line / sizeof *line,
		.sum_backsight = "40.70",
		.sum_foresight = "29.93",
		.rises = "13.68",
		.falls = "2.91",
		.misclosure = "0.05",
		.allowed =
			"0.0447", /* 0.02 ft times the root of 5: the line misses that */
		.setups = 5,
		.verdict = RB_BEYOND,
		.adjust_anyway = true,
	};

	(void)state;
	assert_int_equal(wrong_on_page(&page), 0);
}

static void problem_5_12(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof orders / sizeof *orders; i++) {
		char keys[100];
		const struct printed_page page = {
			.keys = keys,
			.row = loop,
			.rows = sizeof loop / sizeof *loop,
			.distances = "150",
			.sum_backsight = "28.169",
			.sum_foresight = "28.159",
			.rises = "4.866",
			.falls = "4.856",
			.misclosure = "0.010",
			.allowed = orders[i].allowed,
			.setups = 5,
			.verdict = orders[i].verdict,
			.adjust_anyway = true,
		};

		snprintf(keys, sizeof keys, "unit,m\nrod,10\ntolerance,%s\n",
			 orders[i].tolerance);
		wrong += wrong_on_page(&page);
	}
	assert_int_equal(wrong, 0);
}

static void problem_5_37(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof limits / sizeof *limits; i++) {
		struct rb_tolerance t;
		rb_length length = rb_length_of(limits[i].kilometres * 1000 * RB_METRE);

		assert_true(rb_tolerance_parse(limits[i].tolerance,
					       strlen(limits[i].tolerance), RB_METRES,
					       false, &t));
		wrong += wrong_length(limits[i].tolerance,
				      rb_tolerance_allowed(&t, length, 1),
				      limits[i].allowed, RB_MILLIMETRES, false);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hydrant_to_rock),
		cmocka_unit_test(problem_5_12),
		cmocka_unit_test(problem_5_37),
	};

	return cmocka_run_group_tests_name("Ghilani and Wolf, ch. 5", tests, NULL, NULL);
}
