/* SPDX-License-Identifier: MIT */
/* test_expression.c - arithmetic on lengths: what it comes to, and what is refused where.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>

#include "measure/expression.h"
#include "written.h"

#define TIMES  "\xC3\x97"
#define DOT    "\xC2\xB7"
#define DIVIDE "\xC3\xB7"

/* More marks than a length has: each is written out as five. */
#define FIVE_HALVES HALF HALF HALF HALF HALF
#define HALVES      FIVE_HALVES FIVE_HALVES FIVE_HALVES FIVE_HALVES

/* clang-format off */
static const struct {
	const char *text;
	enum rb_unit unit;
	int64_t nm;
	bool exact;
	int steps;
} read_cases[] = {
	/* one length, in every notation */
	{ "5.29",                    FT, HUNDREDTHS(529),   true, 0 },
	{ "5'-3 1/2\"",              FT, WANTED,            true, 0 },
	{ "5' 3 1/2''",              FT, WANTED,            true, 0 },
	{ "5-3-1/2",                 FI, WANTED,            true, 0 },
	{ "63 1/2\"",                FT, WANTED,            true, 0 },
	{ "63.5",                    IN, WANTED,            true, 0 },
	{ "63 1/2",                  IN, WANTED,            true, 0 },
	{ "1.613 m",                 FT, MILLI(1613),       true, 0 },
	{ "1613",                    MM, MILLI(1613),       true, 0 },
	{ "-0'-2\"",                 FT, -2 * RB_INCH,      true, 0 },
	{ "+5.29",                   FT, HUNDREDTHS(529),   true, 0 },
	{ " 5.29 ",                  FT, HUNDREDTHS(529),   true, 0 },
	{ "5" PRIME "-3" HALF DOUBLE_PRIME, FT, WANTED,     true, 0 },
	/* sums and differences */
	{ "5'-3\" + 2'-11\"",        FT, FEET_64(8, 128),   true, 1 },
	{ "5'-3\"+2'-11\"",          FT, FEET_64(8, 128),   true, 1 },
	{ "5+3",                     FT, HUNDREDTHS(800),   true, 1 },
	{ "104'-3 1/2\" - 96'-9\"",  FT, FEET_64(7, 416),   true, 1 },
	{ "(104'-3 1/2\")-96'-9\"",  FT, FEET_64(7, 416),   true, 1 },
	{ "104'-3 1/2\" " MINUS " 96'-9\"",   FT, FEET_64(7, 416), true, 1 },
	{ "104'-3 1/2\" " EN_DASH " 96'-9\"", FT, FEET_64(7, 416), true, 1 },
	{ "5.29 + 3.1",              FT, HUNDREDTHS(839),   true, 1 },
	{ "100.00 + 4.27 - 6.03",    FT, HUNDREDTHS(9824),  true, 2 },
	{ "1.613 - 0.4",             M,  MILLI(1213),       true, 1 },
	{ "1.613 m + 5'-3 1/2\"",    FT, MILLI(1613) + WANTED, true, 1 },
	{ "5.29 ft - 63 1/2\"",      FT, HUNDREDTHS(529) - WANTED, true, 1 },
	{ "5' - 3\"",                FT, FEET_64(4, 576),   true, 1 },
	{ "5 ft - 3 in",             FT, FEET_64(4, 576),   true, 1 },
	{ "5'-3\"",                  FT, FEET_64(5, 192),   true, 0 },
	{ "5' - -3'",                FT, 8 * RB_FOOT,       true, 1 },
	{ "-5' + 8'",                FT, 3 * RB_FOOT,       true, 1 },
	{ "2' - 5'",                 FT, -3 * RB_FOOT,      true, 1 },
	{ "3 ft 6 in + 18 in",       FT, 5 * RB_FOOT,       true, 1 },
	{ "5-3-1/2 + 2\"",           FI, FEET_64(5, 352),   true, 1 },
	/* factors */
	{ "8'-6 3/4\" / 3",          FT, FEET_64(2, 656),   true, 1 },
	{ "8'-6 3/4\"/3",            FT, FEET_64(2, 656),   true, 1 },
	{ "8'-6" THREE_QUARTERS "\" " DIVIDE " 3", FT, FEET_64(2, 656), true, 1 },
	{ "5'-3 1/2\" * 2",          FT, FEET_64(10, 448),  true, 1 },
	{ "5'-3 1/2\" x 2",          FT, FEET_64(10, 448),  true, 1 },
	{ "5'-3 1/2\" X 2",          FT, FEET_64(10, 448),  true, 1 },
	{ "5'-3 1/2\" " TIMES " 2",  FT, FEET_64(10, 448),  true, 1 },
	{ "5'-3 1/2\" " DOT " 2",    FT, FEET_64(10, 448),  true, 1 },
	{ "2 * 5'-3 1/2\"",          FT, FEET_64(10, 448),  true, 1 },
	{ "2*5'-3 1/2\"",            FT, FEET_64(10, 448),  true, 1 },
	{ "1/2 * 5'",                FT, FEET_64(2, 384),   true, 1 },
	{ "5' * 1/2",                FT, FEET_64(2, 384),   true, 1 },
	{ "5' * 1 1/2",              FT, FEET_64(7, 384),   true, 1 },
	{ "5' * .5",                 FT, FEET_64(2, 384),   true, 1 },
	{ "5' * 0.25",               FT, FEET_64(1, 192),   true, 1 },
	{ "1/4\" * 50",              FT, FEET_64(1, 32),    true, 1 },
	{ "50 * 1/8\"",              FT, FEET_64(0, 400),   true, 1 },
	{ "5' / 1/2",                FT, 10 * RB_FOOT,      true, 1 },
	{ "5' / 2 / 2",              FT, FEET_64(1, 192),   true, 2 },
	{ "5'/2/2",                  FT, FEET_64(1, 192),   true, 2 },
	{ "5' * -2",                 FT, -10 * RB_FOOT,     true, 1 },
	{ "10' / 2' * 3'",           FT, 15 * RB_FOOT,      true, 2 },
	/* order and brackets */
	{ "1' + 2' * 3",             FT, 7 * RB_FOOT,       true, 2 },
	{ "(1' + 2') * 3",           FT, 9 * RB_FOOT,       true, 2 },
	{ "3 * (1' + 2')",           FT, 9 * RB_FOOT,       true, 2 },
	{ "(1 + 2) * 3'",            FT, 9 * RB_FOOT,       true, 2 },
	{ "10' - 2' - 3'",           FT, 5 * RB_FOOT,       true, 2 },
	{ "10' - (2' - 3')",         FT, 11 * RB_FOOT,      true, 2 },
	{ "-(2' + 3')",              FT, -5 * RB_FOOT,      true, 1 },
	{ "(((5')))",                FT, 5 * RB_FOOT,       true, 0 },
	{ "(5'-3\" + 9\")/(1 + 2)",  FT, 2 * RB_FOOT,       true, 3 },
	/* the examples of the trade: a riser in three, a rod in tenths beside a tape */
	{ "12' 3-1/2\" + 3/4\"",  FT, FEET_64(12, 272),   true, 1 },
	{ "2 * (5'-3 1/2\" - 4.29 ft)", FT, 2 * (WANTED - HUNDREDTHS(429)), true, 2 },
	{ "104.27 ft - 98.24 ft",  FT, HUNDREDTHS(603),    true, 1 },
	{ "1.613 m + 5'",          FT, MILLI(1613) + 5 * RB_FOOT, true, 1 },
	/* an x needs no blanks; a minus none beside a bracket */
	{ "2x5'",                  FT, 10 * RB_FOOT,       true, 1 },
	{ "10x5'",                 FT, 50 * RB_FOOT,       true, 1 },
	{ "5'-3 1/2\"x2",          FT, FEET_64(10, 448),   true, 1 },
	{ "5'-(3')",               FT, 2 * RB_FOOT,        true, 1 },
	{ "(5')-3'",               FT, 2 * RB_FOOT,        true, 1 },
	{ "(5')-(3')",             FT, 2 * RB_FOOT,        true, 1 },
	{ "5'- (3')",              FT, 2 * RB_FOOT,        true, 1 },
	/* blanks and fractions of print */
	{ "5'" NBSP "-" NBSP "3\"", FT, FEET_64(4, 576),   true, 1 },
	{ "5'" THIN MINUS THIN "3\"", FT, FEET_64(4, 576), true, 1 },
	{ NBSP "5' - 3\"" NBSP,    FT, FEET_64(4, 576),    true, 1 },
	{ "5' " TIMES " " HALF,    FT, FEET_64(2, 384),    true, 1 },
	{ "1" HALF "*2'",          FT, 3 * RB_FOOT,        true, 1 },
	{ "2'*1" HALF " + 1'",     FT, 4 * RB_FOOT,        true, 2 },
	{ "63" HALF " + " THREE_QUARTERS, IN, FEET_64(5, 272), true, 1 },
	{ "5-3 - 2-11",            FI, FEET_64(2, 256),    true, 1 },
	{ "5-3-1/2 / 2",           FI, WANTED / 2,         true, 1 },
	{ "2 * 5-3-1/2",           FI, WANTED * 2,         true, 1 },
	/* rounded once, at the end */
	{ "1' / 3",                  FT, 101600000,         true,  1 },
	{ "1' / 7",                  FT, 43542857,          false, 1 },
	{ "1' / 7 * 7",              FT, RB_FOOT,           true,  2 },
	{ "-1' / 7",                 FT, -43542857,         false, 1 },
	{ "1 mm / 64",               FT, 15625,             true,  1 },
	{ "1 mm / 1000000 / 2",      FT, 1,                 false, 2 }, /* half: away */
	{ "-1 mm / 1000000 / 2",     FT, -1,                false, 2 },
	{ "0.00001 ft / 3",          FT, 1016,              true,  1 },
	{ "10000 m * 1",             FT, RB_LENGTH_MAX,     true,  1 },
	{ "-10000 m * 1",            FT, -RB_LENGTH_MAX,    true,  1 },
	/* brackets side by side nest no deeper */
	{ "(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')+(1')",
				     FT, 17 * RB_FOOT,      true,  16 },
};

