/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as the words of a page: text and HTML are well-formed whatever stands in the
 * titles, the cells and the notes.
 *
 * Each line of the input is a block; its first letter says of which kind, "|" a row of
 * cells, "~" a note under it.
 */
#include <string.h>

#include "work.h"

static const struct rb_table_column columns[] = {
	{ "place <1>", RB_LEFT, false },   { "number & \"mark\"", RB_ON_POINT, false },
	{ "inches", RB_ON_INCHES, false }, { "right", RB_RIGHT, false },
	{ "remarks", RB_LEFT, true },
};
#define COLUMNS (sizeof columns / sizeof *columns)

static void add_row(struct rb_table *table, char *line)
{
	const char *cell[COLUMNS] = { NULL };

	for (size_t i = 0; i < COLUMNS && line; i++) {
		char *end = strchr(line, '|');

		cell[i] = line;
		line = end ? end + 1 : NULL;
		if (end)
			*end = '\0';
	}
	rb_table_add(table, RB_ROW, cell);
}

static void add_line(struct rb_page *page, struct rb_table **table, char *line)
{
	char *aside = strchr(line, '|');

	if (*line == '|' || *line == '~') {
		if (!*table)
			*table = rb_page_table(page, line + 1, columns, COLUMNS);
		HOLDS(*table);
		if (*line == '|')
			add_row(*table, line + 1);
		else
			rb_table_note(*table, line + 1);
		return;
	}
	*table = NULL;
	if (aside)
		*aside++ = '\0';
	rb_page_add(page, (enum rb_block_kind)(*line % RB_TABLE), line, aside);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_page *page = arena ? rb_page_new(arena) : NULL;
	struct rb_table *table = NULL;
	char *text = rb_arena_text(arena, (const char *)data, size);

	HOLDS(page && text);
	for (char *line = text, *end; line; line = end) {
		end = strchr(line, '\n');
		if (end)
			*end++ = '\0';
		if ((unsigned char)*line < 0x80)
			add_line(page, &table, line);
	}
	check_page(page, NULL, drawn_from(data, size));
	rb_arena_free(arena);
	return 0;
}
