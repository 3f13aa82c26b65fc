/* SPDX-License-Identifier: MIT */
/* peg_json.c - a two-peg test as JSON. */
#include "report/peg.h"

#include "report/json.h"
#include "report/message_json.h"
#include "report/titles.h"

/* An object on its way. */
struct writer {
	struct rb_json json;
	const struct rb_peg_report *r;
	enum rb_unit unit;
	int decimals;
};

static void put(struct writer *w, const char *key, rb_length value)
{
	rb_json_key(&w->json, key);
	rb_json_length(&w->json, value, w->unit, w->decimals);
}

static void put_run(struct writer *w, const char *key, rb_length value)
{
	enum rb_unit runs = rb_unit_of_runs(w->unit);

	rb_json_key(&w->json, key);
	rb_json_length(&w->json, value, runs, rb_json_decimals(runs));
}

static void put_text(struct writer *w, const char *key, const char *text)
{
	rb_json_key(&w->json, key);
	rb_json_text(&w->json, text);
}

/* Over 100 ft or 100 m, from the exact ratio. */
static void put_per_hundred(struct writer *w, const char *key, rb_length rise)
{
	rb_length hundred = rb_two_peg_hundred(w->unit);

	put(w, key, rb_length_share(hundred, rise.nm, w->r->peg->run.nm));
}

static void put_corrected(struct writer *w)
{
	rb_json_key(&w->json, "corrected");
	rb_json_open_line(&w->json, '{');
	put(w, "a", w->r->peg->corrected_a);
	put(w, "b", w->r->peg->corrected_b);
	rb_json_close(&w->json);
}

static void put_limits(struct writer *w)
{
	rb_json_key(&w->json, "limits");
	rb_json_open(&w->json, '[');
	for (size_t i = 0; i < RB_PEG_LIMITS; i++) {
		const struct rb_peg_limit *limit = rb_peg_limit(i);

		rb_json_open_line(&w->json, '{');
		put_text(w, "limit", limit->words);
		put_text(w, "source", limit->source);
		rb_json_key(&w->json, "exceeded");
		rb_json_bool(&w->json, rb_two_peg_exceeds(w->r->peg, limit));
		rb_json_close(&w->json);
	}
	rb_json_close(&w->json);
}

static void put_section(struct writer *w, uint32_t i)
{
	const struct rb_peg_effect *effect = w->r->effect;
	const struct rb_section *section = &effect->sections->section[i];
	const struct rb_reduced *reduced = effect->sections->reduced;

	rb_json_open_line(&w->json, '{');
	put_text(w, "from", rb_book_point(reduced->book, section->from));
	put_text(w, "to", rb_book_typed(reduced->book, reduced->shot[section->end].row));
	put_run(w, "backsight_length", section->backsight_length);
	put_run(w, "foresight_length", section->foresight_length);
	put_run(w, "difference", effect->difference[i]);
	put(w, "effect", effect->lift[i]);
	put(w, "misclosure", section->misclosure);
	rb_json_close(&w->json);
}

static void put_effect(struct writer *w)
{
	const struct rb_sections *sections = w->r->effect->sections;

	put_text(w, "book", rb_title_file(sections->reduced->book->file));
	rb_json_key(&w->json, "sections");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < sections->sections; i++)
		put_section(w, i);
	rb_json_close(&w->json);
}

bool rb_peg_write_json(struct rb_sink *sink, const struct rb_peg_report *report)
{
	struct writer w = { .r = report, .unit = report->style.unit };
	bool worded;

	if (w.unit == RB_FEET_INCHES)
		w.unit = RB_FEET;
	w.decimals = report->decimals < 0 ? rb_json_decimals(w.unit) : report->decimals;
	rb_json_init(&w.json, sink);
	rb_json_head(&w.json);
	put_text(&w, "unit", rb_unit_name(w.unit));
	put_per_hundred(&w, "collimation_per_100", report->peg->rise);
	put_per_hundred(&w, "uncertainty_per_100", report->peg->unsure);
	put_corrected(&w);
	put_limits(&w);
	if (report->effect)
		put_effect(&w);
	worded = rb_messages_write_json(&w.json, report->findings, report->files);
	rb_json_end(&w.json);
	return worded;
}