static const struct {
	const char *text;
	enum rb_unit unit;
	enum rb_expression_refusal refusal;
	enum rb_refusal reading; /* of RB_EXPRESSION_LENGTH */
	size_t where;
} refused_cases[] = {
	{ "",                    FT, RB_EXPRESSION_EMPTY,       RB_READ, 0 },
	{ "  \t",                FT, RB_EXPRESSION_EMPTY,       RB_READ, 0 },
	{ "5'-13\"",             FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_INCHES, 3 },
	{ "5'-13\" + 2'",        FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_INCHES, 3 },
	{ "2' + 5'-13\"",        FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_INCHES, 8 },
	{ "3 9/8\" * 2",         FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_FRACTION, 2 },
	{ "3/0\" * 2",           FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_ZERO, 0 },
	{ "5 29",                FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_SPACED, 0 },
	{ "5-Mar",               FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_DATE, 0 },
	{ "5-3",                 FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_DASHED, 0 },
	{ "5.10",                FI, RB_EXPRESSION_LENGTH,      RB_REFUSE_BARE, 0 },
	{ "5.10 + 2.1",          FI, RB_EXPRESSION_LENGTH,      RB_REFUSE_BARE, 0 },
	{ "5 1/2",               FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_UNMARKED, 0 },
	{ "20000 m",             FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_LONG, 0 },
	/* told as it stands: not 3'-1" over 2, not 5 less 3, not 5'-1" */
	{ "5' - 3-1/2",          FI, RB_EXPRESSION_LENGTH,      RB_REFUSE_UNMARKED, 5 },
	{ "3-1/2 * 2",           FI, RB_EXPRESSION_LENGTH,      RB_REFUSE_UNMARKED, 0 },
	{ "5' + 5-3",            FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_DASHED, 5 },
	{ "5' + 5-Mar",          FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_DATE, 5 },
	{ "5' + 5.3.2",          FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_POINTS, 5 },
	{ "5' * 1,5",            FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_COMMA, 5 },
	{ "20000 m * 2",         FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_LONG, 0 },
	{ "0x1F",                FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_HEX, 0 },
	{ "1' + 5'-3\"-1/2\"",   FT, RB_EXPRESSION_SYNTAX,      RB_READ, 10 },
	{ "1' + 104.27-98.24",   FT, RB_EXPRESSION_SYNTAX,      RB_READ, 11 },
	{ "104.27-98.24",        FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_TEXT, 0 },
	{ "5' -3'",              FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_TEXT, 0 },
	{ "5.29 * 2",            FT, RB_EXPRESSION_NUMBER,      RB_READ, 0 },
	{ "(5.29 + 3.10) * 2",   FT, RB_EXPRESSION_NUMBER,      RB_READ, 0 },
	{ "5' * 1234567890123456", FT, RB_EXPRESSION_BIG,       RB_READ, 5 },
	/* a minus without blanks is none: 5'-3"-1/2" may be 5'-3 1/2" */
	{ "5'-3\"-1/2\"",        FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_TEXT, 9 },
	{ "'",                   FT, RB_EXPRESSION_EMPTY,       RB_READ, 0 },
	{ "\xE2\x80\x8B",        FT, RB_EXPRESSION_EMPTY,       RB_READ, 0 },
	{ "pipe",                FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_TEXT, 0 },
	{ "5' +",                FT, RB_EXPRESSION_SYNTAX,      RB_READ, 4 },
	{ "5 *",                 FT, RB_EXPRESSION_SYNTAX,      RB_READ, 3 },
	{ "2 * 3 +",             FT, RB_EXPRESSION_SYNTAX,      RB_READ, 7 },
	{ "99999999999999 * 1",  FT, RB_EXPRESSION_NUMBER,      RB_READ, 0 },
	{ "5.3.2' * 2",          FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_POINTS, 0 },
	{ "5' max",              FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_TEXT, 3 },
	{ "* 5'",                FT, RB_EXPRESSION_SYNTAX,      RB_READ, 0 },
	{ "5' 3' + 1'",          FT, RB_EXPRESSION_SYNTAX,      RB_READ, 4 },
	{ "(5' + 3'",            FT, RB_EXPRESSION_SYNTAX,      RB_READ, 8 },
	{ "5' + 3')",            FT, RB_EXPRESSION_SYNTAX,      RB_READ, 7 },
	{ "()",                  FT, RB_EXPRESSION_SYNTAX,      RB_READ, 1 },
	{ "2(5' + 3')",          FT, RB_EXPRESSION_SYNTAX,      RB_READ, 1 },
	{ "5' + " HALVES " * 2", FT, RB_EXPRESSION_SYNTAX,      RB_READ, 5 },
	{ "5' + apple",          FT, RB_EXPRESSION_SYNTAX,      RB_READ, 5 },
	{ "5' = 3'",             FT, RB_EXPRESSION_LENGTH,      RB_REFUSE_TEXT, 3 },
	{ "5' + 1' = 6'",        FT, RB_EXPRESSION_SYNTAX,      RB_READ, 8 },
	{ "5' * 3'",             FT, RB_EXPRESSION_SQUARE,      RB_READ, 5 },
	{ "10' * 3' / 2'",       FT, RB_EXPRESSION_SQUARE,      RB_READ, 6 },
	{ "3 / 5'",              FT, RB_EXPRESSION_SQUARE,      RB_READ, 4 },
	{ "5' + 3",              FT, RB_EXPRESSION_MIXED,       RB_READ, 5 },
	{ "5.29 ft - 3.1",       FT, RB_EXPRESSION_MIXED,       RB_READ, 10 },
	{ "2 * 3 + 5'",          FT, RB_EXPRESSION_MIXED,       RB_READ, 8 },
	{ "2 * 3",               FT, RB_EXPRESSION_NUMBER,      RB_READ, 0 },
	{ "10 ft / 3 ft",        FT, RB_EXPRESSION_NUMBER,      RB_READ, 0 },
	{ "5' / 0",              FT, RB_EXPRESSION_DIVIDE_ZERO, RB_READ, 5 },
	{ "5' / (3 - 3)",        FT, RB_EXPRESSION_DIVIDE_ZERO, RB_READ, 5 },
	{ "1' + 2' * (3' - 1')", FT, RB_EXPRESSION_SQUARE,      RB_READ, 10 },
	{ "1' + (2 * 3 + 1)",    FT, RB_EXPRESSION_MIXED,       RB_READ, 5 },
	{ "10000 m * 2",          FT, RB_EXPRESSION_BIG,         RB_READ, 0 },
	{ "-10000 m * 2",         FT, RB_EXPRESSION_BIG,         RB_READ, 0 },
	{ "10000 m * 999999 * 999999", FT, RB_EXPRESSION_BIG,   RB_READ, 10 },
	{ "  5' + 3",            FT, RB_EXPRESSION_MIXED,       RB_READ, 7 },
};
/* clang-format on */

