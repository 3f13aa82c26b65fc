/* SPDX-License-Identifier: MIT */
/* rodbook new: a form to fill in. */
#include <errno.h>
#include <string.h>
#include <unistd.h>

#include "cli/complaint.h"
#include "cli/forms.h"
#include "cli/nearest.h"
#include "cli/refusal.h"
#include "cli/stream.h"
#include "report/width.h"

static void refuse_form(struct rb_job *job, const char *name)
{
	struct rb_nearest nearest = rb_nearest_to(name);
	struct rb_misuse misuse;
	struct rb_sink *out = &misuse.sink;

	rb_misuse_begin(&misuse, job);
	rb_sink_text(out, "there is no form ");
	rb_complain_word(name, out);
	rb_sink_text(out, "; there are");
	for (size_t i = 0; rb_form_name(i); i++) {
		rb_sink_text(out, i ? ", " : " ");
		rb_sink_text(out, rb_form_name(i));
		rb_nearest_try(&nearest, rb_form_name(i));
	}
	if (nearest.best) {
		rb_sink_text(out, "; did you mean '");
		rb_sink_text(out, nearest.best);
		rb_sink_text(out, "'?");
	}
	rb_misuse_end(&misuse);
}

/* Words about a file on standard error; NULL ends them. */
static void say(const char *file, const char *const *words)
{
	struct rb_stream stream;

	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink, "rodbook new: ");
	rb_complain_word(file, &stream.sink);
	for (; *words; words++)
		rb_sink_shown(&stream.sink, *words, strlen(*words));
	rb_sink_char(&stream.sink, '\n');
	rb_stream_close(&stream, RB_EXIT_HOLDS);
}

static void refuse_file(struct rb_job *job, const char *name)
{
	job->status = RB_EXIT_INPUT;
	if (!rb_job_keep(job, RB_CODE_FILE_IS_THERE, name, rb_text(name), rb_nothing()))
		say(name,
		    (const char *[]){ " is there already and is left alone", NULL });
}

/* How the form is read once it is filled in. */
static void say_written(struct rb_job *job, const char *name, const char *command)
{
	const char *const words[] = { command, *name == '-' ? " -- " : " ", name };
	struct rb_phrase next;

	if (rb_given(job->line, RB_OPTION_QUIET))
		return;
	rb_phrase_init(&next, job->arena);
	for (int i = 0; i < 3; i++)
		rb_phrase_text(&next, words[i]);
	if (next.out_of_memory)
		rb_job_no_memory(job);
	else if (!rb_job_keep(job, RB_CODE_FORM_WRITTEN, name, rb_text(name),
			      rb_text(next.text)))
		say(name, (const char *[]){ " is written; fill it in, then: rodbook ",
					    next.text, NULL });
}

static void write_form(struct rb_job *job, struct rb_output *output,
		       const struct rb_blank_form *form)
{
	const char *name = output->name;
	struct rb_sink sink;
	bool done;

	rb_sink_init(&sink, rb_output_write, output);
	rb_form_write(&sink, form, rb_given_unit(job->line, RB_FEET));
	done = rb_sink_flush(&sink) || output->reader_left;
	if (!rb_output_close(output) || !done)
		rb_job_failed(job, name, output->error);
	else if (name && strcmp(name, "-") != 0)
		say_written(job, name, rb_form_command(form));
}

static void write_new(struct rb_job *job)
{
	const struct rb_blank_form *form = rb_form_find(job->line->file[0]);
	const char *name = job->line->files > 1 ? job->line->file[1] : NULL;
	struct rb_output output;

	if (!form)
		refuse_form(job, job->line->file[0]);
	else if (rb_output_open(&output, name, RB_NEVER_OVER))
		write_form(job, &output, form);
	else if (output.error == EEXIST)
		refuse_file(job, name);
	else
		rb_job_failed(job, name, output.error);
}

enum rb_exit rb_run_new(const struct rb_command_line *line)
{
	struct rb_job job;

	rb_job_begin(&job, line);
	if (!job.status)
		write_new(&job);
	return rb_job_end(&job, NULL);
}
