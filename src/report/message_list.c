/* SPDX-License-Identifier: MIT */
/* message_list.c - the table of words as docs/messages.md. */
#include "report/message_list.h"

#include <string.h>

#include "report/message.h"

#define PLACE "cell B9 (backsight at TP-2)"

static const char head[] =
	"# Messages\n"
	"\n"
	"What `rodbook` says about a file, by the code in brackets at the end of its first\n"
	"line. The codes are stable: a script can go by them. This list is made from the same\n"
	"table as the messages themselves; dots stand for what a message takes from the file.\n"
	"\n"
	"| severity | means | exit status |\n"
	"|---|---|---|\n"
	"| error | the input is wrong: there is no result | 2 |\n"
	"| failed | the result stands, and a check fails | 1 |\n"
	"| warning | look at this | 0, with `--strict` 1 |\n"
	"| note | worth knowing | 0 |\n";

/* Likely readings are told in each case: the list does without that part. */
static bool tells_readings(const char *part, size_t length)
{
	for (const char *c = part; c < part + length; c++)
		if (!strncmp(c, "{likely}", 8) || !strncmp(c, "{marks}", 7))
			return true;
	return false;
}

/* A counted word is given in the plural: {0|row|rows}. */
static void put_hole(struct rb_sink *sink, const char *hole, size_t length)
{
	const char *last = memchr(hole, '|', length);
	const char *next;

	if (!last) {
		rb_sink_text(sink, strncmp(hole, "{place}", 7) ? "..." : PLACE);
		return;
	}
	while ((next = memchr(last + 1, '|', length - (size_t)(last + 1 - hole))))
		last = next;
	rb_sink_bytes(sink, last + 1, length - (size_t)(last + 1 - hole));
}

static void put_template(struct rb_sink *sink, const char *template)
{
	while (*template) {
		size_t plain = strcspn(template, "{[]");

		rb_sink_bytes(sink, template, plain);
		template += plain;
		if (*template == '{') {
			size_t length = strcspn(template, "}");

			put_hole(sink, template, length);
			template += length;
		}
		if (*template == '[' && tells_readings(template, strcspn(template, "]")))
			template += strcspn(template, "]");
		template += *template != '\0';
	}
}

void rb_message_list_write(struct rb_sink *sink)
{
	rb_sink_text(sink, head);
	for (int i = 0; i < RB_CODES; i++) {
		const struct rb_words *words = rb_words_of((enum rb_code)i);

		rb_sink_text(sink, "\n## ");
		rb_sink_text(sink, rb_code_name((enum rb_code)i));
		rb_sink_text(sink, " (");
		rb_sink_text(sink, rb_severity_name(rb_code_severity((enum rb_code)i)));
		rb_sink_text(sink, ")\n\n    ");
		put_template(sink, words->text);
		rb_sink_text(sink, "\n\nWhat to do: ");
		put_template(sink, words->hint);
		rb_sink_text(sink, ".\n");
		if (!rb_words_typed((enum rb_code)i))
			continue;
		rb_sink_text(sink, "\nWhere it was typed, not read from a file: ");
		put_template(sink, rb_words_typed((enum rb_code)i));
		rb_sink_text(sink, ".\n");
	}
}
