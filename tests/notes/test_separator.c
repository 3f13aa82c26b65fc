/* SPDX-License-Identifier: MIT */
/* test_separator.c - the separator is the one under which a header can be recognised. */
#include "notes.h"

#include <stdlib.h>

#include "notes/rows.h"

#define HEAD_60 "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa\n"

/* clang-format off */
static const struct separator_case {
	const char *what, *csv;
	char separator;
} separator_cases[] = {
	{ "comma",                    "point,bs,fs\n",                          ',' },
	{ "semicolon",                "point;bs;fs\n",                          ';' },
	{ "tab",                      "point\tbs\tfs\n",                        '\t' },
	{ "decimal commas below",     "point;bs;fs\nBM;5,32;\n",                ';' },
	{ "commas in the title",      "Larch St, sewer, 4 in\npoint;bs;fs\n",   ';' },
	{ "semicolons in the title",  "a;b;c;d\npoint,bs,fs\n",                 ',' },
	{ "header far down",          HEAD_60 HEAD_60 HEAD_60 "point;bs;fs\n",  ';' },
	{ "quoted headings",          "\"point\";\"bs\"\n",                     ';' },
	{ "no header: most cells",    "a;b;c\n1,5;2,5;3\n",                     ';' },
	{ "no header, as many: comma", "a;b,c\n",                               ',' },
	{ "no header, quotes",        "\"a,a,a\";\"b,b\"\n",                    ';' },
	{ "no header, words",         "Rim, north side; old, dry\na\tb\n",      ',' },
	{ "nothing: comma",           "",                                       ',' },
	{ "sep=; goes first",         "sep=;\npoint;bs;fs\n",                   ';' },
	{ "sep=; that is not true",   "sep=;\npoint,bs,fs\n",                   ',' },
	{ "sep=; without a header",   "sep=;\na;b\n",                           ';' },
	{ "comma before semicolon",   "point,bs\npoint;bs\n",                   ',' },
	{ "an open quote above",      "\"title\npoint;bs\n",                    ';' },
};
/* clang-format on */

/* A point column and a backsight: enough of a header. */
static bool is_header(void *self, const struct rb_record *record)
{
	int found = 0;

	(void)self;
	for (uint32_t i = 0; i < record->cells; i++)
		found += !strcmp(record->cell[i].text, "point") ||
			 !strcmp(record->cell[i].text, "bs");
	return found == 2;
}

static void separators(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof separator_cases / sizeof *separator_cases; i++) {
		const struct separator_case *c = &separator_cases[i];
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_findings findings;
		struct rb_source *source;

		rb_findings_init(&findings, arena, "book.csv");
		source = rb_source_open(arena, &findings, c->csv, strlen(c->csv));
		assert_true(rb_source_separate(arena, source, is_header, NULL));
		if (source->separator != c->separator) {
			print_error("%s: got '%c'\n", c->what, source->separator);
			wrong++;
		}
		assert_int_equal(findings.count, 0); /* a try says nothing */
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* The same book under each separator, with the decimal comma that goes with it. */
static void a_book_under_each(void **state)
{
	static const struct {
		const char *csv;
		bool decimal_comma;
	} books[] = {
		{ "point,known elevation,bs,fs\nBM,100.00,4.27,\nTP,,,6.03\n", false },
		{ "point;known elevation;bs;fs\nBM;100,00;4,27;\nTP;;;6,03\n", true },
		{ "point\tknown elevation\tbs\tfs\nBM\t100.00\t4,27\t\nTP\t\t\t6.03\n",
		  true },
		{ "sep=;\npoint;known elevation;bs;fs\nBM;100.00;4.27;\nTP;;;6.03\n",
		  true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof books / sizeof *books; i++) {
		struct notes notes = notes_of(books[i].csv);
		rb_length bs;

		assert_non_null(notes.book);
		bs = rb_book_value(notes.book, RB_BACKSIGHT, 0);
		assert_int_equal(bs.nm, 427 * (RB_FOOT / 100));
		assert_int_equal(notes.book->decimal_comma, books[i].decimal_comma);
		notes_end(&notes);
	}
}

static int allowed; /* requests for memory before a run of them fails */

static void *failing_resize(void *old, size_t size)
{
	int left = allowed--;

	return left <= 0 && left > -16 ? NULL : realloc(old, size);
}

/* A search that lacked memory for a while must say so: what is read later with the wrong
 * separator would be told as a file without a header. */
static void no_memory_for_a_while(void **state)
{
	const struct rb_allocator failing = { failing_resize, free };
	const char *csv = "title;of;it\npoint;known elevation;bs;fs\nBM;100,00;4,27;\n";
	int failures = 0;

	(void)state;
	for (int calls = 1; calls < 100; calls++) {
		struct rb_findings findings;
		struct rb_arena *arena;
		struct rb_book *book;

		allowed = 1 << 20;
		arena = rb_arena_new(&failing);
		rb_findings_init(&findings, arena, "book.csv");
		allowed = calls;
		book = rb_book_read(arena, &findings, csv, strlen(csv));
		assert_int_equal(findings.of_severity[RB_ERROR], 0);
		assert_int_equal(book != NULL, !findings.out_of_memory);
		failures += !book;
		rb_arena_free(arena);
	}
	assert_in_range(failures, 2, 90);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(separators),
		cmocka_unit_test(a_book_under_each),
		cmocka_unit_test(no_memory_for_a_while),
	};

	return cmocka_run_group_tests_name("separator", tests, NULL, NULL);
}
