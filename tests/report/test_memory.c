/* SPDX-License-Identifier: MIT */
/* Running out of memory anywhere in a report is said: nothing of it is left out. */
#include "drained.h"

#include "../memory.h"
#include "capture.h"
#include "report/checked.h"
#include "report/dig_result.h"
#include "report/drain_json.h"
#include "report/drain_profile.h"
#include "report/html.h"
#include "report/practice_sheet.h"
#include "report/profile_svg.h"
#include "report/reduced_csv.h"
#include "report/reduced_json.h"
#include "report/reduced_page.h"
#include "report/reduced_profile.h"
#include "report/reduced_steps.h"
#include "report/text.h"

/* Two sections, the second of them beyond its tolerance; a check, and remarks twice. */
static const char levels[] =
	"tolerance,0.02 ft\npoint,known elevation,bs,is,fs,chainage,remarks\n"
	"BM-1,100.00,4.27,,,,brass cap\nMH-1,,,7.48,,0+10,rim\nTP-1,,,,6.03,,stone\n"
	"TP-1,,5.11,,,,in the lane\nMH-1,,,6.30,,,\nBM-2,99.34,,,4.01,,\n"
	"BM-2,,5.00,,,,\nBM-1,100.00,,,4.33,,\n";

/* A loop worked by hand, with a slip. */
static const char by_hand[] =
	"student,N\ntolerance,0.02\npoint,bm,bs,hi,is,fs,elevation\n"
	"BM-1,100.00,4.27,104.27,,,\nTP-1,,5.11,103.35,,6.03,98.24\n"
	"MH-1,,,,7.48,,95.87\nBM-1,,,,,3.35,99.00\n"
	"sum,,9.38,,,9.38,\n";

static const struct drain_text drain = {
	.plan = "drain,D\npipe,4 in sch 40\nbedding,4 in\noutlet,last\nslope,2%\n"
		"point,chainage,invert,step\nA,0+00,95,\nB,0+50,,0.1\nC,1+00,,\n",
	.ground =
		"point,chainage,known elevation,backsight,intermediate,foresight,rod on\n"
		"BM,,100.00,4.00,,,\nA,0+00,,,4.10,,ground\nB,0+50,,,3.90,,hub\n"
		"C,1+00,,,4.90,,ground\nBM,,,,,4.00,\n",
	.laid = "point,chainage,known elevation,backsight,intermediate,foresight,rod on\n"
		"BM,,100.00,4.00,,,\nA,0+00,,,9.00,,invert\nB,0+50,,,10.10,,invert\n"
		"C,1+00,,,10.05,,invert\nBM,,,,,4.00,\n",
	.hi = { 104 * RB_FOOT },
	.minimum = { { 1 }, { 48 } },
};

/* What is told of, made once with all memory. */
static struct {
	struct reduced_book levels, by_hand;
	struct drained drain;
	struct rb_hand_check *check;
	struct rb_practice_options practice[3];
	const struct rb_problem *problem[3];
} made;

/* -- the reports -------------------------------------------------------------------- */

static bool write_html(struct rb_sink *sink, const struct rb_page *page,
		       const struct rb_profile *picture)
{
	const struct rb_html_input input = { "t.csv", "0123" };
	const struct rb_html_paper paper = { "T", &input, 1, true, picture };

	return page && rb_page_write_html(sink, page, &paper);
}

static bool write_text(struct rb_sink *sink, const struct rb_page *page)
{
	return page && rb_page_write_text(sink, page, (struct rb_text_style){ 60, true });
}

static bool reduced_html(struct rb_sink *sink, struct rb_arena *arena)
{
	const struct rb_reduction *r = &made.levels.reduction;
	struct rb_page *page = rb_reduced_page(arena, r);
	struct rb_profile *picture = page ? rb_reduced_profile(arena, r) : NULL;

	if (picture)
		rb_reduced_steps(page, r);
	return picture && write_html(sink, page, picture);
}

static bool reduced_text(struct rb_sink *sink, struct rb_arena *arena)
{
	return write_text(sink, rb_reduced_page(arena, &made.levels.reduction));
}

static bool reduced_csv(struct rb_sink *sink, struct rb_arena *arena)
{
	return rb_reduced_write_csv(sink, arena, &made.levels.reduction);
}

static bool reduced_json(struct rb_sink *sink, struct rb_arena *arena)
{
	struct rb_findings findings = made.levels.findings;

	findings.arena = arena;
	return rb_reduced_write_json(sink, &made.levels.reduction, &findings);
}

static bool drain_html(struct rb_sink *sink, struct rb_arena *arena)
{
	const struct rb_drain_result *r = &made.drain.result;
	struct rb_page *page = rb_drain_page(arena, r, true);
	struct rb_profile *picture = page ? rb_drain_profile(arena, r) : NULL;

	return picture && write_html(sink, page, picture);
}

static bool drain_svg(struct rb_sink *sink, struct rb_arena *arena)
{
	const struct rb_profile *picture = rb_drain_profile(arena, &made.drain.result);

	return picture && rb_profile_write_svg(sink, picture);
}

