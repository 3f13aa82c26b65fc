/* SPDX-License-Identifier: MIT */
/* practice_words.c - what a problem asks, and its answer; conversions and books. */
#include "report/convert_steps.h"
#include "report/practice_sheet.h"
#include "report/shown.h"

#define METRE_DECIMALS 3
#define FEET_DECIMALS  2

const char *rb_practice_kind_name(enum rb_practice_kind kind)
{
	static const char *const names[] = {
		[RB_PRACTICE_CONVERT] = "convert",
		[RB_PRACTICE_LOOP] = "loop",
		[RB_PRACTICE_FALL] = "fall",
	};

	return names[kind];
}

/* -- conversions -- */

enum wanted { IN_INCHES, IN_FEET, IN_METRES };

/* How a conversion is typed, and in which notation its answer is wanted. */
static const struct {
	enum rb_unit unit; /* of its lengths */
	int decimals;
	char sign; /* of its operation, or 0 */
	enum wanted wanted;
} conversions[RB_TASKS] = {
	[RB_TASK_TO_INCHES] = { RB_FEET, 2, 0, IN_INCHES },
	[RB_TASK_TO_FEET] = { RB_FEET_INCHES, 0, 0, IN_FEET },
	[RB_TASK_FROM_METRES] = { RB_METRES, 3, 0, IN_INCHES },
	[RB_TASK_TO_METRES] = { RB_FEET_INCHES, 0, 0, IN_METRES },
	[RB_TASK_ADD] = { RB_FEET_INCHES, 0, '+', IN_INCHES },
	[RB_TASK_SUBTRACT] = { RB_FEET_INCHES, 0, '-', IN_INCHES },
	[RB_TASK_DIVIDE] = { RB_FEET_INCHES, 0, '/', IN_INCHES },
};

/* 104'-3 1/2" - 96'-9" */
static void put_expression(struct rb_phrase *phrase,
			   const struct rb_practice_sheet *sheet,
			   const struct rb_problem *p)
{
	const struct rb_style style = { conversions[p->task].unit,
					conversions[p->task].decimals,
					sheet->options->fraction, true };
	const char between[] = { ' ', conversions[p->task].sign, ' ', '\0' };

	rb_phrase_length(phrase, p->a, style);
	if (!conversions[p->task].sign)
		return;
	rb_phrase_text(phrase, between);
	if (p->task == RB_TASK_DIVIDE)
		rb_phrase_number(phrase, p->factor);
	else
		rb_phrase_length(phrase, p->b, style);
}

static void put_tape(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet)
{
	rb_phrase_text(phrase, " in feet and inches, to 1/");
	rb_phrase_number(phrase, sheet->options->fraction);
}

static void conversion_text(struct rb_phrase *phrase,
			    const struct rb_practice_sheet *sheet,
			    const struct rb_problem *p)
{
	put_expression(phrase, sheet, p);
	switch (conversions[p->task].wanted) {
	case IN_INCHES:
		put_tape(phrase, sheet);
		break;
	case IN_FEET:
		rb_phrase_text(phrase, " in decimals of a foot, to 0.01");
		break;
	case IN_METRES:
		rb_phrase_text(phrase, " in metres, to 0.001");
		break;
	}
}

/* The conversion as the command `convert` works it out; false: no memory. */
static bool worked(struct rb_conversion *c, const struct rb_practice_sheet *sheet,
		   const struct rb_problem *p)
{
	const struct rb_conversion_style style = { RB_FEET, sheet->options->fraction,
						   -1 };
	struct rb_phrase input;

	rb_phrase_init(&input, sheet->arena);
	put_expression(&input, sheet, p);
	return !input.out_of_memory && rb_conversion_make(c, input.text, &style);
}

static void conversion_answer(struct rb_phrase *phrase,
			      const struct rb_practice_sheet *sheet,
			      const struct rb_problem *p)
{
	const struct rb_style tape = { RB_FEET_INCHES, 0, sheet->options->fraction,
				       true };
	enum wanted wanted = conversions[p->task].wanted;
	bool metres = wanted == IN_METRES;
	char number[RB_RATIO_TEXT];
	struct rb_conversion c;

	if (!worked(&c, sheet, p)) {
		phrase->out_of_memory = true;
	} else if (wanted == IN_INCHES) {
		rb_phrase_length(phrase, rb_conversion_mark(&c), tape);
	} else {
		int decimals = metres ? METRE_DECIMALS : FEET_DECIMALS;

		rb_ratio_write(number, c.worked.ratio, metres ? RB_METRES : RB_FEET,
			       decimals, decimals);
		rb_phrase_text(phrase, number);
		rb_phrase_text(phrase, metres ? " m" : " ft");
	}
}

