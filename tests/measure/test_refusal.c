/* SPDX-License-Identifier: MIT */
/* test_refusal.c - every text that is no reading: the reason, the place, what was meant.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "written.h"

/* clang-format off */
static const struct refuse_case {
	const char *text;
	enum rb_unit unit;
	enum rb_refusal refusal;
	size_t where;
	int64_t maybe[RB_MAYBE]; /* 0: no more */
} rod_refusals[] = {
	{ "",              FT, RB_REFUSE_EMPTY, 0, { 0 } },
	{ " \t",           FT, RB_REFUSE_EMPTY, 0, { 0 } },
	{ NBSP,            FT, RB_REFUSE_EMPTY, 0, { 0 } },

	{ "n/a",           FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "-",             FT, RB_REFUSE_TEXT, 1, { 0 } },
	{ "@5",            FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "#1",            FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "see note",      FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "25.00%",        FT, RB_REFUSE_TEXT, 5, { 0 } },
	{ "$5.00",         FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "1.00 $",        FT, RB_REFUSE_TEXT, 5, { 0 } },
	{ "inv",           FT, RB_REFUSE_TEXT, 3, { 0 } },
	{ "()",            FT, RB_REFUSE_TEXT, 1, { 0 } },
	{ "(5.29",         FT, RB_REFUSE_TEXT, 0, { 0 } }, /* half a bracket */
	{ "5.29)",         FT, RB_REFUSE_TEXT, 4, { 0 } },
	{ "5'-",           FI, RB_REFUSE_TEXT, 0, { 0 } },
	{ "5'--3\"",       FI, RB_REFUSE_TEXT, 0, { 0 } },
	{ "5 ft.5 in",     FI, RB_REFUSE_TEXT, 2, { 0 } },
	{ "5.3' 2\"",      FI, RB_REFUSE_TEXT, 0, { 0 } },
	{ "5'-3'",         FI, RB_REFUSE_TEXT, 0, { FEET_64(5, 192) } },
	{ "5.3 1/2",       FI, RB_REFUSE_TEXT, 0, { WANTED } },
	{ "5.3 1/2",       FT, RB_REFUSE_TEXT, 0, { WANTED } },
	{ "5.29 1/2",      FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "5.29 1/3",      FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "5/3-2026",      FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "1e",            FT, RB_REFUSE_TEXT, 1, { 0 } },
	{ "5ftO",          FT, RB_REFUSE_TEXT, 1, { 0 } }, /* no word is cured */
	{ "55555555555555555555555555555555555555555555555555555555555" HALF "\"",
	                   IN, RB_REFUSE_TEXT, 0, { 0 } },
	{ "1" HALF "2",    IN, RB_REFUSE_TEXT, 0, { 0 } },
	{ "5.29 5.29 5.29 5.29 5.29 5.29 5.29 5.29 5.29 5.29 5.29 5.29 5.29 5.29",
	                   FT, RB_REFUSE_TEXT, 0, { 0 } },

	{ "5'-13\"",       FI, RB_REFUSE_INCHES, 3, { FEET_64(6, 64) } },
	{ "5'-12\"",       FT, RB_REFUSE_INCHES, 3, { 6 * RB_FOOT } },
	{ "5' 12.5\"",     FI, RB_REFUSE_INCHES, 3, { FEET_64(6, 32) } },
	{ "5-13 1/2",      FI, RB_REFUSE_INCHES, 2, { FEET_64(6, 96) } },

	{ "3 9/8\"",       FI, RB_REFUSE_FRACTION, 2, { 264 * RB_SIXTYFOURTH } },
	{ "5'-3 8/8\"",    FI, RB_REFUSE_FRACTION, 5, { FEET_64(5, 256) } },
	{ "99999/3",       M,  RB_REFUSE_FRACTION, 0, { 0 } },
	{ "5/3",           FI, RB_REFUSE_FRACTION, 0, { FEET_64(5, 192), FEET_64(3, 320) } },

	{ "3 1/0\"",       FI, RB_REFUSE_ZERO, 2, { 0 } },
	{ "5'-3 0/0\"",    FI, RB_REFUSE_ZERO, 5, { 0 } },

	{ "5 1/3",         IN, RB_REFUSE_ROUNDED, 2,
	  { 340 * RB_SIXTYFOURTH, 342 * RB_SIXTYFOURTH } },
	{ "5 1/3",         FT, RB_REFUSE_ROUNDED, 2,
	  { 340 * RB_SIXTYFOURTH, 342 * RB_SIXTYFOURTH } },
	{ "5 2/3",         IN, RB_REFUSE_ROUNDED, 2, /* 21/32 comes after 11/16 */
	  { 364 * RB_SIXTYFOURTH, 362 * RB_SIXTYFOURTH } },
	{ " 1/9",          IN, RB_REFUSE_ROUNDED, 1,
	  { 4 * RB_SIXTYFOURTH, 6 * RB_SIXTYFOURTH } },
	{ "2/3",           IN, RB_REFUSE_ROUNDED, 0,
	  { 44 * RB_SIXTYFOURTH, 42 * RB_SIXTYFOURTH } },
	{ "5'-3 1/3\"",    FI, RB_REFUSE_ROUNDED, 5, { FEET_64(5, 212), FEET_64(5, 214) } },
	{ "5 6/7\"",       FI, RB_REFUSE_ROUNDED, 2, { 375 * RB_SIXTYFOURTH } },
	{ "5 1/6\"",       FI, RB_REFUSE_ROUNDED, 2, { 330 * RB_SIXTYFOURTH } },
	{ "5 20/69\"",     FI, RB_REFUSE_ROUNDED, 2, { 340 * RB_SIXTYFOURTH } },

	{ "5.3.2",         FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "5.3.",          FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "5.3.26",        FT, RB_REFUSE_POINTS, 0, { 0 } }, /* a date has 05.03.26 */
	{ "05.3.26",       FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "5.03.26",       FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "5..3",          FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "5,3,2",         FT, RB_REFUSE_POINTS, 0, { 0 } },

	{ "5,32",          FT, RB_REFUSE_COMMA, 0, { HUNDREDTHS(532) } },
	{ "-5,32",         FT, RB_REFUSE_COMMA, 1, { -HUNDREDTHS(532) } },
	{ "1,624",         M,  RB_REFUSE_COMMA, 0, { MILLI(1624) } },
	{ "5' 3,5\"",      FI, RB_REFUSE_COMMA, 3, { WANTED } },
	{ "5,10",          FI, RB_REFUSE_COMMA, 0, { FEET_64(5, 640), HUNDREDTHS(510) } },
	{ "1,234.50",      FT, RB_REFUSE_COMMA, 0, { 0 } },

	{ "5.O2",          FT, RB_REFUSE_LETTER, 2, { HUNDREDTHS(502) } },
	{ "5.o2",          FT, RB_REFUSE_LETTER, 2, { HUNDREDTHS(502) } },
	{ "l.62",          M,  RB_REFUSE_LETTER, 0, { MILLI(1620) } },
	{ "I.62",          M,  RB_REFUSE_LETTER, 0, { MILLI(1620) } },
	{ "5'-O\"",        FI, RB_REFUSE_LETTER, 3, { 5 * RB_FOOT } },
	{ "1Oft",          FT, RB_REFUSE_LETTER, 1, { 10 * RB_FOOT } },
	{ "inv l.5",       FT, RB_REFUSE_LETTER, 4, { -HUNDREDTHS(150) } },
	/* a whole cell of them, and what is refused with the digits, too */
	{ "l",             FT, RB_REFUSE_LETTER, 0, { RB_FOOT } },
	{ "lO",            FT, RB_REFUSE_LETTER, 0, { 10 * RB_FOOT } },
	{ "-I",            M,  RB_REFUSE_LETTER, 1, { -MILLI(1000) } },
	{ "O.l",           FT, RB_REFUSE_LETTER, 0, { HUNDREDTHS(10) } },
	{ "O'-lO\"",       FT, RB_REFUSE_LETTER, 0, { 10 * RB_INCH } },
	{ "lO",            FI, RB_REFUSE_LETTER, 0, { 10 * RB_FOOT, 10 * RB_INCH } },
	{ "5'-5O\"",       FT, RB_REFUSE_LETTER, 4, { FEET_64(9, 128) } },
	{ "5'-3 l/3\"",    FI, RB_REFUSE_LETTER, 5, { FEET_64(5, 212), FEET_64(5, 214) } },
	{ "5-lO",          FT, RB_REFUSE_LETTER, 2, { FEET_64(5, 640) } },
	{ "5 O5",          FT, RB_REFUSE_LETTER, 2, { HUNDREDTHS(505), FEET_64(5, 320) } },
	{ "5.2 O",         FT, RB_REFUSE_LETTER, 4, { HUNDREDTHS(520) } },
	{ "5.2 O",         FI, RB_REFUSE_LETTER, 4, { HUNDREDTHS(520) } },
	{ "5.OOO9",        FT, RB_REFUSE_LETTER, 2, { 50009 * (RB_FOOT / 10000) } },
	{ "O5/O3/2O26",    FT, RB_REFUSE_LETTER, 0,
	  { FEET_64(5, 192), FEET_64(3, 320), HUNDREDTHS(530) } },
	/* a word is none, though it has no other letters */
	{ "oil",           FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "oil.",          FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "2 oil",         FT, RB_REFUSE_TEXT, 2, { 0 } },
	{ "ill 5",         FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "hill",          FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "o k",           FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "to 5",          FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "I/O",           FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "5.\xC2\xB0" "2", FT, RB_REFUSE_LETTER, 2, { HUNDREDTHS(502) } },

	{ "5-Mar",         FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "05-Mar",        FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "3-May",         FI, RB_REFUSE_DATE, 0, { FEET_64(3, 320), FEET_64(5, 192) } },
	{ "3/5/2026",      FI, RB_REFUSE_DATE, 0, { FEET_64(3, 320), FEET_64(5, 192) } },
	{ "5/3/2025",      FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "2026-05-03",    FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "2026-05-03 00:00:00",
	                   FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "2026-05-03",    FT, RB_REFUSE_DATE, 0,
	  { FEET_64(5, 192), FEET_64(3, 320), HUNDREDTHS(530) } },
	{ "05/03/26",      FT, RB_REFUSE_DATE, 0,
	  { FEET_64(5, 192), FEET_64(3, 320), HUNDREDTHS(530) } },
	{ "05.03.26",      M,  RB_REFUSE_DATE, 0, { MILLI(5300), MILLI(3500) } },
	{ "05.03.02",      M,  RB_REFUSE_DATE, 0, { MILLI(5300), MILLI(3500) } },
	{ "05/03/02",      FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "01.09.02",      MM, RB_REFUSE_DATE, 0, { 0 } },
	{ "5.3.2026",      M,  RB_REFUSE_DATE, 0, { MILLI(5300), MILLI(3500) } },
	{ "12/05/26",      FI, RB_REFUSE_DATE, 0, { FEET_64(12, 320) } },
	{ "2026-05-11",    FI, RB_REFUSE_DATE, 0, { FEET_64(5, 704), FEET_64(11, 320) } },
	{ "12/13/26",      FI, RB_REFUSE_DATE, 0, { 0 } },
	{ "13/12/26",      FI, RB_REFUSE_DATE, 0, { 0 } },
	{ "13/05/26",      FI, RB_REFUSE_DATE, 0, { FEET_64(13, 320) } },
	{ "2026-10-24",    FI, RB_REFUSE_DATE, 0, { FEET_64(24, 640) } },
	{ "03/08/26",      IN, RB_REFUSE_DATE, 0,
	  { 24 * RB_SIXTYFOURTH, FEET_64(3, 512), FEET_64(8, 192) } },
	{ "03/08/26",      FI, RB_REFUSE_DATE, 0,
	  { FEET_64(3, 512), FEET_64(8, 192), 24 * RB_SIXTYFOURTH } },
	{ "8-Mar",         IN, RB_REFUSE_DATE, 0,
	  { 24 * RB_SIXTYFOURTH, FEET_64(8, 192), FEET_64(3, 512) } },
	{ "07/16/26",      IN, RB_REFUSE_DATE, 0, { 28 * RB_SIXTYFOURTH, FEET_64(16, 448) } },
	{ "16-Jul",        IN, RB_REFUSE_DATE, 0, { 28 * RB_SIXTYFOURTH, FEET_64(16, 448) } },
	{ "2-Jan",         IN, RB_REFUSE_DATE, 0,
	  { 32 * RB_SIXTYFOURTH, FEET_64(2, 64), FEET_64(1, 128) } },
	{ "01/02/26",      IN, RB_REFUSE_DATE, 0,
	  { 32 * RB_SIXTYFOURTH, FEET_64(1, 128), FEET_64(2, 64) } },
	{ "May-32",        FI, RB_REFUSE_DATE, 0, { FEET_64(32, 320), 10 * RB_SIXTYFOURTH } },
	{ "Feb-30",        FI, RB_REFUSE_DATE, 0, { FEET_64(30, 128) } },
	{ "May 3",         FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "5-Mar-2026",    FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "2026-Mar-05",   FI, RB_REFUSE_DATE, 0, { FEET_64(3, 320), FEET_64(5, 192) } },
	{ "2026-13-13",    FT, RB_REFUSE_TEXT, 0, { 0 } }, /* no month is left */
	{ "2026-05-32",    FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "2026-00-05",    FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "13/13/2026",    FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "32/05/2026",    FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "05/0/2026",     FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "5/3/123",       FT, RB_REFUSE_TEXT, 0, { 0 } }, /* no year */
	{ "5/3-26",        FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "Mar-May-26",    FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "Mar-2026",      FI, RB_REFUSE_DATE, 0, { 0 } },
	{ "2026 May",      FI, RB_REFUSE_DATE, 0, { 0 } },
	{ "Err:x",         FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "1E-30",         FT, RB_REFUSE_EXPONENT, 0, { 0 } },
	{ "0E-5",          FT, RB_REFUSE_EXPONENT, 0, { 0 } },
	{ "5:03.1234567",  FI, RB_REFUSE_TIME, 0, { 0 } },
	{ "5:03:07",       FI, RB_REFUSE_TIME, 0, { 0 } },
	{ "Nov 25, 2026",  FI, RB_REFUSE_DATE, 0, { FEET_64(25, 704) } },
	{ "5. M\xC3\xA4rz 2026",
	                   FI, RB_REFUSE_DATE, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "3 d\xC3\xA9" "c.", FI, RB_REFUSE_TEXT, 2, { 0 } },
	{ "3-d\xC3\xA9" "c", FI, RB_REFUSE_DATE, 0, { FEET_64(12, 192) } },
	{ "03-ene",        FI, RB_REFUSE_DATE, 0, { FEET_64(3, 64), FEET_64(1, 192) } },
	{ "2-Sep",         FI, RB_REFUSE_DATE, 0, { FEET_64(2, 576), FEET_64(9, 128) } },
	{ "01-Sep",        FI, RB_REFUSE_DATE, 0, { FEET_64(1, 576), FEET_64(9, 64) } },

	{ "5:03:00 AM",    FI, RB_REFUSE_TIME, 0, { FEET_64(5, 192) } },
	{ "05:03:00 AM",   FT, RB_REFUSE_TIME, 0, { FEET_64(5, 192) } },
	{ "05:03:00",      FI, RB_REFUSE_TIME, 0, { FEET_64(5, 192) } },
	{ "5:03",          FI, RB_REFUSE_TIME, 0, { FEET_64(5, 192) } },
	{ "12:05:00 AM",   FI, RB_REFUSE_TIME, 0, { FEET_64(0, 320) } }, /* was 0:5 */
	{ "12:05:00 PM",   FI, RB_REFUSE_TIME, 0, { FEET_64(12, 320) } },
	{ "4:27",          FT, RB_REFUSE_TIME, 0, { HUNDREDTHS(427) } },
	{ "1:62",          M,  RB_REFUSE_TIME, 0, { MILLI(1620) } },
	{ "=4.27",         FT, RB_REFUSE_TEXT, 0, { HUNDREDTHS(427) } },
	{ "~ 4.27",        FT, RB_REFUSE_TEXT, 0, { HUNDREDTHS(427) } },
	{ "4.27*",         FT, RB_REFUSE_TEXT, 4, { HUNDREDTHS(427) } },
	{ "5'-3 1/2\"?",   FI, RB_REFUSE_TEXT, 9, { WANTED } },
	{ "4.27,",         FT, RB_REFUSE_TEXT, 4, { HUNDREDTHS(427) } },
	{ "1 613 mm",      FT, RB_REFUSE_SPACED, 0, { MILLI(1613) } },
	{ "1 613",         MM, RB_REFUSE_SPACED, 0, { MILLI(1613) } },
	{ "5'-3\" 1/2",    FI, RB_REFUSE_TEXT, 0, { WANTED } },
	{ "63\" 1/2",      FT, RB_REFUSE_TEXT, 0, { WANTED } },
	{ "5 29/100",      FT, RB_REFUSE_UNMARKED, 0, { HUNDREDTHS(529) } },
	{ "1,613 mm",      FT, RB_REFUSE_COMMA, 0, { MILLI(1613) } },
	{ "1,613",         MM, RB_REFUSE_COMMA, 0, { MILLI(1613) } },
	{ "1,6",           MM, RB_REFUSE_COMMA, 0, { 1600000 } },
	{ "4. 27",         FT, RB_REFUSE_SPACED, 0, { HUNDREDTHS(427) } },
	{ "5. 29",         FI, RB_REFUSE_SPACED, 0, { HUNDREDTHS(529) } },
	{ "5.2 9",         FT, RB_REFUSE_SPACED, 0, { HUNDREDTHS(529) } },
	{ "1.6 13 m",      FT, RB_REFUSE_SPACED, 0, { MILLI(1613) } },
	{ "5.29 5.29",     FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "4 .27 ft",      M,  RB_REFUSE_SPACED, 0, { HUNDREDTHS(427) } },
	{ "5' 3 .5\"",     FI, RB_REFUSE_SPACED, 0, { WANTED } },
	{ "05:03.50",      FI, RB_REFUSE_TIME, 0, { WANTED } },
	{ "12:30:00 PM",   FI, RB_REFUSE_TIME, 0, { 0 } },
	{ "12:30:00",      FI, RB_REFUSE_TIME, 0, { 0 } },
	{ "01:05:00 PM",   FI, RB_REFUSE_TIME, 0, { FEET_64(13, 320) } },
	{ "05:03:00",      M,  RB_REFUSE_TIME, 0, { 0 } },

	{ "45780",         FI, RB_REFUSE_SERIAL, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "45780",         FT, RB_REFUSE_SERIAL, 0,
	  { FEET_64(5, 192), FEET_64(3, 320), HUNDREDTHS(530) } },
	{ "46145",         FI, RB_REFUSE_SERIAL, 0, { FEET_64(5, 192), FEET_64(3, 320) } },
	{ "45780",         M,  RB_REFUSE_SERIAL, 0, { MILLI(5300), MILLI(3500) } },
	{ "45780",         MM, RB_REFUSE_SERIAL, 0, { 0 } },
	{ "45351",         FI, RB_REFUSE_SERIAL, 0, { FEET_64(29, 128) } }, /* 2024-02-29 */

	{ "5 29",          FT, RB_REFUSE_SPACED, 0, { HUNDREDTHS(529) } },
	{ "1234567890 1234567890", FT, RB_REFUSE_SPACED, 0, { 0 } },
	{ "5 05",          FT, RB_REFUSE_SPACED, 0, { HUNDREDTHS(505), FEET_64(5, 320) } },
	{ "5" NBSP "29",   FT, RB_REFUSE_SPACED, 0, { HUNDREDTHS(529) } },
	{ "5 3",           FI, RB_REFUSE_SPACED, 0, { FEET_64(5, 192), HUNDREDTHS(530) } },
	{ "1 624",         M,  RB_REFUSE_SPACED, 0, { MILLI(1624) } },
	{ "5 3 1/2",       FI, RB_REFUSE_SPACED, 0, { WANTED } },
	{ "5 3\"",         FI, RB_REFUSE_SPACED, 0, { FEET_64(5, 192) } },

	{ "1.00E+05",      FT, RB_REFUSE_EXPONENT, 0, { 0 } },
	{ "2.00E-01",      FT, RB_REFUSE_EXPONENT, 0, { HUNDREDTHS(20) } },
	{ "500000000000000000E-18", FT, RB_REFUSE_EXPONENT, 0, { RB_FOOT / 2 } },
	{ "1E5",           FT, RB_REFUSE_EXPONENT, 0, { 0 } },
	{ "-1e-1",         FT, RB_REFUSE_EXPONENT, 0, { -HUNDREDTHS(10) } },

	{ "0x1F",          FT, RB_REFUSE_HEX, 0, { 0 } },
	{ "0xg",           FT, RB_REFUSE_TEXT, 1, { 0 } },
	{ "0x1p3",         FT, RB_REFUSE_HEX, 0, { 0 } },

	{ "nan",           FT, RB_REFUSE_NAN, 0, { 0 } },
	{ "NaN",           FT, RB_REFUSE_NAN, 0, { 0 } },
	{ "-inf",          FT, RB_REFUSE_NAN, 0, { 0 } },
	{ "Infinity",      FT, RB_REFUSE_NAN, 0, { 0 } },

	{ "#NAME?",        FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "#DIV/0!",       FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "#VALUE!",       FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "#REF!",         FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "#NUM!",         FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "#N/A",          FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "Err:509",       FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "Err:502",       FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "##",            FT, RB_REFUSE_SHEET, 0, { 0 } },
	{ "#",             FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "####",          FT, RB_REFUSE_SHEET, 0, { 0 } },

	/* each of these is the UTF-8 of a good reading, read as Windows-1252 */
	{ "5'-3 \xC3\x82\xC2\xBD\"", FI, RB_REFUSE_MOJIBAKE, 0, { WANTED } },
	{ "5\xC3\xA2\xE2\x82\xAC\xC2\xB2-3 1/2\"", FI, RB_REFUSE_MOJIBAKE, 0, { WANTED } },
	{ "\xC3\xA2\xCB\x86\xE2\x80\x99" "0.42",
	                   FT, RB_REFUSE_MOJIBAKE, 0, { -HUNDREDTHS(42) } },
	{ "5\xC3\xA2\xE2\x82\xAC\xE2\x84\xA2-3\xC3\xA2\xE2\x82\xAC\xC2\x9D",
	                   FI, RB_REFUSE_MOJIBAKE, 0, { FEET_64(5, 192) } },
	{ "5.3\xEF\xBF\xBD", FT, RB_REFUSE_MOJIBAKE, 0, { 0 } },
	{ "5.3\xFF",       FT, RB_REFUSE_MOJIBAKE, 0, { 0 } },

	{ "5.10",          FI, RB_REFUSE_BARE, 0, { FEET_64(5, 640), HUNDREDTHS(510) } },
	{ "5.1",           FI, RB_REFUSE_BARE, 0,
	  { FEET_64(5, 64), HUNDREDTHS(510), FEET_64(5, 640) } },
	{ "5.29",          FI, RB_REFUSE_BARE, 0, { HUNDREDTHS(529) } },
	{ "-0.42",         FI, RB_REFUSE_BARE, 1, { -HUNDREDTHS(42) } },
	{ "-8",            FI, RB_REFUSE_BARE, 1, { 0 } },
	{ "8",             FI, RB_REFUSE_BARE, 0, { 8 * RB_FOOT, 8 * RB_INCH } },

	{ "5-3",           FT, RB_REFUSE_DASHED, 0, { FEET_64(5, 192) } },
	{ "5-3 1/2",       M,  RB_REFUSE_DASHED, 0, { WANTED } },
	{ "5-3-1/2",       IN, RB_REFUSE_DASHED, 0, { WANTED } },
	{ "13-5",          FT, RB_REFUSE_DASHED, 0, { FEET_64(13, 320) } },
	{ "5-13",          FT, RB_REFUSE_DASHED, 0, { 0 } },

	{ "5 1/2",         FI, RB_REFUSE_UNMARKED, 0,
	  { 352 * RB_SIXTYFOURTH, 66 * RB_INCH, FEET_64(5, 32) } },
	{ "5 1/2",         FT, RB_REFUSE_UNMARKED, 0,
	  { 352 * RB_SIXTYFOURTH, 66 * RB_INCH, FEET_64(5, 32) } },
	{ "5 " HALF,       FT, RB_REFUSE_UNMARKED, 0,
	  { 352 * RB_SIXTYFOURTH, 66 * RB_INCH, FEET_64(5, 32) } },
	{ "7 3/8",         M,  RB_REFUSE_UNMARKED, 0, { 472 * RB_SIXTYFOURTH } },
	{ "5  5/16",       M,  RB_REFUSE_UNMARKED, 0, { 340 * RB_SIXTYFOURTH } },
	{ "63-1/2",        M,  RB_REFUSE_UNMARKED, 0, { WANTED } },
	{ "5-1/2",         FI, RB_REFUSE_UNMARKED, 0, { FEET_64(5, 32), 352 * RB_SIXTYFOURTH } },
	{ "5-1/2",         FT, RB_REFUSE_UNMARKED, 0,
	  { 352 * RB_SIXTYFOURTH, 66 * RB_INCH, FEET_64(5, 32) } },
	{ "'1.5'",         M,  RB_REFUSE_TEXT, 4, { MILLI(1500), 15 * (RB_FOOT / 10) } },
	{ "'5'",           IN, RB_REFUSE_TEXT, 2, { 5 * RB_INCH, 5 * RB_FOOT } },
	{ "1/2",           FI, RB_REFUSE_UNMARKED, 0, { 32 * RB_SIXTYFOURTH, 6 * RB_INCH } },

	{ "5.2912345",     FT, RB_REFUSE_FINE, 0, { 52912 * (RB_FOOT / 10000) } },
	{ "-5.2912345",    FT, RB_REFUSE_FINE, 1, { -52912 * (RB_FOOT / 10000) } },
	{ "98.2399999999999", FT, RB_REFUSE_FINE, 0, { HUNDREDTHS(9824) } },
	{ "1.61328125001", M,  RB_REFUSE_FINE, 0, { 1613300000 } },
	{ "63.4999999 in", FI, RB_REFUSE_FINE, 0, { WANTED } },
	{ "63.291667 in",  FI, RB_REFUSE_FINE, 0, { 63292 * (RB_INCH / 1000) } },
	/* the feet before too fine inches are meant, too */
	{ "5'-3.333333\"", FT, RB_REFUSE_FINE, 3, { FEET_THOUSANDTHS(5, 3333) } },
	{ "5' 3.333333",   IN, RB_REFUSE_FINE, 3, { FEET_THOUSANDTHS(5, 3333) } },
	{ "5 ft 3.333333 in", M, RB_REFUSE_FINE, 5, { FEET_THOUSANDTHS(5, 3333) } },
	{ "12'-3.6666667\"", MM, RB_REFUSE_FINE, 4, { FEET_THOUSANDTHS(12, 3667) } },
	{ "5-3.3333333",   FI, RB_REFUSE_FINE, 2, { FEET_THOUSANDTHS(5, 3333) } },
	{ "5-3.3333333\"", FI, RB_REFUSE_FINE, 2, { FEET_THOUSANDTHS(5, 3333) } },
	{ "5-3.3333333",   FT, RB_REFUSE_DASHED, 0, { FEET_THOUSANDTHS(5, 3333) } },
	{ "-5'-3.333333\"", FT, RB_REFUSE_FINE, 4, { -FEET_THOUSANDTHS(5, 3333) } },
	{ "(5-3.3333333)", FI, RB_REFUSE_FINE, 3, { -FEET_THOUSANDTHS(5, 3333) } },
	{ "inv 5'-3.333333\"", M, RB_REFUSE_FINE, 7, { -FEET_THOUSANDTHS(5, 3333) } },
	{ "5'-11.9999999\"", FI, RB_REFUSE_FINE, 3, { 6 * RB_FOOT } },
	{ "5'-0.0000001\"", FI, RB_REFUSE_FINE, 3, { 5 * RB_FOOT } },
	{ "0.1000000000000000000000001", M, RB_REFUSE_FINE, 0, { MILLI(100) } },
	{ "5.0000000000000000000000001", M, RB_REFUSE_FINE, 0, { MILLI(5000) } },
	{ "0.00000000000000000000001", FT, RB_REFUSE_FINE, 0, { 0 } },
	{ "5.00000000000000000000001", FT, RB_REFUSE_FINE, 0, { 5 * RB_FOOT } },
	{ "5 1/128\"",     FI, RB_REFUSE_FINE_MARK, 2, { FEET_64(0, 321) } },
	{ "3/128\"",       FI, RB_REFUSE_FINE_MARK, 0, { FEET_64(0, 2) } },
	{ "1/4096\"",      FT, RB_REFUSE_FINE_MARK, 0, { FEET_64(0, 1) } },

	{ "-(0.42)",       FT, RB_REFUSE_SIGNS, 0, { -HUNDREDTHS(42) } },
	{ "-(3 1/10\")",   FI, RB_REFUSE_SIGNS, 0, { -78740000 } },
	{ "-(5.291667)",   FT, RB_REFUSE_SIGNS, 0, { -WANTED } },
	{ "--5.3",         FT, RB_REFUSE_SIGNS, 0, { -HUNDREDTHS(530) } },
	{ "inv -3.045",    M,  RB_REFUSE_SIGNS, 0, { -MILLI(3045) } },
	{ "(inv 3.045)",   M,  RB_REFUSE_SIGNS, 0, { -MILLI(3045) } },
	{ "inv (3.045)",   M,  RB_REFUSE_SIGNS, 0, { -MILLI(3045) } },
	{ "inv 3.045 inv", M,  RB_REFUSE_SIGNS, 0, { -MILLI(3045) } },
	{ "+-5.3",         FT, RB_REFUSE_SIGNS, 0, { -HUNDREDTHS(530) } },

	{ "32808'-11\"",   FI, RB_REFUSE_LONG, 0, { 0 } },
	{ "10001 m",       M,  RB_REFUSE_LONG, 0, { 0 } },
	{ "99999999999999999999", FT, RB_REFUSE_LONG, 0, { 0 } },
	{ "99999999999999999999'-3\"", FI, RB_REFUSE_LONG, 0, { 0 } },
	{ "9999999999",    MM, RB_REFUSE_LONG, 0, { 0 } },
	/* without the part that cannot be, the rest is no candidate */
	{ "99999999999999999999'-3.3333333\"", FI, RB_REFUSE_LONG, 0, { 0 } },
	{ "99999999999999999999'-3 1/3\"", FI, RB_REFUSE_LONG, 0, { 0 } },
};

