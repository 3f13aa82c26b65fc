/* SPDX-License-Identifier: MIT */
/*
 * style.h - how the command line asks for lengths to be shown.
 *
 * What -u, --decimals and --fraction do not say stays as the file suggests; in another
 * unit than the file's, lengths are shown at least as finely as they were written.
 */
#ifndef RB_CLI_STYLE_H
#define RB_CLI_STYLE_H

#include "cli/options.h"
#include "report/reduction.h"
#include "report/text.h"
#include "rodbook/length.h"

/* The style asked for; `own` is that of the file. */
struct rb_style rb_asked_style(const struct rb_command_line *line, struct rb_style own);

/* How the reduction of a book is to be shown; what is shown is the caller's to add. */
struct rb_reduction rb_asked_reduction(const struct rb_command_line *line,
				       const struct rb_book *book);

/* The style of a page of text: bold is for a terminal alone. */
struct rb_text_style rb_result_style(const struct rb_command_line *line);

#endif
