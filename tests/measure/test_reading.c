/* SPDX-License-Identifier: MIT */
/* test_reading.c - every form in which a length is read, and what is kept of how it was
 * written. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>

#include "written.h"

/* clang-format off */
static const struct read_case {
	const char *text;
	enum rb_unit unit;
	int64_t nm;
} rod_cases[] = {
	/* decimal feet */
	{ "5.29",                   FT, HUNDREDTHS(529) },
	{ "5.29'",                  FT, HUNDREDTHS(529) },
	{ "5.29 ft",                FT, HUNDREDTHS(529) },
	{ "5.292 ft",               FT, 5292 * (RB_FOOT / 1000) },
	{ "5.29ft.",                FT, HUNDREDTHS(529) },
	{ "5.29 FEET",              FT, HUNDREDTHS(529) },
	{ "5.29 ft",                M,  HUNDREDTHS(529) },
	{ "5.29 ft",                FI, HUNDREDTHS(529) },
	{ "0.00001",                FT, 3048 },
	{ "5.29000000",             FT, HUNDREDTHS(529) },
	{ "0.0000050",              FT, 1524 },
	{ "007",                    FT, 7 * RB_FOOT },
	{ ".5",                     FT, RB_FOOT / 2 },
	{ "5.",                     FT, 5 * RB_FOOT },
	{ "0",                      FT, 0 },
	{ "+5.32",                  FT, HUNDREDTHS(532) },
	{ "  5.32\t",               FT, HUNDREDTHS(532) },
	{ NBSP "5.32" NARROW THIN,  FT, HUNDREDTHS(532) },
	{ "'5.32",                  FT, HUNDREDTHS(532) },
	{ RIGHT_SINGLE "5.32",      FT, HUNDREDTHS(532) },
	{ "'5.32'",                 FT, HUNDREDTHS(532) },
	{ LEFT_DOUBLE "5.32" RIGHT_DOUBLE,                      FT, HUNDREDTHS(532) },
	{ LOW_DOUBLE "5.32" LEFT_DOUBLE,                        FT, HUNDREDTHS(532) },
	{ LEFT_GUILLEMET NBSP "5.32" NBSP RIGHT_GUILLEMET,      FT, HUNDREDTHS(532) },
	{ "\"5.32\"",               FT, HUNDREDTHS(532) },
	{ "5.32" PRIME,             FT, HUNDREDTHS(532) },
	{ "5.32" NBSP "ft",         M,  HUNDREDTHS(532) },

	/* feet and inches, in books of any unit */
	{ "5'-3 1/2\"",             FI, WANTED },
	{ "5'-3 1/2\"",             FT, WANTED },
	{ "5'-3 1/2\"",             M,  WANTED },
	{ "5' 3-1/2\"",             FI, WANTED },
	{ "5'3-1/2\"",              FI, WANTED },
	{ "5'3 1/2",                FI, WANTED },
	{ "5'3 1/2",                FT, WANTED },
	{ "5' 3-1/2",               FI, WANTED },
	{ "5 ft 3 1/2 in",          FI, WANTED },
	{ "5ft 3.5in.",             FI, WANTED },
	{ "5 feet 3 1/2 inches",    FI, WANTED },
	{ "5 feet 3.5 inches",      FT, WANTED },
	{ "5 foot 3.5 inch",        FT, WANTED },
	{ "5 ft. - 3 1/2 in.",      FI, WANTED },
	{ "5' 3.5\"",               FI, WANTED },
	{ "5'3.5\"",                FI, WANTED },
	{ "5'3.5",                  FI, WANTED },
	{ "5'-3" HALF "\"",         FI, WANTED },
	{ "5'-3 " HALF "\"",        FI, WANTED },
	{ "5'3" EIGHTH "\"",        FI, FEET_64(5, 200) },
	{ "5" PRIME "-3 1" SLASH "2" DOUBLE_PRIME,              FI, WANTED },
	{ "5" PRIME "3 1/2" DOUBLE_PRIME,                       FI, WANTED },
	{ "5' 3 1/2''",             FI, WANTED },
	{ "5" RIGHT_SINGLE " 3 1/2" RIGHT_SINGLE RIGHT_SINGLE,  FI, WANTED },
	{ "5`-3 1/2``",             FI, WANTED },
	{ "5\xC2\xB4-3 1/2\"",      FI, WANTED },
	{ "5\xCA\xB9-3 1/2\xCA\xBA", FI, WANTED },
	{ "5\xCA\xBC-3 1/2\"",      FI, WANTED },
	{ "5\xEF\xBC\x87-3 1/2\xEF\xBC\x82", FI, WANTED },
	{ "5' - 3\"",               FI, FEET_64(5, 192) },
	{ "5' 1/2\"",               FI, FEET_64(5, 32) },
	{ "5'-" HALF "\"",          FI, FEET_64(5, 32) },
	{ "5'-0\"",                 FI, 5 * RB_FOOT },
	{ "5'-3 0/8\"",             FI, FEET_64(5, 192) },
	{ "5'",                     FI, 5 * RB_FOOT },
	{ "5'",                     FT, 5 * RB_FOOT },
	{ "0'-7\"",                 FI, 7 * RB_INCH },
	{ "0'-3 1/2\"",             FI, 224 * RB_SIXTYFOURTH },
	{ "-0'-2\"",                FI, -2 * RB_INCH },
	{ "5'-3 63/64\"",           FI, FEET_64(5, 255) },
	{ "5'-3 8/16\"",            FI, WANTED },
	{ "0",                      FI, 0 },
	{ "0.00",                   FI, 0 },

	/* the same as Calc leaves it, by locale */
	{ "5" RIGHT_SINGLE "-3 " HALF RIGHT_DOUBLE,             FI, WANTED },
	{ "5" LEFT_SINGLE "-3 " HALF LEFT_DOUBLE,               FI, WANTED },
	{ "5" RIGHT_SINGLE "-3 1/2" NBSP RIGHT_GUILLEMET,       FI, WANTED },
	{ "5" RIGHT_SINGLE " 3 " THREE_QUARTERS RIGHT_DOUBLE,   FI, FEET_64(5, 240) },
	{ "5" LEFT_SINGLE " 3 " THREE_QUARTERS LEFT_DOUBLE,     FI, FEET_64(5, 240) },
	{ "5" RIGHT_SINGLE " 3 3/4" NBSP RIGHT_GUILLEMET,       FI, FEET_64(5, 240) },
	{ "5" RIGHT_SINGLE " " EN_DASH " 3" RIGHT_DOUBLE,       FI, FEET_64(5, 192) },
	{ "5" LEFT_SINGLE " " EN_DASH " 3" LEFT_DOUBLE,         FI, FEET_64(5, 192) },
	{ "5" RIGHT_SINGLE " - 3" NBSP RIGHT_GUILLEMET,         FI, FEET_64(5, 192) },
	{ "5" RIGHT_SINGLE "-3 5/16" RIGHT_DOUBLE,              FI, FEET_64(5, 212) },
	{ "-5'-3\"",                FI, -FEET_64(5, 192) },
	{ "5-3 " HALF,              FI, WANTED },

	/* the dash form */
	{ "5-3-1/2",                FI, WANTED },
	{ "5-3 1/2",                FI, WANTED },
	{ "5 - 3 - 1/2",            FI, WANTED },
	{ "5" EN_DASH "3" EM_DASH "1/2", FI, WANTED },
	{ "5" NB_HYPHEN "3 1/2",    FI, WANTED },
	{ "5-3" HALF,               FI, WANTED },
	{ "5-3.5",                  FI, WANTED },
	{ "5-3",                    FI, FEET_64(5, 192) },
	{ "'5-3",                   FI, FEET_64(5, 192) },
	{ "5-3\"",                  FI, FEET_64(5, 192) },
	{ "5-3 1/2\"",              FI, WANTED },
	{ "5-3-1/2\"",              FI, WANTED },
	{ "-5-3",                   FI, -FEET_64(5, 192) },

	/* inches alone */
	{ "63 1/2\"",               FI, WANTED },
	{ "63-1/2\"",               FI, WANTED },
	{ "63.5 in",                FT, WANTED },
	{ "63.5\"",                 M,  WANTED },
	{ "3 1/2\"",                FI, 224 * RB_SIXTYFOURTH },
	{ "3/4\"",                  FI, 48 * RB_SIXTYFOURTH },
	{ THREE_QUARTERS "\"",      FI, 48 * RB_SIXTYFOURTH },
	{ "3/4 in",                 M,  48 * RB_SIXTYFOURTH },
	{ "3.0625 in",              IN, 196 * RB_SIXTYFOURTH },
	{ "63.5",                   IN, WANTED },
	{ "63",                     IN, 63 * RB_INCH },
	{ "63.25",                  IN, 253 * (RB_INCH / 4) },
	{ "63 1/2",                 IN, WANTED },
	{ "63-1/2",                 IN, WANTED },
	{ "5 " HALF,                IN, 352 * RB_SIXTYFOURTH },
	{ HALF,                     IN, 32 * RB_SIXTYFOURTH },
	{ "7 3/8",                  IN, 472 * RB_SIXTYFOURTH },

	/* feet with a fraction of a foot */
	{ "5 1/2 ft",               FT, 66 * RB_INCH },
	{ "1/2'",                   FT, 6 * RB_INCH },

	/* metric */
	{ "1.613",                  M,  MILLI(1613) },
	{ "1.613 m",                FT, MILLI(1613) },
	{ "1.613m",                 FI, MILLI(1613) },
	{ "1613 mm",                FT, MILLI(1613) },
	{ "1613",                   MM, MILLI(1613) },
	{ "1613.5",                 MM, MILLI(1613) + RB_MILLIMETRE / 2 },
	{ "161.3 cm",               M,  MILLI(1613) },
	{ "1.613 metres",           FT, MILLI(1613) },
	{ "1.613 meters",           FT, MILLI(1613) },
	{ "0.123456789",            M,  123456789 },
	{ "1.624",                  M,  MILLI(1624) },

	/* an inverted rod */
	{ "-3.045",                 M,  -MILLI(3045) },
	{ MINUS "3.045",            M,  -MILLI(3045) },
	{ EN_DASH "3.045",          M,  -MILLI(3045) },
	{ NB_HYPHEN "3.045",        M,  -MILLI(3045) },
	{ "- 3.045",                M,  -MILLI(3045) },
	{ "inv 3.045",              M,  -MILLI(3045) },
	{ "Inv 3.045",              M,  -MILLI(3045) },
	{ "inv. 3.045",             M,  -MILLI(3045) },
	{ "inverted 3.045",         M,  -MILLI(3045) },
	{ "3.045 inv",              M,  -MILLI(3045) },
	{ "3.045inv.",              M,  -MILLI(3045) },
	{ "3.045 (inv)",            M,  -MILLI(3045) },
	{ "(3.045)",                M,  -MILLI(3045) },
	{ "( 3.045 )",              M,  -MILLI(3045) },
	{ "'-3.045",                M,  -MILLI(3045) },
	{ MINUS "0.42",             FT, -HUNDREDTHS(42) },
	{ "-0.42",                  FT, -HUNDREDTHS(42) },
	{ "(0.42)",                 FT, -HUNDREDTHS(42) },
	{ "-0.00",                  FT, 0 },
	{ "(0.00)",                 FT, 0 },
	{ "inv 0'-0\"",             FI, 0 },
	{ "inv 5'-3 1/2\"",         FI, -WANTED },
	{ "5'-3 1/2\" inv",         FI, -WANTED },
	{ "(5'-3 1/2\")",           FI, -WANTED },
	{ "(5-3 1/2)",              FI, -WANTED },
};

