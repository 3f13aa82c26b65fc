/* SPDX-License-Identifier: MIT */
/* rodbook dig: one rod reading, one answer. */
#include "cli/dig.h"

#include <string.h>

#include "cli/refusal.h"
#include "cli/style.h"

static const char *const on_words[] = { "trench", "invert", "top" };
static const enum rb_surface surfaces[] = { RB_TRENCH_BOTTOM, RB_INVERT, RB_TOP_OF_PIPE };

#define USUAL_ROD (25 * RB_FOOT)

static bool is_from_hub(const struct rb_command_line *line)
{
	return rb_given(line, RB_OPTION_HUB) || rb_given(line, RB_OPTION_CUT);
}

/* -- the hub -- */

/* A stake says C 4.07 or F 7.0; a bare length is a cut. */
static rb_length read_cut(struct rb_digging *w)
{
	const char *text = rb_given_text(w->job->line, RB_OPTION_CUT);
	bool fill = *text == 'F' || *text == 'f';
	rb_length cut;

	if (fill || *text == 'C' || *text == 'c')
		text++;
	cut = rb_value_of(w->values, text, "--cut", RB_OF_TAPE);
	return fill && rb_length_given(cut) ? rb_length_negate(cut) : cut;
}

static bool read_hub(struct rb_digging *w)
{
	enum rb_unit unit = rb_given_unit(w->job->line, RB_FEET);
	rb_length hub, cut;

	if (!rb_values_begin(w->values, w->job, unit))
		return false;
	w->rod = rb_length_of(USUAL_ROD);
	hub = rb_value_reading(w->values, RB_OPTION_HUB, w->rod, 0);
	cut = read_cut(w);
	if (!rb_findings_allow_result(rb_values_findings(w->values)))
		return false;
	w->unit = unit;
	w->placed = true;
	for (int i = 0; i < 2; i++)
		w->answer.benchmark[i] =
			(struct rb_sighted_benchmark){ rb_length_none(),
						       rb_length_none() };
	w->digging = cut.nm >= 0;
	w->wanted = rb_exact_of(rb_dig_wanted_from_hub(hub, cut));
	w->answer.at = w->answer.step = rb_length_none();
	w->answer.on = "";
	w->answer.style =
		rb_asked_style(w->job->line, (struct rb_style){ unit, 2, 16, false });
	return true;
}

/* -- the line -- */

static bool read_line(struct rb_digging *w)
{
	int on = rb_given_number(w->job->line, RB_OPTION_ON, 0);

	if (!rb_drain_input_read(&w->input, w->job) ||
	    !rb_todays_hi_read(w->values, w->input.plan, &w->answer.today,
			       w->answer.benchmark))
		return false;
	w->rod = w->input.plan->rod;
	w->surface = surfaces[on];
	if (!rb_dig_knows(rb_values_findings(w->values), w->input.plan, w->surface))
		return false;
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

static bool set_up(struct rb_digging *w)
{
	const struct rb_command_line *line = w->job->line;
	rb_length within;

	w->values = &w->input.values;
	if (!(is_from_hub(line) ? read_hub : read_line)(w))
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

bool rb_dig_place(struct rb_digging *w, rb_length at)
{
	const struct rb_station *station = rb_inverts_station_at(w->input.inverts, at);

	w->answer.at = at;
	w->answer.step = station ? rb_station_step(station) : rb_length_of(0);
	if (!w->answer.step.nm)
		w->answer.step = rb_length_none();
	return rb_dig_wanted(rb_values_findings(w->values), w->input.inverts,
			     w->answer.today.hi, at, w->surface, &w->wanted);
}

void rb_dig_read(struct rb_digging *w, rb_length read)
{
	w->answer.dig = rb_dig(w->wanted, read, w->answer.within, w->digging);
}

bool rb_dig_write(struct rb_sink *sink, struct rb_digging *w)
{
	const struct rb_command_line *line = w->job->line;

	if (rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) == RB_FORMAT_JSON)
		return rb_dig_write_json(sink, &w->phrase, &w->answer);
	rb_phrase_clear(&w->phrase);
	rb_dig_words(&w->phrase, &w->answer);
	rb_dig_step(&w->phrase, &w->answer);
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

bool rb_dig_write_hi(struct rb_sink *sink, struct rb_digging *w)
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
	return rb_dig_write(sink, self) && rb_dig_write_hi(sink, self);
}

static void place_there(struct rb_digging *w)
{
	const char *text = rb_given_text(w->job->line, RB_OPTION_AT);
	rb_length at;

	if (w->placed || !text)
		return;
	at = rb_value_chainage(w->values, text, "--at");
	w->placed = rb_findings_allow_result(rb_values_findings(w->values)) &&
		    rb_dig_place(w, at);
}

static void answer_one(struct rb_digging *w)
{
	rb_length read = rb_value_reading(w->values, RB_OPTION_ROD, w->rod, 0);

	if (!w->placed || !rb_findings_allow_result(rb_values_findings(w->values)))
		return;
	rb_dig_read(w, read);
	rb_job_write(w->job, write_one, w);
}

/* -- what does not go together -- */

static bool is_hub_misused(struct rb_job *job)
{
	static const enum rb_option not_here[] = {
		RB_OPTION_AT,        RB_OPTION_ON,        RB_OPTION_HI,
		RB_OPTION_BENCHMARK, RB_OPTION_BACKSIGHT, RB_OPTION_INVERT,
		RB_OPTION_SLOPE,     RB_OPTION_LENGTH,    RB_OPTION_OUTLET
	};
	const struct rb_command_line *line = job->line;

	for (size_t i = 0; i < sizeof not_here / sizeof *not_here; i++)
		if (rb_given(line, not_here[i])) {
			rb_refuse_use(job, not_here[i],
				      "goes with a plan, and --hub stands without");
			return true;
		}
	if (!rb_given(line, RB_OPTION_HUB) || !rb_given(line, RB_OPTION_CUT) ||
	    line->files)
		rb_refuse_use(job, RB_OPTION_HUB,
			      "and --cut stand together, and without a plan");
	return job->status;
}

static bool is_line_misused(struct rb_job *job)
{
	const struct rb_command_line *line = job->line;
	bool one = rb_given(line, RB_OPTION_ROD);

	if (rb_drain_is_misused(job))
		return true;
	if (!rb_given(line, RB_OPTION_HI) && !rb_given(line, RB_OPTION_BENCHMARK))
		rb_refuse_use(job, RB_OPTION_HI,
			      "is needed, or --benchmark with --backsight: today's, "
			      "never an older one");
	else if (one && !rb_given(line, RB_OPTION_AT))
		rb_refuse_use(job, RB_OPTION_AT, "is needed beside --rod");
	else if (!one && line->files && !strcmp(line->file[0], "-"))
		rb_refuse_use(job, RB_OPTION_ROD,
			      "is needed where the plan comes from standard input");
	return job->status;
}

static bool is_misused(struct rb_job *job)
{
	return (is_from_hub(job->line) ? is_hub_misused : is_line_misused)(job);
}

enum rb_exit rb_run_dig(const struct rb_command_line *line)
{
	const char *not_done = "no answer";
	struct rb_digging w;
	struct rb_job job;

	w = (struct rb_digging){ .job = &job };
	rb_job_begin(&job, line);
	if (!job.status && !is_misused(&job) && set_up(&w)) {
		place_there(&w);
		if (rb_given(line, RB_OPTION_ROD))
			answer_one(&w);
		else if (rb_job_allows_result(&job) && rb_dig_lines(&w))
			not_done = "not every line has an answer";
	}
	return rb_job_end(&job, not_done);
}
