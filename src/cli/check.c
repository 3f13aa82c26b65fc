/* SPDX-License-Identifier: MIT */
/* rodbook check: books reduced by hand. */
#include "cli/page.h"
#include "cli/style.h"
#include "report/checked.h"

/* What the writers are handed. */
struct result {
	struct rb_job *job;
	struct rb_checked checked;
};

static bool write_page(struct rb_sink *sink, const struct result *result)
{
	bool marks = rb_given(result->job->line, RB_OPTION_MARKS);
	const struct rb_page_extras extras = { .heading = marks ? "Mark sheet"
								: "Books checked",
					       .sign = true };

	return rb_write_page(sink, result->job,
			     marks ? rb_marks_page(&result->checked)
				   : rb_checked_page(&result->checked),
			     &extras);
}

static bool write_result(struct rb_sink *sink, void *self)
{
	const struct result *result = self;
	const struct rb_command_line *line = result->job->line;
	bool marks = rb_given(line, RB_OPTION_MARKS);

	switch (rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT)) {
	case RB_FORMAT_JSON:
		return marks ? rb_marks_write_json(sink, &result->checked)
			     : rb_checked_write_json(sink, &result->checked);
	case RB_FORMAT_CSV:
		return marks ? rb_marks_write_csv(sink, &result->checked)
			     : rb_checked_write_csv(sink, &result->checked);
	default:
		return write_page(sink, result);
	}
}

/* One book; false where there is nothing to show of it. */
static bool check(struct rb_job *job, const char *name, struct rb_checked_book *out)
{
	struct rb_job_file *file = rb_job_read(job, name);
	struct rb_findings *findings = file ? &file->findings : NULL;
	struct rb_book *book = NULL;
	struct rb_reduced *reduced;

	if (file)
		book = rb_book_read(job->arena, findings, file->input.bytes,
				    file->input.length);
	if (!book)
		return false;
	reduced = rb_reduce(job->arena, findings, book);
	out->check = reduced ? rb_hand_check(job->arena, findings, reduced) : NULL;
	out->findings = findings;
	out->style = rb_asked_style(job->line, rb_book_hand_style(book));
	return out->check != NULL;
}

/* Every book is read, even behind one that is at fault: all faults are told at once. */
static void check_all(struct rb_job *job)
{
	const struct rb_command_line *line = job->line;
	struct rb_checked_book *book;
	struct result result = { .job = job };
	bool all = true;

	if (!job->arena)
		return;
	book = rb_arena_take(job->arena, (size_t)line->files, sizeof *book);
	if (!book) {
		rb_job_no_memory(job);
		return;
	}
	for (int i = 0; i < line->files; i++)
		all &= check(job, line->file[i], &book[i]);
	if (!all)
		return;
	result.checked = (struct rb_checked){
		.arena = job->arena,
		.book = book,
		.books = (size_t)line->files,
		.decimals = rb_given_number(line, RB_OPTION_DECIMALS, -1),
		.answers = rb_given(line, RB_OPTION_ANSWERS),
		.steps = rb_given(line, RB_OPTION_STEPS),
	};
	rb_job_write(job, write_result, &result);
}

enum rb_exit rb_run_check(const struct rb_command_line *line)
{
	struct rb_job job;

	rb_job_begin(&job, line);
	check_all(&job);
	return rb_job_end(&job, "not checked");
}
