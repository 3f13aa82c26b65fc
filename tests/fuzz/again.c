/* SPDX-License-Identifier: MIT */
/* A target of the fuzzer on files that are given, without the fuzzer: `again FILE...`. */
#include "target.h"

#define LONGEST (1 << 20)

/* In a block of just that size, so that a byte too far is caught. */
static void run(const char *name)
{
	static uint8_t bytes[LONGEST];
	FILE *file = fopen(name, "rb");
	size_t size = file ? fread(bytes, 1, sizeof bytes, file) : 0;
	uint8_t *exact = malloc(size ? size : 1);

	HOLDS(file && exact);
	for (size_t i = 0; i < size; i++)
		exact[i] = bytes[i];
	LLVMFuzzerTestOneInput(exact, size);
	free(exact);
	fclose(file);
}

int main(int argc, char **argv)
{
	for (int i = 1; i < argc; i++)
		run(argv[i]);
	return 0;
}
