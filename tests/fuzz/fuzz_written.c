/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a book, through every writer: what goes to a terminal is harmless, and our
 * own CSV is a book that reduces to the same elevations.
 */
#include <stdlib.h>
#include <string.h>

#include "report/message_text.h"
#include "report/reduced_csv.h"
#include "report/reduced_json.h"
#include "report/reduced_page.h"
#include "report/reduced_steps.h"
#include "report/text.h"
#include "rodbook/rodbook.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void holds(bool so)
{
	if (!so)
		abort();
}

struct page {
	char *bytes;
	size_t length;
};

static bool keep(void *self, const char *bytes, size_t length)
{
	struct page *page = self;
	char *wider = realloc(page->bytes, page->length + length + 1);

	if (!wider)
		abort();
	page->bytes = wider;
	memcpy(page->bytes + page->length, bytes, length);
	page->length += length;
	return true;
}

/* No control character but the line end. */
static void is_harmless(const struct page *page)
{
	for (size_t i = 0; i < page->length; i++) {
		unsigned char c = (unsigned char)page->bytes[i];

		holds(c == '\n' || (c >= ' ' && c != 0x7f));
	}
}

static struct rb_adjusted *work_out(struct rb_arena *arena, struct rb_findings *findings,
				    const char *bytes, size_t length)
{
	struct rb_book *book = rb_book_read(arena, findings, bytes, length);
	struct rb_reduced *reduced = book ? rb_reduce(arena, findings, book) : NULL;
	struct rb_judging judging = { .adjust = RB_BY_SETUPS };
	struct rb_sections *sections;

	if (!reduced)
		return NULL;
	judging = rb_judging_of(book);
	sections = rb_sections(arena, findings, reduced, &judging);
	return sections ? rb_adjust(arena, findings, sections) : NULL;
}

static void write_text(struct rb_arena *arena, const struct rb_findings *findings,
		       const struct rb_reduction *reduction)
{
	struct rb_text_style style = { RB_TEXT_COLUMNS, false };
	struct rb_page *page;
	struct rb_sink sink;
	struct page text = { NULL, 0 };

	rb_sink_init(&sink, keep, &text);
	rb_messages_write_text(&sink, findings, RB_NOTE, style);
	if (reduction) {
		page = rb_reduced_page(arena, reduction);
		rb_reduced_steps(page, reduction);
		holds(rb_page_write_text(&sink, page, style));
		holds(rb_reduced_write_json(&sink, reduction, findings));
	}
	holds(rb_sink_flush(&sink));
	is_harmless(&text);
	free(text.bytes);
}

/* The same places of the rod at the same elevations. */
static void reads_back(const struct rb_reduction *reduction)
{
	const struct rb_reduced *first = reduction->adjusted->sections->reduced, *second;
	struct rb_arena *arena = rb_arena_new(NULL);
	struct page csv = { NULL, 0 };
	struct rb_findings findings;
	struct rb_adjusted *again;
	struct rb_sink sink;

	rb_sink_init(&sink, keep, &csv);
	holds(rb_reduced_write_csv(&sink, arena, reduction));
	holds(rb_sink_flush(&sink));
	rb_findings_init(&findings, arena, "again.csv");
	again = work_out(arena, &findings, csv.bytes, csv.length);
	holds(again && rb_findings_allow_result(&findings));
	second = again->sections->reduced;
	holds(second->shots == first->shots && second->setups == first->setups);
	for (uint32_t i = 0; i < first->shots; i++)
		holds(first->shot[i].elevation.nm == second->shot[i].elevation.nm);
	rb_arena_free(arena);
	free(csv.bytes);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	struct rb_reduction reduction = { .decimals = -1 };

	if (!arena)
		abort();
	rb_findings_init(&findings, arena, "fuzz.csv");
	reduction.adjusted = work_out(arena, &findings, (const char *)data, size);
	if (reduction.adjusted && rb_findings_allow_result(&findings)) {
		reduction.style =
			rb_book_style(reduction.adjusted->sections->reduced->book);
		write_text(arena, &findings, &reduction);
		reads_back(&reduction);
	} else {
		write_text(arena, &findings, NULL);
	}
	rb_arena_free(arena);
	return 0;
}
