/* SPDX-License-Identifier: MIT */
/* Any bytes as something to convert, through every writer: well-formed, with its steps.
 */
#include <string.h>

#include "report/convert_json.h"
#include "report/convert_page.h"
#include "strict.h"
#include "work.h"

static void as_page(struct rb_arena *arena, const struct rb_conversion *c, uint32_t draws)
{
	struct rb_page *page = rb_page_new(arena);

	HOLDS(page);
	rb_conversion_add(page, c, true);
	check_page(page, NULL, draws);
}

static void as_json(const struct rb_conversion *c)
{
	struct rb_json json;
	struct kept kept;

	kept_begin(&kept);
	rb_json_init(&json, &kept.sink);
	rb_json_open(&json, '[');
	rb_conversion_write_json(&json, c);
	rb_json_end(&json);
	kept_end(&kept);
	strict_json(&kept);
	kept_free(&kept);
}

static void as_csv(const struct rb_conversion *c)
{
	struct rb_csv csv;
	struct kept kept;

	kept_begin(&kept);
	rb_csv_init(&csv, &kept.sink);
	rb_conversion_write_csv_head(&csv);
	rb_conversion_write_csv(&csv, c);
	kept_end(&kept);
	strict_csv(&kept);
	kept_free(&kept);
}

static void write_results(struct rb_arena *arena, const struct rb_conversion *c,
			  uint32_t draws)
{
	switch (draw(&draws, 3)) {
	case 0:
		as_page(arena, c, draws);
		break;
	case 1:
		as_json(c);
		break;
	default:
		as_csv(c);
	}
}

/* The first byte chooses the unit, the second nothing: seeds are those of expressions. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	uint32_t draws = drawn_from(data, size);
	struct rb_conversion_style style = { RB_FEET, 8 << draw(&draws, 4),
					     draw(&draws, 8) - 1 };
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_conversion c;
	const char *text;

	HOLDS(arena);
	if (size >= 2) {
		style.unit = (enum rb_unit)(data[0] % (RB_MILLIMETRES + 1));
		text = rb_arena_text(arena, (const char *)data + 2, size - 2);
		HOLDS(text);
		if (rb_conversion_make(&c, text, &style))
			write_results(arena, &c, draws);
	}
	rb_arena_free(arena);
	return 0;
}
