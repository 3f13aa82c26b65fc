/* SPDX-License-Identifier: MIT */
/* practice_page.c - a sheet of problems on paper, and as JSON and CSV. */
#include <stdio.h>

#include "report/practice_sheet.h"

enum { POINT, BACKSIGHT, HEIGHT, INTERMEDIATE, FORESIGHT, ELEVATION, REMARKS, COLUMNS };

#define TO_FILL   "_____"
#define TO_ANSWER "  ANSWER: ____________________"

/* -- on paper -- */

static const char *title_of(const struct rb_practice_sheet *sheet)
{
	static const char *const titles[] = {
		[RB_PRACTICE_CONVERT] = "Practice: lengths",
		[RB_PRACTICE_LOOP] = "Practice: level loops",
		[RB_PRACTICE_FALL] = "Practice: falls and grade rods",
	};

	return titles[sheet->options->kind];
}

static void add_title(struct rb_page *page, const struct rb_practice_sheet *sheet)
{
	char aside[64];

	snprintf(aside, sizeof aside, "seed %llu%s",
		 (unsigned long long)sheet->options->seed, sheet->answers ? ", key" : "");
	rb_page_add(page, RB_TITLE, title_of(sheet), aside);
}

static void add_row(struct rb_table *table, const struct rb_practice_row *row,
		    struct rb_style style, bool filled)
{
	const rb_length value[COLUMNS] = {
		[POINT] = rb_length_none(),
		[BACKSIGHT] = row->backsight,
		[HEIGHT] = row->height,
		[INTERMEDIATE] = row->intermediate,
		[FORESIGHT] = row->foresight,
		[ELEVATION] = rb_length_given(row->known) ? row->known : row->elevation,
		[REMARKS] = rb_length_none(),
	};
	const char *cell[COLUMNS] = { [POINT] = row->point, [REMARKS] = row->remark };
	char text[COLUMNS][RB_LENGTH_TEXT];

	for (int i = BACKSIGHT; i < REMARKS; i++) {
		bool asked =
			i == HEIGHT || (i == ELEVATION && !rb_length_given(row->known));

		if (!rb_length_given(value[i]))
			continue;
		rb_length_format(text[i], value[i], style);
		cell[i] = asked && !filled ? TO_FILL : text[i];
	}
	rb_table_add(table, RB_ROW, cell);
}

static void add_book(struct rb_page *page, const struct rb_practice_sheet *sheet,
		     const struct rb_practice_book *book)
{
	enum rb_align align = book->unit == RB_FEET_INCHES || book->unit == RB_INCHES
				      ? RB_ON_INCHES
				      : RB_ON_POINT;
	const struct rb_table_column columns[COLUMNS] = {
		{ "point", RB_LEFT, RB_KEEPS },    { "BS", align, RB_KEEPS },
		{ "HI", align, RB_KEEPS },         { "IS", align, RB_KEEPS },
		{ "FS", align, RB_KEEPS },         { "elevation", align, RB_KEEPS },
		{ "remarks", RB_LEFT, RB_SPILLS },
	};
	struct rb_table *table = rb_page_table(page, NULL, columns, COLUMNS);

	for (uint32_t row = 0; table && row < book->rows; row++)
		add_row(table, &book->row[row], rb_practice_style(sheet->options),
			rb_practice_is_filled(sheet));
}

static void add_problem(struct rb_page *page, const struct rb_practice_sheet *sheet,
			const struct rb_problem *p)
{
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, page->arena);
	rb_phrase_number(&phrase, p->number);
	rb_phrase_text(&phrase, ". ");
	rb_problem_text(&phrase, sheet, p);
	rb_page_add(page, RB_PARAGRAPH, phrase.text, NULL);
	if (p->book)
		add_book(page, sheet, p->book);
	if (sheet->answers) {
		rb_phrase_clear(&phrase);
		rb_problem_steps(&phrase, sheet, p);
		rb_phrase_text(&phrase, "\n  ANSWER: ");
		rb_problem_answer(&phrase, sheet, p);
	}
	if (sheet->answers || !p->book)
		rb_page_add(page, RB_LINES, sheet->answers ? phrase.text : TO_ANSWER,
			    NULL);
	page->out_of_memory |= phrase.out_of_memory;
}

struct rb_page *rb_practice_page(const struct rb_practice_sheet *sheet)
{
	struct rb_page *page = rb_page_new(sheet->arena);

	if (!page)
		return NULL;
	add_title(page, sheet);
	for (size_t i = 0; i < sheet->count && !page->out_of_memory; i++)
		add_problem(page, sheet, sheet->problem[i]);
	return page;
}
