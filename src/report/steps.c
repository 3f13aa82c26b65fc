/* SPDX-License-Identifier: MIT */
/* steps.c - carry and borrow, line by line. */
#include "report/steps.h"

#include "report/shown.h"

#define MOST_DECIMALS 5
#define ROUNDED_MORE  2 /* decimals of a number that none can say exactly */

/* A length of whole 64ths, not below zero, taken apart: feet, inches, so many parts. */
struct parts {
	int64_t feet, inches;
	int64_t over;  /* the fraction's upper number */
	int64_t under; /* and its lower: 1, 2, 4 ... 64; 1 where there is no fraction */
};

static struct parts parts_of(rb_length a)
{
	struct parts p = { a.nm / RB_FOOT, a.nm % RB_FOOT / RB_INCH, 0, 1 };
	int64_t over = a.nm % RB_INCH / RB_SIXTYFOURTH;

	if (!over)
		return p;
	p.over = over;
	p.under = 64;
	while (p.over % 2 == 0) {
		p.over /= 2;
		p.under /= 2;
	}
	return p;
}

bool rb_steps_number(struct rb_phrase *phrase, rb_length a, struct rb_style style)
{
	int decimals = rb_shown_decimals(a, style.unit, MOST_DECIMALS);
	char text[RB_LENGTH_TEXT];
	bool exact;

	if (decimals < 0)
		style.decimals += ROUNDED_MORE;
	else if (decimals > style.decimals)
		style.decimals = decimals;
	style.fraction = 64;
	exact = rb_length_format(text, a, style);
	rb_phrase_text(phrase, text);
	return exact;
}

/* Inches and a fraction that need not be proper: 17 5/4" */
static void put_inches(struct rb_phrase *phrase, int64_t inches, int64_t over,
		       int64_t under)
{
	rb_phrase_number(phrase, inches);
	if (over) {
		rb_phrase_text(phrase, " ");
		rb_phrase_number(phrase, over);
		rb_phrase_text(phrase, "/");
		rb_phrase_number(phrase, under);
	}
	rb_phrase_text(phrase, "\"");
}

static void put_parts(struct rb_phrase *phrase, struct parts p)
{
	rb_phrase_number(phrase, p.feet);
	rb_phrase_text(phrase, "'-");
	put_inches(phrase, p.inches, p.over, p.under);
}

static void put_both(struct rb_phrase *phrase, struct parts a, char sign, struct parts b)
{
	const char between[] = { ' ', sign, ' ', '\0' };

	put_parts(phrase, a);
	rb_phrase_text(phrase, between);
	put_parts(phrase, b);
}

static void new_line(struct rb_phrase *phrase, int indent)
{
	rb_phrase_text(phrase, "\n");
	while (indent-- > 0)
		rb_phrase_text(phrase, " ");
}

static void put_fraction(struct rb_phrase *phrase, int64_t over, int64_t under)
{
	rb_phrase_number(phrase, over);
	rb_phrase_text(phrase, "/");
	rb_phrase_number(phrase, under);
}

/* "1/4 is 4/16": bring the coarser fraction to the finer one's denominator. */
static void match(struct rb_phrase *phrase, struct parts *a, struct parts *b, int indent)
{
	struct parts *coarse = a->under < b->under ? a : b;
	int64_t under = a->under < b->under ? b->under : a->under;
	int64_t over = coarse->over * (under / coarse->under);

	if (a->under == b->under)
		return;
	if (coarse->over) {
		new_line(phrase, indent);
		put_fraction(phrase, coarse->over, coarse->under);
		rb_phrase_text(phrase, " is ");
		put_fraction(phrase, over, under);
	}
	coarse->over = over;
	coarse->under = under;
}

/* A fraction below one and in its lowest terms. */
static void make_proper(struct parts *p)
{
	p->inches += p->over / p->under;
	p->over %= p->under;
	while (p->over && p->over % 2 == 0) {
		p->over /= 2;
		p->under /= 2;
	}
	if (!p->over)
		p->under = 1;
}

