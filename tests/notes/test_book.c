/* SPDX-License-Identifier: MIT */
/* test_book.c - a book as it was typed: columns, habits, what is wrong. */
#include "notes.h"

#define HEAD                      "point,known elevation,backsight,intermediate,foresight\n"
#define FT(feet, ten_thousandths) ((feet)*RB_FOOT + (ten_thousandths) * (RB_FOOT / 10000))

/* ---- columns ---- */

static void every_column(void **state)
{
	struct notes notes = notes_of(
		"point,known elevation,bs,is,fs,bs dist,fs dist,ch,dip,hi,elev,"
		"rod on,remarks,correction,adjusted\n"
		"BM,100.00,4.27,,,90,,0,,104.27,100.00,,brass cap,,\n"
		"MH-1,,,7.48,,,75,1+25.5,3.25,,96.79,rim,\"south, side\",0.01,96.80\n"
		"TP-1,,5.11,,6.03,80,85,,,103.35,98.24,,,,\n");
	static const struct {
		enum rb_column column;
		uint32_t row;
		int64_t nm; /* RB_NOT_GIVEN_NM: empty */
	} wanted[] = {
		{ RB_BACKSIGHT, 0, FT(4, 2700) },
		{ RB_BACKSIGHT, 1, RB_NOT_GIVEN_NM },
		{ RB_BACKSIGHT, 2, FT(5, 1100) },
		{ RB_INTERMEDIATE, 0, RB_NOT_GIVEN_NM },
		{ RB_INTERMEDIATE, 1, FT(7, 4800) },
		{ RB_FORESIGHT, 2, FT(6, 300) },
		{ RB_BACKSIGHT_DISTANCE, 0, FT(90, 0) },
		{ RB_BACKSIGHT_DISTANCE, 2, FT(80, 0) },
		{ RB_FORESIGHT_DISTANCE, 1, FT(75, 0) },
		{ RB_FORESIGHT_DISTANCE, 2, FT(85, 0) },
		{ RB_CHAINAGE, 0, 0 },
		{ RB_CHAINAGE, 1, FT(125, 5000) },
		{ RB_CHAINAGE, 2, RB_NOT_GIVEN_NM },
		{ RB_MEASURE_DOWN, 1, FT(3, 2500) },
		{ RB_HEIGHT_OF_INSTRUMENT, 0, FT(104, 2700) },
		{ RB_ELEVATION, 1, FT(96, 7900) },
	};
	const struct rb_book *book = notes.book;

	(void)state;
	assert_non_null(book);
	assert_int_equal(notes.findings.count, 0);
	assert_int_equal(book->rows, 3);
	for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
		assert_int_equal(rb_book_value(book, wanted[i].column, wanted[i].row).nm,
				 wanted[i].nm);
	assert_int_equal(rb_book_known(book, book->row[0].point).nm, FT(100, 0));
	assert_false(rb_length_given(rb_book_known(book, book->row[1].point)));
	assert_false(rb_length_given(rb_book_known(book, RB_NO_POINT)));
	assert_int_equal(book->rod_on[1], RB_ON_RIM);
	assert_int_equal(book->rod_on[2], RB_ON_UNSAID);
	assert_string_equal(book->text + book->remarks[0], "brass cap");
	assert_string_equal(book->text + book->remarks[1], "south, side");
	assert_string_equal(book->text + book->remarks[2], "");
	assert_string_equal(rb_book_typed(book, 2), "TP-1");
	assert_int_equal(rb_book_place(book, 1, RB_INTERMEDIATE).line, 3);
	assert_int_equal(rb_book_place(book, 1, RB_INTERMEDIATE).cell, 3);
	assert_string_equal(rb_book_place(book, 1, RB_INTERMEDIATE).point, "MH-1");
	assert_string_equal(rb_book_place(book, 1, RB_INTERMEDIATE).heading,
			    "intermediate");
	assert_int_equal(rb_book_row_place(book, 1).cell, RB_WHOLE_ROW);
	assert_null(rb_book_row_place(book, 1).heading);
	notes_end(&notes);
}

