/* SPDX-License-Identifier: MIT */
/* Cells of a plan: a value, nothing, or a finding; and the hundreds that +10 takes. */
#include "job.h"

#include <stdlib.h>

#include "drain/cells.h"

struct desk {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_cells cells;
};

static void sit(struct desk *d, bool decimal_comma)
{
	d->arena = rb_arena_new(NULL);
	rb_findings_init(&d->findings, d->arena, "plan.csv");
	d->cells = (struct rb_cells){ .arena = d->arena,
				      .findings = &d->findings,
				      .unit = RB_FEET,
				      .decimal_comma = decimal_comma };
}

static struct rb_cell cell(const char *text)
{
	return (struct rb_cell){ text, strlen(text) };
}

static void dashes_alone_are_empty(void **state)
{
	static const char *const empty[] = { "",       "-",      "\u2013",
					     "\u2014", "\u2212", "\u2011",
					     "\u2010", "--",     "\u2013\u2013-" };
	static const char *const full[] = {
		"0", "- 1", "-1", "x", "\u2013x", "--\u00BD"
	};

	(void)state;
	for (size_t i = 0; i < sizeof empty / sizeof *empty; i++)
		assert_true(rb_cell_is_empty(cell(empty[i])));
	for (size_t i = 0; i < sizeof full / sizeof *full; i++)
		assert_false(rb_cell_is_empty(cell(full[i])));
}

static void lengths_come_with_their_findings(void **state)
{
	/* clang-format off */
	static const struct { const char *text; int64_t nm; enum rb_code code; size_t findings; } cases[] = {
		{ "5.29",      529 * RB_FOOT / 100, RB_CODE_ODD_FRACTION, 0 },
		{ "-",         RB_NOT_GIVEN_NM,     RB_CODE_ODD_FRACTION, 0 },
		{ "3 1/10\"",  31 * RB_INCH / 10,   RB_CODE_ODD_FRACTION, 1 },
		{ "-(3 1/10\")", RB_NOT_GIVEN_NM,   RB_CODE_INVERTED_MARK,      1 },
		{ "5'-13\"",   RB_NOT_GIVEN_NM,     RB_CODE_INCHES, 1 },
	};
	/* clang-format on */
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct desk d;
		rb_length length;

		sit(&d, false);
		length = rb_cells_length(&d.cells, cell(cases[i].text), rb_in_file(),
					 RB_OF_TAPE);
		if (length.nm != cases[i].nm || d.findings.count != cases[i].findings ||
		    d.findings.of_code[cases[i].code] != cases[i].findings) {
			print_error("\"%s\": %lld nm\n", cases[i].text,
				    (long long)length.nm);
			job_print(&d.findings);
			wrong++;
		}
		rb_arena_free(d.arena);
	}
	assert_int_equal(wrong, 0);
}

/* clang-format off */
static const struct slope_case {
	const char *text;
	bool comma;
	int64_t fall, run; /* of what is read */
	enum rb_code code; /* of what is not */
} slopes[] = {
	{ "1:48",      false, 1,  48,   RB_CODES },
	{ "",          false, 0,  0,    RB_CODES },
	{ "-",         false, 0,  0,    RB_CODES },
	{ "2.5 %",     false, 25, 1000, RB_CODES },
	{ "2,5 %",     true,  25, 1000, RB_CODES },
	{ "2,5 %",     false, 0,  0,    RB_CODE_BAD_SLOPE },
	{ "2",         false, 0,  0,    RB_CODE_SLOPE_BARE },
	{ "48:1",      false, 0,  0,    RB_CODE_SLOPE_REVERSED },
	{ "1:0",       false, 0,  0,    RB_CODE_SLOPE_ZERO_RUN },
	{ "steep",     false, 0,  0,    RB_CODE_BAD_SLOPE },
	{ "01:48:00",  false, 0,  0,    RB_CODE_SLOPE_CHANGED }, /* was 1:48 */
	{ "2:36",      false, 0,  0,    RB_CODE_SLOPE_CHANGED }, /* was 1:96 */
	{ "02:36",     false, 0,  0,    RB_CODE_SLOPE_CHANGED },
	{ "10:00",     false, 0,  0,    RB_CODE_SLOPE_CHANGED },
	{ "01:48",     false, 1,  48,   RB_CODES },
	{ "1:100",     false, 1,  100,  RB_CODES },
	{ "0.5:24",    false, 5,  240,  RB_CODES },
	{ "-1:48",     false, -1, 48,   RB_CODES },
	{ "`",         false, 0,  0,    RB_CODE_BAD_SLOPE }, /* nothing behind a mark */
	{ "4-Jan",     false, 0,  0,    RB_CODE_SLOPE_CHANGED },
	{ "45780",     false, 0,  0,    RB_CODE_SLOPE_BARE },
	{ "100 ft/ft", false, 0,  0,    RB_CODE_SLOPE_STEEP },
	{ "2,5 %                                                                            "
	  "                                                                                 ",
	  true, 0, 0, RB_CODE_BAD_SLOPE }, /* longer than any slope */
};
/* clang-format on */

