/* SPDX-License-Identifier: MIT */
/* Readings typed line by line: each is answered before the next is read. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/dig.h"
#include "cli/stream.h"
#include "notes/rows.h"

/* A conversation: what is typed, and where the answers go. */
struct talk {
	struct rb_digging *dig;
	struct rb_output output;
	struct rb_sink sink;
	uint32_t number;           /* of the line at hand, from 1 */
	size_t told[RB_ERROR + 1]; /* messages of a severity that were said at once */
	bool refused;              /* some line was */
};

/* -- messages -- */

/* The next line has findings of its own. */
static bool begin_findings(struct talk *t)
{
	struct rb_values *values = t->dig->values;

	values->words = rb_job_words(t->dig->job);
	if (!values->words)
		return false;
	values->words->findings.file = "standard input";
	values->cells.findings = &values->words->findings;
	return true;
}

/* Say what was wrong with a line at once, unless messages go out together at the end. */
static bool tell(struct talk *t)
{
	struct rb_job *job = t->dig->job;
	struct rb_findings *findings = rb_values_findings(t->dig->values);

	t->refused |= findings->of_severity[RB_ERROR] > 0;
	if (findings->out_of_memory) {
		rb_job_no_memory(job);
		return false;
	}
	if (!findings->count)
		return true;
	if (rb_job_tells_json(job))
		return begin_findings(t);
	if (!rb_job_say(job, findings)) {
		rb_job_no_memory(job);
		return false;
	}
	for (int i = 0; i <= RB_ERROR; i++)
		t->told[i] += findings->of_severity[i];
	rb_findings_init(findings, job->arena, findings->file);
	return true;
}

/* -- a line -- */

/* Part of a line: its text, and where that stands. */
struct cell {
	const char *text;
	size_t from;
};

/* Put the place of a cell into what was found in it. */
static void place_findings(const struct talk *t, size_t first, const char *line,
			   const struct cell *cell)
{
	const struct rb_findings *findings = rb_values_findings(t->dig->values);

	for (size_t i = first; i < findings->count; i++) {
		struct rb_place *place = &findings->item[i]->place;

		place->line = t->number;
		place->column = 1 + rb_characters(line, cell->from);
		place->width = rb_characters(cell->text, strlen(cell->text));
	}
}

/* The chainage stands before the first comma, semicolon or tab, or else before the first
 * blank; what is behind it is the reading.  False without memory. */
static bool part(struct rb_arena *arena, const char *line, size_t from, struct cell *at,
		 struct cell *reading)
{
	size_t length = strcspn(line + from, ",;\t"), end;

	if (!line[from + length])
		length = strcspn(line + from, " ");
	end = from + length + (line[from + length] != '\0');
	end += strspn(line + end, " \t");
	*reading = (struct cell){ line + end, end };
	while (length && line[from + length - 1] == ' ')
		length--;
	*at = (struct cell){ rb_arena_text(arena, line + from, length), from };
	return at->text;
}

static void miss(struct rb_findings *findings, const char *what)
{
	rb_findings_add(findings, RB_CODE_HALF_A_LINE, rb_at(0, RB_WHOLE_ROW, NULL, what),
			rb_nothing(), rb_nothing());
}

