/* SPDX-License-Identifier: MIT */
/* Options that are lengths, chainages or slopes. */
#include "cli/values.h"

#include <string.h>

bool rb_values_begin(struct rb_values *values, struct rb_job *job, enum rb_unit unit)
{
	*values = (struct rb_values){ .job = job, .words = rb_job_words(job) };
	if (!values->words)
		return false;
	values->cells = (struct rb_cells){ .arena = job->arena,
					   .findings = &values->words->findings,
					   .unit = unit };
	return true;
}

static struct rb_place place_of(const char *what)
{
	return rb_at(0, RB_WHOLE_ROW, NULL, what);
}

/* Messages name an option as it is typed. */
static const char *name_of(const struct rb_values *values, enum rb_option option)
{
	const char *name = rb_option_row(option)->name;
	char *dashed = rb_arena_take(values->job->arena, strlen(name) + 3, 1);

	if (!dashed) {
		rb_findings_no_memory(values->cells.findings);
		return name;
	}
	memcpy(dashed, "--", 2);
	memcpy(dashed + 2, name, strlen(name) + 1);
	return dashed;
}

static struct rb_cell cell_of(const char *text)
{
	return (struct rb_cell){ text, strlen(text) };
}

/* In a cell a dash or nothing says that there is no value; here one is needed. */
static void need(struct rb_values *values, const char *text, const char *what)
{
	if (rb_cell_is_empty(cell_of(text)) || strspn(text, " \t") == strlen(text))
		rb_findings_add(values->cells.findings, RB_CODE_NOT_A_READING,
				place_of(what), rb_text(text), rb_nothing());
}

rb_length rb_value_of(struct rb_values *values, const char *text, const char *what,
		      enum rb_reading_kind kind)
{
	struct rb_findings *findings = values->cells.findings;
	size_t before;
	rb_length value;

	need(values, text, what);
	before = findings->of_severity[RB_ERROR];
	value = rb_cells_length(&values->cells, cell_of(text), place_of(what), kind);
	if (!rb_length_given(value) && !before &&
	    findings->of_severity[RB_ERROR] == before) /* a lone apostrophe */
		rb_findings_add(findings, RB_CODE_NOT_A_READING, place_of(what),
				rb_text(text), rb_nothing());
	return value;
}

rb_length rb_value_length(struct rb_values *values, enum rb_option option,
			  enum rb_reading_kind kind, int nth)
{
	const struct rb_given *given = &values->job->line->option[option];

	if (nth >= given->times)
		return rb_length_none();
	return rb_value_of(values, given->text[nth], name_of(values, option), kind);
}

rb_length rb_value_on_rod(struct rb_values *values, const char *text, const char *what,
			  rb_length rod)
{
	rb_length read = rb_value_of(values, text, what, RB_OF_ROD);

	if (rb_length_given(read) && rb_length_compare(rb_length_absolute(read), rod) > 0)
		rb_findings_add(values->cells.findings, RB_CODE_BEYOND_ROD,
				place_of(what), rb_rod_reading(read, values->cells.unit),
				rb_measure(rod, values->cells.unit));
	return read;
}

rb_length rb_value_reading(struct rb_values *values, enum rb_option option, rb_length rod,
			   int nth)
{
	const struct rb_given *given = &values->job->line->option[option];

	if (nth >= given->times)
		return rb_length_none();
	return rb_value_on_rod(values, given->text[nth], name_of(values, option), rod);
}

rb_length rb_value_chainage(struct rb_values *values, const char *text, const char *what)
{
	int plus;

	need(values, text, what);
	return rb_cells_chainage(&values->cells, cell_of(text), place_of(what), &plus);
}

rb_slope rb_value_slope(struct rb_values *values, enum rb_option option)
{
	const char *text = rb_given_text(values->job->line, option);

	if (!text)
		return (rb_slope){ rb_length_of(0), rb_length_of(0) };
	need(values, text, name_of(values, option));
	return rb_cells_slope(&values->cells, cell_of(text),
			      place_of(name_of(values, option)));
}

rb_slope rb_value_minimum(struct rb_values *values)
{
	const char *text = rb_given_text(values->job->line, RB_OPTION_MINIMUM);
	rb_slope slope = rb_value_slope(values, RB_OPTION_MINIMUM);

	if (rb_slope_given(slope) && slope.fall.nm <= 0)
		rb_findings_add(values->cells.findings, RB_CODE_SLOPE_NOT_DOWN,
				place_of("--minimum"), rb_text(text), rb_nothing());
	return slope;
}
