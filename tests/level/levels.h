/* SPDX-License-Identifier: MIT */
/*
 * levels.h - a book and what comes out of it, both as text.
 *
 * A case is a CSV text and the lines that its reduction must give, so that a row of a
 * test can be read, and checked by hand, without knowing the structures.
 *
 *   shots      LINE[+LINE of the backsight] POINT KIND ELEVATION [HI ...] [ADJUSTED]
 *   sections   FROM>TO SETUPS setups BS FS up RISES down FALLS off MISCLOSURE VERDICT
 *   checks     LINE DIFFERENCE
 *   findings   LINE CODE
 */
#ifndef TESTS_LEVEL_LEVELS_H
#define TESTS_LEVEL_LEVELS_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rodbook/reduce.h"

struct levels {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_book *book;
	struct rb_reduced *reduced;
	struct rb_sections *sections;
	struct rb_adjusted *adjusted;
};

/* What fresh memory is full of: 1, a good number of a shot, or a 1 in each byte.  What
 * was not set must not be taken for set. */
static uint32_t rubbish = 1;

static inline void *resize_to_rubbish(void *old, size_t size)
{
	char *block = old ? NULL : malloc(size);

	for (size_t at = 0; block && at + sizeof rubbish <= size; at += sizeof rubbish)
		memcpy(block + at, &rubbish, sizeof rubbish);
	return old ? realloc(old, size) : block;
}

static inline struct levels levels_of(const char *csv, bool adjust_anyway)
{
	static const struct rb_allocator allocator = { resize_to_rubbish, free };
	struct levels l = { .arena = rb_arena_new(&allocator) };
	struct rb_judging judging;

	rb_findings_init(&l.findings, l.arena, "book.csv");
	l.book = rb_book_read(l.arena, &l.findings, csv, strlen(csv));
	l.reduced = l.book ? rb_reduce(l.arena, &l.findings, l.book) : NULL;
	if (!l.reduced)
		return l;
	judging = rb_judging_of(l.book);
	judging.adjust_anyway = adjust_anyway;
	l.sections = rb_sections(l.arena, &l.findings, l.reduced, &judging);
	l.adjusted = l.sections ? rb_adjust(l.arena, &l.findings, l.sections) : NULL;
	return l;
}

/* Text that grows in a buffer of the test's. */
struct lines {
	char text[4096];
	size_t used;
};

__attribute__((format(printf, 2, 3))) static inline void say(struct lines *out,
							     const char *format, ...)
{
	va_list arguments;

	va_start(arguments, format);
	out->used += (size_t)vsnprintf(out->text + out->used,
				       sizeof out->text - out->used, format, arguments);
	va_end(arguments);
}

static inline void say_length(struct lines *out, const char *before, rb_length a,
			      int decimals)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, a, (struct rb_style){ RB_FEET, decimals, 16, false });
	if (rb_length_given(a))
		say(out, "%s%s", before, text);
}

static inline void say_shots(struct lines *out, const struct levels *l)
{
	for (uint32_t i = 0; l->adjusted && i < l->reduced->shots; i++) {
		const struct rb_shot *s = &l->reduced->shot[i];
		uint32_t opens = rb_shot_opens(s);

		say(out, "%u", rb_book_line(l->book, s->row));
		if (s->backsight_row != RB_NO_ROW && s->backsight_row != s->row)
			say(out, "+%u", rb_book_line(l->book, s->backsight_row));
		say(out, " %s %s", rb_book_typed(l->book, s->row),
		    rb_kind_name((enum rb_kind)s->kind));
		say_length(out, " ", s->elevation, 2);
		if (opens != RB_NO_SETUP)
			say_length(out, " HI ",
				   l->reduced->setup[opens].height_of_instrument, 2);
		say_length(out, " adjusted ", rb_shot_adjusted(l->adjusted, i), 4);
		say(out, "\n");
	}
}

static inline void say_sections(struct lines *out, const struct levels *l)
{
	static const char *const verdicts[] = { "not judged", "closes", "beyond",
						"open" };

	for (uint32_t i = 0; l->sections && i < l->sections->sections; i++) {
		const struct rb_section *s = &l->sections->section[i];

		say(out, "%s>%s %u setups", rb_book_point(l->book, s->from),
		    rb_book_point(l->book, s->to), s->setups);
		say_length(out, " ", s->sum_backsight, 2);
		say_length(out, " ", s->sum_foresight, 2);
		say_length(out, " up ", s->sum_rise, 2);
		say_length(out, " down ", s->sum_fall, 2);
		say_length(out, " off ", s->misclosure, 2);
		say(out, " %s%s\n", verdicts[s->verdict],
		    s->adjusted ? ", adjusted" : "");
	}
}

static inline void say_checks(struct lines *out, const struct levels *l)
{
	for (uint32_t i = 0; l->sections && i < l->sections->sections; i++)
		for (uint32_t c = 0; c < l->sections->section[i].checks; c++) {
			const struct rb_check *check =
				&l->sections
					 ->check[l->sections->section[i].first_check + c];

			say(out, "section %u line %u", i,
			    rb_book_line(l->book, l->reduced->shot[check->shot].row));
			say_length(out, " ", check->difference, 2);
			say(out, "\n");
		}
}

static inline void say_findings(struct lines *out, const struct levels *l)
{
	for (size_t i = 0; i < l->findings.count; i++)
		say(out, "%u %s\n", l->findings.item[i]->place.line,
		    rb_code_name(l->findings.item[i]->code));
}

struct level_case {
	const char *what, *csv, *expected;
	bool adjust_anyway;
};

/* Run the cases; names each that differs, with what came out, and returns how many did.
 */
static inline int wrong_levels(const struct level_case *c, size_t count,
			       void (*say_it)(struct lines *out, const struct levels *l))
{
	int wrong = 0;

	rubbish = rubbish == 1 ? 0x01010101 : 1;
	for (size_t i = 0; i < count; i++) {
		struct levels l = levels_of(c[i].csv, c[i].adjust_anyway);
		struct lines out = { .used = 0 };

		out.text[0] = '\0';
		say_it(&out, &l);
		if (strcmp(out.text, c[i].expected) != 0) {
			print_error("%s: got\n%sexpected\n%s", c[i].what, out.text,
				    c[i].expected);
			wrong++;
		}
		rb_arena_free(l.arena);
	}
	return wrong;
}

/* Twice, with different memory. */
#define WRONG(table, say_it)                                                             \
	(wrong_levels(table, sizeof(table) / sizeof *(table), say_it) +                  \
	 wrong_levels(table, sizeof(table) / sizeof *(table), say_it))

#endif
