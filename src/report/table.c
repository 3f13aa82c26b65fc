/* SPDX-License-Identifier: MIT */
/* table.c - pages and tables, put together in an arena. */
#include "rodbook/table.h"

#include <string.h>

static const char *copy_of(struct rb_arena *arena, const char *text)
{
	return rb_arena_text(arena, text, strlen(text));
}

struct rb_page *rb_page_new(struct rb_arena *arena)
{
	struct rb_page *page = rb_arena_take_clear(arena, 1, sizeof *page);

	if (!page)
		return NULL;
	page->last = &page->first;
	page->arena = arena;
	return page;
}

static struct rb_block *add_block(struct rb_page *page, enum rb_block_kind kind)
{
	struct rb_block *block = rb_arena_take_clear(page->arena, 1, sizeof *block);

	if (!block) {
		page->out_of_memory = true;
		return NULL;
	}
	block->kind = kind;
	*page->last = block;
	page->last = &block->next;
	return block;
}

void rb_page_add(struct rb_page *page, enum rb_block_kind kind, const char *text,
		 const char *aside)
{
	struct rb_block *block = add_block(page, kind);

	if (!block)
		return;
	block->text = copy_of(page->arena, text);
	if (aside)
		block->aside = copy_of(page->arena, aside);
	if (!block->text || (aside && !block->aside))
		page->out_of_memory = true;
}

static bool start_table(struct rb_table *table, struct rb_arena *arena,
			const struct rb_table_column *column, size_t columns)
{
	table->column = rb_arena_take(arena, columns, sizeof *column);
	if (!table->column)
		return false;
	memcpy(table->column, column, columns * sizeof *column);
	table->columns = columns;
	table->last = &table->first;
	table->arena = arena;
	return true;
}

struct rb_table *rb_page_table(struct rb_page *page, const char *caption,
			       const struct rb_table_column *column, size_t columns)
{
	struct rb_table *table = rb_arena_take_clear(page->arena, 1, sizeof *table);
	struct rb_block *block;

	if (!table || !start_table(table, page->arena, column, columns) ||
	    (caption && !(table->caption = copy_of(page->arena, caption)))) {
		page->out_of_memory = true;
		return NULL;
	}
	block = add_block(page, RB_TABLE);
	if (!block)
		return NULL;
	block->table = table;
	return table;
}

static bool copy_cells(struct rb_table *table, struct rb_table_row *row,
		       const char *const *cell)
{
	row->cell = rb_arena_take_clear(table->arena, table->columns, sizeof *row->cell);
	if (!row->cell)
		return false;
	for (size_t i = 0; i < table->columns; i++) {
		if (!cell[i] || !*cell[i])
			continue;
		row->cell[i] = copy_of(table->arena, cell[i]);
		if (!row->cell[i])
			return false;
	}
	return true;
}

static void add_row(struct rb_table *table, enum rb_row_kind kind,
		    const char *const *cell, const char *note)
{
	struct rb_table_row *row = rb_arena_take_clear(table->arena, 1, sizeof *row);

	if (!row || (cell && !copy_cells(table, row, cell)) ||
	    (note && !(row->note = copy_of(table->arena, note)))) {
		table->out_of_memory = true;
		return;
	}
	row->kind = kind;
	*table->last = row;
	table->last = &row->next;
}

void rb_table_add(struct rb_table *table, enum rb_row_kind kind, const char *const *cell)
{
	add_row(table, kind, cell, NULL);
}

void rb_table_note(struct rb_table *table, const char *note)
{
	add_row(table, RB_ROW_NOTE, NULL, note);
}
