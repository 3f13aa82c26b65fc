/* SPDX-License-Identifier: MIT */
/* Points, books and what several books know, as JSON. */
#include "record/record.h"

#include "report/json.h"
#include "report/message_json.h"

struct writer {
	struct rb_json json;
	const struct rb_ledger *ledger;
	const struct rb_recorded_book *book; /* whose unit lengths are in */
};

static void put_text(struct writer *w, const char *key, const char *text)
{
	rb_json_key(&w->json, key);
	rb_json_text(&w->json, text);
}

static void put_count(struct writer *w, const char *key, int64_t count)
{
	rb_json_key(&w->json, key);
	rb_json_count(&w->json, count);
}

static void put_length(struct writer *w, const char *key, rb_length value)
{
	int decimals = w->book->reduction.decimals;

	rb_json_key(&w->json, key);
	rb_json_length(&w->json, value, w->book->unit,
		       decimals < 0 ? rb_json_decimals(w->book->unit) : decimals);
}

static void put_answer(struct writer *w, const char *key, bool is_known, bool answer)
{
	rb_json_key(&w->json, key);
	if (is_known)
		rb_json_bool(&w->json, answer);
	else
		rb_json_null(&w->json);
}

static void put_verdict(struct writer *w, const struct rb_entry *e)
{
	bool judged = *e->section && (e->verdict == RB_CLOSES || e->verdict == RB_BEYOND);

	put_text(w, "section", e->section);
	put_answer(w, "closed", rb_entry_is_levelled(e), e->verdict != RB_OPEN);
	put_answer(w, "within_tolerance", judged, e->verdict == RB_CLOSES);
}

static void put_point(struct writer *w, const struct rb_entry *e)
{
	w->book = rb_entry_book(w->ledger, e);
	rb_json_open_line(&w->json, '{');
	put_text(w, "point", e->point);
	put_length(w, "elevation", e->elevation);
	put_length(w, "adjusted", e->adjusted);
	put_text(w, "unit", rb_unit_name(w->book->unit));
	put_length(w, "below", e->below);
	put_text(w, "datum", w->book->datum);
	put_text(w, "date", w->book->date);
	put_text(w, "project", w->book->project);
	put_text(w, "book", w->book->name);
	put_count(w, "version", w->book->version);
	put_verdict(w, e);
	put_text(w, "kind", rb_kind_name(e->kind));
	put_text(w, "rod_on", rb_rod_on_name(e->rod_on));
	put_length(w, "known_elevation", e->known);
	put_text(w, "replaces", w->book->replaces);
	put_text(w, "remarks", e->remarks);
	rb_json_close(&w->json);
}

static void put_points(struct writer *w)
{
	rb_json_key(&w->json, "points");
	rb_json_open(&w->json, '[');
	for (uint32_t i = w->ledger->old_entries; i < w->ledger->entries; i++)
		put_point(w, &w->ledger->entry[i]);
	rb_json_close(&w->json);
}

static void put_books(struct writer *w)
{
	rb_json_key(&w->json, "books");
	rb_json_open(&w->json, '[');
	for (uint32_t i = w->ledger->old_books; i < w->ledger->books; i++) {
		const struct rb_recorded_book *book = &w->ledger->book[i];

		rb_json_open_line(&w->json, '{');
		put_text(w, "book", book->name);
		put_count(w, "version", book->version);
		put_text(w, "replaces", book->replaces);
		put_count(w, "points", book->entries);
		put_text(w, "sha256", book->digest);
		rb_json_close(&w->json);
	}
	rb_json_close(&w->json);
}

/* What the record held before; null where none was read. */
static void put_before(struct writer *w)
{
	rb_json_key(&w->json, "before");
	if (!w->ledger->has_record) {
		rb_json_null(&w->json);
		return;
	}
	rb_json_open_line(&w->json, '{');
	put_count(w, "points", w->ledger->old_entries);
	put_count(w, "books", w->ledger->old_books);
	rb_json_close(&w->json);
}

static void put_sighting(struct writer *w, const char *key, const struct rb_sighting *s)
{
	const struct rb_recorded_book *book = &w->ledger->book[s->book];

	rb_json_key(&w->json, key);
	rb_json_open_line(&w->json, '{');
	put_text(w, "book", book->name);
	put_text(w, "date", book->date);
	put_length(w, "elevation", s->elevation);
	rb_json_key(&w->json, "known");
	rb_json_bool(&w->json, s->known);
	rb_json_close(&w->json);
}

static void put_pair(struct writer *w, const struct rb_pair *pair)
{
	bool both_known = pair->earlier.known && pair->later.known;

	w->book = &w->ledger->book[pair->later.book];
	rb_json_open_line(&w->json, '{');
	put_text(w, "point", pair->later.point);
	put_text(w, "unit", rb_unit_name(w->book->unit));
	put_sighting(w, "earlier", &pair->earlier);
	put_sighting(w, "later", &pair->later);
	put_length(w, "difference",
		   rb_length_sub(pair->later.elevation, pair->earlier.elevation));
	put_answer(w, "agrees", both_known, pair->agrees);
	rb_json_key(&w->json, "other_datum");
	rb_json_bool(&w->json, pair->other_datum);
	rb_json_close(&w->json);
}

bool rb_record_write_json(struct rb_sink *sink, const struct rb_site_record *record)
{
	struct writer w = { .ledger = record->ledger };
	bool worded;

	rb_json_init(&w.json, sink);
	rb_json_head(&w.json);
	put_points(&w);
	put_books(&w);
	put_before(&w);
	rb_json_key(&w.json, "several");
	rb_json_open(&w.json, '[');
	for (uint32_t i = 0; i < record->several->pairs; i++)
		put_pair(&w, &record->several->pair[i]);
	rb_json_close(&w.json);
	worded = rb_messages_write_json(&w.json, record->findings, record->files);
	rb_json_end(&w.json);
	return worded;
}
