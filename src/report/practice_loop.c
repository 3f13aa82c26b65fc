/* SPDX-License-Identifier: MIT */
/* practice_loop.c - the book of a loop: as CSV, and worked out step by step. */
#include <stdio.h>
#include <string.h>

#include "report/csv.h"
#include "report/practice_sheet.h"
#include "report/steps.h"

#define LINES_ABOVE 5 /* project, student, unit, tolerance, and the header */
#define WORKING     6 /* blanks before the lines that carry and borrow */

static const char *const columns[] = {
	"point",     "known elevation",      "backsight", "intermediate",
	"foresight", "height of instrument", "elevation", "remarks",
};

uint32_t rb_practice_line(uint32_t row)
{
	return LINES_ABOVE + row + 1;
}

bool rb_practice_is_filled(const struct rb_practice_sheet *sheet)
{
	return sheet->answers || sheet->options->plant;
}

static void put_length(struct rb_csv *csv, rb_length a, struct rb_style style)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, a, style);
	rb_csv_number(csv, text, strlen(text));
}

static void put_row(struct rb_csv *csv, const struct rb_practice_row *row,
		    struct rb_style style, bool filled)
{
	const rb_length none = rb_length_none();
	const rb_length value[] = {
		row->known,
		row->backsight,
		row->intermediate,
		row->foresight,
		filled ? row->height : none,
		filled ? row->elevation : none,
	};

	rb_csv_text(csv, row->point);
	for (size_t i = 0; i < sizeof value / sizeof *value; i++)
		put_length(csv, value[i], style);
	rb_csv_text(csv, row->remark);
	rb_csv_end_row(csv);
}

static void put_key(struct rb_csv *csv, const char *key, const char *value)
{
	rb_csv_text(csv, key);
	rb_csv_text(csv, value);
	rb_csv_end_row(csv);
}

void rb_practice_write_book(struct rb_sink *sink, const struct rb_practice_sheet *sheet,
			    const struct rb_problem *problem)
{
	struct rb_style style = rb_practice_style(sheet->options);
	const struct rb_practice_book *book = problem->book;
	bool filled = rb_practice_is_filled(sheet);
	char tolerance[RB_LENGTH_TEXT], project[64];
	struct rb_csv csv;

	rb_csv_init(&csv, sink);
	snprintf(project, sizeof project, "Practice loop %d, seed %llu", problem->number,
		 (unsigned long long)sheet->options->seed);
	put_key(&csv, "project", project);
	put_key(&csv, "student", "");
	put_key(&csv, "unit", rb_unit_name(book->unit));
	style.marked = true;
	rb_length_format(tolerance, book->tolerance, style);
	put_key(&csv, "tolerance", tolerance);
	style.marked = false;
	for (size_t i = 0; i < sizeof columns / sizeof *columns; i++)
		rb_csv_text(&csv, columns[i]);
	rb_csv_end_row(&csv);
	for (uint32_t row = 0; row < book->rows; row++)
		put_row(&csv, &book->row[row], style, filled);
}

/* -- step by step -- */

/* The steps of a row: by the readings alone, so that a slip is not among them. */
static void tell_row(struct rb_phrase *phrase, const struct rb_practice_row *row,
		     struct rb_style style, rb_length *height)
{
	bool turns = rb_length_given(row->foresight);
	rb_length sight = turns ? row->foresight : row->intermediate;
	rb_length elevation = row->known;

	rb_phrase_text(phrase, row->point);
	if (rb_length_given(sight)) {
		elevation = rb_length_sub(*height, sight);
		rb_phrase_text(phrase, "\n  elevation = ");
		rb_steps_subtract(phrase, *height, sight, style, WORKING);
	}
	if (!rb_length_given(row->backsight))
		return;
	rb_phrase_text(phrase, "\n  height of instrument = ");
	rb_steps_add(phrase, elevation, row->backsight, style, WORKING);
	*height = rb_length_add(elevation, row->backsight);
}

static void tell_closure(struct rb_phrase *phrase, const struct rb_practice_book *book,
			 struct rb_style style)
{
	rb_length known = book->row[0].known;

	rb_phrase_text(phrase, "\nmisclosure = ");
	rb_steps_subtract(phrase, rb_length_add(known, book->misclosure), known, style,
			  WORKING);
}

void rb_book_problem_steps(struct rb_phrase *phrase,
			   const struct rb_practice_sheet *sheet,
			   const struct rb_practice_book *book)
{
	struct rb_style style = rb_practice_style(sheet->options);
	rb_length height = rb_length_none();

	style.marked = true;
	for (uint32_t row = 0; row < book->rows; row++) {
		rb_phrase_text(phrase, row ? "\n" : "");
		tell_row(phrase, &book->row[row], style, &height);
	}
	tell_closure(phrase, book, style);
}