/* With the rod's length given: 25 ft. */
static const struct refuse_case limit_refusals[] = {
	{ "1624",   M,  RB_REFUSE_POINT_LOST, 0, { MILLI(1624) } },
	{ "13020",  M,  RB_REFUSE_POINT_LOST, 0, { MILLI(1302) } },
	{ "532",    FT, RB_REFUSE_POINT_LOST, 0, { HUNDREDTHS(532) } },
	{ "13020",  FT, RB_REFUSE_POINT_LOST, 0, { HUNDREDTHS(1302) } },
	{ "1624",   FT, RB_REFUSE_POINT_LOST, 0,
	  { HUNDREDTHS(1624), 1624 * (RB_FOOT / 1000) } },
	{ "1000",   FT, RB_REFUSE_POINT_LOST, 0, { HUNDREDTHS(1000), HUNDREDTHS(100) } },
	{ "2600",   FT, RB_REFUSE_POINT_LOST, 0, { HUNDREDTHS(260) } },
	{ "999",    FT, RB_REFUSE_POINT_LOST, 0, { HUNDREDTHS(999) } },
	{ "-1624",  M,  RB_REFUSE_POINT_LOST, 1, { -MILLI(1624) } },
	{ "162400", M,  RB_REFUSE_POINT_LOST, 0, { MILLI(1624) } },
	{ "635",    IN, RB_REFUSE_POINT_LOST, 0, { WANTED } },
	{ "1624",   IN, RB_REFUSE_POINT_LOST, 0, { 1624 * (RB_INCH / 10) } },
	{ "59125",  IN, RB_REFUSE_POINT_LOST, 0, { 473 * (RB_INCH / 8) } },
	{ "16",     M,  RB_REFUSE_POINT_LOST, 0, { MILLI(1600) } },
	{ "162",    M,  RB_REFUSE_POINT_LOST, 0, { MILLI(1620), MILLI(162) } },
	{ "99999",  M,  RB_REFUSE_POINT_LOST, 0, { 0 } },
	{ "16130",  MM, RB_REFUSE_POINT_LOST, 0, { MILLI(1613) } },
	{ "99999",  MM, RB_REFUSE_POINT_LOST, 0, { 0 } },
	{ "100",    FT, RB_REFUSE_POINT_LOST, 0, { HUNDREDTHS(100), HUNDREDTHS(1000) } },
	{ "26",     FT, RB_REFUSE_POINT_LOST, 0, { HUNDREDTHS(260), HUNDREDTHS(26) } },
	{ "5O",     FT, RB_REFUSE_LETTER, 1, { HUNDREDTHS(500), HUNDREDTHS(50) } },
	{ "26OO",   FT, RB_REFUSE_LETTER, 2, { HUNDREDTHS(260) } },
};

