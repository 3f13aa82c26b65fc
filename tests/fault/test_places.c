/* SPDX-License-Identifier: MIT */
/*
 * Places where a file cannot be read or written, as the system itself makes them:
 * folders, links, pipes, full devices, missing rights, limits.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "scenes.h"

#define LINE(...) .word = { __VA_ARGS__, NULL }

static struct outcome got;
static struct bytes before;

static int forget(void **state)
{
	(void)state;
	free_outcome(&got);
	free(before.byte);
	before = (struct bytes){ NULL, 0, 0 };
	return 0;
}

static void go(const struct scene *scene)
{
	prepare(scene, &before);
	run(scene, NULL, &got);
}

/* It ended with 3, said why and of which file in one line, and left all as it was. */
static void assert_fails(const char *name, int error)
{
	if (!ended(&got, 3) || !is_one_message(&got.messages, name, strerror(error)) ||
	    got.output.length || !are_equal(&got.folder, &before))
		fail_msg("status %x, output %zu bytes\n%s%s", got.status,
			 got.output.length, got.messages.byte, got.folder.byte);
}

static void assert_file(const char *name, const char *begins)
{
	struct bytes bytes = { NULL, 0, 0 };

	get_file(name, &bytes);
	if (strncmp(bytes.byte, begins, strlen(begins)))
		fail_msg("%s holds %s", name, bytes.byte);
	free(bytes.byte);
}

/* -- what is read ------------------------------------------------------------------ */