/* A column in which nothing stands has no array, and a missing one no cell. */
static void columns_without_values(void **state)
{
	struct notes notes = notes_of("point,known elevation,bs,is,fs\nBM,100,4.27,,\n");

	(void)state;
	assert_null(notes.book->value[RB_INTERMEDIATE]);
	assert_int_equal(notes.book->cell_of[RB_INTERMEDIATE], 3);
	assert_int_equal(notes.book->cell_of[RB_REMARKS], -1);
	assert_null(notes.book->remarks);
	assert_false(rb_length_given(rb_book_value(notes.book, RB_CHAINAGE, 0)));
	notes_end(&notes);
}

static void lines_of_rows(void **state)
{
	struct notes notes =
		notes_of("title,,\n\npoint,known elevation,bs,remarks\n\n\n"
			 "BM,100,4.27,\"two\nlines\"\n# comment\nA,,,\n,,,\nB,,,\n");
	static const uint32_t lines[] = { 6, 9, 11 };

	(void)state;
	assert_int_equal(notes.book->rows, 3);
	for (uint32_t i = 0; i < 3; i++)
		assert_int_equal(rb_book_line(notes.book, i), lines[i]);
	notes_end(&notes);
}

static void places_of_the_rod(void **state)
{
	static const char *const names[] = {
		"ground",        "hub",     "invert", "top of pipe", "inside top",
		"trench bottom", "bedding", "rim",    "floor",       "other",
	};

	(void)state;
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		enum rb_rod_on place = rb_rod_on_parse(names[i], strlen(names[i]));

		assert_int_equal(place, RB_ON_GROUND + (int)i);
		assert_string_equal(rb_rod_on_name(place), names[i]);
	}
	assert_int_equal(rb_rod_on_parse(" Trench  BOTTOM ", 16), RB_ON_TRENCH_BOTTOM);
	assert_int_equal(rb_rod_on_parse("crown", 5),
			 RB_ON_UNSAID); /* of which surface? */
	assert_int_equal(rb_rod_on_parse("", 0), RB_ON_UNSAID);
	assert_string_equal(rb_rod_on_name(RB_ON_UNSAID), "");
}

/* ---- what a row may not hold, and the habits of a book ---- */

