/* SPDX-License-Identifier: MIT */
/* change.c - places of a text, and what is known to be put there. */
#include "change.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "work.h"

int LLVMFuzzerInitialize(int *argc, char ***argv);

size_t somewhere(struct text *t)
{
	return t->length ? (size_t)draw(&t->draws, (int)t->length) : 0;
}

struct span around(const struct text *t, size_t at, const char *ends)
{
	struct span s = { at, at };

	while (s.from > 0 && !strchr(ends, t->bytes[s.from - 1]))
		s.from--;
	while (s.to < t->length && !strchr(ends, t->bytes[s.to]))
		s.to++;
	return s;
}

void put(struct text *t, struct span s, const void *bytes, size_t length)
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

struct known known_measures, known_cells, known_lines;

static char *whole_file(const char *folder, const char *name)
{
	char path[512];
	FILE *file;
	char *bytes;

	snprintf(path, sizeof path, "%s/%s", folder, name);
	file = fopen(path, "rb");
	bytes = file ? malloc(KNOWN_MOST + 1) : NULL;
	if (bytes)
		bytes[fread(bytes, 1, KNOWN_MOST, file)] = '\0';
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

void put_known(struct text *t, struct span s, const struct known *known)
{
	int line;

	if (!known->lines)
		return;
	line = draw(&t->draws, known->lines);
	put(t, s, known->bytes + known->line[line],
	    known->line[line + 1] - 1 - known->line[line]);
}
