/* SPDX-License-Identifier: MIT */
/* Running out of memory anywhere while a book is read is said; no row is lost. */
#include "notes.h"

#include "../memory.h"

/* Keys in two cells and in one, a row of units, strays, a spelling, an inch mark, remarks
 * of two lines, and a last line without an end. */
static const char full[] =
	"project,Larch Street\nrod,13 ft\ndate: 3/17\nremrks,x\n"
	"point,known elevation,bs,is,fs,remarks,odd\n,ft,ft,ft,ft,,\n"
	"BM 1,100.00,4.27,,,\"two\nlines\",x,stray\nTP-1,,,,6.03,,\nTP\xE2\x80\x93"
	"1,,5.11,,,,\npoint,known elevation,bs,is,fs,remarks,odd\n"
	"BM 1 cap,,,5'-3\",,,\nCaf\xE9,,,5.21,,,\nbm 1,,,,3.35";

/* Cells, but no header: the nearest row is kept, to be told of. */
static const char headless[] = "project,Larch Street\nbacksight,remrks\n4.27,x";

/* Nothing but one cell, without an end: all memory is asked for at its end. */
static const char one_cell[] = "A";

static bool is_read(struct rb_arena *arena, const void *with)
{
	struct rb_findings findings;
	const struct rb_book *book;

	rb_findings_init(&findings, arena, "book.csv");
	book = rb_book_read(arena, &findings, with, strlen(with));
	if (findings.out_of_memory)
		return false;
	assert_int_equal(book != NULL, rb_findings_allow_result(&findings));
	if (with == full)
		assert_int_equal(book->rows, 6);
	return true;
}

static void every_allocation_may_fail(void **state)
{
	int failures;

	(void)state;
	assert_true(memory_fails(is_read, full, &failures));
	assert_true(failures > 40);
	assert_true(memory_fails(is_read, headless, &failures));
	assert_true(failures > 10);
	assert_true(memory_fails(is_read, one_cell, &failures));
	assert_true(failures > 5);
}

/* As many names as the first table of names holds: it is made larger while they are held
 * against each other, when all rows have been read. */
static void names_are_compared_with_all_memory_or_not_at_all(void **state)
{
	static char many[16384] = "point,known elevation,bs,fs\nBM 1,100,4.00,\n";
	size_t used = strlen(many);
	int failures;

	(void)state;
	for (int i = 1; i < 768; i++)
		used += (size_t)snprintf(many + used, sizeof many - used, "N %d,,,4\n",
					 i);
	assert_true(used < sizeof many - 1);
	assert_true(memory_fails(is_read, many, &failures));
	assert_true(failures > 20);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_allocation_may_fail),
		cmocka_unit_test(names_are_compared_with_all_memory_or_not_at_all),
	};

	return cmocka_run_group_tests_name("memory", tests, NULL, NULL);
}
