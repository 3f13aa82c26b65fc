/* SPDX-License-Identifier: MIT */
/*
 * practice.h - problems to work by hand, made from a seed.
 *
 * A problem is numbers and what is asked; its words are the report's.  The same seed
 * gives the same problems everywhere, and problem k is the same however many are asked
 * for. Rods stay real: readings are from 0 to 13 ft (a rod of 13.10 ft is the common one,
 * common practice, no source), and never negative unless an inverted rod is asked for.
 */
#ifndef RB_LEVEL_PRACTICE_H
#define RB_LEVEL_PRACTICE_H

#include "level/hand_check.h"
#include "rodbook/arena.h"
#include "rodbook/slope.h"

enum rb_practice_kind { RB_PRACTICE_CONVERT, RB_PRACTICE_LOOP, RB_PRACTICE_FALL };

/* What is asked. */
enum rb_task {
	RB_TASK_TO_INCHES,    /* a in feet and inches */
	RB_TASK_TO_FEET,      /* a in decimals of a foot */
	RB_TASK_FROM_METRES,  /* a, in metres, in feet and inches */
	RB_TASK_TO_METRES,    /* a, in feet and inches, in metres */
	RB_TASK_ADD,          /* a + b */
	RB_TASK_SUBTRACT,     /* a - b */
	RB_TASK_DIVIDE,       /* a / factor */
	RB_TASK_FALL,         /* the fall at `slope` over `run` */
	RB_TASK_LOWER_INVERT, /* a: the upper invert */
	RB_TASK_SLOPE,        /* a and b: the upper and the lower invert */
	RB_TASK_GRADE_ROD,    /* a: height of instrument; b: the invert wanted */
	RB_TASK_DIG,          /* a: grade rod; b: what the rod reads now */
	RB_TASK_REDUCE,       /* `book` */
	RB_TASKS
};

struct rb_practice_options {
	enum rb_practice_kind kind;
	uint64_t seed;
	enum rb_unit unit;
	int fraction;  /* feet-inches: the marks of rod and tape, 8 to 64 */
	int setups;    /* of a loop; 0: two to five, as the seed says */
	bool inverted; /* a loop has an inverted rod too */
	bool plant;    /* a loop has one slip */
};

/* A row of a loop as it is worked out by hand, right but for what was planted. */
struct rb_practice_row {
	char point[16];
	const char *remark; /* constant */
	rb_length known, backsight, intermediate, foresight;
	rb_length height, elevation; /* none where the row has none */
};

struct rb_practice_book {
	enum rb_unit unit;
	struct rb_practice_row *row;
	uint32_t rows;
	rb_length tolerance;
	rb_length misclosure;    /* by the readings */
	enum rb_hand_cause slip; /* RB_CAUSE_UNKNOWN: nothing was planted */
	uint32_t slip_row;
	enum rb_column slip_column;
	rb_length right; /* what should stand there */
};

struct rb_problem {
	int number; /* from 1 */
	enum rb_task task;
	enum rb_unit unit;
	rb_length a, b, run;
	int64_t factor;
	rb_slope slope;
	struct rb_practice_book *book; /* RB_TASK_REDUCE only */
};

/* Make problem `number` (from 1).  NULL if memory ran out. */
struct rb_problem *rb_practice(struct rb_arena *arena,
			       const struct rb_practice_options *options, int number);

/* How numbers of a unit are written on rods and in books. */
struct rb_style rb_practice_style(const struct rb_practice_options *options);

#endif
