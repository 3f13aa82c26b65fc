/* SPDX-License-Identifier: MIT */
/* suspects_page.c - a list of places to look. */
#include "report/suspects_page.h"

#include <stdio.h>

#include "notes/seek.h"
#include "report/section_words.h"
#include "report/shown.h"

#define SINGLY 4  /* of one kind: more are one line together */
#define LISTED 12 /* lines named in one line */

enum { LINE, COLUMN, READING, MAYBE, LEFT, SLIP, COLUMNS };

static const struct rb_table_column columns[COLUMNS] = {
	[LINE] = { "line", RB_RIGHT, RB_KEEPS },
	[COLUMN] = { "column", RB_LEFT, RB_KEEPS },
	[READING] = { "reading", RB_ON_POINT, RB_KEEPS },
	[MAYBE] = { "may be", RB_ON_POINT, RB_KEEPS },
	[LEFT] = { "leaves", RB_LEFT, RB_KEEPS },
	[SLIP] = { "slip", RB_LEFT, RB_SPILLS },
};

/* What is being listed: the suspects of one section. */
struct listing {
	struct rb_table *table;
	struct rb_phrase *phrase;
	const struct rb_reduction *r;
	const struct rb_suspect *item;
	uint32_t count, of_kind[RB_SLIPS];
	struct rb_phrase left;
};

/* In words of the page's own where there is room for more, or less. */
static const char *slip_words(const struct listing *l, enum rb_slip slip)
{
	static const char *const words[RB_SLIPS] = {
		[RB_SLIP_SIGN] = "sign, or inverted rod",
		[RB_SLIP_COLUMNS] = "BS and FS exchanged",
		[RB_SLIP_FRACTION] = "a fraction dropped",
		[RB_SLIP_ROD] = "rod not fully extended, on every high reading",
		[RB_SLIP_BENCHMARK] = "the elevation itself",
	};

	return words[slip] ? words[slip]
			   : rb_slip_name(slip, rb_reduction_book(l->r)->unit);
}

static struct rb_style exact_style(rb_length a, struct rb_style style)
{
	int decimals = rb_shown_decimals(a, style.unit, 6);
	int fraction = rb_shown_fraction(a);

	if (decimals > style.decimals)
		style.decimals = decimals;
	if (fraction > style.fraction)
		style.fraction = fraction;
	return style;
}

/* Where a slip changes digits, what became of what is worth more than the line alone. */
static bool is_detailed(enum rb_slip slip)
{
	return slip == RB_SLIP_EXCHANGED || slip == RB_SLIP_LOOK_ALIKE ||
	       slip == RB_SLIP_INCHES;
}

static void put_exact(struct rb_phrase *phrase, rb_length a, struct rb_style style)
{
	rb_phrase_length(phrase, a, exact_style(a, style));
}

static void add_single(struct listing *l, const struct rb_suspect *s)
{
	const struct rb_book *book = rb_reduction_book(l->r);
	char line[24], reading[RB_LENGTH_TEXT], maybe[RB_LENGTH_TEXT];
	struct rb_phrase *left = &l->left;

	snprintf(line, sizeof line, "%lu",
		 (unsigned long)rb_reduction_line(l->r, s->row));
	rb_length_format(reading, s->reading, exact_style(s->reading, l->r->style));
	rb_length_format(maybe, s->maybe, exact_style(s->maybe, l->r->style));
	rb_phrase_clear(left);
	rb_phrase_off(left, s->left, l->r->style);
	rb_phrase_clear(l->phrase);
	rb_phrase_text(l->phrase, slip_words(l, s->slip));
	rb_table_add(l->table, RB_ROW,
		     (const char *[COLUMNS]){ line, book->heading[s->column], reading,
					      maybe, left->text, l->phrase->text });
}

/* ", 7 (6.03 for 6.30)" */
static void put_candidate(struct listing *l, const struct rb_suspect *s, uint32_t row,
			  const char *before)
{
	rb_phrase_text(l->phrase, before);
	rb_phrase_number(l->phrase, rb_reduction_line(l->r, row));
	if (!is_detailed(s->slip))
		return;
	rb_phrase_text(l->phrase, " (");
	put_exact(l->phrase, s->reading, l->r->style);
	rb_phrase_text(l->phrase, " for ");
	put_exact(l->phrase, s->maybe, l->r->style);
	rb_phrase_text(l->phrase, ")");
}

