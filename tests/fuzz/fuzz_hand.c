/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a book reduced by hand: every cell that is checked is one that stands
 * there, wrong where it differs and nowhere else, and every sheet is well-formed.
 */
#include "report/checked.h"
#include "strict.h"
#include "work.h"

static void check_cell(const struct rb_hand_check *check, const struct rb_hand_cell *cell)
{
	HOLDS(cell->row < check->reduced->book->rows);
	HOLDS((unsigned)cell->step < RB_HAND_STEPS);
	HOLDS((unsigned)cell->state < RB_HAND_STATES);
	HOLDS((unsigned)cell->cause < RB_HAND_CAUSES);
	HOLDS((cell->state == RB_HAND_EMPTY) == !rb_length_given(cell->written));
	if (cell->state == RB_HAND_WRONG)
		HOLDS(cell->written.nm != cell->follows.nm);
	HOLDS(cell->cause_row == RB_NO_ROW ||
	      cell->cause_row < check->reduced->book->rows);
}

static void check_cells(const struct rb_hand_check *check,
			const struct rb_findings *findings)
{
	uint32_t wrong = 0;

	for (uint32_t i = 0; i < check->cells; i++) {
		check_cell(check, &check->cell[i]);
		wrong += check->cell[i].state == RB_HAND_WRONG;
	}
	HOLDS(rb_hand_count(check, RB_HAND_WRONG) == wrong);
	HOLDS((findings->of_severity[RB_FAILED] > 0) >= (wrong > 0));
}

static void check_written(const struct rb_checked *checked,
			  bool (*write)(struct rb_sink *, const struct rb_checked *),
			  void (*strict)(const struct kept *))
{
	struct kept kept;

	kept_begin(&kept);
	HOLDS(write(&kept.sink, checked));
	kept_end(&kept);
	strict(&kept);
	kept_free(&kept);
}

static void check_formats(const struct rb_checked *checked, uint32_t *draws)
{
	switch (draw(draws, 6)) {
	case 0:
		check_page(rb_checked_page(checked), NULL, *draws);
		break;
	case 1:
		check_page(rb_marks_page(checked), NULL, *draws);
		break;
	case 2:
		check_written(checked, rb_checked_write_json, strict_json);
		break;
	case 3:
		check_written(checked, rb_marks_write_json, strict_json);
		break;
	case 4:
		check_written(checked, rb_checked_write_csv, strict_csv);
		break;
	default:
		check_written(checked, rb_marks_write_csv, strict_csv);
	}
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	uint32_t draws = drawn_from(data, size);
	struct rb_arena *arena = rb_arena_new(NULL);
	struct work work;
	struct rb_checked_book book;

	HOLDS(arena);
	work_out(&work, arena, (struct part){ (const char *)data, size });
	if (work.reduced && rb_findings_allow_result(&work.findings)) {
		book.check = rb_hand_check(arena, &work.findings, work.reduced);
		book.findings = &work.findings;
		book.style = draw_style(&draws, rb_book_hand_style(work.book));
		HOLDS(book.check || !rb_findings_allow_result(&work.findings));
		if (book.check) {
			const struct rb_checked checked = {
				arena,
				&book,
				1,
				draw(&draws, 8) - 1,
				draw(&draws, 2) == 1,
				draw(&draws, 2) == 1,
			};

			check_cells(book.check, &work.findings);
			check_formats(&checked, &draws);
		}
		check_messages(&work.findings, draws);
	}
	rb_arena_free(arena);
	return 0;
}
