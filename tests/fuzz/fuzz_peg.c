/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a two-peg test, with a book behind it: all readings and distances are
 * there; the error found is the one that makes both setups give the same difference, and
 * the corrected readings give it too.
 */
#include "report/peg.h"
#include "strict.h"
#include "work.h"

#include "measure/wide.h"

/* Nothing is worked out of what is not given. */
static void check_given(const struct rb_two_peg *peg)
{
	for (int i = 0; i < 2; i++) {
		const struct rb_peg_setup *s = &peg->setup[i];

		HOLDS(rb_length_given(s->a) && rb_length_given(s->b));
		HOLDS(rb_length_given(s->distance_a) && rb_length_given(s->distance_b));
	}
}

/* e = ((a2 - b2) - (a1 - b1)) / ((da2 - db2) - (da1 - db1)), as a ratio. */
static void check_error(const struct rb_two_peg *peg)
{
	const struct rb_peg_setup *s = peg->setup;
	int64_t turned = (s[1].a.nm - s[1].b.nm) - (s[0].a.nm - s[0].b.nm);
	int64_t further = (s[1].distance_a.nm - s[1].distance_b.nm) -
			  (s[0].distance_a.nm - s[0].distance_b.nm);
	rb_wide left = rb_wide_mul(peg->rise.nm, further);
	rb_wide right = rb_wide_mul(turned, peg->run.nm);

	HOLDS(peg->run.nm > 0 && further != 0);
	HOLDS(rb_wide_compare(left, right) == 0);
}

/* Each corrected reading is the reading less the error over its distance. */
static void check_corrected(const struct rb_two_peg *peg)
{
	const struct rb_peg_setup *s = &peg->setup[1];
	int64_t off_a =
		s->a.nm - peg->corrected_a.nm - rb_two_peg_over(peg, s->distance_a).nm;
	int64_t off_b =
		s->b.nm - peg->corrected_b.nm - rb_two_peg_over(peg, s->distance_b).nm;

	HOLDS(off_a >= -1 && off_a <= 1);
	HOLDS(off_b >= -1 && off_b <= 1);
}

static const struct rb_peg_effect *effect_of(struct work *work, struct rb_arena *arena,
					     const struct rb_two_peg *peg,
					     struct part book)
{
	const struct rb_peg_effect *effect;

	if (!book.length || !work_out(work, arena, book))
		return NULL;
	effect = rb_peg_effect(arena, &work->findings, peg,
			       rb_reduction_sections(&work->reduction));
	HOLDS(effect);
	return effect;
}

static void write_results(const struct rb_peg_report *report, uint32_t *draws)
{
	struct kept kept;

	if (draw(draws, 2)) {
		check_page(rb_peg_page(report), NULL, *draws);
		return;
	}
	kept_begin(&kept);
	HOLDS(rb_peg_write_json(&kept.sink, report));
	kept_end(&kept);
	strict_json(&kept);
	kept_free(&kept);
}

static void check_test(struct rb_arena *arena, struct rb_findings *findings,
		       const struct rb_two_peg *peg, struct part book, uint32_t draws)
{
	struct work work;
	struct rb_peg_report report = { .arena = arena, .peg = peg, .files = 1 };

	check_given(peg);
	check_error(peg);
	check_corrected(peg);
	report.findings[0] = findings;
	report.style = draw_style(&draws, (struct rb_style){ peg->unit, 3, 16, false });
	report.book_style = report.style;
	report.decimals = draw(&draws, 8) - 1;
	report.effect = effect_of(&work, arena, peg, book);
	if (report.effect) {
		report.findings[1] = &work.findings;
		report.files = 2;
		report.book_style = rb_book_style(work.book);
	}
	write_results(&report, &draws);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	uint32_t draws = drawn_from(data, size);
	struct part file = part_of(data, size, 0);
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_findings findings;
	const struct rb_two_peg *peg;

	HOLDS(arena);
	rb_findings_init(&findings, arena, "fuzz.csv");
	peg = rb_two_peg_read(arena, &findings, file.bytes, file.length);
	HOLDS(peg || !rb_findings_allow_result(&findings));
	if (peg && rb_findings_allow_result(&findings))
		check_test(arena, &findings, peg, part_of(data, size, 1), draws);
	check_messages(&findings, draws);
	rb_arena_free(arena);
	return 0;
}
