/* SPDX-License-Identifier: MIT */
/* Pages as HTML: well-formed, self-contained, verdicts first, nothing of the user's as
 * markup. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "capture.h"
#include "markup.h"
#include "report/html.h"
#include "report/reduced_page.h"
#include "report/reduced_profile.h"

static struct capture capture;

#define DIGEST "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"

static const struct rb_html_input input = { "larch.csv", DIGEST };

static const char *report_of(const char *book)
{
	struct rb_html_paper paper = {
		.heading = "Levels", .input = &input, .inputs = 1, .sign = true
	};
	struct reduced_book b;
	struct rb_page *page;

	reduce_text(&b, "larch.csv", book, false);
	capture_init(&capture);
	page = rb_reduced_page(b.arena, &b.reduction);
	paper.picture = rb_reduced_profile(b.arena, &b.reduction);
	if (page && paper.picture)
		rb_page_write_html(&capture.sink, page, &paper);
	rb_arena_free(b.arena);
	return captured(&capture);
}

static int count(const char *text, const char *what)
{
	int found = 0;

	for (text = strstr(text, what); text; text = strstr(text + 1, what))
		found++;
	return found;
}

/* In this order, each behind the one before. */
static void stands_in_order(void **state)
{
	static const char *const parts[] = {
		"<!DOCTYPE html>\n<html lang=\"en\">",
		"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
		"style-src 'unsafe-inline'\">",
		"<meta name=\"viewport\"",
		"<title>Larch Street drain, 17 March 2026</title>",
		"<b>Larch Street drain, 17 March 2026</b> <span>larch.csv",
		"<h1>Larch Street drain, 17 March 2026</h1>",
		"<section class=\"verdict\" aria-label=\"Verdict\">\n<p>CLOSES on BM-1: ",
		"<section class=\"scroll short\" tabindex=\"0\" aria-label=\"Table 1\">",
		"<thead>",
		"<th scope=\"col\">point</th><th scope=\"col\" class=\"n\">BS</th>",
		"<tbody>",
		"<tr><th scope=\"row\">TP-1</th><td class=\"n\">5.11</td>",
		"<tr class=\"sums\"><th scope=\"row\">sums</th>",
		"</table>\n</section>",
		"<p>Arithmetic: 14.28\xC2\xA0-\xC2\xA0"
		"14.29 = -0.01",
		"<figure class=\"scroll\" tabindex=\"0\">\n<svg ",
		"</svg>",
		"<dt>levelled by</dt><dd></dd>",
		"<dt>checked by</dt><dd></dd>",
		"<dt>date</dt><dd></dd>",
		"<dd>larch.csv</dd>",
		"<dt>SHA-256</dt><dd>" DIGEST "</dd>",
		"</html>\n",
	};
	const char *at = report_of(larch);

	(void)state;
	assert_true(markup_is_right(at));
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		const char *found = strstr(at, parts[i]);

		if (!found) {
			fail_msg("not there, or not behind the part before: %s",
				 parts[i]);
			return;
		}
		at = found + 1;
	}
}

static void needs_nothing_from_outside(void **state)
{
	static const char *const banned[] = { "<script", "<link",   "<img",
					      "src=",    "href=",   "url(",
					      "@import", "<iframe", "javascript:" };
	const char *html = report_of(larch);
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof banned / sizeof *banned; i++)
		if (strstr(html, banned[i])) {
			print_error("in the page: %s\n", banned[i]);
			wrong++;
		}
	assert_int_equal(count(html, "http"), 2); /* http-equiv, the name space of SVG */
	assert_int_equal(wrong, 0);
}

static void takes_no_markup_from_a_book(void **state)
{
	static const char book[] =
		"project,\"</title><script>alert(1)</script>\"\n"
		"date,\"\"\"}</style><b>\"\n"
		"crew,<!-- --><h1>x</h1>\n"
		"point,backsight,foresight,known elevation,remarks\n"
		"<img src=x>,4.27,,100.00,\"\x1b]0;x\x07 \xE2\x80\xAE evil\"\n"
		"\"\"\" onclick=\"\"x\",5.11,6.03,,&amp;\n"
		"=cmd(),,3.00,,\xFF\n";
	const char *html = report_of(book);

	(void)state;
	assert_true(markup_is_right(html));
	assert_int_equal(count(html, "<script"), 0);
	assert_int_equal(count(html, "<img"), 0);
	assert_int_equal(count(html, "<h1>"), 1);
	assert_int_equal(count(html, "<style>"), 1);
	assert_int_equal(count(html, "</style>"), 1);
	assert_int_equal(count(html, "\xE2\x80\xAE"), 0);
	assert_int_equal(count(html, "\x1b"), 0);
	assert_non_null(strstr(html, "&lt;img src=x&gt;"));
	assert_non_null(strstr(html, "&amp;amp;"));
}

/* -- pages of blocks -- */

static struct rb_arena *arena;

static int start(void **state)
{
	(void)state;
	arena = rb_arena_new(NULL);
	return !arena;
}

static int end(void **state)
{
	(void)state;
	rb_arena_free(arena);
	return 0;
}

static const char *html_of(const struct rb_page *page)
{
	const struct rb_html_paper paper = { .heading = "Lengths & slopes" };

	capture_init(&capture);
	assert_true(rb_page_write_html(&capture.sink, page, &paper));
	assert_true(markup_is_right(captured(&capture)));
	return capture.text;
}

