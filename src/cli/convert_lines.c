/* SPDX-License-Identifier: MIT */
/* Lengths typed line by line: each is answered before the next is read. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/convert.h"
#include "cli/stream.h"
#include "cli/style.h"
#include "notes/rows.h"
#include "report/convert_json.h"
#include "report/convert_page.h"
#include "report/text.h"

/* A conversation: what is typed, and where the answers go. */
struct talk {
	const struct rb_command_line *line;
	struct rb_conversion_style style;
	struct rb_job *job; /* keeps the findings that are told at the end */
	struct rb_output output;
	struct rb_sink sink;
	struct rb_json json;
	struct rb_csv csv;
	enum rb_format format;
	uint32_t number; /* of the line at hand, from 1 */
	uint32_t answered;
	bool refused; /* some line was */
	bool warned;
	bool prompts;
};

/* -- answers -- */

static void begin_answers(struct talk *t)
{
	rb_json_init(&t->json, &t->sink);
	rb_csv_init(&t->csv, &t->sink);
	if (t->format == RB_FORMAT_JSON)
		rb_json_open(&t->json, '[');
	if (t->format == RB_FORMAT_CSV)
		rb_conversion_write_csv_head(&t->csv);
}

static bool answer_text(struct talk *t, struct rb_arena *arena,
			const struct rb_conversion *c)
{
	struct rb_page *page = rb_page_new(arena);

	if (!page)
		return false;
	rb_conversion_add(page, c, rb_given(t->line, RB_OPTION_STEPS));
	if (t->answered)
		rb_sink_char(&t->sink, '\n');
	return rb_page_write_text(&t->sink, page, rb_result_style(t->line));
}

static bool answer(struct talk *t, struct rb_arena *arena, const struct rb_conversion *c)
{
	bool worded = true;

	if (t->format == RB_FORMAT_JSON)
		rb_conversion_write_json(&t->json, c);
	else if (t->format == RB_FORMAT_CSV)
		rb_conversion_write_csv(&t->csv, c);
	else
		worded = answer_text(t, arena, c);
	t->answered++;
	if (worded)
		rb_sink_flush(&t->sink);
	return worded;
}

/* -- messages -- */

/* Where in the line it goes wrong, in characters from 1. */
static uint32_t column_of(const char *text, const struct rb_conversion *c)
{
	if (c->worked.refusal == RB_EXPRESSION_READ || c->worked.where > strlen(text))
		return 1;
	return 1 + rb_characters(text, c->worked.where);
}

/* Put the line's number and the column into what was found on it. */
static void place_findings(struct rb_findings *findings, uint32_t line, uint32_t column)
{
	for (size_t i = 0; i < findings->count; i++) {
		findings->item[i]->place.line = line;
		findings->item[i]->place.column = column;
	}
}

/* -- a line -- */

/* Work out a line in an arena; false if memory ran out. */
static bool take_in(struct talk *t, struct rb_arena *arena, const char *text)
{
	struct rb_job_file *file = rb_arena_take_clear(arena, 1, sizeof *file);
	struct rb_conversion *c = rb_arena_take(arena, 1, sizeof *c);
	const char *kept = rb_arena_text(arena, text, strlen(text));
	bool read;

	if (!file || !c || !kept)
		return false;
	rb_findings_init(&file->findings, arena, "standard input");
	read = rb_convert(c, kept, &t->style, &file->findings,
			  rb_at(0, RB_WHOLE_ROW, NULL, "what was typed"));
	place_findings(&file->findings, t->number, column_of(kept, c));
	if (file->findings.out_of_memory)
		return false;
	t->refused |= !read;
	t->warned |= file->findings.of_severity[RB_WARNING] > 0;
	if (read && !answer(t, arena, c))
		return false;
	if (!rb_job_tells_json(t->job))
		return rb_job_say(t->job, &file->findings);
	if (file->findings.count) {
		*t->job->last = file;
		t->job->last = &file->next;
	}
	return true;
}

/* Messages that wait keep their line's memory; otherwise a line gives it back. */
static bool take_line(struct talk *t, const char *text)
{
	struct rb_arena *arena =
		rb_job_tells_json(t->job) ? t->job->arena : rb_arena_new(NULL);
	bool done = arena && take_in(t, arena, text);

	if (arena != t->job->arena)
		rb_arena_free(arena);
	if (!done)
		rb_job_no_memory(t->job);
	return done;
}

/* -- the conversation -- */

static void prompt(const struct talk *t)
{
	struct rb_stream stream;

	if (!t->prompts)
		return;
	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink, "length> ");
	rb_stream_close(&stream, RB_EXIT_HOLDS);
}

static void greet(const struct talk *t)
{
	struct rb_stream stream;

	if (!t->prompts)
		return;
	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink, "A length on each line, such as 5'-3 1/2\" or "
				   "8'-6 3/4\" / 3; Ctrl-D ends.\n");
	rb_stream_close(&stream, RB_EXIT_HOLDS);
}

/* Without its end; a zero byte is no blank and ends nothing. */
static size_t trim(char *text, size_t length)
{
	while (length && (text[length - 1] == '\n' || text[length - 1] == '\r'))
		length--;
	text[length] = '\0';
	for (size_t i = 0; i < length; i++)
		if (!text[i])
			text[i] = '\1';
	return length;
}

static bool is_wanted(const struct talk *t)
{
	return !t->job->status && !t->output.error && !t->output.reader_left;
}

static void read_lines(struct talk *t)
{
	char *text = NULL;
	size_t room = 0;
	ssize_t length = 0;

	greet(t);
	prompt(t);
	while (is_wanted(t) && (length = getline(&text, &room, stdin)) >= 0) {
		size_t used = trim(text, (size_t)length);

		t->number++;
		if (strspn(text, " \t") < used && !take_line(t, text))
			break;
		prompt(t);
	}
	if (is_wanted(t) && length < 0 && !feof(stdin)) /* memory sets no ferror() */
		rb_job_failed(t->job, "standard input", errno);
	free(text);
	if (t->prompts)
		(void)!write(STDERR_FILENO, "\n", 1);
}

/* A file is left only where every line was read, and what is not whole does not look it.
 */
static void end_answers(struct talk *t, const char *name)
{
	if (t->format == RB_FORMAT_JSON)
		rb_json_end(&t->json);
	if (!t->job->status)
		rb_sink_flush(&t->sink);
	if (t->job->status || (name && t->refused))
		rb_output_abandon(&t->output);
	else if (!rb_output_close(&t->output))
		rb_job_failed(t->job, name, t->output.error);
	if (!t->job->status && t->refused)
		t->job->status = RB_EXIT_INPUT;
	if (!t->job->status && t->warned && rb_given(t->line, RB_OPTION_STRICT))
		t->job->status = RB_EXIT_FAILS;
}

void rb_convert_lines(struct rb_job *job)
{
	const struct rb_command_line *line = job->line;
	const char *name = rb_given_text(line, RB_OPTION_OUTPUT);
	struct talk t = { .line = line,
			  .job = job,
			  .style = rb_asked_conversion(line),
			  .format = (enum rb_format)rb_given_number(
				  line, RB_OPTION_FORMAT, RB_FORMAT_TEXT),
			  .prompts = isatty(STDIN_FILENO) == 1 };

	if (!rb_output_open(&t.output, name, RB_REPLACE)) {
		rb_job_failed(job, name, t.output.error);
		return;
	}
	rb_sink_init(&t.sink, rb_output_write, &t.output);
	begin_answers(&t);
	read_lines(&t);
	end_answers(&t, name);
}
