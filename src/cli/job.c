/* SPDX-License-Identifier: MIT */
/* Files in, a result out, findings and a verdict behind it. */
#include "cli/job.h"

#include <errno.h>
#include <string.h>
#include <unistd.h>

#include "cli/complaint.h"
#include "cli/refusal.h"
#include "cli/stream.h"
#include "report/message_json.h"
#include "report/message_text.h"

void rb_job_begin(struct rb_job *job, const struct rb_command_line *line)
{
	*job = (struct rb_job){ .line = line, .arena = rb_arena_new(NULL) };
	job->last = &job->first;
	if (!job->arena)
		rb_job_no_memory(job);
	rb_refuse_standard_input_twice(job);
}

bool rb_job_tells_json(const struct rb_job *job)
{
	return rb_given_number(job->line, RB_OPTION_MESSAGES, RB_MESSAGES_TEXT) ==
	       RB_MESSAGES_JSON;
}

void rb_job_no_memory(struct rb_job *job)
{
	job->status = RB_EXIT_SYSTEM;
	if (!job->no_memory)
		rb_system_failed("out of memory", ENOMEM);
	job->no_memory = true;
}

static struct rb_job_file *new_file(struct rb_job *job)
{
	struct rb_job_file *file =
		job->arena ? rb_arena_take_clear(job->arena, 1, sizeof *file) : NULL;

	if (!file)
		rb_job_no_memory(job);
	return file;
}

static void keep(struct rb_job *job, struct rb_job_file *file, const char *name)
{
	rb_findings_init(&file->findings, job->arena, name);
	*job->last = file;
	job->last = &file->next;
}

bool rb_job_keep(struct rb_job *job, enum rb_code code, const char *name,
		 struct rb_argument first, struct rb_argument second)
{
	struct rb_job_file *file = rb_job_tells_json(job) ? new_file(job) : NULL;

	if (file) {
		keep(job, file, name);
		rb_findings_add(&file->findings, code, rb_in_file(), first, second);
	}
	return rb_job_tells_json(job);
}

void rb_job_failed(struct rb_job *job, const char *name, int error)
{
	const char *what = name ? name : "standard output";

	if (error == ENOMEM ||
	    !rb_job_keep(job, RB_CODE_SYSTEM_FAILED, what, rb_text(what),
			 rb_text(rb_system_reason(error))))
		rb_system_failed(what, error);
	job->no_memory |= error == ENOMEM;
	job->status = RB_EXIT_SYSTEM;
}

/* -- reading --------------------------------------------------------------------- */

static void say_same_file(struct rb_job *job, const char *name)
{
	struct rb_stream stream;

	job->status = RB_EXIT_INPUT;
	if (rb_job_keep(job, RB_CODE_OUTPUT_IS_INPUT, name, rb_text(name), rb_nothing()))
		return;
	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink, "rodbook: ");
	rb_complain_word(name, &stream.sink);
	rb_sink_text(&stream.sink, " is read here: the result must go to another file\n");
	rb_stream_close(&stream, RB_EXIT_INPUT);
}

struct rb_job_file *rb_job_words(struct rb_job *job)
{
	struct rb_job_file *file = job->status ? NULL : new_file(job);

	if (file)
		keep(job, file, "command line");
	return file;
}

const struct rb_findings *const *rb_job_findings(const struct rb_job *job, size_t *files)
{
	const struct rb_findings **list;

	*files = 0;
	for (const struct rb_job_file *f = job->first; f; f = f->next)
		++*files;
	list = rb_arena_take(job->arena, *files + 1, sizeof *list);
	*files = 0;
	for (const struct rb_job_file *f = job->first; list && f; f = f->next)
		list[(*files)++] = &f->findings;
	return list;
}

struct rb_job_file *rb_job_read(struct rb_job *job, const char *name)
{
	const char *output = rb_given_text(job->line, RB_OPTION_OUTPUT);
	struct rb_job_file *file;

	if (job->status)
		return NULL;
	file = new_file(job);
	if (!file)
		return NULL;
	if (!rb_input_read(&file->input, name)) {
		rb_job_failed(job, name, errno);
		return NULL;
	}
	keep(job, file, name);
	if (!rb_output_is_input(output, &file->input.about))
		return file;
	say_same_file(job, name);
	return NULL;
}

bool rb_job_keep_from(struct rb_job *job, const char *target,
		      const struct rb_job_file *file)
{
	if (!target || !rb_output_is_input(target, &file->input.about))
		return true;
	say_same_file(job, file->input.name);
	return false;
}

/* -- the status ------------------------------------------------------------------ */

static size_t found(const struct rb_job *job, enum rb_severity severity)
{
	size_t count = 0;

	for (const struct rb_job_file *f = job->first; f; f = f->next)
		count += f->findings.of_severity[severity];
	return count;
}

static bool ran_out(const struct rb_job *job)
{
	for (const struct rb_job_file *f = job->first; f; f = f->next)
		if (f->findings.out_of_memory)
			return true;
	return false;
}

static bool is_strict(const struct rb_job *job)
{
	return rb_given(job->line, RB_OPTION_STRICT);
}

static enum rb_exit status_of(const struct rb_job *job)
{
	if (job->status)
		return job->status;
	if (ran_out(job))
		return RB_EXIT_SYSTEM;
	if (found(job, RB_ERROR))
		return RB_EXIT_INPUT;
	if (found(job, RB_FAILED) || (is_strict(job) && found(job, RB_WARNING)))
		return RB_EXIT_FAILS;
	return RB_EXIT_HOLDS;
}

bool rb_job_allows_result(const struct rb_job *job)
{
	enum rb_exit status = status_of(job);

	return status == RB_EXIT_HOLDS || status == RB_EXIT_FAILS;
}

