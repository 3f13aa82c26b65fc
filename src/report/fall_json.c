/* SPDX-License-Identifier: MIT */
/* fall_json.c - legs, and each run from end to end. */
#include "report/fall_json.h"

#include "report/elevations_words.h"
#include "report/leg_json.h"
#include "report/message_json.h"
#include "report/minimum_json.h"
#include "report/titles.h"

/* An object on its way. */
struct writer {
	struct rb_json json;
	const struct rb_fall_result *r;
	struct rb_json_lengths lengths;
};

static void put_leg(struct writer *w, const struct rb_leg *leg, enum rb_rod_on place)
{
	rb_json_open_line(&w->json, '{');
	rb_leg_put_json(&w->json, leg, w->lengths);
	rb_json_put_text(&w->json, "rod_on", rb_rod_on_name(place));
	rb_json_close(&w->json);
}

static void put_legs(struct writer *w)
{
	const struct rb_fall *fall = w->r->fall;

	rb_json_key(&w->json, "legs");
	rb_json_open(&w->json, '[');
	for (uint32_t run = 0; run < fall->runs; run++)
		for (uint32_t i = 0; i < fall->run[run].legs; i++)
			put_leg(w, &fall->leg[fall->run[run].first + i],
				fall->run[run].rod_on);
	rb_json_close(&w->json);
}

/* The first run is the one on a pipe, where there is one; "totals" has all of them. */
static void put_totals(struct writer *w)
{
	const struct rb_fall *fall = w->r->fall;

	rb_json_key(&w->json, "total");
	put_leg(w, &fall->run[0].total, fall->run[0].rod_on);
	rb_json_key(&w->json, "totals");
	rb_json_open(&w->json, '[');
	for (uint32_t run = 0; run < fall->runs; run++)
		put_leg(w, &fall->run[run].total, fall->run[run].rod_on);
	rb_json_close(&w->json);
}

bool rb_fall_write_json(struct rb_sink *sink, const struct rb_fall_result *r,
			const struct rb_findings *const *findings, size_t files)
{
	struct writer w = { .r = r,
			    .lengths = rb_json_lengths_of(r->style.unit, r->decimals) };
	bool worded;

	rb_json_init(&w.json, sink);
	rb_json_head(&w.json);
	rb_json_put_text(&w.json, "book", rb_title_file(r->spots->book->file));
	rb_json_put_text(&w.json, "unit", rb_unit_name(w.lengths.unit));
	rb_json_put_text(&w.json, "elevations", rb_elevations_name(r->spots));
	rb_minimum_put_json(&w.json, &r->minimum);
	put_legs(&w);
	put_totals(&w);
	worded = rb_messages_write_json(&w.json, findings, files);
	rb_json_end(&w.json);
	return worded;
}
