/* SPDX-License-Identifier: MIT */
/* svg.c - elements, written one after another. */
#include "report/svg.h"

#include <string.h>

#include "report/escape.h"
#include "report/width.h"

/* clang-format off */
static const char *const strokes[RB_STROKES] = {
	[RB_STROKE_HAIR]         = "stroke=\"#000\" stroke-width=\"0.8\"",
	[RB_STROKE_GRID]         = "stroke=\"#c4c4c4\" stroke-width=\"0.6\"",
	[RB_STROKE_LEADER]       = "stroke=\"#888\" stroke-width=\"0.7\"",
	[RB_STROKE_SOLID]        = "stroke=\"#000\" stroke-width=\"1.6\"",
	[RB_STROKE_HEAVY]        = "stroke=\"#000\" stroke-width=\"2.6\"",
	[RB_STROKE_DASHED]       = "stroke=\"#000\" stroke-width=\"1.2\" stroke-dasharray=\"7 4\"",
	[RB_STROKE_DOT_DASHED]   = "stroke=\"#000\" stroke-width=\"1\" stroke-dasharray=\"10 3 2 3\"",
	[RB_STROKE_HEAVY_DOTTED] = "stroke=\"#000\" stroke-width=\"4\" stroke-dasharray=\"4 4\"",
	[RB_STROKE_FILLED]       = "fill=\"#000\"",
	[RB_STROKE_PAPER]        = "fill=\"#fff\" stroke=\"#000\" stroke-width=\"1.2\"",
};

static const char *const anchors[] = {
	[RB_ANCHOR_START] = "", [RB_ANCHOR_MIDDLE] = " text-anchor=\"middle\"",
	[RB_ANCHOR_END] = " text-anchor=\"end\"",
};
/* clang-format on */

/* The widths of letters are those of the widest of these, 0.602 of 13 pixels. */
#define LETTERING                                                                        \
	"font-family=\"ui-monospace, Menlo, Consolas, 'DejaVu Sans Mono', "              \
	"'Liberation Mono', monospace\" font-size=\"13\""

static void put(struct rb_svg *svg, const char *text)
{
	rb_sink_text(svg->sink, text);
}

static void put_number(struct rb_svg *svg, int64_t number)
{
	rb_sink_number(svg->sink, number);
}

/* x="12" */
static void put_attribute(struct rb_svg *svg, const char *name, int value)
{
	put(svg, " ");
	put(svg, name);
	put(svg, "=\"");
	put_number(svg, value);
	put(svg, "\"");
}

static void put_title(struct rb_svg *svg, const struct rb_svg_head *head)
{
	rb_sink_escaped_text(svg->sink, head->title);
	if (head->parts < 2)
		return;
	put(svg, ", part ");
	put_number(svg, head->part);
	put(svg, " of ");
	put_number(svg, head->parts);
}

/* <title id="picture1-title">: an id is made of our own words and a number alone. */
static void put_id(struct rb_svg *svg, const char *what, unsigned number)
{
	put(svg, "picture");
	put_number(svg, number);
	put(svg, what);
}

static void put_size(struct rb_svg *svg, const struct rb_svg_head *head)
{
	put_attribute(svg, "width", head->width);
	put_attribute(svg, "height", head->height);
	put(svg, " viewBox=\"0 0 ");
	put_number(svg, head->width);
	put(svg, " ");
	put_number(svg, head->height);
	put(svg, "\"");
}

void rb_svg_begin(struct rb_svg *svg, const struct rb_svg_head *head)
{
	if (svg->alone)
		put(svg, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
	put(svg, "<svg xmlns=\"http://www.w3.org/2000/svg\"");
	put_size(svg, head);
	put(svg, " role=\"img\" aria-labelledby=\"");
	put_id(svg, "-title ", head->number);
	put_id(svg, "-words\">\n<title id=\"", head->number);
	put_id(svg, "-title\">", head->number);
	put_title(svg, head);
	put(svg, "</title>\n<desc id=\"");
	put_id(svg, "-words\">", head->number);
	rb_sink_escaped_text(svg->sink, head->words);
	put(svg, "</desc>\n<g " LETTERING " fill=\"none\">\n");
	if (svg->alone)
		put(svg, "<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
}

void rb_svg_end(struct rb_svg *svg)
{
	put(svg, "</g>\n</svg>\n");
}

static void put_stroke(struct rb_svg *svg, enum rb_stroke stroke)
{
	put(svg, " ");
	put(svg, strokes[stroke]);
	put(svg, "/>\n");
}

static void put_pixels(struct rb_svg *svg, const char *element,
		       const struct rb_pixel *pixel, size_t pixels)
{
	put(svg, "<");
	put(svg, element);
	put(svg, " points=\"");
	for (size_t i = 0; i < pixels; i++) {
		put(svg, i ? " " : "");
		put_number(svg, pixel[i].x);
		put(svg, ",");
		put_number(svg, pixel[i].y);
	}
	put(svg, "\"");
}

void rb_svg_polyline(struct rb_svg *svg, enum rb_stroke stroke,
		     const struct rb_pixel *pixel, size_t pixels)
{
	put_pixels(svg, "polyline", pixel, pixels);
	put_stroke(svg, stroke);
}

void rb_svg_polygon(struct rb_svg *svg, enum rb_stroke stroke,
		    const struct rb_pixel *pixel, size_t pixels)
{
	put_pixels(svg, "polygon", pixel, pixels);
	put_stroke(svg, stroke);
}

void rb_svg_line(struct rb_svg *svg, enum rb_stroke stroke, struct rb_pixel from,
		 struct rb_pixel to)
{
	const struct rb_pixel ends[] = { from, to };

	rb_svg_polyline(svg, stroke, ends, 2);
}

void rb_svg_rect(struct rb_svg *svg, enum rb_stroke stroke, struct rb_box box)
{
	put(svg, "<rect");
	put_attribute(svg, "x", box.left);
	put_attribute(svg, "y", box.top);
	put_attribute(svg, "width", box.right - box.left);
	put_attribute(svg, "height", box.bottom - box.top);
	put_stroke(svg, stroke);
}

void rb_svg_dot(struct rb_svg *svg, enum rb_stroke stroke, struct rb_pixel at, int radius)
{
	put(svg, "<circle");
	put_attribute(svg, "cx", at.x);
	put_attribute(svg, "cy", at.y);
	put_attribute(svg, "r", radius);
	put_stroke(svg, stroke);
}

/* A rim of white keeps letters legible where a line runs under them. */
void rb_svg_text(struct rb_svg *svg, struct rb_pixel at, enum rb_anchor anchor,
		 const char *text, bool strong)
{
	put(svg, "<text");
	put_attribute(svg, "x", at.x);
	put_attribute(svg, "y", at.y);
	put(svg, anchors[anchor]);
	put(svg, strong ? " font-weight=\"bold\"" : "");
	put(svg, " fill=\"#000\" stroke=\"#fff\" stroke-width=\"3\" "
		 "stroke-linejoin=\"round\" paint-order=\"stroke\">");
	rb_sink_escaped_text(svg->sink, text);
	put(svg, "</text>\n");
}

struct rb_box rb_svg_text_box(struct rb_pixel at, enum rb_anchor anchor, const char *text)
{
	int width = (int)rb_width(text, strlen(text)) * RB_SVG_COLUMN;
	int left = anchor == RB_ANCHOR_START    ? at.x
		   : anchor == RB_ANCHOR_MIDDLE ? at.x - width / 2
						: at.x - width;

	return (struct rb_box){ left, at.y - RB_SVG_ASCENT, left + width,
				at.y + RB_SVG_DESCENT };
}
