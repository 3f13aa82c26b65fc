/* SPDX-License-Identifier: MIT */
/* practice_fall.c - problems about a fall, an invert, a slope and a grade rod, in words.
 */
#include "report/conversion.h"
#include "report/practice_sheet.h"
#include "report/steps.h"

#define DECIMALS       6
#define SLOPE_DECIMALS 3
#define PERCENT_PLACES 2
#define WORKING        6 /* blanks before the lines that carry and borrow */

/* What is being told. */
struct teller {
	struct rb_phrase *phrase;
	const struct rb_problem *p;
	struct rb_style style;
	bool metric;
};

static struct teller teller_of(struct rb_phrase *phrase,
			       const struct rb_practice_sheet *sheet,
			       const struct rb_problem *p)
{
	struct teller t = { phrase, p, rb_practice_style(sheet->options), false };

	t.style.marked = true;
	t.metric = p->unit == RB_METRES || p->unit == RB_MILLIMETRES;
	return t;
}

static void text(struct teller *t, const char *words)
{
	rb_phrase_text(t->phrase, words);
}

static void value(struct teller *t, rb_length a)
{
	rb_phrase_length(t->phrase, a, t->style);
}

/* Whole feet, or metres. */
static void run(struct teller *t)
{
	char number[RB_RATIO_TEXT];
	const struct rb_ratio a = { t->p->run.nm, 1, true };

	rb_ratio_write(number, a, t->metric ? RB_METRES : RB_FEET, 1, 0);
	text(t, number);
	text(t, t->metric ? " m" : " ft");
}

static void slope(struct teller *t)
{
	char buf[RB_SLOPE_TEXT];

	rb_slope_format(buf, t->p->slope, t->metric ? RB_ONE_IN : RB_PER_FOOT, 1);
	text(t, buf);
}

static rb_length fall_of(const struct rb_problem *p)
{
	return rb_slope_over(p->slope, p->run);
}

static void fall_in_inches(struct teller *t, rb_length fall)
{
	char number[RB_RATIO_TEXT];
	const struct rb_ratio a = { fall.nm, 1, true };

	rb_ratio_write(number, a, RB_INCHES, 4, 0);
	text(t, number);
	text(t, " in");
}

/* -- what is asked -- */

/* @a and @b: the numbers given; @r: the run; @s: the slope. */
static const char *const questions[RB_TASKS] = {
	[RB_TASK_FALL] = "A drain runs @r at @s. How much does it fall?",
	[RB_TASK_LOWER_INVERT] =
		"The upper invert is @a, and the drain runs @r at @s. What is "
		"the lower invert?",
	[RB_TASK_SLOPE] = "The inverts are @a and @b, @r apart. What is the slope?",
	[RB_TASK_GRADE_ROD] =
		"The height of instrument is @a, and the invert wanted is @b. "
		"What is the grade rod?",
	[RB_TASK_DIG] =
		"The grade rod is @a, and the rod reads @b. Dig, or bring it back, and "
		"by how much?",
};

static void hole(struct teller *t, char letter)
{
	switch (letter) {
	case 'a':
		value(t, t->p->a);
		break;
	case 'b':
		value(t, t->p->b);
		break;
	case 'r':
		run(t);
		break;
	default:
		slope(t);
	}
}

void rb_fall_problem_text(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
			  const struct rb_problem *p)
{
	struct teller t = teller_of(phrase, sheet, p);
	char plain[] = { '\0', '\0' };

	for (const char *c = questions[p->task]; *c; c++) {
		if (*c == '@') {
			hole(&t, *++c);
			continue;
		}
		plain[0] = *c;
		text(&t, plain);
	}
}

/* -- the answers -- */

/* Whole 64ths of an inch, because runs are whole feet and slopes whole sixteenths. */
static void fall_answer(struct teller *t, rb_length fall)
{
	const struct rb_style tape = { RB_FEET_INCHES, 0, 64, true };

	if (t->metric) {
		value(t, fall);
		return;
	}
	rb_phrase_length(t->phrase, fall, tape);
	text(t, " (");
	fall_in_inches(t, fall);
	text(t, ")");
}

static void slope_answer(struct teller *t)
{
	const rb_slope laid = { rb_length_sub(t->p->a, t->p->b), t->p->run };
	char buf[RB_SLOPE_TEXT];

	if (!t->metric) {
		rb_slope_number(buf, laid, RB_PER_FOOT, SLOPE_DECIMALS);
		text(t, buf);
		text(t, " in/ft, ");
	}
	rb_slope_format(buf, laid, RB_PERCENT, PERCENT_PLACES);
	text(t, buf);
	text(t, ", ");
	rb_slope_format(buf, laid, RB_ONE_IN, 1);
	text(t, buf);
}

