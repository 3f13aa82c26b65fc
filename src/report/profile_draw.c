/* SPDX-License-Identifier: MIT */
/* profile_draw.c - the plot of a strip: grid, lines, marks and labels. */
#include "report/profile_draw.h"

#include <string.h>

#include "report/phrase.h"
#include "report/profile_band.h"
#include "report/profile_marks.h"
#include "report/shown.h"
#include "report/width.h"

#define PLOT_LEFT   92 /* room for the elevation scale and the headings of the band */
#define PLOT_INSET  30 /* from the end of the scale to the first place */
#define PLOT_RIGHT  (RB_STRIP_WIDTH - 40)
#define PLOT_TOP    26  /* room for a label above the highest line */
#define PLOT_HEIGHT 250 /* where the run is not to scale */
#define PLOT_SCALED 380 /* where it is: the next of 1, 2, 5 may be much less */
#define PLOT_FOOT   6

/* A strip on its way out. */
struct drawing {
	struct rb_strip_drawer *drawer;
	struct rb_svg *svg;
	const struct rb_profile_strip *strip;
	int left, bottom; /* of the first place, of the lowest elevation */
};

/* -- words about the scale -- */

static void say_exaggeration(struct rb_phrase *phrase, const struct rb_profile *profile,
			     int times)
{
	const char *unit = rb_unit_name(profile->unit_along);

	if (times == 1) {
		rb_phrase_text(phrase, "Heights and lengths are to one scale.");
		return;
	}
	rb_phrase_text(phrase, "Heights drawn ");
	rb_phrase_number(phrase, times);
	rb_phrase_text(phrase, " times larger: 1 ");
	rb_phrase_text(phrase, unit);
	rb_phrase_text(phrase, " tall = ");
	rb_phrase_number(phrase, times);
	rb_phrase_text(phrase, " ");
	rb_phrase_text(phrase, unit);
	rb_phrase_text(phrase, " long.");
}

static bool say_scale(struct rb_strip_drawer *d)
{
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, d->profile->arena);
	if (d->scale.exaggeration)
		say_exaggeration(&phrase, d->profile, d->scale.exaggeration);
	else
		rb_phrase_text(&phrase, "Heights are to scale; the run is not.");
	d->scale_words = phrase.text;
	return !phrase.out_of_memory;
}

bool rb_strip_drawer_init(struct rb_strip_drawer *d, const struct rb_profile *profile)
{
	*d = (struct rb_strip_drawer){ .profile = profile };
	d->band_lines = rb_band_lines(profile);
	return rb_profile_fit(&d->scale, profile, PLOT_RIGHT - PLOT_LEFT - PLOT_INSET,
			      rb_band_side(profile, RB_STRIP_WIDTH - RB_STRIP_MARGIN),
			      profile->to_scale ? PLOT_SCALED : PLOT_HEIGHT) &&
	       rb_labels_init(&d->labels, profile->arena, profile->labels + 1,
			      profile->lines + 1) &&
	       say_scale(d);
}

static int plot_height(const struct rb_strip_drawer *d,
		       const struct rb_profile_strip *strip)
{
	return rb_profile_up(&d->scale, strip, strip->high);
}

int rb_strip_height(const struct rb_strip_drawer *d, size_t strip)
{
	return PLOT_TOP + plot_height(d, &d->scale.strip[strip]) + PLOT_FOOT +
	       rb_band_height(d->band_lines) + RB_SVG_LINE + 2 * RB_SVG_DESCENT;
}

/* -- from the run to the paper -- */

static struct rb_pixel pixel_of(const struct drawing *g, struct rb_profile_spot spot)
{
	const struct rb_profile_scale *scale = &g->drawer->scale;

	return (struct rb_pixel){
		g->left + rb_profile_right(scale, g->strip, spot.along) + spot.aside,
		g->bottom - rb_profile_up(scale, g->strip, spot.elevation),
	};
}

