/* SPDX-License-Identifier: MIT */
/* A result is written whole or not at all, and never over something else. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "cli/output.h"

/* -- a folder of its own for each test -------------------------------------------- */

static int enter(void **state)
{
	static char folder[32];

	strcpy(folder, "/tmp/rodbook-test-XXXXXX");
	*state = mkdtemp(folder);
	umask(022);
	return *state ? chdir(folder) : -1;
}

static int count_files(void)
{
	DIR *folder = opendir(".");
	int count = 0;

	assert_non_null(folder);
	for (struct dirent *e = readdir(folder); e; e = readdir(folder))
		if (strcmp(e->d_name, ".") && strcmp(e->d_name, ".."))
			count++;
	closedir(folder);
	return count;
}

static int leave(void **state)
{
	DIR *folder = opendir(".");

	for (struct dirent *e = folder ? readdir(folder) : NULL; e; e = readdir(folder))
		unlink(e->d_name);
	if (folder)
		closedir(folder);
	return chdir("/") || rmdir(*state);
}

static void put(const char *name, const char *text, mode_t mode)
{
	FILE *file = fopen(name, "w");

	assert_non_null(file);
	assert_true(fputs(text, file) >= 0);
	assert_int_equal(fclose(file), 0);
	assert_int_equal(chmod(name, mode), 0);
}

static void assert_holds(const char *name, const char *text)
{
	char got[64] = "";
	FILE *file = fopen(name, "r");

	assert_non_null(file);
	assert_int_equal(fread(got, 1, sizeof got - 1, file), strlen(text));
	fclose(file);
	assert_string_equal(got, text);
}

static mode_t mode_of(const char *name)
{
	struct stat about;

	assert_int_equal(lstat(name, &about), 0);
	return about.st_mode;
}

/* -- the tests --------------------------------------------------------------------- */

static void replaces_a_file_and_keeps_its_mode(void **state)
{
	struct rb_output output;

	(void)state;
	put("old.csv", "old", 0640);
	assert_true(rb_output_open(&output, "old.csv", RB_REPLACE));
	assert_true(rb_output_write(&output, "new", 3));
	assert_holds("old.csv", "old");
	assert_true(rb_output_close(&output));
	assert_holds("old.csv", "new");
	assert_int_equal(mode_of("old.csv") & 07777, 0640);
	assert_int_equal(count_files(), 1);
}

static void makes_a_file_as_any_program_would(void **state)
{
	struct rb_output output;

	(void)state;
	assert_true(rb_output_open(&output, "new.csv", RB_REPLACE));
	assert_true(rb_output_write(&output, "new", 3));
	assert_true(rb_output_close(&output));
	assert_int_equal(mode_of("new.csv") & 07777, 0644);
	assert_int_equal(count_files(), 1);
}

static void follows_symbolic_links(void **state)
{
	struct rb_output output;

	(void)state;
	put("file.csv", "old", 0644);
	assert_int_equal(symlink("file.csv", "near"), 0);
	assert_int_equal(symlink("near", "far"), 0);
	assert_true(rb_output_open(&output, "far", RB_REPLACE));
	assert_true(rb_output_write(&output, "new", 3));
	assert_true(rb_output_close(&output));
	assert_true(S_ISLNK(mode_of("far")) && S_ISLNK(mode_of("near")));
	assert_holds("file.csv", "new");
	assert_int_equal(symlink("ring", "ring"), 0);
	assert_false(rb_output_open(&output, "ring", RB_REPLACE));
	assert_int_equal(output.error, ELOOP);
}

static void leaves_nothing_of_what_is_given_up(void **state)
{
	struct rb_output output;

	(void)state;
	put("old.csv", "old", 0644);
	assert_true(rb_output_open(&output, "old.csv", RB_REPLACE));
	assert_true(rb_output_write(&output, "half", 4));
	rb_output_abandon(&output);
	assert_holds("old.csv", "old");
	assert_true(rb_output_open(&output, "new.csv", RB_NEVER_OVER));
	rb_output_abandon(&output);
	assert_int_equal(count_files(), 1);
}

