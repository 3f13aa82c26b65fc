/* SPDX-License-Identifier: MIT */
/* profile_marks.c - strokes and small drawings. */
#include "report/profile_marks.h"

#define ROD_TICK 3

static const enum rb_stroke strokes[RB_LOOKS] = {
	[RB_LOOK_SIGHT] = RB_STROKE_HAIR,
	[RB_LOOK_ROD] = RB_STROKE_HEAVY,
	[RB_LOOK_GROUND] = RB_STROKE_DASHED,
	[RB_LOOK_INVERT] = RB_STROKE_HEAVY,
	[RB_LOOK_TOP_OF_PIPE] = RB_STROKE_HAIR,
	[RB_LOOK_TRENCH_BOTTOM] = RB_STROKE_DOT_DASHED,
	[RB_LOOK_FAILING] = RB_STROKE_HEAVY_DOTTED,
	[RB_LOOK_UPRIGHT] = RB_STROKE_HAIR,
};

void rb_profile_stroke(struct rb_svg *svg, enum rb_profile_look look,
		       struct rb_pixel from, struct rb_pixel to)
{
	rb_svg_line(svg, strokes[look], from, to);
	if (look != RB_LOOK_ROD)
		return;
	/* where the line of sight meets the rod */
	rb_svg_line(svg, RB_STROKE_SOLID, (struct rb_pixel){ to.x - ROD_TICK, to.y },
		    (struct rb_pixel){ to.x + ROD_TICK, to.y });
}

static struct rb_box around(struct rb_pixel at, int left, int up, int right, int down)
{
	return (struct rb_box){ at.x - left, at.y - up, at.x + right, at.y + down };
}

static struct rb_box draw_point(struct rb_svg *svg, struct rb_pixel at)
{
	rb_svg_dot(svg, RB_STROKE_FILLED, at, 3);
	return around(at, 3, 3, 3, 3);
}

/* Its tip is at the elevation. */
static struct rb_box draw_benchmark(struct rb_svg *svg, struct rb_pixel at)
{
	const struct rb_pixel triangle[] = { at,
					     { at.x + 6, at.y + 10 },
					     { at.x - 6, at.y + 10 } };

	rb_svg_polygon(svg, RB_STROKE_FILLED, triangle, 3);
	return around(at, 6, 0, 6, 10);
}

static struct rb_box draw_surface(struct rb_svg *svg, struct rb_pixel at)
{
	struct rb_box box = around(at, 4, 4, 4, 4);

	rb_svg_rect(svg, RB_STROKE_PAPER, box);
	return box;
}

/* A telescope on three legs; the line of sight goes through it. */
static struct rb_box draw_instrument(struct rb_svg *svg, struct rb_pixel at)
{
	struct rb_pixel head = { at.x, at.y + 4 };

	for (int leg = -9; leg <= 9; leg += 9)
		rb_svg_line(svg, RB_STROKE_HAIR, head,
			    (struct rb_pixel){ at.x + leg, at.y + 26 });
	rb_svg_rect(svg, RB_STROKE_PAPER, around(at, 9, 4, 9, 4));
	return around(at, 9, 4, 9, 26);
}

static struct rb_box draw_failing(struct rb_svg *svg, struct rb_pixel at)
{
	rb_svg_line(svg, RB_STROKE_HEAVY, (struct rb_pixel){ at.x - 6, at.y - 6 },
		    (struct rb_pixel){ at.x + 6, at.y + 6 });
	rb_svg_line(svg, RB_STROKE_HEAVY, (struct rb_pixel){ at.x - 6, at.y + 6 },
		    (struct rb_pixel){ at.x + 6, at.y - 6 });
	return around(at, 6, 6, 6, 6);
}

struct rb_box rb_profile_draw_mark(struct rb_svg *svg, enum rb_profile_mark mark,
				   struct rb_pixel at)
{
	static struct rb_box (*const draw[RB_MARKS])(struct rb_svg *, struct rb_pixel) = {
		[RB_MARK_POINT] = draw_point,     [RB_MARK_BENCHMARK] = draw_benchmark,
		[RB_MARK_SURFACE] = draw_surface, [RB_MARK_INSTRUMENT] = draw_instrument,
		[RB_MARK_FAILING] = draw_failing,
	};

	return draw[mark](svg, at);
}
