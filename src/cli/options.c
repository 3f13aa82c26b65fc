/* SPDX-License-Identifier: MIT */
/* The loop that sorts the words of a command line. */
#include "cli/options.h"

#include <string.h>

#include "cli/complaint.h"
#include "measure/reading.h"

struct parser {
	struct rb_command_line *line;
	struct rb_sink *complaints;
	int left;    /* words not yet looked at */
	char **word; /* the first of them */
};

const char *rb_choices(const struct rb_command *command, enum rb_option option)
{
	if (option == RB_OPTION_FORMAT && command->formats)
		return command->formats;
	return rb_option_row(option)->value;
}

/* The place of a word among words set apart by "|"; -1: it is none of them. */
static int place_of(const char *word, const char *words)
{
	size_t length = strlen(word);

	for (int place = 0;; place++) {
		size_t next = strcspn(words, "|");

		if (next == length && !memcmp(words, word, length))
			return place;
		if (!words[next])
			return -1;
		words += next + 1;
	}
}

enum rb_unit rb_given_unit(const struct rb_command_line *line, enum rb_unit otherwise)
{
	const char *text = rb_given_text(line, RB_OPTION_UNIT);

	if (text)
		rb_unit_parse(text, strlen(text), &otherwise);
	return otherwise;
}

/* A whole number in decimal digits, within bounds; -1: it is none. */
static int64_t number_of(const char *text, int64_t low, int64_t high)
{
	int64_t number = 0;

	if (!*text)
		return -1;
	for (; *text; text++) {
		if (*text < '0' || *text > '9' || number > high)
			return -1;
		number = number * 10 + (*text - '0');
	}
	return number < low || number > high ? -1 : number;
}

static bool misused(const struct parser *p, enum rb_option option, const char *words)
{
	rb_complain_misuse(p->line->command, option, words, p->complaints);
	return false;
}

/* What the value of an option counts as: a choice's place, a number; -1: refused. */
static int64_t worth(const struct rb_command *command, enum rb_option option,
		     const char *value)
{
	const struct rb_option_row *row = rb_option_row(option);

	if (row->kind == RB_NUMBER)
		return number_of(value, row->low, row->high);
	if (row->kind == RB_CHOICE)
		return place_of(value, rb_choices(command, option)) < 0
			       ? -1
			       : place_of(value, row->value);
	return *value ? 0 : -1;
}

static bool keep(const struct parser *p, enum rb_option option, const char *value)
{
	const struct rb_command *command = p->line->command;
	struct rb_given *given = &p->line->option[option];
	int most = rb_option_row(option)->most;

	if (given->times == most)
		return misused(p, option,
			       most == 1 ? "is given twice" : "is given too often");
	given->number = worth(command, option, value);
	if (given->number < 0) {
		rb_complain_value(command, option, value, p->complaints);
		return false;
	}
	given->text[given->times++] = value;
	return true;
}

/* An option with what is attached to it; otherwise its value is the next word. */
static bool take(struct parser *p, enum rb_option option, const char *attached)
{
	bool flag = rb_option_row(option)->kind == RB_FLAG;

	if (flag && attached)
		return misused(p, option, "takes no value");
	if (flag) {
		p->line->option[option].times = 1;
		return true;
	}
	if (attached)
		return keep(p, option, attached);
	if (!p->left)
		return misused(p, option, "needs a value");
	if (p->word[0][0] == '-' && p->word[0][1])
		return misused(p, option,
			       "needs a value (one that begins with - goes behind a =)");
	p->left--;
	return keep(p, option, *p->word++);
}

static bool unknown(const struct parser *p, const char *word)
{
	rb_complain_unknown(p->line->command, word, p->complaints);
	return false;
}

static bool long_option(struct parser *p, const char *word)
{
	const char *name = word + 2;
	size_t length = strcspn(name, "=");

	for (enum rb_option i = 0; i < RB_OPTIONS; i++) {
		const char *known = rb_option_row(i)->name;

		if (rb_takes(p->line->command, i) && strlen(known) == length &&
		    !memcmp(known, name, length))
			return take(p, i, name[length] ? name + length + 1 : NULL);
	}
	return unknown(p, word);
}

/* -f json, -fjson or -f=json. */
static bool short_option(struct parser *p, const char *word)
{
	const char *attached = word[2] ? word + 2 + (word[2] == '=') : NULL;

	for (enum rb_option i = 0; i < RB_OPTIONS; i++)
		if (rb_takes(p->line->command, i) && rb_option_row(i)->letter == word[1])
			return take(p, i, attached);
	return unknown(p, word);
}

static bool enough_files(const struct parser *p)
{
	const struct rb_command *command = p->line->command;
	int files = p->line->files;

	if (files >= command->least &&
	    (command->most == RB_ANY_NUMBER || files <= command->most))
		return true;
	rb_complain_files(p->line, p->complaints);
	return false;
}

bool rb_options_parse(struct rb_command_line *line, const struct rb_command *command,
		      int argc, char **argv, struct rb_sink *complaints)
{
	struct parser p = { line, complaints, argc, argv };
	bool options_end = false;

	*line = (struct rb_command_line){ .command = command, .file = argv };
	while (p.left) {
		char *word = *p.word++;
		bool is_option = !options_end && word[0] == '-' && word[1];

		p.left--;
		if (!is_option)
			line->file[line->files++] = word;
		else if (!strcmp(word, "--"))
			options_end = true;
		else if (!(word[1] == '-' ? long_option : short_option)(&p, word))
			return false;
		if (rb_given(line, RB_OPTION_HELP))
			return true;
	}
	return enough_files(&p);
}
