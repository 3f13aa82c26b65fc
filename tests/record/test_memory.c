/* SPDX-License-Identifier: MIT */
/* Running out of memory anywhere in a record of several books is said. */

#include "records.h"

#include "../memory.h"

static const struct book_text books[] = {
	{ "may.csv",
	  "datum,site\ntolerance,0.02\npoint,known elevation,bs,is,fs,remarks\n"
	  "BM-1,100.00,4.27,,,cap\nTP-1,,,,6.03,on a stone\nTP-1,,5.11,,,in the lane\n"
	  "MH-1,,,7.48,,rim\nBM-1,,,,3.35,\n",
	  NULL },
	{ "june.csv",
	  "datum,city\ntolerance,0.02\npoint,known elevation,bs,is,fs,remarks\n"
	  "BM-1,100.01,4.00,,,\nMH-1,,,7.00,,\nBM-1,,,,4.00,\n",
	  NULL },
	{ NULL, NULL, NULL },
};

static bool record_is_made(struct rb_arena *arena, const void *with)
{
	struct records r;

	records_fill(&r, arena, with, books);
	for (size_t i = 0; i < r.books; i++)
		if (r.of_book[i].out_of_memory)
			return false;
	return r.whole && r.several && !r.of_record.out_of_memory;
}

static void every_allocation_may_fail(void **state)
{
	int failures;

	(void)state;
	assert_true(memory_fails(record_is_made, NULL, &failures));
	assert_true(failures > 50);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_allocation_may_fail),
	};

	return cmocka_run_group_tests_name("memory", tests, NULL, NULL);
}
