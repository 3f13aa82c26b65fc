/* SPDX-License-Identifier: MIT */
/* profile.c - a picture, put together in an arena. */
#include "report/profile.h"

#include <string.h>

#include "report/width.h"

struct rb_profile *rb_profile_new(struct rb_arena *arena, struct rb_style style)
{
	struct rb_profile *profile = rb_arena_take_clear(arena, 1, sizeof *profile);

	if (!profile)
		return NULL;
	profile->title = profile->words = "";
	profile->style = style;
	profile->unit_along = rb_unit_of_runs(style.unit);
	profile->strip = 2;
	profile->last = &profile->first;
	profile->last_place = &profile->first_place;
	profile->arena = arena;
	return profile;
}

void rb_profile_place(struct rb_profile *profile, rb_length along,
		      const char *const text[static RB_PROFILE_BAND])
{
	struct rb_profile_place *place =
		rb_arena_take_clear(profile->arena, 1, sizeof *place);

	for (int i = 0; place && i < RB_PROFILE_BAND; i++) {
		size_t length = text[i] ? strlen(text[i]) : 0;
		size_t width = length ? rb_width(text[i], length) : 0;

		if (!length)
			continue;
		if (i > 0 && width > profile->widest)
			profile->widest = width;
		place->text[i] = rb_arena_text(profile->arena, text[i], length);
		if (!place->text[i])
			place = NULL;
	}
	if (!place) {
		profile->out_of_memory = true;
		return;
	}
	place->along = along;
	*profile->last_place = place;
	profile->last_place = &place->next;
	profile->places++;
}

static struct rb_profile_item *add(struct rb_profile *profile, enum rb_profile_kind kind,
				   struct rb_profile_spot from, struct rb_profile_spot to)
{
	struct rb_profile_item *item =
		rb_arena_take_clear(profile->arena, 1, sizeof *item);

	if (!item) {
		profile->out_of_memory = true;
		return NULL;
	}
	item->kind = kind;
	item->from = from;
	item->to = to;
	*profile->last = item;
	profile->last = &item->next;
	return item;
}

void rb_profile_line(struct rb_profile *profile, enum rb_profile_look look,
		     struct rb_profile_spot from, struct rb_profile_spot to)
{
	struct rb_profile_item *item = add(profile, RB_ITEM_LINE, from, to);

	if (item)
		item->look = look;
	profile->lines++;
}

void rb_profile_mark(struct rb_profile *profile, enum rb_profile_mark mark,
		     struct rb_profile_spot at)
{
	struct rb_profile_item *item = add(profile, RB_ITEM_MARK, at, at);

	if (item)
		item->mark = mark;
	profile->labels++;
}

void rb_profile_label(struct rb_profile *profile, struct rb_profile_spot at,
		      enum rb_side side, const char *text, bool strong)
{
	struct rb_profile_item *item = add(profile, RB_ITEM_LABEL, at, at);

	profile->labels++;
	if (!item)
		return;
	item->side = side;
	item->strong = strong;
	item->text = rb_arena_text(profile->arena, text, strlen(text));
	profile->out_of_memory |= !item->text;
}

/* The spot of a line at a place along it. */
static struct rb_profile_spot at(struct rb_profile_spot from, struct rb_profile_spot to,
				 rb_length along)
{
	rb_length rise = rb_length_sub(to.elevation, from.elevation);
	int64_t run = to.along.nm - from.along.nm;

	if (run)
		rise = rb_length_share(rise, along.nm - from.along.nm, run);
	return (struct rb_profile_spot){ along, rb_length_add(from.elevation, rise),
					 from.aside };
}

void rb_profile_clip(struct rb_profile_spot *from, struct rb_profile_spot *to,
		     rb_length left, rb_length right)
{
	struct rb_profile_spot a = *from, b = *to;

	if (a.along.nm < left.nm)
		*from = at(a, b, left);
	if (b.along.nm > right.nm)
		*to = at(a, b, right);
}
