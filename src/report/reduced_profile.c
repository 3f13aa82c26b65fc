/* SPDX-License-Identifier: MIT */
/* reduced_profile.c - setups, rods and points, from left to right. */
#include "report/reduced_profile.h"

#include "report/phrase.h"
#include "report/reduced_run.h"
#include "report/reduced_table.h"
#include "report/section_words.h"
#include "report/titles.h"

#define ASIDE        5 /* pixels: the two rods of a turning point stand side by side */
#define STRIP        7 /* places in a strip */
#define STRIP_INCHES 6 /* feet and inches take more room */

struct maker {
	const struct rb_reduction *r;
	const struct rb_reduced *reduced;
	struct rb_profile *profile;
	struct rb_phrase phrase;
	struct rb_run_places run;
	uint32_t section; /* the next to end */
	bool ground_named;
};

static bool is_sighted(const struct rb_shot *shot)
{
	return shot->booked != RB_BOOKED_NOWHERE;
}

static struct rb_profile_spot spot(const struct maker *m, uint32_t shot,
				   rb_length elevation, int aside)
{
	return (struct rb_profile_spot){ m->run.along[shot], elevation, aside };
}

static void label(struct maker *m, struct rb_profile_spot at, enum rb_side side,
		  bool strong)
{
	rb_profile_label(m->profile, at, side, m->phrase.text ? m->phrase.text : "",
			 strong);
	rb_phrase_clear(&m->phrase);
}

/* "FS 6.03", "IS 3.00 inv" */
static void say_reading(struct maker *m, const char *what, rb_length reading)
{
	rb_phrase_text(&m->phrase, what);
	rb_phrase_length(&m->phrase, rb_length_absolute(reading), m->r->style);
	rb_phrase_text(&m->phrase, reading.nm < 0 ? " inv" : "");
}

/* -- what stands at a place -- */

static void add_rod(struct maker *m, struct rb_profile_spot foot, rb_length sight,
		    const char *what, enum rb_side side)
{
	struct rb_profile_spot top = foot, middle = foot;

	top.elevation = sight;
	middle.elevation.nm = (foot.elevation.nm + sight.nm) / 2;
	rb_profile_line(m->profile, RB_LOOK_ROD, foot, top);
	say_reading(m, what, rb_length_sub(sight, foot.elevation));
	label(m, middle, side, false);
}

static bool on_the_ground(const struct rb_reduction *r, uint32_t shot)
{
	static const bool ground[] = {
		[RB_ON_UNSAID] = true,
		[RB_ON_GROUND] = true,
		[RB_ON_RIM] = true,
		[RB_ON_FLOOR] = true,
	};
	size_t on = rb_reduction_rows(r, shot).rod_on;
	rb_length reading = rb_shot_reading(rb_reduction_reduced(r), shot);

	return on < sizeof ground / sizeof *ground && ground[on] &&
	       !(rb_length_given(reading) && reading.nm < 0);
}

static enum rb_profile_mark mark_of(const struct maker *m, uint32_t shot)
{
	if (rb_length_given(rb_reduction_known(m->r, shot)))
		return RB_MARK_BENCHMARK;
	return on_the_ground(m->r, shot) ? RB_MARK_POINT : RB_MARK_SURFACE;
}

/* From a known point on its known elevation, where it was not the one reached. */
static rb_length started_from(const struct maker *m, uint32_t shot)
{
	rb_length known = rb_reduction_known(m->r, shot);

	return rb_length_given(known) ? known : m->reduced->shot[shot].elevation;
}

static void add_place(struct maker *m, uint32_t shot)
{
	const struct rb_shot *s = &m->reduced->shot[shot];
	rb_length adjusted = rb_shot_adjusted(m->r->adjusted, shot);
	char raw[RB_LENGTH_TEXT], moved[RB_LENGTH_TEXT];
	struct rb_style finer = rb_adjusted_style(m->r->style, m->r->fraction_asked);
	const char *text[RB_PROFILE_BAND] = {
		rb_book_typed(rb_reduction_book(m->r), s->row), raw, moved, NULL
	};

	rb_length_format(raw, s->elevation, m->r->style);
	rb_length_format(moved, adjusted, finer);
	if (rb_length_given(adjusted))
		m->profile->band[2] = "adjusted";
	rb_profile_place(m->profile, m->run.along[shot], text);
}

/* How far off the section ends, loudest where it is too far. */
static void add_end(struct maker *m, const struct rb_section *section)
{
	struct rb_profile_spot at =
		spot(m, section->end, m->reduced->shot[section->end].elevation, 0);
	bool fails = section->verdict == RB_BEYOND;

	if (!rb_length_given(section->misclosure) || (!fails && !section->misclosure.nm))
		return;
	if (fails) {
		rb_profile_mark(m->profile, RB_MARK_FAILING, at);
		rb_phrase_text(&m->phrase, "DOES NOT CLOSE: ");
	}
	rb_phrase_off(&m->phrase, section->misclosure, m->r->style);
	label(m, at, RB_SIDE_BELOW, fails);
}