static void has_a_heading_without_a_title(void **state)
{
	struct rb_page *page = rb_page_new(arena);
	const char *html;

	(void)state;
	rb_page_add(page, RB_LINES, "5.29 ft\n  = 5'-3 1/2\"\n", NULL);
	html = html_of(page);
	assert_non_null(strstr(html, "<title>Lengths &amp; slopes</title>"));
	assert_non_null(strstr(html, "<h1>Lengths &amp; slopes</h1>"));
	assert_non_null(strstr(html, "<pre>5.29 ft\n  = 5&#39;-3 1/2&quot;\n</pre>"));
	assert_null(strstr(html, "<footer>")); /* nothing to sign, no file */
}

static void has_one_heading_of_the_first_rank(void **state)
{
	struct rb_page *page = rb_page_new(arena);
	const char *html;

	(void)state;
	rb_page_add(page, RB_TITLE, "first", "aside");
	rb_page_add(page, RB_VERDICT, "A HOLDS", NULL);
	rb_page_add(page, RB_TITLE, "second", NULL);
	rb_page_add(page, RB_HEADING, "part", NULL);
	rb_page_add(page, RB_CAUTION, "look up", "29 CFR");
	rb_page_add(page, RB_VERDICT, "B FAILS", NULL);
	html = html_of(page);
	assert_int_equal(count(html, "<h1>"), 1);
	assert_non_null(strstr(html, "<h2>second</h2>"));
	assert_non_null(strstr(html, "<p>A HOLDS</p>\n<p>B FAILS</p>\n</section>"));
	assert_non_null(strstr(html, "<strong>CAUTION</strong> look up <span "
				     "class=\"cite\">(29 CFR)</span>"));
}

static void lines_decimals_up(void **state)
{
	static const struct rb_table_column column[] = { { "point", RB_LEFT, RB_SPILLS },
							 { "cut\nto", RB_ON_POINT,
							   RB_KEEPS },
							 { "", RB_LEFT, RB_KEEPS } };
	static const char *const rows[][3] = { { "A", "4.311", "ok" },
					       { "B", "12.5", NULL },
					       { "", "7", "x" } };
	struct rb_page *page = rb_page_new(arena);
	struct rb_table *table = rb_page_table(page, "Cuts", column, 3);
	const char *html;

	(void)state;
	rb_table_add(table, RB_ROW, rows[0]);
	rb_table_note(table, "fill 5 ft");
	rb_table_add(table, RB_ROW_RULE, NULL);
	rb_table_add(table, RB_ROW, rows[1]);
	rb_table_add(table, RB_ROW, rows[2]);
	html = html_of(page);
	assert_non_null(strstr(html, "<caption>Cuts</caption>"));
	assert_non_null(
		strstr(html, "<th scope=\"col\" class=\"n\">cut<br>to</th><td></td>"));
	assert_non_null(strstr(html, "<td class=\"n\">4.311</td><td>ok</td>"));
	assert_non_null(strstr(html, "<tr class=\"note\"><td colspan=\"3\">fill 5\xC2\xA0"
				     "ft</td></tr>"));
	assert_non_null(strstr(html, "<tr class=\"ruled\"><th scope=\"row\">B</th>"
				     "<td class=\"n b2\">12.5</td><td></td></tr>"));
	assert_non_null(strstr(html, "<tr><td></td><td class=\"n b4\">7</td>"));
}

/* The wider a table, the smaller its print; a sheet of its own takes its words along. */
static void fits_the_paper(void **state)
{
	struct rb_table_column column[20];
	const char *cells[20];
	struct rb_page *page = rb_page_new(arena);
	struct rb_table *table;
	const char *html;

	(void)state;
	for (int i = 0; i < 20; i++) {
		column[i] = (struct rb_table_column){ "length", RB_ON_POINT, RB_KEEPS };
		cells[i] = "100.00";
	}
	table = rb_page_table(page, "narrow", column, 3);
	rb_table_add(table, RB_ROW, cells);
	table = rb_page_table(page, "wide", column, 20);
	rb_table_add(table, RB_ROW, cells);
	table = rb_page_table(page, "cut sheet", column, 5);
	table->own_sheet = true;
	rb_table_add(table, RB_ROW, cells);
	rb_page_add(page, RB_PARAGRAPH, "of the boards", NULL);
	rb_page_add(page, RB_HEADING, "after it", NULL);
	html = html_of(page);
	assert_int_equal(count(html, "--print:9.5pt"), 1);
	assert_int_equal(count(html, "--print:5.9pt"), 1);
	assert_int_equal(count(html, "--print:13.5pt"), 1);
	assert_non_null(
		strstr(html, "<p>of the boards</p>\n</section>\n<h2>after it</h2>"));
}

static void is_not_written_without_memory(void **state)
{
	const struct rb_html_paper paper = { .heading = "x" };
	struct rb_page *page = rb_page_new(arena);

	(void)state;
	page->out_of_memory = true;
	capture_init(&capture);
	assert_false(rb_page_write_html(&capture.sink, page, &paper));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(stands_in_order),
		cmocka_unit_test(needs_nothing_from_outside),
		cmocka_unit_test(takes_no_markup_from_a_book),
		cmocka_unit_test_setup_teardown(has_a_heading_without_a_title, start,
						end),
		cmocka_unit_test_setup_teardown(has_one_heading_of_the_first_rank, start,
						end),
		cmocka_unit_test_setup_teardown(lines_decimals_up, start, end),
		cmocka_unit_test_setup_teardown(fits_the_paper, start, end),
		cmocka_unit_test_setup_teardown(is_not_written_without_memory, start,
						end),
	};

	return cmocka_run_group_tests_name("html", tests, NULL, NULL);
}
