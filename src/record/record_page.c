/* SPDX-License-Identifier: MIT */
/* The record in words and tables. */
#include "record/record.h"

#include <string.h>

#include "report/phrase.h"
#include "report/reduced_table.h"
#include "report/section_words.h"
#include "report/titles.h"

struct writer {
	const struct rb_site_record *record;
	const struct rb_ledger *ledger;
	struct rb_page *page;
	struct rb_phrase phrase;
};

static void add(struct writer *w, enum rb_block_kind kind)
{
	rb_page_add(w->page, kind, w->phrase.text, NULL);
	rb_phrase_clear(&w->phrase);
}

static uint32_t new_books(const struct writer *w)
{
	return w->ledger->books - w->ledger->old_books;
}

static void put_count(struct writer *w, uint32_t count, const char *one, const char *more)
{
	rb_phrase_number(&w->phrase, count);
	rb_phrase_text(&w->phrase, count == 1 ? one : more);
}

/* -- the head -------------------------------------------------------------------- */

/* The project, where all the books name the same. */
static const char *common_project(const struct writer *w)
{
	const struct rb_recorded_book *book = w->ledger->book + w->ledger->old_books;

	for (uint32_t i = 1; i < new_books(w); i++)
		if (strcmp(book[i].project, book[0].project) != 0)
			return "";
	return new_books(w) ? book[0].project : "";
}

static void put_title(struct writer *w)
{
	const char *project = common_project(w);
	struct rb_phrase aside;

	rb_phrase_init(&aside, w->phrase.arena);
	rb_phrase_number(&aside, new_books(w));
	rb_phrase_text(&aside, new_books(w) == 1 ? " book" : " books");
	rb_phrase_text(&w->phrase, "Site record");
	rb_phrase_text(&w->phrase, *project ? ": " : "");
	rb_phrase_words(&w->phrase, project);
	rb_page_add(w->page, RB_TITLE, w->phrase.text, aside.text);
	rb_phrase_clear(&w->phrase);
	w->page->out_of_memory |= aside.out_of_memory;
}

static void put_before(struct writer *w)
{
	const struct rb_ledger *ledger = w->ledger;

	if (!ledger->file)
		return;
	rb_phrase_text(&w->phrase, ledger->has_record ? "Added to " : "Begun in ");
	rb_phrase_words(&w->phrase, ledger->file);
	rb_phrase_text(&w->phrase, ": ");
	put_count(w, ledger->entries - ledger->old_entries, " line", " lines");
	if (ledger->has_record) {
		rb_phrase_text(&w->phrase, "; it held ");
		put_count(w, ledger->old_entries, " line of ", " lines of ");
		put_count(w, ledger->old_books, " book", " books");
		rb_phrase_text(&w->phrase, ", and they stay as they are");
	}
	rb_phrase_text(&w->phrase, ".");
	add(w, RB_PARAGRAPH);
}

/* -- a book ---------------------------------------------------------------------- */

/* "larch.csv, Larch Street drain, 17 March 2026, decimal feet" */
static void put_heading(struct writer *w, const struct rb_recorded_book *book)
{
	const char *const part[] = { book->name, book->project, book->date,
				     rb_title_unit(book->style.unit) };
	size_t first = *common_project(w) ? 1 : 4;

	for (size_t i = 0; i < sizeof part / sizeof *part; i++) {
		if (!*part[i] || i == first)
			continue;
		rb_phrase_text(&w->phrase, i ? ", " : "");
		rb_phrase_words(&w->phrase, part[i]);
	}
	add(w, RB_HEADING);
}

static void put_words(struct writer *w, const struct rb_recorded_book *book)
{
	if (*book->datum) {
		rb_phrase_text(&w->phrase, "Datum: ");
		rb_phrase_words(&w->phrase, book->datum);
		rb_phrase_text(&w->phrase, ".");
	}
	if (*book->replaces) {
		rb_phrase_text(&w->phrase, w->phrase.used ? " Version " : "Version ");
		rb_phrase_number(&w->phrase, book->version);
		rb_phrase_text(&w->phrase, ", replaces ");
		rb_phrase_words(&w->phrase, book->replaces);
		rb_phrase_text(&w->phrase, ".");
	}
	if (w->phrase.used)
		add(w, RB_PARAGRAPH);
}

enum { POINT, ROD_ON, ELEVATION, ADJUSTED, BELOW, SECTION, CLOSURE, REMARKS, COLUMNS };

static const char *closure_of(const struct rb_entry *e)
{
	static const char *const words[] = {
		[RB_NOT_JUDGED] = "not judged",
		[RB_CLOSES] = "closes",
		[RB_BEYOND] = "does not close",
		[RB_OPEN] = "open",
	};

	if (*e->section)
		return words[e->verdict];
	return rb_entry_is_levelled(e) ? "unchecked" : "";
}

static bool stands_in(const struct rb_entry *e, int column)
{
	switch (column) {
	case ROD_ON:
		return e->rod_on != RB_ON_UNSAID;
	case ADJUSTED:
		return rb_length_given(e->adjusted);
	case BELOW:
		return rb_length_given(e->below);
	default:
		return true;
	}
}

