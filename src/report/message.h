/* SPDX-License-Identifier: MIT */
/*
 * message.h - the words for a finding.
 *
 * One table gives each code its words: what is wrong, and what to do about it.  It is
 * made of words.def and its companions, in which holes stand for the arguments of a
 * finding; from it come the messages on the terminal, those in JSON, and
 * docs/messages.md.  What a message holds of the user's is made visible and shortened
 * here, so that its text is harmless wherever it goes.
 */
#ifndef RB_REPORT_MESSAGE_H
#define RB_REPORT_MESSAGE_H

#include "notes/rows.h"
#include "rodbook/finding.h"

struct rb_words {
	const char *arguments; /* a letter for each: T text, L length, R reading, C count,
				* N line, S slope; small: may be nothing */
	const char *text;      /* lower case, no full stop at the end */
	const char *hint;      /* what to do; "" where there is nothing */
};

/* The words of a code; never NULL. */
const struct rb_words *rb_words_of(enum rb_code code);

/* What to do in place of `hint` where a length was typed and no file was read; NULL: the
 * same. */
const char *rb_words_typed(enum rb_code code);

/* "note", "warning", "failed", "error". */
const char *rb_severity_name(enum rb_severity severity);

#define RB_MESSAGE_TEXT 2048
#define RB_CELL_NAME    24

/* A finding, worded. */
struct rb_message {
	enum rb_severity severity;
	const char *code;        /* its stable name */
	uint32_t line;           /* from 1; 0: the file as a whole */
	uint32_t column;         /* from 1, in characters; 0: the whole line */
	char cell[RB_CELL_NAME]; /* "B9", as a sheet names it; "" where there is none */
	char text[RB_MESSAGE_TEXT]; /* what is wrong */
	char hint[RB_MESSAGE_TEXT]; /* what to do, or "" */
	bool quoted;                /* span holds the user's own line */
	struct rb_span span;
};

/*
 * Word a finding of a list.
 *
 *   cursor  as for rb_source_span(): zeroed before the first, and handed on
 */
void rb_message_make(struct rb_message *out, const struct rb_findings *findings,
		     const struct rb_finding *finding, struct rb_cursor *cursor);

#endif