/* clang-format off */
static const struct fault_case {
	const char *what, *csv, *findings;
} fault_cases[] = {
	/* known elevations */
	{ "known twice, the same",   HEAD "BM,100.00,4.27,,\nBM,100.00,,,4.27\n", "" },
	{ "known twice",             HEAD "BM,100.00,4.27,,\nBM,100.01,,,4.27\n", "known-twice@3:1" },
	{ "the same in metres",      HEAD "BM,30.48 m,4.27,,\nbm,100.00,,,4.27\n", "" },
	{ "a name for an elevation", HEAD "BM,BM-1,4.27,,\n", "name-for-elevation@2:1" },
	{ "a date is no name",       HEAD "BM,5-Mar,4.27,,\n", "date-cell@2:1" },
	{ "no name with it",         HEAD ",100.00,,,\nBM,1.00,4.27,,\n", "no-name@2:1" },
	{ "none",                    HEAD "BM,,4.27,,\n", "no-known-elevation@1" },
	{ "no sight",                HEAD "BM,100.00,,,\n", "no-sight@1" },
	{ "no row",                  HEAD, "no-sight@1" },
	/* no header of ours */
	{ "names under remarks",     "Remarks,BM,BS,FS\nA,100,4.27,\n", "no-point-column@1:0" },
	{ "names in a description",  "no.,bs,fs,Description\n1,4.27,,A\n", "no-point-column@1:3" },
	{ "a heading like point",    "point no.,bs,remarks\nA,4.27,\n", "no-header@1 unknown-column@1:0" },
	{ "remarks and no sights",   "remarks,elevation\nA,100\n", "no-header@1" },
	{ "sights alone",            "bm,bs,fs\n100,4.27,\n", "no-header@1" },
	{ "a site record",           "point,elevation,adjusted,rod_on,remarks,sha256\nA,100,,,,0\n", "site-record@1" },
	{ "told once",               HEAD "BM,x,y,,\n", "not-a-reading@2:2 name-for-elevation@2:1" },
	{ "negative elevation",      HEAD "BM,-3.50,4.27,,\n", "" },
	{ "elevation with thousands", HEAD "BM,\"1,234.50\",4.27,,\n", "" },
	{ "the opening elevation",   "point,bs,fs,elevation\nBM,4.27,,100.00\n", "" },
	{ "not on the first sight",  "point,bs,fs,elevation\nBM,4.27,,\nTP,,3.00,101.27\n", "no-known-elevation@1" },
	{ "not beside its column",   "point,known elevation,bs,elevation\nBM,,4.27,100.00\n", "no-known-elevation@1" },
	/* sights */
	{ "bs and is",               HEAD "BM,100,4.27,5.00,\n", "sights-together@2:3" },
	{ "is and fs",               HEAD "BM,100,4.27,,\nA,,,5.00,6.00\n", "sights-together@3:3" },
	{ "all three",               HEAD "BM,100,4.27,,\nA,,3.00,5.00,6.00\n", "sights-together@3:3" },
	{ "bs and fs",               HEAD "BM,100,4.27,,\nA,,3.00,,6.00\n", "" },
	{ "no name, bs",             HEAD "BM,100,4.27,,\n,,3.12,,\n", "no-name@3:2" },
	{ "no name, fs",             HEAD "BM,100,4.27,,\n,,,,6.00\n", "" }, /* told where it ends a run */
	{ "no name, bs and fs",      HEAD "BM,100,4.27,,\n,,3.12,,6.00\n", "no-name@3:2" },
	{ "no name, is",             HEAD "BM,100,4.27,,\n,,,6.00,\n", "" },
	{ "beyond the rod, marked",  HEAD "BM,100,25'-1\",,\n", "beyond-rod@2:2" },
	{ "beyond the rod, bare",    HEAD "BM,100,25.13,,\n", "beyond-rod@2:2" },
	{ "as long as the rod",      HEAD "BM,100,25.00,,\nA,,,12.34,\n", "" },
	{ "a given rod",             "rod,13\n" HEAD "BM,100,13.12 ft,,\nA,,,13.00 ft,\n", "beyond-rod@3:2" },
	{ "inverted beyond it",      HEAD "BM,100,4.27,,\nA,,,-25'-2\",\n", "beyond-rod@3:3 inverted" },
	{ "a longer one",            "rod,30\n" HEAD "BM,100,29.13,,\n", "" },
	{ "a lost point",            HEAD "BM,100,427,,\n", "lost-point@2:2" },
	{ "a date",                  HEAD "BM,100,5-Mar,,\n", "date-cell@2:2" },
	{ "an odd fraction",         "unit,ft-in\n" HEAD "BM,100,5'-3 1/10\",,\n", "odd-fraction@3:2" },
	{ "a place of the rod",      "point,known elevation,bs,rod on\nBM,100,4.27,chair\n", "bad-rod-on@2:3" },
	{ "a unit of a row",         "point,known elevation,bs,unit\nBM,100,4.27,cubits\n", "bad-unit@2:3" },
	/* many at once, in one go */
	{ "all of them",             HEAD "BM,100,5-Mar,,\nA,,,x,\nB,,,5 29,6.0O\n", "date-cell@2:2 not-a-reading@3:3 spaced-digits@4:3 letter-for-digit@4:4" },
	/* feet.inches: never over .11, and .10 or .11 at least once */
	{ "feet.inches",             HEAD "BM,100,5.10,,\nA,,,4.3,\nB,,,6.11,\n", "feet-inches-pattern" },
	{ "one over",                HEAD "BM,100,5.10,,\nA,,,4.3,\nB,,,6.12,\n", "" },
	{ "none of ten",             HEAD "BM,100,5.09,,\nA,,,4.3,\nB,,,6.02,\n", "" },
	{ "tenths only",             HEAD "BM,100,5.9,,\nA,,,4.3,\nB,,,6,\n", "tenths-only" },
	{ "a tenth is one",          HEAD "BM,100,5.1,,\nA,,,4.3,\nB,,,6.1,\n", "tenths-only" },
	{ "three places",            HEAD "BM,100,5.100,,\n", "" },
	{ "in metres",               "unit,m\n" HEAD "BM,100,1.10,,\nA,,,1.3,\n", "" },
	{ "inches are marked",       HEAD "BM,100,5.10,,\nA,,,4'-3\",\n", "" },
	{ "elevations do not tell",  HEAD "BM,100.57,5.10,,\n", "feet-inches-pattern" },
	/* inverted rods: one note */
	{ "a minus",                 HEAD "BM,100,4.27,,\nA,,,-3.45,\n", "inverted" },
	{ "brackets",                HEAD "BM,100,4.27,,\nA,,,(3.45),\nB,,,inv 3.45,\n", "inverted" },
	{ "the word behind",         HEAD "BM,100,4.27,,\nA,,,3.45 inv,\n", "inverted" },
	{ "inverted where no rod is", "point,known elevation,bs,is,fs,dip\nBM,(100),4.27,,,\nA,,,3.45,,inv 2.1\nB,,,3.45,,(2.1)\nC,,,3.45,,2.1\n", "inverted-mark@2:1 inverted-mark@3:5 inverted-mark@4:5" },
	{ "a tape that goes up",     "point,known elevation,bs,is,dip\nBM,100,4.27,,\nA,,,3.45,-2.1\n", "negative@3:4" },
	/* a heading's own unit */
	{ "the unit of the book",    "unit,m\npoint,known elevation (m),BS (m),is,FS (metres),bs dist (m)\nBM,100,1.5,,,20\nA,,,,1.4,\n", "" },
	{ "another unit",            "point,known elevation (m),BS (m),is,fs,bs dist (ft)\nBM,100,1.57,,,20\nA,,,,1.44,\n", "heading-unit@1:1" },
	{ "runs in a book of inches", "unit,ft-in\npoint,known elevation (ft),BS (ft-in),fs dist (ft)\nBM,100,5'-3\",20\n", "" },
	{ "readings in feet only",   "unit,ft-in\npoint,known elevation,BS (ft)\nBM,100,5'-3\"\n", "heading-unit@2:2" },
	{ "a row of units",          HEAD ",(ft),(ft),ft,[ft]\nBM,100,1.57,,\nA,,,,1.44\n", "units-row@2" },
	{ "a row of other units",    HEAD "m,m,m,m,m\nBM,100,1.57,,\nA,,,,1.44\n", "units-row@2 heading-unit@2:1" },
	{ "the unit of the rows",    "point,known elevation,BS (m),unit\nBM,100,1.57,m\n", "" },
	/* struck out */
	{ "dashes for nothing",      "point,known elevation,bs,is,fs,ch,rod on,elev,unit\nBM,100,4.27,-,--,\u2014,-,\u2212,-\nA,-,\u2013,3.45,,,,,\n", "" },
	{ "dashes are no sight",     HEAD "BM,100,-,,\n", "no-sight@1" },
	/* keys where they are not read */
	{ "a key below the header",  HEAD "unit,m\nBM,100,4.27,,\ntolerance: 0.02 ft\n", "key-below-header@2:0 key-below-header@4:0" },
	{ "as above the header",     "unit,ft\n" HEAD "BM,100,4.27,,\nunit,ft\n", "" },
	{ "not as above the header", "unit,ft\n" HEAD "BM,100,4.27,,\nunit,m\n", "same-key-twice@4:0" },
	{ "the same under another",  "rod,16\npoint,bs,known elevation\nBM,4.27,100\nrod,16\n", "" },
	{ "its value anywhere",      HEAD "BM,100,4.27,,\nrod,,,4.2,\ntolerance,,,,0.02 ft\n", "key-below-header@3:0 key-below-header@4:0" },
	{ "under no point column",   "no.,point,bs,known elevation\nunit,m\n1,BM,4.27,100\nrod: 16\n", "unknown-column@1:0 key-below-header@2:0 key-below-header@4:0" },
	{ "under sights",            "bs,fs,point,known elevation\nunit,m\n4.27,,BM,100\nproject,Larch St\n", "key-below-header@2:0" },
	{ "a key and no value",      HEAD "BM,100,4.27,,\nrod,,,,\nunit:,-,,,\n", "" },
	{ "words below the header",  HEAD "BM,100,4.27,,\nproject,Larch St\ndate: 3/17\ncrew,,,,Ann\nweather,,,,\n", "" },
	{ "words under any columns", "fs,point,bs,known elevation\n,BM,4.27,100\n,project,,\nP,project,P\n", "" },
	{ "points with such names",  HEAD "Datum,100,,,\nDatum,,4.27,,\ncrew,,,4.2,\nweather,,,,fog 1,\n", "" },
	{ "and a sight written wrong", "unit,ft-in\n" HEAD "BM,100,4'-3\",,\ndatum,,,5.29,\ncrew,,,\"5'-13\"\"\",\n", "no-unit-mark@4:3 inches-over-eleven@5:3" },
	{ "or as thousands",         "unit;mm\npoint;known elevation;bs;is\nBM;100;427;\ndatum;;;1.331\n", "thousands@4:3" },
	{ "a date is a word",        HEAD "BM,100,4.27,,\ndate,3/17/2026,,,\ninstrument,,,16240,\n", "" },
	{ "a remark is no key",      "point,known elevation,bs,remarks\nBM,100,4.27,rod: 16\nA,,,unit\n", "" },
	{ "two keys are none",       "bs,fs,point,known elevation\n4.27,,BM,100\nunit,rod\n", "not-a-reading@3:0 not-a-reading@3:1" },
	{ "no name",                 HEAD "BM,$100,4.27,,\n", "not-a-reading@2:1" },
	{ "two signs",               HEAD "BM,100,4.27,,\nA,,,-(3.45),\n", "two-signs@3:3" },
	/* a sheet's formulas */
	{ "64ths",                   HEAD "BM,100,5.29166666666667,,\nA,,,4.2708333,\n", "read-as-64ths@2:2 read-as-64ths@3:3" },
	/* the note keeper's sums */
	{ "sums",                    HEAD "BM,100,4.27,,\nA,,,,3.12\nsum,,104.27,,33.12\n", "" },
	{ "a colon behind the word",           HEAD "BM,100,4.27,,\nTotal:,,x,,\nClosure,,,,0.01\nMISCLOSURE,,-0.01,ok,\n", "" },
	{ "sums by other words",     HEAD "BM,100,4.27,,\nA,,,,3.12\nPage 1 total,,104.27,,33.12\nSum (BS),,4.27,,\n\u03A3 FS,,,,3.12\nerror of closure,,,,0.01\n", "" },
	{ "sum and Sum: are no near names", HEAD "BM,100,4.27,,\nsub total,,4.27,,\nsub-total,,,,3.12\n", "" },
	{ "points like sums",        HEAD "BM,100,4.27,,\nSUMP-1,,,5.1,\nTotal station,,,5.2,\nSummit,,,5.3,\n", "" },
	{ "a point or a sum",        HEAD "BM,100,4.27,,\nTotal 3,,,,4.27\n", "sum-or-point@3:0" },
	{ "a remark with such a name", HEAD "BM,100,4.27,,\nTotal 3,,,,\n", "" },
	{ "sums like a turning point", HEAD "BM,100,4.27,,\nTotal page 1,,,,4.27\nTotal page 1,,4.12,,\n", "sum-or-point@4:0" },
	{ "sums of a sheet",         HEAD "BM,100,4.27,,\nA,,,,3.12\nsum,#N/A,#REF!,,5-Mar\n", "unread-sum@4:2 unread-sum@4:4 unread-sum@4:1" },
	{ "sums over the rod",       HEAD "BM,100,4.27,,\nTotal page 1,,,,34.27\nTotal page 1,,34.12,,\n", "" },
	{ "a word among the sums",   HEAD "BM,100,4.27,,\ntotals,,checks,,\n", "" },
	/* comments */
	{ "a comment",               HEAD "# from,,,,\nBM,100,4.27,,\n", "" },
	{ "a # with a sight",        HEAD "BM,100,4.27,,\n#1,,,5.12,\n", "" },
};
/* clang-format on */

