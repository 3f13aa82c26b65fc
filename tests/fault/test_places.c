/* SPDX-License-Identifier: MIT */
/*
 * Places where a file cannot be read or written, or not as a file is: folders, links,
 * pipes, full devices.
 */
#include "places.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

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

int __wrap_main(void);
int __wrap_main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_teardown(a_folder_is_no_book, forget),
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
	};

	return cmocka_run_group_tests_name("fault places", tests, scenes_begin, runs_end);
}
