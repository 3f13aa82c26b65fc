/* SPDX-License-Identifier: MIT */
/* test_sheet.c - keys, header and rows, by the tables of a form: here, that of a book. */
#include "notes.h"

#include "notes/book_reader.h"

struct reading {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_sheet *sheet;
	char rows[ROOM]; /* the lines of the rows handed over */
	bool stop_at_header, stop_at_row;
};

static bool on_header(void *self, const struct rb_sheet *sheet)
{
	(void)sheet;
	return !((struct reading *)self)->stop_at_header;
}

static bool on_row(void *self, const struct rb_record *record)
{
	struct reading *r = self;

	add_text(r->rows, "%s%lu", *r->rows ? " " : "", (unsigned long)record->line);
	return !r->stop_at_row;
}

static void read_sheet(struct reading *r, const char *csv)
{
	const struct rb_sheet_reader reader = { on_header, on_row, r };

	r->arena = rb_arena_new(NULL);
	rb_findings_init(&r->findings, r->arena, "book.csv");
	r->sheet = rb_sheet_read(r->arena, &r->findings, &rb_book_form, csv, strlen(csv),
				 &reader);
}

/* Keys as "name=value@line:cell", then "|" and the columns as "heading:cell". */
static const char *sheet_as_text(char text[static ROOM], const struct rb_sheet *sheet)
{
	text[0] = '\0';
	for (size_t i = 0; i < rb_book_form.keys; i++) {
		const struct rb_key_value *v = &sheet->key[rb_book_form.key[i].key];

		if (v->length)
			add_text(text, "%s=%s@%lu:%ld ", rb_book_form.key[i].name,
				 v->text, (unsigned long)v->place.line,
				 (long)v->place.cell);
	}
	add_text(text, "|");
	for (int i = 0; i < RB_BOOK_COLUMNS; i++)
		if (sheet->cell_of[i] >= 0)
			add_text(text, " %s:%ld", rb_book_form.column_name[i],
				 (long)sheet->cell_of[i]);
	return text;
}

#define HEAD "point,bs,fs\n"
#define COLS "| point:0 backsight:1 foresight:2"

