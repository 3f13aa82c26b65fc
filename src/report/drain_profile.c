/* SPDX-License-Identifier: MIT */
/* drain_profile.c - stations, legs and surfaces, from left to right. */
#include "report/drain_profile.h"

#include "report/drain_lines.h"
#include "report/drain_parts.h"
#include "report/section_words.h"
#include "report/shown.h"

#define STRIP 12 /* stations in a strip */

struct maker {
	struct rb_drain_maker page; /* the words of the page, and its styles */
	const struct rb_drain_result *r;
	struct rb_profile *profile;
	struct rb_drain_lines lines;
	rb_length reach_start; /* where the reach at hand begins */
	bool invert_named, trench_named;
};

static const struct rb_station *station_at(const struct maker *m, uint32_t station)
{
	return &m->r->inverts->station[station];
}

static struct rb_profile_spot spot(const struct maker *m, uint32_t station,
				   struct rb_exact elevation)
{
	return (struct rb_profile_spot){ station_at(m, station)->run,
					 rb_exact_round(elevation), 0 };
}

static struct rb_profile_spot raised(struct rb_profile_spot at, rb_length by)
{
	at.elevation = rb_length_add(at.elevation, by);
	return at;
}

/* A part of the way from one to the other. */
static struct rb_profile_spot between(struct rb_profile_spot a, struct rb_profile_spot b,
				      int part, int whole)
{
	a.along.nm += (b.along.nm - a.along.nm) / whole * part;
	a.elevation.nm += (b.elevation.nm - a.elevation.nm) / whole * part;
	return a;
}

static void label(struct maker *m, struct rb_profile_spot at, enum rb_side side,
		  bool strong)
{
	struct rb_phrase *phrase = &m->page.phrase;

	rb_profile_label(m->profile, at, side, phrase->text ? phrase->text : "", strong);
	rb_phrase_clear(phrase);
}

static void name_once(struct maker *m, bool *named, struct rb_profile_spot at,
		      enum rb_side side, const char *name)
{
	if (!*named)
		rb_profile_label(m->profile, at, side, name, false);
	*named = true;
}

/* -- stations -- */

static void say_cut(struct maker *m, rb_length cut)
{
	if (!rb_length_given(cut))
		return;
	m->profile->band[3] = "cut";
	rb_phrase_text(&m->page.phrase, cut.nm < 0 ? "fill " : "");
	rb_phrase_length(&m->page.phrase, rb_length_absolute(cut), m->page.decimal);
}

static void add_place(struct maker *m, uint32_t i)
{
	const struct rb_station *station = station_at(m, i);
	struct rb_phrase *phrase = &m->page.phrase;
	char chainage[RB_LENGTH_TEXT], invert[RB_LENGTH_TEXT];
	const char *text[RB_PROFILE_BAND] = { station->name, chainage, invert, NULL };

	rb_drain_chainage(&m->page, chainage, station->chainage);
	rb_length_format(invert, rb_exact_round(station->out), m->r->style);
	say_cut(m, m->r->sheet->cut[i].cut);
	text[3] = phrase->text;
	rb_profile_place(m->profile, station->run, text);
	rb_phrase_clear(phrase);
}

/* From the lowest to the highest surface that is known there. */
static void add_upright(struct maker *m, uint32_t i)
{
	const struct rb_cut *cut = &m->r->sheet->cut[i];
	struct rb_profile_spot foot = spot(m, i, station_at(m, i)->out), top = foot;

	if (rb_length_given(cut->trench_bottom))
		foot.elevation = cut->trench_bottom;
	if (rb_length_given(cut->ground))
		top.elevation = cut->ground;
	rb_profile_line(m->profile, RB_LOOK_UPRIGHT, foot, top);
}

static void add_step(struct maker *m, uint32_t i)
{
	rb_length in = rb_drain_invert_in(m->r, i);
	struct rb_profile_spot at = spot(m, i, station_at(m, i)->in);

	if (!rb_length_given(in) || in.nm == rb_exact_round(station_at(m, i)->out).nm)
		return;
	rb_profile_line(m->profile, RB_LOOK_INVERT, spot(m, i, station_at(m, i)->out),
			at);
	rb_phrase_text(&m->page.phrase, "in ");
	rb_phrase_length(&m->page.phrase, in, m->r->style);
	label(m, at, RB_SIDE_LEFT, false);
}

/* -- legs -- */

static const char *failing_word(const struct rb_leg *leg)
{
	static const char *const words[RB_LEG_VERDICTS] = {
		[RB_LEG_FLAT] = "TOO FLAT: ",
		[RB_LEG_LEVEL] = "LEVEL: ",
		[RB_LEG_UPHILL] = "UPHILL: ",
	};

	return words[leg->verdict];
}