static const struct refuse_case comma_refusals[] = { /* separated by ; or TAB */
	{ "1.234,50", FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "5,3,2",    FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "2,00E-01", FT, RB_REFUSE_EXPONENT, 0, { HUNDREDTHS(20) } },
	{ "25,00" NBSP "%", FT, RB_REFUSE_TEXT, 7, { 0 } },
	{ "1.204",     MM, RB_REFUSE_THOUSANDS, 0, { MILLI(1204), 1204000 } },
	{ "1,204",     MM, RB_REFUSE_THOUSANDS, 0, { MILLI(1204), 1204000 } },
	{ "-0.454",    MM, RB_REFUSE_THOUSANDS, 1, { -MILLI(454), -454000 } },
	{ "inv 1.204", MM, RB_REFUSE_THOUSANDS, 4, { -MILLI(1204), -1204000 } },
	{ "206.500",   MM, RB_REFUSE_THOUSANDS, 0, { MILLI(206500), 206500000 } },
	{ "5,2912345", FT, RB_REFUSE_FINE, 0, { 52912 * (RB_FOOT / 10000) } },
};

static const struct refuse_case elevation_refusals[] = {
	{ "512.37",   FI, RB_REFUSE_BARE, 0, { HUNDREDTHS(51237) } },
	{ "5l2.37 ft", FI, RB_REFUSE_LETTER, 1, { HUNDREDTHS(51237) } },
	{ "I",        FT, RB_REFUSE_TEXT, 0, { 0 } }, /* rather a name */
	{ "I-5",      FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "I 5",      FT, RB_REFUSE_TEXT, 0, { 0 } },
	{ "98.5",     FI, RB_REFUSE_BARE, 0, { HUNDREDTHS(9850) } },
	{ "(98.24)",  FT, RB_REFUSE_INVERTED, 0, { -HUNDREDTHS(9824) } },
	{ "inv 98.24", FT, RB_REFUSE_INVERTED, 0, { HUNDREDTHS(9824) } },
	{ "-(98.24)", FT, RB_REFUSE_INVERTED, 0, { -HUNDREDTHS(9824) } },
	{ "--98.24",  FT, RB_REFUSE_SIGNS, 0, { -HUNDREDTHS(9824) } },
	{ "1,234",    FT, RB_REFUSE_COMMA, 0, { 1234 * (RB_FOOT / 1000), 1234 * RB_FOOT } },
	{ "512,37",   FT, RB_REFUSE_COMMA, 0, { HUNDREDTHS(51237) } },
	{ "12,34.50", FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "1234,567.5", FT, RB_REFUSE_POINTS, 0, { 0 } },
	{ "1234567890 123.123456", FT, RB_REFUSE_SPACED, 0, { 0 } },
	{ "1 234.50", FT, RB_REFUSE_SPACED, 0, { HUNDREDTHS(123450) } },
	{ "45780",    FT, RB_REFUSE_SERIAL, 0,
	  { FEET_64(5, 192), FEET_64(3, 320), HUNDREDTHS(530) } },
};

