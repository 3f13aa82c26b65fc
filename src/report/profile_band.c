/* SPDX-License-Identifier: MIT */
/* profile_band.c - columns of words under a strip. */
#include "report/profile_band.h"

#include <string.h>

#include "report/width.h"

#define LEAD      16  /* pixels in which lines lead to columns that were pushed */
#define GAP       8   /* between columns */
#define WIDEST    192 /* a column is no wider than that */
#define CUT_BYTES 128
#define TICK      4

int rb_band_lines(const struct rb_profile *profile)
{
	int lines = 1;

	for (const struct rb_profile_place *p = profile->first_place; p; p = p->next)
		for (int i = lines; i < RB_PROFILE_BAND; i++)
			if (p->text[i])
				lines = i + 1;
	return lines;
}

int rb_band_height(int lines)
{
	return LEAD + lines * RB_SVG_LINE + RB_SVG_DESCENT;
}

/* Columns that overlap are pushed to the right, and back from the right edge. */
void rb_band_spread(int *middle, size_t count, int width, int left, int right)
{
	int least = left + width / 2;
	int most = right - width / 2;

	for (size_t i = 0; i < count; i++) {
		if (middle[i] < least)
			middle[i] = least;
		least = middle[i] + width;
	}
	for (size_t i = count; i-- > 0;) {
		if (middle[i] > most)
			middle[i] = most;
		most = middle[i] - width;
	}
}

/* A text that fits so many columns: what does not is cut off and shown to be. */
static const char *cut(char out[static CUT_BYTES], const char *text, size_t columns)
{
	size_t at = 0, used = 0, length = strlen(text);

	if (rb_width(text, length) <= columns && length < CUT_BYTES)
		return text;
	while (at < length) {
		struct rb_glyph glyph = rb_glyph_of(text + at, length - at);

		if (used + glyph.columns + 1 > columns ||
		    at + glyph.bytes + 4 > CUT_BYTES)
			break;
		at += glyph.bytes;
		used += glyph.columns;
	}
	memcpy(out, text, at);
	memcpy(out + at, "\xE2\x80\xA6", 4);
	return out;
}

static void draw_column(struct rb_svg *svg, const struct rb_profile_place *place,
			int middle, int top, size_t columns)
{
	char out[CUT_BYTES];

	for (int i = 0; i < RB_PROFILE_BAND; i++) {
		struct rb_pixel at = { middle,
				       top + LEAD + RB_SVG_ASCENT + i * RB_SVG_LINE };

		if (place->text[i])
			rb_svg_text(svg, at, RB_ANCHOR_MIDDLE,
				    cut(out, place->text[i], columns), i == 0);
	}
}

static void lead(struct rb_svg *svg, int from, int to, int top)
{
	const struct rb_pixel line[] = { { from, top },
					 { from, top + TICK },
					 { to, top + LEAD - 2 } };

	rb_svg_polyline(svg, from == to ? RB_STROKE_HAIR : RB_STROKE_LEADER, line,
			from == to ? 2 : 3);
}

/* What stands on each line, at the left. */
static void draw_headings(struct rb_svg *svg, const struct rb_profile *profile, int left,
			  int top)
{
	for (int i = 0; i < RB_PROFILE_BAND; i++) {
		struct rb_pixel at = { left,
				       top + LEAD + RB_SVG_ASCENT + i * RB_SVG_LINE };

		if (profile->band[i])
			rb_svg_text(svg, at, RB_ANCHOR_START, profile->band[i], false);
	}
}

static size_t headings_width(const struct rb_profile *profile)
{
	size_t columns = 0;

	for (int i = 0; i < RB_PROFILE_BAND; i++) {
		const char *text = profile->band[i] ? profile->band[i] : "";
		size_t width = rb_width(text, strlen(text));

		columns = width > columns ? width : columns;
	}
	return columns * RB_SVG_COLUMN + GAP;
}

static int left_edge(const struct rb_profile *profile)
{
	return RB_SVG_DESCENT + (int)headings_width(profile);
}

size_t rb_band_side(const struct rb_profile *profile, int right)
{
	size_t room = (size_t)(right - left_edge(profile));

	return room / (profile->widest * RB_SVG_COLUMN + GAP);
}

/* Columns are as wide as the widest text of a strip, or as there is room for all. */
static int column_width(const struct rb_profile_strip *strip, int room)
{
	const struct rb_profile_place *place = strip->place;
	size_t columns = 1;
	int width;

	for (size_t p = 0; p < strip->places; p++, place = place->next)
		for (int i = 0; i < RB_PROFILE_BAND; i++) {
			const char *text = place->text[i] ? place->text[i] : "";
			size_t own = rb_width(text, strlen(text));

			columns = own > columns ? own : columns;
		}
	if (columns * RB_SVG_COLUMN > WIDEST)
		columns = WIDEST / RB_SVG_COLUMN;
	width = (int)columns * RB_SVG_COLUMN + GAP;
	if (strip->places)
		room /= (int)strip->places;
	return width < room ? width : room;
}

void rb_band_draw(struct rb_svg *svg, const struct rb_profile *profile,
		  const struct rb_profile_scale *scale,
		  const struct rb_profile_strip *strip, int left, int right, int top)
{
	const struct rb_profile_place *place = strip->place;
	size_t count = strip->places;
	int edge = left_edge(profile);
	int width = column_width(strip, right - edge), middle[RB_PROFILE_STRIP];

	for (size_t i = 0; i < count; i++, place = place->next)
		middle[i] = left + rb_profile_right(scale, strip, place->along);
	rb_band_spread(middle, count, width, edge, right);
	draw_headings(svg, profile, RB_SVG_DESCENT, top);
	place = strip->place;
	for (size_t i = 0; i < count; i++, place = place->next) {
		lead(svg, left + rb_profile_right(scale, strip, place->along), middle[i],
		     top);
		draw_column(svg, place, middle[i], top,
			    (size_t)(width - GAP) / RB_SVG_COLUMN);
	}
}