static const struct read_case comma_cases[] = { /* separated by ; or TAB */
	{ "5,32",       FT, HUNDREDTHS(532) },
	{ "1.204",      M,  MILLI(1204) },
	{ "1.204 mm",   MM, 1204000 }, /* what may be thousands needs its mark */
	{ "1,204 mm",   MM, 1204000 },
	{ "1.20",       MM, 1200000 },
	{ "1.2040",     MM, 1204000 },
	{ "1204.500",   MM, 1204500000 },
	{ "0,000",      MM, 0 },
	{ "5.32",       FT, HUNDREDTHS(532) },
	{ "1,624",      M,  MILLI(1624) },
	{ "5,25",       FT, HUNDREDTHS(525) },
	{ "5' 3,5\"",   FI, WANTED },
	{ "-0,42",      FT, -HUNDREDTHS(42) },
	{ "5,32 ft",    M,  HUNDREDTHS(532) },
	{ "5,29166666666667", FT, WANTED },
};

static const struct read_case elevation_cases[] = {
	{ "512.37",     FT, HUNDREDTHS(51237) },
	{ "-2.50",      FT, -HUNDREDTHS(250) },
	{ "-0.00",      FT, 0 },
	{ "512",        FI, 512 * RB_FOOT },
	{ "-2",         FI, -2 * RB_FOOT },
	{ "512.37 ft",  FI, HUNDREDTHS(51237) },
	{ "98'-7 1/2\"", FI, FEET_64(98, 480) },
	{ "0",          FI, 0 },
	{ "1,234.50",   FT, HUNDREDTHS(123450) },
	{ "1,234.50 ft", FI, HUNDREDTHS(123450) },
	{ "12,345.6 ft", M, 123456 * (RB_FOOT / 10) },
	{ "156.170 m",  FT, MILLI(156170) },
	{ "1200.5",     IN, 24010 * (RB_INCH / 20) },
	{ "45780",      MM, MILLI(45780) },
	{ "98-7 1/2",   FI, FEET_64(98, 480) },
};

