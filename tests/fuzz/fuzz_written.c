/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a book, through every writer: each format is well-formed whatever stands
 * in the book, and our own CSV is a book that reduces to the same elevations.
 */
#include "report/reduced_csv.h"
#include "report/reduced_json.h"
#include "report/reduced_page.h"
#include "report/reduced_profile.h"
#include "report/reduced_steps.h"
#include "strict.h"
#include "work.h"

static void as_page(const struct work *work, uint32_t draws)
{
	struct rb_page *page = rb_reduced_page(work->arena, &work->reduction);

	HOLDS(page);
	rb_reduced_steps(page, &work->reduction);
	check_page(page, rb_reduced_profile(work->arena, &work->reduction), draws);
}

static void as_picture(const struct work *work)
{
	check_picture(rb_reduced_profile(work->arena, &work->reduction));
}

static void as_json(const struct work *work)
{
	struct kept kept;

	kept_begin(&kept);
	HOLDS(rb_reduced_write_json(&kept.sink, &work->reduction, &work->findings));
	kept_end(&kept);
	strict_json(&kept);
	kept_free(&kept);
}

/* -- the CSV is a book -- */

/* Can the CSV be judged as the book was?  Sight lengths are not in it. */
static bool judged_by_setups(const struct rb_sections *sections)
{
	return sections->adjust == RB_BY_SETUPS &&
	       !rb_tolerance_needs_length(&sections->tolerance);
}

static void same_corrections(const struct rb_reduction *first, struct work *again)
{
	const struct rb_sections *sections = rb_reduction_sections(first);
	const struct rb_judging judging = { .tolerance = sections->tolerance,
					    .adjust = sections->adjust,
					    .adjust_anyway = first->adjust_anyway };
	const struct rb_adjusted *adjusted;

	sections = rb_sections(again->arena, &again->findings, again->reduced, &judging);
	HOLDS(sections);
	adjusted = rb_adjust(again->arena, &again->findings, sections);
	HOLDS(adjusted);
	for (uint32_t i = 0; i < again->reduced->shots; i++)
		HOLDS(rb_shot_correction(first->adjusted, i).nm ==
		      rb_shot_correction(adjusted, i).nm);
}

static bool says_rod_on(const struct rb_book *book)
{
	for (uint32_t row = 0; row < book->rows; row++)
		if (book->rod_on[row] != RB_ON_UNSAID)
			return true;
	return false;
}

/* The CSV does not say on what the rod stood: two surfaces of a point are one there. */
static bool may_be_check(enum rb_kind first, enum rb_kind again)
{
	return first == RB_SIDE_POINT && again == RB_CHECK;
}

/* The same places of the rod at the same elevations. */
static void same_reduction(const struct rb_reduced *a, const struct rb_reduced *b)
{
	bool surfaces = says_rod_on(a->book);

	HOLDS(a->shots == b->shots && a->setups == b->setups);
	for (uint32_t i = 0; i < a->shots; i++) {
		HOLDS(a->shot[i].elevation.nm == b->shot[i].elevation.nm);
		HOLDS(a->shot[i].kind == b->shot[i].kind ||
		      (surfaces && may_be_check((enum rb_kind)a->shot[i].kind,
						(enum rb_kind)b->shot[i].kind)));
	}
}

static void as_csv(const struct work *work)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct work again;
	struct kept kept;

	HOLDS(arena);
	kept_begin(&kept);
	HOLDS(rb_reduced_write_csv(&kept.sink, arena, &work->reduction));
	kept_end(&kept);
	strict_csv(&kept);
	HOLDS(work_out(&again, arena, (struct part){ kept.bytes, kept.length }));
	same_reduction(work->reduced, again.reduced);
	if (judged_by_setups(rb_reduction_sections(&work->reduction)))
		same_corrections(&work->reduction, &again);
	rb_arena_free(arena);
	kept_free(&kept);
}

static void write_results(const struct work *work, uint32_t draws)
{
	switch (draw(&draws, 6)) {
	case 0:
		as_page(work, draws);
		break;
	case 1:
		as_picture(work);
		break;
	case 2:
		as_json(work);
		break;
	case 3:
		check_messages(&work->findings, draws);
		break;
	default:
		as_csv(work);
	}
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	uint32_t draws = drawn_from(data, size);
	struct rb_arena *arena = rb_arena_new(NULL);
	struct work work;

	HOLDS(arena);
	if (work_out(&work, arena, (struct part){ (const char *)data, size })) {
		work.reduction.unit_asked = draw(&draws, 2);
		work.reduction.style = draw_style(&draws, work.reduction.style);
		work.reduction.decimals = draw(&draws, 8) - 1;
		write_results(&work, draws);
	} else {
		check_messages(&work.findings, draws);
	}
	rb_arena_free(arena);
	return 0;
}