/* Where strips meet, each shows its own side of the place. */
static bool is_beside(const struct drawing *g, const struct rb_profile_item *item)
{
	const struct rb_profile_scale *scale = &g->drawer->scale;
	bool first = g->strip == scale->strip;
	bool last = g->strip + 1 == scale->strip + scale->strips;

	return (!first && item->from.aside < 0 &&
		item->to.along.nm == g->strip->left.nm) ||
	       (!last && item->from.aside > 0 &&
		item->from.along.nm == g->strip->right.nm);
}

/* The items of a strip, one after another; NULL behind the last. */
static const struct rb_profile_item *next_item(const struct drawing *g,
					       const struct rb_profile_item *item)
{
	for (item = item ? item->next : g->strip->item; item; item = item->next) {
		if (item->from.along.nm > g->strip->right.nm)
			return NULL;
		if (item->to.along.nm >= g->strip->left.nm && !is_beside(g, item))
			return item;
	}
	return NULL;
}

/* -- the plot -- */

static void draw_grid(struct drawing *g)
{
	const struct rb_profile *profile = g->drawer->profile;
	struct rb_style style = profile->style;
	rb_length step = g->drawer->scale.step;
	int decimals = rb_shown_decimals(step, style.unit, 3);
	char text[RB_LENGTH_TEXT];

	style.decimals = decimals < 0 ? 3 : decimals;
	style.marked = false;
	for (rb_length e = g->strip->low; e.nm <= g->strip->high.nm; e.nm += step.nm) {
		int y = g->bottom - rb_profile_up(&g->drawer->scale, g->strip, e);

		rb_svg_line(g->svg, RB_STROKE_GRID, (struct rb_pixel){ PLOT_LEFT, y },
			    (struct rb_pixel){ RB_STRIP_WIDTH - RB_STRIP_MARGIN, y });
		rb_length_format(text, e, style);
		rb_svg_text(g->svg,
			    (struct rb_pixel){ PLOT_LEFT - 6, y + RB_SVG_DESCENT },
			    RB_ANCHOR_END, text, false);
	}
}

/* Feet and inches carry their marks. */
static void draw_unit(struct drawing *g, int y)
{
	enum rb_unit unit = g->drawer->profile->style.unit;

	if (unit != RB_FEET_INCHES)
		rb_svg_text(g->svg, (struct rb_pixel){ PLOT_LEFT - 6, y }, RB_ANCHOR_END,
			    rb_unit_name(unit), false);
}

static void draw_scale_line(struct drawing *g)
{
	int top = g->bottom - plot_height(g->drawer, g->strip);

	draw_unit(g, top - RB_SVG_LINE + RB_SVG_DESCENT);
	rb_svg_line(g->svg, RB_STROKE_HAIR, (struct rb_pixel){ PLOT_LEFT, top },
		    (struct rb_pixel){ PLOT_LEFT, g->bottom });
	rb_svg_line(g->svg, RB_STROKE_HAIR,
		    (struct rb_pixel){ PLOT_LEFT, g->bottom + PLOT_FOOT },
		    (struct rb_pixel){ RB_STRIP_WIDTH - RB_STRIP_MARGIN,
				       g->bottom + PLOT_FOOT });
}

static void draw_lines(struct drawing *g)
{
	for (const struct rb_profile_item *i = next_item(g, NULL); i;
	     i = next_item(g, i)) {
		struct rb_profile_spot from = i->from, to = i->to;
		struct rb_pixel a, b;

		if (i->kind != RB_ITEM_LINE)
			continue;
		rb_profile_clip(&from, &to, g->strip->left, g->strip->right);
		a = pixel_of(g, from);
		b = pixel_of(g, to);
		if (a.x == b.x && a.y == b.y)
			continue;
		rb_profile_stroke(g->svg, i->look, a, b);
		rb_labels_line(&g->drawer->labels, a, b);
	}
}

/* Only its own label may come near to a mark. */
static void draw_marks(struct drawing *g)
{
	for (const struct rb_profile_item *i = next_item(g, NULL); i; i = next_item(g, i))
		if (i->kind == RB_ITEM_MARK)
			rb_labels_take(&g->drawer->labels,
				       rb_profile_draw_mark(g->svg, i->mark,
							    pixel_of(g, i->from)));
}

