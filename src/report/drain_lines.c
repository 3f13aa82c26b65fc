/* SPDX-License-Identifier: MIT */
/* drain_lines.c - shots between the stations, from left to right. */
#include "report/drain_lines.h"

#include "report/section_words.h"

/* -- the ground -- */

/* A shot on the ground, counted from left to right. */
static struct rb_profile_spot shot_at(const struct rb_drain_lines *l, uint32_t shot)
{
	const struct rb_station *first = l->r->inverts->station;
	const struct rb_station *last = first + l->r->inverts->stations - 1;
	const struct rb_ground *along = &l->r->sheet->along;
	bool backward = last->chainage.nm < first->chainage.nm;
	const struct rb_ground_point *point =
		&along->point[backward ? along->points - 1 - shot : shot];
	rb_length run = rb_length_sub(point->chainage, first->chainage);

	return (struct rb_profile_spot){ backward ? rb_length_negate(run) : run,
					 point->elevation, 0 };
}

static struct rb_profile_spot middle_of(struct rb_profile_spot a,
					struct rb_profile_spot b)
{
	a.along.nm += (b.along.nm - a.along.nm) / 2;
	a.elevation.nm += (b.elevation.nm - a.elevation.nm) / 2;
	return a;
}

static void put_ground(struct rb_drain_lines *l, struct rb_profile_spot from,
		       struct rb_profile_spot to)
{
	rb_profile_line(l->profile, RB_LOOK_GROUND, from, to);
	if (!l->ground_named)
		rb_profile_label(l->profile, middle_of(from, to), RB_SIDE_ABOVE, "ground",
				 false);
	l->ground_named = true;
}

static struct rb_profile_spot ground_at(const struct rb_drain_lines *l, uint32_t station)
{
	return (struct rb_profile_spot){ l->r->inverts->station[station].run,
					 l->r->sheet->cut[station].ground, 0 };
}

void rb_drain_ground_line(struct rb_drain_lines *l, uint32_t station)
{
	struct rb_profile_spot at = ground_at(l, station);
	struct rb_profile_spot end = ground_at(l, station + 1);

	for (; l->next_ground < l->r->sheet->along.points; l->next_ground++) {
		struct rb_profile_spot shot = shot_at(l, l->next_ground);

		if (shot.along.nm >= end.along.nm)
			break;
		if (shot.along.nm <= at.along.nm)
			continue;
		if (rb_length_given(at.elevation))
			put_ground(l, at, shot);
		at = shot;
	}
	if (rb_length_given(at.elevation) && rb_length_given(end.elevation))
		put_ground(l, at, end);
}

/* -- the laid pipe -- */

static struct rb_profile_spot laid_at(const struct rb_drain_lines *l, uint32_t shot)
{
	const struct rb_laid_shot *s = &l->r->laid->shot[shot];

	return (struct rb_profile_spot){ s->run, s->invert, 0 };
}

static void put_label(struct rb_drain_lines *l, struct rb_profile_spot at,
		      enum rb_side side)
{
	rb_profile_label(l->profile, at, side, l->phrase->text ? l->phrase->text : "",
			 true);
	rb_phrase_clear(l->phrase);
}

/* From a shot to the next, where pipe lies between them. */
static void put_laid_leg(struct rb_drain_lines *l, uint32_t shot)
{
	static const char *const words[RB_LEG_VERDICTS] = {
		[RB_LEG_FLAT] = "FLAT",
		[RB_LEG_LEVEL] = "LEVEL",
		[RB_LEG_UPHILL] = "UPHILL",
	};
	struct rb_profile_spot from = laid_at(l, shot), to = laid_at(l, shot + 1);
	const char *word;

	if (from.along.nm == to.along.nm)
		return;
	word = words[l->r->laid->leg[l->next_leg++].verdict];
	rb_profile_line(l->profile, word ? RB_LOOK_FAILING : RB_LOOK_TOP_OF_PIPE, from,
			to);
	if (word)
		rb_profile_label(l->profile, middle_of(from, to), RB_SIDE_BELOW, word,
				 true);
}

static void put_laid_shot(struct rb_drain_lines *l, uint32_t shot)
{
	const struct rb_laid_shot *s = &l->r->laid->shot[shot];
	struct rb_profile_spot at = laid_at(l, shot);

	rb_profile_mark(l->profile, s->out ? RB_MARK_FAILING : RB_MARK_SURFACE, at);
	if (s->out) {
		rb_phrase_words(l->phrase, s->name);
		rb_phrase_text(l->phrase, " laid ");
		rb_phrase_off(l->phrase, s->deviation, l->style);
		put_label(l, at, RB_SIDE_BELOW);
	} else if (shot && !l->laid_named) {
		rb_profile_label(l->profile, at, RB_SIDE_BELOW, "as laid", false);
		l->laid_named = true;
	}
}

static void put_ponds(struct rb_drain_lines *l, uint32_t shot)
{
	const struct rb_laid *laid = l->r->laid;

	for (; l->next_pond < laid->ponds && laid->pond[l->next_pond].deepest <= shot;
	     l->next_pond++) {
		const struct rb_pond *pond = &laid->pond[l->next_pond];

		rb_phrase_text(l->phrase, "water stands ");
		rb_phrase_marked(l->phrase, pond->depth, l->style);
		put_label(l, laid_at(l, pond->deepest), RB_SIDE_BELOW);
	}
}

void rb_drain_laid_line(struct rb_drain_lines *l, rb_length run)
{
	const struct rb_laid *laid = l->r->laid;

	for (; laid && l->next_laid < laid->shots; l->next_laid++) {
		if (laid->shot[l->next_laid].run.nm > run.nm)
			return;
		if (l->next_laid)
			put_laid_leg(l, l->next_laid - 1);
		put_laid_shot(l, l->next_laid);
		put_ponds(l, l->next_laid);
	}
}
