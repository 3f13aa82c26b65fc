/* SPDX-License-Identifier: MIT */
/* convert_page.c - the notations of one length, a line each. */
#include "report/convert_page.h"

#include <string.h>

#include "report/convert_steps.h"

enum { NAME, VALUE, UNIT, COLUMNS };

static const struct rb_table_column columns[COLUMNS] = {
	{ "", RB_LEFT, RB_KEEPS },
	{ "", RB_ON_POINT, RB_KEEPS },
	{ "", RB_LEFT, RB_KEEPS },
};

/* Notations in decimals; the names stand under the nearest mark, which is a note. */
static const struct {
	const char *name, *mark;
	enum rb_unit unit;
} notations[] = {
	{ "    feet", "ft", RB_FEET },
	{ "    inches", "in", RB_INCHES },
	{ "    metres", "m", RB_METRES },
	{ "    millimetres", "mm", RB_MILLIMETRES },
};

#define MOST_DECIMALS 9

/* What the mark leaves, with places enough to see it. */
static int write_left(char left[static RB_RATIO_TEXT], const struct rb_conversion *c)
{
	int decimals = rb_conversion_decimals(c, RB_INCHES);
	int order = rb_conversion_left(left, c, decimals, decimals);

	while (order && decimals < MOST_DECIMALS && strspn(left, "0.") == strlen(left)) {
		decimals++;
		rb_conversion_left(left, c, decimals, decimals);
	}
	return order;
}

/* 5'-3 1/2" on the tape, 0.020 in over the length */
static void add_mark(struct rb_table *table, const struct rb_conversion *c,
		     struct rb_phrase *phrase)
{
	const struct rb_style tape = { RB_FEET_INCHES, 0, c->style.fraction, true };
	char left[RB_RATIO_TEXT];
	int order = write_left(left, c);

	rb_phrase_clear(phrase);
	rb_phrase_length(phrase, rb_conversion_mark(c), tape);
	rb_phrase_text(phrase, " on the tape, ");
	if (order) {
		rb_phrase_text(phrase, *left == '-' ? left + 1 : left);
		rb_phrase_text(phrase, order > 0 ? " in over the length"
						 : " in short of the length");
	} else {
		rb_phrase_text(phrase, "exactly");
	}
	rb_table_note(table, phrase->text);
}

static void add_notation(struct rb_table *table, const struct rb_conversion *c, size_t i)
{
	int decimals = rb_conversion_decimals(c, notations[i].unit);
	const char *cell[COLUMNS] = { notations[i].name, NULL, notations[i].mark };
	char number[RB_RATIO_TEXT];

	rb_ratio_write(number, c->worked.ratio, notations[i].unit, decimals, decimals);
	cell[VALUE] = number;
	rb_table_add(table, RB_ROW, cell);
}

void rb_conversion_add(struct rb_page *page, const struct rb_conversion *c, bool steps)
{
	struct rb_table *table;
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, page->arena);
	rb_phrase_words(&phrase, c->input);
	if (phrase.out_of_memory) {
		page->out_of_memory = true;
		return;
	}
	rb_page_add(page, RB_HEADING, phrase.text, NULL);
	table = rb_page_table(page, NULL, columns, COLUMNS);
	if (!table)
		return;
	add_mark(table, c, &phrase);
	for (size_t i = 0; i < sizeof notations / sizeof *notations; i++)
		add_notation(table, c, i);
	if (steps)
		rb_conversion_steps(page, c);
	page->out_of_memory |= phrase.out_of_memory;
}