static const struct refuse_case tape_refusals[] = {
	{ "inv 5'",   FT, RB_REFUSE_INVERTED, 0, { 5 * RB_FOOT } },
	{ "(5')",     FT, RB_REFUSE_INVERTED, 0, { -5 * RB_FOOT } },
};

static const struct refuse_case drop_refusals[] = {
	{ "-3.25",    FT, RB_REFUSE_NEGATIVE, 0, { HUNDREDTHS(325) } },
	{ "-3'-3\"",  FI, RB_REFUSE_NEGATIVE, 0, { FEET_64(3, 192) } },
	{ "(3.25)",   FT, RB_REFUSE_INVERTED, 0, { HUNDREDTHS(325) } },
	{ "inv 3.25", FT, RB_REFUSE_INVERTED, 0, { HUNDREDTHS(325) } },
};

static const struct refuse_case run_refusals[] = {
	{ "-12.5",    FT, RB_REFUSE_NEGATIVE, 0, { HUNDREDTHS(1250) } },
	{ "-12'-6\"", FI, RB_REFUSE_NEGATIVE, 0, { FEET_64(12, 384) } },
	{ "(12.5)",   FT, RB_REFUSE_INVERTED, 0, { HUNDREDTHS(1250) } },
	{ "1,250",    FT, RB_REFUSE_COMMA, 0, { 1250 * (RB_FOOT / 1000), 1250 * RB_FOOT } },
	{ "12-6",     FT, RB_REFUSE_DASHED, 0, { FEET_64(12, 384) } },
	{ "5 1/2",    IN, RB_REFUSE_UNMARKED, 0,
	  { 352 * RB_SIXTYFOURTH, 66 * RB_INCH, FEET_64(5, 32) } },
};
/* clang-format on */

