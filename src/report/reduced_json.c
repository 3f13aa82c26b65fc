/* SPDX-License-Identifier: MIT */
/* reduced_json.c - points, sections, checks and suspects. */
#include "report/reduced_json.h"

#include <stdio.h>

#include "report/json.h"
#include "report/leg_json.h"
#include "report/message_json.h"
#include "report/phrase.h"
#include "report/titles.h"

/* An object on its way, and how its lengths are shown. */
struct writer {
	struct rb_json json;
	const struct rb_reduction *r;
	struct rb_phrase phrase;
	enum rb_unit unit;
	int decimals;
};

static void put(struct writer *w, const char *key, rb_length value)
{
	rb_json_key(&w->json, key);
	rb_json_length(&w->json, value, w->unit, w->decimals);
}

static void put_text(struct writer *w, const char *key, const char *text)
{
	rb_json_key(&w->json, key);
	rb_json_text(&w->json, text);
}

static void put_line(struct writer *w, const char *key, uint32_t row)
{
	rb_json_key(&w->json, key);
	if (row == RB_NO_ROW)
		rb_json_null(&w->json);
	else
		rb_json_count(&w->json, rb_reduction_line(w->r, row));
}

static const struct rb_shot *shot_of(const struct writer *w, uint32_t shot)
{
	return &rb_reduction_reduced(w->r)->shot[shot];
}

/* -- points -- */

static void put_readings(struct writer *w, uint32_t shot)
{
	const struct rb_shot *s = shot_of(w, shot);
	rb_length reading = rb_shot_reading(rb_reduction_reduced(w->r), shot);
	bool side = s->booked == RB_BOOKED_INTERMEDIATE;

	put(w, "known_elevation", rb_reduction_known(w->r, shot));
	put(w, "backsight", rb_reduction_backsight(w->r, shot));
	put(w, "height_of_instrument", rb_reduction_instrument(w->r, shot));
	put(w, "intermediate", side ? reading : rb_length_none());
	put(w, "foresight", side ? rb_length_none() : reading);
	put(w, "elevation", s->elevation);
	put(w, "correction", rb_shot_correction(w->r->adjusted, shot));
	put(w, "adjusted", rb_shot_adjusted(w->r->adjusted, shot));
	put(w, "below", rb_shot_below(w->r->adjusted, shot));
}

static void put_remarks(struct writer *w, const struct rb_place_rows *rows)
{
	rb_phrase_clear(&w->phrase);
	rb_phrase_text(&w->phrase, rows->remark);
	rb_phrase_text(&w->phrase, *rows->remark && *rows->other_remark ? "; " : "");
	rb_phrase_text(&w->phrase, rows->other_remark);
	put_text(w, "remarks", w->phrase.text);
}

static void put_point(struct writer *w, uint32_t shot)
{
	const struct rb_shot *s = shot_of(w, shot);
	struct rb_place_rows rows = rb_reduction_rows(w->r, shot);

	rb_json_open_line(&w->json, '{');
	put_line(w, "line", s->row);
	put_line(w, "backsight_line", s->backsight_row);
	put_text(w, "point", rb_book_typed(rb_reduction_book(w->r), s->row));
	put_text(w, "kind", rb_kind_name((enum rb_kind)s->kind));
	put_readings(w, shot);
	put(w, "chainage", rows.chainage);
	put_text(w, "rod_on", rb_rod_on_name(rows.rod_on));
	put_remarks(w, &rows);
	rb_json_close(&w->json);
}

/* -- sections -- */

static void put_check(struct writer *w, const struct rb_check *check)
{
	const struct rb_shot *s = shot_of(w, check->shot);

	rb_json_open_line(&w->json, '{');
	put_line(w, "line", s->row);
	put_text(w, "point", rb_book_typed(rb_reduction_book(w->r), s->row));
	put(w, "difference", check->difference);
	rb_json_close(&w->json);
}

static void put_checks(struct writer *w, const struct rb_section *section)
{
	const struct rb_check *check = rb_reduction_sections(w->r)->check;

	rb_json_key(&w->json, "checks");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < section->checks; i++)
		put_check(w, &check[section->first_check + i]);
	rb_json_close(&w->json);
}

/* "known_elevation": the heading with underscores. */
static void put_column(struct writer *w, const struct rb_suspect *s)
{
	char name[32];

	snprintf(name, sizeof name, "%s",
		 s->row == RB_NO_ROW ? "" : rb_reduction_book(w->r)->heading[s->column]);
	for (char *c = name; *c; c++)
		if (*c == ' ')
			*c = '_';
	put_text(w, "column", name);
}

static void put_suspect(struct writer *w, const struct rb_suspect *s)
{
	rb_json_open_line(&w->json, '{');
	put_line(w, "line", s->row);
	put_column(w, s);
	put(w, "reading", s->reading);
	put(w, "maybe", s->maybe);
	put_text(w, "slip", rb_slip_name(s->slip, rb_reduction_book(w->r)->unit));
	put(w, "left", s->left);
	if (s->row_count) {
		rb_json_key(&w->json, "lines");
		rb_json_open(&w->json, '[');
		for (uint32_t i = 0; i < s->row_count; i++)
			rb_json_count(&w->json, rb_reduction_line(w->r, s->rows[i]));
		rb_json_close(&w->json);
	}
	rb_json_close(&w->json);
}

