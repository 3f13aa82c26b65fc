/* SPDX-License-Identifier: MIT */
/*
 * ledger.h - the site record: the books of a job, and the places in them.
 *
 * Books are only ever added.  A book that stands in the record already is refused, known
 * again by the digest of its bytes; another book of the same name, date and project is a
 * new version, whose entries say which version they replace, while the old entries stay
 * as they are.
 */
#ifndef RB_RECORD_LEDGER_H
#define RB_RECORD_LEDGER_H

#include "record/entry.h"
#include "record/index.h"

#define RB_NO_BOOK UINT32_MAX

/* A book of the record. */
struct rb_recorded_book {
	const char *name; /* of the file, without a path */
	const char *date, *project, *datum;
	const char *digest;   /* "" in a line that was written by hand */
	const char *replaces; /* "larch.csv version 1 (3fa9c1d2e4b5)", or "" */
	uint32_t version;     /* from 1 */
	uint32_t older;       /* the version that it replaces, or RB_NO_BOOK */
	bool replaced;        /* by a later version */
	bool is_new;          /* added now; else read from the record */
	enum rb_unit unit;    /* of its numbers in JSON and CSV */
	struct rb_style style;
	bool fraction_asked;           /* nothing is shown finer than the style says */
	struct rb_reduction reduction; /* of a new book */
	struct rb_findings *findings;  /* of a new book */
	uint32_t first, entries;       /* of a new book, in the ledger's entry */
};

/* The columns of the record as a file. */
enum rb_record_column {
	RB_RECORD_POINT,
	RB_RECORD_ELEVATION,
	RB_RECORD_ADJUSTED,
	RB_RECORD_UNIT,
	RB_RECORD_ELEVATION_INCHES,
	RB_RECORD_ADJUSTED_INCHES,
	RB_RECORD_ELEVATION_MM,
	RB_RECORD_ADJUSTED_MM,
	RB_RECORD_BELOW,
	RB_RECORD_DATUM,
	RB_RECORD_DATE,
	RB_RECORD_PROJECT,
	RB_RECORD_BOOK,
	RB_RECORD_VERSION,
	RB_RECORD_SECTION,
	RB_RECORD_CLOSED,
	RB_RECORD_WITHIN,
	RB_RECORD_KIND,
	RB_RECORD_ROD_ON,
	RB_RECORD_KNOWN,
	RB_RECORD_REMARKS,
	RB_RECORD_REPLACES,
	RB_RECORD_DIGEST,
	RB_RECORD_COLUMNS
};

struct rb_ledger {
	struct rb_arena *arena;
	struct rb_recorded_book *book;
	uint32_t books, book_room;
	struct rb_entry *entry; /* those of the record first, as they stand there */
	uint32_t entries, entry_room;
	uint32_t old_books, old_entries;
	bool has_record;                    /* a record was read */
	const char *file;                   /* its name, without a path */
	int32_t cell_of[RB_RECORD_COLUMNS]; /* of the record that was read; -1: none */
	uint32_t cells;                     /* of its rows */
	struct rb_index by_digest, by_name;
};

/* An empty record; NULL if there is no memory. */
struct rb_ledger *rb_ledger_new(struct rb_arena *arena);

/*
 * Read a record that was written before; called once, before any book is added.
 *
 *   bytes  kept by the caller until the arena is freed
 *
 * Findings: those of sheet.h; a column missing without which nothing can be added; a form
 * in which lines cannot be added to it (semicolons, Windows-1252).  An empty file is an
 * empty record.  False after an error.
 */
bool rb_ledger_read(struct rb_ledger *ledger, struct rb_findings *findings,
		    const char *bytes, size_t length);

/*
 * Add a book.
 *
 *   findings   those of the book; kept
 *   reduction  of the book; copied
 *   digest     of the book's bytes, in words; copied
 *
 * A book that the record has already is an error, and so is an elevation within a foot of
 * RB_LENGTH_MAX: rounded up it could not be read again.  False after an error.
 */
bool rb_ledger_add(struct rb_ledger *ledger, struct rb_findings *findings,
		   const struct rb_reduction *reduction, const char *digest);

/* The book of an entry. */
static inline const struct rb_recorded_book *rb_entry_book(const struct rb_ledger *ledger,
							   const struct rb_entry *entry)
{
	return &ledger->book[entry->book];
}

/* -- for the files that fill a ledger -- */

/* The book of this digest, or without one of this name; RB_NO_BOOK if there is none. */
uint32_t rb_ledger_find(const struct rb_ledger *ledger,
			const struct rb_recorded_book *book);

/* Enter a book, whatever its digest, as the latest of its name; its number, or RB_NO_BOOK
 * without memory.  `version` 0: one more than the latest. */
uint32_t rb_ledger_enter(struct rb_ledger *ledger, const struct rb_recorded_book *book);

/* Room for so many more entries, or NULL. */
struct rb_entry *rb_ledger_room(struct rb_ledger *ledger, uint32_t more);

#endif