static int maybes_of(const struct refuse_case *c)
{
	int count = 0;

	while (count < RB_MAYBE && c->maybe[count] != 0)
		count++;
	return count;
}

static int wrong_refusal(const struct refuse_case *c, struct rb_reading got)
{
	int maybes = maybes_of(c), wrong;

	wrong = got.refusal != c->refusal || got.where != c->where ||
		got.maybes != maybes || got.value.nm != 0 || got.odd_fraction ||
		got.sixtyfourth || got.inverted;
	for (int i = 0; i < maybes && !wrong; i++)
		wrong = got.maybe[i].nm != c->maybe[i];
	if (wrong)
		print_error(
			"\"%s\" in %s: got refusal %d, not %d, at %zu, %d candidates: "
			"%lld %lld %lld\n",
			c->text, rb_unit_name(c->unit), (int)got.refusal, (int)c->refusal,
			got.where, got.maybes, (long long)got.maybe[0].nm,
			(long long)got.maybe[1].nm, (long long)got.maybe[2].nm);
	return wrong;
}

#define REFUSES_ALL(table, kind, comma, limit)                                           \
	do {                                                                             \
		for (size_t i = 0; i < sizeof(table) / sizeof *(table); i++)             \
			wrong += wrong_refusal(&(table)[i],                              \
					       parse((table)[i].text, (table)[i].unit,   \
						     kind, comma, limit));               \
	} while (0)

