/* SPDX-License-Identifier: MIT */
/* The least that reading a CSV file can cost: libcsv on blocks of 64 KiB, cells counted.
 */
#include <csv.h>
#include <stdio.h>
#include <stdlib.h>

struct counts {
	size_t cells, rows, bytes;
};

static void on_cell(void *cell, size_t length, void *self)
{
	struct counts *counts = self;

	(void)cell;
	counts->cells++;
	counts->bytes += length;
}

static void on_row(int end, void *self)
{
	struct counts *counts = self;

	(void)end;
	counts->rows++;
}

static int scan(const char *name, struct counts *counts)
{
	static char block[65536];
	struct csv_parser parser;
	FILE *file = fopen(name, "rb");
	size_t got;

	if (!file || csv_init(&parser, 0))
		return 0;
	while ((got = fread(block, 1, sizeof block, file)) > 0)
		if (csv_parse(&parser, block, got, on_cell, on_row, counts) != got)
			return 0;
	csv_fini(&parser, on_cell, on_row, counts);
	csv_free(&parser);
	fclose(file);
	return 1;
}

int main(int argc, char **argv)
{
	struct counts counts = { 0, 0, 0 };

	for (int i = 1; i < argc; i++)
		if (!scan(argv[i], &counts))
			return 2;
	return printf("%zu rows, %zu cells\n", counts.rows, counts.cells) < 0;
}
