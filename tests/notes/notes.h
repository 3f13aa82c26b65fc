/* SPDX-License-Identifier: MIT */
/* notes.h - a book from text, and its findings as text, as far as a test needs them. */
#ifndef TESTS_NOTES_NOTES_H
#define TESTS_NOTES_NOTES_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#include "rodbook/book.h"

#define ROOM 8192 /* bytes of a text that a test compares */

struct notes {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_book *book; /* NULL after an error */
};

static inline struct notes notes_of_bytes(const char *bytes, size_t length)
{
	struct notes notes = { .arena = rb_arena_new(NULL) };

	rb_findings_init(&notes.findings, notes.arena, "book.csv");
	notes.book = rb_book_read(notes.arena, &notes.findings, bytes, length);
	return notes;
}

static inline struct notes notes_of(const char *text)
{
	return notes_of_bytes(text, strlen(text));
}

static inline void notes_end(struct notes *notes)
{
	rb_arena_free(notes->arena);
}

/* Add to a text of ROOM bytes, which stays a string whatever does not fit. */
static inline void add_text(char text[static ROOM], const char *format, ...)
{
	size_t used = strlen(text);
	va_list arguments;

	va_start(arguments, format);
	vsnprintf(text + used, ROOM - used, format, arguments);
	va_end(arguments);
}

/* Every finding as "code@line:cell", those of a whole row or file without the rest. */
static inline const char *findings_as_text(char text[static ROOM],
					   const struct rb_findings *findings)
{
	text[0] = '\0';
	for (size_t i = 0; i < findings->count; i++) {
		const struct rb_finding *f = findings->item[i];

		add_text(text, "%s%s", i ? " " : "", rb_code_name(f->code));
		if (f->place.line)
			add_text(text, "@%lu", (unsigned long)f->place.line);
		if (f->place.cell >= 0)
			add_text(text, ":%ld", (long)f->place.cell);
	}
	return text;
}

/* The first finding of a code, or NULL. */
static inline const struct rb_finding *finding_of(const struct rb_findings *findings,
						  enum rb_code code)
{
	for (size_t i = 0; i < findings->count; i++)
		if (findings->item[i]->code == code)
			return findings->item[i];
	return NULL;
}

/* Say which of two texts was got, and count it, where they differ. */
static inline int differs(const char *what, const char *got, const char *wanted)
{
	if (!strcmp(got, wanted))
		return 0;
	print_error("%s:\n  got    \"%s\"\n  wanted \"%s\"\n", what, got, wanted);
	return 1;
}

/* A length in feet (or the unit given) as "98.24": as many decimals as are asked for. */
static inline const char *in_unit(char text[static RB_LENGTH_TEXT], rb_length length,
				  enum rb_unit unit, int decimals)
{
	rb_length_format(text, length, (struct rb_style){ unit, decimals, 64, false });
	return text;
}

/* The findings of a book, which has no result where one of them is an error. */
static inline const char *codes_of(const char *csv, char text[static ROOM])
{
	struct notes notes = notes_of(csv);

	findings_as_text(text, &notes.findings);
	assert_int_equal(notes.book != NULL, rb_findings_allow_result(&notes.findings));
	notes_end(&notes);
	return text;
}

#endif
