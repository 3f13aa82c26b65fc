/* SPDX-License-Identifier: MIT */
/*
 * options.h - the words behind a command, sorted into options and files.
 *
 * Every option of the program stands once in the table of options.c, and a command names
 * those that it takes; an option means the same wherever it is taken.  There are no
 * abbreviations: a word is an option's name, or it is refused with the nearest name.
 */
#ifndef RB_CLI_OPTIONS_H
#define RB_CLI_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "cli/command.h"
#include "report/sink.h"
#include "rodbook/length.h"

enum rb_option {
	RB_OPTION_FORMAT,
	RB_OPTION_OUTPUT,
	RB_OPTION_UNIT,
	RB_OPTION_DECIMALS,
	RB_OPTION_FRACTION,
	RB_OPTION_STEPS,
	RB_OPTION_STRICT,
	RB_OPTION_QUIET,
	RB_OPTION_COLOR,
	RB_OPTION_MESSAGES,
	RB_OPTION_HELP,
	/* judging and adjusting */
	RB_OPTION_TOLERANCE,
	RB_OPTION_ADJUST,
	RB_OPTION_ADJUST_ANYWAY,
	/* fall */
	RB_OPTION_FROM,
	RB_OPTION_TO,
	RB_OPTION_LENGTH,
	RB_OPTION_MINIMUM,
	RB_OPTION_RULES,
	RB_OPTION_SIZE,
	RB_OPTION_OUTLET,
	/* drain and dig */
	RB_OPTION_GROUND,
	RB_OPTION_LAID,
	RB_OPTION_HI,
	RB_OPTION_BENCHMARK,
	RB_OPTION_BACKSIGHT,
	RB_OPTION_INTERVAL,
	RB_OPTION_INVERT,
	RB_OPTION_SLOPE,
	RB_OPTION_USE_ANYWAY,
	RB_OPTION_AT,
	RB_OPTION_ROD,
	RB_OPTION_ON,
	RB_OPTION_WITHIN,
	RB_OPTION_HUB,
	RB_OPTION_CUT,
	/* record, check, peg */
	RB_OPTION_APPEND,
	RB_OPTION_MARKS,
	RB_OPTION_BOOK,
	/* practice */
	RB_OPTION_KIND,
	RB_OPTION_SEED,
	RB_OPTION_COUNT,
	RB_OPTION_ANSWERS,
	RB_OPTION_PLANT,
	RB_OPTION_SETUPS,
	RB_OPTION_INVERTED,
	RB_OPTION_TABLE,
	RB_OPTIONS
};

/* The bit of an option in struct rb_command's `takes`. */
#define RB_TAKES(name) (UINT64_C(1) << RB_OPTION_##name)

/* What every command takes: how messages are told. */
#define RB_TAKES_ALWAYS                                                                  \
	(RB_TAKES(STRICT) | RB_TAKES(QUIET) | RB_TAKES(COLOR) | RB_TAKES(MESSAGES) |     \
	 RB_TAKES(HELP))

/* And every one that writes a result from a file. */
#define RB_TAKES_USUAL                                                                   \
	(RB_TAKES_ALWAYS | RB_TAKES(FORMAT) | RB_TAKES(OUTPUT) | RB_TAKES(UNIT) |        \
	 RB_TAKES(DECIMALS) | RB_TAKES(FRACTION))

/* Choices, in the order of their words in the table. */
enum rb_format {
	RB_FORMAT_TEXT,
	RB_FORMAT_CSV,
	RB_FORMAT_JSON,
	RB_FORMAT_HTML,
	RB_FORMAT_SVG
};
enum rb_color { RB_COLOR_AUTO, RB_COLOR_ALWAYS, RB_COLOR_NEVER };
enum rb_messages { RB_MESSAGES_TEXT, RB_MESSAGES_JSON };

/* What an option takes behind its name. */
enum rb_option_kind { RB_FLAG, RB_CHOICE, RB_NUMBER, RB_WORDS };

/* An option: a row of the table in option_table.c. */
struct rb_option_row {
	const char *name; /* without the dashes */
	char letter;      /* "-f"; 0: none */
	enum rb_option_kind kind;
	int most;            /* how often it may be given */
	int64_t low, high;   /* of a number */
	const char *value;   /* "FILE"; of a choice its words, with "|" between them */
	const char *accepts; /* RB_WORDS: what is accepted, by example */
	const char *words;   /* what it does, for the help: one line or two */
};

/* The row of an option. */
const struct rb_option_row *rb_option_row(enum rb_option option);

/* Does the command take it? */
static inline bool rb_takes(const struct rb_command *command, enum rb_option option)
{
	return command->takes >> option & 1;
}

/* The words of a choice that the command accepts: none writes every format. */
const char *rb_choices(const struct rb_command *command, enum rb_option option);

#define RB_GIVEN_MOST 2 /* --benchmark and --backsight come in up to two pairs */

/* An option as it was given. */
struct rb_given {
	int times;                       /* 0: not at all */
	const char *text[RB_GIVEN_MOST]; /* its values, as typed; NULL for one without a
					    value */
	int64_t number; /* of a choice: its place among the choices; of a number: itself
			 */
};

struct rb_command_line {
	const struct rb_command *command;
	struct rb_given option[RB_OPTIONS];
	char **file; /* the words that are no options, in their order */
	int files;
};

/*
 * Sort the words behind a command; argv is reordered so that the files stand together.
 *
 *   argv        without the program's and the command's names
 *   complaints  where the first fault goes, in words
 *
 * Returns false at a fault.  -h ends the reading: what stands behind it is not looked at.
 */
bool rb_options_parse(struct rb_command_line *line, const struct rb_command *command,
		      int argc, char **argv, struct rb_sink *complaints);

/* Was it given? */
static inline bool rb_given(const struct rb_command_line *line, enum rb_option option)
{
	return line->option[option].times > 0;
}

/* Its first value as typed; NULL where it was not given. */
static inline const char *rb_given_text(const struct rb_command_line *line,
					enum rb_option option)
{
	return line->option[option].text[0];
}

/* The choice or the number given; `otherwise` where it was not. */
static inline int rb_given_number(const struct rb_command_line *line,
				  enum rb_option option, int otherwise)
{
	return rb_given(line, option) ? (int)line->option[option].number : otherwise;
}

/* The unit asked for with -u; `otherwise` where none was. */
enum rb_unit rb_given_unit(const struct rb_command_line *line, enum rb_unit otherwise);

#endif
