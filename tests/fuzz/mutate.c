/* SPDX-License-Identifier: MIT */
/*
 * Changes to a file of cells that a person could make: a cell for another, a line twice,
 * a digit wrong.  Bytes changed at random nearly always end in a refusal; these mostly
 * end in a result, and so reach what comes after.
 */
#include <string.h>

#include "change.h"
#include "work.h"

#define CELL ",;\t\n\r"
#define LINE "\n"

/* -- changes -- */

static void copy_span(struct text *t, struct span from, struct span to)
{
	uint8_t copy[512];
	size_t length = from.to - from.from;

	if (length > sizeof copy)
		return;
	memcpy(copy, t->bytes + from.from, length);
	put(t, to, copy, length);
}

static void other_cell(struct text *t)
{
	struct span from = around(t, somewhere(t), CELL);

	copy_span(t, from, around(t, somewhere(t), CELL));
}

static void new_cell(struct text *t)
{
	/* clang-format off */
	static const char *const cells[] = {
		"",	       "0",	  "4.27",     "100.00",	  "5'-3 1/2", "5 ft 3 in",
		"1.613 m",     "1613 mm", "63.5 in", "-2.15",	  "(3.045)",	"inv 3.1",
		"BM-1",	       "TP-1",	  "bm 1",     "0+50",	  "+10",	"1+025",
		"1/4 in/ft",   "2%",	  "1:48",     "invert",	  "top of pipe", "ground",
		"0.02 ft",     "sum",	  "ft-in",    "distance", "none",	"last",
		"0.01 ft sqrt(setups)",	  "12 mm sqrt(km)",	  "4 in sch 40", "5.291667",
	};
	/* clang-format on */
	const char *cell = cells[draw(&t->draws, (int)(sizeof cells / sizeof *cells))];

	put(t, around(t, somewhere(t), CELL), cell, strlen(cell));
}

static void known_measure(struct text *t)
{
	put_known(t, around(t, somewhere(t), CELL), &known_measures);
}

static void known_cell(struct text *t)
{
	put_known(t, around(t, somewhere(t), CELL), &known_cells);
}

static void known_line(struct text *t)
{
	put_known(t, around(t, somewhere(t), LINE), &known_lines);
}

static void wrong_digit(struct text *t)
{
	size_t at = somewhere(t);

	for (size_t i = at; i < t->length && i < at + 16; i++)
		if (t->bytes[i] >= '0' && t->bytes[i] <= '9') {
			t->bytes[i] = (uint8_t)('0' + draw(&t->draws, 10));
			return;
		}
}

/* A line again somewhere else, before another. */
static void line_again(struct text *t)
{
	struct span from = around(t, somewhere(t), LINE);
	struct span to = around(t, somewhere(t), LINE);

	from.to += from.to < t->length; /* with its end */
	to.to = to.from;
	copy_span(t, from, to);
}

static void line_away(struct text *t)
{
	struct span s = around(t, somewhere(t), LINE);

	s.to += s.to < t->length;
	put(t, s, "", 0);
}

/* One line for another, the end left where it was. */
static void line_instead(struct text *t)
{
	struct span from = around(t, somewhere(t), LINE);

	copy_span(t, from, around(t, somewhere(t), LINE));
}

/* The cells parted by another sign. */
static void other_separator(struct text *t)
{
	static const uint8_t separators[] = { ',', ';', '\t' };
	uint8_t from = separators[draw(&t->draws, 3)],
		to = separators[draw(&t->draws, 3)];

	for (size_t i = 0; i < t->length; i++)
		if (t->bytes[i] == from)
			t->bytes[i] = to;
}

/* Another unit behind the key, where there is one. */
static void other_unit(struct text *t)
{
	static const char *const units[] = { "ft", "in", "ft-in", "m", "mm" };
	const char *unit = units[draw(&t->draws, 5)];

	for (size_t i = 0; i + 5 < t->length; i++)
		if (!memcmp(t->bytes + i, "unit", 4) && strchr(",;\t", t->bytes[i + 4])) {
			put(t, around(t, i + 5, CELL), unit, strlen(unit));
			return;
		}
}

size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t room, unsigned seed)
{
	static void (*const changes[])(struct text *) = {
		other_cell,   new_cell,    known_measure,   known_measure,
		known_cell,   wrong_digit, line_again,      line_away,
		line_instead, known_line,  other_separator, other_unit,
	};
	struct text t = { data, size, room, seed };
	int count = 1 + draw(&t.draws, 3);

	if (size == 0 || draw(&t.draws, 3) == 0)
		return LLVMFuzzerMutate(data, size, room);
	while (count-- > 0 && t.length)
		changes[draw(&t.draws, (int)(sizeof changes / sizeof *changes))](&t);
	return t.length;
}