static void add_ends(struct maker *m, uint32_t shot)
{
	const struct rb_sections *sections = rb_reduction_sections(m->r);

	while (m->section < sections->sections &&
	       sections->section[m->section].end == shot)
		add_end(m, &sections->section[m->section++]);
}

static void add_instrument(struct maker *m, uint32_t setup, uint32_t shot)
{
	rb_length hi = m->reduced->setup[setup].height_of_instrument;
	struct rb_profile_spot at = { m->run.instrument[setup], hi, 0 };

	add_rod(m,
		spot(m, shot, started_from(m, shot),
		     is_sighted(&m->reduced->shot[shot]) ? ASIDE : 0),
		hi, "BS ", RB_SIDE_RIGHT);
	rb_profile_mark(m->profile, RB_MARK_INSTRUMENT, at);
	rb_phrase_text(&m->phrase, "HI ");
	rb_phrase_length(&m->phrase, hi, m->r->style);
	label(m, at, RB_SIDE_ABOVE, false);
}

/* -- from the place before -- */

static void name_line(struct maker *m, bool *named, struct rb_profile_spot from,
		      struct rb_profile_spot to, const char *name)
{
	struct rb_profile_spot at = from;

	if (*named)
		return;
	*named = true;
	at.along.nm += (to.along.nm - from.along.nm) / 2;
	at.elevation.nm += (to.elevation.nm - from.elevation.nm) / 2;
	rb_profile_label(m->profile, at, RB_SIDE_BELOW, name, false);
}

static void add_ground(struct maker *m, uint32_t shot)
{
	struct rb_profile_spot from = spot(m, shot - 1, started_from(m, shot - 1), 0);
	struct rb_profile_spot to = spot(m, shot, m->reduced->shot[shot].elevation, 0);

	if (!on_the_ground(m->r, shot - 1) || !on_the_ground(m->r, shot))
		return;
	rb_profile_line(m->profile, RB_LOOK_GROUND, from, to);
	name_line(m, &m->ground_named, from, to, "ground");
}

static void add_sight(struct maker *m, uint32_t shot)
{
	const struct rb_shot *s = &m->reduced->shot[shot];
	rb_length hi = m->reduced->setup[s->setup].height_of_instrument;
	bool turns = rb_shot_opens(s) != RB_NO_SETUP;
	bool side = s->booked == RB_BOOKED_INTERMEDIATE;

	rb_profile_line(m->profile, RB_LOOK_SIGHT, spot(m, shot - 1, hi, 0),
			spot(m, shot, hi, 0));
	add_ground(m, shot);
	add_rod(m, spot(m, shot, s->elevation, turns ? -ASIDE : 0), hi,
		side ? "IS " : "FS ", RB_SIDE_LEFT);
}

static void add_shot(struct maker *m, uint32_t shot)
{
	const struct rb_shot *s = &m->reduced->shot[shot];
	uint32_t opens = rb_shot_opens(s);

	add_place(m, shot);
	if (shot && is_sighted(s))
		add_sight(m, shot);
	rb_profile_mark(m->profile, mark_of(m, shot), spot(m, shot, s->elevation, 0));
	add_ends(m, shot);
	if (opens != RB_NO_SETUP)
		add_instrument(m, opens, shot);
}

/* -- the picture -- */

static const char *keep(struct maker *m)
{
	const char *text = rb_arena_text(m->phrase.arena, m->phrase.text, m->phrase.used);

	rb_phrase_clear(&m->phrase);
	m->profile->out_of_memory |= !text;
	return text ? text : "";
}

static void say(struct maker *m)
{
	const struct rb_book *book = rb_reduction_book(m->r);
	const struct rb_sections *sections = rb_reduction_sections(m->r);

	rb_phrase_text(&m->phrase, "Levels of ");
	rb_phrase_words(&m->phrase, *book->key.project ? book->key.project
						       : rb_title_file(book->file));
	rb_phrase_text(&m->phrase, *book->key.date ? ", " : "");
	rb_phrase_words(&m->phrase, book->key.date);
	m->profile->title = keep(m);
	for (uint32_t i = 0; i < sections->sections; i++) {
		rb_phrase_text(&m->phrase, i ? " " : "");
		rb_section_verdict(&m->phrase, m->r, &sections->section[i]);
	}
	m->profile->words = keep(m);
}

struct rb_profile *rb_reduced_profile(struct rb_arena *arena,
				      const struct rb_reduction *r)
{
	struct maker m = { .r = r,
			   .reduced = rb_reduction_reduced(r),
			   .profile = rb_profile_new(arena, r->style) };

	rb_phrase_init(&m.phrase, arena);
	if (!m.profile || m.phrase.out_of_memory ||
	    !rb_run_places_init(&m.run, arena, m.reduced))
		return NULL;
	m.profile->to_scale = m.run.to_scale;
	m.profile->strip = r->style.unit == RB_FEET_INCHES ? STRIP_INCHES : STRIP;
	m.profile->band[0] = "point";
	m.profile->band[1] = "elevation";
	say(&m);
	for (uint32_t i = 0; i < m.reduced->shots; i++)
		add_shot(&m, i);
	return m.profile->out_of_memory || m.phrase.out_of_memory ? NULL : m.profile;
}