static void faults_and_habits(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof fault_cases / sizeof *fault_cases; i++) {
		char found[ROOM];

		wrong += differs(fault_cases[i].what, codes_of(fault_cases[i].csv, found),
				 fault_cases[i].findings);
	}
	assert_int_equal(wrong, 0);
}

/* An elevation on the row that opens the book, or above it, is probably the benchmark's.
 */
static void names_the_likely_known_elevation(void **state)
{
	static const struct {
		const char *csv;
		uint32_t line; /* 0: none is named */
	} cases[] = {
		{ "point,known elevation,bs,fs,elevation\nBM,,4.27,,100.00\n", 2 },
		{ "point,known elevation,bs,fs,elevation\nX,,,,99.00\nBM,,4.27,,\n", 2 },
		{ "point,bs,fs,elevation\nBM,,,100.00\nBM,4.27,,\n", 2 },
		{ "point,bs,fs,elevation\nBM,4.27,,\nTP,,3.00,101.27\n", 0 },
		{ "point,bs,fs\nBM,4.27,\n", 0 },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct notes notes = notes_of(cases[i].csv);
		const struct rb_finding *found =
			finding_of(&notes.findings, RB_CODE_NO_KNOWN_ELEVATION);
		uint32_t line = found && found->argument[0].kind == RB_LINE
					? (uint32_t)found->argument[0].count
					: 0;

		if (!found || line != cases[i].line) {
			print_error("%s: line %u\n", cases[i].csv, line);
			wrong++;
		}
		notes_end(&notes);
	}
	assert_int_equal(wrong, 0);
}