/* "24 ft at 1/4 in/ft, 2.08 %" */
static void say_leg(struct maker *m, const struct rb_leg *leg)
{
	struct rb_phrase *phrase = &m->page.phrase;
	const char *word = failing_word(leg);
	char text[RB_LENGTH_TEXT], slope[RB_SLOPE_TEXT];

	rb_phrase_text(phrase, word ? word : "");
	rb_shown(text, leg->length, m->profile->unit_along);
	rb_phrase_text(phrase, text);
	rb_slope_format(slope, leg->slope, RB_PER_FOOT, 3);
	rb_phrase_text(phrase, " at ");
	rb_phrase_text(phrase, slope);
	rb_slope_format(slope, leg->slope, RB_PERCENT, 2);
	rb_phrase_text(phrase, ", ");
	rb_phrase_text(phrase, slope);
}

/* A reach may have stations within; what is said of it is said once, in its middle. */
static void name_leg(struct maker *m, uint32_t i, struct rb_profile_spot from,
		     struct rb_profile_spot to)
{
	uint32_t reach = station_at(m, i)->reach;
	const struct rb_leg *leg = &m->r->budget->leg[reach];
	int64_t middle;

	if (!i || station_at(m, i - 1)->reach != reach)
		m->reach_start = from.along;
	middle = m->reach_start.nm + leg->length.nm / 2;
	if (middle < from.along.nm || middle >= to.along.nm)
		return;
	say_leg(m, leg);
	label(m, between(from, to, 1, 2), RB_SIDE_ABOVE, failing_word(leg) != NULL);
}

static void add_surfaces(struct maker *m, struct rb_profile_spot from,
			 struct rb_profile_spot to)
{
	rb_length top = rb_pipe_top(&m->r->plan->pipe);
	rb_length trench = rb_surface_above(m->r->plan, RB_TRENCH_BOTTOM);

	if (rb_length_given(top))
		rb_profile_line(m->profile, RB_LOOK_TOP_OF_PIPE, raised(from, top),
				raised(to, top));
	if (!rb_length_given(trench))
		return;
	rb_profile_line(m->profile, RB_LOOK_TRENCH_BOTTOM, raised(from, trench),
			raised(to, trench));
	name_once(m, &m->trench_named, raised(between(from, to, 3, 4), trench),
		  RB_SIDE_BELOW, "trench bottom");
}

static void add_gap(struct maker *m, uint32_t i)
{
	struct rb_profile_spot from = spot(m, i, station_at(m, i)->out);
	struct rb_profile_spot to = spot(m, i + 1, station_at(m, i + 1)->in);
	bool fails = failing_word(&m->r->budget->leg[station_at(m, i)->reach]);

	rb_profile_line(m->profile, fails ? RB_LOOK_FAILING : RB_LOOK_INVERT, from, to);
	add_surfaces(m, from, to);
	name_leg(m, i, from, to);
	name_once(m, &m->invert_named, between(from, to, 1, 4), RB_SIDE_BELOW, "invert");
	rb_drain_ground_line(&m->lines, i);
	rb_drain_laid_line(&m->lines, to.along);
}

/* -- the picture -- */

/* All verdicts of the page, one after another. */
static void say_verdicts(struct maker *m)
{
	struct rb_phrase *phrase = &m->page.phrase;

	rb_drain_verdicts(&m->page);
	if (m->page.page->out_of_memory)
		return;
	for (const struct rb_block *b = m->page.page->first; b; b = b->next) {
		rb_phrase_text(phrase, phrase->used ? " " : "");
		rb_phrase_text(phrase, b->text);
	}
	m->profile->words = rb_arena_text(m->profile->arena, phrase->text, phrase->used);
	rb_phrase_clear(phrase);
}

static void say_title(struct maker *m)
{
	struct rb_phrase *phrase = &m->page.phrase;

	rb_phrase_text(phrase,
		       *m->r->plan->drain ? "Profile of " : "Profile of the drain");
	rb_phrase_words(phrase, m->r->plan->drain);
	m->profile->title = rb_arena_text(m->profile->arena, phrase->text, phrase->used);
	rb_phrase_clear(phrase);
}

static bool start(struct maker *m, struct rb_arena *arena)
{
	if (!rb_drain_maker_init(&m->page, arena, m->r))
		return false;
	m->profile = rb_profile_new(arena, m->r->style);
	if (!m->profile)
		return false;
	m->profile->to_scale = true;
	m->profile->strip = STRIP;
	m->profile->band[0] = "point";
	m->profile->band[1] = "chainage";
	m->profile->band[2] = "invert";
	m->lines = (struct rb_drain_lines){ .r = m->r,
					    .profile = m->profile,
					    .phrase = &m->page.phrase,
					    .style = m->page.decimal };
	return true;
}

struct rb_profile *rb_drain_profile(struct rb_arena *arena,
				    const struct rb_drain_result *r)
{
	struct maker m = { .r = r };

	if (!start(&m, arena))
		return NULL;
	say_title(&m);
	say_verdicts(&m);
	for (uint32_t i = 0; i < r->inverts->stations; i++) {
		add_place(&m, i);
		add_upright(&m, i);
		add_step(&m, i);
		rb_drain_laid_line(&m.lines, station_at(&m, i)->run);
		if (i + 1 < r->inverts->stations)
			add_gap(&m, i);
	}
	if (m.page.page->out_of_memory || m.page.phrase.out_of_memory ||
	    m.profile->out_of_memory || !m.profile->words || !m.profile->title)
		return NULL;
	return m.profile;
}
