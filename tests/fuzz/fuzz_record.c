/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a site record with books behind it: what is added to a record can be read
 * again with it, every old byte stays, and a book that is in it is not taken twice.
 */
#include <stdio.h>
#include <string.h>

#include "record/record.h"
#include "record/record_csv.h"
#include "strict.h"
#include "work.h"

#define BOOKS 2

struct books {
	struct work work[BOOKS];
	char digest[BOOKS][9];
	int count;
};

/* Those of the books behind the record that have a result. */
static void work_books(struct books *books, struct rb_arena *arena, const uint8_t *data,
		       size_t size)
{
	books->count = 0;
	for (int i = 1; i <= BOOKS; i++) {
		struct part file = part_of(data, size, i);

		if (!work_out(&books->work[books->count], arena, file))
			continue;
		snprintf(books->digest[books->count], sizeof books->digest[0], "%08x",
			 (unsigned)drawn_from((const uint8_t *)file.bytes, file.length));
		books->count++;
	}
}

/* Add them all; how many went in. */
static int add_books(struct rb_ledger *ledger, struct books *books)
{
	int added = 0;

	for (int i = 0; i < books->count; i++)
		added += rb_ledger_add(ledger, &books->work[i].findings,
				       &books->work[i].reduction, books->digest[i]);
	return added;
}

/* The record as the command writes it: every old byte, and the new lines behind them. */
static void write_record(struct kept *kept, const struct rb_ledger *ledger,
			 struct part old)
{
	if (!ledger->has_record) {
		HOLDS(rb_record_write_csv(&kept->sink, ledger));
		return;
	}
	rb_sink_bytes(&kept->sink, old.bytes, old.length);
	if (old.bytes[old.length - 1] != '\n')
		rb_sink_char(&kept->sink, '\n');
	HOLDS(rb_record_write_lines(&kept->sink, ledger));
}

/* The new record holds all entries of the old one and the new ones, and its books. */
static void reads_back(const struct rb_ledger *ledger, const struct kept *kept,
		       struct books *books)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_ledger *again = rb_ledger_new(arena);
	struct rb_findings findings;

	HOLDS(arena && again);
	rb_findings_init(&findings, arena, "again.csv");
	HOLDS(rb_ledger_read(again, &findings, kept->bytes, kept->length));
	HOLDS(again->entries == ledger->entries);
	HOLDS(again->books == ledger->books);
	HOLDS(add_books(again, books) == 0);
	rb_arena_free(arena);
}

static void check_results(const struct rb_ledger *ledger,
			  const struct rb_findings *findings, uint32_t draws)
{
	struct rb_site_record record = { ledger, rb_several(ledger), &findings, 1 };
	struct kept kept;

	HOLDS(record.several);
	if (draw(&draws, 2)) {
		check_page(rb_record_page(&record), NULL, draws);
		return;
	}
	kept_begin(&kept);
	HOLDS(rb_record_write_json(&kept.sink, &record));
	kept_end(&kept);
	strict_json(&kept);
	kept_free(&kept);
}

static void check_record(struct rb_ledger *ledger, struct rb_findings *findings,
			 struct part old, struct books *books, uint32_t draws)
{
	struct kept kept;

	if (!add_books(ledger, books))
		return;
	kept_begin(&kept);
	write_record(&kept, ledger, old);
	kept_end(&kept);
	HOLDS(!ledger->has_record || !memcmp(kept.bytes, old.bytes, old.length));
	if (!ledger->has_record)
		strict_csv(&kept);
	reads_back(ledger, &kept, books);
	kept_free(&kept);
	check_results(ledger, findings, draws);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	uint32_t draws = drawn_from(data, size);
	struct part old = part_of(data, size, 0);
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_ledger *ledger = rb_ledger_new(arena);
	struct rb_findings findings;
	struct books books;
	bool read;

	HOLDS(arena && ledger);
	rb_findings_init(&findings, arena, "site.csv");
	read = rb_ledger_read(ledger, &findings, old.bytes, old.length);
	HOLDS(read == rb_findings_allow_result(&findings));
	work_books(&books, arena, data, size);
	if (read)
		check_record(ledger, &findings, old, &books, draws);
	check_messages(&findings, draws);
	rb_arena_free(arena);
	return 0;
}