static void refuses_the_rest(void **state)
{
	int wrong = 0;

	(void)state;
	REFUSES_ALL(rod_refusals, RB_OF_ROD, false, rb_length_none());
	REFUSES_ALL(limit_refusals, RB_OF_ROD, false, rb_length_of(25 * RB_FOOT));
	REFUSES_ALL(comma_refusals, RB_OF_ROD, true, rb_length_none());
	REFUSES_ALL(elevation_refusals, RB_OF_ELEVATION, false, rb_length_none());
	REFUSES_ALL(tape_refusals, RB_OF_TAPE, false, rb_length_none());
	REFUSES_ALL(drop_refusals, RB_OF_DROP, false, rb_length_none());
	REFUSES_ALL(run_refusals, RB_OF_RUN, false, rb_length_none());
	assert_int_equal(wrong, 0);
}

/* 0 is no length of a rod; one nanometre is. */
static void takes_any_limit(void **state)
{
	(void)state;
	assert_int_equal(parse("1624", M, RB_OF_ROD, false, rb_length_of(0)).refusal,
			 RB_READ);
	assert_int_equal(parse("5 29", FT, RB_OF_ROD, false, rb_length_of(0)).maybes, 1);
	assert_int_equal(parse("1624", M, RB_OF_ROD, false, rb_length_of(1)).refusal,
			 RB_REFUSE_POINT_LOST);
}