/* 5/4 is 1 1/4; 6/8 is 3/4. */
static void settle_fraction(struct rb_phrase *phrase, struct parts *p)
{
	struct parts was = *p;

	make_proper(p);
	if (!was.over || (was.over == p->over && was.under == p->under))
		return;
	rb_phrase_text(phrase, ", ");
	put_fraction(phrase, was.over, was.under);
	rb_phrase_text(phrase, " is ");
	if (was.over >= was.under) {
		rb_phrase_number(phrase, was.over / was.under);
		rb_phrase_text(phrase, p->over ? " " : "");
	}
	if (p->over)
		put_fraction(phrase, p->over, p->under);
	rb_phrase_text(phrase, ": ");
	put_parts(phrase, *p);
}

static void carry(struct rb_phrase *phrase, struct parts *p)
{
	struct parts carried = { p->inches / 12, p->inches % 12, p->over, p->under };

	if (p->inches < 12)
		return;
	rb_phrase_text(phrase, ", ");
	put_inches(phrase, p->inches, p->over, p->under);
	rb_phrase_text(phrase, " is ");
	put_parts(phrase, carried);
	p->feet += carried.feet;
	p->inches = carried.inches;
	rb_phrase_text(phrase, ": ");
	put_parts(phrase, *p);
}

/* 14 3/4", 3/4": without feet. */
static void put_inches_alone(struct rb_phrase *phrase, struct parts p)
{
	if (p.inches || !p.over) {
		put_inches(phrase, p.inches, p.over, p.under);
		return;
	}
	put_fraction(phrase, p.over, p.under);
	rb_phrase_text(phrase, "\"");
}

/* 8 2/4" + 6 3/4" = 14 5/4" = 15 1/4" = 1'-3 1/4" */
static void sum_inches(struct rb_phrase *phrase, struct parts a, struct parts b,
		       struct parts sum)
{
	struct parts was = sum;

	put_inches_alone(phrase, a);
	rb_phrase_text(phrase, " + ");
	put_inches_alone(phrase, b);
	rb_phrase_text(phrase, " = ");
	put_inches_alone(phrase, sum);
	make_proper(&sum);
	if (sum.over != was.over || sum.under != was.under) {
		rb_phrase_text(phrase, " = ");
		put_inches_alone(phrase, sum);
	}
	if (sum.inches < 12)
		return;
	rb_phrase_text(phrase, " = ");
	put_parts(phrase, (struct parts){ sum.inches / 12, sum.inches % 12, sum.over,
					  sum.under });
}

/* 4'-9" + 3'-8 1/2" = 7'-17 1/2", 17 1/2" is 1'-5 1/2": 8'-5 1/2" */
static void work_sum(struct rb_phrase *phrase, rb_length first, rb_length second,
		     int indent)
{
	struct parts a = parts_of(first), b = parts_of(second), sum;

	if (a.under == b.under && a.over + b.over == 0 && a.inches + b.inches < 12)
		return;
	match(phrase, &a, &b, indent);
	sum = (struct parts){ a.feet + b.feet, a.inches + b.inches, a.over + b.over,
			      a.under };
	if (sum.inches < 12 && sum.over < sum.under && (!a.over || !b.over))
		return; /* nothing to carry: the first line says it all */
	new_line(phrase, indent);
	if (!sum.feet) {
		sum_inches(phrase, a, b, sum);
		return;
	}
	put_both(phrase, a, '+', b);
	rb_phrase_text(phrase, " = ");
	put_parts(phrase, sum);
	settle_fraction(phrase, &sum);
	carry(phrase, &sum);
}

/* What cannot be taken from what: "1/4 is less than 2/4". */
static void say_short(struct rb_phrase *phrase, const struct parts *a,
		      const struct parts *b)
{
	if (a->over) {
		put_fraction(phrase, a->over, a->under);
		rb_phrase_text(phrase, " is less than ");
	} else {
		rb_phrase_text(phrase, "there is no fraction to take from: ");
	}
	put_fraction(phrase, b->over, b->under);
	rb_phrase_text(phrase, a->over ? ", so borrow " : " needs one, so borrow ");
}

/* Borrow an inch for the fraction: 3 1/4" is 2 5/4"; from a foot where there is no inch.
 */
