/* SPDX-License-Identifier: MIT */
/* rodbook drain: is there enough fall, what does the crew set, is it laid right. */
#include <string.h>
#include <unistd.h>

#include "cli/asked_minimum.h"
#include "cli/drain_input.h"
#include "cli/page.h"
#include "cli/style.h"
#include "cli/used_book.h"
#include "report/drain_csv.h"
#include "report/drain_json.h"
#include "report/drain_page.h"
#include "report/drain_profile.h"

/* What the stages make, one after another, and the writers are handed. */
struct work {
	struct rb_job *job;
	struct rb_drain_input input;
	struct rb_asked_minimum asked;
	struct rb_used_book ground, laid;
	struct rb_drain_result result;
};

static bool write_json(struct rb_sink *sink, const struct work *w)
{
	size_t files;
	const struct rb_findings *const *findings = rb_job_findings(w->job, &files);

	return findings &&
	       rb_drain_write_json(sink, w->job->arena, &w->result, findings, files);
}

static struct rb_profile *picture_of(struct rb_arena *arena, const void *result)
{
	return rb_drain_profile(arena, result);
}

static bool write_result(struct rb_sink *sink, void *self)
{
	const struct work *w = self;
	const struct rb_command_line *line = w->job->line;
	const struct rb_page_extras extras = { .heading = "Drain",
					       .sign = true,
					       .picture = picture_of,
					       .result = &w->result };

	switch (rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT)) {
	case RB_FORMAT_JSON:
		return write_json(sink, w);
	case RB_FORMAT_CSV:
		rb_drain_write_csv(sink, &w->result);
		return true;
	default:
		return rb_write_page(sink, w->job,
				     rb_drain_page(w->job->arena, &w->result,
						   rb_given(line, RB_OPTION_STEPS)),
				     &extras);
	}
}

/* -- stages -- */

/* A book that does not close is written in place of the result; false where it was. */
static bool may_use(struct work *w, const struct rb_used_book *book)
{
	if (!book->spots || !book->spots->beyond ||
	    rb_given(w->job->line, RB_OPTION_USE_ANYWAY))
		return true;
	rb_used_book_refuse(w->job, book);
	return false;
}

/* Read everything before anything is judged, so that all faults are told in one go. */
static bool read_all(struct work *w)
{
	const struct rb_command_line *line = w->job->line;
	struct rb_drain_input *input = &w->input;
	struct rb_drain_result *r = &w->result;
	bool whole = rb_drain_input_read(input, w->job);

	whole &= rb_used_book_read(w->job, rb_given_text(line, RB_OPTION_GROUND),
				   &w->ground);
	whole &= rb_used_book_read(w->job, rb_given_text(line, RB_OPTION_LAID), &w->laid);
	return whole &&
	       rb_ask_minimum(&input->values, input->has_plan ? input->plan : NULL,
			      input->file, &w->asked) &&
	       rb_todays_hi_read(&input->values, input->plan, &r->today, r->benchmark);
}

/* Without a plan there is nobody to tell which of its keys are missing. */
static struct rb_cut_sheet *make_sheet(struct work *w)
{
	struct rb_findings unsaid, *findings = &w->input.file->findings;
	struct rb_cut_sheet *sheet;

	rb_findings_init(&unsaid, w->job->arena, findings->file);
	sheet = rb_cut_sheet(w->job->arena, w->input.has_plan ? findings : &unsaid,
			     w->ground.file ? &w->ground.file->findings : NULL,
			     w->input.inverts, w->ground.spots, rb_length_none());
	if (unsaid.out_of_memory)
		rb_findings_no_memory(findings);
	return sheet;
}

static void work_out(struct work *w)
{
	struct rb_drain_result *r = &w->result;
	struct rb_arena *arena = w->job->arena;
	struct rb_findings *findings = &w->input.file->findings;
	const struct rb_inverts *inverts = w->input.inverts;

	r->budget = rb_budget(arena, findings, inverts, &w->asked.minimum);
	r->sheet = make_sheet(w);
	if (rb_length_given(r->today.hi))
		r->rods = rb_grade_rods(arena, findings, inverts, r->today.hi);
	if (w->laid.spots)
		r->laid = rb_laid(arena, &w->laid.file->findings, findings, inverts,
				  w->laid.spots, &w->asked.minimum);
}

/* A name of the table, or else a file beside the plan; NULL after an error. */
static const struct rb_jurisdiction *find_jurisdiction(struct work *w)
{
	const struct rb_plan *plan = w->input.plan;
	const struct rb_jurisdiction *found = rb_jurisdiction_find(plan->jurisdiction);
	struct rb_job_file *file;
	const char *name;

	if (!*plan->jurisdiction)
		return rb_jurisdiction_unset();
	if (found)
		return found;
	if (!strpbrk(plan->jurisdiction, "./")) {
		rb_findings_add(&w->input.file->findings, RB_CODE_BAD_KEY,
				plan->jurisdiction_place, rb_text(plan->jurisdiction),
				rb_text("us osha, alberta, bc, ontario, canada federal, "
					"or a file such as county.csv"));
		return NULL;
	}
	name = rb_beside_plan(w->job, plan, plan->jurisdiction);
	file = name ? rb_job_read(w->job, name) : NULL;
	return file ? rb_jurisdiction_read(w->job->arena, &file->findings,
					   file->input.bytes, file->input.length)
		    : NULL;
}

static void caution(struct work *w)
{
	const struct rb_jurisdiction *jurisdiction = find_jurisdiction(w);

	if (jurisdiction && w->result.sheet)
		w->result.cautions =
			rb_cautions(w->job->arena, &w->input.file->findings, jurisdiction,
				    w->result.sheet, w->result.rods);
}

static void drain(struct work *w)
{
	const struct rb_command_line *line = w->job->line;
	struct rb_drain_result *r = &w->result;

	if (!read_all(w) || !may_use(w, &w->ground) || !may_use(w, &w->laid))
		return;
	r->plan = w->input.plan;
	r->has_plan = w->input.has_plan;
	r->inverts = w->input.inverts;
	r->minimum_overridden = w->asked.overridden;
	r->size = w->asked.size;
	r->style = rb_asked_style(line, rb_plan_style(r->plan));
	r->fraction = 8 << rb_given_number(line, RB_OPTION_FRACTION, 0);
	r->decimals = rb_given_number(line, RB_OPTION_DECIMALS, -1);
	work_out(w);
	caution(w);
	rb_job_write(w->job, write_result, w);
}

enum rb_exit rb_run_drain(const struct rb_command_line *line)
{
	struct rb_job job;
	struct work w = { .job = &job };

	rb_job_begin(&job, line);
	if (!job.status && !rb_drain_is_misused(&job) &&
	    !rb_minimum_is_misused(&job, line->files))
		drain(&w);
	return rb_job_end(&job, "not worked out");
}
