/* SPDX-License-Identifier: MIT */
/*
 * example.c - a book reduced with the library, in one screen.
 *
 *   cc -std=c17 example.c $(pkg-config --cflags --libs rodbook) -o example
 *   ./example larch.csv
 *
 * The library opens no file, prints nothing and keeps no state: the bytes come from the
 * caller, all memory stands in one arena, and what is wrong with the book is a list of
 * findings, each with a code and a place.
 */
#include <stdio.h>
#include <stdlib.h>

#include <rodbook/rodbook.h>

/* The bytes of a file; NULL where it cannot be read. */
static char *read_whole(const char *name, size_t *length)
{
	FILE *file = fopen(name, "rb");
	char *bytes = malloc(1 << 20);

	*length = file && bytes ? fread(bytes, 1, 1 << 20, file) : 0;
	if (file)
		fclose(file);
	if (file && bytes)
		return bytes;
	free(bytes);
	return NULL;
}

static void print_point(const struct rb_adjusted *adjusted, uint32_t shot)
{
	const struct rb_reduced *reduced = adjusted->sections->reduced;
	struct rb_style style = rb_book_style(reduced->book);
	char raw[RB_LENGTH_TEXT], better[RB_LENGTH_TEXT];

	rb_length_format(raw, reduced->shot[shot].elevation, style);
	style.decimals++;
	rb_length_format(better, rb_shot_adjusted(adjusted, shot), style);
	printf("%-8s %10s %11s\n",
	       rb_book_typed(reduced->book, reduced->shot[shot].row), raw, better);
}

static void print_findings(const struct rb_findings *findings)
{
	for (size_t i = 0; i < findings->count; i++)
		printf("line %u: %s\n", (unsigned)findings->item[i]->place.line,
		       rb_code_name(findings->item[i]->code));
}

/* Book, elevations, sections, adjustment: each stage hands NULL on. */
static const struct rb_adjusted *reduce(struct rb_arena *arena,
					struct rb_findings *findings, const char *bytes,
					size_t length)
{
	struct rb_book *book = rb_book_read(arena, findings, bytes, length);
	struct rb_reduced *reduced = book ? rb_reduce(arena, findings, book) : NULL;
	struct rb_judging judging;
	struct rb_sections *sections;

	if (!reduced)
		return NULL;
	judging = rb_judging_of(book);
	sections = rb_sections(arena, findings, reduced, &judging);
	return sections ? rb_adjust(arena, findings, sections) : NULL;
}

int main(int argc, char **argv)
{
	size_t length;
	char *bytes = argc > 1 ? read_whole(argv[1], &length) : NULL;
	struct rb_arena *arena = rb_arena_new(NULL);
	const struct rb_adjusted *adjusted = NULL;
	struct rb_findings findings;

	if (!bytes || !arena) {
		fprintf(stderr, "usage: example BOOK\n");
		return 2;
	}
	rb_findings_init(&findings, arena, argv[1]);
	adjusted = reduce(arena, &findings, bytes, length);
	for (uint32_t i = 0; adjusted && i < adjusted->sections->reduced->shots; i++)
		print_point(adjusted, i);
	print_findings(&findings);
	rb_arena_free(arena);
	free(bytes);
	return adjusted ? 0 : 2;
}