/* Write the suspects of a section, which stand together from *next on. */
static void put_suspects(struct writer *w, uint32_t section, uint32_t *next)
{
	const struct rb_suspects *all = w->r->suspects;

	rb_json_key(&w->json, "suspects");
	rb_json_open(&w->json, '[');
	while (all && *next < all->count && all->item[*next].section == section)
		put_suspect(w, &all->item[(*next)++]);
	rb_json_close(&w->json);
}

static void put_verdict(struct writer *w, const struct rb_section *s)
{
	rb_json_key(&w->json, "closed");
	rb_json_bool(&w->json, s->verdict != RB_OPEN);
	rb_json_key(&w->json, "within_tolerance");
	if (s->verdict == RB_CLOSES || s->verdict == RB_BEYOND)
		rb_json_bool(&w->json, s->verdict == RB_CLOSES);
	else
		rb_json_null(&w->json);
}

static void put_section(struct writer *w, uint32_t section, uint32_t *next_suspect)
{
	const struct rb_section *s = &rb_reduction_sections(w->r)->section[section];
	const struct rb_book *book = rb_reduction_book(w->r);
	const struct rb_setup *first = &rb_reduction_reduced(w->r)->setup[s->first];

	rb_json_open(&w->json, '{');
	put_text(w, "from", rb_book_typed(book, shot_of(w, first->shot)->row));
	put_text(w, "to", rb_book_typed(book, shot_of(w, s->end)->row));
	rb_json_key(&w->json, "setups");
	rb_json_count(&w->json, s->setups);
	put(w, "length", s->length);
	put(w, "sum_backsight", s->sum_backsight);
	put(w, "sum_foresight", s->sum_foresight);
	put(w, "misclosure", s->misclosure);
	put(w, "tolerance", s->allowed);
	put_verdict(w, s);
	put_checks(w, s);
	put_suspects(w, section, next_suspect);
	rb_json_close(&w->json);
}

static void put_points(struct writer *w)
{
	rb_json_key(&w->json, "points");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < rb_reduction_reduced(w->r)->shots; i++)
		put_point(w, i);
	rb_json_close(&w->json);
}

static void put_sections(struct writer *w)
{
	uint32_t next_suspect = 0;

	rb_json_key(&w->json, "sections");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < rb_reduction_sections(w->r)->sections; i++)
		put_section(w, i, &next_suspect);
	rb_json_close(&w->json);
}

static void put_spur(struct writer *w, const struct rb_spur *spur)
{
	const struct rb_sections *sections = rb_reduction_sections(w->r);
	const struct rb_book *book = rb_reduction_book(w->r);
	uint32_t stands_on = sections->reduced->setup[spur->setup].shot;

	rb_json_open_line(&w->json, '{');
	put_text(w, "from", rb_book_typed(book, shot_of(w, stands_on)->row));
	put_line(w, "line", shot_of(w, stands_on)->backsight_row);
	rb_json_key(&w->json, "lines");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < spur->sights; i++)
		rb_json_count(
			&w->json,
			rb_reduction_line(
				w->r,
				shot_of(w, sections->spur_shot[spur->first + i])->row));
	rb_json_close(&w->json);
	rb_json_close(&w->json);
}

static void put_spurs(struct writer *w)
{
	rb_json_key(&w->json, "spurs");
	rb_json_open(&w->json, '[');
	for (uint32_t i = 0; i < rb_reduction_sections(w->r)->spurs; i++)
		put_spur(w, &rb_reduction_sections(w->r)->spur[i]);
	rb_json_close(&w->json);
}

bool rb_reduced_write_json(struct rb_sink *sink, const struct rb_reduction *r,
			   const struct rb_findings *findings)
{
	struct writer w = { .r = r, .unit = rb_reduction_unit(r) };
	bool worded;

	if (w.unit == RB_FEET_INCHES)
		w.unit = RB_FEET;
	w.decimals = r->decimals < 0 ? rb_json_decimals(w.unit) : r->decimals;
	rb_phrase_init(&w.phrase, findings->arena);
	if (w.phrase.out_of_memory)
		return false;
	rb_json_init(&w.json, sink);
	rb_json_head(&w.json);
	put_text(&w, "book", rb_title_file(rb_reduction_book(r)->file));
	put_text(&w, "unit", rb_unit_name(w.unit));
	rb_json_put_bool(&w.json, "tolerance_overridden", r->tolerance_overridden);
	rb_json_put_bool(&w.json, "adjust_overridden", r->adjust_overridden);
	rb_json_put_bool(&w.json, "adjust_anyway", r->adjust_anyway);
	put_points(&w);
	put_sections(&w);
	put_spurs(&w);
	worded = rb_messages_write_json(&w.json, &findings, 1);
	rb_json_end(&w.json);
	return worded && !w.phrase.out_of_memory;
}