/* Its likely reading is 0, which ends the candidates of a row above. */
static void takes_a_lone_letter_for_zero(void **state)
{
	struct rb_reading r = parse("O", FT, RB_OF_ROD, false, rb_length_none());

	(void)state;
	assert_int_equal(r.refusal, RB_REFUSE_LETTER);
	assert_int_equal(r.maybes, 1);
	assert_int_equal(r.maybe[0].nm, 0);
}

/* Zeros behind the point are figures too: more of them than a number can hold. */
static void takes_any_number_of_zeros(void **state)
{
	static const char zeros[] = "0.00000000000000000000000000000000000000";
	static const char tiny[] = "0.00000000000000000000000000000000000001";

	(void)state;
	assert_int_equal(parse(zeros, M, RB_OF_ROD, false, rb_length_none()).refusal,
			 RB_READ);
	assert_int_equal(parse(tiny, M, RB_OF_ROD, false, rb_length_none()).refusal,
			 RB_REFUSE_FINE);
}

/* The tables must not have forgotten one. */
static void every_refusal_has_a_row(void **state)
{
	bool seen[RB_REFUSALS] = { [RB_READ] = true };

	(void)state;
	for (size_t i = 0; i < sizeof rod_refusals / sizeof *rod_refusals; i++)
		seen[rod_refusals[i].refusal] = true;
	for (size_t i = 0; i < sizeof comma_refusals / sizeof *comma_refusals; i++)
		seen[comma_refusals[i].refusal] = true;
	seen[limit_refusals[0].refusal] = true;
	seen[tape_refusals[0].refusal] = true;
	seen[run_refusals[0].refusal] = true;
	for (int i = 0; i < RB_REFUSALS; i++)
		if (!seen[i])
			print_error("refusal %d has no row\n", i);
	for (int i = 0; i < RB_REFUSALS; i++)
		assert_true(seen[i]);
}

