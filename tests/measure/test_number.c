/* SPDX-License-Identifier: MIT */
/* test_number.c - digits, points and commas, and the exact length that they make. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "measure/number.h"

#define WHOLE   RB_NUMBER_WHOLE
#define DECIMAL RB_NUMBER_DECIMAL
#define POINTS  RB_NUMBER_POINTS
#define COMMA   RB_NUMBER_COMMA

/* clang-format off */
static const struct scan_case {
	const char *text;
	bool comma, elevation;
	enum rb_number_kind kind;
	int read;           /* bytes */
	int64_t digits;     /* of what is a number */
	int places, written, figures;
	bool cut, huge;
} scans[] = {
	{ "7",           false, false, WHOLE,   1, 7,      0, 0, 1, false, false },
	{ "007x",        false, false, WHOLE,   3, 7,      0, 0, 3, false, false },
	{ "5.",          false, false, DECIMAL, 2, 5,      0, 0, 1, false, false },
	{ ".5",          false, false, DECIMAL, 2, 5,      1, 1, 0, false, false },
	{ "5.290 ft",    false, false, DECIMAL, 5, 5290,   3, 3, 1, false, false },
	{ "5.3.2",       false, false, POINTS,  5, 0, 0, 0, 0, false, false },
	{ "5,32",        true,  false, DECIMAL, 4, 532,    2, 2, 1, false, false },
	{ "5,32",        false, false, COMMA,   4, 0, 0, 0, 0, false, false },
	{ "5,3,2",       true,  false, POINTS,  5, 0, 0, 0, 0, false, false },
	{ "1,234.5",     false, true,  DECIMAL, 7, 12345,  1, 1, 4, false, false },
	{ "1.234,5",     true,  true,  DECIMAL, 7, 12345,  1, 1, 4, false, false },
	{ "1.234,5",     false, true,  POINTS,  7, 0, 0, 0, 0, false, false },
	{ "1,234.5",     true,  true,  DECIMAL, 7, 12345,  1, 1, 4, false, false },
	{ "1,234.5",     false, false, COMMA,   7, 0, 0, 0, 0, false, false },
	{ "1,234.5",     true,  false, POINTS,  7, 0, 0, 0, 0, false, false },
	{ "123,456.7",   false, true,  DECIMAL, 9, 1234567, 1, 1, 6, false, false },
	{ "12,345,678.9", false, true, DECIMAL, 12, 123456789, 1, 1, 8, false, false },
	{ "1234,567.8",  false, true,  POINTS,  10, 0, 0, 0, 0, false, false },
	{ "1,23.5",      false, true,  POINTS,  6, 0, 0, 0, 0, false, false },
	{ "1,2345.6",    false, true,  POINTS,  8, 0, 0, 0, 0, false, false },
	{ ",234.5",      false, true,  POINTS,  6, 0, 0, 0, 0, false, false },
	{ "1,,234.5",    false, true,  POINTS,  8, 0, 0, 0, 0, false, false },
	{ "1,234.5.6",   false, true,  POINTS,  9, 0, 0, 0, 0, false, false },
	{ "1.5,234.5",   false, true,  POINTS,  9, 0, 0, 0, 0, false, false },
	{ "1,234",       false, true,  COMMA,   5, 0, 0, 0, 0, false, false },
	/* 18 figures are kept; more behind the point are dropped, more before it are not */
	{ "123456789012345678", false, false, WHOLE, 18, 123456789012345678, 0, 0, 18, false, false },
	{ "1234567890123456789", false, false, WHOLE, 19, 123456789012345678, 0, 0, 19, false, true },
	{ "0.123456789012345678", false, false, DECIMAL, 20, 123456789012345678, 18, 18, 1, false, false },
	{ "0.1234567890123456789", false, false, DECIMAL, 21, 123456789012345678, 18, 19, 1, true, false },
	{ "0.1234567890123456780", false, false, DECIMAL, 21, 123456789012345678, 18, 19, 1, false, false },
	{ "0.0000000000000000001", false, false, DECIMAL, 21, 0, 18, 19, 1, true, false },
	{ "0.00000000000000000010", false, false, DECIMAL, 22, 0, 18, 20, 1, true, false },
	{ "12345678901234567.89", false, false, DECIMAL, 20, 123456789012345678, 1, 2, 17, true, false },
};

static const struct length_case {
	const char *text;
	int64_t unit_nm;
	enum rb_refusal refusal;
	int64_t nm;
} lengths[] = {
	{ "5.29",          RB_FOOT,  RB_READ, 529 * RB_FOOT / 100 },
	{ "0.000000001",   RB_METRE, RB_READ, 1 },
	{ "0.0000000010",  RB_METRE, RB_READ, 1 },
	{ "0.0000000011",  RB_METRE, RB_REFUSE_FINE, -1 },
	{ "0.0000000000000000001", RB_METRE, RB_REFUSE_FINE, -1 },
	{ "10000",         RB_METRE, RB_READ, RB_LENGTH_MAX },
	{ "10000.0",       RB_METRE, RB_READ, RB_LENGTH_MAX },
	{ "10000.000000001", RB_METRE, RB_REFUSE_LONG, -1 },
	{ "10001",         RB_METRE, RB_REFUSE_LONG, -1 },
	{ "1234567890123456789", 1,  RB_REFUSE_LONG, -1 },
};

