/* SPDX-License-Identifier: MIT */
/* Text, HTML or SVG. */
#include "cli/page.h"

#include "cli/digest.h"
#include "cli/style.h"
#include "report/html.h"
#include "report/profile_svg.h"
#include "report/text.h"
#include "report/titles.h"

/* A list of the files that were read; words of the command line are no file. */
static bool list_inputs(const struct rb_job *job, struct rb_html_paper *paper)
{
	struct rb_html_input *input;
	size_t files = 0;

	for (const struct rb_job_file *f = job->first; f; f = f->next)
		files += f->input.name != NULL;
	input = rb_arena_take(job->arena, files + 1, sizeof *input);
	for (const struct rb_job_file *f = job->first; input && f; f = f->next) {
		char *digest;

		if (!f->input.name)
			continue;
		digest = rb_arena_take(job->arena, 1, RB_DIGEST_TEXT);
		if (!digest)
			return false;
		rb_digest(digest, f->input.bytes, f->input.length);
		input[paper->inputs++] =
			(struct rb_html_input){ rb_title_file(f->input.name), digest };
	}
	paper->input = input;
	return input;
}

static bool write_html(struct rb_sink *sink, const struct rb_job *job,
		       const struct rb_page *page, const struct rb_page_extras *extras)
{
	struct rb_html_paper paper = { .heading = extras->heading ? extras->heading
								  : "rodbook",
				       .sign = extras->sign };

	if (extras->picture) {
		paper.picture = extras->picture(job->arena, extras->result);
		if (!paper.picture)
			return false;
	}
	return list_inputs(job, &paper) && rb_page_write_html(sink, page, &paper);
}

static bool write_svg(struct rb_sink *sink, const struct rb_job *job,
		      const struct rb_page_extras *extras)
{
	const struct rb_profile *picture = extras->picture(job->arena, extras->result);

	return picture && rb_profile_write_svg(sink, picture);
}

bool rb_write_page(struct rb_sink *sink, const struct rb_job *job,
		   const struct rb_page *page, const struct rb_page_extras *extras)
{
	int format = rb_given_number(job->line, RB_OPTION_FORMAT, RB_FORMAT_TEXT);

	if (format == RB_FORMAT_SVG && extras->picture)
		return write_svg(sink, job, extras);
	if (!page)
		return false;
	return format == RB_FORMAT_HTML
		       ? write_html(sink, job, page, extras)
		       : rb_page_write_text(sink, page, rb_result_style(job->line));
}
