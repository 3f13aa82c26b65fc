/* SPDX-License-Identifier: MIT */
/* test_span.c - from a line and a cell back to the user's own bytes. */
#include "notes.h"

#include "notes/rows.h"

/* clang-format off */
static const struct span_case {
	const char *what, *csv;
	uint32_t line;
	int32_t cell;
	const char *bytes;    /* those of the cell */
	const char *on;       /* the physical line that is shown; NULL: there is none */
	uint32_t column, lines_down;
	char separator;
} span_cases[] = {
	{ "first cell",          "a,bc,d\ne,f\n",       1, 0, "a",   "a,bc,d", 1, 0, ',' },
	{ "second cell",         "a,bc,d\ne,f\n",       1, 1, "bc",  "a,bc,d", 3, 0, ',' },
	{ "last cell",           "a,bc,d\ne,f\n",       1, 2, "d",   "a,bc,d", 6, 0, ',' },
	{ "second line",         "a,bc,d\ne,f\n",       2, 1, "f",   "e,f",    3, 0, ',' },
	{ "whole line",          "a,bc,d\ne,f\n",       2, -1, "e,f", "e,f",   1, 0, ',' },
	{ "no end of line",      "a\ne,f",              2, 1, "f",   "e,f",    3, 0, ',' },
	{ "empty cell",          "a,,d\n",              1, 1, "",    "a,,d",   3, 0, ',' },
	{ "empty last cell",     "a,b,\n",              1, 2, "",    "a,b,",   5, 0, ',' },
	{ "beyond the last",     "a,b\n",               1, 7, "b",   "a,b",    3, 0, ',' },
	{ "below blank lines",   "\n\r\n\na,b\n",       4, 1, "b",   "a,b",    3, 0, ',' },
	{ "CRLF",                "a,b\r\nc,d\r\n",      2, 1, "d",   "c,d",    3, 0, ',' },
	{ "CR",                  "a,b\rc,d\r",          2, 1, "d",   "c,d",    3, 0, ',' },
	{ "semicolons",          "a;5,32;b\n",          1, 1, "5,32", "a;5,32;b", 3, 0, ';' },
	{ "below sep=;",         "sep=;\na;b\n",        2, 1, "b",   "a;b",    3, 0, ';' },
	{ "blanks left out",     "a,  bc \t,d\n",       1, 1, "bc",  "a,  bc \t,d", 5, 0, ',' },
	{ "quotes left out",     "a,\"b,c\",d\n",       1, 1, "b,c", "a,\"b,c\",d", 4, 0, ',' },
	{ "behind quotes",       "a,\"b,c\",d\n",       1, 2, "d",   "a,\"b,c\",d", 9, 0, ',' },
	{ "blank and quotes",    "a, \"q\",b\n",        1, 1, "q",   "a, \"q\",b", 5, 0, ',' },
	{ "bare inch mark",      "a,5'-3\",b\n",        1, 1, "5'-3\"", "a,5'-3\",b", 3, 0, ',' },
	{ "behind it",           "a,5'-3\",b\n",        1, 2, "b",   "a,5'-3\",b", 9, 0, ',' },
	{ "its own bytes",       "a,\"5'-3\"\"\",b\n",  1, 1, "5'-3\"\"", "a,\"5'-3\"\"\",b", 4, 0, ',' },
	{ "quoted inch mark",    "a,\"5'-3\"\"\",b\n",  1, 2, "b",   "a,\"5'-3\"\"\",b", 12, 0, ',' },
	{ "characters, not bytes", "\u00BD\u2033,b\n",  1, 1, "b",   "\u00BD\u2033,b", 4, 0, ',' },
	{ "in a long record",    "\"x\ny\",b\nc\n",     1, 1, "b",   "y\",b",  4, 1, ',' },
	{ "the long cell",       "a,\"x\ny\",b\n",      1, 1, "x",   "a,\"x",  4, 0, ',' },
	{ "below a long record", "\"x\ny\",b\nc,d\n",   3, 1, "d",   "c,d",    3, 0, ',' },
	{ "two lines down",      "\"x\r\n\r\ny\",b\n",  1, 1, "b",   "y\",b",  4, 2, ',' },
	{ "open quote",          "a,\"b\nc\n",          1, 1, "b",   "a,\"b",  4, 0, ',' },
	{ "no such line",        "a\nb\n",              9, 0, NULL,  NULL,     0, 0, ',' },
	{ "no line at all",      "",                    1, 0, NULL,  NULL,     0, 0, ',' },
};
/* clang-format on */

