/* SPDX-License-Identifier: MIT */
/* rodbook peg: a two-peg test, and what the level's error does to a book. */
#include "report/peg.h"
#include "cli/page.h"
#include "cli/style.h"

/* What the writers are handed. */
struct result {
	struct rb_job *job;
	struct rb_peg_report report;
};

static bool write_result(struct rb_sink *sink, void *self)
{
	const struct result *result = self;
	const struct rb_page_extras extras = { .heading = "Two-peg test", .sign = true };

	if (rb_given_number(result->job->line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) ==
	    RB_FORMAT_JSON)
		return rb_peg_write_json(sink, &result->report);
	return rb_write_page(sink, result->job, rb_peg_page(&result->report), &extras);
}

/* The sections of a book are wanted for their lengths alone: whether they close is told
 * by reduce, not here. */
static struct rb_sections *sections_of(struct rb_job *job, struct rb_findings *findings,
				       const struct rb_reduced *reduced)
{
	const struct rb_judging judging = { .adjust = RB_NOT_ADJUSTED };
	struct rb_findings unsaid;
	struct rb_sections *sections;

	rb_findings_init(&unsaid, job->arena, findings->file);
	sections = rb_sections(job->arena, &unsaid, reduced, &judging);
	if (unsaid.out_of_memory)
		rb_findings_no_memory(findings);
	return sections;
}

/* False where there is a book and nothing to show of it. */
static bool take_book(struct rb_job *job, struct rb_peg_report *report)
{
	const char *name = rb_given_text(job->line, RB_OPTION_BOOK);
	struct rb_job_file *file = name ? rb_job_read(job, name) : NULL;
	struct rb_book *book;
	struct rb_reduced *reduced;
	struct rb_sections *sections;

	if (!file)
		return !name;
	book = rb_book_read(job->arena, &file->findings, file->input.bytes,
			    file->input.length);
	reduced = book ? rb_reduce(job->arena, &file->findings, book) : NULL;
	sections = reduced ? sections_of(job, &file->findings, reduced) : NULL;
	if (!sections || !report->peg)
		return false;
	report->effect =
		rb_peg_effect(job->arena, &file->findings, report->peg, sections);
	report->book_style = rb_asked_style(job->line, rb_book_style(book));
	report->findings[report->files++] = &file->findings;
	return report->effect != NULL;
}

/* As finely as the readings were written, and as a rod shows at least. */
static struct rb_style style_of(const struct rb_two_peg *peg)
{
	static const int least[] = { [RB_FEET] = 2,
				     [RB_INCHES] = 2,
				     [RB_FEET_INCHES] = 2,
				     [RB_METRES] = 3,
				     [RB_MILLIMETRES] = 0 };
	struct rb_style style = { peg->unit, least[peg->unit], 8, false };
	int halvings = 0; /* 1/8 in is 0.125 in: as many decimals */

	while (style.fraction < peg->fraction && style.fraction < 64)
		style.fraction *= 2;
	while (1 << halvings < peg->fraction && halvings < 6)
		halvings++;
	if (peg->decimals > style.decimals)
		style.decimals = peg->decimals;
	if (peg->unit == RB_INCHES && halvings > style.decimals)
		style.decimals = halvings;
	return style;
}

static void test(struct rb_job *job, struct rb_job_file *file)
{
	struct result result = { .job = job };
	struct rb_peg_report *report = &result.report;

	report->arena = job->arena;
	report->findings[report->files++] = &file->findings;
	report->peg = rb_two_peg_read(job->arena, &file->findings, file->input.bytes,
				      file->input.length);
	if (!take_book(job, report) || !report->peg)
		return;
	report->style = rb_asked_style(job->line, style_of(report->peg));
	report->decimals = rb_given_number(job->line, RB_OPTION_DECIMALS, -1);
	rb_job_write(job, write_result, &result);
}

enum rb_exit rb_run_peg(const struct rb_command_line *line)
{
	struct rb_job job;
	struct rb_job_file *file;

	rb_job_begin(&job, line);
	file = rb_job_read(&job, line->file[0]);
	if (file)
		test(&job, file);
	return rb_job_end(&job, "not worked out");
}
