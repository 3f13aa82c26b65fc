/* SPDX-License-Identifier: MIT */
/* rodbook fall: fall and slope along a book. */
#include <unistd.h>

#include "cli/asked_minimum.h"
#include "cli/page.h"
#include "cli/refusal.h"
#include "cli/style.h"
#include "cli/used_book.h"
#include "report/fall_json.h"
#include "report/fall_page.h"

/* What the writers are handed. */
struct result {
	struct rb_job *job;
	struct rb_fall_result fall;
};

static bool write_result(struct rb_sink *sink, void *self)
{
	const struct result *result = self;
	const struct rb_command_line *line = result->job->line;
	const struct rb_page_extras extras = { .heading = "Fall", .sign = true };
	const struct rb_findings *const *findings;
	size_t files;

	if (rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) == RB_FORMAT_JSON) {
		findings = rb_job_findings(result->job, &files);
		return findings &&
		       rb_fall_write_json(sink, &result->fall, findings, files);
	}
	return rb_write_page(sink, result->job,
			     rb_fall_page(result->job->arena, &result->fall,
					  rb_given(line, RB_OPTION_STEPS)),
			     &extras);
}

/* Two points, or the points along the chainage; they cannot be mixed up. */
static bool is_misused(struct rb_job *job)
{
	const struct rb_command_line *line = job->line;
	bool two = rb_given(line, RB_OPTION_FROM);

	if (two != rb_given(line, RB_OPTION_TO))
		rb_refuse_use(job, two ? RB_OPTION_TO : RB_OPTION_FROM,
			      "is missing: a leg has two ends");
	else if (!two && rb_given(line, RB_OPTION_LENGTH))
		rb_refuse_use(job, RB_OPTION_LENGTH, "goes with --from and --to");
	else if (two && rb_given(line, RB_OPTION_OUTLET))
		rb_refuse_use(job, RB_OPTION_OUTLET,
			      "goes with the points along the chainage: water flows from "
			      "--from to --to");
	return job->status || rb_minimum_is_misused(job, false);
}

static bool take_options(struct rb_values *values, struct rb_fall_options *options)
{
	static const enum rb_flow_to ends[] = { RB_TO_FIRST, RB_TO_LAST };
	const struct rb_command_line *line = values->job->line;

	options->from = rb_given_text(line, RB_OPTION_FROM);
	options->to = rb_given_text(line, RB_OPTION_TO);
	options->length = rb_value_length(values, RB_OPTION_LENGTH, RB_OF_RUN, 0);
	options->outlet = rb_given(line, RB_OPTION_OUTLET)
				  ? ends[rb_given_number(line, RB_OPTION_OUTLET, 0)]
				  : RB_TO_LOWER_END;
	return rb_findings_allow_result(rb_values_findings(values));
}

static void fall(struct rb_job *job)
{
	struct rb_used_book book;
	struct rb_values values;
	struct rb_asked_minimum asked;
	struct rb_fall_options options = { .from = NULL };
	struct result result = { .job = job };

	if (!rb_used_book_read(job, job->line->file[0], &book) ||
	    !rb_values_begin(&values, job, book.spots->book->unit) ||
	    !rb_ask_minimum(&values, NULL, NULL, &asked) ||
	    !take_options(&values, &options))
		return;
	options.minimum = asked.minimum.slope;
	result.fall = (struct rb_fall_result){
		.fall = rb_fall(job->arena, &book.file->findings, book.spots, &options),
		.spots = book.spots,
		.minimum = asked.minimum,
		.size = asked.size,
		.style = rb_asked_style(job->line, rb_book_style(book.spots->book)),
		.decimals = rb_given_number(job->line, RB_OPTION_DECIMALS, -1),
	};
	if (result.fall.fall)
		rb_job_write(job, write_result, &result);
}

enum rb_exit rb_run_fall(const struct rb_command_line *line)
{
	struct rb_job job;

	rb_job_begin(&job, line);
	if (!job.status && !is_misused(&job))
		fall(&job);
	return rb_job_end(&job, "not worked out");
}
