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
}