static void put_others(struct listing *l, uint32_t others)
{
	if (!others)
		return;
	rb_phrase_text(l->phrase, " and ");
	rb_phrase_number(l->phrase, others);
	rb_phrase_text(l->phrase, " more");
}

/* The rows of a slip on every high reading. */
static void put_rows(struct listing *l, const struct rb_suspect *s)
{
	uint32_t listed = s->row_count < LISTED ? s->row_count : LISTED;

	for (uint32_t i = 0; i < listed; i++)
		put_candidate(l, s, s->rows[i],
			      i                   ? ", "
			      : s->row_count == 1 ? ": line "
						  : ": lines ");
	put_others(l, s->row_count - listed);
}

/* Does an earlier candidate of the kind say the same?  Two readings of one line do, where
 * the line is all that is said. */
static bool is_said(const struct rb_suspect *first, const struct rb_suspect *s)
{
	for (const struct rb_suspect *e = first; e < s; e++)
		if (e->slip == s->slip && e->row == s->row && !is_detailed(s->slip))
			return true;
	return false;
}

/* The candidates of one kind. */
static void put_kind(struct listing *l, const struct rb_suspect *first)
{
	uint32_t listed = 0, others = 0;

	for (const struct rb_suspect *s = first; s < l->item + l->count; s++) {
		if (s->slip != first->slip || is_said(first, s))
			continue;
		if (listed == LISTED)
			others++;
		else
			put_candidate(l, s, s->row, listed++ ? ", " : ": lines ");
	}
	put_others(l, others);
}

static void add_together(struct listing *l, const struct rb_suspect *first)
{
	struct rb_phrase *left = &l->left;

	rb_phrase_clear(left);
	rb_phrase_off(left, first->left, l->r->style);
	rb_phrase_clear(l->phrase);
	rb_phrase_text(l->phrase, slip_words(l, first->slip));
	if (first->slip == RB_SLIP_ROD)
		put_rows(l, first);
	else
		put_kind(l, first);
	rb_table_add(l->table, RB_ROW,
		     (const char *[COLUMNS]){ [COLUMN] = first->slip == RB_SLIP_ROD
								 ? "high readings"
								 : "one of several",
					      [LEFT] = left->text,
					      [SLIP] = l->phrase->text });
}

static void add_suspects(struct listing *l)
{
	bool listed[RB_SLIPS] = { false };

	for (const struct rb_suspect *s = l->item; s < l->item + l->count; s++) {
		bool together = s->slip == RB_SLIP_ROD || l->of_kind[s->slip] > SINGLY;

		if (together && listed[s->slip])
			continue;
		listed[s->slip] = true;
		if (together)
			add_together(l, s);
		else
			add_single(l, s);
	}
}

/* The suspects of one section stand together, in the order of sections. */
static void find_section(struct listing *l, uint32_t section)
{
	const struct rb_suspects *all = l->r->suspects;
	uint32_t first = rb_seek(all->item, all->count, sizeof *all->item,
				 offsetof(struct rb_suspect, section), section);

	l->item = all->item + first;
	while (first + l->count < all->count && l->item[l->count].section == section)
		l->of_kind[l->item[l->count++].slip]++;
}

static const char last_words[] =
	"This is a list of places to look, and no more: it knows single slips only, and a "
	"slip that fits need not be the one that was made.";

void rb_suspects_page(struct rb_page *page, struct rb_phrase *phrase,
		      const struct rb_reduction *r, uint32_t section)
{
	struct listing l = { .phrase = phrase, .r = r };

	if (!r->suspects)
		return;
	find_section(&l, section);
	if (!l.count)
		return;
	rb_phrase_clear(phrase);
	rb_phrase_text(phrase, "Where to look: single slips that would explain ");
	rb_section_name(phrase, r, &rb_reduction_sections(r)->section[section]);
	rb_page_add(page, RB_HEADING, phrase->text, NULL);
	rb_phrase_init(&l.left, phrase->arena);
	l.table = rb_page_table(page, NULL, columns, COLUMNS);
	if (!l.table || l.left.out_of_memory) {
		page->out_of_memory = true;
		return;
	}
	add_suspects(&l);
	rb_page_add(page, RB_PARAGRAPH, last_words, NULL);
}