/* 5.25 is a 64th exactly; 5.2916666... is that of 5'-3 1/2". */
static const struct sixtyfourth_case {
	const char *text;
	bool read;
	int64_t parts; /* 768 to the foot */
} sixtyfourths[] = {
	{ "5.291667",    true,  4064 }, { "5.291666",    true,  4064 },
	{ "5.291665",    false, 0 },    { "5.291668",    false, 0 },
	{ "5.29167",     false, 0 },    /* five places: a rod is not read so, but may be */
	{ "5.250000",    false, 0 },    /* exact as it stands */
	{ "0.0013021",   true,  1 },    { "0.0013020",   true,  1 },
	{ "0.0013019",   false, 0 },    { "0.0013022",   false, 0 },
	{ "0.001302083333333333333", true, 1 },
	{ "5.2500000000000000000001", false, 0 }, /* a 64th has ended long before */
	{ "0.00390625",  false, 0 },    /* exactly 3/768 */
	{ "0.003906",    true,  3 },    { "0.003907",    false, 0 },
	{ "0.003905",    false, 0 },
	{ "0.007812",    true,  6 },    { "0.007813",    true,  6 }, /* half a place up */
	{ "32808.398950", false, 0 },   /* finer than the end of all lengths */
	{ "40000.291667", false, 0 },   /* beyond it */
	{ "1234567890123456789.291667", false, 0 },
};

static const struct rounded_case {
	const char *text;
	int64_t unit_nm;
	int places;
	int64_t nm;
} rounded[] = {
	{ "5.2912345", RB_FOOT, 4, 52912 * (RB_FOOT / 10000) },
	{ "5.29125",   RB_FOOT, 4, 52913 * (RB_FOOT / 10000) },
	{ "5.291249",  RB_FOOT, 4, 52912 * (RB_FOOT / 10000) },
	{ "5.29125",   RB_INCH, 0, 5 * RB_INCH },
	{ "5.5",       RB_INCH, 0, 6 * RB_INCH },
	{ "5",         RB_INCH, 3, 5 * RB_INCH },
};
/* clang-format on */

static enum rb_number_kind scan(const char **text, bool comma, bool elevation,
				struct rb_number *out)
{
	const struct rb_reading_rules rules = { RB_FEET,
						elevation ? RB_OF_ELEVATION : RB_OF_ROD,
						comma, rb_length_none() };

	return rb_number_scan(text, &rules, out);
}

static struct rb_number number_of(const char *text)
{
	struct rb_number n;
	enum rb_number_kind kind = scan(&text, false, false, &n);

	assert_true(kind == RB_NUMBER_WHOLE || kind == RB_NUMBER_DECIMAL);
	return n;
}

static bool is_number(const struct rb_number *n, const struct scan_case *c)
{
	if (c->kind != RB_NUMBER_WHOLE && c->kind != RB_NUMBER_DECIMAL)
		return true;
	return n->digits == c->digits && n->places == c->places &&
	       n->written == c->written && n->figures == c->figures && n->cut == c->cut &&
	       n->huge == c->huge;
}

static void scans_all_kinds(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof scans / sizeof *scans; i++) {
		const struct scan_case *c = &scans[i];
		const char *text = c->text;
		struct rb_number n;
		enum rb_number_kind kind = scan(&text, c->comma, c->elevation, &n);

		if (kind == c->kind && text - c->text == c->read && is_number(&n, c))
			continue;
		print_error("\"%s\"%s: %c, %d bytes, %lld, %d places, %d written, %d "
			    "figures%s%s\n",
			    c->text, c->comma ? " with a comma" : "", (char)kind,
			    (int)(text - c->text), (long long)n.digits, n.places,
			    n.written, n.figures, n.cut ? ", cut" : "",
			    n.huge ? ", huge" : "");
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void lengths_are_exact(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) {
		struct rb_number n = number_of(lengths[i].text);
		int64_t nm = -1;
		enum rb_refusal refusal = rb_number_length(&n, lengths[i].unit_nm, &nm);

		if (refusal == lengths[i].refusal && nm == lengths[i].nm)
			continue;
		print_error("\"%s\": refusal %d, %lld nm\n", lengths[i].text,
			    (int)refusal, (long long)nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void formula_decimals_are_64ths(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof sixtyfourths / sizeof *sixtyfourths; i++) {
		const struct sixtyfourth_case *c = &sixtyfourths[i];
		struct rb_number n = number_of(c->text);
		int64_t nm = 0;
		bool read = rb_number_sixtyfourth(&n, &nm);

		if (read == c->read && nm == c->parts * RB_SIXTYFOURTH)
			continue;
		print_error("\"%s\": %d, %lld 64ths\n", c->text, read,
			    (long long)(nm / RB_SIXTYFOURTH));
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void rounds_to_places(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof rounded / sizeof *rounded; i++) {
		struct rb_number n = number_of(rounded[i].text);
		int64_t nm = rb_number_rounded(&n, rounded[i].unit_nm, rounded[i].places);

		if (nm == rounded[i].nm)
			continue;
		print_error("\"%s\": %lld nm\n", rounded[i].text, (long long)nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void powers_of_ten(void **state)
{
	(void)state;
	assert_int_equal(rb_ten_to(0), 1);
	assert_int_equal(rb_ten_to(1), 10);
	assert_true(rb_ten_to(18) == INT64_C(1000000000000000000));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(scans_all_kinds),
		cmocka_unit_test(lengths_are_exact),
		cmocka_unit_test(formula_decimals_are_64ths),
		cmocka_unit_test(rounds_to_places),
		cmocka_unit_test(powers_of_ten),
	};

	return cmocka_run_group_tests_name("number", tests, NULL, NULL);
}
