/* SPDX-License-Identifier: MIT */
/* reduced_page.c - the title, the words and the verdicts of a reduced book. */
#include "report/reduced_page.h"

#include "level/rod.h"
#include "report/caution_words.h"
#include "report/phrase.h"
#include "report/reduced_table.h"
#include "report/section_words.h"
#include "report/suspects_page.h"
#include "report/titles.h"

static void add_title(struct rb_page *page, struct rb_phrase *phrase,
		      const struct rb_reduction *r)
{
	const struct rb_book *book = rb_reduction_book(r);
	struct rb_phrase aside;

	rb_phrase_init(&aside, phrase->arena);
	rb_title_aside(&aside, book->file, r->style.unit);
	rb_phrase_clear(phrase);
	rb_phrase_words(phrase, *book->key.project ? book->key.project : "Level notes");
	if (*book->key.date)
		rb_phrase_text(phrase, ", ");
	rb_phrase_words(phrase, book->key.date);
	rb_page_add(page, RB_TITLE, phrase->text, aside.text);
	page->out_of_memory |= aside.out_of_memory;
}

/* Who levelled, with what, and above which datum; one line under the title. */
static void add_keys(struct rb_page *page, struct rb_phrase *phrase,
		     const struct rb_book_keys *key)
{
	const struct {
		const char *name, *value;
	} shown[] = {
		{ "crew", key->crew },
		{ "student", key->student },
		{ "instrument", key->instrument },
		{ "weather", key->weather },
		{ "datum", key->datum },
	};

	rb_phrase_clear(phrase);
	for (size_t i = 0; i < sizeof shown / sizeof *shown; i++) {
		if (!*shown[i].value)
			continue;
		rb_phrase_text(phrase, phrase->used ? "; " : "");
		rb_phrase_text(phrase, shown[i].name);
		rb_phrase_text(phrase, " ");
		rb_phrase_words(phrase, shown[i].value);
	}
	if (phrase->used)
		rb_page_add(page, RB_PARAGRAPH, phrase->text, NULL);
}

static void add_overrides(struct rb_page *page, const struct rb_reduction *r)
{
	static const char *const words[] = {
		[1] = "The tolerance is that of --tolerance, not of the book.",
		[2] = "The adjustment is that of --adjust, not of the book.",
		[3] = "Tolerance and adjustment are those of --tolerance and --adjust, not of "
		      "the book.",
	};
	int which = r->tolerance_overridden + 2 * r->adjust_overridden;

	if (which)
		rb_page_add(page, RB_PARAGRAPH, words[which], NULL);
}

typedef void section_words(struct rb_phrase *, const struct rb_reduction *,
			   const struct rb_section *);

static void add_words(struct rb_page *page, struct rb_phrase *phrase,
		      const struct rb_reduction *r, const struct rb_section *section,
		      enum rb_block_kind kind, section_words *say)
{
	rb_phrase_clear(phrase);
	say(phrase, r, section);
	if (phrase->used)
		rb_page_add(page, kind, phrase->text, NULL);
}

static void add_spurs(struct rb_page *page, struct rb_phrase *phrase,
		      const struct rb_reduction *r)
{
	const struct rb_sections *sections = rb_reduction_sections(r);

	for (uint32_t i = 0; i < sections->spurs; i++) {
		rb_phrase_clear(phrase);
		rb_spur_words(phrase, r, &sections->spur[i]);
		rb_page_add(page, RB_VERDICT, phrase->text, NULL);
	}
}

/* -- caution -- */

static bool is_extended(const struct rb_book *book, uint32_t row)
{
	for (int c = RB_BACKSIGHT; c <= RB_FORESIGHT; c++) {
		rb_length reading = rb_book_sight(book, (enum rb_column)c, row);

		if (rb_length_given(reading) &&
		    rb_length_absolute(reading).nm > RB_CLOSED_ROD)
			return true;
	}
	return false;
}

#define LISTED 6

static uint32_t count_extended(const struct rb_book *book)
{
	uint32_t rows = 0;

	for (uint32_t row = 0; row < book->rows; row++)
		rows += is_extended(book, row);
	return rows;
}

static void list_extended(struct rb_phrase *phrase, const struct rb_book *book,
			  uint32_t rows)
{
	uint32_t listed = 0;

	for (uint32_t row = 0; listed < LISTED && row < book->rows; row++) {
		if (!is_extended(book, row))
			continue;
		rb_phrase_text(phrase, listed++ ? ", " : rows == 1 ? "line " : "lines ");
		rb_phrase_number(phrase, rb_book_line(book, row));
	}
	if (listed == rows)
		return;
	rb_phrase_text(phrase, " and ");
	rb_phrase_number(phrase, rows - listed);
	rb_phrase_text(phrase, " more");
}

static void add_caution(struct rb_page *page, struct rb_phrase *phrase,
			const struct rb_book *book)
{
	uint32_t rows = count_extended(book);

	if (!rows)
		return;
	rb_phrase_clear(phrase);
	rb_phrase_text(phrase, "readings over ");
	rb_phrase_text(phrase,
		       rb_unit_of_runs(book->unit) == RB_FEET ? "7 ft" : "2.13 m (7 ft)");
	rb_phrase_text(phrase, " are taken on an extended rod (");
	list_extended(phrase, book, rows);
	rb_phrase_text(phrase,
		       "): before it goes up, look up for overhead lines, and keep "
		       "it clear of them.");
	rb_page_add(page, RB_CAUTION, phrase->text, RB_ROD_RULE);
}

struct rb_page *rb_reduced_page(struct rb_arena *arena, const struct rb_reduction *r)
{
	const struct rb_sections *sections = rb_reduction_sections(r);
	struct rb_page *page = rb_page_new(arena);
	struct rb_phrase phrase;

	if (!page)
		return NULL;
	rb_phrase_init(&phrase, arena);
	if (phrase.out_of_memory)
		return NULL;
	add_title(page, &phrase, r);
	add_keys(page, &phrase, &rb_reduction_book(r)->key);
	rb_reduced_table(page, &phrase, r);
	for (uint32_t i = 0; i < sections->sections; i++) {
		const struct rb_section *section = &sections->section[i];

		if (sections->sections > 1)
			add_words(page, &phrase, r, section, RB_HEADING, rb_section_name);
		add_words(page, &phrase, r, section, RB_PARAGRAPH, rb_section_arithmetic);
		add_words(page, &phrase, r, section, RB_PARAGRAPH, rb_section_balance);
		rb_suspects_page(page, &phrase, r, i);
	}
	add_overrides(page, r);
	add_caution(page, &phrase, rb_reduction_book(r));
	if (!sections->sections)
		rb_page_add(page, RB_VERDICT,
			    "OPEN: unchecked. No sight was taken after the backsight, so "
			    "there is a height of instrument and no elevation.",
			    NULL);
	for (uint32_t i = 0; i < sections->sections; i++)
		add_words(page, &phrase, r, &sections->section[i], RB_VERDICT,
			  rb_section_verdict);
	add_spurs(page, &phrase, r);
	return page->out_of_memory || phrase.out_of_memory ? NULL : page;
}