/* Values are exactly what was written; the note names the lines of inverted readings. */
static void inverted_readings_are_negative(void **state)
{
	struct notes notes = notes_of("unit,m\n" HEAD "BM,160.528,2.185,,\nA,,,-3.045,\n"
				      "B,,,(1.276),\nC,,,inv 3.412,\nD,,,3.412 INV,\n");
	static const int64_t mm[] = { -3045, -1276, -3412, -3412 };

	(void)state;
	assert_non_null(notes.book);
	for (uint32_t i = 0; i < 4; i++)
		assert_int_equal(rb_book_sight(notes.book, RB_INTERMEDIATE, i + 1).nm,
				 mm[i] * RB_MILLIMETRE);
	assert_int_equal(notes.findings.count, 1);
	assert_string_equal(notes.findings.item[0]->argument[0].text, "4, 5, 6 and 7");
	assert_int_equal(notes.findings.item[0]->argument[1].count, 4);
	notes_end(&notes);
}

static void a_line_with_two_inverted_readings_is_told_once(void **state)
{
	struct notes notes =
		notes_of(HEAD "BM,100,4.27,,\nA,,-3.45,,-3.55\nB,,,-2.10,\n");
	const struct rb_finding *note = finding_of(&notes.findings, RB_CODE_INVERTED);

	(void)state;
	assert_string_equal(note->argument[0].text, "3 and 4");
	assert_int_equal(note->argument[1].count, 2);
	notes_end(&notes);
}