static void take_chainage(struct talk *t, const char *line, const struct cell *cell)
{
	struct rb_digging *w = t->dig;
	struct rb_findings *findings = rb_values_findings(w->values);

	if (*cell->text) {
		rb_length at = rb_value_chainage(w->values, cell->text, "the chainage");

		if (rb_findings_allow_result(findings))
			rb_dig_place(w, at);
	} else {
		miss(findings, "the chainage");
	}
	place_findings(t, 0, line, cell);
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* What stands in a cell of its own behind a reading; NULL: nothing does.  5,32 is one
 * cell, and its comma is told; a comma at the end of the line parts nothing. */
static const char *more_behind(const char *reading)
{
	size_t length = strcspn(reading, ",;\t");
	const char *end = reading + length, *more = end + strspn(end, " ,;\t");
	bool comma_decimal = *end == ',' && length && is_digit(end[-1]) &&
			     is_digit(end[1]) && !memchr(reading, '.', length);

	return *more && !comma_decimal ? more : NULL;
}

static void refuse_more(struct talk *t, const char *line, const char *more)
{
	struct rb_findings *findings = rb_values_findings(t->dig->values);
	const struct cell cell = { more, (size_t)(more - line) };
	size_t before = findings->count;

	rb_findings_add(findings, RB_CODE_MORE_ON_THE_LINE,
			rb_at(0, RB_WHOLE_ROW, NULL, "the reading"), rb_text(more),
			rb_nothing());
	place_findings(t, before, line, &cell);
}

static rb_length take_reading(struct talk *t, const char *line, const struct cell *cell)
{
	struct rb_digging *w = t->dig;
	struct rb_findings *findings = rb_values_findings(w->values);
	size_t before = findings->count;
	rb_length read = rb_length_none();

	if (*cell->text)
		read = rb_value_on_rod(w->values, cell->text, "the reading", w->rod);
	else if (rb_findings_allow_result(findings)) /* a word alone has one fault */
		miss(findings, "the reading");
	place_findings(t, before, line, cell);
	return read;
}

/* False without memory. */
static bool answer(struct talk *t, const char *line)
{
	struct rb_digging *w = t->dig;
	struct rb_findings *findings = rb_values_findings(w->values);
	size_t from = strspn(line, " \t");
	struct cell at, reading = { line + from, from };
	const char *more;
	rb_length read;

	findings->typed = line;
	if (!w->placed) {
		if (!part(w->job->arena, line, from, &at, &reading))
			return false;
		take_chainage(t, line, &at);
	}
	more = more_behind(reading.text);
	if (more) {
		refuse_more(t, line, more);
		return true;
	}
	read = take_reading(t, line, &reading);
	if (!rb_findings_allow_result(findings))
		return true;
	rb_dig_read(w, read);
	return rb_dig_write(&t->sink, w);
}

static bool take_line(struct talk *t, const char *text, size_t length)
{
	struct rb_job *job = t->dig->job;
	const char *line = rb_arena_text(job->arena, text, length);

	if (!line || !answer(t, line)) {
		rb_job_no_memory(job);
		return false;
	}
	rb_sink_flush(&t->sink);
	return tell(t) && !t->output.error && !t->output.reader_left;
}

/* -- the conversation -- */

/* Without its end and blanks before that; a zero byte is no blank and ends nothing. */
static size_t trim(char *text, size_t length)
{
	while (length && strchr(" \t\r\n", text[length - 1]))
		length--;
	for (size_t i = 0; i < length; i++)
		if (!text[i])
			text[i] = '\1';
	text[length] = '\0';
	return length;
}

static void greet(const struct talk *t)
{
	struct rb_stream stream;

	if (isatty(STDIN_FILENO) != 1)
		return;
	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink,
		     t->dig->placed ? "A rod reading on each line; Ctrl-D ends.\n"
				    : "Chainage and rod reading on each line, such as "
				      "0+24 7.15; Ctrl-D ends.\n");
	rb_stream_close(&stream, RB_EXIT_HOLDS);
}

static void read_lines(struct talk *t)
{
	struct rb_job *job = t->dig->job;
	char *text = NULL;
	size_t room = 0;
	ssize_t length = 0;

	greet(t);
	while (!job->status && (length = getline(&text, &room, stdin)) >= 0) {
		size_t used = trim(text, (size_t)length);
		const char *begin = text + strspn(text, " \t");

		t->number++;
		if (*begin && *begin != '#' && !take_line(t, text, used))
			break;
	}
	if (!job->status && length < 0 && !feof(stdin)) /* memory sets no ferror() */
		rb_job_failed(job, "standard input", errno);
	free(text);
}

/* What is known before the first line is said before it: somebody digs by the answers. */
static bool begin_lines(struct talk *t)
{
	rb_job_tell(t->dig->job);
	if (!t->dig->job->status && !rb_dig_write_hi(&t->sink, t->dig))
		rb_job_no_memory(t->dig->job);
	rb_sink_flush(&t->sink);
	return !t->dig->job->status && begin_findings(t);
}

/* A file is left only where every line was read; the messages that were said are counted
 * at the end. */
static void end_lines(struct talk *t, const char *name)
{
	struct rb_job *job = t->dig->job;

	rb_sink_flush(&t->sink);
	if (job->status || (name && t->refused))
		rb_output_abandon(&t->output);
	else if (!rb_output_close(&t->output))
		rb_job_failed(job, name, t->output.error);
	for (int i = 0; i <= RB_ERROR && !job->status; i++)
		rb_values_findings(t->dig->values)->of_severity[i] += t->told[i];
}

bool rb_dig_lines(struct rb_digging *w)
{
	const char *name = rb_given_text(w->job->line, RB_OPTION_OUTPUT);
	struct talk t = { .dig = w };

	if (!rb_output_open(&t.output, name, RB_REPLACE)) {
		rb_job_failed(w->job, name, t.output.error);
		return false;
	}
	rb_sink_init(&t.sink, rb_output_write, &t.output);
	if (begin_lines(&t))
		read_lines(&t);
	end_lines(&t, name);
	return t.number;
}