/* clang-format off */
static const struct sheet_case {
	const char *what, *csv, *sheet, *rows, *findings; /* sheet NULL: not read */
} sheet_cases[] = {
	/* keys, in all their forms */
	{ "value in the next cell",   "project,Larch\n" HEAD,         "project=Larch@1:1 " COLS, "", "" },
	{ "colon",                    "Project:,Larch\n" HEAD,        "project=Larch@1:1 " COLS, "", "" },
	{ "in the same cell",         "PROJECT: Larch St.\n" HEAD,    "project=Larch St.@1:0 " COLS, "", "" },
	{ "no blank behind the colon", "unit:ft-in\n" HEAD,           "unit=ft-in@1:0 " COLS, "", "" },
	{ "blank before the colon",   "Unit :,m\n" HEAD,              "unit=m@1:1 " COLS, "", "" },
	{ "next cell not empty",      "date,,,2026-03-17\n" HEAD,     "date=2026-03-17@1:3 " COLS, "", "" },
	{ "two in a row",             "date,3/17,,crew,Ann\n" HEAD,   "date=3/17@1:1 crew=Ann@1:4 " COLS, "", "" },
	{ "anywhere in a row",        "Larch St,,unit,m\n" HEAD,      "unit=m@1:3 " COLS, "", "" },
	{ "beside words",             "\"Nov 25, 2026\",instrument: JR\n" HEAD, "instrument=JR@1:1 " COLS, "", "" },
	{ "doubled blanks",           "Sight  Limit,200\n" HEAD,      "sight limit=200@1:1 " COLS, "", "" },
	{ "a key without a value",    "crew,,\nunit,m\n" HEAD,        "unit=m@2:1 " COLS, "", "" },
	{ "a key for a value",        "crew,unit,m\n" HEAD,           "unit=m@1:2 " COLS, "", "" },
	{ "a colon in the value",     "date,7:30 start\n" HEAD,       "date=7:30 start@1:1 " COLS, "", "" },
	{ "rod on is not rod",        "rod on,rim\nrod,13\n" HEAD,    "rod=13@2:1 rod on=rim@1:1 " COLS, "", "" },
	{ "only above the header",    HEAD "unit,1.00,\n",            COLS, "2", "" },
	{ "twice",                    "unit,m\nunit,ft\n" HEAD,       "unit=m@1:1 " COLS, "", "same-key-twice@2:1" },
	/* a unit in a cell of its own */
	{ "a unit beside a number",   "tolerance,5,mm\n" HEAD,        "tolerance=5 mm@1:1 " COLS, "", "unit-apart@1:2" },
	{ "behind empty cells",       "sight limit: 200,,ft,as ever\n" HEAD, "sight limit=200 ft@1:0 " COLS, "", "unit-apart@1:2" },
	{ "an inch mark",             "rod,156,\"\"\"\"\n" HEAD,      "rod=156 \"@1:1 " COLS, "", "unit-apart@1:2" },
	{ "centimetres",              "balance limit,900,cm\n" HEAD,  "balance limit=900 cm@1:1 " COLS, "", "unit-apart@1:2" },
	{ "a root",                   "tolerance,0.1 ft,sqrt(mi)\n" HEAD, "tolerance=0.1 ft sqrt(mi)@1:1 " COLS, "", "unit-apart@1:2" },
	{ "a unit and a root",        "tolerance,12,mm,\u221AK\n" HEAD, "tolerance=12 mm \u221AK@1:1 " COLS, "", "unit-apart@1:2" },
	{ "both in the next cell",    "tolerance,12,mm sqrt(km)\n" HEAD, "tolerance=12 mm sqrt(km)@1:1 " COLS, "", "unit-apart@1:2" },
	{ "a second unit",            "unit,m,ft\n" HEAD,             "unit=m@1:1 " COLS, "", "unit-apart@1:2" },
	{ "a second unit of a number", "tolerance,5 mm,ft\n" HEAD,    "tolerance=5 mm@1:1 " COLS, "", "unit-apart@1:2" },
	{ "too long to be shown whole", "rod,00000000000000000000000000000000000000000000000000000000000005,mm\n" HEAD, "rod=00000000000000000000000000000000000000000000000000000000000005@1:1 " COLS, "", "unit-apart@1:2" },
	{ "a key behind it",          "rod,13,crew,in\n" HEAD,        "crew=in@1:3 rod=13@1:1 " COLS, "", "" },
	{ "words behind it",          "tolerance,5 mm,in all\nrod,13,Ft. Worth\nunit,m,metric\n" HEAD, "rod=13@2:1 unit=m@3:1 tolerance=5 mm@1:1 " COLS, "", "" },
	{ "a number behind it",       "rod,13,2 ft\n" HEAD,           "rod=13@1:1 " COLS, "", "" },
	{ "units beside words",       "crew,Ann 2,m\nadjust,none,ft\nrod on,rim,in\n" HEAD, "crew=Ann 2@1:1 adjust=none@2:1 rod on=rim@3:1 " COLS, "", "" },
	/* nearly a key: two letters off, or one for keys of up to four */
	{ "nearly",                   "tolerence,0.02 ft\n" HEAD,     COLS, "", "nearly-a-key@1:0" },
	{ "with a colon",             "Ajdust: none\n" HEAD,          COLS, "", "nearly-a-key@1:0" },
	{ "two letters",              "colimmation,+0.004\n" HEAD,    COLS, "", "nearly-a-key@1:0" },
	{ "plural of a short key",    "units,m\n" HEAD,               COLS, "", "nearly-a-key@1:0" },
	{ "too far for a short key",  "unions,m\n" HEAD,              COLS, "", "" },
	{ "slips of two kinds",       "tolernaces,5\n" HEAD,          COLS, "", "nearly-a-key@1:0" },
	{ "four letters off",         "tolens,5\n" HEAD,              COLS, "", "" },
	{ "a heading is none",        "adjusted,bs\n" HEAD,          COLS, "", "" },
	{ "title",                    "Larch Street drain\n\n,,\n" HEAD, COLS, "", "" },
	/* headings */
	{ "case, points, strokes",    "Pt.,B.S.,F/S\n",               COLS, "", "" },
	{ "blanks and hyphens",       "POINT,Back-sight,Fore sight\n", COLS, "", "" },
	{ "bs+ and fs-",              "point,BS (+),FS (-)\n",        COLS, "", "" },
	{ "+ and -",                  "name,+,-\n",                   COLS, "", "" },
	{ "+s and -s",                "name,+S,-s\n",                 COLS, "", "" },
	{ "aliases of sights",        "pt,bs,is,fs\n",                "| point:0 backsight:1 intermediate:2 foresight:3", "", "" },
	{ "ifs",                      "pt,ifs\n",                     "| point:0 intermediate:1", "", "" },
	{ "ss",                       "pt,SS\n",                      "| point:0 intermediate:1", "", "" },
	{ "side shot",                "pt,Side Shot\n",               "| point:0 intermediate:1", "", "" },
	{ "intermediate foresight",   "pt,Intermediate Foresight\n",  "| point:0 intermediate:1", "", "" },
	{ "known elevation",          "pt,bs,BM elevation\n",         "| point:0 known elevation:2 backsight:1", "", "" },
	{ "bm",                       "pt,bs,BM\n",                   "| point:0 known elevation:2 backsight:1", "", "" },
	{ "elevations",               "pt,bs,H.I.,R.L.\n",            "| point:0 backsight:1 height of instrument:2 elevation:3", "", "" },
	{ "reduced level",            "pt,bs,Reduced level\n",        "| point:0 backsight:1 elevation:2", "", "" },
	{ "lengths",                  "pt,bs,BS dist.,FS Dist\n",     "| point:0 backsight:1 backsight distance:2 foresight distance:3", "", "" },
	{ "the rest",                 "pt,bs,ch,dip,surface,notes,unit\n", "| point:0 backsight:1 chainage:2 measure down:3 rod on:4 remarks:5 unit:6", "", "" },
	{ "run is a chainage",        "pt,bs,Run\n",                  "| point:0 backsight:1 chainage:2", "", "" },
	{ "station alone: the point", "station,bs\n",                 "| point:0 backsight:1", "", "" },
	{ "station beside a point",   "station,point,bs\n",           "| point:1 backsight:2 chainage:0", "", "" },
	{ "sta beside name",          "name,Sta.,bs\n",               "| point:0 backsight:2 chainage:1", "", "" },
	{ "our own CSV",              "point,backsight,correction,adjusted\n", "| point:0 backsight:1 correction or adjusted:2", "", "" },
	{ "a quoted heading, LF",     "point,\"back\nsight\"\n",      "| point:0 backsight:1", "", "" },
	{ "no-break space",           "point,Back\u00A0sight\n",      "| point:0 backsight:1", "", "" },
	{ "en dash",                  "point,Back\u2013sight\n",      "| point:0 backsight:1", "", "" },
	{ "a minus for the foresight", "name,+,\u2212\n",            "| point:0 backsight:1 foresight:2", "", "" },
	{ "a no-break space in a key", "sight\u00A0limit,90\n" HEAD,  "sight limit=90@1:1 " COLS, "", "" },
	{ "a very long cell",         "point,bs,fs,This column holds whatever the crew wanted to say\n", COLS, "", "unknown-column@1:3" },
	/* a unit in brackets */
	{ "bs (ft)",                  "point,BS (ft),Foresight [ft.]\n", COLS, "", "" },
	{ "a unit of words",          "point (ft),bs,fs\n",          NULL, "", "no-header@1 unknown-column@1:0" },
	{ "no unit",                  "point,bs,fs,Elev. (checked)\n", COLS, "", "unknown-column@1:3" },
	{ "a unit alone",             "point,bs,fs,(ft)\n",          COLS, "", "unknown-column@1:3" },
	/* what drops readings is more than a note */
	{ "int. sight",               "point,bs,fs,Int. Sight\n",    COLS, "", "unread-sights@1:3" },
	{ "bs reading",               "point,bs,fs,B.S. Reading (ft)\n", COLS, "", "unread-sights@1:3" },
	{ "words that are not alone", "point,bs,fs,Plus station,Back of kerb,Int. dist\n", COLS, "", "unknown-column@1:3 unknown-column@1:4 unknown-column@1:5" },
	{ "plus",                     "point,bs,fs,Plus,Back\n",     COLS, "", "unread-sights@1:3 unread-sights@1:4" },
	{ "a sight length is none",   "point,bs,fs,Back sight length\n", COLS, "", "unknown-column@1:3" },
	{ "words that begin so",      "point,bs,fs,Foreman,Background,Interval,Is it dry?\n", COLS, "", "unknown-column@1:3 unknown-column@1:4 unknown-column@1:5 unknown-column@1:6" },
	{ "trailing empty columns",   "point,bs,fs,,,\n",             COLS, "", "" },
	{ "unknown column",           "point,bs,fs,wind\n",           COLS, "", "unknown-column@1:3" },
	{ "two unknown",              "point,bs,fs,wind,sun\n",       COLS, "", "unknown-column@1:3 unknown-column@1:4" },
	{ "two of one meaning",       "point,bs,fs,backsight\n",      COLS, "", "same-column-twice@1:3" },
	{ "point and pt",             "point,bs,fs,pt\n",             COLS, "", "same-column-twice@1:3" },
	{ "station and two others",   "point,bs,fs,ch,sta\n",         "| point:0 backsight:1 foresight:2 chainage:3", "", "same-column-twice@1:4" },
	/* the header is the first row with a point and a sight */
	{ "brackets in a title",      "Sewer (north), Lot=5\n" HEAD, COLS, "", "" },
	{ "below titles",             "Larch St,,\n,,\nunit,m,\n" HEAD "a,1,\n", "unit=m@3:1 " COLS, "5", "" },
	{ "a point alone is none",    "point,elevation\n" HEAD,       COLS, "", "" },
	{ "no header",                "a,b\nc,d\n",                   NULL, "", "no-header" },
	{ "nearly a header",          "a\nelevation,bs\nc,d\n",       NULL, "", "no-header@2" },
	{ "nothing",                  "",                             NULL, "", "no-header" },
	{ "other words",              "Larch St\nPoint ID,(+),(-),Comments\nBM,4.27,,\n", NULL, "", "no-header@2 unknown-column@2:0 unread-sights@2:1 unread-sights@2:2 unknown-column@2:3" },
	{ "the nearest of three",     "Location,x\nPoint,Elev\nPoint,Elev,Int\n1,2,3\n", NULL, "", "no-header@3 unread-sights@3:2" },
	{ "keys are no header",       "unit,ft\nproject,Back Sights elev\n", NULL, "", "no-header" },
	/* cells that no heading stands over */
	{ "beyond the header",        HEAD "a,1,,x\nb,,2,-\nc,3,,,y\n", COLS, "2 3 4", "no-heading@2:3" },
	{ "beyond it, once",          HEAD "a,1,,x\n", COLS, "2", "no-heading@2:3" },
	{ "an empty heading",         "point,,bs,fs,\na,1,2,,\nb,-,,3,z\n", "| point:0 backsight:2 foresight:3", "2 3", "no-heading@2:1" },
	{ "empty cells beyond",       HEAD "a,1,,,,\n",              COLS, "2", "" },
	/* the header once more */
	{ "on the second page",       HEAD "a,1,\nPoint, BS ,fs,\nb,,2\npoint,bs,fs\n", COLS, "2 4", "header-again@3" },
	{ "not the same cells",       HEAD "a,1,\npoint,bs,fs,x\n",  COLS, "2", "other-header@3" },
	{ "another header",           HEAD "a,1,\nPoint,BS,IS,FS\nb,x,y\nc,1,2\n", COLS, "2", "other-header@3" },
	{ "words for readings",       HEAD "a,bs,\nb,fs,bs\n",      COLS, "2 3", "" },
	/* a row of units */
	{ "units below",              HEAD ",(ft),ft\na,1,\n",      COLS, "3", "units-row@2" },
	{ "units further down",       HEAD "a,1,\n,ft,ft\n",        COLS, "2 3", "" },
	{ "no row of units",          HEAD "a,ft,\n",                COLS, "2", "" },
	{ "a point named point",      HEAD "point,1,\n",             COLS, "2", "" },
	/* rows and comments */
	{ "blank rows left out",      HEAD "a,1,\n,,\n\nb,,2\n",      COLS, "2 5", "" },
	{ "comment",                  HEAD "# windy,,\na,1,\n",       COLS, "3", "" },
	{ "comment above",            "# unit,,\n" HEAD,              COLS, "", "" },
	{ "a point named #1",         HEAD "#1,1.00,\n",              COLS, "2", "" },
	{ "a # behind the first",     HEAD ",,#\n",                   COLS, "2", "" },
	{ "a header of a sheet in #", "#,point,bs\n",                 "| point:1 backsight:2", "", "unknown-column@1:0" },
};
/* clang-format on */

