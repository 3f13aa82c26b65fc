/* SPDX-License-Identifier: MIT */
/* rodbook reduce: elevations, closure and adjustment of a book. */
#include <string.h>
#include <unistd.h>

#include "cli/job.h"
#include "cli/page.h"
#include "cli/refusal.h"
#include "cli/style.h"
#include "level/suspects.h"
#include "report/reduced_csv.h"
#include "report/reduced_json.h"
#include "report/reduced_page.h"
#include "report/reduced_profile.h"
#include "report/reduced_steps.h"
#include "rodbook/reduce.h"

/* What the writers are handed. */
struct result {
	struct rb_job *job;
	const struct rb_findings *findings;
	struct rb_reduction reduction;
};

/* What the book says about judging and adjusting, unless the command line says otherwise.
 * False where --tolerance is none. */
static bool judge(const struct rb_command_line *line, const struct rb_book *book,
		  struct rb_judging *judging)
{
	const char *tolerance = rb_given_text(line, RB_OPTION_TOLERANCE);

	*judging = rb_judging_of(book);
	judging->adjust = (enum rb_adjust)rb_given_number(line, RB_OPTION_ADJUST,
							  (int)judging->adjust);
	judging->adjust_anyway = rb_given(line, RB_OPTION_ADJUST_ANYWAY);
	if (rb_given(line, RB_OPTION_ADJUST))
		judging->adjust_place = rb_in_file();
	if (tolerance)
		judging->tolerance_place = rb_in_file();
	return !tolerance || rb_tolerance_parse(tolerance, strlen(tolerance), book->unit,
						book->decimal_comma, &judging->tolerance);
}

static struct rb_profile *picture_of(struct rb_arena *arena, const void *reduction)
{
	return rb_reduced_profile(arena, reduction);
}

static bool write_page(struct rb_sink *sink, const struct result *result)
{
	const struct rb_page_extras extras = { .sign = true,
					       .picture = picture_of,
					       .result = &result->reduction };
	struct rb_page *page = rb_reduced_page(result->job->arena, &result->reduction);

	if (page && rb_given(result->job->line, RB_OPTION_STEPS))
		rb_reduced_steps(page, &result->reduction);
	return rb_write_page(sink, result->job, page, &extras);
}

static bool write_result(struct rb_sink *sink, void *self)
{
	const struct result *result = self;

	switch (rb_given_number(result->job->line, RB_OPTION_FORMAT, RB_FORMAT_TEXT)) {
	case RB_FORMAT_JSON:
		return rb_reduced_write_json(sink, &result->reduction, result->findings);
	case RB_FORMAT_CSV:
		return rb_reduced_write_csv(sink, result->job->arena, &result->reduction);
	default:
		return write_page(sink, result);
	}
}

/* Book to result, stage by stage; each hands NULL on. */
static void reduce(struct rb_job *job, struct rb_job_file *file)
{
	struct rb_findings *findings = &file->findings;
	struct rb_book *book =
		rb_book_read(job->arena, findings, file->input.bytes, file->input.length);
	struct rb_judging judging;
	struct rb_reduced *reduced;
	struct rb_sections *sections;
	struct result result = { job, findings, { .suspects = NULL } };

	if (!book)
		return;
	if (!judge(job->line, book, &judging)) {
		rb_refuse_value(job, RB_OPTION_TOLERANCE);
		return;
	}
	reduced = rb_reduce(job->arena, findings, book);
	sections = reduced ? rb_sections(job->arena, findings, reduced, &judging) : NULL;
	if (!sections || !rb_job_allows_result(job))
		return;
	result.reduction = rb_asked_reduction(job->line, book);
	result.reduction.adjusted = rb_adjust(job->arena, findings, sections);
	result.reduction.suspects = rb_suspects(job->arena, findings, sections);
	result.reduction.adjust_anyway = judging.adjust_anyway;
	result.reduction.tolerance_overridden = rb_given(job->line, RB_OPTION_TOLERANCE);
	result.reduction.adjust_overridden = rb_given(job->line, RB_OPTION_ADJUST);
	rb_job_write(job, write_result, &result);
}

enum rb_exit rb_run_reduce(const struct rb_command_line *line)
{
	struct rb_job job;
	struct rb_job_file *file;

	rb_job_begin(&job, line);
	file = rb_job_read(&job, line->file[0]);
	if (file)
		reduce(&job, file);
	return rb_job_end(&job, "not reduced");
}
