/* SPDX-License-Identifier: MIT */
/* drain_json.c - stations, legs, the laid pipe, fall and cautions. */
#include "report/drain_json.h"

#include "report/caution_words.h"
#include "report/elevations_words.h"
#include "report/leg_json.h"
#include "report/message_json.h"
#include "report/minimum_json.h"
#include "report/titles.h"

/* An object on its way. */
struct writer {
	struct rb_json json;
	const struct rb_drain_result *r;
	struct rb_phrase phrase;
	struct rb_json_lengths lengths;
};

static void put(struct writer *w, const char *key, rb_length value)
{
	rb_json_put(&w->json, key, value, w->lengths);
}

static void put_text(struct writer *w, const char *key, const char *text)
{
	rb_json_put_text(&w->json, key, text);
}

/* -- stations -- */

static void put_ground(struct writer *w, uint32_t station)
{
	const struct rb_cut *cut = &w->r->sheet->cut[station];

	put(w, "ground", cut->ground);
	rb_json_put_bool(&w->json, "ground_interpolated", cut->how == RB_GROUND_BETWEEN);
	put(w, "cut", cut->cut);
	put(w, "cut_to_trench", cut->cut_to_trench);
	put(w, "cover", cut->cover);
	put(w, "cover_in", cut->cover_in);
}

static void put_hub(struct writer *w, uint32_t station)
{
	const struct rb_cut *cut = &w->r->sheet->cut[station];
	const struct rb_plan_row *row = rb_drain_row(w->r, station);

	put(w, "hub", cut->hub);
	put(w, "hub_offset", row ? row->offset : rb_length_none());
	put_text(w, "hub_side", row ? row->side : NULL);
	put(w, "hub_cut", cut->hub_cut);
	put(w, "hub_cut_to_trench", cut->hub_cut_to_trench);
	put(w, "board_above_hub", cut->board);
}

/* Of a station, to one of its pipes; NULL: there is no HI. */
static void put_grade_rods(struct writer *w, const char *key,
			   const struct rb_grade_rod *rod)
{
	static const char *const keys[RB_SURFACES] = {
		[RB_INVERT] = "invert",
		[RB_TOP_OF_PIPE] = "top_of_pipe",
		[RB_TRENCH_BOTTOM] = "trench_bottom",
	};

	rb_json_key(&w->json, key);
	rb_json_open(&w->json, '{');
	for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++)
		put(w, keys[s], rod ? rod[s].reading : rb_length_none());
	rb_json_close(&w->json);
}

static void put_station(struct writer *w, uint32_t i)
{
	const struct rb_station *station = &w->r->inverts->station[i];
	const struct rb_grade_rods *rods = w->r->rods;
	const struct rb_cut *cut = &w->r->sheet->cut[i];
	const struct rb_laid_shot *shot = rb_drain_laid_at(w->r, i);

	rb_json_open_line(&w->json, '{');
	put_text(w, "point", station->name);
	put(w, "chainage", station->chainage);
	put(w, "invert", cut->invert);
	put(w, "invert_in", rb_drain_invert_in(w->r, i));
	put(w, "top_of_pipe", cut->top_of_pipe);
	put(w, "trench_bottom", cut->trench_bottom);
	put_ground(w, i);
	put_hub(w, i);
	put_grade_rods(w, "grade_rod", rods ? rods->rod[i] : NULL);
	put_grade_rods(w, "grade_rod_in", rods ? rods->rod_in[i] : NULL);
	put(w, "laid", shot ? shot->invert : rb_length_none());
	put(w, "deviation", shot ? shot->deviation : rb_length_none());
	rb_json_close(&w->json);
}

/* -- legs -- */

static void put_flow(struct writer *w, const struct rb_leg *leg)
{
	struct rb_conduit conduit = rb_drain_conduit(w->r, leg);
	rb_length velocity = rb_length_none();

	if (rb_length_given(conduit.inside))
		velocity = rb_flow_full(&conduit).velocity;
	put(w, "velocity_full", velocity);
	put(w, "velocity_half_full", velocity);
	rb_json_key(&w->json, "roughness");
	if (rb_length_given(velocity))
		rb_json_number(&w->json, "0.013");
	else
		rb_json_null(&w->json);
}

static void put_legs(struct writer *w)
{
	const struct rb_budget *budget = w->r->budget;

	rb_json_key(&w->json, "legs");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < budget->legs; i++) {
		rb_json_open_line(&w->json, '{');
		rb_leg_put_json(&w->json, &budget->leg[i], w->lengths);
		put_flow(w, &budget->leg[i]);
		rb_json_close(&w->json);
	}
	rb_json_close(&w->json);
}

/* -- the laid pipe -- */

static void put_shot(struct writer *w, const struct rb_laid_shot *shot)
{
	const struct rb_book *book = w->r->laid->spots->book;

	rb_json_open_line(&w->json, '{');
	rb_json_key(&w->json, "line");
	rb_json_count(&w->json, rb_book_line(book, shot->row));
	put_text(w, "point", shot->name);
	put(w, "chainage", shot->chainage);
	put_text(w, "rod_on", rb_rod_on_name(shot->rod_on));
	rb_json_key(&w->json, "comes_in");
	rb_json_bool(&w->json, shot->comes_in);
	put(w, "planned", shot->planned);
	put(w, "laid", shot->invert);
	put(w, "deviation", shot->deviation);
	rb_json_key(&w->json, "out");
	if (rb_length_given(w->r->plan->grade_tolerance))
		rb_json_bool(&w->json, shot->out);
	else
		rb_json_null(&w->json);
	rb_json_close(&w->json);
}