/* The cell is read where it stands: nothing behind it is looked at. */
static rb_slope read_alone(struct rb_cells *cells, const char *text)
{
	size_t length = strlen(text);
	char *own = malloc(length ? length : 1);
	rb_slope slope;

	assert_non_null(own);
	memcpy(own, text, length);
	slope = rb_cells_slope(cells, (struct rb_cell){ own, length }, rb_in_file());
	free(own);
	return slope;
}

static void slopes_come_with_their_findings(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof slopes / sizeof *slopes; i++) {
		const struct slope_case *c = &slopes[i];
		struct desk d;
		rb_slope slope;
		bool right;

		sit(&d, c->comma);
		slope = read_alone(&d.cells, c->text);
		right = rb_slope_given(slope) == (c->run != 0) &&
			slope.fall.nm * c->run == slope.run.nm * c->fall;
		if (c->code == RB_CODES)
			right = right && d.findings.count == 0;
		else
			right = right && d.findings.of_code[c->code] == 1;
		if (!right) {
			print_error("\"%s\": %lld over %lld\n", c->text,
				    (long long)slope.fall.nm, (long long)slope.run.nm);
			job_print(&d.findings);
			wrong++;
		}
		rb_arena_free(d.arena);
	}
	assert_int_equal(wrong, 0);
}

/* One after the other: what is read with a plus is remembered. */
/* What fills all the room there is before the plus is nothing to complete with. */
static void hundreds_with_many_blanks_are_not_kept(void **state)
{
	struct desk d;
	int plus = 0;

	(void)state;
	for (size_t figures = sizeof d.cells.hundred - 1;
	     figures <= sizeof d.cells.hundred; figures++) {
		char text[40] = "";

		memset(text, ' ', figures);
		text[0] = '7';
		memcpy(text + figures, "+00", 4);
		sit(&d, false);
		rb_cells_chainage(&d.cells, cell(text), rb_in_file(), &plus);
		assert_int_equal(strlen(d.cells.hundred),
				 figures < sizeof d.cells.hundred ? figures : 0);
		rb_arena_free(d.arena);
	}
}

static void plus_ten_takes_the_hundreds_before(void **state)
{
	/* clang-format off */
	static const struct { const char *text; int64_t feet; int plus; } cases[] = {
		{ "+10",      -1,   0 },
		{ "50",       50,   0 },
		{ "+10",      -1,   0 },
		{ "12+50",    1250, 2 },
		{ "+60",      1260, 2 },
		{ "-",        -1,   0 },
		{ "+70",      1270, 2 },
		{ "3+25.5 ft", -2,  2 }, /* 325.5 */
		{ "+10",      310,  2 }, /* not 32+10 */
		{ "1+050",    1050, 3 },
		{ "+060",     1060, 3 },
		{ "+5",       -1,   0 },
		{ "x+50",     -1,   0 },
		{ "+70",      170,  2 },
	};
	/* clang-format on */
	struct desk d;
	size_t refused = 0;
	int wrong = 0;

	(void)state;
	sit(&d, false);
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		int plus = 9;
		rb_length got = rb_cells_chainage(&d.cells, cell(cases[i].text),
						  rb_in_file(), &plus);
		int64_t nm =
			cases[i].feet == -2 ? 651 * RB_FOOT / 2 : cases[i].feet * RB_FOOT;

		refused += cases[i].feet == -1 && strcmp(cases[i].text, "-") != 0;
		if (cases[i].feet == -1)
			nm = RB_NOT_GIVEN_NM;
		if (got.nm == nm && plus == cases[i].plus)
			continue;
		print_error("row %zu, \"%s\": %lld nm, plus %d\n", i, cases[i].text,
			    (long long)got.nm, plus);
		wrong++;
	}
	assert_int_equal(wrong, 0);
	assert_int_equal(d.findings.of_code[RB_CODE_BAD_CHAINAGE], refused);
	rb_arena_free(d.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(dashes_alone_are_empty),
		cmocka_unit_test(lengths_come_with_their_findings),
		cmocka_unit_test(slopes_come_with_their_findings),
		cmocka_unit_test(plus_ten_takes_the_hundreds_before),
		cmocka_unit_test(hundreds_with_many_blanks_are_not_kept),
	};

	return cmocka_run_group_tests_name("cells", tests, NULL, NULL);
}
