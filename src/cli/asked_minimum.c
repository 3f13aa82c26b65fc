/* SPDX-License-Identifier: MIT */
/* The minimum slope of the command line or of the plan. */
#include "cli/asked_minimum.h"

#include <string.h>

#include "cli/refusal.h"
#include "drain/pipe.h"

const char *rb_beside_plan(struct rb_job *job, const struct rb_plan *plan,
			   const char *name)
{
	const char *slash = strrchr(plan->file, '/');
	size_t folder = slash && *name != '/' ? (size_t)(slash - plan->file) + 1 : 0;
	char *path = rb_arena_take(job->arena, folder + strlen(name) + 1, 1);

	if (!path) {
		rb_job_no_memory(job);
		return NULL;
	}
	memcpy(path, plan->file, folder);
	memcpy(path + folder, name, strlen(name) + 1);
	return path;
}

/* --size, which was looked at before, or the plan's pipe. */
static rb_length find_size(const struct rb_command_line *line, const struct rb_plan *plan)
{
	const char *text = rb_given_text(line, RB_OPTION_SIZE);

	if (text)
		return rb_pipe_size_parse(text, strlen(text));
	return plan ? plan->pipe.size : rb_length_none();
}

/* Where a size that is missing should have been written. */
struct asker {
	struct rb_findings *findings;
	struct rb_place place;
};

static bool by_rules(struct rb_values *values, const struct rb_plan *plan,
		     const char *name, struct asker asker, struct rb_asked_minimum *out)
{
	struct rb_job_file *file;
	struct rb_rules *rules;

	out->size = find_size(values->job->line, plan);
	file = rb_job_read(values->job, name);
	rules = file ? rb_rules_read(values->job->arena, &file->findings,
				     file->input.bytes, file->input.length)
		     : NULL;
	return rules && rb_minimum_by_rules(asker.findings, rules, out->size, asker.place,
					    &out->minimum);
}

static bool is_no_size(const char *text)
{
	return text && !rb_length_given(rb_pipe_size_parse(text, strlen(text)));
}

static void refuse_size(struct rb_job *job)
{
	rb_refuse_use(job, RB_OPTION_SIZE, "is looked up in a rules file: give --rules");
}

bool rb_minimum_is_misused(struct rb_job *job, bool plan)
{
	const struct rb_command_line *line = job->line;
	bool rules = rb_given(line, RB_OPTION_RULES);
	bool minimum = rb_given(line, RB_OPTION_MINIMUM);

	if (rules && minimum)
		rb_refuse_use(job, RB_OPTION_MINIMUM,
			      "and --rules cannot stand together");
	else if (is_no_size(rb_given_text(line, RB_OPTION_SIZE)))
		rb_refuse_value(job, RB_OPTION_SIZE);
	else if (rb_given(line, RB_OPTION_SIZE) && !rules && (minimum || !plan))
		refuse_size(job);
	else
		return false;
	return true;
}

bool rb_ask_minimum(struct rb_values *values, const struct rb_plan *plan,
		    struct rb_job_file *file, struct rb_asked_minimum *out)
{
	const struct rb_command_line *line = values->job->line;
	const char *rules = rb_given_text(line, RB_OPTION_RULES);
	bool says = plan && (*plan->rules || rb_slope_given(plan->minimum));
	struct asker asker = { rb_values_findings(values),
			       rb_at(0, RB_WHOLE_ROW, NULL, "--size") };

	*out = (struct rb_asked_minimum){ .size = rb_length_none() };
	if (rb_given(line, RB_OPTION_SIZE) && !rules && !(plan && *plan->rules)) {
		refuse_size(values->job);
		return false;
	}
	out->overridden = says && (rules || rb_given(line, RB_OPTION_MINIMUM));
	if (rb_given(line, RB_OPTION_MINIMUM))
		out->minimum.slope = rb_value_minimum(values);
	else if (rules)
		return by_rules(values, plan, rules, asker, out);
	else if (plan && *plan->rules) {
		rules = rb_beside_plan(values->job, plan, plan->rules);
		asker = (struct asker){ &file->findings, plan->rules_place };
		return rules && by_rules(values, plan, rules, asker, out);
	} else if (plan) {
		out->minimum.slope = plan->minimum;
	}
	return rb_findings_allow_result(rb_values_findings(values));
}