static const struct rb_expression *work_out(const char *text, size_t length,
					    enum rb_unit unit)
{
	const struct rb_reading_rules rules = { unit, RB_OF_TAPE, false,
						rb_length_none() };
	struct rb_expression *out = malloc(sizeof *out);

	assert_non_null(out);
	rb_expression_parse(text, length, &rules, out);
	return out;
}

static void release(const struct rb_expression *e)
{
	free((void *)(uintptr_t)e);
}

static void reads(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof read_cases / sizeof *read_cases; i++) {
		const char *text = read_cases[i].text;
		const struct rb_expression *e =
			work_out(text, strlen(text), read_cases[i].unit);

		if (e->refusal != RB_EXPRESSION_READ || e->value.nm != read_cases[i].nm ||
		    e->exact != read_cases[i].exact || e->steps != read_cases[i].steps) {
			print_error(
				"'%s': refusal %d (reading %d) at %zu, %lld nm (not %lld), "
				"exact %d, %d steps\n",
				text, e->refusal, e->reading.refusal, e->where,
				(long long)e->value.nm, (long long)read_cases[i].nm,
				e->exact, e->steps);
			wrong++;
		}
		release(e);
	}
	assert_int_equal(wrong, 0);
}

static void refuses(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof refused_cases / sizeof *refused_cases; i++) {
		const char *text = refused_cases[i].text;
		const struct rb_expression *e =
			work_out(text, strlen(text), refused_cases[i].unit);

		if (e->refusal != refused_cases[i].refusal ||
		    e->reading.refusal != refused_cases[i].reading ||
		    e->where != refused_cases[i].where) {
			print_error(
				"'%s': refusal %d (not %d), reading %d (not %d), at %zu "
				"(not %zu)\n",
				text, e->refusal, refused_cases[i].refusal,
				e->reading.refusal, refused_cases[i].reading, e->where,
				refused_cases[i].where);
			wrong++;
		}
		release(e);
	}
	assert_int_equal(wrong, 0);
}

