/* SPDX-License-Identifier: MIT */
/* elevations_words.c - adjusted, raw, or a book that does not close. */
#include "report/elevations_words.h"

#include "report/titles.h"

const char *rb_elevations_name(const struct rb_spots *spots)
{
	if (!spots->adjusted)
		return "raw";
	return spots->adjusted < spots->count ? "adjusted and raw" : "adjusted";
}

#define LISTED 12

/* What hangs off the line of a book is closed by nothing, whatever its verdict. */
static void say_spurs(struct rb_phrase *phrase, const struct rb_sections *sections)
{
	const struct rb_reduced *reduced = sections->reduced;
	uint32_t sights = 0, listed = 0;

	for (uint32_t i = 0; i < sections->spurs; i++)
		sights += sections->spur[i].sights;
	if (!sights)
		return;
	rb_phrase_text(phrase, " On a spur, unchecked: ");
	for (; listed < sights && listed < LISTED; listed++) {
		uint32_t row = reduced->shot[sections->spur_shot[listed]].row;
		const char *name = rb_book_typed(reduced->book, row);

		rb_phrase_text(phrase, listed ? ", " : "");
		rb_phrase_words(phrase, *name ? name : "a point without a name");
	}
	rb_phrase_text(phrase, listed < sights ? " and others." : ".");
}

void rb_elevations_words(struct rb_phrase *phrase, const struct rb_spots *spots)
{
	rb_phrase_text(phrase, "Elevations from ");
	rb_phrase_words(phrase, rb_title_file(spots->book->file));
	rb_phrase_text(phrase, ": ");
	if (!spots->adjusted)
		rb_phrase_text(phrase, "raw, none of them adjusted");
	else if (spots->adjusted < spots->count)
		rb_phrase_text(phrase,
			       "adjusted where the section was adjusted, raw elsewhere");
	else
		rb_phrase_text(phrase, "adjusted");
	rb_phrase_text(phrase, spots->beyond ? ". THIS BOOK DOES NOT CLOSE: what is made "
					       "from it is not to be trusted."
					     : ".");
	say_spurs(phrase, spots->sections);
}
