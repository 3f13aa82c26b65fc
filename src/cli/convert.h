/* SPDX-License-Identifier: MIT */
/*
 * convert.h - lengths in every notation: those of the command line, and those that are
 * typed line by line.
 *
 * Lengths on the command line stand together: one that is refused, and nothing is
 * written. Lines are answered one by one, each as soon as it is read; a refused line gets
 * its message, and the rest go on.
 */
#ifndef RB_CLI_CONVERT_H
#define RB_CLI_CONVERT_H

#include "cli/job.h"
#include "report/conversion.h"

/* How the command line asks for a length to be worked out. */
struct rb_conversion_style rb_asked_conversion(const struct rb_command_line *line);

/* Work out a length; where it is refused, or something about it is worth saying, add the
 * finding.  `place` is where it stands. */
bool rb_convert(struct rb_conversion *out, const char *input,
		const struct rb_conversion_style *style, struct rb_findings *findings,
		struct rb_place place);

/* Answer standard input line by line. */
void rb_convert_lines(struct rb_job *job);

#endif