static void borrow_inch(struct rb_phrase *phrase, struct parts *a, const struct parts *b,
			int indent)
{
	if (a->over >= b->over)
		return;
	new_line(phrase, indent);
	say_short(phrase, a, b);
	rb_phrase_text(phrase, a->inches ? "1\" = " : "1 ft = 12\", and of it 1\" = ");
	put_fraction(phrase, a->under, a->under);
	rb_phrase_text(phrase, ": ");
	if (!a->inches) {
		a->feet--;
		a->inches = 12;
	}
	a->inches--;
	a->over += a->under;
	put_parts(phrase, *a);
}

/* Borrow a foot for the inches: 104'-3 1/2" is 103'-15 1/2" */
static void borrow_foot(struct rb_phrase *phrase, struct parts *a, const struct parts *b,
			int indent)
{
	if (a->inches >= b->inches)
		return;
	new_line(phrase, indent);
	put_inches(phrase, a->inches, a->over, a->under);
	rb_phrase_text(phrase, " is less than ");
	put_inches(phrase, b->inches, b->over, b->under);
	rb_phrase_text(phrase, ", so borrow 1 ft = 12\": ");
	a->feet--;
	a->inches += 12;
	put_parts(phrase, *a);
}

/* 104'-3 1/2" - 96'-9": what is taken away is not the greater. */
static void work_difference(struct rb_phrase *phrase, rb_length first, rb_length second,
			    int indent)
{
	struct parts a = parts_of(first), b = parts_of(second), rest;
	struct parts was = a;

	match(phrase, &a, &b, indent);
	borrow_inch(phrase, &a, &b, indent);
	borrow_foot(phrase, &a, &b, indent);
	rest = (struct parts){ a.feet - b.feet, a.inches - b.inches, a.over - b.over,
			       a.under };
	if (a.feet == was.feet && a.inches == was.inches && (!a.over || !b.over))
		return; /* nothing was borrowed: the first line says it all */
	new_line(phrase, indent);
	put_both(phrase, a, '-', b);
	rb_phrase_text(phrase, " = ");
	put_parts(phrase, rest);
	settle_fraction(phrase, &rest);
}

static bool is_sixtyfourths(rb_length a)
{
	return a.nm % RB_SIXTYFOURTH == 0;
}

/* Lengths of either sign, brought to those not below zero. */
static void work(struct rb_phrase *phrase, rb_length a, rb_length b, int indent)
{
	rb_length x = rb_length_absolute(a), y = rb_length_absolute(b);
	bool apart = (a.nm < 0) != (b.nm < 0);
	bool less = rb_length_compare(x, y) < 0;

	if (!is_sixtyfourths(a) || !is_sixtyfourths(b) || !a.nm || !b.nm)
		return;
	if (!apart) {
		work_sum(phrase, x, y, indent);
		return;
	}
	if (less) {
		new_line(phrase, indent);
		rb_phrase_text(phrase,
			       "the number taken away is the greater: take the other "
			       "from it, and put a minus before what is left");
	}
	work_difference(phrase, less ? y : x, less ? x : y, indent);
}

/* The first line; brackets keep a minus from its sign. */
static void state(struct rb_phrase *phrase, rb_length a, const char *sign, rb_length b,
		  rb_length result, struct rb_style style)
{
	bool exact = rb_steps_number(phrase, a, style);

	rb_phrase_text(phrase, sign);
	rb_phrase_text(phrase, b.nm < 0 ? "(" : "");
	exact &= rb_steps_number(phrase, b, style);
	rb_phrase_text(phrase, b.nm < 0 ? ") = " : " = ");
	rb_phrase_rounded(phrase, exact, rb_steps_number(phrase, result, style));
}

void rb_steps_add(struct rb_phrase *phrase, rb_length a, rb_length b,
		  struct rb_style style, int indent)
{
	state(phrase, a, " + ", b, rb_length_add(a, b), style);
	if (style.unit == RB_FEET_INCHES)
		work(phrase, a, b, indent);
}

void rb_steps_subtract(struct rb_phrase *phrase, rb_length a, rb_length b,
		       struct rb_style style, int indent)
{
	state(phrase, a, " - ", b, rb_length_sub(a, b), style);
	if (style.unit == RB_FEET_INCHES)
		work(phrase, a, rb_length_negate(b), indent);
}
