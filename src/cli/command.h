/* SPDX-License-Identifier: MIT */
/*
 * command.h - what a command of the program is.
 *
 * A command is a row of the table in main.c: its name, what it takes and one function.
 * Its options are parsed before it runs, so a command sees only options that it takes,
 * each with a value that is accepted, and as many files as it asked for.
 */
#ifndef RB_CLI_COMMAND_H
#define RB_CLI_COMMAND_H

#include <stdint.h>

/* How the program ends: a script can tell bad levels from a bad book from a full disk. */
enum rb_exit {
	RB_EXIT_HOLDS = 0, /* done, and every check holds */
	RB_EXIT_FAILS = 1, /* done, but a check fails */
	RB_EXIT_INPUT =
		2, /* the input or the command line is wrong; no result was written */
	RB_EXIT_SYSTEM = 3 /* the system failed; nothing half-written is left */
};

struct rb_command_line;

struct rb_command {
	const char *name;
	const char *operands; /* as shown behind the name: "BOOK" */
	int least, most;      /* how many of them; most RB_ANY_NUMBER: no limit */
	const char *formats;  /* what -f takes here, "text|csv|json"; NULL without -f */
	uint64_t takes;       /* RB_TAKES() of its options */
	const char *summary;
	const char *example; /* one or more lines, each a command that can be typed */
	enum rb_exit (*run)(const struct rb_command_line *line);
};

#define RB_ANY_NUMBER (-1)

/* src/cli/new.c, reduce.c ...: one file a command. */
enum rb_exit rb_run_new(const struct rb_command_line *line);
enum rb_exit rb_run_reduce(const struct rb_command_line *line);
enum rb_exit rb_run_fall(const struct rb_command_line *line);
enum rb_exit rb_run_drain(const struct rb_command_line *line);
enum rb_exit rb_run_dig(const struct rb_command_line *line);
enum rb_exit rb_run_record(const struct rb_command_line *line);
enum rb_exit rb_run_check(const struct rb_command_line *line);
enum rb_exit rb_run_peg(const struct rb_command_line *line);
enum rb_exit rb_run_convert(const struct rb_command_line *line);
enum rb_exit rb_run_practice(const struct rb_command_line *line);

#endif
