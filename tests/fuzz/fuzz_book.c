/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a book: reading, reducing, judging and adjusting it keeps every promise
 * that the headers make.
 */
#include <stdlib.h>
#include <string.h>

#include "level/suspects.h"
#include "rodbook/rodbook.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void holds(bool so)
{
	if (!so)
		abort();
}

/* Where nothing is said to be wrong there is a result. */
static bool agrees(const void *result, const struct rb_findings *findings)
{
	bool allowed = rb_findings_allow_result(findings);

	holds(result || !allowed);
	return allowed;
}

/* Each elevation is the height of instrument less the sight. */
static void check_shots(const struct rb_reduced *reduced)
{
	for (uint32_t i = 0; i < reduced->shots; i++) {
		const struct rb_shot *shot = &reduced->shot[i];
		rb_length sight = rb_shot_reading(reduced, i);
		uint32_t opens = rb_shot_opens(shot);

		holds(shot->row < reduced->book->rows);
		holds(opens == RB_NO_SETUP || opens < reduced->setups);
		if (!rb_length_given(sight) || shot->setup == RB_NO_SETUP)
			continue;
		holds(shot->setup < reduced->setups);
		holds(shot->elevation.nm ==
		      reduced->setup[shot->setup].height_of_instrument.nm - sight.nm);
	}
}

/* Both arithmetic checks hold: sums, rise and fall. */
static void check_sections(const struct rb_sections *sections)
{
	for (uint32_t i = 0; i < sections->sections; i++) {
		const struct rb_section *s = &sections->section[i];
		int64_t gained = s->finish.nm - s->start.nm;

		holds(s->setups > 0);
		if (s->no_foresight)
			continue;
		holds(s->sum_backsight.nm - s->sum_foresight.nm == gained);
		holds(s->sum_rise.nm - s->sum_fall.nm == gained);
		holds((s->verdict == RB_OPEN) == !rb_length_given(s->misclosure));
	}
}

/* An adjusted section ends exactly on the known elevation. */
static void check_adjusted(const struct rb_adjusted *adjusted)
{
	const struct rb_sections *sections = adjusted->sections;

	for (uint32_t i = 0; i < sections->sections; i++) {
		const struct rb_section *s = &sections->section[i];

		if (!s->adjusted)
			continue;
		holds(rb_shot_adjusted(adjusted, s->end).nm ==
		      s->finish.nm - s->misclosure.nm);
	}
}

/* What a suspect leaves is within the tolerance. */
static void check_suspects(const struct rb_suspects *suspects,
			   const struct rb_sections *sections)
{
	for (uint32_t i = 0; i < suspects->count; i++) {
		const struct rb_suspect *suspect = &suspects->item[i];
		const struct rb_section *s = &sections->section[suspect->section];

		holds(s->verdict == RB_BEYOND);
		holds(rb_tolerance_holds(&sections->tolerance, suspect->left, s->length,
					 (int64_t)s->setups));
	}
}

static void work_out(struct rb_arena *arena, struct rb_findings *findings,
		     const struct rb_book *book)
{
	struct rb_judging judging = rb_judging_of(book);
	struct rb_reduced *reduced = rb_reduce(arena, findings, book);
	struct rb_sections *sections;
	struct rb_adjusted *adjusted;

	if (!agrees(reduced, findings))
		return;
	check_shots(reduced);
	sections = rb_sections(arena, findings, reduced, &judging);
	if (!agrees(sections, findings))
		return;
	check_sections(sections);
	adjusted = rb_adjust(arena, findings, sections);
	if (agrees(adjusted, findings))
		check_adjusted(adjusted);
	check_suspects(rb_suspects(arena, findings, sections), sections);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	char *bytes = malloc(size ? size : 1);
	struct rb_findings findings;
	struct rb_book *book;

	if (!arena || !bytes)
		abort();
	memcpy(bytes, data, size);
	rb_findings_init(&findings, arena, "fuzz.csv");
	book = rb_book_read(arena, &findings, bytes, size);
	if (agrees(book, &findings))
		work_out(arena, &findings, book);
	rb_arena_free(arena);
	free(bytes);
	return 0;
}
