/* SPDX-License-Identifier: MIT */
/* rodbook dig: one rod reading, one answer. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/drain_input.h"
#include "cli/stream.h"
#include "cli/style.h"
#include "report/dig_result.h"
#include "report/message_text.h"

/* What the answers hang on, and where they go. */
struct work {
	struct rb_job *job;
	struct rb_drain_input input; /* without a line in the hub mode */
	struct rb_values *values;
	enum rb_unit unit; /* of the line, or of the numbers beside a hub */
	bool from_hub;
	bool digging;     /* what stands low was dug too deep */
	rb_length wanted; /* of the hub */
	rb_length rod;    /* its length */
	enum rb_surface surface;
	struct rb_dig_result answer; /* all but the reading */
	struct rb_output output;
	struct rb_sink sink;
	struct rb_phrase phrase;
	uint32_t number; /* of the line at hand, from 1 */
	bool refused;    /* some line was */
};

static const char *const on_words[] = { "trench", "invert", "top" };
static const enum rb_surface surfaces[] = { RB_TRENCH_BOTTOM, RB_INVERT, RB_TOP_OF_PIPE };

#define USUAL_ROD (25 * RB_FOOT)

/* -- the hub -- */

/* A stake says C 4.07 or F 7.0; a bare length is a cut. */
static rb_length read_cut(struct work *w)
{
	const char *text = rb_given_text(w->job->line, RB_OPTION_CUT);
	bool fill = *text == 'F' || *text == 'f';
	rb_length cut;

	if (fill || *text == 'C' || *text == 'c')
		text++;
	cut = rb_value_of(w->values, text, "--cut", RB_OF_TAPE);
	return fill && rb_length_given(cut) ? rb_length_negate(cut) : cut;
}

static bool read_hub(struct work *w)
{
	static const enum rb_option not_here[] = {
		RB_OPTION_AT,        RB_OPTION_ON,        RB_OPTION_HI,
		RB_OPTION_BENCHMARK, RB_OPTION_BACKSIGHT, RB_OPTION_INVERT,
		RB_OPTION_SLOPE,     RB_OPTION_LENGTH,    RB_OPTION_OUTLET
	};
	enum rb_unit unit = rb_given_unit(w->job->line, RB_FEET);
	rb_length hub, cut;

	for (size_t i = 0; i < sizeof not_here / sizeof *not_here; i++)
		if (rb_given(w->job->line, not_here[i])) {
			rb_values_misused(w->job, not_here[i],
					  "goes with a plan, and --hub stands without");
			return false;
		}
	if (!rb_given(w->job->line, RB_OPTION_HUB) ||
	    !rb_given(w->job->line, RB_OPTION_CUT) || w->job->line->files) {
		rb_values_misused(w->job, RB_OPTION_HUB,
				  "and --cut stand together, and without a plan");
		return false;
	}
	if (!rb_values_begin(w->values, w->job, unit))
		return false;
	w->rod = rb_length_of(USUAL_ROD);
	hub = rb_value_reading(w->values, RB_OPTION_HUB, w->rod, 0);
	cut = read_cut(w);
	if (!rb_findings_allow_result(rb_values_findings(w->values)))
		return false;
	w->unit = unit;
	w->from_hub = true;
	for (int i = 0; i < 2; i++)
		w->answer.benchmark[i] =
			(struct rb_sighted_benchmark){ rb_length_none(),
						       rb_length_none() };
	w->digging = cut.nm >= 0;
	w->wanted = rb_dig_wanted_from_hub(hub, cut);
	w->answer.on = "";
	w->answer.style =
		rb_asked_style(w->job->line, (struct rb_style){ unit, 2, 16, false });
	return true;
}

/* -- the line -- */

static bool read_line(struct work *w)
{
	int on = rb_given_number(w->job->line, RB_OPTION_ON, 0);

	if (!rb_drain_input_read(&w->input, w->job) ||
	    !rb_todays_hi_read(w->values, w->input.plan, &w->answer.today,
			       w->answer.benchmark))
		return false;
	if (!rb_length_given(w->answer.today.hi)) {
		rb_values_misused(w->job, RB_OPTION_HI,
				  "is needed, or --benchmark with --backsight: today's, "
				  "never an older one");
		return false;
	}
	w->rod = w->input.plan->rod;
	w->surface = surfaces[on];
	w->answer.on = on_words[on];
	w->answer.on_pipe = w->surface != RB_TRENCH_BOTTOM;
	w->digging = !w->answer.on_pipe;
	w->unit = w->input.plan->unit;
	w->answer.style = rb_asked_style(w->job->line, rb_plan_style(w->input.plan));
	return true;
}

/* Answers are in inches, or in the metric unit; in decimals only where they were asked
 * for. */
static struct rb_style style_of_words(const struct rb_command_line *line,
				      struct rb_style style)
{
	int fraction = 8 << rb_given_number(line, RB_OPTION_FRACTION, 0);

