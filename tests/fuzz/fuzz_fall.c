/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a book, leg by leg: each leg falls what its ends differ by, runs add up,
 * and a leg at exactly the minimum passes.
 */
#include "report/fall_json.h"
#include "report/fall_page.h"
#include "strict.h"
#include "work.h"

static void check_run(const struct rb_fall *fall, const struct rb_run *run)
{
	int64_t falls = 0, length = 0;

	for (uint32_t i = 0; i < run->legs; i++) {
		const struct rb_leg *leg = &fall->leg[run->first + i];

		falls += leg->fall.nm;
		length += leg->length.nm;
		HOLDS(leg->length.nm > 0);
		HOLDS(rb_slope_over(leg->slope, leg->length).nm == leg->fall.nm);
	}
	HOLDS(falls == run->total.fall.nm);
	HOLDS(length == run->total.length.nm);
}

static void write_results(const struct work *work, const struct rb_fall_result *result,
			  uint32_t draws)
{
	const struct rb_findings *findings = &work->findings;
	struct kept kept;

	if (draw(&draws, 2)) {
		check_page(rb_fall_page(work->arena, result, true), NULL, draws);
		return;
	}
	kept_begin(&kept);
	rb_fall_write_json(&kept.sink, result, &findings, 1);
	kept_end(&kept);
	strict_json(&kept);
	kept_free(&kept);
}

/* The flattest leg sets the minimum: then none is too flat. */
static void check_minimum(struct work *work, const struct rb_spots *spots,
			  struct rb_fall_options options, const struct rb_fall *fall)
{
	struct rb_findings findings;
	const struct rb_fall *again;

	if (!fall->legs)
		return;
	options.minimum = fall->leg[0].slope;
	for (uint32_t i = 1; i < fall->legs; i++)
		if (rb_slope_compare(fall->leg[i].slope, options.minimum) < 0)
			options.minimum = fall->leg[i].slope;
	if (options.minimum.fall.nm <= 0)
		return;
	rb_findings_init(&findings, work->arena, "again.csv");
	again = rb_fall(work->arena, &findings, spots, &options);
	HOLDS(again && !findings.of_severity[RB_FAILED]);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	uint32_t draws = drawn_from(data, size);
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_fall_options options = { .length = rb_length_none(),
					   .outlet = (enum rb_flow_to)draw(&draws, 3) };
	struct rb_fall_result result = { .size = rb_length_none(), .decimals = -1 };
	const struct rb_spots *spots;
	struct work work;

	HOLDS(arena);
	if (work_out(&work, arena, (struct part){ (const char *)data, size })) {
		spots = rb_spots(arena, &work.findings, work.reduction.adjusted);
		HOLDS(spots);
		result.fall = rb_fall(arena, &work.findings, spots, &options);
		HOLDS(result.fall || !rb_findings_allow_result(&work.findings));
		result.spots = spots;
		result.style = draw_style(&draws, rb_book_style(work.book));
		for (uint32_t i = 0; result.fall && i < result.fall->runs; i++)
			check_run(result.fall, &result.fall->run[i]);
		if (result.fall) {
			check_minimum(&work, spots, options, result.fall);
			write_results(&work, &result, draws);
		}
		check_messages(&work.findings, draws);
	}
	rb_arena_free(arena);
	return 0;
}