static const struct read_case elevation_comma_cases[] = {
	{ "1.234,50",   FT, HUNDREDTHS(123450) },
	{ "1,234.50",   FT, HUNDREDTHS(123450) },
	{ "101.234",    M,  MILLI(101234) },
};

static const struct read_case run_cases[] = {
	{ "50",         FT, 50 * RB_FOOT },
	{ "12.5",       IN, 25 * (RB_FOOT / 2) },
	{ "12.5",       FI, 25 * (RB_FOOT / 2) },
	{ "25",         MM, 25 * RB_METRE },
	{ "15.2 m",     FT, MILLI(15200) },
	{ "13-1",       FI, FEET_64(13, 64) },
	{ "6 in",       FI, 6 * RB_INCH },
};

static const struct read_case tape_cases[] = {
	{ "2.5",        IN, 5 * (RB_INCH / 2) },
	{ "-0.5",       FT, -RB_FOOT / 2 },
	{ "1/4\"",      FI, RB_INCH / 4 },
	{ "6",          MM, MILLI(6) },
};

/* What a sheet's formula makes of 64ths: rounded to six places or more, or cut off. */
static const struct read_case sixtyfourth_cases[] = {
	{ "5.291667",           FT, WANTED },
	{ "5.291666",           FT, WANTED },
	{ "5.2916667",          FT, WANTED },
	{ "5.29166666666667",   FT, WANTED },
	{ "5.29166666666666",   FT, WANTED },
	{ "5.291666666666666666667", FT, WANTED },
	{ "-5.291667",          FT, -WANTED },
	{ "5.291667 ft",        FI, WANTED },
	{ "5.291667'",          M,  WANTED },
	{ "0.001302",           FT, RB_SIXTYFOURTH },
	{ "0.083333",           FT, RB_INCH },
	{ "104.66666667",       FT, FEET_64(104, 512) },
};
/* clang-format on */

