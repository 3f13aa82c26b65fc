/* SPDX-License-Identifier: MIT */
/*
 * Changes to a file of cells that a person could make: a cell for another, a line twice,
 * a digit wrong.  Bytes changed at random nearly always end in a refusal; these mostly
 * end in a result, and so reach what comes after.
 *
 * KNOWN names a folder with the files "measures", "cells" and "lines": what stands in the
 * seeds of all targets, so that each odd reading of a test comes into every column of
 * every kind of file.  Without it there are the cells below.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "work.h"

size_t LLVMFuzzerMutate(uint8_t *data, size_t size, size_t room);
size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t room, unsigned seed);
int LLVMFuzzerInitialize(int *argc, char ***argv);

struct text {
	uint8_t *bytes;
	size_t length, room;
	uint32_t draws;
};

struct span {
	size_t from, to;
};

static size_t somewhere(struct text *t)
{
	return t->length ? (size_t)draw(&t->draws, (int)t->length) : 0;
}

/* What stands around a place between any of these characters. */
static struct span around(const struct text *t, size_t at, const char *ends)
{
	struct span s = { at, at };

	while (s.from > 0 && !strchr(ends, t->bytes[s.from - 1]))
		s.from--;
	while (s.to < t->length && !strchr(ends, t->bytes[s.to]))
		s.to++;
	return s;
}

#define CELL ",;\t\n\r"
#define LINE "\n"

/* Put bytes, which do not lie in the text, in place of a span; not where there is no
 * room.
 */
static void put(struct text *t, struct span s, const void *bytes, size_t length)
{
	size_t after = t->length - s.to;

	if (s.from + length + after > t->room)
		return;
	memmove(t->bytes + s.from + length, t->bytes + s.to, after);
	memcpy(t->bytes + s.from, bytes, length);
	t->length = s.from + length + after;
}

/* -- what is known -- */

#define KNOWN_MOST (1 << 20) /* bytes of a file */

/* The lines of a file, by where they begin; the last one is an end. */
struct known {
	char *bytes;
	size_t *line;
	int lines;
};

static struct known known_measures, known_cells, known_lines;

static char *whole_file(const char *folder, const char *name)
{
	char path[512];
	FILE *file;
	char *bytes;

	snprintf(path, sizeof path, "%s/%s", folder, name);
	file = fopen(path, "rb");
	bytes = file ? calloc(1, KNOWN_MOST + 1) : NULL;
	if (bytes)
		fread(bytes, 1, KNOWN_MOST, file);
	if (file)
		fclose(file);
	return bytes;
}

static void know(struct known *known, const char *folder, const char *name)
{
	size_t length;

	known->bytes = whole_file(folder, name);
	if (!known->bytes)
		return;
	length = strlen(known->bytes);
	known->line = calloc(length + 1, sizeof *known->line);
	if (!known->line)
		return;
	for (size_t i = 0; i < length; i++)
		if (known->bytes[i] == '\n')
			known->line[++known->lines] = i + 1;
}

int LLVMFuzzerInitialize(int *argc, char ***argv)
{
	const char *folder = getenv("KNOWN");

	(void)argc;
	(void)argv;
	if (folder) {
		know(&known_measures, folder, "measures");
		know(&known_cells, folder, "cells");
		know(&known_lines, folder, "lines");
	}
	return 0;
}

/* One of them in place of a span, without its line end. */
static void put_known(struct text *t, struct span s, const struct known *known)
{
	int line;

	if (!known->lines)
		return;
	line = draw(&t->draws, known->lines);
	put(t, s, known->bytes + known->line[line],
	    known->line[line + 1] - 1 - known->line[line]);
}

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
			put(t, around(t, i + 5, ",;\t\n\r"), unit, strlen(unit));
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