static void a_folder_is_no_book(void **state)
{
	static const struct scene scenes_of_folders[] = {
		{ LINE("reduce", "rules") },
		{ LINE("reduce", "-"), .input = "rules" },
		{ LINE("check", "--marks", "rules") },
		{ LINE("record", "--append", "rules", "larch.csv") },
		{ LINE("drain", "larch-plan.csv", "--ground", "rules") },
		{ LINE("drain", "larch-plan.csv", "--rules", "rules") },
		{ LINE("peg", "rules") },
		{ LINE("dig", "larch-plan.csv", "--hi", "102.65"), .input = "rules" },
		{ LINE("convert"), .input = "rules" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof scenes_of_folders / sizeof *scenes_of_folders;
	     i++) {
		go(&scenes_of_folders[i]);
		assert_fails("rodbook: ", EISDIR);
	}
}

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

static void a_book_comes_through_a_pipe(void **state)
{
	const struct scene pipe_in = { LINE("reduce", "out/pipe", "-f", "csv") };
	struct bytes book = { NULL, 0, 0 };
	pid_t writer;

	(void)state;
	prepare(&pipe_in, &before);
	get_file("larch.csv", &book);
	assert_int_equal(mkfifo("out/pipe", 0666), 0);
	writer = fork();
	if (!writer) {
		int fd = open("out/pipe", O_WRONLY);

		_exit(write(fd, book.byte, book.length) != (ssize_t)book.length);
	}
	run(&pipe_in, NULL, &got);
	waitpid(writer, NULL, 0);
	free(book.byte);
	assert_true(ended(&got, 0));
	assert_true(got.output.length > 0);
}

/* -- what is written ---------------------------------------------------------------- */

static void a_folder_is_not_written_over(void **state)
{
	const struct scene folder = { LINE("reduce", "larch.csv", "-o", "rules") };
	const struct scene inside = { LINE("reduce", "larch.csv", "-o", "larch.csv/x") };
	const struct scene nowhere = { LINE("reduce", "larch.csv", "-o", "nowhere/x") };
	const struct scene form = { LINE("new", "book", "nowhere/x") };

	(void)state;
	go(&folder);
	assert_fails("rules", EISDIR);
	go(&inside);
	assert_fails("larch.csv/x", ENOTDIR);
	go(&nowhere);
	assert_fails("nowhere/x", ENOENT);
	go(&form);
	assert_fails("nowhere/x", ENOENT);
}

static void full_devices_are_told(void **state)
{
	const struct scene named = { LINE("reduce", "larch.csv", "-o", "/dev/full") };
	const struct scene dig = { LINE("dig", "larch-plan.csv", "--hi", "102.65", "-o",
					"/dev/full"),
				   .input = "larch-dig.txt" };

	(void)state;
	go(&named);
	assert_fails("/dev/full", ENOSPC);
	go(&dig);
	assert_fails("/dev/full", ENOSPC);
}

static void output_to_a_full_device(void)
{
	int full = open("/dev/full", O_WRONLY);

	if (full < 0 || dup2(full, STDOUT_FILENO) < 0)
		_exit(99);
}

static void a_full_standard_output_is_told(void **state)
{
	static const struct scene full[] = {
		{ LINE("reduce", "larch.csv"), .in_child = output_to_a_full_device },
		{ LINE("new", "book"), .in_child = output_to_a_full_device },
		{ LINE("convert", "5.29"), .in_child = output_to_a_full_device },
		{ LINE("convert"), .input = "lines.txt",
		  .in_child = output_to_a_full_device },
		{ LINE("--version"), .in_child = output_to_a_full_device },
		{ LINE("reduce", "--help"), .in_child = output_to_a_full_device },
	};

	(void)state;
	for (size_t i = 0; i < sizeof full / sizeof *full; i++) {
		go(&full[i]);
		assert_true(ended(&got, 3));
		assert_non_null(strstr(got.messages.byte, "rodbook: standard output: "));
		assert_non_null(strstr(got.messages.byte, strerror(ENOSPC)));
	}
}

static void messages_to_a_full_device(void)
{
	int full = open("/dev/full", O_WRONLY);

	if (full < 0 || dup2(full, STDERR_FILENO) < 0)
		_exit(99);
}

/* The verdict is in the status too: messages that nobody can read do not change it. */
static void messages_that_go_nowhere_change_no_status(void **state)
{
	const struct scene slip = { LINE("reduce", "larch-slip.csv"),
				    .in_child = messages_to_a_full_device };
	const struct scene bad = { LINE("reduce", "bad.csv"),
				   .in_child = messages_to_a_full_device };

	(void)state;
	go(&slip);
	assert_true(ended(&got, 1));
	assert_true(got.output.length > 0);
	go(&bad);
	assert_true(ended(&got, 2));
}

static void a_result_goes_through_a_pipe(void **state)
{
	const struct scene scene = { LINE("reduce", "larch.csv", "-f", "csv", "-o",
					  "out/pipe") };
	char text[8] = "";
	int fd;

	(void)state;
	prepare(&scene, &before);
	assert_int_equal(mkfifo("out/pipe", 0666), 0);
	fd = open("out/pipe", O_RDWR); /* so that nobody waits for the other end */
	assert_true(fd >= 0);
	look(&before);
	run(&scene, NULL, &got);
	assert_true(ended(&got, 0));
	assert_true(are_equal(&got.folder, &before));
	assert_int_equal(read(fd, text, 5), 5);
	assert_string_equal(text, "point");
	close(fd);
}

/* -- links -------------------------------------------------------------------------- */

static bool is_link(const char *name)
{
	struct stat about;

	return !lstat(name, &about) && S_ISLNK(about.st_mode);
}

static void a_link_is_followed_and_stays(void **state)
{
	const struct scene scene = {
		LINE("reduce", "larch.csv", "-f", "csv", "-o", "out/link"),
		.old_name = "out/real.csv", .old_file = "lines.txt"
	};

	(void)state;
	prepare(&scene, &before);
	assert_int_equal(symlink("real.csv", "out/link"), 0);
	run(&scene, NULL, &got);
	assert_true(ended(&got, 0) && is_link("out/link"));
	assert_file("out/real.csv", "point,");
	unlink("out/real.csv"); /* and one that points to nothing yet */
	run(&scene, NULL, &got);
	assert_true(ended(&got, 0) && is_link("out/link"));
	assert_file("out/real.csv", "point,");
}

static void a_ring_of_links_is_told(void **state)
{
	const struct scene scene = { LINE("reduce", "larch.csv", "-o", "out/a") };

	(void)state;
	prepare(&scene, &before);
	assert_int_equal(symlink("b", "out/a") + symlink("a", "out/b"), 0);
	look(&before);
	run(&scene, NULL, &got);
	assert_fails("out/a", ELOOP);
}

/* Two that add to one record through two names hold the same lock: its own folder's. */
static void a_record_behind_a_link_is_added_to(void **state)
{
	const struct scene scene = { LINE("record", "--append", "link.csv",
					  "larch-metres.csv"),
				     .old_name = "out/site.csv", .old_file = "site.csv" };

	(void)state;
	prepare(&scene, &before);
	assert_int_equal(symlink("out/site.csv", "link.csv"), 0);
	run(&scene, NULL, &got);
	assert_true(ended(&got, 0) && is_link("link.csv"));
	assert_file("out/site.csv", "point,");
	assert_non_null(strstr(got.folder.byte, "larch-metres.csv"));
	unlink("link.csv");
}

/* -- rights and limits --------------------------------------------------------------- */

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

int __wrap_main(void);
int __wrap_main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_teardown(a_folder_is_no_book, forget),
		cmocka_unit_test_teardown(a_file_without_rights_is_not_read, forget),
		cmocka_unit_test_teardown(a_book_comes_through_a_pipe, forget),
		cmocka_unit_test_teardown(a_folder_is_not_written_over, forget),
		cmocka_unit_test_teardown(full_devices_are_told, forget),
		cmocka_unit_test_teardown(a_full_standard_output_is_told, forget),
		cmocka_unit_test_teardown(messages_that_go_nowhere_change_no_status,
					  forget),
		cmocka_unit_test_teardown(a_result_goes_through_a_pipe, forget),
		cmocka_unit_test_teardown(a_link_is_followed_and_stays, forget),
		cmocka_unit_test_teardown(a_ring_of_links_is_told, forget),
		cmocka_unit_test_teardown(a_record_behind_a_link_is_added_to, forget),
		cmocka_unit_test_teardown(a_folder_without_rights_is_told, forget),
		cmocka_unit_test_teardown(a_file_that_may_not_be_written_is_not_replaced,
					  forget),
		cmocka_unit_test_teardown(a_limit_on_the_size_of_files_leaves_nothing,
					  forget),
		cmocka_unit_test_teardown(a_limit_on_open_files_is_told, forget),
		cmocka_unit_test_teardown(memory_that_has_run_out_is_told_and_no_crash,
					  forget),
	};

	return cmocka_run_group_tests_name("fault places", tests, scenes_begin, runs_end);
}
