/* SPDX-License-Identifier: MIT */
/*
 * test_rows.c - records of cells from text: what the CSV library does with the bytes that
 * sheets and people write, as seen through the only seam to it.
 */
#include "notes.h"

#include "notes/rows.h"

/* Records as "line:cell|cell" with " / " between them. */
static bool write_down(void *self, const struct rb_record *record)
{
	char *text = self;

	add_text(text, "%s%lu:", *text ? " / " : "", (unsigned long)record->line);
	for (uint32_t i = 0; i < record->cells; i++) {
		assert_int_equal(record->cell[i].text[record->cell[i].length], '\0');
		add_text(text, "%s%s", i ? "|" : "", record->cell[i].text);
	}
	return true;
}

static void read_text(const char *csv, char separator, char records[static ROOM],
		      char found[static ROOM])
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	struct rb_source *source;

	records[0] = '\0';
	rb_findings_init(&findings, arena, "book.csv");
	source = rb_source_open(arena, &findings, csv, strlen(csv));
	assert_non_null(source);
	source->separator = separator;
	assert_true(rb_rows_read(arena, &findings, source, write_down, records));
	findings_as_text(found, &findings);
	rb_arena_free(arena);
}

/* clang-format off */
static const struct rows_case {
	const char *what, *csv, *records, *findings;
	char separator;
} rows_cases[] = {
	{ "plain",                 "a,b\nc,d\n",             "1:a|b / 2:c|d", "", ',' },
	{ "no end of line",        "a,b\nc,d",               "1:a|b / 2:c|d", "", ',' },
	{ "nothing",               "",                       "", "", ',' },
	{ "empty cells",           ",,,\na,b,\n",            "1:||| / 2:a|b|", "", ',' },
	{ "semicolons",            "a;5,32;b\n",             "1:a|5,32|b", "", ';' },
	{ "tabs",                  "a\t\tb\n",               "1:a||b", "", '\t' },
	/* blank lines hold no record, but they count */
	{ "blank lines",           "\na\n\n\nb\n\n",         "2:a / 5:b", "", ',' },
	{ "a line of blanks",      "a\n   \nb\n",            "1:a / 3:b", "", ',' },
	{ "blanks of no width",    "a,\xEF\xBB\xBF" "b\xE2\x80\x8B,\xE1\x9A\x80\n", "1:a|b|\xE1\x9A\x80", "", ',' },
	{ "a row of commas",       "a,b\n,\nc,d\n",          "1:a|b / 2:| / 3:c|d", "", ',' },
	/* bare inch marks */
	{ "feet and inches",       "BM-1,5'-3 1/2\",x\n",    "1:BM-1|5'-3 1/2\"|x", "", ',' },
	{ "inches last",           "BM-1,63 1/2\"\nb\n",     "1:BM-1|63 1/2\" / 2:b", "", ',' },
	{ "inches at the very end", "BM-1,63 1/2\"",         "1:BM-1|63 1/2\"", "", ',' },
	{ "two of them",           "4\" pipe 6\" deep,b\n",  "1:4\" pipe 6\" deep|b", "", ',' },
	{ "inches as ''",          "5' 3'',b\n",             "1:5' 3''|b", "", ',' },
	/* quoted cells */
	{ "quoted inches",         "\"5'-3 1/2\"\"\",x\n",   "1:5'-3 1/2\"|x", "", ',' },
	{ "inch mark as the end",  "\"5'-3 1/2\",x\n",       "1:5'-3 1/2|x", "", ',' },
	{ "quoted separator",      "\"a,b\",c\n",            "1:a,b|c", "", ',' },
	{ "blanks around quotes",  "a, \"q\" ,b\n",          "1:a|q|b", "", ',' },
	{ "empty quotes",          "\"\",\"\"\n",            "1:|", "", ',' },
	{ "quoted quotes",         "\"\"\"a\"\"\",b\n",      "1:\"a\"|b", "", ',' },
	{ "a cell of two lines",   "a,\"x\ny\",b\nc\n",      "1:a|x\ny|b / 3:c", "", ',' },
	{ "of three, a blank one", "\"x\n\ny\"\nc\n",        "1:x\n\ny / 4:c", "", ',' },
	{ "two of them",           "\"x\ny\",\"u\nv\"\nc\n", "1:x\ny|u\nv / 4:c", "", ',' },
	/* text behind a closing quote: that line is given up, the next is read */
	{ "text behind a quote",   "a,\"x\"y,b\nc,d\n",      "2:c|d", "after-quote@1:1", ',' },
	{ "unquoted inch mark",    "a,\"rim 4\" pipe\",z\nc\n", "2:c", "after-quote@1:1", ',' },
	{ "on the last line",      "a\nb,\"x\"y",            "1:a", "after-quote@2:1", ',' },
	{ "on two lines",          "\"x\"y\na\n\"u\"v\nb\n", "2:a / 4:b", "after-quote@1:0 after-quote@3:0", ',' },
	{ "behind a long cell",    "\"x\ny\"z\nb\n",         "3:b", "after-quote@1:0", ',' },
	/* a quote that never closes is told where it opened; the lines below it are read */
	{ "open quote",            "a,\"b\nc,d\ne,f\n",      "2:c|d / 3:e|f", "open-quote@1:1", ',' },
	{ "open on the last line", "a\nb,\"",                "1:a", "open-quote@2:1", ',' },
	{ "and another fault",     "\"a\nb,\"\"c\nd\n",      "3:d", "open-quote@1:0 after-quote@2:1", ',' },
	{ "two open quotes",       "\"a\nb\n\"c\nd\n",       "4:d", "after-quote@1:0", ',' },
	/* blanks of every kind */
	{ "blanks",                "  a b \t,c\n",           "1:a b|c", "", ',' },
	{ "no-break space",        "\u00A0,a\u00A0\n",       "1:|a", "", ',' },
	{ "narrow and thin",       "\u202Fa\u2009,\u200Ab\n", "1:a|b", "", ',' },
	{ "kept inside",           "a\u00A0b\n",             "1:a\u00A0b", "", ',' },
	{ "inside quotes",         "\" a \",b\n",            "1:a|b", "", ',' },
	/* bytes that pass */
	{ "control bytes",         "a\x1A,\x1B[31m\n",       "1:a\x1A|\x1B[31m", "", ',' },
	{ "utf-8",                 "5\u2032-3 \u00BD\u2033,b\n", "1:5\u2032-3 \u00BD\u2033|b", "", ',' },
	{ "sep=; counts as a line", "sep=;\na;b\n",          "2:a|b", "", ';' },
};
/* clang-format on */

