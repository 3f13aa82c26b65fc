/* SPDX-License-Identifier: MIT */
/* labels.c - a search for free places, the nearest first. */
#include "report/labels.h"

#define STEP     4    /* pixels from one try to the next */
#define OFF_SIDE 14   /* what it costs to stand on another side than the best */
#define BESIDE   44   /* the same, beside what it should stand above or below */
#define ON_LINE  30   /* what each line costs that is covered */
#define NEAR     10   /* pixels off which nothing need lead to the label */
#define FAR      (-1) /* the cost of no place at all */
#define MARGIN   2    /* between labels */

bool rb_labels_init(struct rb_labels *labels, struct rb_arena *arena, size_t boxes,
		    size_t lines)
{
	*labels = (struct rb_labels){
		.box = rb_arena_take(arena, boxes + 1, sizeof *labels->box),
		.boxes_most = boxes,
		.line = rb_arena_take(arena, lines + 1, sizeof *labels->line),
		.lines_most = lines,
	};
	return labels->box && labels->line;
}

void rb_labels_begin(struct rb_labels *labels, struct rb_box within)
{
	labels->within = within;
	labels->boxes = labels->lines = 0;
}

void rb_labels_take(struct rb_labels *labels, struct rb_box box)
{
	if (labels->boxes < labels->boxes_most)
		labels->box[labels->boxes++] = box;
}

void rb_labels_line(struct rb_labels *labels, struct rb_pixel from, struct rb_pixel to)
{
	if (labels->lines == labels->lines_most)
		return;
	labels->line[labels->lines][0] = from;
	labels->line[labels->lines++][1] = to;
}

bool rb_box_overlaps(struct rb_box a, struct rb_box b)
{
	return a.left < b.right && b.left < a.right && a.top < b.bottom &&
	       b.top < a.bottom;
}

/* On which side of the line through a and b a corner lies. */
static int side_of(struct rb_pixel a, struct rb_pixel b, int x, int y)
{
	int64_t cross =
		(int64_t)(b.x - a.x) * (y - a.y) - (int64_t)(b.y - a.y) * (x - a.x);

	return (cross > 0) - (cross < 0);
}

/* A line misses a box when it lies wholly beyond one of its sides, or has all of its
 * corners on one side. */
static bool crosses(struct rb_box box, const struct rb_pixel line[2])
{
	struct rb_pixel a = line[0], b = line[1];
	int corner = side_of(a, b, box.left, box.top);

	if ((a.x < box.left && b.x < box.left) || (a.x > box.right && b.x > box.right) ||
	    (a.y < box.top && b.y < box.top) || (a.y > box.bottom && b.y > box.bottom))
		return false;
	return corner != side_of(a, b, box.right, box.top) ||
	       corner != side_of(a, b, box.left, box.bottom) ||
	       corner != side_of(a, b, box.right, box.bottom);
}

static bool is_free(const struct rb_labels *labels, struct rb_box box)
{
	struct rb_box wide = { box.left - MARGIN, box.top, box.right + MARGIN,
			       box.bottom };

	if (box.left < labels->within.left || box.right > labels->within.right ||
	    box.top < labels->within.top || box.bottom > labels->within.bottom)
		return false;
	for (size_t i = 0; i < labels->boxes; i++)
		if (rb_box_overlaps(wide, labels->box[i]))
			return false;
	return true;
}

static int count_crossed(const struct rb_labels *labels, struct rb_box box)
{
	int crossed = 0;

	for (size_t i = 0; i < labels->lines; i++)
		crossed += crosses(box, labels->line[i]);
	return crossed;
}

/* Above or below, a label may be moved along until it is within. */
static void move_within(struct rb_placed *placed, struct rb_box within)
{
	int move = placed->box.left < within.left     ? within.left - placed->box.left
		   : placed->box.right > within.right ? within.right - placed->box.right
						      : 0;

	placed->at.x += move;
	placed->box.left += move;
	placed->box.right += move;
}

static int cost_of(enum rb_side best, enum rb_side side)
{
	if (side == best)
		return 0;
	return best <= RB_SIDE_BELOW && side > RB_SIDE_BELOW ? BESIDE : OFF_SIDE;
}

/* The label on a side of what it names, `off` pixels up (negative) or down from there. */
static struct rb_placed stand(const struct rb_label *label, enum rb_side side, int off)
{
	struct rb_pixel at = label->at;
	struct rb_placed placed = { .anchor = RB_ANCHOR_MIDDLE };
	int middle = (RB_SVG_ASCENT - RB_SVG_DESCENT) / 2;

	at.y += off;
	if (side == RB_SIDE_ABOVE)
		at.y -= label->clear + RB_SVG_DESCENT;
	else if (side == RB_SIDE_BELOW)
		at.y += label->clear + RB_SVG_ASCENT;
	else
		at.y += middle;
	if (side == RB_SIDE_LEFT || side == RB_SIDE_RIGHT) {
		placed.anchor = side == RB_SIDE_LEFT ? RB_ANCHOR_END : RB_ANCHOR_START;
		at.x += side == RB_SIDE_LEFT ? -label->clear : label->clear;
	}
	placed.at = at;
	placed.box = rb_svg_text_box(at, placed.anchor, label->text);
	return placed;
}

/* A label that is moved is led to from its own height. */
static void lead(struct rb_placed *placed, const struct rb_label *label, int off)
{
	int middle = (placed->box.top + placed->box.bottom) / 2;

	placed->led = off > NEAR || off < -NEAR;
	placed->leader.x = label->at.x < placed->box.left    ? placed->box.left
			   : label->at.x > placed->box.right ? placed->box.right
							     : label->at.x;
	placed->leader.y = label->at.y < placed->box.top      ? placed->box.top
			   : label->at.y > placed->box.bottom ? placed->box.bottom
							      : middle;
}

/* A search, and the best that it has found. */
struct search {
	const struct rb_labels *labels;
	const struct rb_label *label;
	struct rb_placed best;
	int cost;
};

static void try_place(struct search *s, enum rb_side side, int off)
{
	struct rb_placed placed = stand(s->label, side, off);
	int cost = (off < 0 ? -off : off) + cost_of(s->label->side, side);

	if (side <= RB_SIDE_BELOW)
		move_within(&placed, s->labels->within);
	if ((s->cost != FAR && cost >= s->cost) || !is_free(s->labels, placed.box))
		return;
	cost += ON_LINE * count_crossed(s->labels, placed.box);
	if (s->cost != FAR && cost >= s->cost)
		return;
	lead(&placed, s->label, off);
	s->best = placed;
	s->cost = cost;
}

bool rb_labels_place(struct rb_labels *labels, const struct rb_label *label,
		     struct rb_placed *placed)
{
	struct search s = { .labels = labels, .label = label, .cost = FAR };
	int height = labels->within.bottom - labels->within.top;

	if (labels->boxes == labels->boxes_most)
		return false;
	for (int off = 0; off <= height && (s.cost == FAR || off < s.cost); off += STEP)
		for (int side = RB_SIDE_ABOVE; side <= RB_SIDE_RIGHT; side++) {
			try_place(&s, (enum rb_side)side, -off);
			try_place(&s, (enum rb_side)side, off);
		}
	if (s.cost == FAR)
		return false;
	*placed = s.best;
	rb_labels_take(labels, placed->box);
	return true;
}
