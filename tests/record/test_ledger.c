/* SPDX-License-Identifier: MIT */
/* Books into the record: once each, corrected ones as new versions. */
#include "records.h"

#include <stdlib.h>

#define CHUNK 4 /* no two takings share a block: each may fail */
#include "notes/arena.c"

#define HEAD                                                                             \
	"point,elevation,adjusted,unit,date,project,book,version,section,closed,"        \
	"within_tolerance,kind,known_elevation,replaces,sha256\n"

/* A book of one setup, with a date and a project. */
#define BOOK(date, project, known)                                                       \
	"date," date "\nproject," project "\npoint,bm,bs,fs\nA," known ",4,\nA,,,4\n"

#define DAY "date,1 May\nproject,P\n"

/* clang-format off */
static const struct {
	const char *name, *old;
	struct book_text book[4];
	const char *want;
} cases[] = {
	{ "two books", NULL,
	  { { "a.csv", BOOK("1 May", "P", "10"), NULL },
	    { "b.csv", BOOK("1 May", "P", "10"), NULL } },
	  "a.csv 1\nb.csv 1\na.csv 0 no-tolerance\nb.csv 0 no-tolerance\n" },
	{ "the same bytes twice", NULL,
	  { { "a.csv", BOOK("1 May", "P", "10"), "same" },
	    { "b.csv", BOOK("1 May", "P", "10"), "same" } },
	  "a.csv 1\na.csv 0 no-tolerance\nb.csv 0 no-tolerance\nb.csv 0 already-recorded\n" },
	{ "10 km and a little less: 32808.399 ft could not be read again", NULL,
	  { { "a.csv", BOOK("1 May", "P", "9000 m"), "x" },
	    { "b.csv", BOOK("1 May", "P", "-10000 m"), "y" } },
	  "a.csv 1\na.csv 0 no-tolerance\nb.csv 0 no-tolerance\nb.csv 4 beyond-10-km\n" },
	{ "a corrected book, of another folder", NULL,
	  { { "one/a.csv", BOOK("1 May", "P", "10"), "0123456789abcdef" },
	    { "two/a.csv", BOOK("1 may", " p", "11"), NULL } },
	  "a.csv 1 replaced\na.csv 2 replaces a.csv version 1 (0123456789ab)\n"
	  "one/a.csv 0 no-tolerance\ntwo/a.csv 0 no-tolerance\ntwo/a.csv 0 new-version\n" },
	{ "corrected twice", NULL,
	  { { "a.csv", BOOK("1 May", "P", "10"), "x" }, { "a.csv", BOOK("1 May", "P", "10"), "y" },
	    { "a.csv", BOOK("1 May", "P", "10"), "z" } },
	  "a.csv 1 replaced\na.csv 2 replaces a.csv version 1 (x) replaced\n"
	  "a.csv 3 replaces a.csv version 2 (y)\na.csv 0 no-tolerance\n"
	  "a.csv 0 no-tolerance\na.csv 0 new-version\na.csv 0 no-tolerance\na.csv 0 new-version\n" },
	{ "another day, another project: other books", NULL,
	  { { "a.csv", BOOK("1 May", "P", "10"), "x" }, { "a.csv", BOOK("2 May", "P", "10"), "y" },
	    { "a.csv", BOOK("1 May", "Q", "10"), "z" } },
	  "a.csv 1\na.csv 1\na.csv 1\na.csv 0 no-tolerance\na.csv 0 no-tolerance\n"
	  "a.csv 0 no-tolerance\n" },
	{ "an old record, and a book that is in it",
	  HEAD "A,10,,ft,1 May,P,a.csv,1,A to A,yes,,benchmark,10,,abc\n",
	  { { "copy.csv", BOOK("1 May", "P", "10"), "abc" } },
	  "a.csv 1\ncopy.csv 0 no-tolerance\ncopy.csv 0 already-recorded\n" },
	{ "an old record, and a new version of its book",
	  HEAD "A,10,,ft,1 May,P,a.csv,1,A to A,yes,,benchmark,10,,abc\n",
	  { { "a.csv", BOOK("1 May", "P", "11"), "def" } },
	  "a.csv 1 replaced\na.csv 2 replaces a.csv version 1 (abc)\na.csv 0 no-tolerance\n"
	  "a.csv 0 new-version\n" },
	{ "an old record that somebody sorted: the later version stays the latest",
	  HEAD "A,11,,ft,1 May,P,a.csv,2,A to A,yes,,benchmark,11,a.csv version 1 (abc),def\n"
	       "A,10,,ft,1 May,P,a.csv,1,A to A,yes,,benchmark,10,,abc\n"
	       "B,12,,ft,1 May,P,a.csv,2,A to A,yes,,end,,a.csv version 1 (abc),def\n",
	  { { "a.csv", BOOK("1 May", "P", "12"), "ghi" } },
	  "a.csv 2 replaces a.csv version 1 (abc) replaced\na.csv 1 replaced\n"
	  "a.csv 3 replaces a.csv version 2 (def)\na.csv 0 no-tolerance\na.csv 0 new-version\n" },
	{ "a line that was written by hand, without a digest",
	  HEAD "A,10,,ft,1 May,P,a.csv,,,,,,,,\nB,11,,ft,1 May,P,a.csv,,,,,,,,\n",
	  { { "a.csv", BOOK("1 May", "P", "10"), "x" } },
	  "a.csv 1 replaced\na.csv 2 replaces a.csv version 1\na.csv 0 no-tolerance\n"
	  "a.csv 0 new-version\n" },
	{ "a record without a column that is needed",
	  "point,elevation,unit,book\nA,10,ft,a.csv\n",
	  { { "a.csv", BOOK("1 May", "P", "10"), "x" } },
	  "site.csv 1 record-column\nsite.csv 1 record-column\nsite.csv 1 record-column\n"
	  "site.csv 1 record-column\nsite.csv 1 record-column\nsite.csv 1 record-column\n"
	  "site.csv 1 record-column\nsite.csv 1 record-column\nsite.csv 1 record-column\n"
	  "site.csv 1 record-column\nsite.csv 1 record-column\n" },
	{ "a record saved with semicolons",
	  "point;elevation;adjusted;unit;date;project;book;version;section;closed;"
	  "within_tolerance;kind;known_elevation;replaces;sha256\n",
	  { { "a.csv", BOOK("1 May", "P", "10"), "x" } },
	  "site.csv 0 record-form\n" },
	{ "a record saved in Windows-1252",
	  HEAD "caf\xE9,10,,ft,1 May,P,a.csv,1,A to A,yes,,benchmark,10,,abc\n",
	  { { "a.csv", BOOK("1 May", "P", "10"), "x" } },
	  "site.csv 0 windows-1252\nsite.csv 0 record-form\n" },
	{ "cells of the record that a spreadsheet spoilt",
	  HEAD "A,5-Mar,,ft,1 May,P,a.csv,1,A to A,yes,,benchmark,10,,abc\n"
	       "A,10,,yards,1 May,P,a.csv,1,A to A,yes,,benchmark,10,,abc\n",
	  { { "b.csv", BOOK("1 May", "P", "10"), "x" } },
	  "a.csv 1\nsite.csv 2 date-cell\nsite.csv 3 bad-unit\n" },
	{ "a unit that is none is said once a row, of the first row of a book too",
	  HEAD "A,10,,yards,1 May,P,a.csv,1,A to A,yes,,benchmark,10,,abc\n"
	       "B,11,,yards,1 May,P,a.csv,1,A to A,yes,,end,,,abc\n",
	  { { "b.csv", BOOK("1 May", "P", "10"), "x" } },
	  "a.csv 1\nsite.csv 2 bad-unit\nsite.csv 3 bad-unit\n" },
	{ "a book is no record", BOOK("1 May", "P", "10"),
	  { { "b.csv", BOOK("1 May", "P", "10"), "x" } },
	  "site.csv 1 no-record\n" },
	{ "words are none", "to do\n",
	  { { "b.csv", BOOK("1 May", "P", "10"), "x" } },
	  "site.csv 0 no-record\n" },
	{ "an empty file is an empty record", "",
	  { { "a.csv", BOOK("1 May", "P", "10"), "x" } },
	  "a.csv 1\na.csv 0 no-tolerance\n" },
	{ "and so is one of blank lines", " \r\n\n\t\n",
	  { { "a.csv", BOOK("1 May", "P", "10"), "x" } },
	  "a.csv 1\na.csv 0 no-tolerance\n" },
};
/* clang-format on */

