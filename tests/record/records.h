/* SPDX-License-Identifier: MIT */
/*
 * records.h - books taken into a record, from their texts.
 *
 * What a record then holds is told as text too:
 *
 *   books     NAME VERSION [replaces TEXT] [replaced]
 *   findings  FILE LINE CODE
 */
#ifndef TESTS_RECORD_RECORDS_H
#define TESTS_RECORD_RECORDS_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>

#include "../report/capture.h"
#include "record/record.h"
#include "record/record_csv.h"

#define BOOKS 6

struct book_text {
	const char *file, *text;
	const char *digest; /* NULL: the file's name */
};

struct records {
	struct rb_arena *arena;
	struct rb_ledger *ledger; /* NULL: there was no memory */
	struct rb_findings of_record;
	struct rb_findings of_book[BOOKS];
	const struct rb_findings *list[BOOKS];
	size_t books;
	bool whole; /* everything was taken */
	struct rb_several *several;
};

static inline bool records_take(struct records *r, const struct book_text *book)
{
	struct rb_findings *findings = &r->of_book[r->books];
	struct reduced_book b = { .arena = r->arena, .reduction = { .decimals = -1 } };
	struct rb_judging judging;
	bool done = false;

	r->list[r->books++] = findings;
	rb_findings_init(findings, r->arena, book->file);
	const struct rb_book *read =
		rb_book_read(r->arena, findings, book->text, strlen(book->text));

	if (!read)
		return false;
	b.findings = *findings;
	b.reduction.style = rb_book_style(read);
	judging = rb_judging_of(read);
	reduce_with(&b, read, &judging);
	*findings = b.findings;
	if (b.reduction.adjusted && rb_findings_allow_result(findings))
		done = rb_ledger_add(r->ledger, findings, &b.reduction,
				     book->digest ? book->digest : book->file);
	return done;
}

/* A record of an old one (NULL: none) and of books, up to one without a file. */
static inline void records_fill(struct records *r, struct rb_arena *arena,
				const char *old, const struct book_text *book)
{
	*r = (struct records){ .arena = arena, .ledger = rb_ledger_new(arena) };
	if (!r->ledger)
		return;
	rb_findings_init(&r->of_record, arena, "site.csv");
	r->whole = !old || rb_ledger_read(r->ledger, &r->of_record, old, strlen(old));
	for (; r->whole && r->books < BOOKS && book->file; book++)
		r->whole = records_take(r, book);
	r->several = r->whole ? rb_several(r->ledger) : NULL;
}

static inline void records_of(struct records *r, const char *old,
			      const struct book_text *book)
{
	records_fill(r, rb_arena_new(NULL), old, book);
}

/* -- as text -- */

struct told {
	char text[8192];
	size_t used;
};

__attribute__((format(printf, 2, 3))) static inline void tell(struct told *out,
							      const char *format, ...)
{
	va_list arguments;

	va_start(arguments, format);
	out->used += (size_t)vsnprintf(out->text + out->used,
				       sizeof out->text - out->used, format, arguments);
	va_end(arguments);
}

static inline void tell_findings(struct told *out, const struct rb_findings *findings)
{
	for (size_t i = 0; i < findings->count; i++)
		tell(out, "%s %u %s\n", findings->file, findings->item[i]->place.line,
		     rb_code_name(findings->item[i]->code));
}

static inline void tell_books(struct told *out, const struct records *r)
{
	for (uint32_t i = 0; i < r->ledger->books; i++) {
		const struct rb_recorded_book *book = &r->ledger->book[i];

		tell(out, "%s %u", book->name, book->version);
		if (*book->replaces)
			tell(out, " replaces %s", book->replaces);
		tell(out, "%s\n", book->replaced ? " replaced" : "");
	}
	tell_findings(out, &r->of_record);
	for (size_t i = 0; i < r->books; i++)
		tell_findings(out, &r->of_book[i]);
}

static inline void tell_length(struct told *out, const char *before, rb_length a)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, a, (struct rb_style){ RB_FEET, 4, 16, false });
	tell(out, "%s%s", before, *text ? text : "-");
}

/* The record as it would stand in its file. */
static inline const char *csv_of(struct capture *capture, const struct records *r)
{
	capture_init(capture);
	rb_record_write_csv(&capture->sink, r->ledger);
	return captured(capture);
}

#endif