static void many_inverted_readings(void **state)
{
	char csv[ROOM] = HEAD "BM,100,4.27,,\n";
	const char *lines;
	struct notes notes;

	(void)state;
	for (int i = 0; i < 25; i++)
		add_text(csv, "A%d,,,-3.45,\n", i);
	notes = notes_of(csv);
	lines = finding_of(&notes.findings, RB_CODE_INVERTED)->argument[0].text;
	assert_memory_equal(lines, "3, 4, 5, ", 9);
	assert_string_equal(lines + strlen(lines) - 13, "22 and 5 more");
	notes_end(&notes);
}

static void formulas_are_read_as_64ths(void **state)
{
	struct notes notes = notes_of(HEAD "BM,100,5.29166666666667,,\nA,,,4.2708333,\n");

	(void)state;
	assert_int_equal(rb_book_value(notes.book, RB_BACKSIGHT, 0).nm,
			 5 * RB_FOOT + 7 * RB_INCH / 2);
	assert_int_equal(rb_book_value(notes.book, RB_INTERMEDIATE, 1).nm,
			 4 * RB_FOOT + 13 * RB_INCH / 4);
	notes_end(&notes);
}

/* The keeper's sums are no sights, and their elevations are not known ones. */
static void sums_are_no_sights(void **state)
{
	struct notes notes =
		notes_of("point,bs,fs,elevation\nBM,4.27,,100.00\nA,,3.00,101.27\n"
			 "Sum,4.27,3.00,\ntotal,130.00,-99,7\nMisclosure,,,0.01\n");
	const struct rb_book *book = notes.book;

	(void)state;
	assert_non_null(book);
	assert_int_equal(notes.findings.count, 0);
	for (uint32_t row = 2; row < 5; row++) {
		assert_true(book->written[row] & RB_WRITTEN_BY_KEEPER);
		assert_false(rb_length_given(rb_book_sight(book, RB_BACKSIGHT, row)));
		assert_false(rb_length_given(rb_book_known(book, book->row[row].point)));
	}
	assert_int_equal(rb_book_value(book, RB_BACKSIGHT, 2).nm, FT(4, 2700));
	assert_int_equal(rb_book_value(book, RB_FORESIGHT, 3).nm, FT(-99, 0));
	assert_false(book->written[1] & RB_WRITTEN_BY_KEEPER);
	notes_end(&notes);
}

