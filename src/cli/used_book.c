/* SPDX-License-Identifier: MIT */
/* A book to stake from: read, reduced, adjusted, or refused. */
#include "cli/used_book.h"

#include "cli/page.h"
#include "cli/style.h"
#include "report/reduced_json.h"
#include "report/reduced_page.h"
#include "report/reduced_profile.h"

bool rb_used_book_read(struct rb_job *job, const char *name, struct rb_used_book *book)
{
	struct rb_findings *findings;
	struct rb_book *read;
	struct rb_reduced *reduced;
	struct rb_sections *sections;
	struct rb_judging judging;

	*book = (struct rb_used_book){ .file = NULL };
	if (!name)
		return true;
	book->file = rb_job_read(job, name);
	if (!book->file)
		return false;
	findings = &book->file->findings;
	read = rb_book_read(job->arena, findings, book->file->input.bytes,
			    book->file->input.length);
	if (!read)
		return false;
	judging = rb_judging_of(read);
	reduced = rb_reduce(job->arena, findings, read);
	sections = reduced ? rb_sections(job->arena, findings, reduced, &judging) : NULL;
	if (sections && rb_findings_allow_result(findings))
		book->adjusted = rb_adjust(job->arena, findings, sections);
	if (book->adjusted)
		book->spots = rb_spots(job->arena, findings, book->adjusted);
	return book->spots;
}

/* What the writer of a refusal is handed. */
struct refusal {
	struct rb_job *job;
	const struct rb_findings *findings;
	struct rb_reduction reduction;
};

static struct rb_profile *picture_of(struct rb_arena *arena, const void *reduction)
{
	return rb_reduced_profile(arena, reduction);
}

static bool write_refusal(struct rb_sink *sink, void *self)
{
	const struct refusal *refusal = self;
	const struct rb_command_line *line = refusal->job->line;
	const struct rb_page_extras extras = { .sign = true,
					       .picture = picture_of,
					       .result = &refusal->reduction };
	struct rb_page *page;

	if (rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) == RB_FORMAT_JSON)
		return rb_reduced_write_json(sink, &refusal->reduction,
					     refusal->findings);
	page = rb_reduced_page(refusal->job->arena, &refusal->reduction);
	if (!page)
		return false;
	rb_page_add(
		page, RB_VERDICT,
		"NOTHING IS STAKED FROM THIS BOOK, because it does not close. Find the "
		"mistake and level it again; --use-anyway stakes from it all the same, "
		"and says so.",
		NULL);
	return rb_write_page(sink, refusal->job, page, &extras);
}

void rb_used_book_refuse(struct rb_job *job, const struct rb_used_book *book)
{
	struct refusal refusal = { .job = job, .findings = &book->file->findings };

	if (rb_given_number(job->line, RB_OPTION_FORMAT, RB_FORMAT_TEXT) == RB_FORMAT_CSV)
		return;
	refusal.reduction = rb_asked_reduction(job->line, book->spots->book);
	refusal.reduction.adjusted = book->adjusted;
	refusal.reduction.suspects =
		rb_suspects(job->arena, &book->file->findings, book->adjusted->sections);
	rb_job_write(job, write_refusal, &refusal);
}