/* In a file with decimal commas a comma is the point of a number, too. */
static void reads_decimal_commas(void **state)
{
	const struct rb_reading_rules rules = { RB_FEET, RB_OF_TAPE, true,
						rb_length_none() };
	static const struct {
		const char *text;
		int64_t nm;
	} cases[] = {
		{ "5' * 1,5", HUNDREDTHS(750) },
		{ "5,5 + 1,25", HUNDREDTHS(675) },
		{ "2,5 x (5,5 ft - 1,5 ft)", 10 * RB_FOOT },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rb_expression e;

		rb_expression_parse(cases[i].text, strlen(cases[i].text), &rules, &e);
		assert_int_equal(e.refusal, RB_EXPRESSION_READ);
		assert_int_equal(e.value.nm, cases[i].nm);
	}
}

/* What comes to a number is refused, and told. */
static void tells_the_number(void **state)
{
	const struct rb_expression *e = work_out("10 ft / 3 ft", 12, RB_FEET);

	(void)state;
	assert_int_equal(e->refusal, RB_EXPRESSION_NUMBER);
	assert_int_equal(e->ratio.num, 10);
	assert_int_equal(e->ratio.den, 3);
	assert_false(e->ratio.is_length);
	release(e);
}

/* 32 operations and 32 brackets are worked out; one more is too big. */
static void holds_what_it_says(void **state)
{
	/* clang-format off */
	static const struct { const char *open, *shut; int count; bool read; } cases[] = {
		{ "1'+", "", RB_OPERATIONS, true }, { "1'+", "", RB_OPERATIONS + 1, false },
		{ "(", ")", 32, true },             { "(", ")", 33, false },
	};
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char text[256] = "";
		const struct rb_expression *e;

		for (int n = 0; n < cases[i].count; n++)
			strcat(text, cases[i].open);
		strcat(text, "1'");
		for (int n = 0; n < cases[i].count; n++)
			strcat(text, cases[i].shut);
		e = work_out(text, strlen(text), RB_FEET);
		assert_int_equal(e->refusal,
				 cases[i].read ? RB_EXPRESSION_READ : RB_EXPRESSION_BIG);
		release(e);
	}
}

