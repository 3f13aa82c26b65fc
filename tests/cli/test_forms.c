/* SPDX-License-Identifier: MIT */
/* A form that was just written is a book that reads and reduces, in every unit. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "cli/forms.h"
#include "rodbook/rodbook.h"

struct page {
	char text[8192];
	size_t used;
};

static bool keep(void *self, const char *bytes, size_t length)
{
	struct page *page = self;

	if (length > sizeof page->text - page->used)
		return false;
	memcpy(page->text + page->used, bytes, length);
	page->used += length;
	return true;
}

static struct page form_in(const char *name, enum rb_unit unit)
{
	struct page page = { "", 0 };
	struct rb_sink sink;

	rb_sink_init(&sink, keep, &page);
	rb_form_write(&sink, rb_form_find(name), unit);
	assert_true(rb_sink_flush(&sink));
	return page;
}

/* clang-format off */
static const int64_t heights[] = { /* by unit: 100 ft and 4.27 ft, 4'-3 1/4", 100 m and 1.302 m */
	104 * RB_FOOT + RB_FOOT / 100 * 27, 104 * RB_FOOT + RB_INCH * 13 / 4,
	104 * RB_FOOT + RB_INCH * 13 / 4, 101302 * RB_MILLIMETRE, 101302 * RB_MILLIMETRE,
};
/* clang-format on */

/* The unit of the form is the one asked for, and the example means the same in each. */
static void book_reads_without_a_finding(void **state)
{
	(void)state;
	for (enum rb_unit unit = RB_FEET; unit <= RB_MILLIMETRES; unit++) {
		struct page page = form_in("book", unit);
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_findings findings;
		struct rb_book *book;
		struct rb_reduced *reduced;

		rb_findings_init(&findings, arena, "book.csv");
		book = rb_book_read(arena, &findings, page.text, page.used);
		assert_non_null(book);
		assert_int_equal(findings.count, 0);
		assert_int_equal(book->unit, unit);
		assert_false(book->key.tolerance.given);
		assert_string_equal(book->key.project, "");
		assert_string_equal(book->key.crew, "");
		reduced = rb_reduce(arena, &findings, book);
		assert_non_null(reduced);
		assert_int_equal(findings.count, 0);
		assert_int_equal(reduced->setups, 1);
		assert_int_equal(reduced->setup[0].height_of_instrument.nm,
				 heights[unit]);
		rb_arena_free(arena);
	}
}

static void every_form_has_a_name_and_a_reader(void **state)
{
	size_t forms = 0;

	(void)state;
	for (; rb_form_name(forms); forms++)
		assert_non_null(rb_form_command(rb_form_find(rb_form_name(forms))));
	assert_int_equal(forms, 4);
	assert_null(rb_form_find("boko"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_reads_without_a_finding),
		cmocka_unit_test(every_form_has_a_name_and_a_reader),
	};

	return cmocka_run_group_tests_name("forms", tests, NULL, NULL);
}