/* Nor do they say how finely the rod was read. */
static void sums_are_no_places(void **state)
{
	struct notes notes = notes_of("point,bs,fs,elevation\nBM,4.27,,100.00\n"
				      "A,,3.00,101.27\nSum,4.2700,3.00,\n");

	(void)state;
	assert_non_null(notes.book);
	assert_int_equal(rb_book_style(notes.book).decimals, 2);
	assert_int_equal(notes.book->places[RB_BACKSIGHT].decimals, 2);
	assert_int_equal(rb_book_places(notes.book, RB_BACKSIGHT).decimals, 4);
	assert_int_equal(rb_book_places(notes.book, RB_FORESIGHT).decimals, 2);
	notes_end(&notes);
}

/* ---- units of rows, style ---- */

static void a_unit_column(void **state)
{
	struct notes notes =
		notes_of("point,known elevation,bs,is,unit\nBM,100,2.000,,m\n"
			 "A,,,1500,mm\nB,,,1.25,\nC,,,5,ft\n");
	const struct rb_book *book = notes.book;

	(void)state;
	assert_non_null(book);
	assert_int_equal(book->unit, RB_METRES); /* the first row's, where no key says */
	assert_int_equal(rb_book_known(book, 0).nm, 100 * RB_METRE);
	assert_int_equal(rb_book_value(book, RB_INTERMEDIATE, 1).nm,
			 1500 * RB_MILLIMETRE);
	assert_int_equal(rb_book_value(book, RB_INTERMEDIATE, 2).nm,
			 1250 * RB_MILLIMETRE);
	assert_int_equal(rb_book_value(book, RB_INTERMEDIATE, 3).nm, 5 * RB_FOOT);
	notes_end(&notes);
	notes = notes_of("unit,ft\npoint,known elevation,bs,unit\nBM,100,2.000,m\n");
	assert_int_equal(notes.book->unit, RB_FEET);
	assert_int_equal(rb_book_value(notes.book, RB_BACKSIGHT, 0).nm, 2 * RB_METRE);
	notes_end(&notes);
}

/* clang-format off */
static const struct style_case {
	const char *csv;
	enum rb_unit unit;
	int decimals, fraction;
} style_cases[] = {
	{ HEAD "BM,100,4.2,,\n",                          RB_FEET, 2, 16 },
	{ HEAD "BM,100,4.27,,\nA,,,3.125,\n",             RB_FEET, 3, 16 },
	{ HEAD "BM,100.0000,4.27,,\n",                    RB_FEET, 4, 16 },
	{ HEAD "BM,100,5'-3 1/2\",,\n",                   RB_FEET, 3, 16 },
	{ HEAD "BM,100,4.27,,\nA,,,1.0000 m,\n",          RB_FEET, 2, 16 },
	{ "decimals,1\n" HEAD "BM,100,4.27,,\n",          RB_FEET, 1, 16 },
	{ "unit,m\n" HEAD "BM,100,4.2,,\n",               RB_METRES, 3, 16 },
	{ "unit,m\n" HEAD "BM,100,4.2345,,\n",            RB_METRES, 4, 16 },
	{ "unit,mm\n" HEAD "BM,100,42,,\n",               RB_MILLIMETRES, 0, 16 },
	{ "unit,ft-in\n" HEAD "BM,100,5'-3 1/32\",,\n",   RB_FEET_INCHES, 2, 32 },
	{ "unit,ft-in\n" HEAD "BM,100,5'-3 1/2\",,\n",    RB_FEET_INCHES, 2, 16 },
	{ "unit,in\n" HEAD "BM,100,63.5,,\n",             RB_INCHES, 2, 16 },
};
/* clang-format on */