static void put_pond(struct writer *w, const struct rb_pond *pond)
{
	const struct rb_laid_shot *shot = w->r->laid->shot;

	rb_json_open_line(&w->json, '{');
	put_text(w, "from", shot[pond->from].name);
	put_text(w, "to", shot[pond->to].name);
	put(w, "depth", pond->depth);
	put_text(w, "deepest", shot[pond->deepest].name);
	put(w, "wet", pond->wet);
	rb_json_close(&w->json);
}

static void put_laid(struct writer *w)
{
	static const struct rb_laid nothing = { .inverts = NULL };
	const struct rb_laid *laid = w->r->laid ? w->r->laid : &nothing;

	rb_json_key(&w->json, "laid_shots");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < laid->shots; i++)
		put_shot(w, &laid->shot[i]);
	rb_json_close(&w->json);
	rb_json_key(&w->json, "laid_legs");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < laid->legs; i++) {
		rb_json_open_line(&w->json, '{');
		rb_leg_put_json(&w->json, &laid->leg[i], w->lengths);
		rb_json_close(&w->json);
	}
	rb_json_close(&w->json);
	rb_json_key(&w->json, "ponds");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < laid->ponds; i++)
		put_pond(w, &laid->pond[i]);
	rb_json_close(&w->json);
}

/* -- fall -- */

static void put_remedies(struct writer *w, const struct rb_budget *budget)
{
	const struct rb_remedies *remedies = &budget->remedies;

	rb_json_key(&w->json, "would_do");
	if (!budget->judged || !budget->is_short) {
		rb_json_null(&w->json);
		return;
	}
	rb_json_open_line(&w->json, '{');
	rb_json_key(&w->json, "larger_size_inches");
	rb_json_length(&w->json, remedies->larger, RB_INCHES, 3);
	rb_json_put_slope(&w->json, "larger_inches_per_foot", remedies->larger_slope,
			  RB_PER_FOOT, 4);
	put(w, "longest_route", remedies->route);
	put(w, "raise_upper_end", remedies->raise);
	rb_json_put_slope(&w->json, "slope_inches_per_foot", remedies->slope, RB_PER_FOOT,
			  4);
	rb_json_close(&w->json);
}

static void put_fall(struct writer *w)
{
	const struct rb_budget *b = w->r->budget;
	rb_length none = rb_length_none();

	rb_json_key(&w->json, "fall");
	rb_json_open(&w->json, '{');
	put(w, "available", rb_exact_round(b->available));
	put(w, "needed", b->judged ? rb_exact_round(b->needed) : none);
	put(w, "spare", b->judged ? rb_exact_round(b->spare) : none);
	rb_json_key(&w->json, "enough");
	if (b->judged)
		rb_json_bool(&w->json, !b->is_short);
	else
		rb_json_null(&w->json);
	put_remedies(w, b);
	rb_json_close(&w->json);
}

/* -- the rest -- */

static void put_cautions(struct writer *w)
{
	const struct rb_cautions *cautions = w->r->cautions;

	rb_json_key(&w->json, "cautions");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < cautions->count; i++) {
		const struct rb_caution *caution = &cautions->item[i];

		rb_phrase_clear(&w->phrase);
		rb_caution_words(&w->phrase, caution, rb_drain_decimal_style(w->r));
		rb_json_open_line(&w->json, '{');
		put_text(w, "rule", rb_caution_rule(caution));
		put_text(w, "where", caution->where);
		put_text(w, "text", w->phrase.text);
		put_text(w, "kind", rb_caution_name(caution->kind));
		put(w, "value", caution->value);
		put(w, "limit", caution->limit);
		rb_json_close(&w->json);
	}
	rb_json_close(&w->json);
}

static void put_head(struct writer *w)
{
	const struct rb_drain_result *r = w->r;

	put_text(w, "plan", r->has_plan ? rb_title_file(r->plan->file) : NULL);
	put_text(w, "drain", r->plan->drain);
	put_text(w, "unit", rb_unit_name(w->lengths.unit));
	put(w, "hi", r->rods ? r->rods->hi : rb_length_none());
	put(w, "second_benchmark_difference",
	    r->rods && r->today.checked ? r->today.difference : rb_length_none());
	put_text(w, "ground_elevations",
		 r->sheet->ground ? rb_elevations_name(r->sheet->ground) : NULL);
	put_text(w, "laid_elevations",
		 r->laid ? rb_elevations_name(r->laid->spots) : NULL);
	rb_json_put_bool(&w->json, "used_anyway",
			 rb_drain_is_beyond(r->sheet->ground) ||
				 (r->laid && rb_drain_is_beyond(r->laid->spots)));
	put(w, "boards_above_invert", r->sheet->board);
	rb_minimum_put_json(&w->json, &r->budget->minimum);
}

bool rb_drain_write_json(struct rb_sink *sink, struct rb_arena *arena,
			 const struct rb_drain_result *r,
			 const struct rb_findings *const *findings, size_t files)
{
	struct writer w = { .r = r,
			    .lengths = rb_json_lengths_of(r->style.unit, r->decimals) };
	bool worded;

	rb_phrase_init(&w.phrase, arena);
	if (w.phrase.out_of_memory)
		return false;
	rb_json_init(&w.json, sink);
	rb_json_head(&w.json);
	put_head(&w);
	rb_json_key(&w.json, "stations");
	rb_json_open(&w.json, '[');
	for (uint32_t i = 0; i < r->inverts->stations; i++)
		put_station(&w, i);
	rb_json_close(&w.json);
	put_legs(&w);
	put_laid(&w);
	put_fall(&w);
	put_cautions(&w);
	worded = rb_messages_write_json(&w.json, findings, files);
	rb_json_end(&w.json);
	return worded && !w.phrase.out_of_memory;
}
