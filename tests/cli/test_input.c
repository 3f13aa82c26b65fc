/* SPDX-License-Identifier: MIT */
/* Files and pipes are read whole, whatever their size. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "cli/input.h"

static char byte_at(size_t i)
{
	return (char)('a' + i % 23);
}

static bool is_whole(const struct rb_input *input, size_t length)
{
	if (input->length != length)
		return false;
	for (size_t i = 0; i < length; i++)
		if (input->bytes[i] != byte_at(i))
			return false;
	return true;
}

static void write_bytes(FILE *file, size_t length)
{
	for (size_t i = 0; i < length; i++)
		fputc(byte_at(i), file);
}

static const size_t lengths[] = { 0, 1, 65535, 65536, 65537, 131072, 1000003 };

static void reads_files(void **state)
{
	char name[] = "/tmp/rodbook-test-XXXXXX";
	int fd = mkstemp(name);
	struct rb_input input;

	(void)state;
	assert_true(fd >= 0);
	close(fd);
	for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) {
		FILE *file = fopen(name, "w");

		assert_non_null(file);
		write_bytes(file, lengths[i]);
		fclose(file);
		assert_true(rb_input_read(&input, name));
		assert_true(is_whole(&input, lengths[i]));
		rb_input_free(&input);
	}
	unlink(name);
}

/* Standard input is a pipe of so many bytes while it is read. */
static bool read_pipe(struct rb_input *input, size_t length)
{
	int ends[2], kept = dup(STDIN_FILENO), status;
	bool done;
	pid_t child;

	assert_int_equal(pipe(ends), 0);
	child = fork();
	if (!child) {
		FILE *file = fdopen(ends[1], "w");

		close(ends[0]);
		write_bytes(file, length);
		_exit(fclose(file) != 0);
	}
	close(ends[1]);
	dup2(ends[0], STDIN_FILENO);
	close(ends[0]);
	done = rb_input_read(input, "-");
	dup2(kept, STDIN_FILENO);
	close(kept);
	waitpid(child, &status, 0);
	return done && status == 0;
}

static void reads_pipes(void **state)
{
	struct rb_input input;

	(void)state;
	for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) {
		assert_true(read_pipe(&input, lengths[i]));
		assert_true(is_whole(&input, lengths[i]));
		rb_input_free(&input);
	}
}

static void says_why_it_cannot(void **state)
{
	struct rb_input input;

	(void)state;
	assert_false(rb_input_read(&input, "/tmp"));
	assert_int_equal(errno, EISDIR);
	assert_false(rb_input_read(&input, "/tmp/rodbook-there-is-no-such-file"));
	assert_int_equal(errno, ENOENT);
	assert_null(input.bytes);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(reads_files),
		cmocka_unit_test(reads_pipes),
		cmocka_unit_test(says_why_it_cannot),
	};

	return cmocka_run_group_tests_name("input", tests, NULL, NULL);
}
