/* SPDX-License-Identifier: MIT */
/* rodbook new: a form to fill in. */
#include <errno.h>
#include <string.h>
#include <unistd.h>

#include "cli/complaint.h"
#include "cli/forms.h"
#include "cli/nearest.h"
#include "cli/stream.h"
#include "report/width.h"

static enum rb_exit no_such_form(const char *name)
{
	struct rb_nearest nearest = rb_nearest_to(name);
	struct rb_stream stream;

	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink, "rodbook new: there is no form ");
	rb_complain_word(name, &stream.sink);
	rb_sink_text(&stream.sink, "; there are");
	for (size_t i = 0; rb_form_name(i); i++) {
		rb_sink_text(&stream.sink, i ? ", " : " ");
		rb_sink_text(&stream.sink, rb_form_name(i));
		rb_nearest_try(&nearest, rb_form_name(i));
	}
	if (nearest.best) {
		rb_sink_text(&stream.sink, "; did you mean '");
		rb_sink_text(&stream.sink, nearest.best);
		rb_sink_text(&stream.sink, "'?");
	}
	rb_sink_char(&stream.sink, '\n');
	return rb_stream_close(&stream, RB_EXIT_INPUT);
}

/* Words about a file on standard error; NULL ends them. */
static enum rb_exit say(const char *file, const char *const *words, enum rb_exit status)
{
	struct rb_stream stream;

	rb_stream_open(&stream, STDERR_FILENO);
	rb_sink_text(&stream.sink, "rodbook new: ");
	rb_complain_word(file, &stream.sink);
	for (; *words; words++)
		rb_sink_shown(&stream.sink, *words, strlen(*words));
	rb_sink_char(&stream.sink, '\n');
	return rb_stream_close(&stream, status);
}

static enum rb_exit write_form(struct rb_output *output, const struct rb_blank_form *form,
			       enum rb_unit unit)
{
	const char *name = output->name ? output->name : "standard output";
	struct rb_sink sink;
	bool done;

	rb_sink_init(&sink, rb_output_write, output);
	rb_form_write(&sink, form, unit);
	done = rb_sink_flush(&sink) || output->reader_left;
	if (!rb_output_close(output) || !done)
		return rb_system_failed(name, output->error);
	if (!output->name || !strcmp(output->name, "-"))
		return RB_EXIT_HOLDS;
	return say(name,
		   (const char *[]){ " is written; fill it in, then: rodbook ",
				     rb_form_command(form), *name == '-' ? " -- " : " ",
				     name, NULL },
		   RB_EXIT_HOLDS);
}

enum rb_exit rb_run_new(const struct rb_command_line *line)
{
	const struct rb_blank_form *form = rb_form_find(line->file[0]);
	const char *name = line->files > 1 ? line->file[1] : NULL;
	enum rb_unit unit = rb_given_unit(line, RB_FEET);
	struct rb_output output;

	if (!form)
		return no_such_form(line->file[0]);
	if (rb_output_open(&output, name, RB_NEVER_OVER))
		return write_form(&output, form, unit);
	if (output.error == EEXIST)
		return say(
			name,
			(const char *[]){ " is there already and is left alone", NULL },
			RB_EXIT_INPUT);
	return rb_system_failed(name, output.error);
}
