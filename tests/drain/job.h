/* SPDX-License-Identifier: MIT */
/* job.h - a plan and books from text, as far as a test needs them. */
#ifndef TESTS_DRAIN_JOB_H
#define TESTS_DRAIN_JOB_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "drain/inverts.h"
#include "drain/rules.h"
#include "level/spots.h"
#include "rodbook/plan.h"

#define FT(feet, ten_thousandths)                                                        \
	((rb_length){ (feet)*RB_FOOT + (ten_thousandths) * (RB_FOOT / 10000) })
#define NONE rb_length_none()

struct job {
	struct rb_arena *arena;
	struct rb_findings findings;
	struct rb_plan *plan;
	struct rb_inverts *inverts;
};

static inline struct job job_new(void)
{
	struct job job = { .arena = rb_arena_new(NULL) };

	rb_findings_init(&job.findings, job.arena, "plan.csv");
	return job;
}

static inline void job_end(struct job *job)
{
	rb_arena_free(job->arena);
}

/* Read a plan and work out its inverts, stations added at an interval (none: no). */
static inline bool job_read(struct job *job, const char *text, rb_length interval)
{
	job->inverts = NULL;
	job->plan = rb_plan_read(job->arena, &job->findings, text, strlen(text));
	if (job->plan)
		job->inverts =
			rb_inverts(job->arena, &job->findings, job->plan, interval);
	return job->inverts;
}

static inline struct job job_of(const char *text, rb_length interval)
{
	struct job job = job_new();

	job_read(&job, text, interval);
	return job;
}

/* The spots of a book; findings go to the list given. */
static inline struct rb_spots *job_book(struct rb_arena *arena,
					struct rb_findings *findings, const char *text)
{
	struct rb_book *book = rb_book_read(arena, findings, text, strlen(text));
	struct rb_reduced *reduced = book ? rb_reduce(arena, findings, book) : NULL;
	struct rb_judging judging = book ? rb_judging_of(book) : (struct rb_judging){ 0 };
	struct rb_sections *sections =
		reduced ? rb_sections(arena, findings, reduced, &judging) : NULL;
	struct rb_adjusted *adjusted =
		sections ? rb_adjust(arena, findings, sections) : NULL;

	return adjusted ? rb_spots(arena, findings, adjusted) : NULL;
}

/* The station of a name, along the flow; fails the test where there is none. */
static inline const struct rb_station *job_station(const struct job *job,
						   const char *name)
{
	for (uint32_t i = 0; job->inverts && i < job->inverts->stations; i++)
		if (!strcmp(job->inverts->station[i].name, name))
			return &job->inverts->station[i];
	print_error("no station %s\n", name);
	return NULL;
}

static inline rb_length job_invert(const struct job *job, const char *name)
{
	const struct rb_station *station = job_station(job, name);

	return station ? rb_exact_round(station->out) : rb_length_none();
}

/* Was that the only kind of finding, and where it should be? */
static inline bool job_found(const struct rb_findings *findings, enum rb_code code)
{
	return findings->of_code[code] > 0;
}

/* The first finding of a code, or NULL. */
static inline const struct rb_finding *job_finding(const struct rb_findings *findings,
						   enum rb_code code)
{
	for (size_t i = 0; i < findings->count; i++)
		if (findings->item[i]->code == code)
			return findings->item[i];
	return NULL;
}

static inline void job_print(const struct rb_findings *findings)
{
	for (size_t i = 0; i < findings->count; i++) {
		const struct rb_finding *f = findings->item[i];

		print_error("    %s, line %u, cell %d\n", rb_code_name(f->code),
			    f->place.line, f->place.cell);
	}
}

#endif
