/* SPDX-License-Identifier: MIT */
/* A plan or a straight pipe, and today's height of instrument. */
#include "cli/drain_input.h"

#include "cli/refusal.h"
#include "drain/stations.h"

/* What gives a straight pipe, and only that. */
static const enum rb_option straight[] = { RB_OPTION_INVERT, RB_OPTION_SLOPE,
					   RB_OPTION_LENGTH, RB_OPTION_OUTLET };
#define NEEDED 3 /* of them: --outlet may be left out */

/* -- what does not go together -- */

static bool is_line_misused(struct rb_job *job)
{
	bool plan = job->line->files > 0;
	size_t asked = plan ? sizeof straight / sizeof *straight : NEEDED;

	for (size_t i = 0; i < asked; i++)
		if (rb_given(job->line, straight[i]) == plan) {
			rb_refuse_use(job, straight[i],
				      plan ? "stands in place of a plan, not beside one"
					   : "is needed where there is no plan: give a "
					     "plan, or --invert, --slope and --length");
			return true;
		}
	return false;
}

bool rb_drain_is_misused(struct rb_job *job)
{
	const struct rb_command_line *line = job->line;
	int benchmarks = line->option[RB_OPTION_BENCHMARK].times;
	int backsights = line->option[RB_OPTION_BACKSIGHT].times;

	if (is_line_misused(job))
		return true;
	if (rb_given(line, RB_OPTION_HI) && benchmarks + backsights)
		rb_refuse_use(job, RB_OPTION_HI,
			      "and --benchmark with --backsight cannot stand together");
	else if (benchmarks != backsights)
		rb_refuse_use(job,
			      benchmarks < backsights ? RB_OPTION_BENCHMARK
						      : RB_OPTION_BACKSIGHT,
			      "is missing: each --benchmark has a --backsight");
	return job->status;
}

/* -- the line -- */

static bool read_plan(struct rb_drain_input *input, struct rb_job *job)
{
	input->file = rb_job_read(job, job->line->file[0]);
	if (!input->file)
		return false;
	input->has_plan = true;
	input->plan = rb_plan_read(job->arena, &input->file->findings,
				   input->file->input.bytes, input->file->input.length);
	return input->plan && rb_values_begin(&input->values, job, input->plan->unit);
}

static bool make_plan(struct rb_drain_input *input, struct rb_job *job)
{
	static const enum rb_outlet outlets[] = { RB_OUTLET_FIRST, RB_OUTLET_LAST };
	enum rb_unit unit = rb_given_unit(job->line, RB_FEET);
	struct rb_values *values = &input->values;
	rb_length invert, length;
	rb_slope slope;

	if (!rb_values_begin(values, job, unit))
		return false;
	input->file = values->words;
	invert = rb_value_length(values, RB_OPTION_INVERT, RB_OF_ELEVATION, 0);
	length = rb_value_length(values, RB_OPTION_LENGTH, RB_OF_RUN, 0);
	slope = rb_value_slope(values, RB_OPTION_SLOPE);
	if (!rb_findings_allow_result(rb_values_findings(values)))
		return false;
	input->plan = rb_plan_straight(
		job->arena, rb_values_findings(values), unit, invert, slope, length,
		outlets[rb_given_number(job->line, RB_OPTION_OUTLET, 1)]);
	return input->plan;
}

bool rb_drain_input_read(struct rb_drain_input *input, struct rb_job *job)
{
	struct rb_inverts *inverts;
	rb_length interval;

	*input = (struct rb_drain_input){ .file = NULL };
	if (!(job->line->files ? read_plan : make_plan)(input, job))
		return false;
	interval = rb_value_length(&input->values, RB_OPTION_INTERVAL, RB_OF_RUN, 0);
	if (!rb_findings_allow_result(rb_values_findings(&input->values)))
		return false;
	input->inverts = inverts = rb_inverts(job->arena, &input->file->findings,
					      input->plan, rb_length_none());
	return inverts && (!rb_length_given(interval) ||
			   rb_stations_add(job->arena, rb_values_findings(&input->values),
					   inverts, interval));
}

/* -- height of instrument -- */

bool rb_todays_hi_read(struct rb_values *values, const struct rb_plan *plan,
		       struct rb_todays_hi *today,
		       struct rb_sighted_benchmark benchmark[static 2])
{
	*today = (struct rb_todays_hi){ rb_length_none(), false, rb_length_none() };
	for (int i = 0; i < 2; i++)
		benchmark[i] = (struct rb_sighted_benchmark){
			rb_value_length(values, RB_OPTION_BENCHMARK, RB_OF_ELEVATION, i),
			rb_value_reading(values, RB_OPTION_BACKSIGHT, plan->rod, i),
		};
	today->hi = rb_value_length(values, RB_OPTION_HI, RB_OF_ELEVATION, 0);
	if (!rb_findings_allow_result(rb_values_findings(values)))
		return false;
	if (rb_length_given(benchmark[0].elevation))
		*today = rb_hi_of_benchmarks(
			benchmark[0].elevation, benchmark[0].backsight,
			benchmark[1].elevation, benchmark[1].backsight);
	rb_hi_judge(rb_values_findings(values), plan, today);
	return true;
}
