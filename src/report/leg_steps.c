/* SPDX-License-Identifier: MIT */
/* leg_steps.c - fall over length, and what a minimum would ask of that length. */
#include "report/leg_steps.h"

#include "report/legs_table.h"
#include "report/slope_words.h"
#include "report/steps.h"

#define WORKING 6 /* indent of the lines that carry and borrow */

static void begin(struct rb_phrase *phrase, const char *name)
{
	rb_phrase_text(phrase, "\n  ");
	rb_phrase_text(phrase, name);
	rb_phrase_text(phrase, " = ");
}

void rb_named_sum(struct rb_phrase *phrase, const char *name, rb_length a, rb_length b,
		  struct rb_style style)
{
	begin(phrase, name);
	rb_steps_add(phrase, a, b, style, WORKING);
}

void rb_named_difference(struct rb_phrase *phrase, const char *name, rb_length a,
			 rb_length b, struct rb_style style)
{
	begin(phrase, name);
	rb_steps_subtract(phrase, a, b, style, WORKING);
}

static void put_number(struct rb_phrase *phrase, rb_length a, struct rb_style style)
{
	style.marked = true;
	if (!rb_steps_number(phrase, a, style))
		rb_phrase_text(phrase, " (rounded)");
}

static void tell_minimum(struct rb_phrase *phrase, const struct rb_leg *leg,
			 struct rb_style style)
{
	static const char *const is[] = { "flatter than", "exactly", "steeper than" };
	int order = rb_slope_compare(leg->slope, leg->minimum);

	rb_phrase_text(phrase, "\n  the minimum over it = ");
	rb_phrase_slope(phrase, leg->minimum);
	rb_phrase_text(phrase, " x ");
	put_number(phrase, leg->length, rb_runs_style(style.unit));
	rb_phrase_text(phrase, " = ");
	put_number(phrase, rb_slope_over(leg->minimum, leg->length), style);
	rb_phrase_text(phrase, "\n      the leg is ");
	rb_phrase_text(phrase, is[order + 1]);
	rb_phrase_text(phrase, " that");
}

void rb_leg_steps(struct rb_phrase *phrase, const struct rb_leg *leg,
		  struct rb_style style)
{
	rb_phrase_text(phrase, phrase->used ? "\n" : "");
	rb_phrase_words(phrase, leg->from);
	rb_phrase_text(phrase, " to ");
	rb_phrase_words(phrase, leg->to);
	rb_named_difference(phrase, "fall", leg->upper, leg->lower, style);
	begin(phrase, "slope");
	put_number(phrase, leg->fall, style);
	rb_phrase_text(phrase, " / ");
	put_number(phrase, leg->length, rb_runs_style(style.unit));
	rb_phrase_text(phrase, "\n      = ");
	rb_phrase_slope_all(phrase, leg->slope);
	if (rb_slope_given(leg->minimum))
		tell_minimum(phrase, leg, style);
}