	if (rb_unit_of_runs(style.unit) == RB_METRES) {
		style.unit = rb_given_unit(line, RB_MILLIMETRES);
		style.decimals = style.unit == RB_METRES ? 3 : 0;
		style.decimals =
			rb_given_number(line, RB_OPTION_DECIMALS, style.decimals);
		return style;
	}
	if (rb_given_unit(line, RB_INCHES) == RB_FEET)
		return style;
	return (struct rb_style){ RB_FEET_INCHES, 0, fraction, true };
}

static bool set_up(struct work *w)
{
	const struct rb_command_line *line = w->job->line;
	bool hub = rb_given(line, RB_OPTION_HUB) || rb_given(line, RB_OPTION_CUT);
	rb_length within;

	w->values = &w->input.values;
	if (!(hub ? read_hub : read_line)(w))
		return false;
	within = rb_value_length(w->values, RB_OPTION_WITHIN, RB_OF_TAPE, 0);
	if (!rb_findings_allow_result(rb_values_findings(w->values)))
		return false;
	w->answer.within = rb_length_given(within) ? rb_length_absolute(within)
						   : rb_dig_within(w->unit);
	w->answer.words = style_of_words(line, w->answer.style);
	w->answer.decimals = rb_given_number(line, RB_OPTION_DECIMALS, -1);
	rb_phrase_init(&w->phrase, w->job->arena);
	if (w->phrase.out_of_memory)
		rb_job_no_memory(w->job);
	return !w->phrase.out_of_memory;
}

/* -- answers -- */

/* Find the answer to a reading; false where there is none. */
static bool find(struct work *w, rb_length at, rb_length read)
{
	struct rb_findings *findings = rb_values_findings(w->values);
	struct rb_exact wanted = rb_exact_of(w->wanted);

	w->answer.at = at;
	if (!w->from_hub && !rb_dig_wanted(findings, w->input.inverts, w->answer.today.hi,
					   at, w->surface, &wanted))
		return false;
	if (!rb_findings_allow_result(findings))
		return false;
	w->answer.dig = rb_dig(wanted, read, w->answer.within, w->digging);
	return true;
}

static bool write_answer(struct rb_sink *sink, void *self)
{
	struct work *w = self;
	const struct rb_command_line *line = w->job->line;

	if (rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) == RB_FORMAT_JSON)
		return rb_dig_write_json(sink, &w->phrase, &w->answer);
	rb_phrase_clear(&w->phrase);
	rb_dig_words(&w->phrase, &w->answer);
	if (rb_given(line, RB_OPTION_STEPS)) {
		rb_phrase_text(&w->phrase, "\n");
		rb_dig_steps(&w->phrase, &w->answer);
	}
	rb_phrase_text(&w->phrase, "\n");
	if (w->phrase.out_of_memory) /* no half an answer: somebody digs by it */
		return false;
	rb_sink_text(sink, w->phrase.text);
	return true;
}

/* Where the height of instrument comes from, if there is something to say of it. */
static bool write_hi(struct rb_sink *sink, struct work *w)
{
	const struct rb_command_line *line = w->job->line;

	if (rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) == RB_FORMAT_JSON)
		return true;
	rb_phrase_clear(&w->phrase);
	rb_dig_hi(&w->phrase, &w->answer, rb_given(line, RB_OPTION_STEPS));
	if (w->phrase.used)
		rb_phrase_text(&w->phrase, "\n");
	rb_sink_text(sink, w->phrase.text);
	return !w->phrase.out_of_memory;
}

static bool write_one(struct rb_sink *sink, void *self)
{
	return write_answer(sink, self) && write_hi(sink, self);
}

static void answer_one(struct work *w)
{
	rb_length at = rb_length_none();
	const char *text = rb_given_text(w->job->line, RB_OPTION_AT);
	rb_length rod = rb_value_reading(w->values, RB_OPTION_ROD, w->rod, 0);

	if (!w->from_hub && !text) {
		rb_values_misused(w->job, RB_OPTION_AT, "is needed beside --rod");
		return;
	}
	if (!w->from_hub)
		at = rb_value_chainage(w->values, text, "--at");
	if (rb_findings_allow_result(rb_values_findings(w->values)) && find(w, at, rod))
		rb_job_write(w->job, write_one, w);
}

/* -- line by line -- */

static bool messages_wait(const struct work *w)
{
	return rb_given_number(w->job->line, RB_OPTION_MESSAGES, RB_MESSAGES_TEXT) ==
	       RB_MESSAGES_JSON;
}

/* Say what was wrong with a line at once, unless messages go out together at the end, and
 * start anew: the next line has findings of its own. */