static bool drain_json(struct rb_sink *sink, struct rb_arena *arena)
{
	struct rb_findings findings = made.drain.job.findings;
	const struct rb_findings *list = &findings;

	findings.arena = arena;
	return rb_drain_write_json(sink, arena, &made.drain.result, &list, 1);
}

static bool dig_json(struct rb_sink *sink, struct rb_arena *arena)
{
	const struct rb_dig_result result = {
		.dig = { FT(5, 0), FT(4, 0), FT(1, 0), RB_DIG },
		.on = "trench",
		.at = NONE,
		.words = { RB_FEET_INCHES, 0, 8, true },
		.decimals = -1,
	};
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, arena);
	return rb_dig_write_json(sink, &phrase, &result);
}

static struct rb_practice_sheet sheet_of(struct rb_arena *arena, int kind)
{
	return (struct rb_practice_sheet){ arena, &made.practice[kind],
					   &made.problem[kind], 1, true };
}

static bool practice(struct rb_sink *sink, struct rb_arena *arena, int kind)
{
	const struct rb_practice_sheet sheet = sheet_of(arena, kind);

	return write_text(sink, rb_practice_page(&sheet)) &&
	       rb_practice_write_json(sink, &sheet) &&
	       rb_practice_write_csv(sink, &sheet);
}

static bool practice_convert(struct rb_sink *sink, struct rb_arena *arena)
{
	return practice(sink, arena, RB_PRACTICE_CONVERT);
}

static bool practice_loop(struct rb_sink *sink, struct rb_arena *arena)
{
	return practice(sink, arena, RB_PRACTICE_LOOP);
}

static bool practice_fall(struct rb_sink *sink, struct rb_arena *arena)
{
	return practice(sink, arena, RB_PRACTICE_FALL);
}

static bool checked(struct rb_sink *sink, struct rb_arena *arena)
{
	struct rb_findings findings = made.by_hand.findings;
	const struct rb_checked_book book = { made.check, &findings,
					      made.by_hand.reduction.style };
	const struct rb_checked all = { arena, &book, 1, -1, true, true };

	findings.arena = arena;
	return write_text(sink, rb_checked_page(&all)) &&
	       write_text(sink, rb_marks_page(&all)) &&
	       rb_checked_write_json(sink, &all) && rb_checked_write_csv(sink, &all) &&
	       rb_marks_write_json(sink, &all) && rb_marks_write_csv(sink, &all);
}

/* -- every one of them --------------------------------------------------------------- */

struct report {
	const char *name;
	bool (*write)(struct rb_sink *sink, struct rb_arena *arena);
	int least; /* takings */
};

static const struct report reports[] = {
	{ "reduced, HTML", reduced_html, 100 },
	{ "reduced, text", reduced_text, 50 },
	{ "reduced, CSV", reduced_csv, 1 },
	{ "reduced, JSON", reduced_json, 1 },
	{ "drain, HTML", drain_html, 100 },
	{ "drain, SVG", drain_svg, 50 },
	{ "drain, JSON", drain_json, 1 },
	{ "dig, JSON", dig_json, 1 },
	{ "practice, convert", practice_convert, 5 },
	{ "practice, loop", practice_loop, 5 },
	{ "practice, fall", practice_fall, 5 },
	{ "checked", checked, 50 },
};

static struct capture whole, capture;

static bool is_written(struct rb_arena *arena, const void *with)
{
	const struct report *report = with;

	capture_init(&capture);
	if (!report->write(&capture.sink, arena))
		return false;
	assert_string_equal(captured(&capture), whole.text);
	return true;
}

static void nothing_is_left_out(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof reports / sizeof *reports; i++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		int failures = 0;

		capture_init(&whole);
		assert_true(reports[i].write(&whole.sink, arena));
		assert_true(strlen(captured(&whole)) > 100);
		rb_arena_free(arena);
		if (!memory_fails(is_written, &reports[i], &failures) ||
		    failures < reports[i].least)
			fail_msg("%s: %d takings", reports[i].name, failures);
	}
}

/* -- what they tell of --------------------------------------------------------------- */

static int make_all(void **state)
{
	(void)state;
	reduce_text(&made.levels, "levels.csv", levels, false);
	reduce_text(&made.by_hand, "hand.csv", by_hand, false);
	made.check = rb_hand_check(made.by_hand.arena, &made.by_hand.findings,
				   rb_reduction_reduced(&made.by_hand.reduction));
	drain_of(&made.drain, &drain);
	for (int kind = RB_PRACTICE_CONVERT; kind <= RB_PRACTICE_FALL; kind++) {
		made.practice[kind] = (struct rb_practice_options){
			.kind = (enum rb_practice_kind)kind,
			.unit = RB_FEET,
			.fraction = 16,
			.setups = 2,
			.seed = 7,
		};
		made.problem[kind] =
			rb_practice(made.levels.arena, &made.practice[kind], 1);
	}
	return made.check ? 0 : -1;
}

static int free_all(void **state)
{
	(void)state;
	rb_arena_free(made.levels.arena);
	rb_arena_free(made.by_hand.arena);
	job_end(&made.drain.job);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(nothing_is_left_out),
	};

	return cmocka_run_group_tests_name("memory", tests, make_all, free_all);
}