/* -- labels -- */

static bool draw_label(struct drawing *g, const struct rb_profile_item *item)
{
	struct rb_label label = { .at = pixel_of(g, item->from),
				  .clear = item->from.aside || item->side > RB_SIDE_BELOW
						   ? 6
						   : 10,
				  .side = item->side,
				  .text = item->text };
	struct rb_placed placed;

	if (!rb_labels_place(&g->drawer->labels, &label, &placed))
		return false;
	if (placed.led)
		rb_svg_line(g->svg, RB_STROKE_LEADER, label.at, placed.leader);
	rb_svg_text(g->svg, placed.at, placed.anchor, item->text, item->strong);
	return true;
}

/* Returns how many found no place. */
static unsigned draw_labels(struct drawing *g, bool strong)
{
	unsigned left_out = 0;

	for (const struct rb_profile_item *i = next_item(g, NULL); i; i = next_item(g, i))
		if (i->kind == RB_ITEM_LABEL && i->strong == strong)
			left_out += !draw_label(g, i);
	return left_out;
}

/* -- underneath -- */

static void draw_bar(struct drawing *g, int right, int y)
{
	const struct rb_strip_drawer *d = g->drawer;
	int width =
		(int)rb_length_share(d->scale.bar, d->scale.pixels_long, d->scale.run.nm)
			.nm;
	const struct rb_pixel bar[] = { { right - width, y - 5 },
					{ right - width, y },
					{ right, y },
					{ right, y - 5 } };
	char text[RB_LENGTH_TEXT];

	rb_shown(text, d->scale.bar, d->profile->unit_along);
	rb_svg_polyline(g->svg, RB_STROKE_SOLID, bar, 4);
	rb_svg_text(g->svg, (struct rb_pixel){ right - width - 6, y }, RB_ANCHOR_END,
		    text, false);
}

static void draw_foot(struct drawing *g, int y, unsigned left_out)
{
	const struct rb_strip_drawer *d = g->drawer;
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, d->profile->arena);
	rb_phrase_text(&phrase, d->scale_words);
	if (left_out) {
		rb_phrase_text(&phrase, left_out > 1 ? " Labels left out: "
						     : " A label left out: ");
		rb_phrase_number(&phrase, left_out);
		rb_phrase_text(&phrase, ", see the table.");
	}
	g->drawer->out_of_memory |= phrase.out_of_memory;
	rb_svg_text(g->svg, (struct rb_pixel){ RB_SVG_DESCENT, y }, RB_ANCHOR_START,
		    phrase.text, false);
	if (rb_length_given(d->scale.bar) && !left_out)
		draw_bar(g, RB_STRIP_WIDTH - RB_STRIP_MARGIN, y);
}

void rb_strip_draw(struct rb_strip_drawer *d, struct rb_svg *svg, size_t strip, int top)
{
	const struct rb_profile_strip *s = &d->scale.strip[strip];
	struct drawing g = { .drawer = d,
			     .svg = svg,
			     .strip = s,
			     .left = PLOT_LEFT + PLOT_INSET,
			     .bottom = top + PLOT_TOP + plot_height(d, s) };
	unsigned left_out;

	rb_labels_begin(&d->labels, (struct rb_box){ PLOT_LEFT + 2, top,
						     RB_STRIP_WIDTH - RB_STRIP_MARGIN,
						     g.bottom + PLOT_FOOT });
	draw_grid(&g);
	draw_scale_line(&g);
	draw_lines(&g);
	draw_marks(&g);
	left_out = draw_labels(&g, true);
	left_out += draw_labels(&g, false);
	rb_band_draw(svg, d->profile, &d->scale, s, g.left,
		     RB_STRIP_WIDTH - RB_STRIP_MARGIN, g.bottom + PLOT_FOOT);
	draw_foot(&g,
		  g.bottom + PLOT_FOOT + rb_band_height(d->band_lines) + RB_SVG_ASCENT,
		  left_out);
}
