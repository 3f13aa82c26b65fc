/* SPDX-License-Identifier: MIT */
/* Rights that are missing, and limits that are reached: of files, their size, of memory.
 */
#include "places.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

/* -- rights ---------------------------------------------------------------------- */

static void a_file_without_rights_is_not_read(void **state)
{
	const struct scene file = { LINE("reduce", "out/locked.csv"),
				    .old_name = "out/locked.csv",
				    .old_file = "larch.csv" };
	const struct scene folder = { LINE("reduce", "rules/ipc.csv") };

	(void)state;
	if (!run_as_nobody(true))
		skip();
	prepare(&file, &before);
	assert_int_equal(chmod("out/locked.csv", 0), 0);
	look(&before);
	run(&file, NULL, &got);
	assert_fails("out/locked.csv", EACCES);
	assert_int_equal(chmod("rules", 0700), 0);
	if (!geteuid()) {
		go(&folder);
		assert_fails("rules/ipc.csv", EACCES);
	}
	assert_int_equal(chmod("rules", 0755), 0);
	run_as_nobody(false);
}

static void a_folder_without_rights_is_told(void **state)
{
	static const struct scene closed[] = {
		{ LINE("reduce", "larch.csv", "-o", "out/old.csv"),
		  .old_name = "out/old.csv", .old_file = "lines.txt" },
		{ LINE("reduce", "larch.csv", "-o", "out/new.csv") },
		{ LINE("record", "--append", "out/site.csv", "larch-metres.csv"),
		  .old_name = "out/site.csv", .old_file = "site.csv" },
		{ LINE("new", "book", "out/book.csv") },
	};

	(void)state;
	if (!run_as_nobody(true))
		skip();
	for (size_t i = 0; i < sizeof closed / sizeof *closed; i++) {
		prepare(&closed[i], &before);
		assert_int_equal(chmod("out", 0555), 0);
		run(&closed[i], NULL, &got);
		assert_int_equal(chmod("out", 0755), 0);
		assert_fails("out/", EACCES);
	}
	run_as_nobody(false);
}

/* Though its folder would allow that another takes its place. */
static void a_file_that_may_not_be_written_is_not_replaced(void **state)
{
	const struct scene scene = { LINE("reduce", "larch.csv", "-o", "out/old.csv"),
				     .old_name = "out/old.csv", .old_file = "lines.txt" };

	(void)state;
	if (!run_as_nobody(true))
		skip();
	prepare(&scene, &before);
	assert_int_equal(chmod("out/old.csv", 0444) + chmod("out", 0777), 0);
	look(&before);
	run(&scene, NULL, &got);
	assert_int_equal(chmod("out", 0755), 0);
	assert_fails("out/old.csv", EACCES);
	run_as_nobody(false);
}

static void allow_small_files(void)
{
	const struct rlimit limit = { 100, 100 };

	if (setrlimit(RLIMIT_FSIZE, &limit))
		_exit(99);
}

/* The signal that goes with the limit would leave the half-written file behind. */
static void a_limit_on_the_size_of_files_leaves_nothing(void **state)
{
	const struct scene scene = { LINE("reduce", "larch.csv", "-o", "out/old.csv"),
				     .old_name = "out/old.csv", .old_file = "lines.txt",
				     .in_child = allow_small_files };

	(void)state;
	go(&scene);
	assert_fails("out/old.csv", EFBIG);
}

static void allow_no_more_files(void)
{
	const struct rlimit limit = { 3, 3 };

	if (setrlimit(RLIMIT_NOFILE, &limit))
		_exit(99);
}

static void a_limit_on_open_files_is_told(void **state)
{
	const struct scene scene = { LINE("reduce", "larch.csv"),
				     .in_child = allow_no_more_files };

	(void)state;
	go(&scene);
	assert_fails("larch.csv", EMFILE);
}

#if defined __has_feature
#if __has_feature(address_sanitizer)
#define HAS_SANITIZER 1
#endif
#endif
#ifdef __SANITIZE_ADDRESS__
#define HAS_SANITIZER 1
#endif
#ifndef HAS_SANITIZER
#define HAS_SANITIZER 0 /* with one the address space is the sanitizer's */
#endif

static long pages_left; /* over what the process has as it begins */

static void allow_few_pages(void)
{
	FILE *file = fopen("/proc/self/statm", "r");
	char text[32] = "";
	struct rlimit limit;

	if (!file || !fgets(text, sizeof text, file))
		_exit(99);
	fclose(file);
	limit.rlim_cur =
		(rlim_t)((strtol(text, NULL, 10) + pages_left) * sysconf(_SC_PAGESIZE));
	limit.rlim_max = limit.rlim_cur;
	if (setrlimit(RLIMIT_AS, &limit))
		_exit(99);
}

/* A book that needs some megabytes. */
static void write_large_book(const char *name)
{
	struct bytes rows = { NULL, 0, 0 };
	char *text;
	size_t used = 0;

	get_file("long.csv", &rows);
	text = malloc(50 * rows.length);
	assert_non_null(text);
	for (int i = 0; i < 50; i++) {
		memcpy(text + used, rows.byte, rows.length);
		used += rows.length;
	}
	put_file(name, text, used);
	free(text);
	free(rows.byte);
}

/* The stack cannot grow either then, not even for the message: 110 pages are what it
 * takes to begin at all. */
static void memory_that_has_run_out_is_told_and_no_crash(void **state)
{
	const struct scene scene = { LINE("reduce", "large.csv", "-f", "html", "-o",
					  "out/new.html"),
				     .in_child = allow_few_pages };
	bool enough = false;
	int failed = 0;

	(void)state;
	if (HAS_SANITIZER || access("/proc/self/statm", R_OK))
		skip();
	write_large_book("large.csv");
	for (pages_left = 110; !enough && pages_left < 20000; pages_left += 13) {
		go(&scene);
		enough = ended(&got, 0) || ended(&got, 2);
		if (enough)
			break;
		assert_fails("rodbook: ", ENOMEM);
		failed++;
	}
	assert_true(enough && failed > 10);
}

static int begin(void **state)
{
	runs_are_not_counted();
	return scenes_begin(state);
}

int __wrap_main(void);
int __wrap_main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_teardown(a_file_without_rights_is_not_read, forget),
		cmocka_unit_test_teardown(a_folder_without_rights_is_told, forget),
		cmocka_unit_test_teardown(a_file_that_may_not_be_written_is_not_replaced,
					  forget),
		cmocka_unit_test_teardown(a_limit_on_the_size_of_files_leaves_nothing,
					  forget),
		cmocka_unit_test_teardown(a_limit_on_open_files_is_told, forget),
		cmocka_unit_test_teardown(memory_that_has_run_out_is_told_and_no_crash,
					  forget),
	};

	return cmocka_run_group_tests_name("fault limits", tests, begin, runs_end);
}
