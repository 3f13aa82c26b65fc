/* SPDX-License-Identifier: MIT */
/* capture.h - what a writer wrote, as a string; and a book from its text. */
#ifndef RB_TESTS_REPORT_CAPTURE_H
#define RB_TESTS_REPORT_CAPTURE_H

#include <string.h>

#include "level/suspects.h"
#include "report/reduction.h"
#include "report/sink.h"
#include "rodbook/reduce.h"

#define CAPTURE (1 << 18)

struct capture {
	struct rb_sink sink;
	char text[CAPTURE];
	size_t used;
};

static bool capture_bytes(void *self, const char *bytes, size_t length)
{
	struct capture *capture = self;

	if (length >= CAPTURE - capture->used)
		return false;
	memcpy(capture->text + capture->used, bytes, length);
	capture->used += length;
	capture->text[capture->used] = '\0';
	return true;
}

static inline void capture_init(struct capture *capture)
{
	capture->used = 0;
	capture->text[0] = '\0';
	rb_sink_init(&capture->sink, capture_bytes, capture);
}

/* All that was written since capture_init(). */
static inline const char *captured(struct capture *capture)
{
	return rb_sink_flush(&capture->sink) ? capture->text : "(the sink failed)";
}

/* A book taken through all stages, as far as it gets. */
struct reduced_book {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_reduction reduction; /* adjusted is NULL where there is no result */
};

static inline void reduce_with(struct reduced_book *b, const struct rb_book *book,
			       const struct rb_judging *judging)
{
	const struct rb_reduced *reduced = rb_reduce(b->arena, &b->findings, book);
	const struct rb_sections *sections = NULL;

	if (reduced)
		sections = rb_sections(b->arena, &b->findings, reduced, judging);
	if (!sections)
		return;
	b->reduction.adjusted = rb_adjust(b->arena, &b->findings, sections);
	b->reduction.suspects = rb_suspects(b->arena, &b->findings, sections);
	b->reduction.adjust_anyway = judging->adjust_anyway;
}

static inline void reduce_text(struct reduced_book *b, const char *file, const char *text,
			       bool anyway)
{
	struct rb_judging judging;
	const struct rb_book *book;

	b->arena = rb_arena_new(NULL);
	b->reduction = (struct rb_reduction){ .decimals = -1 };
	rb_findings_init(&b->findings, b->arena, file);
	book = rb_book_read(b->arena, &b->findings, text, strlen(text));
	if (!book || !rb_findings_allow_result(&b->findings))
		return;
	b->reduction.style = rb_book_style(book);
	judging = rb_judging_of(book);
	judging.adjust_anyway = anyway;
	reduce_with(b, book, &judging);
}

/* Our own scenario: three setups round a loop, 0.01 ft low. */
static const char larch[] =
	"project,Larch Street drain\n"
	"date,17 March 2026\n"
	"tolerance,0.02 ft\n"
	"point,backsight,intermediate,foresight,known elevation,remarks\n"
	"BM-1,4.27,,,100.00,\n"
	"TP-1,5.11,,6.03,,\n"
	"MH-1,,6.48,,,\"rim, south side\"\n"
	"TP-2,4.90,,3.52,,\n"
	"BM-1,,,4.74,,\n";

#endif