static void never_writes_over(void **state)
{
	struct rb_output output;

	(void)state;
	put("old.csv", "old", 0644);
	assert_false(rb_output_open(&output, "old.csv", RB_NEVER_OVER));
	assert_int_equal(output.error, EEXIST);
	assert_holds("old.csv", "old");
}

static void says_why_it_cannot(void **state)
{
	struct rb_output output;

	(void)state;
	assert_false(rb_output_open(&output, "nowhere/new.csv", RB_REPLACE));
	assert_int_equal(output.error, ENOENT);
	assert_false(rb_output_open(&output, ".", RB_REPLACE));
	assert_int_equal(output.error, EISDIR);
	assert_int_equal(count_files(), 0);
}

static void notices_a_full_disk(void **state)
{
	struct rb_output output;

	(void)state;
	if (access("/dev/full", W_OK))
		skip();
	assert_true(rb_output_open(&output, "/dev/full", RB_REPLACE));
	assert_false(rb_output_write(&output, "new", 3));
	assert_false(rb_output_close(&output));
	assert_int_equal(output.error, ENOSPC);
}

static void takes_a_closed_pipe_for_the_end(void **state)
{
	struct rb_output output;
	int ends[2];

	(void)state;
	signal(SIGPIPE, SIG_IGN);
	assert_int_equal(pipe(ends), 0);
	close(ends[0]);
	output = rb_output_stream(ends[1]);
	assert_false(rb_output_write(&output, "new", 3));
	assert_true(output.reader_left);
	assert_true(rb_output_close(&output));
}

static void knows_its_input_by_any_name(void **state)
{
	struct stat about;

	(void)state;
	put("book.csv", "book", 0644);
	put("other.csv", "book", 0644);
	assert_int_equal(link("book.csv", "hard"), 0);
	assert_int_equal(symlink("book.csv", "soft"), 0);
	assert_int_equal(stat("book.csv", &about), 0);
	assert_true(rb_output_is_input("book.csv", &about));
	assert_true(rb_output_is_input("./hard", &about));
	assert_true(rb_output_is_input("soft", &about));
	assert_false(rb_output_is_input("other.csv", &about));
	assert_false(rb_output_is_input("nowhere", &about));
}

/* Be ended by a signal in the middle of a file; what the process ended with. */
static int ended_by(int number, void (*disposition)(int))
{
	pid_t child = fork();
	int status;

	if (!child) {
		struct rb_output output;

		signal(number, disposition);
		if (!rb_output_open(&output, "old.csv", RB_REPLACE) ||
		    !rb_output_write(&output, "new", 3))
			_exit(9);
		raise(number);
		_exit(rb_output_close(&output) ? 0 : 9);
	}
	assert_true(child > 0);
	assert_int_equal(waitpid(child, &status, 0), child);
	return status;
}

static void leaves_nothing_when_a_signal_ends_it(void **state)
{
	static const int ending[] = { SIGINT, SIGTERM, SIGHUP };

	(void)state;
	put("old.csv", "old", 0644);
	for (size_t i = 0; i < sizeof ending / sizeof *ending; i++) {
		int status = ended_by(ending[i], SIG_DFL);

		assert_true(WIFSIGNALED(status));
		assert_int_equal(WTERMSIG(status), ending[i]);
		assert_holds("old.csv", "old");
		assert_int_equal(count_files(), 1);
	}
	assert_int_equal(ended_by(SIGHUP, SIG_IGN), 0);
	assert_holds("old.csv", "new");
	assert_int_equal(count_files(), 1);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, enter, leave)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(replaces_a_file_and_keeps_its_mode),
		TEST(makes_a_file_as_any_program_would),
		TEST(follows_symbolic_links),
		TEST(leaves_nothing_of_what_is_given_up),
		TEST(never_writes_over),
		TEST(says_why_it_cannot),
		TEST(notices_a_full_disk),
		TEST(takes_a_closed_pipe_for_the_end),
		TEST(knows_its_input_by_any_name),
		TEST(leaves_nothing_when_a_signal_ends_it),
	};

	return cmocka_run_group_tests_name("output", tests, NULL, NULL);
}
