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

int main(int argc, char **argv)
{
	static char block[65536];
	struct counts counts = { 0, 0, 0 };
	struct csv_parser parser;
	FILE *file = argc == 2 ? fopen(argv[1], "rb") : NULL;
	size_t got;

	if (!file || csv_init(&parser, 0))
		return 2;
	while ((got = fread(block, 1, sizeof block, file)) > 0)
		if (csv_parse(&parser, block, got, on_cell, on_row, &counts) != got)
			return 2;
	csv_fini(&parser, on_cell, on_row, &counts);
	csv_free(&parser);
	fclose(file);
	return printf("%zu rows, %zu cells\n", counts.rows, counts.cells) < 0;
}
