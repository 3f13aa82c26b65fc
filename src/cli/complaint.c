/* SPDX-License-Identifier: MIT */
/* A wrong command line, in words. */
#include "cli/complaint.h"

#include <string.h>

#include "cli/nearest.h"
#include "report/width.h"

/* The words of one line, one behind the other; ends with NULL. */
static void say(struct rb_sink *out, const char *const *words)
{
	while (*words)
		rb_sink_text(out, *words++);
}

#define SAY(out, ...) say(out, (const char *const[]){ __VA_ARGS__, NULL })

void rb_complain_word(const char *word, struct rb_sink *out)
{
	rb_sink_char(out, '\'');
	rb_sink_shown(out, word, strlen(word));
	rb_sink_char(out, '\'');
}

void rb_complaint_begin(const struct rb_command *command, struct rb_sink *out)
{
	SAY(out, "rodbook ", command->name, ": ");
}

void rb_complaint_end(const struct rb_command *command, struct rb_sink *out)
{
	SAY(out, "\n  rodbook ", command->name, " -h says what it takes\n");
}

static void suggest(const struct rb_nearest *nearest, const char *dashes,
		    struct rb_sink *out)
{
	if (nearest->best)
		SAY(out, "; did you mean '", dashes, nearest->best, "'?");
}

void rb_complain_command(const struct rb_command *commands, const char *name,
			 struct rb_sink *out)
{
	struct rb_nearest nearest = rb_nearest_to(name);

	for (const struct rb_command *c = commands; c->name; c++)
		rb_nearest_try(&nearest, c->name);
	rb_nearest_try(&nearest, "--version");
	rb_nearest_try(&nearest, "--help");
	rb_sink_text(out, "rodbook: there is no command ");
	rb_complain_word(name, out);
	if (*name == '-' && !nearest.best)
		rb_sink_text(out, "; options stand behind the command");
	suggest(&nearest, "", out);
	rb_sink_text(out, "\n  rodbook -h lists all commands\n");
}

/* The option of the command that the word is nearest to. */
static struct rb_nearest nearest_option(const struct rb_command *command,
					const char *name)
{
	struct rb_nearest nearest = rb_nearest_to(name);

	for (enum rb_option i = 0; strlen(name) > 1 && i < RB_OPTIONS; i++)
		if (rb_takes(command, i))
			rb_nearest_try(&nearest, rb_option_row(i)->name);
	return nearest;
}

static bool of_another_command(const struct rb_command *command, const char *name)
{
	for (enum rb_option i = 0; i < RB_OPTIONS; i++)
		if (!rb_takes(command, i) && !strcmp(rb_option_row(i)->name, name))
			return true;
	return false;
}

/* -5'-3": a number or a length, and no option. */
static bool is_negative(const char *word)
{
	return word[0] == '-' && (strchr("0123456789.(", word[1]) != NULL) && word[1];
}

#define NAME_ROOM 64 /* a longer word is near no option */

void rb_complain_unknown(const struct rb_command *command, const char *word,
			 struct rb_sink *out)
{
	size_t dashes = strspn(word, "-"), length = strcspn(word, "=") - dashes;
	struct rb_nearest nearest;
	char name[NAME_ROOM] = "";

	if (length < sizeof name)
		memcpy(name, word + dashes, length);
	nearest = nearest_option(command, name);
	rb_complaint_begin(command, out);
	rb_sink_text(out, "there is no option ");
	rb_complain_word(word, out);
	if (of_another_command(command, name))
		rb_sink_text(out, " here; it belongs to other commands");
	else if (is_negative(word))
		rb_sink_text(out, "; what begins with a minus stands behind --");
	else
		suggest(&nearest, "--", out);
	rb_complaint_end(command, out);
}

void rb_complaint_of_use(enum rb_option option, const char *words, struct rb_sink *out)
{
	SAY(out, "--", rb_option_row(option)->name, " ", words);
}

void rb_complain_misuse(const struct rb_command *command, enum rb_option option,
			const char *words, struct rb_sink *out)
{
	rb_complaint_begin(command, out);
	rb_complaint_of_use(option, words, out);
	rb_complaint_end(command, out);
}

static void print_choices(const char *choices, struct rb_sink *out)
{
	rb_sink_text(out, "one of ");
	for (; *choices; choices++)
		if (*choices == '|')
			rb_sink_text(out, ", ");
		else
			rb_sink_char(out, *choices);
}

/* "one of ft, ft-in, in", "a whole number from 0 to 9". */
static void print_accepted(const struct rb_command *command, enum rb_option option,
			   struct rb_sink *out)
{
	const struct rb_option_row *row = rb_option_row(option);

	if (row->kind == RB_CHOICE)
		print_choices(rb_choices(command, option), out);
	if (row->kind == RB_WORDS)
		rb_sink_text(out, row->accepts);
	if (row->kind != RB_NUMBER)
		return;
	rb_sink_text(out, "a whole number from ");
	rb_sink_number(out, row->low);
	rb_sink_text(out, " to ");
	rb_sink_number(out, row->high);
}

#define CHOICES_MOST   8
#define CHOICE_LONGEST 16

static void suggest_choice(const char *choices, const char *value, struct rb_sink *out)
{
	struct rb_nearest nearest = rb_nearest_to(value);
	bool number = strspn(value, "0123456789") == strlen(value);
	char words[CHOICES_MOST][CHOICE_LONGEST] = { "" };

	/* A number was meant as it stands: 10 is no slip for 16. */
	for (int i = 0; i < CHOICES_MOST && *choices && !number; i++) {
		size_t length = strcspn(choices, "|");

		if (length < CHOICE_LONGEST)
			memcpy(words[i], choices, length);
		rb_nearest_try(&nearest, words[i]);
		choices += length + (choices[length] == '|');
	}
	suggest(&nearest, "", out);
}

void rb_complaint_of_value(const struct rb_command *command, enum rb_option option,
			   const char *value, struct rb_sink *out)
{
	const struct rb_option_row *row = rb_option_row(option);

	SAY(out, "--", row->name, " takes ");
	print_accepted(command, option, out);
	rb_sink_text(out, ", not ");
	rb_complain_word(value, out);
	if (row->kind == RB_CHOICE)
		suggest_choice(rb_choices(command, option), value, out);
}

void rb_complain_value(const struct rb_command *command, enum rb_option option,
		       const char *value, struct rb_sink *out)
{
	rb_complaint_begin(command, out);
	rb_complaint_of_value(command, option, value, out);
	rb_complaint_end(command, out);
}

void rb_complain_files(const struct rb_command_line *line, struct rb_sink *out)
{
	const struct rb_command *command = line->command;

	rb_complaint_begin(command, out);
	if (line->files < command->least) {
		SAY(out, "something is missing: rodbook ", command->name, " ",
		    command->operands);
	} else {
		rb_sink_text(out, "nothing is known to do with ");
		rb_complain_word(line->file[command->most], out);
	}
	rb_complaint_end(command, out);
}
