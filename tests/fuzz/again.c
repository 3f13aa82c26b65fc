/* SPDX-License-Identifier: MIT */
/*
 * A target of the fuzzer on inputs that are given, without the fuzzer:
 * `again FILE... [--packed FILE...]`.  It says how many it ran.
 */
#include <string.h>

#include "target.h"

static int ran;

/* From a copy that ends where the input does, so that a byte too far is caught. */
static void run(FILE *file, size_t size)
{
	uint8_t *exact = malloc(size ? size : 1);

	HOLDS(exact && fread(exact, 1, size, file) == size);
	LLVMFuzzerTestOneInput(exact, size);
	free(exact);
	ran++;
}

static void run_file(FILE *file)
{
	long size;

	HOLDS(fseek(file, 0, SEEK_END) == 0 && (size = ftell(file)) >= 0);
	rewind(file);
	run(file, (size_t)size);
}

/* Each input behind a line that says how long it is: pack. */
static void run_packed(FILE *file)
{
	char line[32];

	while (fgets(line, sizeof line, file)) {
		run(file, (size_t)strtol(line, NULL, 10));
		HOLDS(getc(file) == '\n');
	}
}

int main(int argc, char **argv)
{
	void (*way)(FILE * file) = run_file;

	for (int i = 1; i < argc; i++) {
		FILE *file;

		if (!strcmp(argv[i], "--packed")) {
			way = run_packed;
			continue;
		}
		file = fopen(argv[i], "rb");
		HOLDS(file);
		way(file);
		fclose(file);
	}
	printf("%d\n", ran);
	return 0;
}
