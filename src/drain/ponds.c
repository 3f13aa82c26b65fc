/* SPDX-License-Identifier: MIT */
/* ponds.c - standing water, walked up from the outlet. */
#include "drain/ponds.h"

#include "measure/wide.h"

struct walk {
	struct rb_laid *laid;
	const rb_length *step; /* by shot */
	rb_length water; /* the level at which water would stand: the highest invert so
			    far */
	uint32_t dam;    /* the shot that holds it */
	bool is_wet;     /* the pond last begun goes on */
};

/* How far up the leg to a dry shot the water reaches, from where that leg comes in: that
 * is under water, and the dry shot is not. */
static rb_length wet_part(const struct walk *w, uint32_t dry, uint32_t wet)
{
	const struct rb_laid_shot *shot = w->laid->shot;
	rb_length run = rb_length_sub(shot[wet].run, shot[dry].run);
	rb_length in = rb_length_add(shot[wet].invert, w->step[wet]);
	rb_length depth = rb_length_sub(w->water, in);
	rb_length rise = rb_length_sub(shot[dry].invert, in);

	return rb_length_share(run, depth.nm, rise.nm);
}

static void begin(struct walk *w, uint32_t i)
{
	struct rb_laid *laid = w->laid;
	struct rb_pond *pond = &laid->pond[laid->ponds++];

	*pond = (struct rb_pond){
		.from = i,
		.to = w->dam,
		.deepest = i,
		.depth = rb_length_sub(w->water, laid->shot[i].invert),
		.wet = rb_length_sub(laid->shot[w->dam].run, laid->shot[i].run),
	};
	w->is_wet = true;
}

static void go_on(struct walk *w, uint32_t i)
{
	struct rb_laid *laid = w->laid;
	struct rb_pond *pond = &laid->pond[laid->ponds - 1];
	rb_length depth = rb_length_sub(w->water, laid->shot[i].invert);

	pond->from = i;
	pond->wet = rb_length_sub(laid->shot[pond->to].run, laid->shot[i].run);
	if (rb_length_compare(depth, pond->depth) <= 0)
		return;
	pond->depth = depth;
	pond->deepest = i;
}

/* The shot is dry: the pond below it, if there is one, ends on the leg between.  What
 * comes in is no lower, because no step goes up, and is the next dam. */
static void end(struct walk *w, uint32_t i)
{
	if (w->is_wet) {
		struct rb_pond *pond = &w->laid->pond[w->laid->ponds - 1];

		pond->wet = rb_length_add(pond->wet, wet_part(w, i, i + 1));
		pond->from = i;
	}
}

static void take(struct walk *w, uint32_t i)
{
	rb_length invert = w->laid->shot[i].invert;
	rb_length in = rb_length_add(invert, w->step[i]);

	if (rb_length_compare(invert, w->water) < 0) {
		if (w->is_wet)
			go_on(w, i);
		else
			begin(w, i);
	} else {
		end(w, i);
	}
	/* What comes in over a step is the lip for the pipe above. */
	if (rb_length_compare(in, w->water) < 0)
		return;
	w->water = in;
	w->dam = i;
	w->is_wet = false;
}

static void turn_round(struct rb_laid *laid)
{
	for (uint32_t i = 0; i < laid->ponds / 2; i++) {
		struct rb_pond other = laid->pond[i];

		laid->pond[i] = laid->pond[laid->ponds - 1 - i];
		laid->pond[laid->ponds - 1 - i] = other;
	}
}

bool rb_ponds(struct rb_arena *arena, struct rb_laid *laid, const rb_length *step)
{
	struct walk w = { laid, step, rb_length_none(), 0, false };

	laid->pond = rb_arena_take(arena, laid->shots, sizeof *laid->pond);
	if (!laid->pond)
		return false;
	for (uint32_t i = laid->shots; i-- > 0;)
		take(&w, i);
	turn_round(laid);
	return true;
}
