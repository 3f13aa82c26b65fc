/* SPDX-License-Identifier: MIT */
/*
 * help.h - what the program says of itself.
 *
 * All of it is made from the tables of commands and options, so that nothing can be
 * missing in the help that the program takes, or the other way round.
 */
#ifndef RB_CLI_HELP_H
#define RB_CLI_HELP_H

#include "cli/command.h"
#include "report/sink.h"

/* What to do first, in five lines. */
void rb_help_first(struct rb_sink *out);

/* All commands, a line each; the list ends with a command without a name. */
void rb_help_all(struct rb_sink *out, const struct rb_command *commands);

/* One command: what it does, an example, and its options. */
void rb_help_command(struct rb_sink *out, const struct rb_command *command);

#endif