static void dig_answer(struct teller *t)
{
	rb_length difference = rb_length_sub(t->p->a, t->p->b);

	if (!difference.nm) {
		text(t, "on grade");
		return;
	}
	text(t, difference.nm > 0 ? "dig " : "over-dug by ");
	value(t, rb_length_absolute(difference));
	text(t, difference.nm > 0 ? "" : ": bring it back with compacted bedding");
}

void rb_fall_problem_answer(struct rb_phrase *phrase,
			    const struct rb_practice_sheet *sheet,
			    const struct rb_problem *p)
{
	struct teller t = teller_of(phrase, sheet, p);

	switch (p->task) {
	case RB_TASK_FALL:
		fall_answer(&t, fall_of(p));
		break;
	case RB_TASK_LOWER_INVERT:
		value(&t, rb_length_sub(p->a, fall_of(p)));
		break;
	case RB_TASK_SLOPE:
		slope_answer(&t);
		break;
	case RB_TASK_GRADE_ROD:
		value(&t, rb_length_sub(p->a, p->b));
		break;
	default:
		dig_answer(&t);
	}
}

/* -- the steps -- */

static bool decimal(struct teller *t, rb_length a)
{
	char number[RB_RATIO_TEXT];
	const struct rb_ratio ratio = { a.nm, 1, true };
	bool exact = rb_ratio_write(number, ratio, t->metric ? RB_METRES : RB_FEET,
				    DECIMALS, 0);

	text(t, number);
	text(t, t->metric ? " m" : " ft");
	return exact;
}

static void rounded(struct teller *t, bool exact)
{
	text(t, exact ? "" : " (rounded)");
}

static void fall_steps(struct teller *t)
{
	rb_length fall = fall_of(t->p);

	text(t, "  fall = ");
	if (t->metric) {
		run(t);
		text(t, " / ");
		rb_phrase_number(t->phrase, t->p->slope.run.nm / t->p->slope.fall.nm);
		text(t, " = ");
		rounded(t, decimal(t, fall));
		return;
	}
	fall_in_inches(t, t->p->slope.fall);
	text(t, " a foot x ");
	run(t);
	text(t, " = ");
	fall_in_inches(t, fall);
	text(t, "\n  ");
	fall_in_inches(t, fall);
	text(t, " / 12 = ");
	rounded(t, decimal(t, fall));
}

static void invert_steps(struct teller *t)
{
	rb_length fall = fall_of(t->p);

	fall_steps(t);
	text(t, "\n  lower invert = upper invert - fall = ");
	if (t->p->unit == RB_FEET_INCHES || t->metric) {
		rb_steps_subtract(t->phrase, t->p->a, fall, t->style, WORKING);
		return;
	}
	decimal(t, t->p->a);
	text(t, " - ");
	decimal(t, fall);
	text(t, " = ");
	rounded(t, decimal(t, rb_length_sub(t->p->a, fall)));
}

static void slope_steps(struct teller *t)
{
	const rb_slope laid = { rb_length_sub(t->p->a, t->p->b), t->p->run };
	char buf[RB_SLOPE_TEXT];

	text(t, "  fall = ");
	rb_steps_subtract(t->phrase, t->p->a, t->p->b, t->style, WORKING);
	if (!t->metric) {
		text(t, "\n  ");
		fall_in_inches(t, laid.fall);
		text(t, " / ");
		run(t);
		text(t, " = ");
		rb_slope_number(buf, laid, RB_PER_FOOT, SLOPE_DECIMALS);
		text(t, buf);
		text(t, " in/ft");
	}
	text(t, "\n  100 x ");
	decimal(t, laid.fall);
	text(t, " / ");
	run(t);
	text(t, " = ");
	rb_slope_format(buf, laid, RB_PERCENT, PERCENT_PLACES);
	text(t, buf);
	text(t, "\n  ");
	run(t);
	text(t, " / ");
	decimal(t, laid.fall);
	text(t, " = ");
	rb_slope_number(buf, laid, RB_ONE_IN, 1);
	text(t, *buf ? buf : "no end: it is level");
}

void rb_fall_problem_steps(struct rb_phrase *phrase,
			   const struct rb_practice_sheet *sheet,
			   const struct rb_problem *p)
{
	struct teller t = teller_of(phrase, sheet, p);

	switch (p->task) {
	case RB_TASK_FALL:
		fall_steps(&t);
		break;
	case RB_TASK_LOWER_INVERT:
		invert_steps(&t);
		break;
	case RB_TASK_SLOPE:
		slope_steps(&t);
		break;
	case RB_TASK_GRADE_ROD:
		text(&t, "  grade rod = height of instrument - invert = ");
		rb_steps_subtract(phrase, p->a, p->b, t.style, WORKING);
		break;
	default:
		text(&t,
		     p->b.nm < p->a.nm
			     ? "  the rod reads less than the grade rod, so it stands too high\n"
			     : "  the rod reads as much as the grade rod or more: it stands on "
			       "grade or too low\n");
		text(&t, "  ");
		rb_steps_subtract(phrase, p->a, p->b, t.style, WORKING);
	}
}