static void conversion_steps(struct rb_phrase *phrase,
			     const struct rb_practice_sheet *sheet,
			     const struct rb_problem *p)
{
	struct rb_conversion c;

	if (worked(&c, sheet, p))
		rb_conversion_tell(phrase, &c);
	else
		phrase->out_of_memory = true;
}

/* -- books -- */

static void put_value(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
		      rb_length a)
{
	struct rb_style style = rb_practice_style(sheet->options);

	style.marked = true;
	rb_phrase_length(phrase, a, style);
}

static void book_text(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
		      const struct rb_practice_book *book)
{
	if (sheet->options->plant)
		rb_phrase_text(phrase,
			       "This book was worked out by hand, and one cell in it is "
			       "wrong: find it. What follows from it was carried on.");
	else
		rb_phrase_text(phrase, "Work out each height of instrument and each "
				       "elevation, and the misclosure on BM-1.");
	rb_phrase_text(phrase, " Allowed on closing: ");
	put_value(phrase, sheet, book->tolerance);
	rb_phrase_text(phrase, ".");
}

static void slip_answer(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
			const struct rb_practice_book *book)
{
	const struct rb_practice_row *row = &book->row[book->slip_row];
	bool height = book->slip_column == RB_HEIGHT_OF_INSTRUMENT;

	rb_phrase_text(phrase, "line ");
	rb_phrase_number(phrase, rb_practice_line(book->slip_row));
	rb_phrase_text(phrase, ", ");
	rb_phrase_text(phrase, row->point);
	rb_phrase_text(phrase, height ? ", height of instrument: " : ", elevation: ");
	put_value(phrase, sheet, height ? row->height : row->elevation);
	rb_phrase_text(phrase, " is written, and ");
	put_value(phrase, sheet, book->right);
	rb_phrase_text(phrase, " comes out (");
	rb_phrase_text(phrase, rb_hand_cause_name(book->slip));
	rb_phrase_text(phrase, ")");
}

static void book_answer(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
			const struct rb_practice_book *book)
{
	if (book->slip != RB_CAUSE_UNKNOWN) {
		slip_answer(phrase, sheet, book);
		return;
	}
	rb_phrase_text(phrase, "BM-1 comes out at ");
	put_value(phrase, sheet, book->row[book->rows - 1].elevation);
	rb_phrase_text(phrase, ": ");
	if (book->misclosure.nm) {
		put_value(phrase, sheet, rb_length_absolute(book->misclosure));
		rb_phrase_text(phrase, book->misclosure.nm < 0 ? " low" : " high");
	} else {
		rb_phrase_text(phrase, "no misclosure");
	}
}

/* -- all problems -- */

void rb_problem_text(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
		     const struct rb_problem *p)
{
	if (p->book)
		book_text(phrase, sheet, p->book);
	else if (sheet->options->kind == RB_PRACTICE_CONVERT)
		conversion_text(phrase, sheet, p);
	else
		rb_fall_problem_text(phrase, sheet, p);
}

void rb_problem_answer(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
		       const struct rb_problem *p)
{
	if (p->book)
		book_answer(phrase, sheet, p->book);
	else if (sheet->options->kind == RB_PRACTICE_CONVERT)
		conversion_answer(phrase, sheet, p);
	else
		rb_fall_problem_answer(phrase, sheet, p);
}

void rb_problem_steps(struct rb_phrase *phrase, const struct rb_practice_sheet *sheet,
		      const struct rb_problem *p)
{
	if (p->book)
		rb_book_problem_steps(phrase, sheet, p->book);
	else if (sheet->options->kind == RB_PRACTICE_CONVERT)
		conversion_steps(phrase, sheet, p);
	else
		rb_fall_problem_steps(phrase, sheet, p);
}