static void open_source(struct rb_arena *arena, const struct span_case *c,
			struct rb_source **source)
{
	struct rb_findings findings;

	rb_findings_init(&findings, arena, "book.csv");
	*source = rb_source_open(arena, &findings, c->csv, strlen(c->csv));
	assert_non_null(*source);
	(*source)->separator = c->separator;
}

static void spans(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof span_cases / sizeof *span_cases; i++) {
		const struct span_case *c = &span_cases[i];
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_cursor cursor = { 0, 0 };
		struct rb_source *source;
		struct rb_span span;
		char got[ROOM] = "none", wanted[ROOM] = "none";

		open_source(arena, c, &source);
		got[0] = wanted[0] = '\0';
		if (rb_source_span(source, &cursor, c->line, c->cell, &span))
			add_text(got, "<%.*s> of <%.*s>, column %u, %u down",
				 (int)span.length, span.line + span.from,
				 (int)span.line_length, span.line, span.column,
				 span.lines_down);
		if (c->on)
			add_text(wanted, "<%s> of <%s>, column %u, %u down", c->bytes,
				 c->on, c->column, c->lines_down);
		wrong += differs(c->what, got, wanted);
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* One cursor serves lines that go up, and also one that goes back. */
static void a_cursor_goes_on(void **state)
{
	static const struct {
		uint32_t line;
		const char *bytes;
	} asked[] = { { 1, "a" }, { 1, "a" }, { 3, "c" }, { 4, "d" }, { 2, "b" } };
	const struct span_case lines = { .csv = "a\nb\nc\nd\n", .separator = ',' };
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_cursor cursor = { 0, 0 };
	struct rb_source *source;
	struct rb_span span;

	(void)state;
	open_source(arena, &lines, &source);
	for (size_t i = 0; i < sizeof asked / sizeof *asked; i++) {
		assert_true(rb_source_span(source, &cursor, asked[i].line, 0, &span));
		assert_int_equal(span.length, 1);
		assert_int_equal(span.line[span.from], asked[i].bytes[0]);
	}
	rb_arena_free(arena);
}

#define LONGEST 5

/* Does each cell that is found lie within one line of the text? */
static bool all_lie_within(const struct rb_source *source)
{
	struct rb_span span;
	bool within = true;

	for (uint32_t line = 1; line <= LONGEST; line++)
		for (int32_t cell = RB_WHOLE_ROW; cell < 3; cell++) {
			struct rb_cursor cursor = { 0, 0 };

			if (!rb_source_span(source, &cursor, line, cell, &span))
				continue;
			within &= span.line >= source->text &&
				  span.line + span.line_length <=
					  source->text + source->length &&
				  span.from + span.length <= span.line_length &&
				  !memchr(span.line, '\n', span.line_length) &&
				  !memchr(span.line, '\r', span.line_length);
		}
	return within;
}

/* The signs that mean something, in every order: as many short files as there are. */
static void a_span_lies_within_its_line(void **state)
{
	static const char signs[] = "a,\" \t\n\r";
	const size_t count = sizeof signs - 1;
	char text[LONGEST];
	struct rb_source source = { .text = text, .separator = ',', .first_line = 1 };

	(void)state;
	for (size_t all = count; source.length < LONGEST; all *= count) {
		source.length++;
		for (size_t number = 0; number < all; number++) {
			size_t rest = number;

			for (size_t i = 0; i < source.length; i++, rest /= count)
				text[i] = signs[rest % count];
			if (!all_lie_within(&source))
				fail_msg("%.*s", (int)source.length, text);
		}
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_span_lies_within_its_line),
		cmocka_unit_test(spans),
		cmocka_unit_test(a_cursor_goes_on),
	};

	return cmocka_run_group_tests_name("span", tests, NULL, NULL);
}