static int wrong_read(const struct read_case *c, struct rb_reading got)
{
	if (got.refusal == RB_READ && got.value.nm == c->nm)
		return 0;
	print_error("\"%s\" in %s: got refusal %d at %zu, %lld nm, not %lld\n", c->text,
		    rb_unit_name(c->unit), (int)got.refusal, got.where,
		    (long long)got.value.nm, (long long)c->nm);
	return 1;
}

#define READS_ALL(table, kind, comma)                                                    \
	do {                                                                             \
		for (size_t i = 0; i < sizeof(table) / sizeof *(table); i++)             \
			wrong += wrong_read(&(table)[i],                                 \
					    parse((table)[i].text, (table)[i].unit,      \
						  kind, comma, rb_length_none()));       \
	} while (0)

static void reads_every_form(void **state)
{
	int wrong = 0;

	(void)state;
	READS_ALL(rod_cases, RB_OF_ROD, false);
	READS_ALL(comma_cases, RB_OF_ROD, true);
	READS_ALL(elevation_cases, RB_OF_ELEVATION, false);
	READS_ALL(elevation_comma_cases, RB_OF_ELEVATION, true);
	READS_ALL(run_cases, RB_OF_RUN, false);
	READS_ALL(tape_cases, RB_OF_TAPE, false);
	READS_ALL(sixtyfourth_cases, RB_OF_ROD, true);
	assert_int_equal(wrong, 0);
}

