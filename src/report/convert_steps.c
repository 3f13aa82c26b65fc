/* SPDX-License-Identifier: MIT */
/* convert_steps.c - operations, in feet and inches and in decimals. */
#include "report/convert_steps.h"

#include <stdlib.h>

#include "report/ratio_words.h"
#include "report/steps.h"

#define WORKING 6 /* blanks before the lines that carry and borrow */

struct teller {
	struct rb_phrase *phrase;
	const struct rb_conversion *c;
	enum rb_unit
		decimal; /* the unit of the decimal way: feet, metres or millimetres */
};

static void text(struct teller *t, const char *words)
{
	rb_phrase_text(t->phrase, words);
}

static void line(struct teller *t)
{
	text(t, t->phrase->used ? "\n  " : "  ");
}

/* -- the operations -- */

static const char *sign_of(char sign)
{
	switch (sign) {
	case '+':
		return " + ";
	case '-':
		return " - ";
	case '*':
		return " x ";
	default:
		return " / ";
	}
}

static struct rb_ratio no_sign(struct rb_ratio a)
{
	a.num = llabs(a.num);
	return a;
}

/* Both are lengths of whole 64ths: carried and borrowed as on paper. */
static void sum_by_hand(struct teller *t, const struct rb_operation *o)
{
	const struct rb_style style = { RB_FEET_INCHES, 0, 64, true };
	rb_length a = rb_length_of(o->left.num), b = rb_length_of(o->right.num);

	line(t);
	if (o->sign == '+')
		rb_steps_add(t->phrase, a, b, style, WORKING);
	else
		rb_steps_subtract(t->phrase, a, b, style, WORKING);
}

/* "= 30 in, 2 ft 6 in": inches back to feet */
static void back_to_feet(struct teller *t, struct rb_ratio a)
{
	struct rb_ratio size = no_sign(a);
	int64_t feet = size.num / size.den / RB_FOOT;

	if (!rb_ratio_is_sixtyfourths(a) || feet == 0)
		return;
	text(t, "\n      ");
	rb_say_inches(t->phrase, size);
	text(t, " = ");
	rb_phrase_number(t->phrase, feet);
	text(t, " x 12 in + ");
	rb_say_inches(t->phrase, rb_ratio_of_length(size.num - feet * RB_FOOT));
	text(t, ": ");
	rb_say_feet_inches(t->phrase, a);
}

/* A length by a number goes by inches: 8'-6 3/4" is 102 3/4 in. */
static void factor_by_hand(struct teller *t, const struct rb_operation *o)
{
	struct rb_ratio length = o->left.is_length ? o->left : o->right;
	int64_t feet = llabs(length.num) / RB_FOOT;
	bool exact;

	line(t);
	rb_say_feet_inches(t->phrase, length);
	if (feet) {
		text(t, length.num < 0 ? " = -(" : " = ");
		rb_phrase_number(t->phrase, feet);
		text(t, " x 12 in + ");
		rb_say_inches(t->phrase, rb_ratio_of_length(llabs(length.num) % RB_FOOT));
		text(t, length.num < 0 ? ") = " : " = ");
		rb_say_inches(t->phrase, length);
	}
	text(t, "\n      ");
	exact = o->left.is_length ? rb_say_any_inches(t->phrase, o->left)
				  : rb_say_number(t->phrase, o->left, RB_FEET);
	text(t, sign_of(o->sign));
	exact &= o->right.is_length ? rb_say_any_inches(t->phrase, o->right)
				    : rb_say_number(t->phrase, o->right, RB_FEET);
	text(t, " = ");
	rb_phrase_rounded(t->phrase, exact, rb_say_any_inches(t->phrase, o->result));
	back_to_feet(t, o->result);
}

/* Numbers alone: (1 + 2), and 10 ft / 2 ft. */
static void plain(struct teller *t, const struct rb_operation *o, enum rb_unit unit)
{
	bool exact;

	line(t);
	exact = rb_say_number(t->phrase, o->left, unit);
	text(t, sign_of(o->sign));
	text(t, o->right.num < 0 ? "(" : "");
	exact &= rb_say_number(t->phrase, o->right, unit);
	text(t, o->right.num < 0 ? ") = " : " = ");
	rb_phrase_rounded(t->phrase, exact, rb_say_number(t->phrase, o->result, unit));
}

/* Can the operation be done on a tape's marks? */
static bool is_by_hand(const struct rb_operation *o)
{
	return (!o->left.is_length || rb_ratio_is_sixtyfourths(o->left)) &&
	       (!o->right.is_length || rb_ratio_is_sixtyfourths(o->right));
}

static void by_hand(struct teller *t, const struct rb_operation *o)
{
	if (!is_by_hand(o) || !o->result.is_length)
		plain(t, o, RB_INCHES);
	else if (o->sign == '+' || o->sign == '-')
		sum_by_hand(t, o);
	else
		factor_by_hand(t, o);
}

static bool any_by_hand(const struct rb_expression *e)
{
	for (int i = 0; i < e->steps; i++)
		if (is_by_hand(&e->step[i]) &&
		    (e->step[i].left.is_length || e->step[i].right.is_length))
			return true;
	return false;
}

static void tell_operations(struct teller *t)
{
	const struct rb_expression *e = &t->c->worked;

	if (any_by_hand(e)) {
		text(t, "in feet and inches");
		for (int i = 0; i < e->steps; i++)
			by_hand(t, &e->step[i]);
		text(t, "\n");
	}
	text(t, t->decimal == RB_FEET ? "in decimals of a foot" : "in metric decimals");
	for (int i = 0; i < e->steps; i++)
		plain(t, &e->step[i], t->decimal);
	text(t, "\n");
}

void rb_conversion_tell(struct rb_phrase *phrase, const struct rb_conversion *c)
{
	bool is_metric_unit =
		c->style.unit == RB_METRES || c->style.unit == RB_MILLIMETRES;
	struct teller t = { phrase, c, is_metric_unit ? c->style.unit : RB_FEET };

	if (c->worked.steps)
		tell_operations(&t);
	rb_conversion_tell_notations(phrase, c);
}

void rb_conversion_steps(struct rb_page *page, const struct rb_conversion *c)
{
	struct rb_phrase phrase;

	rb_phrase_init(&phrase, page->arena);
	rb_conversion_tell(&phrase, c);
	rb_page_add(page, RB_LINES, phrase.text ? phrase.text : "", NULL);
	page->out_of_memory |= phrase.out_of_memory;
}
