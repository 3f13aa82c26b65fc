/* SPDX-License-Identifier: MIT */
/* ratio_words.c - numbers with the places that they need. */
#include "report/ratio_words.h"

#include <stdlib.h>

#define MOST_DECIMALS 6

static const char *const unit_words[] = {
	[RB_FEET] = " ft",  [RB_INCHES] = " in",      [RB_FEET_INCHES] = " ft",
	[RB_METRES] = " m", [RB_MILLIMETRES] = " mm",
};

bool rb_say_number(struct rb_phrase *phrase, struct rb_ratio a, enum rb_unit unit)
{
	char buf[RB_RATIO_TEXT];
	bool exact = rb_ratio_write(buf, a, unit, MOST_DECIMALS, 0);

	rb_phrase_text(phrase, buf);
	rb_phrase_text(phrase, a.is_length ? unit_words[unit] : "");
	return exact;
}

void rb_say_inches(struct rb_phrase *phrase, struct rb_ratio a)
{
	int64_t whole = a.num / RB_INCH, over = llabs(a.num % RB_INCH) / RB_SIXTYFOURTH;
	int64_t under = 64;

	for (; over && over % 2 == 0; over /= 2)
		under /= 2;
	rb_phrase_text(phrase, a.num < 0 && !whole ? "-" : "");
	if (whole || !over)
		rb_phrase_number(phrase, whole);
	if (over) {
		rb_phrase_text(phrase, whole ? " " : "");
		rb_phrase_number(phrase, over);
		rb_phrase_text(phrase, "/");
		rb_phrase_number(phrase, under);
	}
	rb_phrase_text(phrase, " in");
}

bool rb_say_any_inches(struct rb_phrase *phrase, struct rb_ratio a)
{
	if (!rb_ratio_is_sixtyfourths(a))
		return rb_say_number(phrase, a, RB_INCHES);
	rb_say_inches(phrase, a);
	return true;
}

void rb_say_feet_inches(struct rb_phrase *phrase, struct rb_ratio a)
{
	const struct rb_style style = { RB_FEET_INCHES, 0, 64, true };

	rb_phrase_length(phrase, rb_length_of(a.num), style);
}