static void records(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof rows_cases / sizeof *rows_cases; i++) {
		const struct rows_case *c = &rows_cases[i];
		char got[ROOM], found[ROOM];

		read_text(c->csv, c->separator, got, found);
		wrong += differs(c->what, got, c->records);
		wrong += differs(c->what, found, c->findings);
	}
	assert_int_equal(wrong, 0);
}

static void replace(char out[static ROOM], const char *text, const char *line_end)
{
	out[0] = '\0';
	for (; *text; text++)
		add_text(out, *text == '\n' ? line_end : (char[2]){ *text, 0 });
}

/* CRLF, CR and LF end a line alike; within a cell they stay as they were. */
static void any_line_end(void **state)
{
	static const char *const ends[] = { "\r\n", "\r" };
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < 2 * sizeof rows_cases / sizeof *rows_cases; i++) {
		const struct rows_case *c = &rows_cases[i / 2];
		char csv[ROOM], got[ROOM], found[ROOM], wanted[ROOM];

		replace(csv, c->csv, ends[i % 2]);
		replace(wanted, c->records, ends[i % 2]);
		read_text(csv, c->separator, got, found);
		wrong += differs(c->what, got, wanted);
		wrong += differs(c->what, found, c->findings);
	}
	assert_int_equal(wrong, 0);
}

/* A record is the same wherever it stands: a row before it moves only its line. */
static void wherever_it_stands(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof rows_cases / sizeof *rows_cases; i++) {
		const struct rows_case *c = &rows_cases[i];
		char csv[ROOM] = "x\n", got[ROOM], found[ROOM], alone[ROOM];
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_findings findings;
		struct rb_source *source;
		char *second;

		add_text(csv, "%s", c->csv);
		rb_findings_init(&findings, arena, "book.csv");
		source = rb_source_open(arena, &findings, csv, strlen(csv));
		source->separator = c->separator;
		source->first_line = 0; /* the row before is line 0 */
		got[0] = '\0';
		assert_true(rb_rows_read(arena, &findings, source, write_down, got));
		rb_arena_free(arena);
		if (!strncmp(c->csv, "sep", 3))
			continue; /* no such line below the first */
		read_text(c->csv, c->separator, alone, found);
		second = strstr(got, " / ");
		wrong += differs(c->what, second ? second + 3 : "", alone);
	}
	assert_int_equal(wrong, 0);
}

static bool stop_at_two(void *self, const struct rb_record *record)
{
	uint32_t *count = self;

	(void)record;
	return ++*count < 2;
}

