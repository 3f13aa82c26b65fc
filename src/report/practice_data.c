/* SPDX-License-Identifier: MIT */
/* practice_data.c - a sheet of problems for other programs: JSON and CSV. */
#include <string.h>

#include "report/csv.h"
#include "report/json.h"
#include "report/practice_sheet.h"

/* Writes into a phrase what goes to a sink. */
static bool take(void *self, const char *bytes, size_t length)
{
	struct rb_phrase *phrase = self;
	char *text = rb_arena_text(phrase->arena, bytes, length);

	if (text)
		rb_phrase_text(phrase, text);
	return text && !phrase->out_of_memory;
}

/* The book of a loop as one text. */
static bool put_book(struct rb_json *json, const struct rb_practice_sheet *sheet,
		     const struct rb_problem *p, struct rb_phrase *phrase)
{
	struct rb_sink *sink = rb_arena_take(sheet->arena, 1, sizeof *sink);

	if (!sink)
		return false;
	rb_phrase_clear(phrase);
	rb_sink_init(sink, take, phrase);
	rb_practice_write_book(sink, sheet, p);
	if (!rb_sink_flush(sink))
		return false;
	rb_json_key(json, "book");
	rb_json_string(json, phrase->text);
	return true;
}

/* Lines, each as a string of an array. */
static void put_lines(struct rb_json *json, char *text)
{
	rb_json_open(json, '[');
	while (*text) {
		char *end = text + strcspn(text, "\n");
		bool more = *end;

		*end = '\0';
		rb_json_string(json, text + strspn(text, " "));
		text = end + more;
	}
	rb_json_close(json);
}

static void put_key(struct rb_json *json, const struct rb_practice_sheet *sheet,
		    const struct rb_problem *p, struct rb_phrase *phrase)
{
	rb_json_key(json, "answer");
	rb_phrase_clear(phrase);
	if (sheet->answers)
		rb_problem_answer(phrase, sheet, p);
	rb_json_text(json, phrase->text);
	rb_json_key(json, "steps");
	rb_phrase_clear(phrase);
	if (sheet->answers) {
		rb_problem_steps(phrase, sheet, p);
		put_lines(json, phrase->text);
	} else {
		rb_json_null(json);
	}
}

static bool put_problem(struct rb_json *json, const struct rb_practice_sheet *sheet,
			const struct rb_problem *p)
{
	struct rb_phrase phrase;
	bool worded = true;

	rb_phrase_init(&phrase, sheet->arena);
	if (phrase.out_of_memory)
		return false;
	rb_json_open(json, '{');
	rb_json_key(json, "number");
	rb_json_count(json, p->number);
	rb_json_key(json, "text");
	rb_problem_text(&phrase, sheet, p);
	rb_json_string(json, phrase.text);
	put_key(json, sheet, p, &phrase);
	if (p->book)
		worded = put_book(json, sheet, p, &phrase);
	rb_json_close(json);
	return worded && !phrase.out_of_memory;
}

bool rb_practice_write_json(struct rb_sink *sink, const struct rb_practice_sheet *sheet)
{
	struct rb_json json;
	bool worded = true;

	rb_json_init(&json, sink);
	rb_json_head(&json);
	rb_json_key(&json, "seed");
	rb_json_count(&json, (int64_t)sheet->options->seed);
	rb_json_key(&json, "kind");
	rb_json_string(&json, rb_practice_kind_name(sheet->options->kind));
	rb_json_key(&json, "problems");
	rb_json_open(&json, '[');
	for (size_t i = 0; i < sheet->count && worded; i++)
		worded = put_problem(&json, sheet, sheet->problem[i]);
	rb_json_end(&json);
	return worded;
}

static bool put_csv_row(struct rb_csv *csv, const struct rb_practice_sheet *sheet,
			const struct rb_problem *p)
{
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, sheet->arena);
	rb_phrase_number(&phrase, p->number);
	if (phrase.out_of_memory)
		return false;
	rb_csv_number(csv, phrase.text, phrase.used);
	rb_phrase_clear(&phrase);
	rb_problem_text(&phrase, sheet, p);
	rb_csv_text(csv, phrase.text);
	rb_phrase_clear(&phrase);
	if (sheet->answers)
		rb_problem_answer(&phrase, sheet, p);
	rb_csv_text(csv, phrase.text);
	rb_csv_end_row(csv);
	return !phrase.out_of_memory;
}

bool rb_practice_write_csv(struct rb_sink *sink, const struct rb_practice_sheet *sheet)
{
	struct rb_csv csv;
	bool worded = true;

	if (sheet->options->kind == RB_PRACTICE_LOOP) {
		rb_practice_write_book(sink, sheet, sheet->problem[0]);
		return true;
	}
	rb_csv_init(&csv, sink);
	rb_csv_text(&csv, "number");
	rb_csv_text(&csv, "problem");
	rb_csv_text(&csv, "answer");
	rb_csv_end_row(&csv);
	for (size_t i = 0; i < sheet->count && worded; i++)
		worded = put_csv_row(&csv, sheet, sheet->problem[i]);
	return worded;
}
