/* SPDX-License-Identifier: MIT */
/* rodbook convert: lengths, and arithmetic on lengths, in every notation. */
#include "cli/convert.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "cli/page.h"
#include "cli/refusal.h"
#include "cli/stream.h"
#include "cli/style.h"
#include "notes/sheet.h"
#include "report/convert_json.h"
#include "report/convert_page.h"
#include "report/inch_table.h"

#define DECIMALS_OF_TABLE 4

struct rb_conversion_style rb_asked_conversion(const struct rb_command_line *line)
{
	return (struct rb_conversion_style){
		.unit = rb_given_unit(line, RB_FEET),
		.fraction = 8 << rb_given_number(line, RB_OPTION_FRACTION, 1),
		.decimals = rb_given_number(line, RB_OPTION_DECIMALS, -1),
	};
}

/* -- what is refused -- */

static const enum rb_code codes[] = {
	[RB_EXPRESSION_EMPTY] = RB_CODE_NOT_A_READING,
	[RB_EXPRESSION_SYNTAX] = RB_CODE_EXPRESSION,
	[RB_EXPRESSION_SQUARE] = RB_CODE_LENGTH_BY_LENGTH,
	[RB_EXPRESSION_MIXED] = RB_CODE_LENGTH_AND_NUMBER,
	[RB_EXPRESSION_NUMBER] = RB_CODE_ONLY_A_NUMBER,
	[RB_EXPRESSION_DIVIDE_ZERO] = RB_CODE_DIVIDED_BY_ZERO,
	[RB_EXPRESSION_BIG] = RB_CODE_TOO_BIG,
};

/* 4'-0" / 2': a number because lengths were divided by lengths. */
static bool is_ratio_of_lengths(const struct rb_expression *e)
{
	bool divided = false;

	for (int i = 0; i < e->steps; i++)
		divided |= e->step[i].sign == '/' && e->step[i].left.is_length &&
			   e->step[i].right.is_length;
	return e->refusal == RB_EXPRESSION_NUMBER && divided;
}

static void refuse_ratio(struct rb_findings *findings, const struct rb_conversion *c,
			 struct rb_place place)
{
	char number[RB_RATIO_TEXT], words[RB_RATIO_TEXT + 8];
	const char *kept;
	bool exact = rb_ratio_write(number, c->worked.ratio, RB_FEET, 6, 0);
	int length = snprintf(words, sizeof words, "%s%s", exact ? "" : "about ", number);

	kept = rb_arena_text(findings->arena, words, (size_t)length);
	rb_findings_add(findings, RB_CODE_RATIO_OF_LENGTHS, place, rb_text(c->input),
			rb_text(kept ? kept : ""));
}

static void refuse(struct rb_findings *findings, const struct rb_conversion *c,
		   struct rb_place place)
{
	const struct rb_expression *e = &c->worked;
	size_t length = strlen(c->input);
	size_t where = e->where < length ? e->where : length;
	const struct rb_cell cell = { c->input, length };

	if (e->refusal == RB_EXPRESSION_LENGTH)
		rb_sheet_refused(findings, cell, place, &e->reading, c->style.unit);
	else if (is_ratio_of_lengths(e))
		refuse_ratio(findings, c, place);
	else
		rb_findings_add(
			findings, codes[e->refusal], place, rb_text(c->input),
			rb_text(c->input + where + strspn(c->input + where, " \t")));
}

bool rb_convert(struct rb_conversion *out, const char *input,
		const struct rb_conversion_style *style, struct rb_findings *findings,
		struct rb_place place)
{
	if (!rb_conversion_make(out, input, style)) {
		refuse(findings, out, place);
		return false;
	}
	if (rb_conversion_is_one(out) && out->reading.odd_fraction)
		rb_findings_add(findings, RB_CODE_ODD_FRACTION, place, rb_text(input),
				rb_nothing());
	if (rb_conversion_is_one(out) && out->reading.sixtyfourth)
		rb_findings_add(findings, RB_CODE_FORMULA_DECIMALS, place, rb_text(input),
				rb_rod_reading(out->worked.value, RB_FEET_INCHES));
	return true;
}

/* -- the lengths of the command line -- */

/* What the writers are handed. */
struct result {
	const struct rb_job *job;
	struct rb_conversion *conversion;
	size_t count;
};

static bool write_page(struct rb_sink *sink, const struct result *r)
{
	const struct rb_page_extras extras = { .heading = "Lengths" };
	struct rb_page *page = rb_page_new(r->job->arena);

	for (size_t i = 0; page && i < r->count; i++)
		rb_conversion_add(page, &r->conversion[i],
				  rb_given(r->job->line, RB_OPTION_STEPS));
	return rb_write_page(sink, r->job, page, &extras);
}