/* -- writing --------------------------------------------------------------------- */

static void write_sink(struct rb_job *job, struct rb_output *output,
		       rb_job_writer *writer, void *self)
{
	struct rb_sink sink;

	rb_sink_init(&sink, rb_output_write, output);
	if (!writer(&sink, self) || ran_out(job)) {
		rb_output_abandon(output);
		rb_job_no_memory(job);
		return;
	}
	rb_sink_flush(&sink);
	if (!rb_output_close(output))
		rb_job_failed(job, output->name, output->error);
}

static bool open_output(struct rb_job *job, struct rb_output *output, const char *name)
{
	if (!rb_job_allows_result(job))
		return false;
	if (!rb_output_open(output, name, RB_REPLACE)) {
		rb_job_failed(job, name, output->error);
		return false;
	}
	return true;
}

void rb_job_write(struct rb_job *job, rb_job_writer *writer, void *self)
{
	struct rb_output output;

	if (open_output(job, &output, rb_given_text(job->line, RB_OPTION_OUTPUT)))
		write_sink(job, &output, writer, self);
}

void rb_job_add_to(struct rb_job *job, const char *name, const struct rb_job_file *before,
		   rb_job_writer *writer, void *self)
{
	struct rb_output output;

	if (!open_output(job, &output, name))
		return;
	rb_output_guard(&output, before ? &before->input.about : NULL);
	write_sink(job, &output, writer, self);
}

/* The list without what --quiet leaves out. */
static struct rb_findings kept(const struct rb_job *job, const struct rb_findings *all)
{
	struct rb_findings some = *all;

	if (!rb_given(job->line, RB_OPTION_QUIET))
		return some;
	some.count = 0;
	some.item = rb_arena_take(job->arena, all->count + 1, sizeof *some.item);
	some.out_of_memory |= !some.item;
	for (size_t i = 0; some.item && i < all->count; i++)
		if (rb_code_severity(all->item[i]->code) >= RB_FAILED)
			some.item[some.count++] = all->item[i];
	some.of_severity[RB_NOTE] = 0;
	if (!is_strict(job))
		some.of_severity[RB_WARNING] = 0;
	return some;
}

/* The last words about a file; NULL where the counts of its findings say all. */
static const char *outcome_of(const struct rb_job *job,
			      const struct rb_findings *findings, const char *not_done)
{
	if (!rb_findings_allow_result(findings))
		return not_done;
	if (is_strict(job) && findings->of_severity[RB_WARNING])
		return "with --strict a warning is a failed check";
	return NULL;
}

static struct rb_text_style style_of(const struct rb_job *job)
{
	int wish = rb_given_number(job->line, RB_OPTION_COLOR, RB_COLOR_AUTO);

	return (struct rb_text_style){
		RB_TEXT_COLUMNS, rb_stream_color(STDERR_FILENO, (enum rb_color)wish)
	};
}

static bool write_messages_text(const struct rb_job *job, struct rb_sink *sink,
				const char *not_done)
{
	struct rb_text_style style = style_of(job);

	for (const struct rb_job_file *f = job->first; f; f = f->next) {
		struct rb_findings findings = kept(job, &f->findings);

		if (f->told)
			continue;
		if (!rb_messages_write_text(sink, &findings, RB_NOTE, style))
			return false;
		rb_messages_write_verdict(sink, &findings,
					  outcome_of(job, &findings, not_done), style);
	}
	return true;
}

static bool write_messages_json(const struct rb_job *job, struct rb_sink *sink)
{
	struct rb_json json;
	size_t files;
	const struct rb_findings *const *list;
	bool worded;

	for (struct rb_job_file *f = job->first; f; f = f->next)
		f->findings = kept(job, &f->findings);
	list = rb_job_findings(job, &files);
	if (!list || ran_out(job))
		return false;
	rb_json_init(&json, sink);
	rb_json_head(&json);
	worded = rb_messages_write_json(&json, list, files);
	rb_json_end(&json);
	return worded;
}

/* Where memory ran out nothing is told but that: what was found may lack its words. */
static void tell(struct rb_job *job, const char *not_done)
{
	struct rb_stream stream;

	if (job->no_memory || (job->refused && !rb_job_tells_json(job)))
		return;
	rb_stream_open(&stream, STDERR_FILENO);
	if (!ran_out(job) &&
	    (rb_job_tells_json(job) ? write_messages_json(job, &stream.sink)
				    : write_messages_text(job, &stream.sink, not_done)))
		rb_stream_close(&stream, job->status);
	else
		rb_job_no_memory(job);
}

bool rb_job_say(const struct rb_job *job, const struct rb_findings *findings)
{
	bool quiet = rb_given(job->line, RB_OPTION_QUIET);
	struct rb_stream stream;

	rb_stream_open(&stream, STDERR_FILENO);
	if (!rb_messages_write_text(&stream.sink, findings, quiet ? RB_FAILED : RB_NOTE,
				    style_of(job)))
		return false; /* half a message is not sent off */
	rb_stream_close(&stream, RB_EXIT_HOLDS);
	return true;
}

void rb_job_tell(struct rb_job *job)
{
	if (rb_job_tells_json(job))
		return;
	tell(job, NULL);
	for (struct rb_job_file *f = job->first; f; f = f->next)
		f->told = true;
}

enum rb_exit rb_job_end(struct rb_job *job, const char *not_done)
{
	enum rb_exit status;

	tell(job, not_done);
	status = status_of(job);
	for (struct rb_job_file *f = job->first; f; f = f->next)
		rb_input_free(&f->input);
	rb_arena_free(job->arena);
	return status;
}