static void styles(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof style_cases / sizeof *style_cases; i++) {
		const struct style_case *c = &style_cases[i];
		struct notes notes = notes_of(c->csv);
		struct rb_style style =
			notes.book ? rb_book_style(notes.book) : (struct rb_style){ 0 };

		if (!notes.book || style.unit != c->unit ||
		    style.decimals != c->decimals || style.fraction != c->fraction) {
			print_error("%s: %d decimals, 1/%d\n", c->csv, style.decimals,
				    style.fraction);
			wrong++;
		}
		notes_end(&notes);
	}
	assert_int_equal(wrong, 0);
}

#define HAND_HEAD "point,known elevation,bs,height of instrument,fs,elevation\n"

/* What was worked out by hand is shown as it stands in its cell, not as the readings. */
static void styles_of_hand_values(void **state)
{
	static const struct {
		const char *csv;
		int decimals, fraction;
	} cases[] = {
		{ HAND_HEAD "BM,100,4.27,104.27,,\n", 2, 64 },
		{ HAND_HEAD "BM,100,4.27,104.275,,\n", 3, 64 },
		{ HAND_HEAD "BM,100,4.27,,,\nA,,,,4.1,100.1725\n", 4, 64 },
		{ HAND_HEAD "BM,100,4.2701,104.27,,\n", 4, 64 },
		{ HAND_HEAD "BM,100,4.27,104.270005,,\n", 5, 64 },
		{ "decimals,2\n" HAND_HEAD "BM,100,4.27,104.275,,\n", 2, 64 },
		{ "unit,ft-in\n" HAND_HEAD "BM,100,5'-3 1/2\",,,\n", 2, 64 },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct notes notes = notes_of(cases[i].csv);
		struct rb_style style = { 0 };

		if (notes.book)
			style = rb_book_hand_style(notes.book);
		if (style.decimals != cases[i].decimals ||
		    style.fraction != cases[i].fraction) {
			print_error("%s: %d decimals, 1/%d\n", cases[i].csv,
				    style.decimals, style.fraction);
			wrong++;
		}
		notes_end(&notes);
	}
	assert_int_equal(wrong, 0);
}

/* In a feet-inches book: what is a reading, and what is an elevation. */
static void a_book_in_feet_and_inches(void **state)
{
	static const struct {
		const char *elevation, *reading, *findings;
	} cases[] = {
		{ "100", "5'-3 1/2\"", "" },
		{ "100", "5-3 1/2", "" },
		{ "100", "5-3", "" },
		{ "100", "5\u2019-3 \u00BD\u201D", "" },
		{ "100", "0", "" },
		{ "100", "5.10", "no-unit-mark@3:2" },
		{ "100", "5", "no-unit-mark@3:2" },
		{ "100", "-8", "no-unit-mark@3:2" },
		{ "512.37", "5-3", "no-unit-mark@3:1" },
		{ "512.37 ft", "5-3", "" },
		{ "98'-2 7/8\"", "5-3", "" },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char csv[ROOM] = "", found[ROOM];

		add_text(csv, "unit,ft-in\n" HEAD "BM,%s,%s,,\n", cases[i].elevation,
			 cases[i].reading);
		wrong += differs(cases[i].reading, codes_of(csv, found),
				 cases[i].findings);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_column),
		cmocka_unit_test(columns_without_values),
		cmocka_unit_test(lines_of_rows),
		cmocka_unit_test(places_of_the_rod),
		cmocka_unit_test(faults_and_habits),
		cmocka_unit_test(names_the_likely_known_elevation),
		cmocka_unit_test(inverted_readings_are_negative),
		cmocka_unit_test(a_line_with_two_inverted_readings_is_told_once),
		cmocka_unit_test(many_inverted_readings),
		cmocka_unit_test(formulas_are_read_as_64ths),
		cmocka_unit_test(sums_are_no_sights),
		cmocka_unit_test(sums_are_no_places),
		cmocka_unit_test(a_unit_column),
		cmocka_unit_test(styles),
		cmocka_unit_test(styles_of_hand_values),
		cmocka_unit_test(a_book_in_feet_and_inches),
	};

	return cmocka_run_group_tests_name("book", tests, NULL, NULL);
}