/* Whatever the bytes are, the answer is a reading or one of the refusals. */
static void takes_any_bytes(void **state)
{
	static const char alphabet[] =
		"0159.,'\"-/ ()+:#eoltminfv\xC2\xBD\xE2\x80\x99\xFF";
	const struct rb_reading_rules rules = { FI, RB_OF_ROD, false,
						rb_length_of(25 * RB_FOOT) };
	uint64_t random = 7;

	(void)state;
	for (int i = 0; i < 200000; i++) {
		char text[24];
		size_t length = (size_t)(i % (int)sizeof text);
		struct rb_reading got;

		for (size_t k = 0; k < length; k++) {
			random = random * 6364136223846793005u + 1442695040888963407u;
			text[k] = alphabet[(random >> 33) % (sizeof alphabet - 1)];
		}
		got = rb_reading_parse(text, length, &rules);
		assert_true(got.refusal < RB_REFUSALS && got.where <= length &&
			    got.maybes <= RB_MAYBE);
		assert_true(rb_length_absolute(got.value).nm <= RB_LENGTH_MAX);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(refuses_the_rest),
		cmocka_unit_test(takes_any_limit),
		cmocka_unit_test(takes_a_lone_letter_for_zero),
		cmocka_unit_test(takes_any_number_of_zeros),
		cmocka_unit_test(every_refusal_has_a_row),
		cmocka_unit_test(takes_any_bytes),
	};

	return cmocka_run_group_tests_name("refusal", tests, NULL, NULL);
}
