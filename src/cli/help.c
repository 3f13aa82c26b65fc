/* SPDX-License-Identifier: MIT */
/* The help, from the tables of commands and options. */
#include "cli/help.h"

#include <string.h>

#include "cli/options.h"

#define INDENT 2

static const char first[] =
	"rodbook works out level notes: elevations, closure, fall and grade rods.\n"
	"  1. rodbook new book larch.csv   writes a form; fill it in with any spreadsheet\n"
	"  2. rodbook reduce larch.csv     works it out and says whether it closes\n"
	"  rodbook -h          lists all commands\n"
	"  rodbook reduce -h   shows what one of them takes, with an example\n";

static const char statuses[] =
	"\nIt ends with 0: every check holds; 1: a check fails; 2: the input or the command\n"
	"line is wrong, and nothing was written; 3: the system failed.\n";

void rb_help_first(struct rb_sink *out)
{
	rb_sink_text(out, first);
}

/* Words, up to a NULL, filled up with blanks to a column. */
static void put_column(struct rb_sink *out, const char *const *words, size_t width)
{
	size_t used = 0;

	for (; *words; words++) {
		rb_sink_text(out, *words);
		used += strlen(*words);
	}
	rb_sink_pad(out, ' ', used < width ? width - used : 1);
}

void rb_help_all(struct rb_sink *out, const struct rb_command *commands)
{
	rb_sink_text(out,
		     "usage: rodbook COMMAND [OPTIONS] FILE   (- is standard input)\n\n");
	for (const struct rb_command *c = commands; c->name; c++) {
		rb_sink_pad(out, ' ', INDENT);
		put_column(out, (const char *[]){ c->name, " ", c->operands, NULL }, 34);
		rb_sink_text(out, c->summary);
		rb_sink_char(out, '\n');
	}
	rb_sink_text(out,
		     "\n  rodbook COMMAND -h  what a command takes, with an example\n"
		     "  rodbook --version   which rodbook this is\n");
	rb_sink_text(out, statuses);
}

#define WORDS 38 /* the column at which the words of an option stand */

/* Words of one line or two. */
static void put_words(struct rb_sink *out, const char *words)
{
	for (; *words; words++) {
		rb_sink_char(out, *words);
		if (*words == '\n')
			rb_sink_pad(out, ' ', WORDS);
	}
	rb_sink_char(out, '\n');
}

static void put_option(struct rb_sink *out, const struct rb_command *command,
		       enum rb_option option)
{
	const struct rb_option_row *row = rb_option_row(option);
	const char letter[] = { '-', row->letter, ',', ' ', '\0' };
	const char *value = row->value ? rb_choices(command, option) : NULL;

	rb_sink_pad(out, ' ', INDENT);
	put_column(out,
		   (const char *[]){ row->letter ? letter : "    ", "--", row->name,
				     value ? " " : NULL, value, NULL },
		   WORDS - INDENT);
	put_words(out, row->words);
}

/* The lines of a text, each behind an indent. */
static void put_lines(struct rb_sink *out, const char *text)
{
	while (*text) {
		size_t length = strcspn(text, "\n");

		rb_sink_pad(out, ' ', INDENT);
		rb_sink_bytes(out, text, length);
		rb_sink_char(out, '\n');
		text += length + (text[length] == '\n');
	}
}

void rb_help_command(struct rb_sink *out, const struct rb_command *command)
{
	rb_sink_text(out, "usage: rodbook ");
	rb_sink_text(out, command->name);
	rb_sink_text(out, " [OPTIONS] ");
	rb_sink_text(out, command->operands);
	rb_sink_text(out, "\n\n");
	put_lines(out, command->summary);
	rb_sink_text(out, "\nexample\n");
	put_lines(out, command->example);
	rb_sink_text(out, "\noptions\n");
	for (enum rb_option i = 0; i < RB_OPTIONS; i++)
		if (rb_takes(command, i))
			put_option(out, command, i);
}
