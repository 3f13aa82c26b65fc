/* SPDX-License-Identifier: MIT */
/*
 * table.h - a page of results, before it is a format.
 *
 * A page is a list of blocks in reading order: lines of words, tables, rules.  A report
 * makes one page from its result; the text and HTML writers show any page.  So there are
 * results + formats to write, not results x formats.  All texts live in the arena.
 */
#ifndef RODBOOK_TABLE_H
#define RODBOOK_TABLE_H

#include <stdbool.h>

#include "rodbook/arena.h"

enum rb_align {
	RB_LEFT,
	RB_RIGHT,
	RB_ON_POINT, /* numbers: aligned on the decimal point */
	RB_ON_INCHES /* feet-inches: aligned on the foot and the inch mark */
};

/* What becomes of a cell where a table is wider than the terminal. */
enum rb_room {
	RB_KEEPS,     /* it stays in its column */
	RB_SPILLS,    /* words: those that do not fit go on the next line */
	RB_MOVES,     /* the whole column goes there, each cell behind its heading */
	RB_MOVES_LAST /* the same, where that of the others is not enough */
};

struct rb_table_column {
	const char *heading;
	enum rb_align align;
	enum rb_room room;
};

enum rb_row_kind {
	RB_ROW,      /* cells under the headings */
	RB_ROW_SUMS, /* the same, set apart by a hairline above */
	RB_ROW_RULE, /* a hairline */
	RB_ROW_NOTE  /* one text across the table, under the row before */
};

struct rb_table_row {
	enum rb_row_kind kind;
	const char **cell; /* one for each column; NULL or "": empty */
	const char *note;
	struct rb_table_row *next;
};

struct rb_table {
	const char *caption; /* or NULL */
	bool own_sheet;      /* on paper: a sheet of its own, in type for arm's length */
	struct rb_table_column *column;
	size_t columns;
	struct rb_table_row *first, **last;
	struct rb_arena *arena;
	bool out_of_memory;
};

enum rb_block_kind {
	RB_TITLE, /* what this is; `aside` stands at the right end of the line */
	RB_HEADING,
	RB_PARAGRAPH, /* words, wrapped */
	RB_LINES,     /* words as they stand, line ends kept (worked arithmetic) */
	RB_VERDICT, /* words that carry a verdict: last on the terminal, boxed on paper */
	RB_CAUTION, /* words, with a citation in `aside` */
	RB_TABLE
};

struct rb_block {
	enum rb_block_kind kind;
	const char *text;
	const char *aside; /* or NULL */
	struct rb_table *table;
	struct rb_block *next;
};

struct rb_page {
	struct rb_block *first, **last;
	struct rb_arena *arena;
	bool out_of_memory; /* a block could not be added: do not write the page */
};

/* An empty page, or NULL. */
struct rb_page *rb_page_new(struct rb_arena *arena);

/* Add a block; the text is copied.  Failing sets page->out_of_memory. */
void rb_page_add(struct rb_page *page, enum rb_block_kind kind, const char *text,
		 const char *aside);

/* Add an empty table with a copy of the columns; NULL if memory ran out. */
struct rb_table *rb_page_table(struct rb_page *page, const char *caption,
			       const struct rb_table_column *column, size_t columns);

/* Add a row of a table; cells are copied.  Failing sets table->out_of_memory. */
void rb_table_add(struct rb_table *table, enum rb_row_kind kind, const char *const *cell);

/* Add a note under the last row. */
void rb_table_note(struct rb_table *table, const char *note);

#endif