/* The sides of an operation are in lowest terms: 2.50 is 5/2. */
static void reduces_factors(void **state)
{
	const struct rb_expression *e = work_out("5' * 2.50", 9, RB_FEET);

	(void)state;
	assert_int_equal(e->step[0].right.num, 5);
	assert_int_equal(e->step[0].right.den, 2);
	release(e);
}

static void keeps_each_operation(void **state)
{
	const char *text = "(8'-6 3/4\" - 1/2\") / 3";
	const struct rb_expression *e = work_out(text, strlen(text), RB_FEET);

	(void)state;
	assert_int_equal(e->refusal, RB_EXPRESSION_READ);
	assert_int_equal(e->steps, 2);
	assert_int_equal(e->step[0].sign, '-');
	assert_int_equal(e->step[0].left.num, FEET_64(8, 432));
	assert_int_equal(e->step[0].right.num, FEET_64(0, 32));
	assert_int_equal(e->step[0].result.num, FEET_64(8, 400));
	assert_int_equal(e->step[1].sign, '/');
	assert_int_equal(e->step[1].left.num, FEET_64(8, 400));
	assert_int_equal(e->step[1].right.num, 3);
	assert_false(e->step[1].right.is_length);
	assert_true(e->step[1].result.is_length);
	release(e);
}

