/* SPDX-License-Identifier: MIT */
/*
 * complaint.h - a wrong command line, in words.
 *
 * Each complaint says what is wrong, what would be accepted, and where the rest can be
 * read; a nearly right word gets a suggestion.  Words of the user's are shown with
 * control bytes made visible, because they go to a terminal.
 */
#ifndef RB_CLI_COMPLAINT_H
#define RB_CLI_COMPLAINT_H

#include "cli/options.h"

/* 'word', as the user typed it. */
void rb_complain_word(const char *word, struct rb_sink *out);

/* Each begins with the command and ends with where the rest can be read. */
void rb_complaint_begin(const struct rb_command *command, struct rb_sink *out);
void rb_complaint_end(const struct rb_command *command, struct rb_sink *out);

/* What stands between, where an option may not stand so, or its value is not accepted. */
void rb_complaint_of_use(enum rb_option option, const char *words, struct rb_sink *out);
void rb_complaint_of_value(const struct rb_command *command, enum rb_option option,
			   const char *value, struct rb_sink *out);

/* There is no such command; the list ends with one without a name. */
void rb_complain_command(const struct rb_command *commands, const char *name,
			 struct rb_sink *out);

/* There is no such option, or the command does not take it. */
void rb_complain_unknown(const struct rb_command *command, const char *word,
			 struct rb_sink *out);

/* The option may not stand so: "takes no value". */
void rb_complain_misuse(const struct rb_command *command, enum rb_option option,
			const char *words, struct rb_sink *out);

/* The value is not accepted: says which are. */
void rb_complain_value(const struct rb_command *command, enum rb_option option,
		       const char *value, struct rb_sink *out);

/* Files are missing, or there are too many. */
void rb_complain_files(const struct rb_command_line *line, struct rb_sink *out);

#endif