static void write_json(struct rb_sink *sink, const struct result *r)
{
	struct rb_json json;

	rb_json_init(&json, sink);
	rb_json_open(&json, '[');
	for (size_t i = 0; i < r->count; i++)
		rb_conversion_write_json(&json, &r->conversion[i]);
	rb_json_end(&json);
}

static void write_csv(struct rb_sink *sink, const struct result *r)
{
	struct rb_csv csv;

	rb_csv_init(&csv, sink);
	rb_conversion_write_csv_head(&csv);
	for (size_t i = 0; i < r->count; i++)
		rb_conversion_write_csv(&csv, &r->conversion[i]);
}

static bool write_result(struct rb_sink *sink, void *self)
{
	const struct result *r = self;

	switch (rb_given_number(r->job->line, RB_OPTION_FORMAT, RB_FORMAT_TEXT)) {
	case RB_FORMAT_JSON:
		write_json(sink, r);
		return true;
	case RB_FORMAT_CSV:
		write_csv(sink, r);
		return true;
	default:
		return write_page(sink, r);
	}
}

/* A list of findings of its own for argument i; NULL: no memory. */
static struct rb_findings *findings_of(struct rb_job *job, int i)
{
	struct rb_job_file *file = rb_arena_take_clear(job->arena, 1, sizeof *file);
	char name[32];
	char *kept;
	int length = snprintf(name, sizeof name, "argument %d", i + 1);

	kept = file ? rb_arena_text(job->arena, name, (size_t)length) : NULL;
	if (!kept) {
		rb_job_no_memory(job);
		return NULL;
	}
	rb_findings_init(&file->findings, job->arena, kept);
	*job->last = file;
	job->last = &file->next;
	return &file->findings;
}

static void convert_arguments(struct rb_job *job)
{
	const struct rb_command_line *line = job->line;
	const struct rb_conversion_style style = rb_asked_conversion(line);
	const struct rb_place place = rb_at(0, RB_WHOLE_ROW, NULL, "what was typed");
	struct result result = { .job = job };

	result.conversion =
		rb_arena_take(job->arena, (size_t)line->files, sizeof *result.conversion);
	if (!result.conversion)
		rb_job_no_memory(job);
	for (int i = 0; result.conversion && i < line->files; i++) {
		struct rb_findings *findings = findings_of(job, i);

		if (!findings)
			break;
		rb_convert(&result.conversion[result.count++], line->file[i], &style,
			   findings, place);
	}
	rb_job_write(job, write_result, &result);
}

/* -- the card -- */

static bool write_table(struct rb_sink *sink, void *self)
{
	const struct rb_job *job = self;
	const struct rb_page_extras extras = { .heading = "Inches and decimals" };
	int fraction = 8 << rb_given_number(job->line, RB_OPTION_TABLE, 1);
	int decimals = rb_given_number(job->line, RB_OPTION_DECIMALS, DECIMALS_OF_TABLE);
	struct rb_page *page =
		rb_inch_table_page(job->arena, fraction, decimals ? decimals : 1);

	return rb_write_page(sink, job, page, &extras);
}

/* No LENGTH, or - in its place. */
static bool is_line_by_line(const struct rb_command_line *line)
{
	return !line->files || (line->files == 1 && !strcmp(line->file[0], "-"));
}

/* A - among lengths is none of them. */
static bool is_mixed(const struct rb_command_line *line)
{
	for (int i = 0; i < line->files; i++)
		if (!strcmp(line->file[i], "-"))
			return line->files > 1;
	return false;
}

static bool is_misused(struct rb_job *job)
{
	const struct rb_command_line *line = job->line;
	int format = rb_given_number(line, RB_OPTION_FORMAT, RB_FORMAT_TEXT);
	bool table = rb_given(line, RB_OPTION_TABLE);

	if (table && line->files)
		rb_refuse_use(job, RB_OPTION_TABLE, "prints a card, and takes no LENGTH");
	else if (table && format != RB_FORMAT_TEXT && format != RB_FORMAT_HTML)
		rb_refuse_use(job, RB_OPTION_TABLE,
			      "prints a card, and that is text or html");
	else if (is_mixed(line))
		rb_refuse(job,
			  "- is standard input, one length a line, and stands alone");
	else if (!table && is_line_by_line(line) && format == RB_FORMAT_HTML)
		rb_refuse_use(job, RB_OPTION_FORMAT,
			      "html is one page: give the lengths on the command line");
	return job->status;
}

enum rb_exit rb_run_convert(const struct rb_command_line *line)
{
	struct rb_job job;

	rb_job_begin(&job, line);
	if (job.status || is_misused(&job))
		return rb_job_end(&job, NULL);
	if (rb_given(line, RB_OPTION_TABLE))
		rb_job_write(&job, write_table, &job);
	else if (is_line_by_line(line))
		rb_convert_lines(&job);
	else
		convert_arguments(&job);
	return rb_job_end(&job, is_line_by_line(line) ? NULL : "not converted");
}