static void marks_formula_decimals(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof sixtyfourth_cases / sizeof *sixtyfourth_cases;
	     i++) {
		const struct read_case *c = &sixtyfourth_cases[i];

		if (parse(c->text, c->unit, RB_OF_ROD, false, rb_length_none())
			    .sixtyfourth)
			continue;
		print_error("\"%s\" is not marked as a 64th\n", c->text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
	/* Exact as it stands: nothing was taken for something else. */
	assert_false(
		parse("5.250000", FT, RB_OF_ROD, false, rb_length_none()).sixtyfourth);
	assert_false(parse("5.29", FT, RB_OF_ROD, false, rb_length_none()).sixtyfourth);
}

/* Every 64th of a foot, written with 6 to 14 places, rounded and cut off. */
static void reads_every_formula_decimal(void **state)
{
	int wrong = 0;

	(void)state;
	for (int places = 6; places <= 14; places++) {
		int64_t power = 1;

		for (int i = 0; i < places; i++)
			power *= 10;
		for (int64_t part = 0; part < 2 * 768; part++) {
			int64_t whole = part / 768, rest = part % 768 * power;
			int64_t cut = rest / 768, rounded = (2 * rest + 768) / (2 * 768);

			for (int64_t n = cut; n <= rounded && n < power; n++) {
				char text[40];
				struct rb_reading got;

				snprintf(text, sizeof text, "%lld.%0*lld",
					 (long long)whole, places, (long long)n);
				got = parse(text, FT, RB_OF_ROD, false, rb_length_none());
				if (got.value.nm == part * RB_SIXTYFOURTH)
					continue;
				print_error("%s: %lld nm\n", text,
					    (long long)got.value.nm);
				wrong++;
			}
		}
	}
	assert_int_equal(wrong, 0);
}

/* clang-format off */
static const struct written_case {
	const char *text;
	enum rb_unit book;
	enum rb_notation notation;
	enum rb_unit unit;
	int decimals, denominator;
	bool inverted, odd;
} written_cases[] = {
	{ "5.290",        FT, RB_AS_DECIMAL,     FT, 3, 1,  false, false },
	{ "5",            FT, RB_AS_DECIMAL,     FT, 0, 1,  false, false },
	{ "5.29'",        M,  RB_AS_DECIMAL,     FT, 2, 1,  false, false },
	{ "5'",           FT, RB_AS_DECIMAL,     FT, 0, 1,  false, false },
	{ "5'",           FI, RB_AS_FEET_INCHES, FI, 0, 1,  false, false },
	{ "5'-3 8/16\"",  FT, RB_AS_FEET_INCHES, FI, 0, 16, false, false }, /* read to 16ths */
	{ "4/8\"",        FT, RB_AS_INCHES,      IN, 0, 8,  false, false },
	{ "5'-3 0/8\"",   FI, RB_AS_FEET_INCHES, FI, 0, 8,  false, false },
	{ "3 4/10\"",     FI, RB_AS_INCHES,      IN, 0, 10, false, true },
	{ "3 3/12\"",     FI, RB_AS_INCHES,      IN, 0, 4,  false, true }, /* no 12th is whole */
	{ "5'-3 5/16\"",  FI, RB_AS_FEET_INCHES, FI, 0, 16, false, false },
	{ "5'-3.25\"",    FI, RB_AS_FEET_INCHES, FI, 2, 1,  false, false },
	{ "5-3",          FI, RB_AS_FEET_INCHES, FI, 0, 1,  false, false },
	{ "0",            FI, RB_AS_FEET_INCHES, FI, 0, 1,  false, false },
	{ "5 1/2 ft",     FT, RB_AS_FEET_INCHES, FI, 0, 1,  false, false },
	{ "5 1/16 ft",    FT, RB_AS_FEET_INCHES, FI, 0, 4,  false, false }, /* 5'-0 3/4" */
	{ "63.50\"",      FT, RB_AS_INCHES,      IN, 2, 1,  false, false },
	{ "63.5",         IN, RB_AS_INCHES,      IN, 1, 1,  false, false },
	{ "63 3/4",       IN, RB_AS_INCHES,      IN, 0, 4,  false, false },
	{ "1.6130",       M,  RB_AS_DECIMAL,     M,  4, 1,  false, false },
	{ "1.613 m",      FT, RB_AS_DECIMAL,     M,  3, 1,  false, false },
	{ "1613 mm",      M,  RB_AS_DECIMAL,     MM, 0, 1,  false, false },
	{ "161.3 cm",     M,  RB_AS_DECIMAL,     MM, 0, 1,  false, false },
	{ "-5.29",        FT, RB_AS_DECIMAL,     FT, 2, 1,  true,  false },
	{ "inv 5.29",     FT, RB_AS_DECIMAL,     FT, 2, 1,  true,  false },
	{ "(5.29)",       FT, RB_AS_DECIMAL,     FT, 2, 1,  true,  false },
	{ "-0'-2\"",      FI, RB_AS_FEET_INCHES, FI, 0, 1,  true,  false },
	{ "-0.00",        FT, RB_AS_DECIMAL,     FT, 2, 1,  false, false },
	{ "inv 0.00",     FT, RB_AS_DECIMAL,     FT, 2, 1,  false, false },
	{ "3 1/10\"",     FI, RB_AS_INCHES,      IN, 0, 10, false, true },
	{ "5'-3 1/5\"",   FI, RB_AS_FEET_INCHES, FI, 0, 5,  false, true },
	{ "5'-3 7/20\"",  FI, RB_AS_FEET_INCHES, FI, 0, 20, false, true },
	{ "3 2/128\"",    FI, RB_AS_INCHES,      IN, 0, 64, false, true },
};
/* clang-format on */

static void tells_how_it_was_written(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof written_cases / sizeof *written_cases; i++) {
		const struct written_case *c = &written_cases[i];
		struct rb_reading got =
			parse(c->text, c->book, RB_OF_ROD, false, rb_length_none());

		if (got.refusal == RB_READ && got.notation == c->notation &&
		    got.unit == c->unit && got.decimals == c->decimals &&
		    got.denominator == c->denominator && got.inverted == c->inverted &&
		    got.odd_fraction == c->odd)
			continue;
		print_error("\"%s\": refusal %d, notation %d, unit %d, decimals %d, "
			    "denominator %d, inverted %d, odd %d\n",
			    c->text, (int)got.refusal, (int)got.notation, (int)got.unit,
			    got.decimals, got.denominator, got.inverted,
			    got.odd_fraction);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void minus_is_only_a_minus_in_elevations(void **state)
{
	struct rb_reading got =
		parse("-2.50", FT, RB_OF_ELEVATION, false, rb_length_none());

	(void)state;
	assert_int_equal(got.value.nm, -HUNDREDTHS(250));
	assert_false(got.inverted);
}

/* The text need not end in NUL, and nothing behind it is looked at. */
static void reads_no_further_than_told(void **state)
{
	const struct rb_reading_rules rules = { FT, RB_OF_ROD, false, rb_length_none() };

	(void)state;
	assert_int_equal(rb_reading_parse("5.2999", 4, &rules).value.nm, HUNDREDTHS(529));
	assert_int_equal(rb_reading_parse("5'-3 1/2\"9", 9, &rules).value.nm, WANTED);
	assert_int_equal(rb_reading_parse("5.3\xE2\x80\x99", 4, &rules).refusal,
			 RB_REFUSE_MOJIBAKE);
	assert_int_equal(rb_reading_parse(NULL, 0, &rules).refusal, RB_REFUSE_EMPTY);
}

/* The quick way and the long way agree: an outer blank is enough to take the long one. */
static void both_ways_agree(void **state)
{
	static const enum rb_unit units[] = { FT, IN, FI, M, MM };
	uint32_t random = 20260317;
	int wrong = 0;

	(void)state;
	for (int i = 0; i < 20000; i++) {
		char plain[24], blank[26];
		int places;
		struct rb_reading a, b;

		random = random * 1664525u + 1013904223u;
		places = (int)(random >> 28) % 8;
		snprintf(plain, sizeof plain, "%s%u.%0*u", random >> 27 & 1 ? "-" : "",
			 random >> 8 & 0x3FF, places, places > 0 ? random >> 20 & 7 : 0);
		snprintf(blank, sizeof blank, " %s", plain);
		a = parse(plain, units[i % 5], (enum rb_reading_kind)(i / 5 % 4), false,
			  rb_length_of(200 * RB_FOOT));
		b = parse(blank, units[i % 5], (enum rb_reading_kind)(i / 5 % 4), false,
			  rb_length_of(200 * RB_FOOT));
		if (a.refusal == b.refusal && a.value.nm == b.value.nm &&
		    a.decimals == b.decimals && a.inverted == b.inverted &&
		    a.unit == b.unit && a.notation == b.notation)
			continue;
		print_error("\"%s\" unit %d kind %d\n", plain, i % 5, i / 5 % 4);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(reads_every_form),
		cmocka_unit_test(marks_formula_decimals),
		cmocka_unit_test(reads_every_formula_decimal),
		cmocka_unit_test(tells_how_it_was_written),
		cmocka_unit_test(minus_is_only_a_minus_in_elevations),
		cmocka_unit_test(reads_no_further_than_told),
		cmocka_unit_test(both_ways_agree),
	};

	return cmocka_run_group_tests_name("reading", tests, NULL, NULL);
}