static void stops_when_asked(void **state)
{
	const char *ends[] = { "a\nb\nc\n", "a\nb" };

	(void)state;
	for (size_t i = 0; i < 2; i++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_findings findings;
		struct rb_source *source;
		uint32_t count = 0;

		rb_findings_init(&findings, arena, "book.csv");
		source = rb_source_open(arena, &findings, ends[i], strlen(ends[i]));
		source->separator = ',';
		assert_false(rb_rows_read(arena, &findings, source, stop_at_two, &count));
		assert_int_equal(count, 2);
		assert_false(findings.out_of_memory);
		rb_arena_free(arena);
	}
}

static bool count_cells(void *self, const struct rb_record *record)
{
	uint32_t *cells = self;

	*cells = record->cells;
	for (uint32_t i = 0; i < record->cells; i++) {
		assert_int_equal(record->cell[i].length, 3000);
		assert_int_equal(strspn(record->cell[i].text, "a"), 3000);
	}
	return true;
}

/* Cells and texts have no small limit. */
static void a_wide_record(void **state)
{
	enum { CELLS = 700, LENGTH = 3000 };
	static char csv[CELLS * (LENGTH + 1)];
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	struct rb_source *source;
	uint32_t cells = 0;

	(void)state;
	memset(csv, 'a', sizeof csv);
	for (size_t i = 1; i <= CELLS; i++)
		csv[i * (LENGTH + 1) - 1] = i < CELLS ? ',' : '\n';
	rb_findings_init(&findings, arena, "book.csv");
	source = rb_source_open(arena, &findings, csv, sizeof csv);
	source->separator = ',';
	assert_true(rb_rows_read(arena, &findings, source, count_cells, &cells));
	assert_int_equal(cells, CELLS);
	rb_arena_free(arena);
}

static bool count_records(void *self, const struct rb_record *record)
{
	(void)record;
	++*(uint32_t *)self;
	return true;
}

/* A quote that opens far above a megabyte of rows is given up, and they are read; with
 * one in every row the reading is still over soon. */
static void a_runaway_quote(void **state)
{
	enum { ROWS = 30000 };
	static const char *const rows[] = { "aaaa,bbbb\n", "\"aaa,bbbb\n" };
	static char csv[ROWS * 10 + 4];

	(void)state;
	for (size_t kind = 0; kind < 2; kind++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_findings findings;
		struct rb_source *source;
		uint32_t count = 0;

		memcpy(csv, "x,\"\n", 4);
		for (size_t i = 0; i < ROWS; i++)
			memcpy(csv + 4 + 10 * i, rows[kind && i % 1000 == 0], 10);
		rb_findings_init(&findings, arena, "book.csv");
		source = rb_source_open(arena, &findings, csv, sizeof csv);
		source->separator = ',';
		assert_true(
			rb_rows_read(arena, &findings, source, count_records, &count));
		assert_true(findings.of_severity[RB_ERROR] > 0);
		assert_int_equal(findings.item[0]->place.line, 1);
		if (!kind)
			assert_int_equal(count, ROWS);
		rb_arena_free(arena);
	}
}

/* The row of the sheet is the line less the lines inside cells above it. */
static void rows_of_the_sheet(void **state)
{
	static const struct {
		uint32_t line, row;
	} wanted[] = { { 1, 1 }, { 2, 2 }, { 4, 3 }, { 5, 4 },
		       { 8, 5 }, { 9, 6 }, { 10, 7 } };
	const char *csv = "a\n\"b\nb\"\nc\n\"d\nd\nd\",e\nf\n\nh\n";
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	struct rb_source *source;
	char got[ROOM] = "";

	(void)state;
	rb_findings_init(&findings, arena, "book.csv");
	source = rb_source_open(arena, &findings, csv, strlen(csv));
	source->separator = ',';
	assert_true(rb_rows_read(arena, &findings, source, write_down, got));
	assert_string_equal(got, "1:a / 2:b\nb / 4:c / 5:d\nd\nd|e / 8:f / 10:h");
	for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
		assert_int_equal(rb_source_sheet_row(source, wanted[i].line),
				 wanted[i].row);
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(records),
		cmocka_unit_test(any_line_end),
		cmocka_unit_test(wherever_it_stands),
		cmocka_unit_test(stops_when_asked),
		cmocka_unit_test(a_wide_record),
		cmocka_unit_test(a_runaway_quote),
		cmocka_unit_test(rows_of_the_sheet),
	};

	return cmocka_run_group_tests_name("rows", tests, NULL, NULL);
}