/* A column in which nothing stands is left out. */
static bool is_empty(const struct writer *w, const struct rb_recorded_book *book,
		     int column)
{
	for (uint32_t i = 0; i < book->entries; i++)
		if (stands_in(&w->ledger->entry[book->first + i], column))
			return false;
	return book->entries > 0;
}

/* Which columns the table of a book has; returns how many. */
static size_t choose(const struct writer *w, const struct rb_recorded_book *book,
		     int shown[static COLUMNS])
{
	size_t columns = 0;

	for (int i = 0; i < COLUMNS; i++)
		if (!is_empty(w, book, i))
			shown[columns++] = i;
	return columns;
}

static void add_row(struct rb_table *table, const int *shown,
		    const struct rb_recorded_book *book, const struct rb_entry *e)
{
	char elevation[RB_LENGTH_TEXT], adjusted[RB_LENGTH_TEXT], below[RB_LENGTH_TEXT];
	const char *const all[COLUMNS] = {
		[POINT] = e->point,        [ROD_ON] = rb_rod_on_name(e->rod_on),
		[ELEVATION] = elevation,   [ADJUSTED] = adjusted,
		[BELOW] = below,           [SECTION] = e->section,
		[CLOSURE] = closure_of(e), [REMARKS] = e->remarks,
	};
	const char *cell[COLUMNS];

	rb_length_format(elevation, e->elevation, book->style);
	rb_length_format(adjusted, e->adjusted,
			 rb_adjusted_style(book->style, book->fraction_asked));
	rb_length_format(below, e->below, book->style);
	for (size_t i = 0; i < table->columns; i++)
		cell[i] = all[shown[i]];
	rb_table_add(table, RB_ROW, cell);
}

static void put_table(struct writer *w, const struct rb_recorded_book *book)
{
	enum rb_align number =
		book->style.unit == RB_FEET_INCHES ? RB_ON_INCHES : RB_ON_POINT;
	const struct rb_table_column all[COLUMNS] = {
		[POINT] = { "point", RB_LEFT, RB_SPILLS },
		[ROD_ON] = { "rod on", RB_LEFT, RB_MOVES },
		[ELEVATION] = { "elevation", number, RB_KEEPS },
		[ADJUSTED] = { "adjusted", number, RB_KEEPS },
		[BELOW] = { "below", number, RB_MOVES },
		[SECTION] = { "section", RB_LEFT, RB_MOVES },
		[CLOSURE] = { "closure", RB_LEFT, RB_KEEPS },
		[REMARKS] = { "", RB_LEFT, RB_SPILLS },
	};
	struct rb_table_column column[COLUMNS];
	int shown[COLUMNS];
	size_t columns = choose(w, book, shown);
	struct rb_table *table;

	for (size_t i = 0; i < columns; i++)
		column[i] = all[shown[i]];
	table = rb_page_table(w->page, NULL, column, columns);
	for (uint32_t i = 0; table && i < book->entries; i++)
		add_row(table, shown, book, &w->ledger->entry[book->first + i]);
}

static void put_book(struct writer *w, const struct rb_recorded_book *book)
{
	put_heading(w, book);
	put_words(w, book);
	put_table(w, book);
}

/* -- several books --------------------------------------------------------------- */

/* "known", "levelled", "levelled on top of pipe" */
static void put_how(struct rb_phrase *phrase, const struct rb_sighting *s)
{
	rb_phrase_text(phrase, s->known ? "known" : "levelled");
	if (s->rod_on == RB_ON_UNSAID)
		return;
	rb_phrase_text(phrase, " on ");
	rb_phrase_text(phrase, rb_rod_on_name(s->rod_on));
}

/* What is compared, unless both are points as levelled. */
static const char *pair_words(struct writer *w, const struct rb_pair *pair)
{
	const struct rb_sighting *a = &pair->earlier, *b = &pair->later;

	rb_phrase_clear(&w->phrase);
	if (a->known && b->known)
		rb_phrase_text(&w->phrase, pair->agrees ? "agrees" : "DIFFERS");
	else if (a->known || b->known || a->rod_on != b->rod_on) {
		put_how(&w->phrase, a);
		rb_phrase_text(&w->phrase, ", then ");
		put_how(&w->phrase, b);
	}
	if (pair->other_datum)
		rb_phrase_text(&w->phrase, w->phrase.used ? "; another datum is named"
							  : "another datum is named");
	return w->phrase.text;
}

enum { SEEN, EARLIER, IN, LATER, IN_LATER, DIFFERENCE, WORDS, PAIR_COLUMNS };