static bool tell(struct work *w)
{
	struct rb_findings *findings = rb_values_findings(w->values);
	struct rb_text_style style = { RB_TEXT_COLUMNS, false };
	struct rb_stream stream;
	char hundred[sizeof w->values->cells.hundred];

	memcpy(hundred, w->values->cells.hundred, sizeof hundred);
	if (!findings->count && !findings->out_of_memory)
		return true;
	w->refused |= !rb_findings_allow_result(findings);
	findings->file = "standard input";
	for (size_t i = 0; i < findings->count; i++)
		findings->item[i]->place.line = w->number;
	if (findings->out_of_memory ||
	    !rb_values_begin(w->values, w->job, w->values->cells.unit)) {
		rb_job_no_memory(w->job);
		return false;
	}
	memcpy(w->values->cells.hundred, hundred, sizeof hundred);
	if (messages_wait(w))
		return true;
	rb_stream_open(&stream, STDERR_FILENO);
	if (!rb_messages_write_text(&stream.sink, findings, RB_NOTE, style)) {
		rb_job_no_memory(w->job);
		return false;
	}
	rb_stream_close(&stream, RB_EXIT_HOLDS);
	rb_findings_init(findings, w->job->arena, "standard input");
	return true;
}

/* The chainage stands before the first comma, semicolon or tab, or else before the first
 * blank; what is behind it is the reading. */
static char *part(char *text)
{
	char *end = text + strcspn(text, ",;\t");

	if (!*end)
		end = text + strcspn(text, " ");
	if (!*end)
		return NULL;
	*end++ = '\0';
	return end + strspn(end, " \t");
}

static bool take_line(struct work *w, char *text)
{
	const char *given = rb_given_text(w->job->line, RB_OPTION_AT);
	rb_length at = rb_length_none(), rod;
	const char *reading = text, *place = given;

	if (!w->from_hub && !given) {
		reading = part(text);
		place = text;
	}
	if (!w->from_hub)
		at = rb_value_chainage(w->values, place, "the chainage");
	rod = rb_value_on_rod(w->values, reading ? reading : "", "the reading", w->rod);
	if (rb_findings_allow_result(rb_values_findings(w->values)) && find(w, at, rod) &&
	    !write_answer(&w->sink, w)) {
		rb_job_no_memory(w->job);
		return false;
	}
	rb_sink_flush(&w->sink);
	return tell(w) && !w->output.error && !w->output.reader_left;
}

/* Without its end, outer blanks and zero bytes. */
static char *trim(char *text, size_t length)
{
	for (size_t i = 0; i < length; i++)
		if (!text[i])
			text[i] = '\1';
	while (length && strchr(" \t\r\n", text[length - 1]))
		text[--length] = '\0';
	return text + strspn(text, " \t");
}

static void greet(const struct work *w)
{
	struct rb_stream stream;

	if (isatty(STDIN_FILENO) != 1)
		return;
	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink,
		     w->from_hub || rb_given(w->job->line, RB_OPTION_AT)
			     ? "A rod reading on each line; Ctrl-D ends.\n"
			     : "Chainage and rod reading on each line, such as "
			       "0+24 7.15; Ctrl-D ends.\n");
	rb_stream_close(&stream, RB_EXIT_HOLDS);
}

static void read_lines(struct work *w)
{
	char *text = NULL;
	size_t room = 0;
	ssize_t length = 0;

	greet(w);
	while (!w->job->status && (length = getline(&text, &room, stdin)) >= 0) {
		char *line = trim(text, (size_t)length);

		w->number++;
		if (*line && *line != '#' && !take_line(w, line))
			break;
	}
	if (!w->job->status && length < 0 && !feof(stdin)) /* memory sets no ferror() */
		rb_job_failed(w->job, "standard input", errno);
	free(text);
}

/* What is known before the first line is said before it: somebody digs by the answers. */
static void begin_lines(struct work *w)
{
	rb_job_tell(w->job);
	if (!w->job->status && !write_hi(&w->sink, w))
		rb_job_no_memory(w->job);
	if (!w->job->status)
		rb_values_begin(w->values, w->job, w->unit);
	rb_sink_flush(&w->sink);
}

static void answer_lines(struct work *w)
{
	const char *name = rb_given_text(w->job->line, RB_OPTION_OUTPUT);

	if (w->job->line->files && !strcmp(w->job->line->file[0], "-")) {
		rb_values_misused(w->job, RB_OPTION_ROD,
				  "is needed where the plan comes from standard input");
		return;
	}
	if (!rb_output_open(&w->output, name, RB_REPLACE)) {
		rb_job_failed(w->job, name, w->output.error);
		return;
	}
	rb_sink_init(&w->sink, rb_output_write, &w->output);
	begin_lines(w);
	read_lines(w);
	rb_sink_flush(&w->sink);
	if (w->job->status || (name && w->refused))
		rb_output_abandon(&w->output);
	else if (!rb_output_close(&w->output))
		rb_job_failed(w->job, name, w->output.error);
	if (!w->job->status && w->refused)
		w->job->status = RB_EXIT_INPUT;
}

enum rb_exit rb_run_dig(const struct rb_command_line *line)
{
	struct rb_job job;
	struct work w = { .job = &job };

	rb_job_begin(&job, line);
	if (!job.status && set_up(&w))
		(rb_given(line, RB_OPTION_ROD) ? answer_one : answer_lines)(&w);
	return rb_job_end(&job, "no answer");
}
