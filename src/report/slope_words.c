/* SPDX-License-Identifier: MIT */
/* slope_words.c - slopes in their four forms, and the rule behind a minimum. */
#include "report/slope_words.h"

#include <string.h>

#include "report/shown.h"

static void put_form(struct rb_phrase *phrase, rb_slope slope, enum rb_slope_form form,
		     int decimals)
{
	char text[RB_SLOPE_TEXT];

	rb_slope_format(text, slope, form, decimals);
	rb_phrase_text(phrase, text);
}

#define PER_FOOT 3 /* decimals, where no fraction says it */
#define FINEST   9

int rb_slope_places(rb_slope slope, rb_slope other)
{
	int places = PER_FOOT;

	if (!rb_slope_given(slope) || !rb_slope_given(other) ||
	    rb_slope_compare(slope, other) == 0)
		return places;
	for (; places < FINEST; places++) {
		char one[RB_SLOPE_TEXT], two[RB_SLOPE_TEXT];

		rb_slope_format(one, slope, RB_PERCENT, places - 1);
		rb_slope_format(two, other, RB_PERCENT, places - 1);
		if (strcmp(one, two) != 0)
			break;
	}
	return places;
}

static void put_slope(struct rb_phrase *phrase, rb_slope slope, int places)
{
	char text[RB_SLOPE_TEXT];

	rb_slope_format(text, slope, RB_PER_FOOT, places);
	rb_phrase_text(phrase, text);
	if (!strchr(text, '.'))
		return;
	rb_phrase_text(phrase, " (");
	put_form(phrase, slope, RB_PERCENT, places - 1);
	rb_phrase_text(phrase, ")");
}

void rb_phrase_slope(struct rb_phrase *phrase, rb_slope slope)
{
	put_slope(phrase, slope, PER_FOOT);
}

void rb_phrase_slope_beside(struct rb_phrase *phrase, rb_slope slope, rb_slope other)
{
	put_slope(phrase, slope, rb_slope_places(slope, other));
}

void rb_phrase_slope_all(struct rb_phrase *phrase, rb_slope slope)
{
	put_form(phrase, slope, RB_PER_FOOT, PER_FOOT);
	rb_phrase_text(phrase, " = ");
	put_form(phrase, slope, RB_PERCENT, 2);
	rb_phrase_text(phrase, " = ");
	put_form(phrase, slope, RB_ONE_IN, 1);
	rb_phrase_text(phrase, " = ");
	put_form(phrase, slope, RB_DEGREES, 2);
}

/* Whole inches and a fraction: a pipe is 12 in, not 1 ft. */
static void put_inches(struct rb_phrase *phrase, rb_length size, int part)
{
	int64_t parts = size.nm * part / RB_INCH;

	if (parts / part)
		rb_phrase_number(phrase, parts / part);
	if (parts % part) {
		rb_phrase_text(phrase, parts / part ? " " : "");
		rb_phrase_number(phrase, parts % part);
		rb_phrase_text(phrase, "/");
		rb_phrase_number(phrase, part);
	}
	rb_phrase_text(phrase, " in");
}

void rb_phrase_size(struct rb_phrase *phrase, rb_length size)
{
	int part = rb_shown_fraction(size);
	char text[RB_LENGTH_TEXT];

	if (part) {
		put_inches(phrase, size, part);
		return;
	}
	rb_shown(text, size, RB_MILLIMETRES);
	rb_phrase_text(phrase, text);
}

void rb_phrase_minimum(struct rb_phrase *phrase, const struct rb_minimum *minimum)
{
	rb_phrase_slope(phrase, minimum->slope);
	if (!minimum->rules)
		return;
	rb_phrase_text(phrase, " (");
	rb_phrase_words(phrase, *minimum->rules->name ? minimum->rules->name
						      : "a rule without a name");
	rb_phrase_text(phrase, ")");
}

static void put_source(struct rb_phrase *phrase, const struct rb_rules *rules)
{
	const struct {
		const char *before, *words;
	} parts[] = {
		{ "; source: ", rules->source },
		{ "; edition: ", rules->edition },
		{ "; read: ", rules->read },
	};

	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		if (!*parts[i].words)
			continue;
		rb_phrase_text(phrase, parts[i].before);
		rb_phrase_words(phrase, parts[i].words);
	}
}

void rb_phrase_minimum_source(struct rb_phrase *phrase, const struct rb_minimum *minimum,
			      rb_length size)
{
	const struct rb_rules *rules = minimum->rules;

	rb_phrase_text(phrase, "Minimum: ");
	rb_phrase_slope_all(phrase, minimum->slope);
	if (rules) {
		if (rb_length_given(size)) {
			rb_phrase_text(phrase, " for a pipe of ");
			rb_phrase_size(phrase, size);
		}
		rb_phrase_text(phrase, ", rule: ");
		rb_phrase_words(phrase, *rules->name ? rules->name : "without a name");
		put_source(phrase, rules);
	}
	rb_phrase_text(phrase, ". The authority having jurisdiction decides.");
}