static void add_pair(struct rb_table *table, struct writer *w, const struct rb_pair *pair)
{
	const struct rb_recorded_book *book = &w->ledger->book[pair->later.book];
	struct rb_style finer = rb_adjusted_style(book->style, book->fraction_asked);
	char earlier[RB_LENGTH_TEXT], later[RB_LENGTH_TEXT], apart[RB_LENGTH_TEXT];
	const char *const cell[PAIR_COLUMNS] = {
		[SEEN] = pair->later.point,
		[EARLIER] = earlier,
		[IN] = w->ledger->book[pair->earlier.book].name,
		[LATER] = later,
		[IN_LATER] = book->name,
		[DIFFERENCE] = apart,
		[WORDS] = pair_words(w, pair),
	};

	rb_length_format(earlier, pair->earlier.elevation, finer);
	rb_length_format(later, pair->later.elevation, finer);
	rb_length_format(apart,
			 rb_length_sub(pair->later.elevation, pair->earlier.elevation),
			 finer);
	rb_table_add(table, RB_ROW, cell);
}

/* A name this long is not kept on one line. */
#define NAME_MOST 24

static bool any_long_name(const struct rb_ledger *ledger)
{
	for (uint32_t i = 0; i < ledger->books; i++)
		if (strlen(ledger->book[i].name) > NAME_MOST)
			return true;
	return false;
}

/* Elevations of books in different units stand in that of the later one. */
static void put_several(struct writer *w)
{
	bool longer = any_long_name(w->ledger);
	const struct rb_table_column column[PAIR_COLUMNS] = {
		[SEEN] = { "point", RB_LEFT, RB_SPILLS },
		[EARLIER] = { "elevation", RB_RIGHT, RB_KEEPS },
		[IN] = { "in", RB_LEFT, longer ? RB_SPILLS : RB_MOVES },
		[LATER] = { "then", RB_RIGHT, RB_KEEPS },
		[IN_LATER] = { "in", RB_LEFT, longer ? RB_SPILLS : RB_MOVES },
		[DIFFERENCE] = { "difference", RB_RIGHT, RB_KEEPS },
		[WORDS] = { "", RB_LEFT, RB_SPILLS },
	};
	const struct rb_several *several = w->record->several;
	struct rb_table *table;

	if (!several->pairs)
		return;
	table = rb_page_table(w->page, "Seen in several books", column, PAIR_COLUMNS);
	for (uint32_t i = 0; table && i < several->pairs; i++)
		add_pair(table, w, &several->pair[i]);
	rb_phrase_clear(&w->phrase);
}

static void put_legend(struct writer *w)
{
	rb_phrase_text(&w->phrase,
		       "elevation: as levelled; adjusted: with the misclosure "
		       "spread.");
	if (w->record->several->pairs)
		rb_phrase_text(&w->phrase,
			       "\nSeen in several books: adjusted where there is one, in "
			       "the unit of the later\nbook; the difference is the later "
			       "less the earlier.");
	add(w, RB_LINES);
}

/* -- verdicts -------------------------------------------------------------------- */

static void name_if_several(struct writer *w, const struct rb_recorded_book *book)
{
	if (w->ledger->books < 2)
		return;
	rb_phrase_words(&w->phrase, book->name);
	rb_phrase_text(&w->phrase, ": ");
}

static void put_section_verdicts(struct writer *w, const struct rb_recorded_book *book)
{
	const struct rb_sections *s = rb_reduction_sections(&book->reduction);

	for (uint32_t i = 0; i < s->sections; i++) {
		name_if_several(w, book);
		rb_section_verdict(&w->phrase, &book->reduction, &s->section[i]);
		add(w, RB_VERDICT);
	}
	for (uint32_t i = 0; i < s->spurs; i++) {
		name_if_several(w, book);
		rb_spur_words(&w->phrase, &book->reduction, &s->spur[i]);
		add(w, RB_VERDICT);
	}
}

static void put_benchmark_verdict(struct writer *w)
{
	const struct rb_several *several = w->record->several;

	if (!several->benchmarks)
		return;
	if (several->differing) {
		rb_phrase_text(&w->phrase, "BENCHMARKS DIFFER: ");
		put_count(w, several->differing, " known elevation is",
			  " known elevations are");
		rb_phrase_text(&w->phrase, " not the same in two books.");
	} else {
		rb_phrase_text(&w->phrase,
			       "BENCHMARKS AGREE: known elevations are the same in all "
			       "books that name them.");
	}
	add(w, RB_VERDICT);
}

struct rb_page *rb_record_page(const struct rb_site_record *record)
{
	const struct rb_ledger *ledger = record->ledger;
	struct writer w = { .record = record,
			    .ledger = ledger,
			    .page = rb_page_new(ledger->arena) };

	rb_phrase_init(&w.phrase, ledger->arena);
	if (!w.page || w.phrase.out_of_memory)
		return NULL;
	put_title(&w);
	put_before(&w);
	for (uint32_t i = ledger->old_books; i < ledger->books; i++)
		put_book(&w, &ledger->book[i]);
	put_several(&w);
	put_legend(&w);
	for (uint32_t i = ledger->old_books; i < ledger->books; i++)
		put_section_verdicts(&w, &ledger->book[i]);
	put_benchmark_verdict(&w);
	w.page->out_of_memory |= w.phrase.out_of_memory;
	return w.page;
}
