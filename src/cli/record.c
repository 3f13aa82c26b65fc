/* SPDX-License-Identifier: MIT */
/* rodbook record: the site record, and adding to it. */
#include "record/record.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <unistd.h>

#include "cli/complaint.h"
#include "cli/digest.h"
#include "cli/interrupted.h"
#include "cli/page.h"
#include "cli/refusal.h"
#include "cli/stream.h"
#include "cli/style.h"
#include "cli/values.h"
#include "record/record_csv.h"
#include "report/titles.h"

/* The record that is made, and the one that it is added to. */
struct work {
	struct rb_job *job;
	struct rb_ledger *ledger;
	struct rb_site_record record;
	const char *append;         /* NULL: there is none */
	struct rb_job_file *before; /* NULL: it is a new file */
};

/* -- one at a time --------------------------------------------------------------- */

/*
 * Two programs that add to one record at a time would each write what the other has not
 * seen.  The record itself is replaced, so its folder is what is locked; the lock goes
 * with the process, however that ends.  Where the system cannot lock, the one that comes
 * second finds the record changed, and says so.  -1: not locked.
 */
static int hold_folder(const char *name)
{
	char *path = rb_output_target(name);
	const char *slash = path ? strrchr(path, '/') : NULL;
	int fd = -1;

	if (slash)
		path[slash - path + 1] = '\0';
	while (path && rb_interrupted(fd = open(slash ? path : ".",
						O_RDONLY | O_DIRECTORY | O_CLOEXEC)))
		continue;
	free(path);
	while (fd >= 0 && rb_interrupted(flock(fd, LOCK_EX)))
		continue;
	return fd;
}

/* -- results --------------------------------------------------------------------- */

static bool write_page(struct rb_sink *sink, const struct work *work)
{
	const struct rb_page_extras extras = { .sign = true };

	return rb_write_page(sink, work->job, rb_record_page(&work->record), &extras);
}

static bool write_result(struct rb_sink *sink, void *self)
{
	const struct work *work = self;

	switch (rb_given_number(work->job->line, RB_OPTION_FORMAT, RB_FORMAT_TEXT)) {
	case RB_FORMAT_JSON:
		return rb_record_write_json(sink, &work->record);
	case RB_FORMAT_CSV:
		return rb_record_write_csv(sink, work->ledger);
	default:
		return write_page(sink, work);
	}
}

/* Every old byte, and the new lines behind them. */
static bool write_record(struct rb_sink *sink, void *self)
{
	const struct work *work = self;
	const struct rb_input *old = work->before ? &work->before->input : NULL;

	if (!old || !work->ledger->has_record)
		return rb_record_write_csv(sink, work->ledger);
	rb_sink_bytes(sink, old->bytes, old->length);
	if (old->bytes[old->length - 1] != '\n')
		rb_sink_char(sink, '\n');
	return rb_record_write_lines(sink, work->ledger);
}

/* -- books ----------------------------------------------------------------------- */

static bool reduce(struct work *work, struct rb_job_file *file,
		   struct rb_reduction *reduction)
{
	struct rb_arena *arena = work->job->arena;
	struct rb_findings *findings = &file->findings;
	struct rb_book *book =
		rb_book_read(arena, findings, file->input.bytes, file->input.length);
	struct rb_reduced *reduced = book ? rb_reduce(arena, findings, book) : NULL;
	struct rb_sections *sections = NULL;
	struct rb_judging judging;

	if (!reduced)
		return false;
	judging = rb_judging_of(book);
	sections = rb_sections(arena, findings, reduced, &judging);
	if (!sections)
		return false;
	*reduction = rb_asked_reduction(work->job->line, book);
	reduction->adjusted = rb_adjust(arena, findings, sections);
	return reduction->adjusted && rb_findings_allow_result(findings);
}

/* Read, reduce and enter a book; false after an error in it. */
static bool take(struct work *work, const char *name)
{
	struct rb_job_file *file = rb_job_read(work->job, name);
	struct rb_reduction reduction;
	char digest[RB_DIGEST_TEXT];

	if (!file || !rb_job_keep_from(work->job, work->append, file) ||
	    !reduce(work, file, &reduction))
		return false;
	rb_digest(digest, file->input.bytes, file->input.length);
	return rb_ledger_add(work->ledger, &file->findings, &reduction, digest);
}

/* The record to add to; it need not be there yet. */
static bool read_before(struct work *work)
{
	struct stat about;

	if (!work->append)
		return true;
	if (stat(work->append, &about)) {
		work->ledger->file = rb_title_file(work->append);
		if (errno != ENOENT)
			rb_job_failed(work->job, work->append, errno);
		return errno == ENOENT;
	}
	work->before = rb_job_read(work->job, work->append);
	return work->before &&
	       rb_ledger_read(work->ledger, &work->before->findings,
			      work->before->input.bytes, work->before->input.length);
}

/* Every book is read, even behind one that is at fault: all faults are told at once. */
static bool take_all(struct work *work)
{
	const struct rb_command_line *line = work->job->line;
	bool all = read_before(work);

	for (int i = 0; i < line->files; i++)
		all &= take(work, line->file[i]);
	return all;
}

static void record(struct work *work)
{
	struct rb_job *job = work->job;

	work->ledger = job->arena ? rb_ledger_new(job->arena) : NULL;
	if (job->arena && !work->ledger)
		rb_job_no_memory(job);
	if (!work->ledger || !take_all(work))
		return;
	work->record.ledger = work->ledger;
	work->record.several = rb_several(work->ledger);
	work->record.findings = rb_job_findings(job, &work->record.files);
	if (!work->record.several || !work->record.findings) {
		rb_job_no_memory(job);
		return;
	}
	if (work->append) /* first: the page says what the record holds */
		rb_job_add_to(job, work->append, work->before, write_record, work);
	rb_job_write(job, write_result, work);
}

/* A stream cannot be added to, and the result must not lie over the record. */
static bool accepts(struct rb_job *job, const char *append)
{
	const char *output = rb_given_text(job->line, RB_OPTION_OUTPUT);

	if (append && (!*append || !strcmp(append, "-"))) {
		rb_refuse_use(job, RB_OPTION_APPEND, "needs the name of a file");
		return false;
	}
	if (append && output && !strcmp(append, output)) {
		rb_refuse_use(job, RB_OPTION_OUTPUT,
			      "may not be the record that --append names");
		return false;
	}
	return true;
}

enum rb_exit rb_run_record(const struct rb_command_line *line)
{
	struct rb_job job;
	struct work work = { .job = &job,
			     .append = rb_given_text(line, RB_OPTION_APPEND) };
	int lock = -1;

	rb_job_begin(&job, line);
	if (accepts(&job, work.append)) {
		if (work.append)
			lock = hold_folder(work.append);
		record(&work);
	}
	if (lock >= 0)
		close(lock);
	return rb_job_end(&job, "not recorded");
}
