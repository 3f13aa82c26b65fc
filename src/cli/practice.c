/* SPDX-License-Identifier: MIT */
/* rodbook practice: sheets of problems from a seed, and their keys. */
#include <time.h>
#include <unistd.h>

#include "cli/page.h"
#include "cli/refusal.h"
#include "cli/stream.h"
#include "report/practice_sheet.h"

#define PROBLEMS 10      /* on a sheet, unless asked otherwise; of loops one */
#define SEEDS    1000000 /* of which one is picked: short enough to be typed again */

/* -- what does not go together -- */

static bool is_loop(const struct rb_command_line *line)
{
	return rb_given_number(line, RB_OPTION_KIND, -1) == RB_PRACTICE_LOOP;
}

static int count_of(const struct rb_command_line *line)
{
	return rb_given_number(line, RB_OPTION_COUNT, is_loop(line) ? 1 : PROBLEMS);
}

static bool loops_in_one_csv(const struct rb_command_line *line)
{
	return is_loop(line) && count_of(line) > 1 &&
	       rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) == RB_FORMAT_CSV;
}

static bool no_kind(const struct rb_command_line *line)
{
	return !rb_given(line, RB_OPTION_KIND);
}

static bool no_loop(const struct rb_command_line *line)
{
	return !is_loop(line);
}

/* The first that is so is told. */
static const struct {
	enum rb_option option;
	bool always; /* also where the option is not given */
	bool (*wrong)(const struct rb_command_line *line);
	const char *words;
} misuses[] = {
	{ RB_OPTION_KIND, true, no_kind, "is missing: convert, loop or fall" },
	{ RB_OPTION_PLANT, false, no_loop, "goes with --kind loop" },
	{ RB_OPTION_SETUPS, false, no_loop, "goes with --kind loop" },
	{ RB_OPTION_INVERTED, false, no_loop, "goes with --kind loop" },
	{ RB_OPTION_COUNT, false, loops_in_one_csv,
	  "is 1 for a loop as CSV: that is one book" },
};

static bool is_misused(struct rb_job *job)
{
	for (size_t i = 0; i < sizeof misuses / sizeof *misuses; i++) {
		if (!misuses[i].always && !rb_given(job->line, misuses[i].option))
			continue;
		if (!misuses[i].wrong(job->line))
			continue;
		rb_refuse_use(job, misuses[i].option, misuses[i].words);
		return true;
	}
	return false;
}

/* -- the sheet -- */

static uint64_t pick_seed(void)
{
	struct timespec now = { 0, 0 };

	clock_gettime(CLOCK_REALTIME, &now);
	return ((uint64_t)now.tv_sec * 1000000 + (uint64_t)now.tv_nsec / 1000) % SEEDS;
}

static struct rb_practice_options asked(const struct rb_command_line *line)
{
	return (struct rb_practice_options){
		.kind = (enum rb_practice_kind)rb_given_number(line, RB_OPTION_KIND, 0),
		.seed = rb_given(line, RB_OPTION_SEED)
				? (uint64_t)line->option[RB_OPTION_SEED].number
				: pick_seed(),
		.unit = rb_given_unit(line, RB_FEET),
		.fraction = 8 << rb_given_number(line, RB_OPTION_FRACTION, 1),
		.setups = rb_given_number(line, RB_OPTION_SETUPS, 0),
		.inverted = rb_given(line, RB_OPTION_INVERTED),
		.plant = rb_given(line, RB_OPTION_PLANT),
	};
}

/* What the writer is handed. */
struct result {
	const struct rb_job *job;
	struct rb_practice_sheet sheet;
};

static bool write_result(struct rb_sink *sink, void *self)
{
	const struct result *r = self;
	const struct rb_page_extras extras = { .heading = "Practice" };

	switch (rb_given_number(r->job->line, RB_OPTION_FORMAT, RB_FORMAT_TEXT)) {
	case RB_FORMAT_JSON:
		return rb_practice_write_json(sink, &r->sheet);
	case RB_FORMAT_CSV:
		return rb_practice_write_csv(sink, &r->sheet);
	default:
		return rb_write_page(sink, r->job, rb_practice_page(&r->sheet), &extras);
	}
}

/* A sheet of CSV has no place for the seed that was picked. */
static void say_seed(struct rb_job *job, uint64_t seed)
{
	const struct rb_command_line *line = job->line;
	struct rb_stream stream;

	if (rb_given(line, RB_OPTION_SEED) || rb_given(line, RB_OPTION_QUIET) ||
	    rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) != RB_FORMAT_CSV ||
	    rb_job_keep(job, RB_CODE_SEED_PICKED, NULL, rb_number((int64_t)seed),
			rb_nothing()))
		return;
	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink, "rodbook practice: --seed ");
	rb_sink_number(&stream.sink, (int64_t)seed);
	rb_sink_text(&stream.sink, " gives this sheet again\n");
	rb_stream_close(&stream, RB_EXIT_HOLDS);
}

static const struct rb_problem *const *make_problems(
	struct rb_arena *arena, const struct rb_practice_options *options, int count)
{
	const struct rb_problem **problem =
		rb_arena_take(arena, (size_t)count, sizeof *problem);

	for (int i = 0; problem && i < count; i++) {
		problem[i] = rb_practice(arena, options, i + 1);
		if (!problem[i])
			return NULL;
	}
	return problem;
}

enum rb_exit rb_run_practice(const struct rb_command_line *line)
{
	const struct rb_practice_options options = asked(line);
	struct rb_job job;
	struct result result = { &job,
				 { .options = &options,
				   .count = (size_t)count_of(line),
				   .answers = rb_given(line, RB_OPTION_ANSWERS) } };

	rb_job_begin(&job, line);
	if (job.status || is_misused(&job))
		return rb_job_end(&job, NULL);
	result.sheet.arena = job.arena;
	result.sheet.problem = make_problems(job.arena, &options, count_of(line));
	if (!result.sheet.problem)
		rb_job_no_memory(&job);
	rb_job_write(&job, write_result, &result);
	if (rb_job_allows_result(&job))
		say_seed(&job, options.seed);
	return rb_job_end(&job, NULL);
}
