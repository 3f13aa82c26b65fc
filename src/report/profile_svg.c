/* SPDX-License-Identifier: MIT */
/* profile_svg.c - strips, drawn one below another. */
#include "report/profile_svg.h"

#include <string.h>

#include "report/phrase.h"
#include "report/profile_draw.h"
#include "report/width.h"

#define HEAD_LINES 8 /* of the title and the words of a file of its own */

/* -- the words over a picture that stands alone -- */

struct wrapped {
	const char *line[HEAD_LINES];
	size_t lines;
};

/* Break words into lines of a width; what is too much is left to the description.  False
 * without memory. */
static bool wrap(struct wrapped *w, struct rb_arena *arena, const char *text,
		 size_t columns)
{
	while (*text && w->lines < HEAD_LINES) {
		size_t length = strlen(text);
		size_t fits = rb_width_fit(text, length, columns);
		size_t end = fits;

		while (end && end < length && text[end] != ' ')
			end--;
		if (!end)
			end = fits;
		w->line[w->lines] = rb_arena_text(arena, text, end);
		if (!w->line[w->lines++])
			return false;
		text += end;
		text += strspn(text, " ");
	}
	return true;
}

static int draw_head(struct rb_svg *svg, const struct wrapped *title,
		     const struct wrapped *words)
{
	struct rb_pixel at = { RB_STRIP_MARGIN, RB_STRIP_MARGIN + RB_SVG_ASCENT };

	if (title->lines)
		rb_svg_text(svg, at, RB_ANCHOR_START, title->line[0], true);
	for (size_t i = 0; i < words->lines; i++) {
		at.y += RB_SVG_LINE + (i ? 0 : 2);
		rb_svg_text(svg, at, RB_ANCHOR_START, words->line[i], false);
	}
	return at.y + RB_SVG_LINE;
}

/* -- whole pictures -- */

bool rb_profile_write_svg(struct rb_sink *sink, const struct rb_profile *profile)
{
	struct rb_svg svg = { sink, true };
	struct rb_svg_head head = { .width = RB_STRIP_WIDTH,
				    .number = 1,
				    .title = profile->title,
				    .words = profile->words };
	struct rb_strip_drawer drawer;
	struct wrapped title = { .lines = 0 }, words = { .lines = 0 };
	int top;

	if (profile->out_of_memory || !rb_strip_drawer_init(&drawer, profile) ||
	    !wrap(&title, profile->arena, profile->title, RB_STRIP_COLUMNS) ||
	    !wrap(&words, profile->arena, profile->words, RB_STRIP_COLUMNS))
		return false;
	head.height = RB_STRIP_MARGIN + 2 + ((int)words.lines + 2) * RB_SVG_LINE;
	for (size_t i = 0; i < drawer.scale.strips; i++)
		head.height += rb_strip_height(&drawer, i);
	rb_svg_begin(&svg, &head);
	top = draw_head(&svg, &title, &words);
	for (size_t i = 0; i < drawer.scale.strips; i++) {
		rb_strip_draw(&drawer, &svg, i, top);
		top += rb_strip_height(&drawer, i);
	}
	rb_svg_end(&svg);
	return !drawer.out_of_memory;
}

bool rb_profile_write_figures(struct rb_sink *sink, const struct rb_profile *profile)
{
	struct rb_svg svg = { sink, false };
	struct rb_strip_drawer drawer;

	if (profile->out_of_memory || !rb_strip_drawer_init(&drawer, profile))
		return false;
	for (size_t i = 0; i < drawer.scale.strips; i++) {
		const struct rb_svg_head head = {
			.width = RB_STRIP_WIDTH,
			.height = rb_strip_height(&drawer, i),
			.number = (unsigned)i + 1,
			.title = profile->title,
			.words = profile->words,
			.part = (unsigned)i + 1,
			.parts = (unsigned)drawer.scale.strips,
		};

		rb_sink_text(sink, "<figure class=\"scroll\" tabindex=\"0\">\n");
		rb_svg_begin(&svg, &head);
		rb_strip_draw(&drawer, &svg, i, 0);
		rb_svg_end(&svg);
		rb_sink_text(sink, "</figure>\n");
	}
	return !drawer.out_of_memory;
}