static void cases_hold(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct told out = { .used = 0 };
		struct records r;

		records_of(&r, cases[i].old, cases[i].book);
		tell_books(&out, &r);
		if (strcmp(out.text, cases[i].want) != 0) {
			print_error("%s: got\n%s", cases[i].name, out.text);
			wrong++;
		}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

/* Every entry of a record that is read again is what it was. */
static void reads_what_it_wrote(void **state)
{
	static struct capture capture;
	static const struct book_text books[] = {
		{ "larch.csv", larch, "0123" },
		{ "metres.csv",
		  "unit,m\ndatum,\"=a, \"\"b\"\"\"\npoint,bm,bs,is,fs,rod on,dip,remarks\n"
		  "-A,30.480,1,,,,,\"+ two\nlines\"\n@B,,,1.5,,rim,0.25,'x\n-A,,,,1,,,\n",
		  "4567" },
		{ NULL, NULL, NULL },
	};
	struct records a, b;
	int wrong = 0;

	(void)state;
	records_of(&a, NULL, books);
	assert_true(a.whole);
	records_of(&b, csv_of(&capture, &a), &books[2]);
	assert_true(b.whole);
	assert_int_equal(a.ledger->entries, b.ledger->entries);
	assert_int_equal(b.of_record.count, 0);
	for (uint32_t i = 0; i < a.ledger->entries; i++) {
		const struct rb_entry *x = &a.ledger->entry[i], *y = &b.ledger->entry[i];

		wrong += strcmp(x->point, y->point) != 0 ||
			 strcmp(x->section, y->section) != 0 ||
			 strcmp(x->remarks, y->remarks) != 0 || x->kind != y->kind ||
			 x->verdict != y->verdict || x->rod_on != y->rod_on ||
			 x->known.nm != y->known.nm || x->written != y->written;
		wrong += strcmp(rb_entry_book(a.ledger, x)->datum,
				rb_entry_book(b.ledger, y)->datum) != 0;
	}
	assert_int_equal(wrong, 0);
	rb_arena_free(a.arena);
	rb_arena_free(b.arena);
}

/* -- lines that are added take the columns as they stand -- */

static void keeps_to_the_columns(void **state)
{
	static struct capture capture;
	static const char old[] =
		"our record\nsha256,Checked by,book,point,elevation,unit,adjusted,date,"
		"project,version,section,closed,within tolerance,kind,known elevation,"
		"replaces,,\nabc,RO,a.csv,A,10,ft,,1 May,P,1,,,,benchmark,10,,,\n";
	static const struct book_text books[] = {
		{ "b.csv", BOOK("2 May", "P", "10"), "def" },
		{ NULL, NULL, NULL },
	};
	struct records r;

	(void)state;
	records_of(&r, old, books);
	assert_true(r.whole);
	capture_init(&capture);
	assert_true(rb_record_write_lines(&capture.sink, r.ledger));
	assert_string_equal(
		captured(&capture),
		"def,,b.csv,A,10,ft,,2 May,P,1,A to A,yes,,benchmark,10,,,\n"
		"def,,b.csv,A,10,ft,,2 May,P,1,A to A,yes,,benchmark,10,,,\n");
	rb_arena_free(r.arena);
}

/* -- without memory -- */

static size_t left;

static void *failing(void *old, size_t size)
{
	if (!left)
		return NULL;
	left--;
	return realloc(old, size);
}

static void survives_without_memory(void **state)
{
	static const struct book_text books[] = {
		{ "a.csv", DAY "point,bm,bs,is,fs\nA,10,4,,\nM,,,3,\nA,,,,4\n", "x" },
		{ "a.csv", DAY "point,bm,bs,is,fs\nA,11,4,,\nM,,,3,\nA,,,,4\n", "y" },
		{ "b.csv", DAY "point,bm,bs,is,fs\nA,12,4,,\nM,,,3,\nA,,,,4\n", "z" },
		{ NULL, NULL, NULL },
	};
	const struct rb_allocator allocator = { failing, free };
	bool done = false;

	(void)state;
	for (size_t most = 1; !done; most++) {
		static struct capture capture;
		struct rb_arena *arena;
		struct records r;

		left = most;
		arena = rb_arena_new(&allocator);
		if (!arena)
			continue;
		records_fill(&r, arena,
			     HEAD
			     "A,10,,ft,1 May,P,c.csv,1,A to A,yes,,benchmark,10,,abc\n",
			     books);
		if (r.several) {
			const struct rb_site_record record = { r.ledger, r.several,
							       r.list, r.books };
			struct rb_page *page = rb_record_page(&record);

			capture_init(&capture);
			done = page && !page->out_of_memory &&
			       rb_record_write_lines(&capture.sink, r.ledger) &&
			       rb_record_write_json(&capture.sink, &record);
			assert_int_equal(r.several->differing, 2);
		}
		rb_arena_free(arena);
		assert_true(most < 10000);
	}
}

/* Entries are counted in 32 bits: room for more than that is no room. */
static void holds_no_more_than_it_can_count(void **state)
{
	const struct rb_allocator allocator = { failing, free };
	struct rb_arena *arena;
	struct rb_ledger *ledger;

	(void)state;
	left = 100;
	arena = rb_arena_new(&allocator);
	ledger = rb_ledger_new(arena);
	assert_non_null(rb_ledger_room(ledger, 1));
	ledger->entries = 1;
	assert_null(rb_ledger_room(ledger, UINT32_MAX));
	left = 0;
	assert_null(rb_ledger_room(ledger, UINT32_MAX - 1));
	assert_int_equal(ledger->entries, 1);
	rb_arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(holds_no_more_than_it_can_count),
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(reads_what_it_wrote),
		cmocka_unit_test(keeps_to_the_columns),
		cmocka_unit_test(survives_without_memory),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