/* 128 signs and lengths are held; one more is too big. */
static void holds_so_many_tokens(void **state)
{
	/* clang-format off */
	static const struct { int signs; bool read; } cases[] = { { 127, true }, { 128, false } };
	/* clang-format on */

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char text[256];
		size_t used = (size_t)cases[i].signs;
		const struct rb_expression *e;

		memset(text, '+', used);
		memcpy(text + used, "1'", 2);
		e = work_out(text, used + 2, RB_FEET);
		assert_int_equal(e->refusal,
				 cases[i].read ? RB_EXPRESSION_READ : RB_EXPRESSION_BIG);
		release(e);
	}
}

/* More operations, brackets or words than there is room for are refused, not written
 * beyond it. */
static void has_an_end(void **state)
{
	static const char *const pieces[] = { "1'+", "(", "1'*1*", "-", "1 ", ")" };
	char text[4096];

	(void)state;
	for (size_t i = 0; i < sizeof pieces / sizeof *pieces; i++) {
		size_t used = 0, n = strlen(pieces[i]);
		const struct rb_expression *e;

		while (used + n + 2 < sizeof text) {
			memcpy(text + used, pieces[i], n);
			used += n;
		}
		memcpy(text + used, "1'", 2);
		e = work_out(text, used + 2, RB_FEET);
		assert_int_not_equal(e->refusal, RB_EXPRESSION_READ);
		assert_true(e->where <= used + 2);
		release(e);
	}
}

/* The text need not end in NUL: nothing behind its length is looked at. */
static void stops_at_its_length(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof read_cases / sizeof *read_cases; i++) {
		size_t n = strlen(read_cases[i].text);

		for (size_t cut = 0; cut <= n; cut++) {
			char *own = malloc(cut ? cut : 1);
			const struct rb_expression *e;

			assert_non_null(own);
			memcpy(own, read_cases[i].text, cut);
			e = work_out(own, cut, read_cases[i].unit);
			wrong += e->where > cut;
			release(e);
			free(own);
		}
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(reads),
		cmocka_unit_test(refuses),
		cmocka_unit_test(reads_decimal_commas),
		cmocka_unit_test(tells_the_number),
		cmocka_unit_test(holds_what_it_says),
		cmocka_unit_test(reduces_factors),
		cmocka_unit_test(keeps_each_operation),
		cmocka_unit_test(holds_so_many_tokens),
		cmocka_unit_test(has_an_end),
		cmocka_unit_test(stops_at_its_length),
	};

	return cmocka_run_group_tests_name("expression", tests, NULL, NULL);
}