static void sheets(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof sheet_cases / sizeof *sheet_cases; i++) {
		const struct sheet_case *c = &sheet_cases[i];
		struct reading r = { .sheet = NULL };
		char text[ROOM];

		read_sheet(&r, c->csv);
		wrong += differs(c->what, r.sheet ? sheet_as_text(text, r.sheet) : "none",
				 c->sheet ? c->sheet : "none");
		wrong += differs(c->what, r.rows, c->rows);
		wrong += differs(c->what, findings_as_text(text, &r.findings),
				 c->findings);
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

/* Every heading of the table is read, and in capitals with a blank behind. */
static void every_heading_of_the_form(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < rb_book_form.headings; i++) {
		const struct rb_heading *h = &rb_book_form.heading[i];
		char csv[ROOM] = "";
		struct reading r = { .sheet = NULL };
		size_t length;

		add_text(csv, "%s ", h->name);
		length = strlen(csv);
		for (size_t j = 0; j < length; j++)
			if (csv[j] >= 'a' && csv[j] <= 'z')
				csv[j] = (char)(csv[j] - 'a' + 'A');
		if (h->column != RB_POINT && h->column != RB_STATION)
			add_text(csv, ",point");
		add_text(csv, h->column == RB_BACKSIGHT ? ",fs\n" : ",bs\n");
		read_sheet(&r, csv);
		if (!r.sheet || r.findings.count ||
		    (h->column != RB_STATION && h->column != RB_PASSED_OVER &&
		     r.sheet->cell_of[h->column] != 0)) {
			print_error("\"%s\" is not read\n", csv);
			wrong++;
		}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

/* What a finding tells about a heading or a key. */
static void what_was_meant(void **state)
{
	static const struct {
		const char *csv;
		enum rb_code code;
		const char *first, *second; /* arguments; NULL: nothing */
	} cases[] = {
		{ "point,bs,elevatoin\n", RB_CODE_UNKNOWN_COLUMN, "elevatoin",
		  "elevation" },
		{ "point,bs,Remraks\n", RB_CODE_UNKNOWN_COLUMN, "Remraks", "remarks" },
		{ "point,bs,wind\n", RB_CODE_UNKNOWN_COLUMN, "wind", NULL },
		{ "point,bs,Int. Sight\n", RB_CODE_UNREAD_SIGHTS, "Int. Sight",
		  "intermediate" },
		{ "point,bs,Station ID\n", RB_CODE_UNKNOWN_COLUMN, "Station ID",
		  "point" },
		{ "point,bs,BS (second)\n", RB_CODE_UNREAD_SIGHTS, "BS (second)",
		  "backsight" },
		{ "point,bs,Elev. (as-built)\n", RB_CODE_UNKNOWN_COLUMN,
		  "Elev. (as-built)", "elevation" },
		{ "point,bs,Known EL (ft)\n", RB_CODE_UNKNOWN_COLUMN, "Known EL (ft)",
		  "known elevation" },
		{ "point,bs,Remark/Comments\n", RB_CODE_UNKNOWN_COLUMN, "Remark/Comments",
		  "remarks" },
		{ "point,bs,back sight\n", RB_CODE_SAME_COLUMN_TWICE, "backsight",
		  "back sight" },
		{ "Proyect: Larch\npoint,bs\n", RB_CODE_NEARLY_A_KEY, "Proyect: Larch",
		  "project" },
		{ "Unit (m)\npoint,bs\n", RB_CODE_NEARLY_A_KEY, "Unit (m)", "unit" },
		{ "Units [m]\npoint,bs\n", RB_CODE_NEARLY_A_KEY, "Units [m]", "unit" },
		{ "Larch St,unit=m\npoint,bs\n", RB_CODE_NEARLY_A_KEY, "unit=m", "unit" },
		{ "Project (old): Larch\npoint,bs\n", RB_CODE_NEARLY_A_KEY,
		  "Project (old): Larch", "project" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct reading r = { .sheet = NULL };
		const struct rb_finding *f;

		read_sheet(&r, cases[i].csv);
		f = finding_of(&r.findings, cases[i].code);
		assert_non_null(f);
		assert_string_equal(f->argument[0].text, cases[i].first);
		if (cases[i].second)
			assert_string_equal(f->argument[1].text, cases[i].second);
		else
			assert_int_equal(f->argument[1].kind, RB_NOTHING);
		rb_arena_free(r.arena);
	}
}

static void a_reader_can_stop(void **state)
{
	struct reading at_header = { .stop_at_header = true };
	struct reading at_row = { .stop_at_row = true };

	(void)state;
	read_sheet(&at_header, HEAD "a,1,\nb,,2\n");
	assert_null(at_header.sheet);
	assert_string_equal(at_header.rows, "");
	rb_arena_free(at_header.arena);
	read_sheet(&at_row, HEAD "a,1,\nb,,2\n");
	assert_null(at_row.sheet);
	assert_string_equal(at_row.rows, "2");
	rb_arena_free(at_row.arena);
}

/* Twenty columns of a stray note far right change nothing. */
static void trailing_empty_columns(void **state)
{
	for (int columns = 0; columns <= 20; columns++) {
		struct reading r = { .sheet = NULL };
		char csv[ROOM] = "unit,m", text[ROOM];
		const char *const rows[] = { "\npoint,bs,fs", "\na,1.0,", "\n" };

		(void)state;
		for (size_t i = 0; i < 3; i++) {
			for (int j = 0; j < columns; j++)
				add_text(csv, ",");
			add_text(csv, "%s", rows[i]);
		}
		read_sheet(&r, csv);
		assert_string_equal(sheet_as_text(text, r.sheet), "unit=m@1:1 " COLS);
		assert_string_equal(r.rows, "3");
		assert_int_equal(r.findings.count, 0);
		rb_arena_free(r.arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sheets),
		cmocka_unit_test(every_heading_of_the_form),
		cmocka_unit_test(what_was_meant),
		cmocka_unit_test(a_reader_can_stop),
		cmocka_unit_test(trailing_empty_columns),
	};

	return cmocka_run_group_tests_name("sheet", tests, NULL, NULL);
}
