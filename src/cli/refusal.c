/* SPDX-License-Identifier: MIT */
/* A wrong command line, said at once or kept for the end. */
#include "cli/refusal.h"

#include <string.h>
#include <unistd.h>

#include "cli/complaint.h"

static bool keep(void *self, const char *bytes, size_t length)
{
	struct rb_misuse *misuse = self;
	const char *text = rb_arena_text(misuse->job->arena, bytes, length);

	rb_phrase_text(&misuse->phrase, text ? text : "");
	misuse->phrase.out_of_memory |= !text;
	return text;
}

void rb_misuse_begin(struct rb_misuse *misuse, struct rb_job *job)
{
	*misuse = (struct rb_misuse){ .job = job,
				      .output = rb_output_stream(STDERR_FILENO) };
	if (rb_job_tells_json(job)) {
		rb_phrase_init(&misuse->phrase, job->arena);
		rb_sink_init(&misuse->sink, keep, misuse);
		return;
	}
	rb_sink_init(&misuse->sink, rb_output_write, &misuse->output);
	rb_complaint_begin(job->line->command, &misuse->sink);
}

void rb_misuse_end(struct rb_misuse *misuse)
{
	struct rb_job *job = misuse->job;
	bool as_json = rb_job_tells_json(job);

	if (!as_json)
		rb_complaint_end(job->line->command, &misuse->sink);
	rb_sink_flush(&misuse->sink);
	if (misuse->phrase.out_of_memory)
		rb_job_no_memory(job);
	else if (as_json)
		rb_job_keep(job, RB_CODE_USAGE, "command line",
			    rb_text(misuse->phrase.text), rb_nothing());
	job->refused = true;
	if (!job->status)
		job->status = RB_EXIT_INPUT;
}

void rb_refuse(struct rb_job *job, const char *words)
{
	struct rb_misuse misuse;

	rb_misuse_begin(&misuse, job);
	rb_sink_text(&misuse.sink, words);
	rb_misuse_end(&misuse);
}

void rb_refuse_use(struct rb_job *job, enum rb_option option, const char *words)
{
	struct rb_misuse misuse;

	rb_misuse_begin(&misuse, job);
	rb_complaint_of_use(option, words, &misuse.sink);
	rb_misuse_end(&misuse);
}

void rb_refuse_value(struct rb_job *job, enum rb_option option)
{
	struct rb_misuse misuse;

	rb_misuse_begin(&misuse, job);
	rb_complaint_of_value(job->line->command, option,
			      rb_given_text(job->line, option), &misuse.sink);
	rb_misuse_end(&misuse);
}

void rb_refuse_standard_input_twice(struct rb_job *job)
{
	static const enum rb_option files[] = { RB_OPTION_RULES, RB_OPTION_GROUND,
						RB_OPTION_LAID, RB_OPTION_BOOK };
	const struct rb_command_line *line = job->line;
	int times = 0;

	for (int i = 0; i < line->files; i++)
		times += !strcmp(line->file[i], "-");
	for (size_t i = 0; i < sizeof files / sizeof *files; i++)
		times += rb_given(line, files[i]) &&
			 !strcmp(rb_given_text(line, files[i]), "-");
	if (times > 1 && !job->status)
		rb_refuse(job,
			  "standard input can be read only once: - may stand for one "
			  "file");
}
